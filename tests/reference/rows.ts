import { readFileSync } from 'node:fs';

export type Row = Readonly<Record<string, string>>;

/** Reads one file of outside examples: comment lines ("# …") carry the sources, then a header, then rows. */
export function rowsOf(name: string): readonly Row[] {
  const text = readFileSync(new URL(`data/${name}.csv`, import.meta.url), 'utf8');
  const lines = text.split('\n').filter((line) => line.trim() !== '' && !line.startsWith('# '));
  const head = cells(lines[0] ?? '');
  return lines
    .slice(1)
    .map((line) => Object.fromEntries(cells(line).map((value, i) => [head[i] ?? `c${i}`, value])));
}

/** One line of comma-separated cells, quotes allowed. */
function cells(line: string): readonly string[] {
  const found: string[] = [];
  let cell = '';
  let quoted = false;
  for (const sign of line) {
    if (sign === '"') quoted = !quoted;
    else if (sign === ',' && !quoted) {
      found.push(cell);
      cell = '';
    } else cell += sign;
  }
  return [...found, cell];
}

/** A cell as text; a missing column is a mistake in the test. */
export function text(row: Row, column: string): string {
  const value = row[column];
  if (value === undefined) throw new Error(`No column ${column}`);
  return value;
}

/** A cell as a number. */
export function num(row: Row, column: string): number {
  const value = Number(text(row, column));
  if (text(row, column) === '' || !Number.isFinite(value))
    throw new Error(`No number in ${column}: ${JSON.stringify(row)}`);
  return value;
}

/** The "a=1; b=2" cell of worked examples. */
export function inputsOf(row: Row): Row {
  return Object.fromEntries(
    text(row, 'inputs')
      .split(';')
      .map((piece) => piece.split('=').map((side) => side.trim()))
      .filter(([name, value]) => name !== undefined && value !== undefined)
      .map(([name, value]) => [name ?? '', value ?? '']),
  );
}

/** Difference in percent of the expected value. */
export function offPercent(actual: number, expected: number): number {
  return expected === 0 ? Math.abs(actual) * 100 : Math.abs(actual / expected - 1) * 100;
}
