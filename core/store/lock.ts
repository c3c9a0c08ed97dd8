import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { ok, type Result, refuse } from '../model/result.ts';

/** What a running host leaves for others of the same user: where it answers. */
export interface HostNote {
  /** `http://name.localhost:port`, without a slash at the end. */
  readonly address: string;
  /** Folder where programs of the same user may leave tickets for this host. */
  readonly desk: string;
  readonly pid: number;
}

export type Holder =
  | { readonly held: false }
  /** `note` is null while a host starts, or when a command line is writing. */
  | { readonly held: true; readonly note: HostNote | null };

export interface HostLock {
  /** Writes where this host answers, for others to find. */
  announce(note: HostNote): void;
  release(): void;
}

const lockFile = (dir: string) => join(dir, 'host.lock');
const noteFile = (dir: string) => join(dir, 'host.json');

/** How long a taker waits for somebody who only looks, in milliseconds. */
const PATIENCE_MS = 400;

/**
 * Takes the one right to write a workshop, or says who has it.
 *
 * The lock is an exclusive transaction on an empty SQLite file. The operating system drops it with the process,
 * so neither a crash nor a kill -9 leaves a lock behind, and no process number has to be trusted.
 * Nothing else may open `host.lock`: on POSIX, closing any handle on a file drops the locks of the whole process.
 */
export function takeLock(dir: string): Result<HostLock> {
  mkdirSync(dir, { recursive: true, mode: 0o700 });
  const db = new Database(lockFile(dir), { timeout: PATIENCE_MS });
  try {
    // Nothing is ever written, and no journal file may lie about after a kill.
    db.pragma('journal_mode = MEMORY');
    db.exec('BEGIN EXCLUSIVE');
  } catch (error) {
    db.close();
    if (!isBusy(error)) throw error;
    const note = readNote(dir);
    return refuse('locked', heldSentence(note));
  }
  // A note left by a host that was killed must not be taken for ours.
  rmSync(noteFile(dir), { force: true });
  let released = false;
  return ok({
    announce: (note) => {
      writeNote(dir, note);
    },
    release: () => {
      if (released) return;
      released = true;
      rmSync(noteFile(dir), { force: true });
      db.close();
    },
  });
}

/** Whether a host, or a writing command, holds the workshop now, and where a host answers. Takes no lock itself. */
export function holderOf(dir: string): Holder {
  if (!existsSync(lockFile(dir))) return { held: false };
  const db = new Database(lockFile(dir), { readonly: true, timeout: 0 });
  try {
    db.prepare('SELECT count(*) FROM sqlite_schema').get();
    return { held: false };
  } catch (error) {
    if (!isBusy(error)) throw error;
    return { held: true, note: readNote(dir) };
  } finally {
    db.close();
  }
}

function heldSentence(note: HostNote | null): string {
  return note
    ? `Expected a workshop that nobody else is writing, got one held by the program at ${note.address} (process ${note.pid}). Close it there, or work there.`
    : 'Expected a workshop that nobody else is writing, got one held by another program. Try again in a moment.';
}

function isBusy(error: unknown): boolean {
  return error instanceof Database.SqliteError && error.code.startsWith('SQLITE_BUSY');
}

/** Under a temporary name first, so that a reader never sees half a note; readable by this user only. */
function writeNote(dir: string, note: HostNote): void {
  const temporary = `${noteFile(dir)}.${randomBytes(6).toString('hex')}.tmp`;
  writeFileSync(temporary, `${JSON.stringify(note)}\n`, { mode: 0o600, flag: 'wx' });
  renameSync(temporary, noteFile(dir));
}

function readNote(dir: string): HostNote | null {
  try {
    const read: unknown = JSON.parse(readFileSync(noteFile(dir), 'utf8'));
    return isNote(read) ? read : null;
  } catch {
    return null;
  }
}

function isNote(value: unknown): value is HostNote {
  if (typeof value !== 'object' || value === null) return false;
  const { address, desk, pid } = value as Partial<Record<keyof HostNote, unknown>>;
  return typeof address === 'string' && typeof desk === 'string' && typeof pid === 'number';
}
