import { readFile } from 'node:fs/promises';
import decodeHeic from 'heic-decode';
import sharp, { type Sharp } from 'sharp';
import { renditionOf, writeWhole } from './disk.ts';
import { cameraOf, type Extent, HASH_SIDE, type PhotoFacts, phashOf, sharpnessOf, takenOf } from './facts.ts';
import { kindOf, type Opened, openPicture, picture, tagsOf } from './read.ts';
import { Unreadable, unreadableOf } from './unreadable.ts';

/** Only these decoders are ever used, whatever a file claims to be; nothing is kept between pictures. */
export function setLimits(): void {
  sharp.block({ operation: ['VipsForeignLoad'] });
  sharp.unblock({
    operation: ['Jpeg', 'Png', 'Webp', 'Heif'].map((format) => `VipsForeignLoad${format}`),
  });
  sharp.cache(false);
}

/** Warnings of decoders that stand over whole pictures: some phones write such files every day. */
const HARMLESS = /Invalid SOS parameters|extraneous bytes/i;

interface Pixels extends Extent {
  readonly data: Buffer;
  readonly channels: 1 | 2 | 3 | 4;
}

/** The picture upright, in sRGB, eight bits, on white where it was see-through; longest edge `edge` px at most. */
async function pixelsOf(opened: Opened, edge: number | null): Promise<Pixels> {
  const heic = opened.type === 'image/heic' ? await heicSource(opened) : null;
  const run = async (lenient: boolean): Promise<Pixels> => {
    const upright = heic ?? uprightOf(opened, lenient);
    const sized =
      edge === null
        ? upright
        : upright.clone().resize(edge, edge, { fit: 'inside', withoutEnlargement: true });
    const { data, info } = await sized
      .flatten({ background: '#ffffff' })
      .toColourspace('srgb')
      .raw({ depth: 'uchar' })
      .toBuffer({ resolveWithObject: true });
    return { data, width: info.width, height: info.height, channels: info.channels };
  };
  try {
    return await run(false);
  } catch (error) {
    if (!HARMLESS.test(String(error))) throw unreadableOf(String(error), kindOf(opened.type));
    return run(true).catch((again: unknown) => {
      throw unreadableOf(String(again), kindOf(opened.type));
    });
  }
}

function uprightOf(opened: Opened, lenient: boolean): Sharp {
  const source = picture(opened.path, lenient);
  // A HEIF container has turned its picture already when it comes here: never turn twice.
  return opened.type === 'image/avif' ? source : source.autoOrient();
}

/** HEIC is decoded by libheif in WebAssembly, upright by the container's own turn. */
async function heicSource(opened: Opened): Promise<Sharp> {
  const bytes = await readFile(opened.path);
  // The decoder knows fewer brands than there are; all of them are the same container.
  bytes.write('heic', 8, 'latin1');
  try {
    const { width, height, data } = await decodeHeic({ buffer: bytes });
    const pixels = Buffer.from(data.buffer, data.byteOffset, data.byteLength);
    return sharp(pixels, { raw: { width, height, channels: 4 } });
  } catch (error) {
    throw unreadableOf(String(error), kindOf(opened.type));
  }
}

const ofPixels = ({ data, width, height, channels }: Pixels): Sharp =>
  sharp(data, { raw: { width, height, channels } });

function greyOf({ data, width, height, channels }: Pixels): Uint8Array {
  const grey = new Uint8Array(width * height);
  if (channels < 3) {
    for (let i = 0, at = 0; i < grey.length; i++, at += channels) grey[i] = data[at] as number;
    return grey;
  }
  // Weights of ITU-R BT.601 in 256ths.
  for (let i = 0, at = 0; i < grey.length; i++, at += channels)
    grey[i] =
      (77 * (data[at] as number) + 150 * (data[at + 1] as number) + 29 * (data[at + 2] as number)) >> 8;
  return grey;
}

/** Makes the 320 and 2048 px renditions and says the facts. Throws `Unreadable` for a fault of the file. */
export async function renderViews(path: string, dir: string, id: string): Promise<PhotoFacts> {
  const opened = await openPicture(path);
  const large = await pixelsOf(opened, 2048);
  const [jpeg, webp, tiny] = await Promise.all([
    ofPixels(large).jpeg({ quality: 82 }).toBuffer(),
    ofPixels(large)
      .resize(320, 320, { fit: 'inside', withoutEnlargement: true })
      .webp({ quality: 76 })
      .toBuffer(),
    ofPixels(large).resize(HASH_SIDE, HASH_SIDE, { fit: 'fill' }).greyscale().raw().toBuffer(),
  ]);
  await writeWhole(renditionOf(dir, id, '2048').path, jpeg);
  await writeWhole(renditionOf(dir, id, '320').path, webp);
  const tags = await tagsOf(opened);
  return {
    type: opened.type,
    width: opened.width,
    height: opened.height,
    turn: opened.turn,
    ...takenOf(tags),
    camera: cameraOf(tags),
    sharpness: sharpnessOf(greyOf(large), large),
    phash: phashOf(tiny),
    hasLocation: tags.hasLocation,
    brightness: Math.round(tiny.reduce((sum, one) => sum + one, 0) / tiny.length),
    pictures: opened.meta.pages ?? 1,
  };
}

/** JPEG knows no longer edge. */
const MAX_JPEG_EDGE = 65_500;

/** Makes the rendition with every pixel of the original. Throws `Unreadable` for a fault of the file. */
export async function renderFull(path: string, dir: string, id: string): Promise<void> {
  const opened = await openPicture(path);
  if (opened.width > MAX_JPEG_EDGE || opened.height > MAX_JPEG_EDGE)
    throw new Unreadable(`Expected at most ${MAX_JPEG_EDGE} px a side for the full view, got more.`);
  const pixels = await pixelsOf(opened, null);
  const jpeg = await ofPixels(pixels).jpeg({ quality: 88 }).toBuffer();
  await writeWhole(renditionOf(dir, id, 'full').path, jpeg);
}
