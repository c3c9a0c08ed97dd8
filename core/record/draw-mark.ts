import { placeDiscs, washerOf, wedge, type Placed } from '../drawing/leaders.ts';
import { framePhoto, layPhoto, toScreen, type Extent, type Framing, type View } from '../drawing/geometry.ts';
import type { MarkKind, MarkState, PhotoMark } from '../drawing/marks.ts';
import { halves, head, outlines, textOf } from '../drawing/mark-shapes.ts';
import { INK, type Pen, WHITE } from './pen.ts';
import type { SheetPhoto } from './sheet-data.ts';

/** Side of a mark on a photo, px. */
const ON_PHOTO = 38;

/** Draws a mark with its middle at x, y: outline by kind, filling by state, number never cut. */
export function drawMark(
  pen: Pen,
  mark: { readonly kind: MarkKind; readonly state: MarkState; readonly text: string },
  x: number,
  y: number,
  size: number,
): void {
  const { doc } = pen;
  const { kind, state, text } = mark;
  const untouched = state === 'in' || state === 'slackened';
  const outline = untouched && kind === 'position' ? head : outlines[kind];
  const type = textOf(kind, state, text);
  doc.save();
  doc.translate(x - size / 2, y - size / 2).scale(size / 48);
  doc.lineJoin('round').lineCap('butt');
  doc.path(outline).lineWidth(10.5).strokeColor('#555555').stroke();
  if (state === 'blocked') doc.path('M4 44L44 4').lineWidth(9.5).strokeColor(WHITE).stroke();
  if (state === 'paint-checked') doc.path('M32 32L45 45').lineWidth(14).strokeColor(WHITE).stroke();
  doc.path(outline).lineWidth(8).fillAndStroke(WHITE, WHITE);
  if (state === 'left out') doc.dash(6.4, { space: 3.8, phase: 3 });
  doc
    .path(outline)
    .lineWidth(3.5)
    .fillAndStroke(type.full ? INK : WHITE, INK);
  doc.undash();
  if (state === 'in' && kind === 'position')
    doc.circle(24, 24, 14.6).lineWidth(1.75).strokeColor(WHITE).stroke();
  if (state === 'started') doc.path(halves[kind]).lineWidth(1).fillAndStroke(INK, INK);
  if (kind === 'temporary') doc.circle(24, 9, 2.6).fill(type.full ? WHITE : INK);
  badge(pen, state);
  if (text !== '') {
    if (state === 'blocked') doc.circle(24, 24, type.size * 0.3 * text.length + 4).fill(WHITE);
    pen.onBaseline(
      text,
      24,
      type.y + type.size * 0.355,
      { face: 'sans-bold', size: type.size, colour: type.full ? WHITE : INK },
      'middle',
    );
  }
  doc.restore();
}

function badge({ doc }: Pen, state: MarkState): void {
  if (state === 'blocked') doc.path('M6 42L42 6').lineWidth(4.5).strokeColor(INK).stroke();
  if (state === 'paint-checked') {
    doc.path('M31.5 31.5L45 45').lineWidth(10.5).strokeColor(INK).stroke();
    doc.path('M32.5 32.5L43.5 43.5').lineWidth(5).strokeColor(WHITE).stroke();
  }
  if (state === 'later') {
    doc.circle(38, 10, 11.5).fill(WHITE);
    doc.circle(38, 10, 8).lineWidth(2.75).fillAndStroke(WHITE, INK);
    doc.path('M38 5.5V10l3.2 2.2').lineWidth(2.25).strokeColor(INK).stroke();
  }
  if (state === 'missing') {
    doc.roundedRect(27.5, -0.5, 21, 21, 3).fill(WHITE);
    doc.roundedRect(29.5, 1.5, 17, 17, 1.5).fill(INK);
    doc
      .path('M35 7.4c0-4 6.2-3.9 6.2-.3c0 2-3.1 2.3-3.1 4.9M38.1 14.2v2.1')
      .lineWidth(2.4)
      .strokeColor(WHITE)
      .stroke();
  }
}

/** The picture cropped to its joint, with leaders, moves and marks on it. `box` is where it stands, px. */
export function drawPhoto(pen: Pen, photo: SheetPhoto, left: number, top: number, box: Extent): void {
  const { doc } = pen;
  const view = layPhoto(photo, box, framed(photo, box));
  doc.save();
  doc.translate(left, top);
  doc.rect(0, 0, box.width, box.height).clip();
  doc.image(Buffer.from(photo.bytes), view.left, view.top, { width: view.width, height: view.height });
  moves(pen, photo, view);
  const placed = placeDiscs(
    photo.marks.map((mark) => ({
      id: mark.id,
      at: toScreen(mark, view),
      group: mark.group,
      radius: mark.radius === undefined ? null : mark.radius * view.width,
    })),
    box,
    ON_PHOTO / 2,
    view.width * 0.05,
  );
  for (const one of placed) leader(pen, one);
  const byId = new Map(photo.marks.map((mark) => [mark.id, mark]));
  for (const { id, disc } of placed) drawMark(pen, byId.get(id) as PhotoMark, disc.x, disc.y, ON_PHOTO);
  doc.restore();
}

/** Room for a disc beside its hole at the edge of the picture. px */
const MARGIN = 50;
/** Air round the outermost marks of a joint: for their discs. px */
const AIR = 95;
/** Drawn larger than this, a picture for paper shows its pixels. */
const MOST_ZOOM = 1.7;

/** True where the picture fills the box without a mark that is cut off. */
export function fills(photo: SheetPhoto, box: Extent): boolean {
  const { scale } = framePhoto(photo, box, 'crop', photo.marks, MARGIN);
  return scale >= Math.max(box.width / photo.width, box.height / photo.height) - 1e-9;
}

/** A joint that is small on its photo is drawn larger, so that its holes and their order are told apart. */
function framed(photo: SheetPhoto, box: Extent): Framing {
  const frame = framePhoto(photo, box, 'crop', photo.marks, MARGIN);
  if (photo.marks.length < 3) return frame;
  const span = (values: readonly number[], side: number) =>
    Math.max(1, (Math.max(...values) - Math.min(...values)) * side * frame.scale);
  const zoom = Math.min(
    MOST_ZOOM,
    (box.width - 2 * AIR) /
      span(
        photo.marks.map((mark) => mark.x),
        photo.width,
      ),
    (box.height - 2 * AIR) /
      span(
        photo.marks.map((mark) => mark.y),
        photo.height,
      ),
  );
  return { ...frame, scale: frame.scale * Math.max(1, zoom) };
}

function moves({ doc }: Pen, photo: SheetPhoto, view: View): void {
  const byId = new Map(photo.marks.map((mark) => [mark.id, mark]));
  const holes = photo.marks.filter((mark) => mark.kind === 'position');
  const washer = washerOf(
    holes.map((mark) => toScreen(mark, view)),
    Math.min(38, view.width * 0.05),
    // Paper shows a joint small and has no finger: moves go on to the heads.
    0.2,
  );
  for (const { fromId, toId } of photo.moves) {
    const [from, to] = [byId.get(fromId), byId.get(toId)];
    if (from === undefined || to === undefined) continue;
    const shape = wedge(toScreen(from, view), toScreen(to, view), washer, 9);
    if (shape.length === 0) continue;
    doc
      .polygon(...shape.map(({ x, y }) => [x, y]))
      .lineWidth(1.5)
      .fillAndStroke(WHITE, INK);
  }
}

function leader({ doc }: Pen, { disc, dot }: Placed): void {
  for (const [colour, width] of [
    [INK, 5.5],
    [WHITE, 2.5],
  ] as const)
    doc.moveTo(dot.x, dot.y).lineTo(disc.x, disc.y).lineWidth(width).strokeColor(colour).stroke();
  doc.circle(dot.x, dot.y, 4.5).lineWidth(2).fillAndStroke(WHITE, INK);
}
