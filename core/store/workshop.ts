import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { ok, type Result, refuse } from '../model/result.ts';
import type { JobState, Row } from '../model/tables.ts';
import { type Command, type Committed, Committer } from './commit.ts';
import { Local, readWalk, type Walk } from './local.ts';
import { MIGRATIONS_DIR, type Migration, migrate, migrationsIn } from './migrate.ts';
import { readJob, rowById, rowsOf } from './read.ts';
import { History } from './undo.ts';
import type { Writer } from './writer.ts';

/** Where things lie in a workshop folder. */
export const places = (dir: string) => ({
  db: join(dir, 'workshop.db'),
  local: join(dir, 'local.db'),
  copies: join(dir, 'copies'),
  originals: join(dir, 'originals'),
  renditions: join(dir, 'renditions'),
});

/** Said after each commit: how far the journal is, and in which chain. */
export interface ChangeEvent {
  readonly seq: number;
  readonly chain: string;
}

export interface OpenOptions {
  /** Writing needs the workshop's lock; see lock.ts. Reading always works. */
  readonly write: boolean;
  readonly migrations?: readonly Migration[];
  readonly now?: () => number;
  /** Only for measuring: commits do not wait for the disk. */
  readonly unsafeFast?: boolean;
}

/** An open workshop folder: the record, the local notes, and the one way to write. */
export class Workshop {
  readonly dir: string;
  readonly db: Database.Database;
  readonly local: Local | null;
  readonly now: () => number;
  readonly history: History;
  private readonly committer: Committer;
  private readonly listeners = new Set<(change: ChangeEvent) => void>();
  private readonly cached = new Map<string, { seq: number; state: JobState }>();

  constructor(dir: string, db: Database.Database, local: Local | null, now: () => number) {
    this.dir = dir;
    this.db = db;
    this.local = local;
    this.now = now;
    this.committer = new Committer(db);
    this.history = new History(db, this.committer);
  }

  readonly changes = {
    /** Calls the listener after each commit; returns the way to stop it. */
    subscribe: (listener: (change: ChangeEvent) => void): (() => void) => {
      this.listeners.add(listener);
      return () => {
        this.listeners.delete(listener);
      };
    },
  };

  /** Number of the newest journal entry; 0 when there is none. */
  lastSeq(): number {
    return (this.db.prepare('SELECT coalesce(max(seq), 0) FROM journal').pluck().get() as number) ?? 0;
  }

  commit<T>(command: Command, decide: (writer: Writer) => Result<T>): Result<Committed<T>> {
    return this.announce(command.chain, this.committer.commit(command, decide));
  }

  undo(command: Omit<Command, 'what' | 'undoes'>): Result<Committed<{ what: string }>> {
    return this.announce(command.chain, this.history.undo(command));
  }

  redo(command: Omit<Command, 'what' | 'undoes'>): Result<Committed<{ what: string }>> {
    return this.announce(command.chain, this.history.redo(command));
  }

  private announce<T>(chain: string, result: Result<Committed<T>>): Result<Committed<T>> {
    if (result.ok && result.value.seq > 0 && !result.value.repeated)
      for (const listener of this.listeners) listener({ seq: result.value.seq, chain });
    return result;
  }

  /** Everything a job holds; read once per journal number, since one action asks for it several times. */
  job(jobId: string): JobState | null {
    const seq = this.lastSeq();
    const known = this.cached.get(jobId);
    if (known?.seq === seq) return known.state;
    const state = readJob(this.db, jobId);
    if (!state) return null;
    this.cached.clear();
    this.cached.set(jobId, { seq, state });
    return state;
  }

  /** The order in which a job is put back, as somebody chose it in a window or by a script. */
  walk(jobId: string): Walk {
    return this.local?.walk(jobId) ?? readWalk(places(this.dir).local, jobId);
  }

  jobs(): Row<'job'>[] {
    return rowsOf(this.db, 'job');
  }

  person(id: string): Row<'person'> | null {
    return rowById(this.db, 'person', id);
  }

  /** The facts of an untouched original, by the SHA-256 of its file. */
  original(id: string): Row<'original'> | null {
    return rowById(this.db, 'original', id);
  }

  close(): void {
    this.local?.close();
    this.db.close();
  }
}

/**
 * Opens a workshop folder, making it when writing. Refuses with a sentence: no such folder when reading, a newer
 * file, a file that is not a database.
 */
export function openWorkshop(dir: string, options: OpenOptions): Result<Workshop> {
  const at = places(dir);
  if (!options.write && !existsSync(at.db))
    return refuse(
      'not-found',
      `Expected a workshop in ${dir}, found none. Start the program once, or name another folder with --workshop.`,
    );
  if (options.write) mkdirSync(dir, { recursive: true, mode: 0o700 });
  const now = options.now ?? Date.now;
  let db: Database.Database | null = null;
  try {
    db = new Database(at.db, { readonly: !options.write });
    prepare(db, options);
    if (options.write) {
      const stepped = migrate(db, at.copies, now(), options.migrations);
      if (!stepped.ok) {
        db.close();
        return stepped;
      }
    } else {
      const known = otherVersion(db);
      if (known) {
        db.close();
        return refuse('newer', known);
      }
    }
    return ok(new Workshop(dir, db, options.write ? new Local(at.local) : null, now));
  } catch (error) {
    db?.close();
    const code = (error as { code?: string }).code ?? '';
    if (code === 'SQLITE_NOTADB' || code === 'SQLITE_CORRUPT')
      return refuse(
        'damaged',
        `Expected a workshop database at ${at.db}, but the file cannot be read as one. Restore a backup; the file was left as it is.`,
      );
    throw error;
  }
}

function otherVersion(db: Database.Database): string | null {
  const version = db.pragma('user_version', { simple: true }) as number;
  const known = migrationsIn(MIGRATIONS_DIR).length;
  if (version === known) return null;
  return version > known
    ? `This workshop was written by a newer program (tables version ${version}). This program knows versions up to ${known}.`
    : `This workshop was written by an older program (tables version ${version}, this one writes ${known}). Start the program once on it: that makes a copy and brings it up to date.`;
}

/** Full durability: an acknowledged change survives a power cut. On macOS only fullfsync reaches the disk itself. */
function prepare(db: Database.Database, options: OpenOptions): void {
  db.pragma('foreign_keys = ON');
  db.pragma('busy_timeout = 5000');
  if (!options.write) return;
  db.pragma('journal_mode = WAL');
  db.pragma(options.unsafeFast ? 'synchronous = OFF' : 'synchronous = FULL');
  if (process.platform === 'darwin') {
    db.pragma('fullfsync = 1');
    db.pragma('checkpoint_fullfsync = 1');
  }
}
