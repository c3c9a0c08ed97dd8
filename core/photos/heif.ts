import { type Turn, thenTurn } from './turn.ts';

/**
 * What the container of a HEIC or AVIF says about its primary picture. Read here because decoders apply the
 * container's turn by themselves and no longer say how the picture was stored. Source: ISO/IEC 23008-12 (HEIF).
 */
export interface HeifFacts {
  /** Size as stored, before the container's turn; null when it is not said. */
  readonly width: number | null;
  readonly height: number | null;
  /** Turns and mirrors of the container, as one. EXIF in the same file says it again, or wrongly: it does not count. */
  readonly turn: Turn;
  /** The file ends before what it lists. */
  readonly cut: boolean;
  /** A film or a burst: more than one picture to be shown in turn. */
  readonly sequence: boolean;
  /** Depth in bits of the primary picture's first channel, 8 when not said. */
  readonly bits: number;
}

interface Box {
  readonly type: string;
  readonly start: number;
  readonly end: number;
}

/** Boxes between two offsets; stops quietly at nonsense, so that a broken file gives what can be read. */
function boxes(view: DataView, from: number, to: number): Box[] {
  const found: Box[] = [];
  let at = from;
  while (at + 8 <= to && found.length < 10_000) {
    let size = view.getUint32(at);
    let head = 8;
    if (size === 1 && at + 16 <= to) {
      size = Number(view.getBigUint64(at + 8));
      head = 16;
    } else if (size === 0) size = to - at;
    if (size < head) break;
    found.push({ type: text(view, at + 4), start: at + head, end: Math.min(at + size, to) });
    at += size;
  }
  return found;
}

const text = (view: DataView, at: number): string =>
  String.fromCharCode(view.getUint8(at), view.getUint8(at + 1), view.getUint8(at + 2), view.getUint8(at + 3));

const inside = (list: readonly Box[], type: string): Box | null =>
  list.find((box) => box.type === type) ?? null;

/** Number of the primary item (box pitm). */
function primaryOf(view: DataView, box: Box | null): number | null {
  if (!box || box.start + 6 > box.end) return null;
  return view.getUint8(box.start) === 0 ? view.getUint16(box.start + 4) : view.getUint32(box.start + 4);
}

/** Properties of one item, in the order they are to be applied (boxes ipco and ipma). */
function propertiesOf(view: DataView, iprp: Box, item: number): Box[] {
  const parts = boxes(view, iprp.start, iprp.end);
  const ipco = inside(parts, 'ipco');
  if (!ipco) return [];
  const all = boxes(view, ipco.start, ipco.end);
  const found: Box[] = [];
  for (const ipma of parts.filter((box) => box.type === 'ipma')) {
    const version = view.getUint8(ipma.start);
    const wide = (view.getUint8(ipma.start + 3) & 1) === 1;
    let left = view.getUint32(ipma.start + 4);
    let at = ipma.start + 8;
    for (; left > 0 && at < ipma.end; left--) {
      const id = version === 0 ? view.getUint16(at) : view.getUint32(at);
      at += version === 0 ? 2 : 4;
      const count = view.getUint8(at++);
      for (let i = 0; i < count; i++) {
        const index = wide ? view.getUint16(at) & 0x7fff : view.getUint8(at) & 0x7f;
        at += wide ? 2 : 1;
        const box = all[index - 1];
        if (id === item && box) found.push(box);
      }
    }
  }
  return found;
}

/** The container counts quarter turns to the left. Source: ISO/IEC 23008-12, 6.5.10 and 6.5.12. */
const QUARTERS: readonly Turn[] = [1, 8, 3, 6];

function turnIn(view: DataView, properties: readonly Box[]): Turn {
  let turn: Turn = 1;
  for (const box of properties) {
    if (box.type === 'irot') turn = thenTurn(turn, QUARTERS[view.getUint8(box.start) & 3] ?? 1);
    // Axis 0: upside down about the level line; axis 1: left and right change places.
    if (box.type === 'imir') turn = thenTurn(turn, (view.getUint8(box.start) & 1) === 0 ? 4 : 2);
  }
  return turn;
}

/** Reads a number of 0, 4 or 8 bytes, as the table of places has them. */
function sized(view: DataView, at: number, bytes: number): number {
  if (bytes === 4) return view.getUint32(at);
  return bytes === 8 ? Number(view.getBigUint64(at)) : 0;
}

/** Where the last byte that the file lists should be (box iloc). */
function lastByte(view: DataView, iloc: Box): number {
  const version = view.getUint8(iloc.start);
  const [sizes, more] = [view.getUint8(iloc.start + 4), view.getUint8(iloc.start + 5)];
  const [offsetSize, lengthSize, baseSize] = [sizes >> 4, sizes & 15, more >> 4];
  const indexSize = version === 0 ? 0 : more & 15;
  let at = iloc.start + 6;
  let items = version < 2 ? view.getUint16(at) : view.getUint32(at);
  at += version < 2 ? 2 : 4;
  let last = 0;
  for (; items > 0 && at < iloc.end; items--) {
    at += version < 2 ? 2 : 4;
    // Only places in the file itself count; others lie inside boxes or in other items.
    const inFile = version === 0 || (view.getUint16(at) & 15) === 0;
    if (version > 0) at += 2;
    at += 2;
    const base = sized(view, at, baseSize);
    at += baseSize;
    const extents = view.getUint16(at);
    at += 2;
    for (let i = 0; i < extents; i++) {
      at += indexSize;
      const end = base + sized(view, at, offsetSize) + sized(view, at + offsetSize, lengthSize);
      at += offsetSize + lengthSize;
      if (inFile) last = Math.max(last, end);
    }
  }
  return last;
}

/** Reads the container; nonsense in it gives nulls and an upright turn, never an exception. */
export function heifFacts(file: Uint8Array): HeifFacts {
  const none: HeifFacts = { width: null, height: null, turn: 1, cut: false, sequence: false, bits: 8 };
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  try {
    const top = boxes(view, 0, file.length);
    const meta = inside(top, 'meta');
    const sequence = inside(top, 'moov') !== null;
    if (!meta) return { ...none, cut: !sequence, sequence };
    const parts = boxes(view, meta.start + 4, meta.end);
    const item = primaryOf(view, inside(parts, 'pitm'));
    const iprp = inside(parts, 'iprp');
    const iloc = inside(parts, 'iloc');
    const cut = iloc !== null && lastByte(view, iloc) > file.length;
    if (item === null || !iprp) return { ...none, cut, sequence };
    const properties = propertiesOf(view, iprp, item);
    const ispe = inside(properties, 'ispe');
    const pixi = inside(properties, 'pixi');
    return {
      width: ispe ? view.getUint32(ispe.start + 4) : null,
      height: ispe ? view.getUint32(ispe.start + 8) : null,
      turn: turnIn(view, properties),
      cut,
      sequence,
      bits: pixi ? view.getUint8(pixi.start + 5) : 8,
    };
  } catch (error) {
    if (error instanceof RangeError) return { ...none, cut: true };
    throw error;
  }
}
