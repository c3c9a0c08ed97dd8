import type { Database } from 'better-sqlite3';

/**
 * Photos on their way in. A task names a file and is forgotten or kept with its end; everything else is read again
 * from the file, so that a task that was cut short by a kill begins anew without harm.
 */
export interface PhotoTask {
  readonly id: string;
  readonly jobId: string;
  /** One import: what one undo takes back. */
  readonly batch: string;
  readonly path: string;
  readonly fileName: string;
  /** The file is the program's own copy and goes once it is an original, or refused. */
  readonly own: boolean;
  /** Who brought it: a person's id, or null. */
  readonly actor: string | null;
  /** The id the photo will have: so that it is the same photo after a kill. */
  readonly photoId: string;
  /** Known once the file was read whole. */
  readonly sha256: string | null;
}

export type TaskEnd = 'done' | 'skipped' | 'failed';

/** How long an ended task is kept, in milliseconds: seven days. */
const KEPT_MS = 7 * 24 * 3600 * 1000;

interface Stored {
  id: string;
  job_id: string;
  batch: string;
  path: string;
  file_name: string;
  own: number;
  actor: string | null;
  photo_id: string;
  sha256: string | null;
}

export class PhotoTasks {
  private readonly db: Database;

  constructor(db: Database) {
    this.db = db;
    db.exec(
      `CREATE TABLE IF NOT EXISTS photo_task (
        id TEXT PRIMARY KEY NOT NULL, job_id TEXT NOT NULL, batch TEXT NOT NULL, path TEXT NOT NULL,
        file_name TEXT NOT NULL, own INTEGER NOT NULL, actor TEXT, photo_id TEXT NOT NULL, sha256 TEXT,
        state TEXT NOT NULL, sentence TEXT NOT NULL, at INTEGER NOT NULL
      ) STRICT;
      CREATE INDEX IF NOT EXISTS photo_task_state ON photo_task(state);`,
    );
  }

  /** Writes down what is to be done, all or nothing. `at`: UTC milliseconds. */
  add(tasks: readonly PhotoTask[], at: number): void {
    const insert = this.db.prepare(
      `INSERT INTO photo_task (id, job_id, batch, path, file_name, own, actor, photo_id, sha256, state, sentence, at)
       VALUES (@id, @jobId, @batch, @path, @fileName, @own, @actor, @photoId, @sha256, 'waiting', '', @at)`,
    );
    this.db.transaction(() => {
      this.db.prepare("DELETE FROM photo_task WHERE state <> 'waiting' AND at < ?").run(at - KEPT_MS);
      for (const task of tasks) insert.run({ ...task, own: task.own ? 1 : 0, at });
    })();
  }

  /** What waits, of one job or of all, in the order it came. */
  waiting(jobId?: string): PhotoTask[] {
    const rows = this.db
      .prepare(
        "SELECT * FROM photo_task WHERE state = 'waiting' AND (?1 IS NULL OR job_id = ?1) ORDER BY rowid",
      )
      .all(jobId ?? null) as Stored[];
    return rows.map((row) => ({
      id: row.id,
      jobId: row.job_id,
      batch: row.batch,
      path: row.path,
      fileName: row.file_name,
      own: row.own === 1,
      actor: row.actor,
      photoId: row.photo_id,
      sha256: row.sha256,
    }));
  }

  known(id: string, sha256: string): void {
    this.db.prepare('UPDATE photo_task SET sha256 = ? WHERE id = ?').run(sha256, id);
  }

  end(id: string, state: TaskEnd, sentence: string, at: number): void {
    this.db
      .prepare('UPDATE photo_task SET state = ?, sentence = ?, at = ? WHERE id = ?')
      .run(state, sentence, at, id);
  }
}
