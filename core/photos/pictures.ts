import { open as openFile, readFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import exifr from 'exifr';
import sharp, { type Metadata, type Sharp } from 'sharp';
import {
  RENDITION_TYPES,
  type RenditionSize,
  renditionPath,
  syncFolder,
  writeNamed,
  writeWhole,
} from './disk.ts';
import { type Tags, tagFacts } from './exif.ts';
import { heicPixels } from './heic.ts';
import { type HeifFacts, heifFacts } from './heif.ts';
import { isDark } from '../model/shots.ts';
import {
  fullGrey,
  type Grey,
  halfGrey,
  HASH_SIDE,
  lightOf,
  perceptualHash,
  sharpnessOf,
  squeezed,
} from './measure.ts';
import { MAX_HEIC_PIXELS, MAX_PIXELS, type PictureFacts, PictureProblem, type Rendered } from './protocol.ts';
import { type PictureType, sniff, SNIFF_BYTES } from './sniff.ts';
import { cutOff, damaged, jpegNeverEnds, problemOf } from './problems.ts';
import { withProfile } from './png-profile.ts';
import { turnOf } from './turn.ts';

/**
 * The work on one picture file. Only the picture process loads this: native code that may crash, hang or eat memory.
 */
sharp.cache(false);
sharp.concurrency(1);

/** Longest edge of the two renditions, and of the grey picture that sharpness is measured on at most, in pixels. */
const LARGE = 2048;
const SMALL = 320;
/** Longest edge on paper, in pixels: 200 to the inch over the width of a sheet. */
const PAPER = 1400;
const GREY = 1024;
const WHITE = '#ffffff';
/** How good the packed pictures are, of 100. */
const JPEG_QUALITY = 80;
const WEBP_QUALITY = 75;
const FULL_QUALITY = 90;

/** Packed pixels as they come from a decoder. */
interface Raw {
  readonly data: Buffer;
  readonly width: number;
  readonly height: number;
  readonly channels: 1 | 2 | 3 | 4;
}

/** A file opened as far as its header: what it is, how it lies, and the way to its upright pixels. */
interface Opened {
  readonly path: string;
  readonly type: PictureType;
  readonly width: number;
  readonly height: number;
  readonly turn: number;
  readonly meta: Meta;
  readonly heif: HeifFacts | null;
}

async function headOf(path: string): Promise<Buffer> {
  const handle = await openFile(path, 'r');
  try {
    const head = Buffer.alloc(SNIFF_BYTES);
    const { bytesRead } = await handle.read(head, 0, SNIFF_BYTES, 0);
    return head.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}

function typeOf(head: Buffer): PictureType {
  const sniffed = sniff(head);
  if (sniffed.kind === 'picture') return sniffed.type;
  if (sniffed.kind === 'other')
    throw new PictureProblem('unsupported', `Expected a JPEG, PNG, WebP, HEIC or AVIF, got ${sniffed.what}.`);
  throw new PictureProblem('not-a-picture', 'Expected a picture, got a file that is none inside.');
}

const input = (path: string, failOn: 'warning' | 'error'): Sharp =>
  sharp(path, { limitInputPixels: MAX_PIXELS, failOn, sequentialRead: true });

/** What a HEIC says where the picture library cannot read it; its pixels come from another decoder anyway. */
type Meta = Partial<Metadata>;

async function metaOf(path: string, type: PictureType, heif: HeifFacts | null): Promise<Meta> {
  try {
    return await input(path, 'warning').metadata();
  } catch (error) {
    if (type === 'image/heic' && heif !== null && heif.width !== null) return {};
    throw await problemOf(error, path, type);
  }
}

async function open(path: string): Promise<Opened> {
  const type = typeOf(await headOf(path));
  const container = type === 'image/heic' || type === 'image/avif';
  const heif = container ? heifFacts(await readFile(path)) : null;
  if (heif?.cut)
    throw new PictureProblem(
      'cut-off',
      'Expected a whole picture, got a file that breaks off before its end. Copy it again.',
    );
  const meta = await metaOf(path, type, heif);
  const [width, height] = [heif?.width ?? meta.width ?? 0, heif?.height ?? meta.height ?? 0];
  const limit = type === 'image/heic' ? MAX_HEIC_PIXELS : MAX_PIXELS;
  if (width * height > limit)
    throw new PictureProblem(
      'too-many-pixels',
      `Expected at most ${Math.round(limit / 1e6)} million pixels, got ${width} × ${height}.`,
    );
  if (type === 'image/jpeg' && (await jpegNeverEnds(path))) throw cutOff();
  if (width < 1 || height < 1) throw damaged('it has no size');
  return { path, type, width, height, turn: heif ? heif.turn : turnOf(meta.orientation), meta, heif };
}

/** Tags from the block that the container or the picture library names; where a container has none, from all of it. */
async function tagsOf(opened: Opened): Promise<Tags> {
  const { meta, path, heif } = opened;
  const options = {
    reviveValues: false,
    translateValues: false,
    mergeOutput: false,
    tiff: true,
    exif: true,
    gps: true,
    interop: false,
    silentErrors: true,
  };
  const block = heif?.exif ?? meta.exif;
  const headed = block !== undefined && Buffer.from(block.subarray(0, 4)).toString('latin1') === 'Exif';
  const whole = heif ? path : undefined;
  for (const source of [headed ? block.subarray(6) : block, whole]) {
    if (source === undefined) continue;
    try {
      const tags = (await exifr.parse(source, options)) as Tags | undefined;
      if (tags?.['ifd0'] || tags?.['exif']) return tags;
    } catch {
      // Tags that cannot be read are no reason to refuse a photo: it then has none.
    }
  }
  return {};
}

/** Small faults in the packing that many phones write and every viewer passes over. */
const HARMLESS = /Invalid SOS parameters|extraneous bytes before marker/i;

/** Upright pixels, no longer than `longest` on either edge; in sRGB, without opacity, 8 bits. */
async function pixelsOf(opened: Opened, longest: number | null): Promise<Raw> {
  if (opened.type === 'image/heic') return heicUpright(opened, longest);
  try {
    return await raw(fitted(upright(opened, 'warning'), longest));
  } catch (error) {
    if (error instanceof Error && HARMLESS.test(error.message) && !/premature/i.test(error.message))
      return raw(fitted(upright(opened, 'error'), longest));
    throw await problemOf(error, opened.path, opened.type);
  }
}

/** Containers are turned by their own decoder; turning by EXIF as well would turn them twice. */
function upright(opened: Opened, failOn: 'warning' | 'error'): Sharp {
  const picture = input(opened.path, failOn);
  return opened.heif ? picture : picture.autoOrient();
}

const fitted = (picture: Sharp, longest: number | null): Sharp =>
  longest === null ? picture : picture.resize(longest, longest, { fit: 'inside', withoutEnlargement: true });

async function raw(picture: Sharp): Promise<Raw> {
  const { data, info } = await picture
    .flatten({ background: WHITE })
    .toColourspace('srgb')
    .raw({ depth: 'uchar' })
    .toBuffer({ resolveWithObject: true });
  return { data, width: info.width, height: info.height, channels: info.channels as Raw['channels'] };
}

const again = ({ data, width, height, channels }: Raw): Sharp =>
  sharp(data, { raw: { width, height, channels } });

/** HEIC: unpacked by a decoder of its own, made small, and then read with the profile that the file names. */
async function heicUpright(opened: Opened, longest: number | null): Promise<Raw> {
  const pixels = await heicPixels(await readFile(opened.path), opened);
  const whole: Raw = {
    data: Buffer.from(pixels.data.buffer, pixels.data.byteOffset, pixels.data.byteLength),
    width: pixels.width,
    height: pixels.height,
    channels: 4,
  };
  const small = fitted(again(whole), longest).flatten({ background: WHITE });
  const { icc } = opened.meta;
  if (icc === undefined) return raw(small);
  const png = await small.png({ compressionLevel: 0 }).toBuffer();
  return raw(sharp(withProfile(png, icc)));
}

/** Without tuned code tables: half the time for one per cent more bytes. */
const jpegOf = async (pixels: Raw, quality: number): Promise<Buffer> =>
  again(pixels).jpeg({ quality, optimiseCoding: false }).toBuffer();

async function smallOf(pixels: Raw): Promise<Buffer> {
  return fitted(again(pixels), SMALL).webp({ quality: WEBP_QUALITY, effort: 2 }).toBuffer();
}

/**
 * Brightness at a size that is the same for all photos of one shape: halved here, which takes a quarter of the time
 * of asking the picture library.
 */
function greyOf(pixels: Raw): Grey {
  const [long, short] = [Math.max(pixels.width, pixels.height), Math.min(pixels.width, pixels.height)];
  return long > GREY && short > 1 ? halfGrey(pixels) : fullGrey(pixels);
}

function figuresOf(pixels: Raw): Pick<PictureFacts, 'sharpness' | 'phash' | 'dark'> {
  const grey = greyOf(pixels);
  return {
    sharpness: sharpnessOf(grey),
    phash: perceptualHash(squeezed(grey, HASH_SIDE, HASH_SIDE)),
    dark: isDark(lightOf(grey)),
  };
}

/** What is to be said with the photo. A moving picture is taken by its first frame. */
function noticesOf({ meta, heif }: Opened): string[] {
  const frames = meta.pages ?? 1;
  if (heif?.sequence) return ['Moving picture: its still picture is shown.'];
  return frames > 1 && heif === null ? [`Moving picture: the first of ${frames} frames is shown.`] : [];
}

/** Facts of a picture file; its two renditions are on disk when this answers. */
export async function readPicture(path: string, sha256: string, renditions: string): Promise<PictureFacts> {
  const opened = await open(path);
  const pixels = await pixelsOf(opened, LARGE);
  // The disk takes one rendition while the next is made.
  const [largePath, smallPath] = [
    renditionPath(renditions, sha256, '2048'),
    renditionPath(renditions, sha256, '320'),
  ];
  const large = writeNamed(largePath, await jpegOf(pixels, JPEG_QUALITY));
  const small = smallOf(pixels).then(async (bytes) => writeNamed(smallPath, bytes));
  const figures = figuresOf(pixels);
  await Promise.all([large, small]);
  await syncFolder(dirname(largePath));
  const { orientation: _, ...facts } = tagFacts(
    await tagsOf(opened),
    opened.meta.xmp?.toString('utf8') ?? '',
  );
  const { type, width, height, turn } = opened;
  return { type, width, height, turn, ...facts, ...figures, notices: noticesOf(opened) };
}

/** How far round a point its light is judged, in pixels: wider than an edge, narrower than a bolt head. */
const LINE_BLUR = 14;

/** In grey and bright, or as lines: each point against the light round it, so that plain faces go white. */
async function paperOf(pixels: Raw, light: boolean): Promise<Buffer> {
  const one = async (picture: Sharp): Promise<Buffer> => picture.toColourspace('b-w').raw().toBuffer();
  const grey = await one(again(pixels).greyscale().normalise());
  const flat = { raw: { width: pixels.width, height: pixels.height, channels: 1 } } as const;
  const round = light ? await one(sharp(grey, flat).blur(LINE_BLUR)) : grey;
  const paper = Buffer.alloc(grey.length);
  for (let i = 0; i < grey.length; i += 1) {
    const value = grey[i] ?? 0;
    const line = (255 * (value + 24)) / ((round[i] ?? 0) + 24);
    // A trace of the light itself keeps a dark hole dark.
    const bright = light ? line * 0.88 + value * 0.25 : 70 + 185 * (value / 255) ** 0.75;
    paper[i] = Math.min(255, bright);
  }
  return sharp(paper, flat).jpeg({ quality: JPEG_QUALITY }).toBuffer();
}

/** Whether any browser shows the file itself as it should be: upright, still, in its colours. */
function showsAsIs({ type, turn, meta, heif }: Opened): boolean {
  if (type === 'image/heic' || meta.space === 'cmyk' || (meta.pages ?? 1) > 1 || heif?.sequence) return false;
  return type === 'image/jpeg' || turn === 1;
}

/** Writes one rendition anew; for the full size only where a browser cannot show the original by itself. */
export async function renderPicture(
  path: string,
  sha256: string,
  renditions: string,
  size: RenditionSize,
): Promise<Rendered> {
  const opened = await open(path);
  if (size === 'full' && showsAsIs(opened)) return { original: true, type: opened.type };
  const paper = size === 'print' || size === 'light';
  const pixels = await pixelsOf(opened, size === 'full' ? null : paper ? PAPER : LARGE);
  const bytes = paper
    ? await paperOf(pixels, size === 'light')
    : RENDITION_TYPES[size] === 'image/webp'
      ? await smallOf(pixels)
      : await jpegOf(pixels, size === 'full' ? FULL_QUALITY : JPEG_QUALITY);
  await writeWhole(renditionPath(renditions, sha256, size), bytes);
  return { original: false, type: opened.type };
}
