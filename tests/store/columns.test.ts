import { describe, expect, it } from 'vitest';
import { TABLE_NAMES, TABLES, THING_TABLES } from '../../core/model/tables.ts';
import { columnsOf, fromSql, snake, toSql } from '../../core/store/columns.ts';
import { BLANK_ROWS } from '../support/rows.ts';
import { newWorkshop } from '../support/workshop.ts';

describe('tables and schemas', () => {
  it('every schema has a table with the same columns, kinds and null rules', () => {
    const { db } = newWorkshop();
    for (const table of TABLE_NAMES) {
      const stored = db.prepare(`SELECT name, type, "notnull" FROM pragma_table_info(?)`).all(snake(table));
      const wanted = columnsOf(table).map((column) => ({
        name: column.column,
        type: { text: 'TEXT', json: 'TEXT', integer: 'INTEGER', boolean: 'INTEGER', real: 'REAL' }[
          column.kind
        ],
        notnull: column.nullable ? 0 : 1,
      }));
      expect(stored, table).toEqual(wanted);
    }
  });

  it('every reference of a schema is a foreign key that is checked at the end of the transaction', () => {
    const { db } = newWorkshop();
    for (const table of TABLE_NAMES) {
      const stored = (
        db.prepare(`SELECT "from", "table" FROM pragma_foreign_key_list(?)`).all(snake(table)) as {
          from: string;
          table: string;
        }[]
      ).map((row) => `${row.from} ${row.table}`);
      const wanted = columnsOf(table).flatMap((column) =>
        column.ref ? [`${column.column} ${snake(column.ref)}`] : [],
      );
      expect(stored.sort(), table).toEqual(wanted.sort());
    }
  });

  it('every table is strict, so that a text never slips into a number', () => {
    const { db } = newWorkshop();
    const loose = db
      .prepare(
        `SELECT name FROM pragma_table_list WHERE type = 'table' AND strict = 0 AND name NOT LIKE 'sqlite_%'`,
      )
      .all();
    expect(loose).toEqual([]);
  });

  it('every choice of a schema is also a rule of the table', () => {
    const { db } = newWorkshop();
    for (const table of TABLE_NAMES) {
      const sql = db
        .prepare('SELECT sql FROM sqlite_master WHERE name = ?')
        .pluck()
        .get(snake(table)) as string;
      for (const { column, choices } of columnsOf(table))
        if (choices)
          expect(sql, `${table}.${column}`).toContain(
            `CHECK (${column} IN (${choices.map((choice) => `'${choice}'`).join(', ')}))`,
          );
    }
  });

  it('a row comes back from its columns as it went in', () => {
    for (const table of TABLE_NAMES) {
      const row = BLANK_ROWS[table];
      const values = toSql(table, row as never);
      const stored = Object.fromEntries(columnsOf(table).map((column, i) => [column.column, values[i]]));
      expect(fromSql(table, stored), table).toEqual(row);
      expect(TABLES[table].schema.safeParse(row).error?.issues ?? [], table).toEqual([]);
    }
  });

  it('everything that a marker can point at has a table of its own', () => {
    for (const table of Object.keys(THING_TABLES)) expect(TABLE_NAMES).toContain(table);
  });
});
