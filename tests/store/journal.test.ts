import { copyFileSync } from 'node:fs';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { ok } from '../../core/model/result.ts';
import { checkDatabase } from '../../core/store/check.ts';
import { chainFaults, type Entry, sha256 } from '../../core/store/journal.ts';
import { places } from '../../core/store/workshop.ts';
import { addJob, addRemoval, commit, newWorkshop } from '../support/workshop.ts';

function someHistory() {
  const workshop = newWorkshop();
  const jobId = addJob(workshop);
  const other = addJob(workshop, 'Lathe');
  for (const title of ['Guard', 'Belt', 'Pulley']) addRemoval(workshop, jobId, title);
  addRemoval(workshop, other, 'Chuck');
  return { workshop, jobId };
}

const entriesOf = (db: Database.Database, chain: string) =>
  db.prepare('SELECT * FROM journal WHERE chain = ? ORDER BY n').all(chain) as Entry[];

describe('journal', () => {
  it('keeps one chain for each job and one for the workshop, numbered from 1', () => {
    const { workshop, jobId } = someHistory();
    expect(entriesOf(workshop.db, jobId).map((entry) => entry.n)).toEqual([1, 2, 3, 4]);
    expect(entriesOf(workshop.db, 'workshop').map((entry) => entry.what)).toEqual([
      'migrate 0001-record.sql',
    ]);
    for (const chain of [jobId, 'workshop']) expect(chainFaults(entriesOf(workshop.db, chain))).toEqual([]);
  });

  it('the hash is taken of the stored line itself, with what everyone has: SHA-256', () => {
    // Source of the value: FIPS 180-4 example, SHA-256 of "abc".
    expect(sha256('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    const { workshop, jobId } = someHistory();
    for (const entry of entriesOf(workshop.db, jobId)) expect(sha256(entry.line)).toBe(entry.hash);
  });

  it('an entry can be neither changed nor deleted through the database', () => {
    const { workshop } = someHistory();
    expect(() => workshop.db.exec(`UPDATE journal SET actor = 'someone else'`)).toThrow('never changed');
    expect(() => workshop.db.exec('DELETE FROM journal')).toThrow('never deleted');
  });

  it('the payload cannot be guessed from its hash: the same change twice has two hashes', () => {
    const workshop = newWorkshop();
    const lines = ['a', 'b'].map(() => {
      const jobId = addJob(workshop);
      return JSON.parse(entriesOf(workshop.db, jobId)[0]?.line ?? '{}') as { payload: string };
    });
    expect(lines[0]?.payload).not.toBe(lines[1]?.payload);
  });

  const planted: [string, string, RegExp][] = [
    [
      'a line rewritten',
      `UPDATE journal SET line = replace(line, 'unnamed', 'nobody') WHERE n = 3`,
      /does not match its hash/,
    ],
    [
      'a payload rewritten',
      `UPDATE journal SET payload = replace(payload, 'Belt', 'Bolt') WHERE n = 3`,
      /what it changed does not match/,
    ],
    ['an entry taken out', 'DELETE FROM journal WHERE n = 3', /expected number/],
    [
      'an actor rewritten beside the line',
      `UPDATE journal SET actor = 'nobody' WHERE n = 2`,
      /its actor does not match/,
    ],
    [
      'a time rewritten beside the line',
      'UPDATE journal SET at = at + 1 WHERE n = 2',
      /its at does not match/,
    ],
    ['a line and its hash both rewritten', '', /does not follow from the entry before/],
    [
      'a row changed past the journal',
      `UPDATE removal SET title = 'Bolt' WHERE title = 'Belt'`,
      /not as the journal left it/,
    ],
    [
      'a row deleted past the journal',
      `PRAGMA foreign_keys = OFF; DELETE FROM removal WHERE title = 'Belt'`,
      /but the row is gone/,
    ],
    [
      'a row written past the journal',
      `INSERT INTO person VALUES ('00000000-0000-7000-8000-000000000000', 'X', 'works', '', 0)`,
      /the journal never made it/,
    ],
    [
      'a reference cut',
      `PRAGMA foreign_keys = OFF; UPDATE removal SET job_id = 'x' WHERE title = 'Belt'`,
      /names a job that is not there/,
    ],
  ];
  it.each(planted)('check finds and names %s', async (name, sql, expected) => {
    const { workshop, jobId } = someHistory();
    const copy = `${places(workshop.dir).db}.copy`;
    workshop.db.pragma('wal_checkpoint(TRUNCATE)');
    copyFileSync(places(workshop.dir).db, copy);
    const db = new Database(copy);
    expect(await checkDatabase(db, 'none')).toEqual([]);
    db.exec('DROP TRIGGER journal_never_changes; DROP TRIGGER journal_never_shrinks;');
    if (sql === '') {
      const entry = entriesOf(db, jobId)[1] as Entry;
      const line = entry.line.replace('unnamed', 'nobody');
      db.prepare('UPDATE journal SET line = ?, hash = ?, actor = ? WHERE seq = ?').run(
        line,
        sha256(line),
        'nobody',
        entry.seq,
      );
    } else db.exec(sql);
    const faults = await checkDatabase(db, 'none');
    expect(faults.join('\n'), name).toMatch(expected);
    db.close();
  });

  it('a broken database file is said to be one', async () => {
    const { workshop } = someHistory();
    const copy = `${places(workshop.dir).db}.copy`;
    workshop.db.pragma('wal_checkpoint(TRUNCATE)');
    const db = new Database(workshop.db.serialize());
    db.close();
    copyFileSync(places(workshop.dir).db, copy);
    const { openSync, writeSync, closeSync } = await import('node:fs');
    const file = openSync(copy, 'r+');
    writeSync(file, Buffer.alloc(4096, 7), 0, 4096, 4096 * 3);
    closeSync(file);
    const broken = new Database(copy);
    const faults = await checkDatabase(broken, 'none');
    expect(faults.length).toBeGreaterThan(0);
    expect(faults[0]).toMatch(/^Database file: /);
    broken.close();
  });

  it('a commit whose decision is refused breaks no chain', () => {
    const { workshop, jobId } = someHistory();
    commit(workshop, jobId, () => ({ ok: false, fault: { code: 'refused', sentence: 'no' } }));
    commit(workshop, jobId, (writer) => {
      writer.put('asFound', {
        id: '00000000-0000-7000-8000-000000000001',
        jobId,
        kind: 'damage',
        text: 'crack',
        valueTyped: null,
        closedWhy: null,
        at: 1,
      });
      return ok(null);
    });
    expect(chainFaults(entriesOf(workshop.db, jobId))).toEqual([]);
    expect(entriesOf(workshop.db, jobId)).toHaveLength(5);
  });
});
