import { open, readFile, stat } from 'node:fs/promises';
import exifr from 'exifr';
import sharp, { type Metadata, type Sharp } from 'sharp';
import type { Extent, Tags } from './facts.ts';
import { heifPicture } from './heif-turn.ts';
import { MAX_HEIC_PIXELS, MAX_PHOTO_BYTES, MAX_PIXELS } from './messages.ts';
import { HEAD_BYTES, otherTypeOf, type PhotoType, photoTypeOf } from './sniff.ts';
import { Unreadable, unreadableOf } from './unreadable.ts';

/** A picture opened and measured, not yet decoded. */
export interface Opened extends Extent {
  readonly path: string;
  readonly type: PhotoType;
  readonly turn: number;
  readonly meta: Metadata;
}

const KIND: Readonly<Record<PhotoType, string>> = {
  'image/jpeg': 'JPEG',
  'image/png': 'PNG',
  'image/webp': 'WebP',
  'image/heic': 'HEIC',
  'image/avif': 'AVIF',
};
export const kindOf = (type: PhotoType): string => KIND[type];

/** Every reading goes through here: limits on, and a stop at the first sign that data are missing. */
export function picture(path: string | Buffer, lenient = false): Sharp {
  return sharp(path, { limitInputPixels: MAX_PIXELS, failOn: lenient ? 'error' : 'warning', pages: 1 });
}

async function headOf(path: string): Promise<Uint8Array> {
  const file = await open(path, 'r');
  try {
    const head = new Uint8Array(HEAD_BYTES);
    const { bytesRead } = await file.read(head, 0, HEAD_BYTES, 0);
    return head.subarray(0, bytesRead);
  } finally {
    await file.close();
  }
}

/** Says what the file is, or why it is no photo that can be taken. */
export async function openPicture(path: string): Promise<Opened> {
  const { size } = await stat(path);
  if (size === 0) throw new Unreadable('Expected a photo, got an empty file.');
  if (size > MAX_PHOTO_BYTES)
    throw new Unreadable(
      `Expected a photo of at most ${MAX_PHOTO_BYTES / 1e6} MB, got ${Math.ceil(size / 1e6)} MB.`,
    );
  const head = await headOf(path);
  const type = photoTypeOf(head);
  if (type === null)
    throw new Unreadable(`Expected a JPEG, PNG, WebP, HEIC or AVIF photo, got ${otherTypeOf(head)}.`);
  const meta = await metadataOf(path, type);
  const stored = type === 'image/heic' || type === 'image/avif' ? heifPicture(await readFile(path)) : null;
  const extent = stored ?? { width: meta.width, height: meta.height, turn: meta.orientation ?? 1 };
  const most = type === 'image/heic' ? MAX_HEIC_PIXELS : MAX_PIXELS;
  if (extent.width * extent.height > most || extent.width > 100_000 || extent.height > 100_000)
    throw new Unreadable(
      `Expected a ${kindOf(type)} picture of at most ${most / 1e6} megapixels, got ${extent.width} × ${extent.height}.`,
    );
  const turn = extent.turn >= 1 && extent.turn <= 8 ? extent.turn : 1;
  return { path, type, meta, width: extent.width, height: extent.height, turn };
}

async function metadataOf(path: string, type: PhotoType): Promise<Metadata> {
  try {
    // The size is judged here, with a sentence of its own, before anything is decoded.
    return await sharp(path, { limitInputPixels: false, pages: 1 }).metadata();
  } catch (error) {
    throw unreadableOf(String(error), kindOf(type));
  }
}

/** The EXIF block that the picture library found, without the six bytes that stand before it in a JPEG. */
function exifBlock(meta: Metadata): Buffer | null {
  const block = meta.exif;
  if (!block || block.length < 14) return null;
  return block.subarray(0, 6).toString('latin1') === 'Exif\0\0' ? block.subarray(6) : block;
}

type Parsed = Partial<Record<'ifd0' | 'exif' | 'gps', Record<string, unknown>>>;

async function parseTags(from: Buffer): Promise<Parsed | null> {
  try {
    // Values stay as written: revived dates would be read in the zone of this computer.
    const options = {
      tiff: true,
      ifd0: true,
      exif: true,
      gps: true,
      xmp: false,
      reviveValues: false,
      translateValues: false,
      mergeOutput: false,
    };
    // The published types give `any`; what comes out is checked value by value.
    return ((await exifr.parse(from, options as never)) as Parsed | undefined) ?? null;
  } catch {
    return null;
  }
}

/** What the camera wrote. Broken or missing tags are no fault of the photo: then nothing is known. */
export async function tagsOf(opened: Opened): Promise<Tags> {
  const block = exifBlock(opened.meta);
  const fromBlock = block ? await parseTags(block) : null;
  const parsed =
    fromBlock ?? (opened.type === 'image/heic' ? await parseTags(await readFile(opened.path)) : null) ?? {};
  const { ifd0 = {}, exif = {}, gps = {} } = parsed;
  const written = exif['DateTimeOriginal'] !== undefined;
  const xmp = opened.meta.xmp?.toString('utf8') ?? '';
  return {
    make: ifd0['Make'],
    model: ifd0['Model'],
    taken: written ? exif['DateTimeOriginal'] : exif['CreateDate'],
    offset: written ? exif['OffsetTimeOriginal'] : exif['OffsetTimeDigitized'],
    fraction: written ? exif['SubSecTimeOriginal'] : exif['SubSecTimeDigitized'],
    hasLocation: 'GPSLatitude' in gps || 'GPSLongitude' in gps || /GPSL(at|ong)itude/.test(xmp),
  };
}
