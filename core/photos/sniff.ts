/** What a file is, told from its first bytes: names lie. */
export type PhotoType = 'image/jpeg' | 'image/png' | 'image/webp' | 'image/heic' | 'image/avif';

/** How many bytes of a file are looked at. */
export const HEAD_BYTES = 512;

const ascii = (head: Uint8Array, from: number, to: number): string =>
  String.fromCharCode(...head.subarray(from, to));

const AVIF_BRANDS: readonly string[] = ['avif', 'avis'];
const HEIC_BRANDS: readonly string[] = [
  'heic',
  'heix',
  'heim',
  'heis',
  'hevc',
  'hevx',
  'hevm',
  'hevs',
  'mif1',
  'msf1',
];

/** The brands of an ISO base media file (ISO/IEC 14496-12): major first, then the compatible ones. */
function brandsOf(head: Uint8Array): string[] {
  if (ascii(head, 4, 8) !== 'ftyp') return [];
  const size = new DataView(head.buffer, head.byteOffset, head.byteLength).getUint32(0);
  const end = Math.min(size, head.length);
  const brands = [ascii(head, 8, 12)];
  for (let at = 16; at + 4 <= end; at += 4) brands.push(ascii(head, at, at + 4));
  return brands;
}

/** The type of photo, or null when it is none that this program takes. */
export function photoTypeOf(head: Uint8Array): PhotoType | null {
  if (head.length < 12) return null;
  if (head[0] === 0xff && head[1] === 0xd8 && head[2] === 0xff) return 'image/jpeg';
  if (head[0] === 0x89 && ascii(head, 1, 8) === 'PNG\r\n\x1a\n') return 'image/png';
  if (ascii(head, 0, 4) === 'RIFF' && ascii(head, 8, 12) === 'WEBP') return 'image/webp';
  const brands = brandsOf(head);
  if (brands.some((brand) => AVIF_BRANDS.includes(brand))) return 'image/avif';
  return brands.some((brand) => HEIC_BRANDS.includes(brand)) ? 'image/heic' : null;
}

const OTHERS: readonly (readonly [string, RegExp])[] = [
  ['a GIF', /^GIF8/],
  ['a PDF', /^%PDF/],
  ['a TIFF or camera raw file', /^(II\*\0|MM\0\*|IIRO|IIRS|IIU\0|FUJIFILM)/],
  ['a BMP', /^BM/],
  ['a ZIP archive', /^PK\x03\x04/],
  ['a video', /^.{4}ftyp|^\x1aE\xdf\xa3|^RIFF.{4}AVI/s],
  ['an SVG drawing', /^\s*(<\?xml[^>]*>\s*)?(<!--.*?-->\s*)?<svg/s],
  ['a web page', /^\s*<(!doctype html|html)/i],
  ['a JPEG XL', /^(\xff\x0a|\0\0\0\x0cJXL )/],
  ['a PSD', /^8BPS/],
];

/** What the file is instead, in words, for the sentence that refuses it. */
export function otherTypeOf(head: Uint8Array): string {
  const text = String.fromCharCode(...head);
  const known = OTHERS.find(([, signs]) => signs.test(text));
  if (known) return known[0];
  return /^[\t\r\n\x20-\x7e\x80-\xff]*$/.test(text) ? 'a text' : 'a file of another kind';
}

const ENDINGS: Readonly<Record<PhotoType, RegExp>> = {
  'image/jpeg': /\.(jpe?g|jfif|mpo)$/i,
  'image/png': /\.png$/i,
  'image/webp': /\.webp$/i,
  'image/heic': /\.(hei[cf]|hif)$/i,
  'image/avif': /\.avif$/i,
};
const WORDS: Readonly<Record<PhotoType, string>> = {
  'image/jpeg': 'JPEG',
  'image/png': 'PNG',
  'image/webp': 'WebP',
  'image/heic': 'HEIC',
  'image/avif': 'AVIF',
};

/** "Named .png, but it is a JPEG": null where the name agrees or has no ending that says anything. */
export function mislabelled(fileName: string, type: string): string | null {
  const known = (Object.keys(ENDINGS) as PhotoType[]).find((one) => one === type);
  const ending = /\.[a-z0-9]{2,5}$/i.exec(fileName)?.[0];
  if (known === undefined || ending === undefined || ENDINGS[known].test(ending)) return null;
  return `Named ${ending}, but it is a ${WORDS[known]}.`;
}
