/** One row of a data module: its cells, with empty text for cells left off at the end. */
export type Row = readonly string[];

/** Splits a data module into rows: one entry a line or several joined by " ~ ", cells joined by "|". */
export function readRows(text: string): readonly Row[] {
  return text
    .split(/\n| ~ /)
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .map((line) => line.split('|').map((cell) => cell.trim()));
}

/** A cell, empty when the row is shorter. */
export function cell(row: Row, index: number): string {
  return row[index] ?? '';
}

/** A numeric cell. A data module with a broken number is a bug, so it is thrown. */
export function numberCell(row: Row, index: number): number {
  const value = Number(row[index]);
  if (row[index] === undefined || row[index] === '' || !Number.isFinite(value)) {
    throw new Error(`Broken table row: ${row.join('|')}`);
  }
  return value;
}
