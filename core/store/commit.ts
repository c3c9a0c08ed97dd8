import type { Database, Statement } from 'better-sqlite3';
import { ok, type Result, refuse } from '../model/result.ts';
import { type Row, TABLES, type TableName } from '../model/tables.ts';
import { columnsOf } from './columns.ts';
import { type Change, NO_HASH, PAYLOAD_SCHEMA, seal } from './journal.ts';
import { Buffer, RowProblem, type Reader, Rows, type Writer } from './writer.ts';

/** Who does what, when. `id` is made by the caller, so that a retry is the same command and not a second one. */
export interface Command {
  readonly id: string;
  readonly what: string;
  /** A job's id, or WORKSHOP_CHAIN. */
  readonly chain: string;
  readonly actor: string;
  /** UTC milliseconds. */
  readonly at: number;
  readonly undoes?: readonly number[];
  readonly batch?: string | null;
}

export interface Committed<T> {
  readonly seq: number;
  readonly value: T;
  readonly changes: readonly Change[];
  /** The command had been committed before; nothing was written now. */
  readonly repeated: boolean;
}

class Refused extends Error {
  readonly result: { ok: false; fault: { code: never; sentence: string } };
  constructor(result: unknown) {
    super('refused');
    this.result = result as Refused['result'];
  }
}

interface Prepared {
  readonly last: Statement;
  readonly insert: Statement;
  readonly byCommand: Statement;
}

/** The one path by which the record is written: rows and one journal entry, in one transaction. */
export class Committer {
  readonly rows: Rows;
  private readonly db: Database;
  private readonly sql: Prepared;

  constructor(db: Database) {
    this.db = db;
    this.rows = new Rows(db);
    this.sql = {
      last: db.prepare('SELECT n, hash FROM journal WHERE chain = ? ORDER BY n DESC LIMIT 1'),
      insert: db.prepare(
        `INSERT INTO journal (chain, n, hash, line, salt, payload, actor, at, what, undoes, batch, command, reply)
         VALUES (@chain, @n, @hash, @line, @salt, @payload, @actor, @at, @what, @undoes, @batch, @command, @reply)`,
      ),
      byCommand: db.prepare('SELECT seq, reply FROM journal WHERE command = ?'),
    };
  }

  /**
   * Runs a decision and writes what it changed, all or nothing. The same command id a second time writes nothing and
   * answers as the first time. A decision that changes nothing writes no entry (seq 0).
   */
  commit<T>(command: Command, decide: (writer: Writer) => Result<T>): Result<Committed<T>> {
    try {
      return this.db
        .transaction((): Result<Committed<T>> => {
          const before = this.sql.byCommand.get(command.id) as { seq: number; reply: string } | undefined;
          if (before)
            return ok({ seq: before.seq, value: JSON.parse(before.reply) as T, changes: [], repeated: true });
          const buffer = new Buffer(this.rows);
          const decided = decide(buffer);
          if (!decided.ok) return decided;
          const changes = buffer.changes();
          if (changes.length === 0) return ok({ seq: 0, value: decided.value, changes, repeated: false });
          const problem = this.jobProblem(changes, buffer);
          if (problem) return refuse('refused', problem);
          this.rows.apply(changes);
          const still = this.stillNamed(changes);
          if (still) throw new Refused(refuse('refused', still));
          const seq = this.append(command, changes, decided.value);
          return ok({ seq, value: decided.value, changes, repeated: false });
        })
        .immediate();
    } catch (error) {
      return refusalOf(error);
    }
  }

  private append(command: Command, changes: readonly Change[], value: unknown): number {
    const last = this.sql.last.get(command.chain) as { n: number; hash: string } | undefined;
    const payload = JSON.stringify({ schema: PAYLOAD_SCHEMA, changes });
    const facts = {
      chain: command.chain,
      n: (last?.n ?? 0) + 1,
      prev: last?.hash ?? NO_HASH,
      actor: command.actor,
      at: command.at,
      what: command.what,
      undoes: command.undoes ?? [],
      batch: command.batch ?? null,
    };
    const entry = {
      ...facts,
      ...seal(facts, payload),
      undoes: JSON.stringify(facts.undoes),
      payload,
      command: command.id,
      reply: JSON.stringify(value ?? null),
    };
    return Number(this.sql.insert.run(entry).lastInsertRowid);
  }

  /** A row may only name rows of its own job (or of the workshop). Columns cannot say that, so it is asked here. */
  private jobProblem(changes: readonly Change[], reader: Reader): string | null {
    for (const { table, after } of changes) {
      if (!after || TABLES[table].scope !== 'job') continue;
      const row = after as Record<string, unknown>;
      for (const { field, ref } of columnsOf(table)) {
        if (!ref || ref === 'job' || TABLES[ref].scope !== 'job') continue;
        const id = row[field];
        if (id === null || (field === 'id' && ref === 'thing')) continue;
        const named = reader.get(ref, id as string) as Row<'thing'> | null;
        if (!named)
          return `Expected ${field} of this ${table} to name a ${ref} that is there, got ${String(id)}.`;
        if (named.jobId !== row['jobId'])
          return `Expected ${field} of this ${table} to name a ${ref} of the same job.`;
      }
    }
    return null;
  }

  private stillNamed(changes: readonly Change[]): string | null {
    for (const { table, id, after } of changes) {
      if (after) continue;
      const pointer = this.rows.pointerTo(table, id);
      if (pointer)
        return `This ${word(table)} cannot go: a ${word(pointer.table)} still names it. Take that away first.`;
    }
    return null;
  }
}

const WORDS: Partial<Record<TableName, string>> = {
  fset: 'fastener set',
  move: 'booking of pieces',
  deed: 'step on the way back',
  backOrder: 'order of yours',
  asFound: 'note as found',
  stackItem: 'piece of a stack',
  holds: 'shared hole',
};
const word = (table: TableName): string => WORDS[table] ?? table;

function refusalOf(error: unknown): { ok: false; fault: { code: never; sentence: string } } {
  if (error instanceof Refused) return error.result;
  if (error instanceof RowProblem) return refuse('input', error.message) as ReturnType<typeof refusalOf>;
  const code = (error as { code?: string }).code;
  if (code === 'SQLITE_CONSTRAINT_UNIQUE')
    return refuse('refused', uniqueSentence(String(error))) as ReturnType<typeof refusalOf>;
  if (code === 'SQLITE_CONSTRAINT_FOREIGNKEY')
    return refuse('refused', 'Expected every row to name rows that are there; one does not.') as ReturnType<
      typeof refusalOf
    >;
  throw error;
}

function uniqueSentence(message: string): string {
  if (message.includes('stow.'))
    return 'Expected a label that is not in use: a bag or shelf with it is not empty yet.';
  if (message.includes('position.')) return 'Expected a hole number that is not taken in this set.';
  if (message.includes('marker.')) return 'Expected a marker number that is not taken on this photo.';
  return 'Expected something new, but it is there already.';
}
