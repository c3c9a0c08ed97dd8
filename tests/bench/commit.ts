import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { v7 } from 'uuid';
import { blank } from '../../core/model/blank.ts';
import { ok } from '../../core/model/result.ts';
import type { Row } from '../../core/model/tables.ts';
import { columnsOf, snake, toSql } from '../../core/store/columns.ts';
import { MIGRATIONS_DIR, migrationsIn } from '../../core/store/migrate.ts';
import { openWorkshop } from '../../core/store/workshop.ts';

/**
 * What the journal costs: a removal with five bolts and their bookings, committed with its entry, against the same
 * rows written bare, both without waiting for the disk. Prints a ratio; the promise is at most 3.
 */
const ROUNDS = 9;
const COMMANDS = 300;

type Rows = { table: 'removal' | 'spec' | 'fset' | 'position' | 'move' | 'thing'; row: Row<never> }[];

function rowsOf(jobId: string, n: number): Rows {
  const removal = blank('removal', v7(), jobId, { ord: `a${n}`, title: 'Cover', typed: '5 13' });
  const spec = blank('spec', v7(), jobId, { kind: 'bolt', thread: 'M8' });
  const set = blank('fset', v7(), jobId, { ord: 'a0', removalId: removal.id, specId: spec.id });
  const rows: { table: string; row: unknown }[] = [
    { table: 'removal', row: removal },
    { table: 'spec', row: spec },
    { table: 'fset', row: set },
  ];
  for (let hole = 1; hole <= 5; hole += 1) {
    const position = blank('position', v7(), jobId, { setId: set.id, n: hole });
    rows.push({ table: 'position', row: position });
    rows.push({
      table: 'move',
      row: {
        id: v7(),
        jobId,
        specId: spec.id,
        homeSetId: set.id,
        partId: null,
        qty: 1,
        src: 'hole',
        dst: 'stow',
        positionId: position.id,
        srcStowId: null,
        dstStowId: null,
        cause: 'came off',
        countId: null,
        fresh: false,
        at: 1,
        personId: null,
      },
    });
  }
  return rows as Rows;
}

const KINDS = { removal: 'removal', fset: 'set', position: 'position' } as const;

function bare(dir: string): (rows: Rows) => void {
  const db = new Database(join(dir, 'bare.db'));
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = OFF');
  db.pragma('foreign_keys = ON');
  for (const migration of migrationsIn(MIGRATIONS_DIR)) db.exec(migration.sql);
  const inserts = new Map(
    (['job', 'thing', 'removal', 'spec', 'fset', 'position', 'move'] as const).map((table) => {
      const columns = columnsOf(table).map((column) => column.column);
      const sql = `INSERT INTO ${snake(table)} (${columns.join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`;
      return [table as string, db.prepare(sql)];
    }),
  );
  const job = blank('job', JOB, '', { title: 'Bare' });
  inserts.get('job')?.run(toSql('job', job));
  return db.transaction((rows: Rows) => {
    for (const { table, row } of rows) {
      const kind = KINDS[table as keyof typeof KINDS];
      const { id, jobId } = row as unknown as { id: string; jobId: string };
      if (kind) inserts.get('thing')?.run(id, jobId, kind);
      inserts.get(table)?.run(toSql(table, row));
    }
  });
}

const JOB = v7();

function time(run: () => void): number {
  const start = process.hrtime.bigint();
  run();
  return Number(process.hrtime.bigint() - start);
}

function main(): void {
  const dir = mkdtempSync(join(tmpdir(), 'everybolt-bench-'));
  const write = bare(dir);
  const opened = openWorkshop(dir, { write: true, unsafeFast: true });
  if (!opened.ok) throw new Error(opened.fault.sentence);
  const workshop = opened.value;
  const commit = (rows: Rows) =>
    workshop.commit({ id: v7(), what: 'bench', chain: JOB, actor: 'unnamed', at: 1 }, (writer) => {
      for (const { table, row } of rows) writer.put(table, row);
      return ok(null);
    });
  workshop.commit({ id: v7(), what: 'job', chain: JOB, actor: 'unnamed', at: 1 }, (writer) => {
    writer.put('job', blank('job', JOB, '', { title: 'With journal' }));
    return ok(null);
  });
  const ratios: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const lots = (base: number) => Array.from({ length: COMMANDS }, (_, i) => rowsOf(JOB, base + i));
    const [a, b] = [lots(round * COMMANDS), lots((round + ROUNDS) * COMMANDS)];
    const plain = time(() => a.forEach((rows) => write(rows)));
    const journaled = time(() => b.forEach((rows) => commit(rows)));
    ratios.push(journaled / plain);
  }
  ratios.sort((x, y) => x - y);
  const middle = ratios[Math.floor(ROUNDS / 2)] ?? 0;
  console.log(
    `commit with journal / bare rows: ${middle.toFixed(2)} (from ${ratios[0]?.toFixed(2)} to ${ratios.at(-1)?.toFixed(2)}; promise: at most 3)`,
  );
  workshop.close();
  rmSync(dir, { recursive: true, force: true });
  process.exitCode = middle <= 3 ? 0 : 1;
}

main();
