import type { Database } from 'better-sqlite3';

/** One text of a job that can be found: whose it is, as it is shown, and made plain for comparing. */
export interface SearchText {
  readonly jobId: string;
  readonly removalId: string | null;
  readonly thingId: string | null;
  readonly kind: string;
  readonly text: string;
  readonly plain: string;
}

/** The texts of all jobs beside the record: made anew for a job that has changed, and may be deleted without loss. */
export class SearchIndex {
  private readonly db: Database;

  constructor(db: Database) {
    this.db = db;
    db.exec(`
      CREATE TABLE IF NOT EXISTS search_job (job_id TEXT PRIMARY KEY NOT NULL, stamp TEXT NOT NULL) STRICT;
      CREATE TABLE IF NOT EXISTS search_text (
        job_id TEXT NOT NULL, removal_id TEXT, thing_id TEXT, kind TEXT NOT NULL, text TEXT NOT NULL, plain TEXT NOT NULL
      ) STRICT;
      CREATE INDEX IF NOT EXISTS search_text_job ON search_text(job_id);
    `);
  }

  /** What a job's texts were made from; null = not yet. */
  stampOf(jobId: string): string | null {
    const row = this.db.prepare('SELECT stamp FROM search_job WHERE job_id = ?').pluck().get(jobId);
    return (row as string | undefined) ?? null;
  }

  put(jobId: string, stamp: string, texts: readonly SearchText[]): void {
    this.db.transaction(() => {
      this.db.prepare('DELETE FROM search_text WHERE job_id = ?').run(jobId);
      const insert = this.db.prepare(
        'INSERT INTO search_text (job_id, removal_id, thing_id, kind, text, plain) VALUES (?, ?, ?, ?, ?, ?)',
      );
      for (const one of texts)
        insert.run(one.jobId, one.removalId, one.thingId, one.kind, one.text, one.plain);
      this.db.prepare('INSERT OR REPLACE INTO search_job (job_id, stamp) VALUES (?, ?)').run(jobId, stamp);
    })();
  }

  /** Texts that hold every piece, in no order that matters. */
  holding(pieces: readonly string[]): SearchText[] {
    const where = pieces.map(() => 'instr(plain, ?) > 0').join(' AND ');
    return this.db
      .prepare(
        `SELECT job_id AS jobId, removal_id AS removalId, thing_id AS thingId, kind, text, plain FROM search_text WHERE ${where}`,
      )
      .all(...pieces) as SearchText[];
  }
}
