import { randomBytes } from 'node:crypto';
import { mkdir, open, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';

/**
 * Sizes of renditions by their longest edge in pixels; "full" keeps the size of the original. "print" is in grey and
 * bright, so that ink marks stand out on it; "light" has little more than its lines, for printers that must save ink.
 */
export type RenditionSize = '320' | '2048' | 'full' | 'print' | 'light';

const ENDINGS: Readonly<Record<RenditionSize, string>> = {
  '320': 'webp',
  '2048': 'jpg',
  full: 'jpg',
  print: 'jpg',
  light: 'jpg',
};
export const RENDITION_TYPES: Readonly<Record<RenditionSize, string>> = {
  '320': 'image/webp',
  '2048': 'image/jpeg',
  full: 'image/jpeg',
  print: 'image/jpeg',
  light: 'image/jpeg',
};

/** Where a rendition of an original lies: by the original's hash, in folders of 256. */
export function renditionPath(renditionsDir: string, sha256: string, size: RenditionSize): string {
  return join(renditionsDir, sha256.slice(0, 2), `${sha256}-${size}.${ENDINGS[size]}`);
}

/** A folder's list of names, made to last. Windows has no such thing and needs none. */
export async function syncFolder(dir: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(dir, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Gives a written and synced file its final name, which then lasts: rename, fsync folder. */
export async function settle(from: string, to: string): Promise<void> {
  await mkdir(dirname(to), { recursive: true, mode: 0o700 });
  await rename(from, to);
  await syncFolder(dirname(to));
}

/** Writes a file so that its name never stands for half of it: temporary name, fsync, rename, fsync folder. */
export async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  await writeNamed(path, bytes);
  await syncFolder(dirname(path));
}

/** The same without the last step: for several files of one folder, which then is synced once. */
export async function writeNamed(path: string, bytes: Uint8Array): Promise<void> {
  await mkdir(dirname(path), { recursive: true, mode: 0o700 });
  const temporary = `${path}.${randomBytes(6).toString('hex')}.tmp`;
  try {
    const handle = await open(temporary, 'wx', 0o600);
    try {
      await handle.writeFile(bytes);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(temporary, path);
  } catch (error) {
    await rm(temporary, { force: true });
    throw error;
  }
}
