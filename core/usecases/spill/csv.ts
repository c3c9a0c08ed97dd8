import Papa from 'papaparse';
import type { TrayRow } from '../../contract/tray.ts';
import { readRow, type Unit } from './measure.ts';

type Field = Exclude<keyof TrayRow, 'row'>;

/** Names of columns as people write them, without blanks, points and units. */
const NAMES: Readonly<Record<Field, RegExp>> = {
  count: /^(count|qty|quantity|pieces|pcs|number|no|nr|n|howmany|amount)$/,
  thread: /^(thread|threads|size|designation|threadsize|threadordiameter)$/,
  diameter: /^(diameter|dia|diam|d|od|outsidediameter|majordiameter|measureddiameter|ø|⌀)$/,
  pitch: /^(pitch|p|tpi|threadsperinch|threadpitch)$/,
  length: /^(length|len|l|underhead|lengthunderhead|long)$/,
  tolerance: /^(tolerance|tol|plusminus|±|lengthtolerance|error|uncertainty)$/,
  head: /^(head|drive|headsize|drivesize|headdrivesize|headordrive|headordrivesize|headdrive|af|acrossflats|flats|spanner|wrench|key|hex|keysize)$/,
  kind: /^(kind|type|what|sort|item)$/,
  note: /^(note|notes|remark|remarks|comment|comments|description)$/,
};
const ORDER: readonly Field[] = ['count', 'thread', 'length', 'tolerance', 'head', 'note'];
const MAX_ROWS = 500;

interface Column {
  readonly field: Field | null;
  readonly name: string;
  /** Written behind a bare number of this column. */
  readonly unit: string;
}

interface TrayRead {
  rows: TrayRow[];
  said: { row: number; sentence: string }[];
}

function columnOf(name: string): Column {
  const low = name
    .toLowerCase()
    .replace(/^\uFEFF/, '')
    .trim();
  const unit = /\(\s*(in|inch|inches|")\s*\)|[_\s](in|inch|inches)$/.test(low)
    ? ' in'
    : /\(\s*mm\s*\)|[_\s]mm$/.test(low)
      ? ' mm'
      : /^(tpi|threads per inch)/.test(low)
        ? ' tpi'
        : '';
  const plain = low
    .replace(/\([^)]*\)/g, '')
    .replace(/[_\s](in|inch|inches|mm)$/, '')
    .replace(/[^a-z±ø⌀]/g, '');
  const field = (Object.keys(NAMES) as Field[]).find((key) => NAMES[key].test(plain)) ?? null;
  return { field, name: name.trim(), unit };
}

/** The sign between values is the one of which the first line has most; with none it is one column. */
function delimiterOf(text: string): string {
  const line = text.split(/\r?\n/).find((one) => one.trim() !== '') ?? '';
  const count = (sign: string) => line.replace(/"[^"]*"/g, '').split(sign).length;
  return [';', '\t', ',', '|'].reduce((best, sign) => (count(sign) > count(best) ? sign : best), ';');
}

function emptyRow(row: number): TrayRow {
  const none = {
    count: '',
    thread: '',
    diameter: '',
    pitch: '',
    length: '',
    tolerance: '',
    head: '',
    kind: '',
    note: '',
  };
  return { row, ...none };
}

/** With another sign between the values, a comma in a number is a decimal comma. */
const decimal = (text: string, delimiter: string): string =>
  delimiter === ',' ? text : text.replace(/^(\D*\d+),(\d+)(\D*)$/, '$1.$2$3');

function rowOf(
  cells: readonly string[],
  columns: readonly Column[],
  row: number,
  delimiter: string,
): TrayRow {
  const made: Record<string, unknown> = { ...emptyRow(row) };
  const notes: string[] = [];
  cells.forEach((cell, i) => {
    const { field, name, unit } = columns[i] as Column;
    const typed = cell.trim();
    if (typed === '') return;
    if (field === null) notes.push(`${name}: ${typed}`);
    else if (field === 'note') notes.unshift(typed);
    else {
      const plain = field === 'thread' || field === 'kind' ? typed : decimal(typed, delimiter);
      made[field] = (unit !== '' && /^[+±-]*[\d.,/ ]+$/.test(plain) ? `${plain}${unit}` : plain).slice(
        0,
        300,
      );
    }
  });
  return { ...made, note: notes.join('; ').slice(0, 10_000) } as TrayRow;
}

/**
 * A table of loose fasteners as text. Commas, semicolons, tabs or bars between values; with all but the comma, a comma
 * in a number is the decimal sign. The heading is read tolerantly; a column nobody knows goes into the note. Lines keep
 * the number that a table gives them. A line that does not fit its heading keeps its whole text as a note and a sentence.
 */
function readTable(text: string): TrayRead {
  const delimiter = delimiterOf(text);
  const { data } = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), { delimiter, skipEmptyLines: false });
  const lines = data
    .map((cells, i) => ({ cells, row: i + 1 }))
    .filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  const [first, ...rest] = lines;
  const read: TrayRead = { rows: [], said: [] };
  if (!first)
    return {
      rows: [],
      said: [{ row: 0, sentence: 'Expected a table of loose fasteners, got an empty one.' }],
    };
  const heading = first.cells.map(columnOf);
  const headed = heading.filter(({ field }) => field !== null).length >= 2 || heading[0]?.field === 'count';
  const columns: readonly Column[] = headed
    ? heading
    : first.cells.map((_, i) => ({ field: ORDER[i] ?? null, name: `column ${i + 1}`, unit: '' }));
  if (!headed)
    read.said.push({ row: first.row, sentence: `No heading: the columns are taken as ${ORDER.join(', ')}.` });
  const twice = columns.filter(
    ({ field }, i) =>
      field !== null && field !== 'note' && columns.findIndex((one) => one.field === field) < i,
  );
  if (twice.length > 0)
    read.said.push({
      row: first.row,
      sentence: `Expected one column for each value, got ${twice.map(({ name }) => `“${name}”`).join(', ')} once more; the last one counts.`,
    });
  if (headed && !columns.some(({ field }) => field === 'count'))
    read.said.push({
      row: first.row,
      sentence: 'Expected a column “count”, got none; each line is taken as one piece.',
    });
  for (const { cells, row } of headed ? rest : lines) {
    if (read.rows.length >= MAX_ROWS) {
      read.said.push({
        row,
        sentence: `Row ${row} and what follows: expected at most ${MAX_ROWS} rows in one tray. Read the rest as a second tray.`,
      });
      break;
    }
    const over = cells.slice(columns.length).some((cell) => cell.trim() !== '');
    if (over) {
      const sentence = `Row ${row}: expected at most ${columns.length} values, got ${cells.length}. A decimal comma needs quotes, or semicolons between the values.`;
      read.rows.push({ ...emptyRow(row), note: cells.join(delimiter).slice(0, 10_000) });
      read.said.push({ row, sentence });
      continue;
    }
    const made = rowOf(cells.slice(0, columns.length), columns, row, delimiter);
    read.rows.push(columns.some(({ field }) => field === 'count') ? made : { ...made, count: '1' });
  }
  return read;
}

/** The table read, with a sentence for every row that cannot be taken as it stands. Reads nothing of a job. */
export function trayRead(text: string, unit?: Unit): TrayRead {
  const read = readTable(text);
  const told = new Set(read.said.flatMap(({ row, sentence }) => (sentence.startsWith('Row ') ? [row] : [])));
  const more = read.rows.flatMap((row) => {
    const one = told.has(row.row) ? null : readRow(row, unit);
    return one === null || one.ok
      ? []
      : [{ row: row.row, sentence: `Row ${row.row}: ${one.fault.sentence}` }];
  });
  return { rows: read.rows, said: [...read.said, ...more].sort((a, b) => a.row - b.row) };
}
