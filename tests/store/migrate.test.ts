import { existsSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { checkDatabase } from '../../core/store/check.ts';
import { MIGRATIONS_DIR, migrationsIn } from '../../core/store/migrate.ts';
import { openWorkshop, places } from '../../core/store/workshop.ts';
import { addJob, addRemoval, openTest, tempFolder } from '../support/workshop.ts';

const real = migrationsIn(MIGRATIONS_DIR);
const next = {
  version: real.length + 1,
  name: '9999-next.sql',
  sql: `CREATE TABLE extra (id TEXT PRIMARY KEY NOT NULL) STRICT; UPDATE job SET machine = 'seen';`,
};

describe('migrations', () => {
  it('are numbered without a gap', () => {
    expect(real.map((one) => one.version)).toEqual(real.map((_, i) => i + 1));
    const dir = tempFolder();
    writeFileSync(join(dir, '0001-a.sql'), '');
    writeFileSync(join(dir, '0003-c.sql'), '');
    expect(() => migrationsIn(dir)).toThrow('Expected migration 2');
  });

  it('a file of a newer program is refused with both versions named, and left as it is', () => {
    const dir = tempFolder();
    openTest(dir).close();
    const db = new Database(places(dir).db);
    db.pragma('user_version = 42');
    db.close();
    for (const write of [true, false]) {
      const opened = openWorkshop(dir, { write });
      expect(opened).toMatchObject({ ok: false, fault: { code: 'newer' } });
      expect(opened.ok ? '' : opened.fault.sentence).toMatch(/version 42.*up to 1/s);
    }
  });

  it('copies before it steps, with rows in it, and says the step in the journal with a digest before and after', async () => {
    const dir = tempFolder();
    const first = openTest(dir);
    const jobId = addJob(first);
    addRemoval(first, jobId, 'Guard');
    first.close();
    const second = openTest(dir, { migrations: [...real, next] });
    const [copy] = readdirSync(places(dir).copies);
    expect(copy).toMatch(/^workshop-version-1-\d+\.db$/);
    const kept = new Database(join(places(dir).copies, copy ?? ''), { readonly: true });
    expect(kept.prepare('SELECT title FROM removal').pluck().all()).toEqual(['Guard']);
    expect(kept.prepare('SELECT machine FROM job').pluck().all()).toEqual(['']);
    kept.close();
    const entry = second.db
      .prepare(`SELECT what, payload FROM journal WHERE chain = 'workshop' ORDER BY n DESC LIMIT 1`)
      .get() as { what: string; payload: string };
    expect(entry.what).toBe('migrate 9999-next.sql');
    const { digest } = JSON.parse(entry.payload) as { digest: { before: string; after: string } };
    expect(digest.before).toMatch(/^[0-9a-f]{64}$/);
    expect(digest.after).not.toBe(digest.before);
    // This step changed a row past the journal, so the check must say so; one that does not is clean.
    expect((await checkDatabase(second.db, 'none')).join()).toMatch(/not as the journal left it/);
  });

  it('a step that fails leaves the version, the rows and the journal as they were', () => {
    const dir = tempFolder();
    const first = openTest(dir);
    addJob(first);
    const seq = first.lastSeq();
    first.close();
    const broken = { ...next, sql: `${next.sql} SELECT * FROM nowhere;` };
    expect(() => openWorkshop(dir, { write: true, migrations: [...real, broken] })).toThrow('nowhere');
    const again = openTest(dir);
    expect(again.lastSeq()).toBe(seq);
    expect(again.db.prepare('SELECT machine FROM job').pluck().all()).toEqual(['']);
  });

  it('a file that is no database is refused in words and left as it is', () => {
    const dir = tempFolder();
    writeFileSync(
      places(dir).db,
      'this is not a database, but long enough to look like a file of one'.repeat(20),
    );
    expect(openWorkshop(dir, { write: true })).toMatchObject({ ok: false, fault: { code: 'damaged' } });
  });

  it('reading an empty folder says that there is no workshop, and makes none', () => {
    const dir = tempFolder();
    expect(openWorkshop(dir, { write: false })).toMatchObject({ ok: false, fault: { code: 'not-found' } });
    expect(existsSync(places(dir).db)).toBe(false);
  });

  it('what is not record may be deleted, or broken, without loss', () => {
    const dir = tempFolder();
    const first = openTest(dir);
    const jobId = addJob(first);
    first.local?.keepDraft('entry', '5 13', 1);
    expect(first.local?.draft('entry')).toBe('5 13');
    first.close();
    writeFileSync(places(dir).local, 'broken'.repeat(500));
    const second = openTest(dir);
    expect(second.local?.draft('entry')).toBe(null);
    second.local?.keepDraft('entry', '8 17', 1);
    expect(second.job(jobId)?.job.title).toBe('Bench grinder');
    second.close();
    for (const tail of ['', '-wal', '-shm']) rmSync(places(dir).local + tail, { force: true });
    expect(openTest(dir).jobs()).toHaveLength(1);
  });

  it('writes through to the disk: write-ahead log, full synchronisation', () => {
    const workshop = openTest(tempFolder(), { unsafeFast: false });
    expect(workshop.db.pragma('journal_mode', { simple: true })).toBe('wal');
    expect(workshop.db.pragma('synchronous', { simple: true })).toBe(2);
    expect(workshop.db.pragma('foreign_keys', { simple: true })).toBe(1);
  });
});
