import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { afterAll } from 'vitest';
import type { PictureFacts } from '../../core/photos/protocol.ts';
import { PicturePool, type PoolOptions } from '../../core/photos/pool.ts';

/** Files for the tests are made here, in the formats themselves; tags are written and read back with exiftool. */

/** Four patches, so that every turn and mirror looks different: red, green, blue and yellow, with thin lines in them. */
export function patches(width: number, height: number): Sharp {
  const [w, h] = [width / 2, height / 2];
  const lines = Array.from(
    { length: 12 },
    (_, i) => `<line x1="${(i * width) / 12}" y1="0" x2="${width - (i * width) / 20}" y2="${height}"/>`,
  );
  return sharp(
    Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">
      <rect width="${w}" height="${h}" fill="#d22"/><rect x="${w}" width="${w}" height="${h}" fill="#2b2"/>
      <rect y="${h}" width="${w}" height="${h}" fill="#22d"/><rect x="${w}" y="${h}" width="${w}" height="${h}" fill="#dd2"/>
      <g stroke="#fff" stroke-width="1">${lines.join('')}</g></svg>`),
  ).flatten({ background: '#ffffff' });
}

/** What each quarter of a picture shows: top left, top right, bottom left, bottom right. */
export async function quarters(file: string | Buffer): Promise<string> {
  const { data, info } = await sharp(file).removeAlpha().raw().toBuffer({ resolveWithObject: true });
  const at = (fx: number, fy: number): string => {
    let [r, g, b] = [0, 0, 0];
    // A patch of pixels, since the lines and the packing change single ones.
    for (let dy = -3; dy <= 3; dy++)
      for (let dx = -3; dx <= 3; dx++) {
        const i =
          ((Math.floor(fy * info.height) + dy) * info.width + Math.floor(fx * info.width) + dx) *
          info.channels;
        r += data[i] as number;
        g += data[i + 1] as number;
        b += data[i + 2] as number;
      }
    const high = Math.max(r, g, b) * 0.7;
    return r > high && g > high ? 'Y' : r > high ? 'R' : g > high ? 'G' : 'B';
  };
  return [at(0.2, 0.3), at(0.8, 0.3), at(0.2, 0.7), at(0.8, 0.7)].join('');
}

/** Runs exiftool; a machine without it fails the test, since nothing else says what the tags really are. */
export const exiftool = (...args: string[]): string =>
  execFileSync('exiftool', args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });

export type ExiftoolFacts = Readonly<Record<string, string | number | undefined>>;

/** What exiftool says of files, numbers as numbers. */
export function exiftoolFacts(files: readonly string[]): ExiftoolFacts[] {
  return JSON.parse(
    exiftool('-j', '-n', '-api', 'largefilesupport=1', ...files.map((file) => file)),
  ) as ExiftoolFacts[];
}

const DATA = join(import.meta.dirname, 'data');
/** A HEIC of 320 × 240 by its container a quarter turned; EXIF in it says the same turn once more. */
export const heicTurned = (): Buffer => readFileSync(join(DATA, 'turned-by-container.heic'));
/** A HEIC of 320 × 240 that its container leaves as it is; EXIF in it speaks of a turn all the same. */
export const heicPlain = (): Buffer => readFileSync(join(DATA, 'turned-by-exif-only.heic'));

/** A HEIC of 64 × 64 in one colour, sRGB #cc8844, written in P3. */
export const heicWide = (): Buffer => readFileSync(join(DATA, 'wide-colours.heic'));

/** A pool of picture processes for one test file, ended with it. */
export function testPool(options: PoolOptions = {}): PicturePool {
  const pool = new PicturePool(options);
  afterAll(async () => pool.close());
  return pool;
}

let count = 0;

/** Reads a file as the program does; its renditions lie in `dir`. */
export async function read(
  pool: PicturePool,
  dir: string,
  path: string,
): Promise<{ facts: PictureFacts; large: string; small: string }> {
  const sha256 = `${String(count++).padStart(2, '0')}${'ab'.repeat(31)}`;
  const outcome = await pool.run({ op: 'read', path, sha256, renditions: dir });
  if (!outcome.ok) throw new Error(`${path}: ${outcome.fault.sentence}`);
  const at = (size: string) => join(dir, sha256.slice(0, 2), `${sha256}-${size}`);
  return { facts: outcome.value, large: at('2048.jpg'), small: at('320.webp') };
}

/** Writes bytes under a name in a folder; gives the path. */
export function put(dir: string, name: string, bytes: Uint8Array): string {
  const path = join(dir, name);
  writeFileSync(path, bytes);
  return path;
}
