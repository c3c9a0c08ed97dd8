import type { Extent } from './facts.ts';

/**
 * How the primary picture of a HEIF container (HEIC, AVIF) is stored and how it is to be turned: from its `ispe`,
 * `irot` and `imir` properties. The container alone decides; an EXIF orientation in the same file only repeats it,
 * or is left over (ISO/IEC 23008-12, 6.5.10 and 6.5.12).
 */
export interface HeifPicture extends Extent {
  /** 1 to 8 as in EXIF: what must be done to the stored picture to see it upright. */
  readonly turn: number;
}

interface Box {
  readonly type: string;
  readonly from: number;
  readonly to: number;
}

/** Boxes that lie side by side between two offsets. Stops at anything that does not fit. */
function boxesIn(view: DataView, from: number, to: number): Box[] {
  const boxes: Box[] = [];
  for (let at = from; at + 8 <= to && boxes.length < 4096; ) {
    const short = view.getUint32(at);
    const type = String.fromCharCode(...[4, 5, 6, 7].map((i) => view.getUint8(at + i)));
    const head = short === 1 ? 16 : 8;
    if (short === 1 && at + 16 > to) break;
    const size = short === 0 ? to - at : short === 1 ? Number(view.getBigUint64(at + 8)) : short;
    if (size < head || at + size > to) break;
    boxes.push({ type, from: at + head, to: at + size });
    at += size;
  }
  return boxes;
}

const find = (boxes: readonly Box[], type: string): Box | null =>
  boxes.find((box) => box.type === type) ?? null;

function primaryId(view: DataView, pitm: Box | null): number | null {
  if (!pitm) return null;
  return view.getUint8(pitm.from) === 0 ? view.getUint16(pitm.from + 4) : view.getUint32(pitm.from + 4);
}

/** Numbers of the properties of one item, from 1, in the order in which they apply. */
function propertiesOf(view: DataView, ipma: Box, itemId: number): number[] {
  const version = view.getUint8(ipma.from);
  const wide = (view.getUint8(ipma.from + 3) & 1) === 1;
  const count = view.getUint32(ipma.from + 4);
  let at = ipma.from + 8;
  for (let i = 0; i < count && at < ipma.to; i++) {
    const id = version < 1 ? view.getUint16(at) : view.getUint32(at);
    at += version < 1 ? 2 : 4;
    const many = view.getUint8(at++);
    const numbers: number[] = [];
    for (let k = 0; k < many; k++) {
      numbers.push(wide ? view.getUint16(at) & 0x7fff : view.getUint8(at) & 0x7f);
      at += wide ? 2 : 1;
    }
    if (id === itemId) return numbers;
  }
  return [];
}

type Matrix = readonly [number, number, number, number];
const times = ([a, b, c, d]: Matrix, [e, f, g, h]: Matrix): Matrix => [
  a * e + b * g,
  a * f + b * h,
  c * e + d * g,
  c * f + d * h,
];
/** A quarter turn against the clock, x to the right and y down. */
const QUARTER: Matrix = [0, 1, -1, 0];
const TOP_TO_BOTTOM: Matrix = [1, 0, 0, -1];
const LEFT_TO_RIGHT: Matrix = [-1, 0, 0, 1];
/** The eight turns of EXIF, by what they do to a stored point. */
const TURNS: readonly string[] = [
  '1,0,0,1',
  '-1,0,0,1',
  '-1,0,0,-1',
  '1,0,0,-1',
  '0,1,1,0',
  '0,-1,1,0',
  '0,-1,-1,0',
  '0,1,-1,0',
];

/** Null when the container does not hold together; never throws. */
export function heifPicture(bytes: Uint8Array): HeifPicture | null {
  try {
    return readPicture(new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength));
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

function readPicture(view: DataView): HeifPicture | null {
  const meta = find(boxesIn(view, 0, view.byteLength), 'meta');
  if (!meta) return null;
  const inner = boxesIn(view, meta.from + 4, meta.to);
  const id = primaryId(view, find(inner, 'pitm'));
  const iprp = find(inner, 'iprp');
  if (id === null || !iprp) return null;
  const groups = boxesIn(view, iprp.from, iprp.to);
  const ipco = find(groups, 'ipco');
  if (!ipco) return null;
  const all = boxesIn(view, ipco.from, ipco.to);
  const own = groups
    .filter((box) => box.type === 'ipma')
    .flatMap((ipma) => propertiesOf(view, ipma, id))
    .flatMap((number) => all[number - 1] ?? []);
  const ispe = find(own, 'ispe');
  if (!ispe) return null;
  let turned: Matrix = [1, 0, 0, 1];
  for (const box of own) {
    if (box.type === 'irot')
      for (let i = view.getUint8(box.from) & 3; i > 0; i--) turned = times(QUARTER, turned);
    if (box.type === 'imir')
      turned = times((view.getUint8(box.from) & 1) === 0 ? TOP_TO_BOTTOM : LEFT_TO_RIGHT, turned);
  }
  const turn = TURNS.indexOf(turned.map((one) => one + 0).join(',')) + 1;
  return { width: view.getUint32(ispe.from + 4), height: view.getUint32(ispe.from + 8), turn: turn || 1 };
}
