import { type Box, boxes, breaksOff, inside, type ItemPlace, itemOfKind, itemPlaces } from './heif-boxes.ts';
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
  readonly exif: Uint8Array | null;
}

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

/** Where the last byte that the file lists should be. */
const lastByte = (places: readonly ItemPlace[]): number =>
  Math.max(0, ...places.filter((one) => one.inFile).flatMap((one) => one.extents.map(({ to }) => to)));

/**
 * The EXIF block (from its byte order mark on), where the container holds one. Before it stands how far into the item
 * it begins, in 4 bytes. Source: ISO/IEC 23008-12, annex A.2.1.
 */
function exifIn(view: DataView, parts: readonly Box[], places: readonly ItemPlace[]): Uint8Array | null {
  const iinf = inside(parts, 'iinf');
  const id = iinf && itemOfKind(view, iinf, 'Exif');
  const place = places.find((one) => one.id === id && one.inFile);
  const [extent, second] = place?.extents ?? [];
  if (!extent || second || extent.to > view.byteLength || extent.to - extent.from < 12) return null;
  const skip = view.getUint32(extent.from) + 4;
  return new Uint8Array(view.buffer, view.byteOffset, view.byteLength).subarray(
    extent.from + skip,
    extent.to,
  );
}

/** Reads the container; nonsense in it gives nulls and an upright turn, never an exception. */
export function heifFacts(file: Uint8Array): HeifFacts {
  const none: HeifFacts = {
    width: null,
    height: null,
    turn: 1,
    cut: false,
    sequence: false,
    exif: null,
  };
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
    const places = iloc ? itemPlaces(view, iloc) : [];
    const cut = breaksOff(view) || lastByte(places) > file.length;
    const exif = exifIn(view, parts, places);
    if (item === null || !iprp) return { ...none, cut, sequence, exif };
    const properties = propertiesOf(view, iprp, item);
    const ispe = inside(properties, 'ispe');
    return {
      width: ispe ? view.getUint32(ispe.start + 4) : null,
      height: ispe ? view.getUint32(ispe.start + 8) : null,
      turn: turnIn(view, properties),
      cut,
      sequence,
      exif,
    };
  } catch (error) {
    if (error instanceof RangeError) return { ...none, cut: true };
    throw error;
  }
}
