import type { Database, Statement } from 'better-sqlite3';
import {
  type Row,
  TABLE_NAMES,
  TABLES,
  type TableName,
  THING_TABLES,
  type ThingTable,
} from '../model/tables.ts';
import { columnsOf, fromSql, snake, toSql } from './columns.ts';
import type { Change } from './journal.ts';

/** Thrown inside a decision when a row is not what its schema says; `commit` turns it into a refusal. */
export class RowProblem extends Error {}

/** Reads single rows: what a decision is made from. */
export interface Reader {
  get<T extends TableName>(table: T, id: string): Row<T> | null;
}

/** Collects row changes. Only `commit` hands one out, so there is no second way to write the record. */
export interface Writer extends Reader {
  put<T extends TableName>(table: T, row: Row<T>): void;
  remove(table: TableName, id: string): void;
  /** Rows of a table that fit: those of `known` as this command left them, and those it made. */
  list<T extends TableName>(table: T, fits: (row: Row<T>) => boolean, known: readonly Row<T>[]): Row<T>[];
}

interface Statements {
  readonly get: Statement;
  readonly insert: Statement;
  readonly remove: Statement;
}

/** Which columns point at a table: what must be asked before a row of it may go. */
const POINTERS = new Map<TableName, { table: TableName; column: string; field: string }[]>();
for (const table of TABLE_NAMES) {
  for (const column of columnsOf(table)) {
    if (!column.ref || (column.field === 'id' && column.ref === 'thing')) continue;
    const list = POINTERS.get(column.ref) ?? [];
    list.push({ table, column: column.column, field: column.field });
    POINTERS.set(column.ref, list);
  }
}

/** Row statements per table, prepared once per open file. */
export class Rows implements Reader {
  readonly db: Database;
  private readonly made = new Map<TableName, Statements>();
  private readonly pointing = new Map<string, Statement>();

  constructor(db: Database) {
    this.db = db;
  }

  private of(table: TableName): Statements {
    const known = this.made.get(table);
    if (known) return known;
    const columns = columnsOf(table);
    const name = snake(table);
    const statements = {
      get: this.db.prepare(`SELECT * FROM ${name} WHERE id = ?`),
      insert: this.db.prepare(
        `INSERT INTO ${name} (${columns.map((c) => c.column).join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`,
      ),
      remove: this.db.prepare(`DELETE FROM ${name} WHERE id = ?`),
    };
    this.made.set(table, statements);
    return statements;
  }

  get<T extends TableName>(table: T, id: string): Row<T> | null {
    const stored = this.of(table).get.get(id) as Record<string, unknown> | undefined;
    return stored ? fromSql(table, stored) : null;
  }

  /** Old rows out first, new rows in after: so two rows may swap a number that must stay unique. */
  apply(changes: readonly Change[]): void {
    for (const change of changes) if (change.before) this.of(change.table).remove.run(change.id);
    for (const change of changes)
      if (change.after) this.of(change.table).insert.run(toSql(change.table, change.after));
  }

  /** The first row that still names this one, or null. */
  pointerTo(table: TableName, id: string): { table: TableName; id: string; field: string } | null {
    for (const pointer of POINTERS.get(table) ?? []) {
      const key = `${pointer.table}.${pointer.column}`;
      let statement = this.pointing.get(key);
      if (!statement) {
        statement = this.db
          .prepare(`SELECT id FROM ${snake(pointer.table)} WHERE ${pointer.column} = ? LIMIT 1`)
          .pluck();
        this.pointing.set(key, statement);
      }
      const found = statement.get(id) as string | undefined;
      if (found !== undefined) return { table: pointer.table, id: found, field: pointer.field };
    }
    return null;
  }
}

/** Buffers the changes of one command; rows are read through it, so a decision sees its own writes. */
export class Buffer implements Writer {
  private readonly rows: Rows;
  private readonly touched = new Map<string, Change>();

  constructor(rows: Rows) {
    this.rows = rows;
  }

  get<T extends TableName>(table: T, id: string): Row<T> | null {
    const change = this.touched.get(`${table}/${id}`);
    return change ? (change.after as Row<T> | null) : this.rows.get(table, id);
  }

  put<T extends TableName>(table: T, row: Row<T>): void {
    const parsed = TABLES[table].schema.safeParse(row);
    if (!parsed.success) {
      const issue = parsed.error.issues[0];
      throw new RowProblem(
        `Expected a valid ${table}: ${issue?.path.join('.') ?? ''} ${issue?.message ?? ''}`.trim(),
      );
    }
    this.note(table, (row as { id: string }).id, row);
    if (table in THING_TABLES) {
      const { id, jobId } = row as { id: string; jobId: string };
      if (!this.get('thing', id))
        this.note('thing', id, { id, jobId, kind: THING_TABLES[table as ThingTable] });
    }
  }

  remove(table: TableName, id: string): void {
    this.note(table, id, null);
    if (table in THING_TABLES) this.note('thing', id, null);
  }

  list<T extends TableName>(table: T, fits: (row: Row<T>) => boolean, known: readonly Row<T>[]): Row<T>[] {
    const rows = new Map<string, Row<T>>();
    for (const row of known) rows.set((row as { id: string }).id, row);
    for (const change of this.touched.values()) {
      if (change.table !== table) continue;
      if (change.after) rows.set(change.id, change.after as Row<T>);
      else rows.delete(change.id);
    }
    return [...rows.values()].filter(fits);
  }

  private note<T extends TableName>(table: T, id: string, after: Row<T> | null): void {
    const key = `${table}/${id}`;
    const known = this.touched.get(key);
    const before = known ? known.before : this.rows.get(table, id);
    this.touched.set(key, { table, id, before, after });
  }

  /** What really changed: rows made and removed again, or written as they were, are left out. */
  changes(): Change[] {
    return [...this.touched.values()].filter(
      ({ before, after }) => JSON.stringify(before) !== JSON.stringify(after),
    );
  }
}
