import { randomBytes } from 'node:crypto';
import { mkdir, open, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';

/** Sizes of a picture that are served: longest edge in pixels, or all of them. */
export type RenditionSize = '320' | '2048' | 'full';

const ENDING: Readonly<Record<RenditionSize, string>> = {
  '320': '320.webp',
  '2048': '2048.jpg',
  full: 'full.jpg',
};
const TYPE: Readonly<Record<RenditionSize, string>> = {
  '320': 'image/webp',
  '2048': 'image/jpeg',
  full: 'image/jpeg',
};

/** Where a rendition of an original lies. `id` is a SHA-256 in hex: whoever calls has checked it. */
export function renditionOf(dir: string, id: string, size: RenditionSize): { path: string; type: string } {
  return { path: join(dir, id.slice(0, 2), `${id}-${ENDING[size]}`), type: TYPE[size] };
}

/** A name beside a file, for what is not whole yet. */
export function unfinished(path: string): string {
  return `${path}.${randomBytes(6).toString('hex')}.part`;
}

/** Puts a whole file in its place so that it is there after a power cut: fsync, rename, fsync of the folder. */
export async function settle(from: string, to: string): Promise<void> {
  await mkdir(dirname(to), { recursive: true, mode: 0o700 });
  await syncFile(from);
  await rename(from, to);
  await syncFolder(dirname(to));
}

/** Writes a file under another name first, so that nobody ever sees half of it. */
export async function writeWhole(path: string, bytes: Uint8Array): Promise<void> {
  const part = unfinished(path);
  await mkdir(dirname(path), { recursive: true, mode: 0o700 });
  try {
    const file = await open(part, 'w', 0o600);
    try {
      await file.writeFile(bytes);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(part, path);
    await syncFolder(dirname(path));
  } catch (error) {
    await rm(part, { force: true });
    throw error;
  }
}

async function syncFile(path: string): Promise<void> {
  const file = await open(path, 'r+');
  try {
    await file.sync();
  } finally {
    await file.close();
  }
}

async function syncFolder(path: string): Promise<void> {
  // Windows knows no fsync of a folder; its file system journals the rename itself.
  if (process.platform === 'win32') return;
  const folder = await open(path, 'r');
  try {
    await folder.sync();
  } finally {
    await folder.close();
  }
}
