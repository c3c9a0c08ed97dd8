/**
 * Where a point of a photo is. Markers live in the upright picture as fractions 0 to 1 of its width and height; on the
 * screen they are pixels of the box the photo stands in. Nothing here knows of React or of the page.
 */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Extent {
  readonly width: number;
  readonly height: number;
}

/** A photo laid into a box: its size on the screen and where its upper left corner is, px. */
export interface View {
  readonly box: Extent;
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly top: number;
}

/** How often the stored pixels are turned or mirrored to be upright: EXIF orientation 1 to 8 (EXIF 2.32, tag 0x0112). */
export type Turn = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8;

/** Size of the upright picture: the stored one, with its sides swapped for the four turns by a quarter. */
export function uprightExtent(stored: Extent, turn: Turn): Extent {
  return turn >= 5 ? { width: stored.height, height: stored.width } : stored;
}

/** Fraction in the stored picture → fraction in the upright one. */
export function toUpright({ x, y }: Point, turn: Turn): Point {
  switch (turn) {
    case 1:
      return { x, y };
    case 2:
      return { x: 1 - x, y };
    case 3:
      return { x: 1 - x, y: 1 - y };
    case 4:
      return { x, y: 1 - y };
    case 5:
      return { x: y, y: x };
    case 6:
      return { x: 1 - y, y: x };
    case 7:
      return { x: 1 - y, y: 1 - x };
    case 8:
      return { x: y, y: 1 - x };
  }
}

/** Fraction in the upright picture → fraction in the stored one. Turns 6 and 8 undo each other, the rest themselves. */
export function toStored(point: Point, turn: Turn): Point {
  return toUpright(point, turn === 6 ? 8 : turn === 8 ? 6 : turn);
}

/** How much larger than the photo it is drawn, and which point of it stands in the middle. */
export interface Framing {
  readonly scale: number;
  readonly centre: Point;
}

/**
 * "whole" shows all of the photo. "crop" fills the box, but never so tightly that a mark or its disc is cut off: then
 * it draws back, at most to the whole photo.
 *
 * @param marks what must stay in sight, as fractions
 * @param margin room that each of them needs on every side, px
 */
export function framePhoto(
  photo: Extent,
  box: Extent,
  fit: 'whole' | 'crop',
  marks: readonly Point[],
  margin: number,
): Framing {
  const across = box.width / photo.width;
  const down = box.height / photo.height;
  const whole = Math.min(across, down);
  if (fit === 'whole') return { scale: whole, centre: { x: 0.5, y: 0.5 } };
  const fill = Math.max(across, down);
  if (marks.length === 0) return { scale: fill, centre: { x: 0.5, y: 0.5 } };
  const x = span(marks.map((mark) => mark.x));
  const y = span(marks.map((mark) => mark.y));
  const fits = (room: number, size: number) =>
    size === 0 ? Number.POSITIVE_INFINITY : Math.max(0, room) / size;
  const scale = Math.min(
    fits(box.width - 2 * margin, (x.to - x.from) * photo.width),
    fits(box.height - 2 * margin, (y.to - y.from) * photo.height),
  );
  return {
    // A sliver of empty ground beside the photo is worse than a mark a little nearer the edge.
    scale: Math.max(whole, scale) > fill * 0.92 ? fill : Math.max(whole, scale),
    centre: { x: (x.from + x.to) / 2, y: (y.from + y.to) / 2 },
  };
}

function span(values: readonly number[]): { from: number; to: number } {
  return { from: Math.min(...values), to: Math.max(...values) };
}

/**
 * Lays a photo into a box. The picture never leaves a gap that it could fill: the centre is taken as near to the middle
 * as that allows.
 */
export function layPhoto(photo: Extent, box: Extent, { scale, centre }: Framing): View {
  const width = photo.width * scale;
  const height = photo.height * scale;
  return {
    box,
    width,
    height,
    left: along(box.width, width, centre.x),
    // A lower picture stands at the top: what is written belongs below it.
    top: height <= box.height ? 0 : along(box.height, height, centre.y),
  };
}

function along(box: number, picture: number, centre: number): number {
  if (picture <= box) return (box - picture) / 2;
  return Math.min(0, Math.max(box - picture, box / 2 - centre * picture));
}

/** Fraction → px in the box. */
export function toScreen(point: Point, view: View): Point {
  return { x: view.left + point.x * view.width, y: view.top + point.y * view.height };
}

/** Px in the box → fraction; beyond the picture's edge the nearest point of it. */
export function toFraction(point: Point, view: View): Point {
  return {
    x: hold((point.x - view.left) / view.width),
    y: hold((point.y - view.top) / view.height),
  };
}

function hold(value: number): number {
  return Math.min(1, Math.max(0, value));
}

/** True where a point of the box lies on the picture. */
export function onPhoto(point: Point, view: View): boolean {
  const { left, top, width, height } = view;
  return point.x >= left && point.x <= left + width && point.y >= top && point.y <= top + height;
}

/**
 * The centre that keeps what is under the pointer under it when the scale changes.
 *
 * @param held px in the box
 */
export function centreAfterZoom(photo: Extent, view: View, scale: number, held: Point): Point {
  const fraction = toFraction(held, view);
  return {
    x: fraction.x + (view.box.width / 2 - held.x) / (photo.width * scale),
    y: fraction.y + (view.box.height / 2 - held.y) / (photo.height * scale),
  };
}

/** The centre after the picture was drawn along by `by` px. */
export function centreAfterPan(view: View, by: Point): Point {
  const middle = { x: view.box.width / 2 - by.x, y: view.box.height / 2 - by.y };
  return { x: (middle.x - view.left) / view.width, y: (middle.y - view.top) / view.height };
}
