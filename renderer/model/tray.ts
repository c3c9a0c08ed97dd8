import type { BoltAnswer, TrayAnswer, TrayRow } from '../../core/contract/tray.ts';
import type { JobView } from '../../core/contract/views.ts';
import type { SearchData } from '../screens/off/LostPanel.tsx';
import type { MeasureData } from '../screens/off/MeasureForm.tsx';
import type { TrayAnswerData, TrayLine, TrayPanelProps, TrayRowData } from '../screens/off/TrayPanel.tsx';
import type { BoltHit } from '../screens/off/UnknownPanel.tsx';
import { off } from '../texts/off.ts';
import { tray as say } from '../texts/tray.ts';
import { lastAmong } from './deeds.ts';

/** The tray as this window keeps it while it is being listed: never record. */
export interface TrayDraft {
  readonly rows: readonly TrayRow[];
  readonly unit: 'mm' | 'in';
  readonly from: readonly string[];
  readonly into: string;
  readonly told: readonly string[];
  /** Whether what fits only holes of unknown size is booked too. */
  readonly doubtful: boolean;
}
export const NO_TRAY: TrayDraft = { rows: [], unit: 'mm', from: [], into: '', told: [], doubtful: false };
export const NO_MEASURE: MeasureData = {
  count: '',
  thread: '',
  pitch: '',
  length: '',
  tolerance: '',
  head: '',
  kind: '',
};

const FIELDS = [
  'row',
  'count',
  'thread',
  'diameter',
  'pitch',
  'length',
  'tolerance',
  'head',
  'kind',
  'note',
] as const satisfies readonly (keyof TrayRow)[];

/** The draft as short text: a row is its values in order, so that a long tray still fits into the host's notes. */
export function keptTray({ rows, ...rest }: TrayDraft): string {
  return JSON.stringify({ ...rest, rows: rows.map((row) => FIELDS.map((field) => row[field])) });
}

/** A kept draft as it was; anything else is an empty tray. */
export function trayDraft(text: string): TrayDraft {
  if (text === '') return NO_TRAY;
  try {
    const kept = JSON.parse(text) as Omit<TrayDraft, 'rows'> & { rows: unknown[][] };
    // Written by `keptTray` in the same order; what is not text falls to the form, which reads each field itself.
    const rows = kept.rows.map(
      (values) => Object.fromEntries(FIELDS.map((field, i) => [field, values[i]])) as unknown as TrayRow,
    );
    return { ...NO_TRAY, ...kept, rows };
  } catch {
    return NO_TRAY;
  }
}

/** What was typed as a row of the tray. */
export function rowOf(measure: MeasureData, row: number): TrayRow {
  const { kind, ...rest } = measure;
  const trimmed = Object.fromEntries(Object.entries(rest).map(([key, text]) => [key, text.trim()]));
  return { ...(trimmed as typeof rest), row, diameter: '', kind, note: '' };
}

/** The rows with what was typed behind them; without a count it is one piece. */
export function withMeasured({ rows }: TrayDraft, measure: MeasureData): TrayRow[] {
  const next = Math.max(0, ...rows.map((one) => one.row)) + 1;
  return [...rows, rowOf(measure.count === '' ? { ...measure, count: '1' } : measure, next)];
}

/** A row back into the fields, to be mended. */
export function measureOf(row: TrayRow): MeasureData {
  const { count, pitch, length, tolerance, head } = row;
  const kind = row.kind === 'nut' || row.kind === 'washer' ? row.kind : '';
  return { count, thread: row.thread || row.diameter, pitch, length, tolerance, head, kind };
}

/** Adds rows of a table behind those listed, each with a number of its own. */
export function withTable(
  draft: TrayDraft,
  rows: readonly TrayRow[],
  told: readonly { row: number; sentence: string }[],
): TrayDraft {
  const offset = Math.max(0, ...draft.rows.map(({ row }) => row));
  // What is wrong with a value is said at its row; here stands what is wrong with the table.
  const ofTable = told.filter(
    ({ sentence }) => !sentence.startsWith('Row ') || sentence.includes('expected at most'),
  );
  return {
    ...draft,
    rows: [...draft.rows, ...rows.map((one) => ({ ...one, row: one.row + offset }))],
    told: ofTable.map(({ sentence }) => sentence),
  };
}

/** As typed, for a row that could not be read. */
function typedOf(row: TrayRow): string {
  const words = [row.thread, row.diameter, row.length, row.head].filter((word) => word !== '').join(', ');
  // A line typed into the field of the count stands as it is.
  if (words === '' && row.note === '' && !/^\d*$/.test(row.count)) return `“${row.count}”`;
  return [row.count, words || row.note || say.empty].filter((word) => word !== '').join(' × ');
}

/** What lies on the table, row by row, each with where it belongs or why not. */
export function trayRows({ rows }: TrayDraft, answer: TrayAnswer | null): TrayRowData[] {
  const read = new Map(answer?.rows.map((row) => [row.row, row]));
  const goes = answer === null ? new Map<number, TrayLine[]>() : linesByRow(answer);
  return rows.map((row) => {
    const said = read.get(row.row);
    const bad = (said?.problem ?? null) !== null;
    const about = [said?.problem ?? '', row.note].filter((word) => word !== '').join(' · ');
    const says = said && !bad ? `${said.count} × ${said.says}` : typedOf(row);
    return { row: row.row, says, about, bad, goes: goes.get(row.row) ?? [] };
  });
}

const homesOf = (group: TrayAnswer['groups'][number]): string =>
  [...new Set(group.homes.map(({ name }) => name).filter((name) => name !== ''))].join('; ') || group.what;

function aboutGroup(group: TrayAnswer['groups'][number], says: string): string {
  const bags = [...new Set(group.homes.map(({ bag }) => bag).filter((bag) => bag !== ''))];
  return [
    homesOf(group) === group.what ? '' : group.what,
    bags.join(', '),
    say.of(group.open),
    group.ownPlace ? say.ownPlace : '',
    group.mustBeNew ? say.mustBeNew : '',
    says,
  ]
    .filter((word) => word !== '')
    .join(' · ');
}

/** By row: where its pieces belong, then what of it is left over and why. */
function linesByRow(answer: TrayAnswer): Map<number, TrayLine[]> {
  const groups = new Map(answer.groups.map((group) => [group.key, group]));
  const lines = new Map<number, TrayLine[]>();
  const add = (row: number, line: TrayLine) => lines.set(row, [...(lines.get(row) ?? []), line]);
  for (const one of answer.assigned) {
    const group = groups.get(one.key);
    if (!group) continue;
    add(one.row, {
      id: `${one.row}/${one.key}`,
      count: one.qty,
      name: homesOf(group),
      about: aboutGroup(group, one.says),
      to: 'hole',
      doubt: one.doubt === null ? '' : say.doubt(one.doubt),
    });
  }
  for (const one of answer.leftOver)
    add(one.row, {
      id: `${one.row}/left`,
      count: one.qty,
      name: say.left,
      about: one.says,
      to: 'nowhere',
      doubt: '',
    });
  return lines;
}

/** How many belong somewhere, what is short, and what measuring cannot decide. */
export function trayAnswer(answer: TrayAnswer): TrayAnswerData {
  const sum = (doubtful: boolean) =>
    answer.assigned
      .filter((one) => (one.doubt !== null) === doubtful)
      .reduce((total, one) => total + one.qty, 0);
  const short = answer.groups
    .filter((group) => group.short > 0)
    .map((group) => ({
      id: group.key,
      count: group.short,
      name: homesOf(group),
      about: aboutGroup(group, ''),
      to: 'hole' as const,
      doubt: '',
    }));
  const alike = answer.alike.map(({ sentence }) => sentence);
  return { pieces: answer.pieces, sorted: sum(false), doubtful: sum(true), short, alike };
}

/** Bags with something in them, and which of them were spilled. */
export function trayBags(view: JobView, from: readonly string[]): TrayPanelProps['bags'] {
  return view.state.stow
    .filter((stow) => (view.inBag[stow.id] ?? 0) > 0 || from.includes(stow.id))
    .sort(
      (a, b) => a.kind.localeCompare(b.kind) || a.label.localeCompare(b.label, undefined, { numeric: true }),
    )
    .map((stow) => ({
      id: stow.id,
      name: say.bagOf(off.bag(stow.kind, stow.label), view.inBag[stow.id] ?? 0),
      spilled: from.includes(stow.id),
    }));
}

/** "tray 2" as typed; a bare name is a tray. Null = back in their bags. */
export function stowNamed(text: string): { kind: 'bag' | 'tin' | 'tray' | 'shelf'; label: string } | null {
  const typed = text.trim();
  if (typed === '') return null;
  const named = /^(bag|tin|tray|shelf)\s+(.+)$/i.exec(typed);
  if (!named) return { kind: 'tray', label: typed };
  return { kind: (named[1] ?? '').toLowerCase() as 'bag', label: named[2] ?? '' };
}

/** Holes that a bolt from the floor fits, or the nearest that it does not. */
export function boltHits(answer: BoltAnswer): { holes: number; sentence: string; hits: BoltHit[] } {
  return {
    holes: answer.holes,
    sentence: answer.sentence,
    hits: answer.hits.map((hit) => ({
      id: `${hit.jobId}/${hit.key}`,
      jobId: hit.jobId,
      jobTitle: hit.jobTitle,
      removalId: hit.homes[0]?.removalId ?? '',
      name: hit.homes.map(({ name }) => name).find((name) => name !== '') ?? hit.what,
      what: hit.what,
      open: hit.open,
      sought: hit.lookedFor,
      says: hit.says,
    })),
  };
}

/** All searches of a job, newest first. */
export function searchesOf(view: JobView): SearchData[] {
  return [...view.searches].reverse().map((one) => ({
    id: one.countingId,
    name: one.name,
    missing: one.missing,
    lastSeen: one.lastSeen.sentence,
    lookAt: one.lookAt,
  }));
}

/** Rags, caps, supports and tools that were put in and are not out, and that nobody looks for yet. */
export function insideOf(view: JobView): { id: string; name: string }[] {
  const last = lastAmong(view, ['taken out', 'put in', 'came off again']);
  const sought = new Set(view.searches.map((one) => one.thingId));
  return view.state.temporary
    .filter((one) => last.get(one.id) !== 'taken out' && !sought.has(one.id))
    .map((one) => ({ id: one.id, name: one.qty > 1 ? `${one.qty} × ${one.name}` : one.name }));
}
