import { drawLine } from '../drawing/line/drawing.ts';
import { gatePlaces, layLine, placeRules, slimSizes } from '../drawing/line/layout.ts';
import { slimChannel } from '../drawing/line/shapes.ts';
import type { LineData } from '../drawing/line/types.ts';
import { INK, INK_2, type Pen, WHITE } from './pen.ts';

/**
 * The depth line in the left column, filled with ink as far as things are back; the steps of this page by their numbers.
 *
 * @param height room for it, px; it is never drawn longer than its removals need
 */
export function drawDepth(pen: Pen, line: LineData, left: number, top: number, height: number): void {
  const { doc } = pen;
  const laid = layLine(line.items, line.atId, line.atId, height, slimSizes);
  const drawing = drawLine(line, laid, slimChannel);
  const { left: from, right: to } = slimChannel;
  doc.save();
  doc.translate(left, top);
  doc.lineJoin('miter');
  doc.save();
  doc.rect(0, drawing.level, 84, Math.max(0, drawing.end - drawing.level)).clip();
  doc.path(drawing.body).fill(INK);
  doc.restore();
  if (drawing.ticks !== null)
    doc.path(drawing.ticks.path).lineWidth(drawing.ticks.width).strokeColor(INK).stroke();
  for (const shape of drawing.filled) doc.path(shape).fill(INK);
  for (const shape of drawing.hollow) doc.path(shape).lineWidth(2.25).fillAndStroke(WHITE, INK);
  if (drawing.at !== null) doc.path(drawing.at.shape).fill(INK);
  doc.path(drawing.outline).lineWidth(2.25).strokeColor(INK).stroke();
  pen.rule(from - 14, 0, to + 28 - (from - 14), 3);
  if (drawing.at !== null) pen.rule(from - 6, drawing.at.y, to - from + 6, 4);
  for (const rule of placeRules(laid))
    doc
      .moveTo(from - 12, rule.from)
      .lineTo(from - 12, rule.to)
      .lineWidth(2)
      .strokeColor(INK_2)
      .stroke();
  gates(pen, laid);
  for (const block of laid.blocks) {
    if (block.kind !== 'row') continue;
    const at = block.item.id === line.atId;
    const type = { face: 'sans-bold', size: at ? 20 : 15, leading: 1 } as const;
    pen.text(String(block.item.number), 54, block.top + block.height / 2 - type.size / 2, type);
  }
  doc.restore();
}

function gates({ doc }: Pen, laid: ReturnType<typeof layLine>): void {
  const from = Math.max(2.5, slimChannel.left - 20);
  const to = slimChannel.right + 28 * slimChannel.reach + 1;
  for (const { item, y, close } of gatePlaces(laid)) {
    const [bar, post, wide] = close ? [5, 5, 3] : [12, 14, 5];
    const passed = item.kind === 'gate' && item.passed;
    const reach = passed ? post * 0.65 : post;
    if (passed)
      doc
        .path(`M${from} ${y}H${slimChannel.left - 5}M${slimChannel.right + 5} ${y}H${to}`)
        .lineWidth(wide)
        .strokeColor(INK)
        .stroke();
    else {
      doc.rect(from - 2, y - bar / 2 - 2, to - from + 4, bar + 4).fill(WHITE);
      doc.rect(from, y - bar / 2, to - from, bar).fill(INK);
    }
    doc
      .path(`M${from} ${y - reach}V${y + reach}M${to} ${y - reach}V${y + reach}`)
      .lineWidth(wide)
      .strokeColor(INK)
      .stroke();
  }
}
