import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { onTestFinished } from 'vitest';
import { renditionPath } from '../../core/photos/disk.ts';
import { PicturePool, type PoolOptions } from '../../core/photos/pool.ts';
import type { Outcome, PictureFacts } from '../../core/photos/protocol.ts';
import { tempFolder } from '../support/workshop.ts';

/** Pictures made for a test: a grey ground, red at the top left, blue at the bottom right. */

export const WIDTH = 400;
export const HEIGHT = 300;

export function scene(width = WIDTH, height = HEIGHT): Sharp {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><rect width="100%" height="100%" fill="#808080"/><rect width="50%" height="50%" fill="#c03030"/><rect x="50%" y="50%" width="50%" height="50%" fill="#3060c0"/></svg>`;
  return sharp(Buffer.from(svg)).removeAlpha();
}

/** The colour of each quarter of a picture: top left, top right, bottom left, bottom right. */
export async function quarters(bytes: Buffer): Promise<string[]> {
  const { data, info } = await sharp(bytes)
    .toColourspace('srgb')
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const at = (x: number, y: number) => {
    const from = (Math.floor(y * info.height) * info.width + Math.floor(x * info.width)) * info.channels;
    const [red = 0, green = red, blue = red] = data.subarray(from, from + info.channels);
    if (red > blue + 50) return 'red';
    if (blue > red + 50) return 'blue';
    const mean = (red + green + blue) / 3;
    return mean > 240 ? 'white' : mean > 100 && mean < 160 ? 'grey' : 'dark';
  };
  return [at(0.25, 0.25), at(0.75, 0.25), at(0.25, 0.75), at(0.75, 0.75)];
}

export interface Tried {
  readonly folder: string;
  readonly pool: PicturePool;
  /** Writes a file and gives its path. */
  write(name: string, bytes: Uint8Array): string;
  /** Reads a file as an import does. */
  read(path: string): Promise<Outcome<PictureFacts>>;
  rendition(path: string, size: '320' | '2048' | 'full'): Buffer;
}

const shaOf = (path: string): string => createHash('sha256').update(readFileSync(path)).digest('hex');

/** A folder and picture processes for one test. */
export function tried(options: PoolOptions = {}): Tried {
  const folder = tempFolder();
  const pool = new PicturePool(options);
  onTestFinished(async () => pool.close());
  const renditions = join(folder, 'renditions');
  return {
    folder,
    pool,
    write: (name, bytes) => {
      const path = join(folder, name);
      writeFileSync(path, bytes);
      return path;
    },
    read: async (path) => pool.run({ op: 'read', path, sha256: shaOf(path), renditions }),
    rendition: (path, size) => readFileSync(renditionPath(renditions, shaOf(path), size)),
  };
}

export function good<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(outcome.fault.sentence);
  return outcome.value;
}

/** Sets tags of a file with exiftool: a second hand, which shares no code with what reads them here. */
export function tag(path: string, ...tags: readonly string[]): void {
  execFileSync('exiftool', ['-q', '-m', '-n', '-overwrite_original', ...tags.map((one) => `-${one}`), path]);
}
