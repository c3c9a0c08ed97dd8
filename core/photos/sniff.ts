/** What a file is by its first bytes; its name is never believed. */

/** The kinds that are taken, as media types. HEIF means an HEVC or other picture in that container, not AV1. */
export type PictureType = 'image/jpeg' | 'image/png' | 'image/webp' | 'image/heic' | 'image/avif';

export type Sniffed =
  | { readonly kind: 'picture'; readonly type: PictureType }
  /** Known, and not taken: `what` stands in the sentence. */
  | { readonly kind: 'other'; readonly what: string }
  | { readonly kind: 'unknown' };

/** How many bytes from the start of a file are looked at. */
export const SNIFF_BYTES = 4100;

const ascii = (bytes: Uint8Array, from: number, to: number): string =>
  String.fromCharCode(...bytes.subarray(from, Math.min(to, bytes.length)));

/** Signatures of what people drop by mistake. Source: the formats' own specifications. */
const OTHERS: readonly { readonly at: number; readonly sign: string; readonly what: string }[] = [
  { at: 0, sign: 'GIF8', what: 'a GIF' },
  { at: 0, sign: 'BM', what: 'a BMP' },
  { at: 0, sign: 'II*\0', what: 'a TIFF or a raw file of a camera' },
  { at: 0, sign: 'MM\0*', what: 'a TIFF or a raw file of a camera' },
  { at: 0, sign: 'IIU\0', what: 'a raw file of a camera' },
  { at: 0, sign: 'IIRO', what: 'a raw file of a camera' },
  { at: 0, sign: 'FUJIFILMCCD-RAW', what: 'a raw file of a camera' },
  { at: 0, sign: 'II+\0', what: 'a BigTIFF' },
  { at: 0, sign: 'MM\0+', what: 'a BigTIFF' },
  { at: 0, sign: '8BPS', what: 'a Photoshop document' },
  { at: 0, sign: '%PDF', what: 'a PDF' },
  { at: 0, sign: 'PK\x03\x04', what: 'a ZIP archive or an office document' },
  { at: 0, sign: '\x1aE\xdf\xa3', what: 'a video' },
  { at: 0, sign: '\xff\x0a', what: 'a JPEG XL' },
  { at: 4, sign: 'JXL ', what: 'a JPEG XL' },
  { at: 4, sign: 'jP  ', what: 'a JPEG 2000' },
  { at: 8, sign: 'AVI ', what: 'a video' },
  { at: 8, sign: 'WAVE', what: 'a sound' },
  { at: 0, sign: 'ID3', what: 'a sound' },
];

const HEIC_BRANDS = new Set(['heic', 'heix', 'heim', 'heis', 'hevc', 'hevx', 'hevm', 'hevs']);
const AVIF_BRANDS = new Set(['avif', 'avis']);
const HEIF_BRANDS = new Set(['mif1', 'mif2', 'mif3', 'msf1', 'miaf', 'MiHE', 'MiHB']);

/** Brands of an ISO base media file, the major one first; empty when it is none. */
export function brandsOf(head: Uint8Array): string[] {
  if (ascii(head, 4, 8) !== 'ftyp') return [];
  const size = new DataView(head.buffer, head.byteOffset, head.byteLength).getUint32(0);
  const end = Math.min(size === 0 ? head.length : size, head.length);
  const brands = [ascii(head, 8, 12)];
  for (let at = 16; at + 4 <= end; at += 4) brands.push(ascii(head, at, at + 4));
  return brands;
}

function sniffContainer(brands: readonly string[]): Sniffed {
  const major = brands[0] ?? '';
  if (major === 'crx ') return { kind: 'other', what: 'a raw file of a camera' };
  // The major brand decides where it is clear; files that call themselves plainly "mif1" say the rest among the others.
  const clear = [major, ...brands].find((brand) => AVIF_BRANDS.has(brand) || HEIC_BRANDS.has(brand));
  if (clear !== undefined && AVIF_BRANDS.has(clear)) return { kind: 'picture', type: 'image/avif' };
  if (clear !== undefined || brands.some((brand) => HEIF_BRANDS.has(brand)))
    return { kind: 'picture', type: 'image/heic' };
  return { kind: 'other', what: 'a video' };
}

/** Says what the first bytes of a file belong to. `head`: the first SNIFF_BYTES bytes, or all of a shorter file. */
export function sniff(head: Uint8Array): Sniffed {
  if (head[0] === 0xff && head[1] === 0xd8 && head[2] === 0xff)
    return { kind: 'picture', type: 'image/jpeg' };
  if (ascii(head, 0, 8) === '\x89PNG\r\n\x1a\n') return { kind: 'picture', type: 'image/png' };
  if (ascii(head, 0, 4) === 'RIFF' && ascii(head, 8, 12) === 'WEBP')
    return { kind: 'picture', type: 'image/webp' };
  const brands = brandsOf(head);
  if (brands.length > 0) return sniffContainer(brands);
  for (const { at, sign, what } of OTHERS)
    if (ascii(head, at, at + sign.length) === sign) return { kind: 'other', what };
  const text = ascii(head, 0, 1024)
    .replace(/^\xef\xbb\xbf/, '')
    .trimStart();
  if (/^(<\?xml[^>]*>\s*)?(<!--.*?-->\s*|<!DOCTYPE svg[^>]*>\s*)*<svg[\s>]/is.test(text))
    return { kind: 'other', what: 'an SVG drawing' };
  if (/^(<!doctype html|<html)/i.test(text)) return { kind: 'other', what: 'a web page' };
  return { kind: 'unknown' };
}

const NAMES: Readonly<Record<PictureType, string>> = {
  'image/jpeg': 'JPEG',
  'image/png': 'PNG',
  'image/webp': 'WebP',
  'image/heic': 'HEIC',
  'image/avif': 'AVIF',
};

const ENDINGS: Readonly<Record<string, PictureType>> = {
  jpg: 'image/jpeg',
  jpeg: 'image/jpeg',
  jpe: 'image/jpeg',
  jfif: 'image/jpeg',
  png: 'image/png',
  webp: 'image/webp',
  heic: 'image/heic',
  heif: 'image/heic',
  hif: 'image/heic',
  avif: 'image/avif',
};

/** Said beside a photo whose name ends as another kind of file; null when it fits or says nothing. */
export function misnamed(fileName: string, type: PictureType): string | null {
  const ending = /\.([^.]{1,10})$/.exec(fileName)?.[1]?.toLowerCase();
  if (ending === undefined || ENDINGS[ending] === type) return null;
  // ".heif" is the container's own name, whatever is coded inside it.
  if ((ending === 'heif' || ending === 'hif') && type === 'image/avif') return null;
  return `Named .${ending}, but inside it is a ${NAMES[type]}; taken as that.`;
}
