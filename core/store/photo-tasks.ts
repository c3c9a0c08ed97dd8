import type { Database } from 'better-sqlite3';

/**
 * Photos on their way in from a disk. A task names a file and how it ended; everything else is read again from the
 * file, so that a task that was cut short by a kill begins anew without harm.
 */
export interface PhotoTask {
  readonly id: string;
  readonly jobId: string;
  /** One import: what one undo takes back. */
  readonly batch: string;
  readonly path: string;
  readonly fileName: string;
}

export type TaskEnd = 'done' | 'skipped' | 'failed';

/** How long an ended task is kept, in milliseconds: seven days. */
const KEPT_MS = 7 * 24 * 3600 * 1000;

export class PhotoTasks {
  private readonly db: Database;

  constructor(db: Database) {
    this.db = db;
    db.exec(
      `CREATE TABLE IF NOT EXISTS photo_task (
        id TEXT PRIMARY KEY NOT NULL, job_id TEXT NOT NULL, batch TEXT NOT NULL, path TEXT NOT NULL,
        file_name TEXT NOT NULL, state TEXT NOT NULL, sentence TEXT NOT NULL, at INTEGER NOT NULL
      ) STRICT;
      CREATE INDEX IF NOT EXISTS photo_task_state ON photo_task(state);
      CREATE TABLE IF NOT EXISTS dark_photo (original_id TEXT PRIMARY KEY NOT NULL) STRICT;`,
    );
  }

  /** Writes down what is to be done, all or nothing. `at`: UTC milliseconds. */
  add(tasks: readonly PhotoTask[], at: number): void {
    const insert = this.db.prepare(
      `INSERT INTO photo_task (id, job_id, batch, path, file_name, state, sentence, at)
       VALUES (@id, @jobId, @batch, @path, @fileName, 'waiting', '', @at)`,
    );
    this.db.transaction(() => {
      this.db.prepare("DELETE FROM photo_task WHERE state <> 'waiting' AND at < ?").run(at - KEPT_MS);
      for (const task of tasks) insert.run({ ...task, at });
    })();
  }

  /** What waits in a job, in the order it came. */
  waiting(jobId: string): PhotoTask[] {
    return this.db
      .prepare(
        `SELECT id, job_id AS jobId, batch, path, file_name AS fileName FROM photo_task
         WHERE state = 'waiting' AND job_id = ? ORDER BY rowid`,
      )
      .all(jobId) as PhotoTask[];
  }

  /** How a task ended, and why. `at`: UTC milliseconds. */
  end(id: string, state: TaskEnd, sentence: string, at: number): void {
    this.db
      .prepare('UPDATE photo_task SET state = ?, sentence = ?, at = ? WHERE id = ?')
      .run(state, sentence, at, id);
  }

  /** Remembers that a picture shows next to nothing, so that it is marked where it is seen later. Its SHA-256. */
  keepDark(originalId: string): void {
    this.db.prepare('INSERT OR IGNORE INTO dark_photo (original_id) VALUES (?)').run(originalId);
  }

  /** All pictures that were very dark when they were read, by their SHA-256. */
  dark(): Set<string> {
    return new Set(this.db.prepare('SELECT original_id FROM dark_photo').pluck().all() as string[]);
  }
}
