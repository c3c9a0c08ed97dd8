import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Database } from 'better-sqlite3';
import { ok, type Result, refuse } from '../model/result.ts';
import { NO_HASH, PAYLOAD_SCHEMA, type Payload, seal, WORKSHOP_CHAIN } from './journal.ts';

export const MIGRATIONS_DIR = join(import.meta.dirname, '..', '..', 'migrations');

export interface Migration {
  readonly version: number;
  readonly name: string;
  readonly sql: string;
}

/** The numbered migrations of a folder, in order. Throws if a number is missing or twice: that is a bug. */
export function migrationsIn(dir: string): Migration[] {
  const found = readdirSync(dir)
    .filter((name) => /^\d{4}-.+\.sql$/.test(name))
    .sort()
    .map((name) => ({
      version: Number(name.slice(0, 4)),
      name,
      sql: readFileSync(join(dir, name), 'utf8'),
    }));
  found.forEach((migration, i) => {
    if (migration.version !== i + 1)
      throw new Error(`Expected migration ${i + 1}, found ${migration.name} in ${dir}.`);
  });
  return found;
}

/** Hash over every row of every table but the journal: what a migration started from and ended with. */
function digestOf(db: Database): string {
  const hash = createHash('sha256');
  const tables = db
    .prepare(`SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name`)
    .pluck()
    .all() as string[];
  for (const name of tables) {
    if (name === 'journal' || name === 'meta') continue;
    hash.update(`\n${name}\n`);
    for (const row of db.prepare(`SELECT * FROM "${name}" ORDER BY 1`).raw().iterate())
      hash.update(JSON.stringify(row));
  }
  return hash.digest('hex');
}

function appendEntry(db: Database, migration: Migration, digest: Payload['digest'], at: number): void {
  const last = db
    .prepare('SELECT n, hash FROM journal WHERE chain = ? ORDER BY n DESC LIMIT 1')
    .get(WORKSHOP_CHAIN) as { n: number; hash: string } | undefined;
  const payload = JSON.stringify({ schema: PAYLOAD_SCHEMA, changes: [], digest });
  const facts = {
    chain: WORKSHOP_CHAIN,
    n: (last?.n ?? 0) + 1,
    prev: last?.hash ?? NO_HASH,
    actor: 'program',
    at,
    what: `migrate ${migration.name}`,
    undoes: [],
    batch: null,
  };
  const sealed = seal(facts, payload);
  db.prepare(
    `INSERT INTO journal (chain, n, hash, line, salt, payload, actor, at, what, undoes, batch, command, reply)
     VALUES (@chain, @n, @hash, @line, @salt, @payload, @actor, @at, @what, '[]', NULL, @command, 'null')`,
  ).run({ ...facts, ...sealed, payload, command: `migrate-${migration.version}`, undoes: undefined });
}

/**
 * Refuses, copies, then steps: a file written by a newer program is refused with both versions named; an existing
 * file is copied before the first step; each step is one transaction with one journal entry.
 */
export function migrate(
  db: Database,
  copiesDir: string,
  at: number,
  migrations: readonly Migration[] = migrationsIn(MIGRATIONS_DIR),
): Result<number> {
  const current = db.pragma('user_version', { simple: true }) as number;
  const newest = migrations.length;
  if (current > newest)
    return refuse(
      'newer',
      `This workshop was written by a newer program (tables version ${current}). This program knows versions up to ${newest}. Use the newer program; nothing was changed.`,
    );
  if (current === newest) return ok(0);
  if (current > 0) {
    mkdirSync(copiesDir, { recursive: true, mode: 0o700 });
    const copy = join(copiesDir, `workshop-version-${current}-${at}.db`);
    if (!existsSync(copy)) db.prepare('VACUUM INTO ?').run(copy);
  }
  for (const migration of migrations.slice(current)) {
    db.transaction(() => {
      const before = digestOf(db);
      db.exec(migration.sql);
      appendEntry(db, migration, { before, after: digestOf(db) }, at);
      db.pragma(`user_version = ${migration.version}`);
    }).immediate();
  }
  return ok(newest - current);
}
