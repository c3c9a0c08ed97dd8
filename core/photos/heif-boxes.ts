/** The boxes of an ISO base media file, as far as HEIF needs them. Source: ISO/IEC 14496-12. */
export interface Box {
  readonly type: string;
  readonly start: number;
  readonly end: number;
}

export const textAt = (view: DataView, at: number): string =>
  String.fromCharCode(view.getUint8(at), view.getUint8(at + 1), view.getUint8(at + 2), view.getUint8(at + 3));

/** Boxes between two offsets; stops quietly at nonsense, so that a broken file gives what can be read. */
export function boxes(view: DataView, from: number, to: number): Box[] {
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
    found.push({ type: textAt(view, at + 4), start: at + head, end: Math.min(at + size, to) });
    at += size;
  }
  return found;
}

/** Whether the file ends before the last of its outer boxes does. */
export function breaksOff(view: DataView): boolean {
  let at = 0;
  while (at + 8 <= view.byteLength) {
    const short = view.getUint32(at);
    if (short === 1 && at + 16 > view.byteLength) return true;
    const size = short === 1 ? Number(view.getBigUint64(at + 8)) : short;
    // 0 means: to the end, wherever that is. Less than its own head is nonsense, and not for here.
    if (size < 8) return false;
    at += size;
  }
  return at > view.byteLength || at === 0;
}

export const inside = (list: readonly Box[], type: string): Box | null =>
  list.find((box) => box.type === type) ?? null;

/** Where the bytes of one item lie. `inFile`: in the file itself, not inside another box or item. */
export interface ItemPlace {
  readonly id: number;
  readonly inFile: boolean;
  readonly extents: readonly { readonly from: number; readonly to: number }[];
}

/** Reads a number of 0, 4 or 8 bytes, as the table of places has them. */
function sized(view: DataView, at: number, bytes: number): number {
  if (bytes === 4) return view.getUint32(at);
  return bytes === 8 ? Number(view.getBigUint64(at)) : 0;
}

/** The table of places (box iloc). */
export function itemPlaces(view: DataView, iloc: Box): ItemPlace[] {
  const version = view.getUint8(iloc.start);
  const wide = version >= 2;
  const [sizes, more] = [view.getUint8(iloc.start + 4), view.getUint8(iloc.start + 5)];
  const [offsetSize, lengthSize, baseSize] = [sizes >> 4, sizes & 15, more >> 4];
  const indexSize = version === 0 ? 0 : more & 15;
  let at = iloc.start + 6;
  let left = wide ? view.getUint32(at) : view.getUint16(at);
  at += wide ? 4 : 2;
  const places: ItemPlace[] = [];
  for (; left > 0 && at < iloc.end; left--) {
    const id = wide ? view.getUint32(at) : view.getUint16(at);
    at += wide ? 4 : 2;
    const inFile = version === 0 || (view.getUint16(at) & 15) === 0;
    if (version > 0) at += 2;
    at += 2;
    const base = sized(view, at, baseSize);
    at += baseSize;
    const extents: { from: number; to: number }[] = [];
    let count = view.getUint16(at);
    at += 2;
    for (; count > 0 && at < iloc.end; count--) {
      at += indexSize;
      const from = base + sized(view, at, offsetSize);
      at += offsetSize;
      extents.push({ from, to: from + sized(view, at, lengthSize) });
      at += lengthSize;
    }
    places.push({ id, inFile, extents });
  }
  return places;
}

/** Number of the first item of a kind such as "Exif" (box iinf); null when there is none. */
export function itemOfKind(view: DataView, iinf: Box, kind: string): number | null {
  const version = view.getUint8(iinf.start);
  for (const infe of boxes(view, iinf.start + (version === 0 ? 6 : 8), iinf.end)) {
    const entry = view.getUint8(infe.start);
    if (infe.type !== 'infe' || entry < 2) continue;
    const wide = entry === 3;
    if (textAt(view, infe.start + (wide ? 10 : 8)) === kind)
      return wide ? view.getUint32(infe.start + 4) : view.getUint16(infe.start + 4);
  }
  return null;
}
