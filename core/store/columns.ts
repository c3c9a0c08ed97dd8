import type { z } from 'zod';
import { type Row, TABLES, type TableName } from '../model/tables.ts';

/** How one field of a row is kept in its column. Derived from the schema, so the two cannot part. */
export interface Column {
  readonly field: string;
  readonly column: string;
  readonly kind: 'text' | 'integer' | 'real' | 'boolean' | 'json';
  readonly nullable: boolean;
  readonly choices: readonly string[] | null;
  readonly ref: TableName | null;
}

/** `asFound` → `as_found`: names in SQL are snake case, in the program camel case. */
export function snake(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}

/** The column that keeps a field. The casts follow what `def.type` has just said: the library's types do not narrow by it. */
function columnOf(field: string, schema: z.ZodType, ref: TableName | null): Column {
  let inner = schema as z.ZodType & { def: { type: string } };
  let nullable = false;
  if (inner.def.type === 'nullable') {
    nullable = true;
    inner = (inner as unknown as z.ZodNullable<typeof inner>).unwrap();
  }
  const base = { field, column: snake(field), nullable, ref, choices: null };
  switch (inner.def.type) {
    case 'string':
      return { ...base, kind: 'text' };
    case 'enum':
      return { ...base, kind: 'text', choices: (inner as unknown as z.ZodEnum).options as string[] };
    case 'boolean':
      return { ...base, kind: 'boolean' };
    case 'number':
      return { ...base, kind: (inner as unknown as z.ZodNumber).isInt ? 'integer' : 'real' };
    case 'array':
    case 'object':
      return { ...base, kind: 'json' };
    default:
      throw new Error(`Expected a schema that fits a column for ${field}, got ${inner.def.type}.`);
  }
}

const cache = new Map<TableName, readonly Column[]>();

/** The columns of a table, in the order of its schema. */
export function columnsOf(table: TableName): readonly Column[] {
  const known = cache.get(table);
  if (known) return known;
  const { schema, refs } = TABLES[table];
  const wanted = refs as Record<string, TableName | undefined>;
  const columns = Object.entries(schema.shape).map(([field, type]) =>
    columnOf(field, type as z.ZodType, wanted[field] ?? null),
  );
  cache.set(table, columns);
  return columns;
}

export type SqlValue = string | number | null;

/** A row as the values of its columns, in their order. */
export function toSql<T extends TableName>(table: T, row: Row<T>): SqlValue[] {
  const record = row as Record<string, unknown>;
  return columnsOf(table).map((column) => {
    const value = record[column.field];
    if (value === null) return null;
    switch (column.kind) {
      case 'boolean':
        return value === true ? 1 : 0;
      case 'json':
        return JSON.stringify(value);
      case 'text':
      case 'integer':
      case 'real':
        return value as SqlValue;
    }
  });
}

/** A stored row as the program sees it. */
export function fromSql<T extends TableName>(table: T, stored: Record<string, unknown>): Row<T> {
  const row: Record<string, unknown> = {};
  for (const column of columnsOf(table)) {
    const value = stored[column.column];
    if (value === null || value === undefined) row[column.field] = null;
    else if (column.kind === 'boolean') row[column.field] = value === 1;
    else if (column.kind === 'json') row[column.field] = JSON.parse(value as string);
    else row[column.field] = value;
  }
  return row as Row<T>;
}
