import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { type FileHandle, open, rm, stat } from 'node:fs/promises';
import { diskFull, type Outcome, PictureProblem, type Taken } from './protocol.ts';

/** Taking a file in: its bytes are only counted, hashed and copied here, never looked into. */

/** Pieces in which a file is read, in bytes: small enough that hashing one holds up nobody. */
const PIECE = 512 * 1024;

/** Size of a file that may be taken, in bytes. */
async function sizeOf(path: string, maxBytes: number): Promise<number> {
  const about = await stat(path);
  if (!about.isFile()) {
    const what = about.isDirectory() ? 'a folder' : 'something else';
    throw new PictureProblem('unreadable', `Expected a file, got ${what}.`);
  }
  if (about.size === 0)
    throw new PictureProblem('empty', 'Expected a picture, got an empty file. Copy it again.');
  return allowed(about.size, maxBytes);
}

function allowed(bytes: number, maxBytes: number): number {
  if (bytes <= maxBytes) return bytes;
  const mb = (value: number): number => value / 1024 / 1024;
  throw new PictureProblem(
    'too-big',
    `Expected a file of at most ${Math.round(mb(maxBytes))} MB, got ${Math.ceil(mb(bytes))} MB.`,
  );
}

/** One reading: hash and, where asked, a copy. What is kept has reached the disk when this answers. */
async function hashed(from: string, copy: FileHandle | null, maxBytes: number): Promise<Taken> {
  const hash = createHash('sha256');
  let bytes = 0;
  const pieces = createReadStream(from, { highWaterMark: PIECE }) as AsyncIterable<Buffer>;
  for await (const piece of pieces) {
    hash.update(piece);
    // It may grow while it is read.
    bytes = allowed(bytes + piece.length, maxBytes);
    await copy?.writeFile(piece);
  }
  if (copy) await copy.sync();
  else await synced(from);
  return { sha256: hash.digest('hex'), bytes };
}

/** A file that is taken where it lies must last as well; one that may only be read belongs to somebody else. */
async function synced(path: string): Promise<void> {
  let handle: FileHandle;
  try {
    handle = await open(path, 'r+');
  } catch {
    return;
  }
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/**
 * Hash and length of a file; with `to`, a copy of it there. Refuses with a sentence: not there, not readable, a folder,
 * empty, more than `maxBytes` bytes, disk full. Of a refused file no copy stays.
 */
export async function takeFile(from: string, to: string | null, maxBytes: number): Promise<Outcome<Taken>> {
  let copy: FileHandle | null = null;
  try {
    await sizeOf(from, maxBytes);
    copy = to === null ? null : await open(to, 'w', 0o600);
    return { ok: true, value: await hashed(from, copy, maxBytes) };
  } catch (error) {
    if (to !== null) await rm(to, { force: true });
    const { code, message } = problemOf(error);
    return { ok: false, fault: { code, sentence: message } };
  } finally {
    await copy?.close();
  }
}

function problemOf(error: unknown): PictureProblem {
  if (error instanceof PictureProblem) return error;
  const full = diskFull(error);
  if (full) return full;
  const { code = '' } = error as { code?: string };
  const why =
    code === 'ENOENT'
      ? 'it is not there'
      : code === 'EACCES' || code === 'EPERM'
        ? 'it may not be read'
        : `it cannot be read (${code || String(error)})`;
  return new PictureProblem('unreadable', `Expected a file that can be read, but ${why}.`);
}
