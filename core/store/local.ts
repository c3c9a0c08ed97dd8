import { existsSync, rmSync } from 'node:fs';
import Database from 'better-sqlite3';
import { PhotoTasks } from './photo-tasks.ts';
import { SearchIndex } from './search-index.ts';

const LOCAL_VERSION = 2;

/** In which order a job is put back: as the list has it, or with the fewest changes of tool. */
export type Walk = 'list' | 'tools';

/**
 * What is not record: half-typed drafts, the last place of a window, photos on their way in. May be deleted without
 * loss, so a file that cannot be read is thrown away and made anew.
 */
export class Local {
  readonly photoTasks: PhotoTasks;
  readonly searchIndex: SearchIndex;
  private readonly db: Database.Database;

  constructor(path: string) {
    this.db = openLocal(path);
    this.photoTasks = new PhotoTasks(this.db);
    this.searchIndex = new SearchIndex(this.db);
  }

  /** The half-typed text kept under a key, or null. */
  draft(key: string): string | null {
    return (
      (this.db.prepare('SELECT text FROM draft WHERE key = ?').pluck().get(key) as string | undefined) ?? null
    );
  }

  /** Keeps half-typed text; empty text forgets it. Limit 10 000 characters, the rest is cut by the contract. */
  keepDraft(key: string, text: string, at: number): void {
    if (text === '') this.db.prepare('DELETE FROM draft WHERE key = ?').run(key);
    else
      this.db
        .prepare(
          'INSERT INTO draft (key, text, at) VALUES (?, ?, ?) ON CONFLICT (key) DO UPDATE SET text = excluded.text, at = excluded.at',
        )
        .run(key, text, at);
  }

  /** The order in which a job is put back: a choice of the hand and not record. */
  walk(jobId: string): Walk {
    return walkIn(this.db, jobId);
  }

  keepWalk(jobId: string, by: Walk): void {
    if (by === 'list') this.db.prepare('DELETE FROM walk WHERE job_id = ?').run(jobId);
    else this.db.prepare('INSERT OR REPLACE INTO walk (job_id, by) VALUES (?, ?)').run(jobId, by);
  }

  close(): void {
    this.db.close();
  }
}

function walkIn(db: Database.Database, jobId: string): Walk {
  const kept = db.prepare('SELECT by FROM walk WHERE job_id = ?').pluck().get(jobId);
  return kept === 'tools' ? 'tools' : 'list';
}

/** The same for who only reads, while another program may hold the file; what cannot be read was never chosen. */
export function readWalk(path: string, jobId: string): Walk {
  if (!existsSync(path)) return 'list';
  let db: Database.Database | null = null;
  try {
    db = new Database(path, { readonly: true });
    return walkIn(db, jobId);
  } catch {
    return 'list';
  } finally {
    db?.close();
  }
}

function openLocal(path: string): Database.Database {
  try {
    return prepareLocal(path);
  } catch {
    for (const tail of ['', '-wal', '-shm']) rmSync(path + tail, { force: true });
    return prepareLocal(path);
  }
}

function prepareLocal(path: string): Database.Database {
  const db = new Database(path);
  try {
    db.pragma('journal_mode = WAL');
    const version = db.pragma('user_version', { simple: true }) as number;
    if (version !== 0 && version !== LOCAL_VERSION) throw new Error('another version');
    db.exec(
      `CREATE TABLE IF NOT EXISTS draft (key TEXT PRIMARY KEY NOT NULL, text TEXT NOT NULL, at INTEGER NOT NULL) STRICT;
      CREATE TABLE IF NOT EXISTS walk (job_id TEXT PRIMARY KEY NOT NULL, by TEXT NOT NULL) STRICT`,
    );
    db.pragma(`user_version = ${LOCAL_VERSION}`);
    return db;
  } catch (error) {
    db.close();
    throw error;
  }
}
