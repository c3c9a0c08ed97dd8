import { createHash, randomBytes } from 'node:crypto';
import type { Row, TableName } from '../model/tables.ts';

/** Number of the shape of payload rows; a reader lifts older ones. Follows the newest migration. */
export const PAYLOAD_SCHEMA = 1;
export const WORKSHOP_CHAIN = 'workshop';
export const NO_HASH = '0'.repeat(64);

/** One row before and after; null before = made, null after = removed. */
export interface Change<T extends TableName = TableName> {
  readonly table: T;
  readonly id: string;
  readonly before: Row<T> | null;
  readonly after: Row<T> | null;
}

export interface Payload {
  readonly schema: number;
  readonly changes: readonly Change[];
  /** Set by a migration: digest of all rows before and after. */
  readonly digest?: { readonly before: string; readonly after: string };
}

/** One stored entry, as its columns hold it. */
export interface Entry {
  readonly seq: number;
  readonly chain: string;
  readonly n: number;
  readonly hash: string;
  readonly line: string;
  readonly salt: string;
  readonly payload: string;
  readonly actor: string;
  readonly at: number;
  readonly what: string;
  readonly undoes: string;
  readonly batch: string | null;
  readonly command: string;
  readonly reply: string;
}

export const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');

/** What the line says. Its text is stored and never made again, so that field order cannot change a hash. */
export interface LineFacts {
  readonly chain: string;
  readonly n: number;
  readonly prev: string;
  readonly actor: string;
  readonly at: number;
  readonly what: string;
  readonly undoes: readonly number[];
  readonly batch: string | null;
}

export interface Sealed {
  readonly line: string;
  readonly hash: string;
  readonly salt: string;
}

/** Seals a payload into a line that follows from the one before. The salt keeps a withheld payload from being guessed. */
export function seal(facts: LineFacts, payload: string): Sealed {
  const salt = randomBytes(16).toString('hex');
  const line = JSON.stringify({ v: 1, ...facts, payload: sha256(`${salt}\n${payload}`) });
  return { line, hash: sha256(line), salt };
}

/**
 * Checks one chain, oldest entry first. Returns a sentence per thing that does not follow; empty = whole.
 * It shows that nothing was changed after a head was noted elsewhere; it does not show that an entry is true.
 */
export function chainFaults(entries: Iterable<Entry>): string[] {
  const faults: string[] = [];
  let prev = NO_HASH;
  let n = 0;
  for (const entry of entries) {
    n += 1;
    const at = `Entry ${entry.n} of chain ${entry.chain}`;
    if (entry.n !== n) faults.push(`${at}: expected number ${n}.`);
    if (sha256(entry.line) !== entry.hash) faults.push(`${at}: the line does not match its hash.`);
    let said: Record<string, unknown>;
    try {
      said = JSON.parse(entry.line) as Record<string, unknown>;
    } catch {
      faults.push(`${at}: the line cannot be read.`);
      prev = entry.hash;
      continue;
    }
    if (said['prev'] !== prev) faults.push(`${at}: it does not follow from the entry before.`);
    if (said['payload'] !== sha256(`${entry.salt}\n${entry.payload}`))
      faults.push(`${at}: what it changed does not match its line.`);
    const copied = ['chain', 'n', 'actor', 'at', 'what', 'batch'] as const;
    for (const key of copied)
      if (said[key] !== entry[key]) faults.push(`${at}: its ${key} does not match its line.`);
    if (JSON.stringify(said['undoes']) !== entry.undoes)
      faults.push(`${at}: what it undoes does not match its line.`);
    prev = entry.hash;
  }
  return faults;
}
