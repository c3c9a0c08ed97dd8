import { createHash } from 'node:crypto';
import { createReadStream, existsSync } from 'node:fs';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { isDeepStrictEqual } from 'node:util';
import type { Database } from 'better-sqlite3';
import { TABLE_NAMES, type TableName } from '../model/tables.ts';
import { chainFaults, type Entry, type Payload } from './journal.ts';
import { rowsOf } from './read.ts';

/** Where an original lies: by its hash, in folders of 256. */
export function originalPath(originalsDir: string, sha256: string): string {
  return join(originalsDir, sha256.slice(0, 2), sha256);
}

/** SHA-256 of a file, read in pieces. */
export async function hashFile(path: string): Promise<string> {
  const hash = createHash('sha256');
  await pipeline(createReadStream(path), hash);
  return hash.digest('hex');
}

/** Every chain, oldest entry first, each checked on its own. */
function checkChains(db: Database): string[] {
  const chains = db.prepare('SELECT DISTINCT chain FROM journal ORDER BY chain').pluck().all() as string[];
  return chains.flatMap((chain) =>
    chainFaults(
      db.prepare('SELECT * FROM journal WHERE chain = ? ORDER BY n').iterate(chain) as Iterable<Entry>,
    ),
  );
}

/** The rows must be what the journal says they became: a row changed past the journal shows here. */
function checkReplay(db: Database): string[] {
  const last = new Map<string, unknown>();
  for (const text of db
    .prepare('SELECT payload FROM journal ORDER BY seq')
    .pluck()
    .iterate() as Iterable<string>) {
    const payload = JSON.parse(text) as Payload;
    for (const change of payload.changes) {
      const key = `${change.table}/${change.id}`;
      if (change.after === null) last.delete(key);
      else last.set(key, change.after);
    }
  }
  const faults: string[] = [];
  for (const table of TABLE_NAMES)
    for (const row of rowsOf(db, table as TableName)) {
      const key = `${table}/${(row as { id: string }).id}`;
      const said = last.get(key);
      if (said === undefined) faults.push(`${key}: the row is there, but the journal never made it.`);
      else if (!isDeepStrictEqual(said, row)) faults.push(`${key}: the row is not as the journal left it.`);
      last.delete(key);
    }
  for (const key of last.keys()) faults.push(`${key}: the journal made it, but the row is gone.`);
  return faults;
}

/** Each original must be there and be the file that its name says. */
async function checkOriginals(db: Database, originalsDir: string): Promise<string[]> {
  const faults: string[] = [];
  for (const original of rowsOf(db, 'original')) {
    if (original.gone) continue;
    const path = originalPath(originalsDir, original.id);
    if (!existsSync(path)) faults.push(`Photo ${original.id}: the original is not on disk.`);
    else if ((await hashFile(path)) !== original.id)
      faults.push(`Photo ${original.id}: the file on disk is not the one that was added.`);
  }
  return faults;
}

/** Finds and names damage; empty = none. Reads only. */
export async function checkDatabase(db: Database, originalsDir: string): Promise<string[]> {
  try {
    return await checkAll(db, originalsDir);
  } catch (error) {
    // A page that cannot be read stops SQLite itself, wherever in the check it is met.
    const code = (error as { code?: string }).code ?? '';
    if (code.startsWith('SQLITE_CORRUPT') || code === 'SQLITE_NOTADB')
      return [`Database file: ${(error as Error).message}.`];
    throw error;
  }
}

async function checkAll(db: Database, originalsDir: string): Promise<string[]> {
  const integrity = (db.pragma('integrity_check') as { integrity_check: string }[])
    .map((row) => row.integrity_check)
    .filter((text) => text !== 'ok')
    .map((text) => `Database file: ${text}.`);
  if (integrity.length > 0) return integrity;
  const dangling = (db.pragma('foreign_key_check') as { table: string; rowid: number; parent: string }[]).map(
    (row) => `Table ${row.table}, row ${row.rowid}: names a ${row.parent} that is not there.`,
  );
  return [...dangling, ...checkChains(db), ...checkReplay(db), ...(await checkOriginals(db, originalsDir))];
}
