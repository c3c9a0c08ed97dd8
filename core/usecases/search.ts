import type { SearchHit } from '../contract/contract.ts';
import type { Context } from './frame.ts';

const SEARCHED: readonly { kind: string; sql: string }[] = [
  {
    kind: 'job',
    sql: `SELECT id AS job_id, NULL AS thing_id, title || ' ' || machine || ' ' || complaint AS text FROM job`,
  },
  {
    kind: 'removal',
    sql: `SELECT job_id, id AS thing_id, title || ' ' || typed || ' ' || note || ' ' || note_back AS text FROM removal WHERE phase <> 'void'`,
  },
  {
    kind: 'part',
    sql: `SELECT job_id, id AS thing_id, name || ' ' || stamped || ' ' || condition AS text FROM part`,
  },
  {
    kind: 'connection',
    sql: `SELECT job_id, id AS thing_id, name || ' ' || goes_to AS text FROM connection`,
  },
  {
    kind: 'set',
    sql: `SELECT fset.job_id, fset.id AS thing_id, fset.name || ' ' || fset.typed || ' ' || coalesce(spec.thread, '') || ' ' || coalesce(stow.kind || ' ' || stow.label, '') AS text
          FROM fset JOIN spec ON spec.id = fset.spec_id LEFT JOIN stow ON stow.id = fset.stow_id`,
  },
  {
    kind: 'fluid',
    sql: `SELECT job_id, id AS thing_id, name || ' ' || type || ' ' || batch AS text FROM fluid`,
  },
  { kind: 'mark', sql: `SELECT job_id, id AS thing_id, body AS text FROM mark` },
];

const LIMIT = 100;

/** Every job is searched: parts, notes, threads, bags. All words must be in one text; case does not matter. */
export function search(context: Context, text: string): SearchHit[] {
  const words = text
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  if (words.length === 0) return [];
  const { db } = context.workshop;
  const titles = new Map(context.workshop.jobs().map((job) => [job.id, job.title]));
  const hits: SearchHit[] = [];
  for (const { kind, sql } of SEARCHED)
    for (const row of db.prepare(sql).iterate() as Iterable<{
      job_id: string;
      thing_id: string | null;
      text: string;
    }>) {
      const low = row.text.toLowerCase();
      if (!words.every((word) => low.includes(word))) continue;
      hits.push({
        jobId: row.job_id,
        jobTitle: titles.get(row.job_id) ?? '',
        thingId: row.thing_id,
        kind,
        text: row.text.replace(/\s+/g, ' ').trim().slice(0, 200),
      });
      if (hits.length >= LIMIT) return hits;
    }
  return hits;
}
