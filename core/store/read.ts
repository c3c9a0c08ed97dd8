import type { Database } from 'better-sqlite3';
import { JOB_TABLES, type JobState, type Row, TABLES, type TableName } from '../model/tables.ts';
import { columnsOf, fromSql, snake } from './columns.ts';

/** All rows of a table, or those of one job, by id: ids are made in time order, so this is the order of making. */
export function rowsOf<T extends TableName>(db: Database, table: T, jobId?: string): Row<T>[] {
  const where = jobId !== undefined && TABLES[table].scope === 'job' ? 'WHERE job_id = ?' : '';
  const stored = db
    .prepare(`SELECT * FROM ${snake(table)} ${where} ORDER BY id`)
    .all(...(where ? [jobId] : [])) as Record<string, unknown>[];
  return stored.map((row) => fromSql(table, row));
}

/** Everything one job holds, with the workshop's people, tools and stows; null if there is no such job. */
export function readJob(db: Database, jobId: string): JobState | null {
  const job = rowById(db, 'job', jobId);
  if (!job) return null;
  const state: Record<string, unknown> = {
    job,
    person: rowsOf(db, 'person'),
    tool: rowsOf(db, 'tool'),
    stow: rowsOf(db, 'stow'),
    original: (
      db
        .prepare(
          'SELECT * FROM original WHERE id IN (SELECT original_id FROM photo WHERE job_id = ?) ORDER BY id',
        )
        .all(jobId) as Record<string, unknown>[]
    ).map((row) => fromSql('original', row)),
  };
  for (const table of JOB_TABLES) state[table] = rowsOf(db, table, jobId);
  return state as JobState;
}

/** One row by its id, or null. */
export function rowById<T extends TableName>(db: Database, table: T, id: string): Row<T> | null {
  if (columnsOf(table).every((column) => column.field !== 'id')) return null;
  const stored = db.prepare(`SELECT * FROM ${snake(table)} WHERE id = ?`).get(id);
  return stored ? fromSql(table, stored as Record<string, unknown>) : null;
}
