import { drawPhoto, fills } from './draw-mark.ts';
import { type Block, BOTTOM, gap, heightOf, LEFT, TOP, WIDTH } from './flow.ts';
import { about, boxes, cautions, gate, notes, points, remark } from './parts.ts';
import { INK_2, leadingOf, type Pen, type Type } from './pen.ts';
import type { SheetPhoto, SheetStep } from './sheet-data.ts';
import { holeTable } from './table.ts';
import { words } from './words.ts';

/** A joint with its order needs room; a single fastener does not. px */
const PHOTO_MOST = 430;
const PHOTO_FEW = 230;
const PHOTO_LEAST = 180;
const PHOTO_JOINT_LEAST = 300;

/**
 * One step as blocks: what is checked before it, its name and figure, the photo, the boxes, the table of its holes.
 *
 * @param left height that is left on the page begun, px: a photo gives way to what lets the step stand there
 */
export function stepBlocks(pen: Pen, step: SheetStep, left: number): Block[] {
  const above = [
    ...(step.gate === null ? [] : gate(pen, step.gate)),
    ...headBlocks(pen, step),
    ...points(pen, step.points),
  ];
  const below = [
    ...remark(pen, step.photo === null ? step.noPhoto : ''),
    ...cautions(pen, step.cautions),
    ...boxes(pen, step.before),
    ...notes(pen, step.notes),
    ...holeTable(pen, step),
    ...boxes(pen, step.after),
    ...about(pen, step.about),
  ];
  if (step.photo === null) return [...above, ...below];
  const others = heightOf(above) + heightOf(below) + 14;
  const rooms = [left - others, BOTTOM - TOP - others];
  return [...above, gap(14), photoBlock(pen, step.photo, rooms), ...below];
}

/** As high as the picture is at full width, lower where that lets the step stay on one page. */
function photoBlock(pen: Pen, photo: SheetPhoto, rooms: readonly number[]): Block {
  const joint = photo.marks.length > 2;
  const heights = joint ? [PHOTO_MOST] : [PHOTO_FEW, PHOTO_FEW + 60, PHOTO_FEW + 120, PHOTO_MOST];
  const most = heights.find((height) => fills(photo, { width: WIDTH, height })) ?? PHOTO_MOST;
  const wanted = Math.min(most, (WIDTH * photo.height) / photo.width);
  const least = Math.min(wanted, joint ? PHOTO_JOINT_LEAST : most > PHOTO_FEW ? most : PHOTO_LEAST);
  const room = rooms.find((one) => one >= least) ?? wanted;
  const height = Math.min(wanted, room);
  return {
    height,
    draw: (y) => drawPhoto(pen, photo, LEFT, y, { width: WIDTH, height }),
  };
}

/** What stands over a step on the pages it goes on to. */
export function goesOn(pen: Pen, step: SheetStep): Block {
  const type: Type = { face: 'sans-bold', size: 20, leading: 1.2 };
  const title = [step.number ?? '', words.goesOn(step.title)].join('\u2002').trim();
  const lines = pen.lines(title, type, WIDTH);
  return {
    height: lines.length * leadingOf(type) + 10,
    draw: (y) => {
      lines.forEach((line, i) => pen.text(line, LEFT, y + i * leadingOf(type), type));
      pen.rule(LEFT, y + lines.length * leadingOf(type) + 4, WIDTH, 3);
    },
  };
}

/** The largest size at which a title takes at most two lines; a very long one takes more at the smallest. */
function titleType(pen: Pen, title: string, width: number): Type {
  for (const size of [44, 36, 28]) {
    const type: Type = { face: 'figure', size, leading: 1.05 };
    const one = size === 44 ? 1 : 2;
    if (pen.lines(title, type, width).length <= one) return type;
  }
  return { face: 'figure', size: 24, leading: 1.1 };
}

function headBlocks(pen: Pen, step: SheetStep): Block[] {
  const big: Type = { face: 'figure', size: 76, leading: 0.8 };
  const unit: Type = { face: 'sans-bold', size: 20, leading: 1 };
  const small: Type = { face: 'sans', size: 14, leading: 1.25, colour: INK_2 };
  const { figure } = step;
  const figureWidth =
    figure === null
      ? 0
      : Math.max(
          pen.width(figure.value, big) + 8 + pen.width(figure.unit, unit),
          pen.width(figure.other, small),
        );
  const number = step.number === null ? '' : String(step.number);
  const room = WIDTH - (figureWidth === 0 ? 0 : figureWidth + 28);
  const first = titleType(pen, number === '' ? step.title : `${number}  ${step.title}`, room);
  const indent = number === '' ? 0 : pen.width(number, first) + first.size * 0.55;
  const lines = pen.lines(step.title, first, room - indent);
  const titleHeight = lines.length * leadingOf(first);
  const why = step.why === '' ? [] : pen.lines(step.why, small, room);
  const left = 18 + titleHeight + why.length * leadingOf(small);
  const right = figure === null ? 0 : 62 + (figure.other === '' ? 4 : 22);
  const height = Math.max(left, right) + 12;
  return [
    {
      height,
      keep: true,
      draw: (y) => {
        const base = y + height - 12;
        const top = base - titleHeight - why.length * leadingOf(small);
        pen.text(step.place, LEFT, top - 18, small);
        if (number !== '') pen.text(number, LEFT, top, first);
        lines.forEach((line, i) => pen.text(line, LEFT + indent, top + i * leadingOf(first), first));
        why.forEach((line, i) => pen.text(line, LEFT, top + titleHeight + i * leadingOf(small), small));
        if (figure !== null) {
          const end = LEFT + WIDTH;
          const foot = base - (figure.other === '' ? 4 : 22);
          pen.onBaseline(figure.value, end - pen.width(figure.unit, unit) - 8, foot, big, 'right');
          pen.onBaseline(figure.unit, end, foot, unit, 'right');
          if (figure.other !== '') pen.text(figure.other, end, base - 18, small, 'right');
        }
        pen.rule(LEFT, base + 10, WIDTH, 3);
      },
    },
  ];
}
