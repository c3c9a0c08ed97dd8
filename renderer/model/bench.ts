import type { JobView } from '../../core/contract/views.ts';
import { ok, type Result } from '../../core/model/result.ts';
import type { Row } from '../../core/model/tables.ts';
import { bench as say } from '../texts/bench.ts';
import { removal as sayRemoval } from '../texts/removal.ts';
import type { RowData } from '../ui/Rows.tsx';
import type { BenchField, Option, Write } from './bench-fields.ts';
import { fieldKinds, stowName } from './bench-build.ts';
import { threadCandidates } from './bench-thread.ts';
import { THINGS, type ThingTable } from './bench-thing.ts';
import { logOf } from './line.ts';
import { clock } from './time.ts';
import { pauseLines } from './times.ts';

/** Things of one kind that belong to a removal. */
export interface BenchGroup {
  readonly table: ThingTable;
  readonly title: string;
  readonly rows: readonly RowData[];
}

const plainSpec = (view: JobView, specId: string): string =>
  (view.specNames[specId] ?? '').replace(/^fastener\s*/, '');

function setRow(view: JobView, set: Row<'fset'>): RowData {
  const count = view.state.position.filter((hole) => hole.setId === set.id).length;
  const spec = view.state.spec.find((one) => one.id === set.specId);
  const open = spec !== undefined && threadCandidates(spec).length > 0;
  const about = !set.countKnown
    ? say.countUnknown
    : open
      ? say.toConfirm
      : [set.how === 'slackened' ? sayRemoval.dids.slackened : '', stowName(view, set.stowId)]
          .filter(Boolean)
          .join(', ');
  const name = [set.name, plainSpec(view, set.specId)].filter((word) => word !== '').join(', ');
  return {
    id: set.id,
    mark: '',
    name: name || say.unnamed.fset,
    count: set.countKnown ? count : '?',
    about,
    grave: !set.countKnown || open,
  };
}

function partRow(view: JobView, part: Row<'part'>): RowData {
  const words = [say.word(part.fate), part.condition, stowName(view, part.stowId)];
  const about = words.filter((word) => word !== '').join(', ');
  return { id: part.id, mark: '', name: part.name || say.unnamed.part, count: part.qty, about };
}

/** What else there is: a name, how many, and the one thing worth knowing in a list. */
function plainRow(
  table: Exclude<ThingTable, 'fset' | 'part'>,
  row: Readonly<Record<string, unknown>>,
): RowData {
  const text = (field: string) => String(row[field] ?? '');
  const names = {
    connection: 'name',
    fluid: 'name',
    isolation: 'how',
    temporary: 'name',
    mark: 'body',
    measure: 'what',
  };
  const abouts = {
    connection: 'goesTo',
    fluid: 'type',
    isolation: 'energy',
    temporary: 'role',
    mark: 'kind',
    measure: 'asFoundTyped',
  };
  const counts = { connection: 'ends', fluid: '', isolation: '', temporary: 'qty', mark: '', measure: '' };
  return {
    id: text('id'),
    mark: '',
    name: text(names[table]) || say.unnamed[table],
    count: counts[table] === '' ? '' : text(counts[table]),
    about: text(abouts[table]),
  };
}

function rowsOf(view: JobView, table: ThingTable, removalId: string): RowData[] {
  if (table === 'fset')
    return view.state.fset
      .filter((set) => set.removalId === removalId)
      .sort((a, b) => (a.ord < b.ord ? -1 : 1))
      .map((set) => setRow(view, set));
  if (table === 'part')
    return view.state.part.filter((part) => part.removalId === removalId).map((part) => partRow(view, part));
  if (table === 'fluid') {
    const opened = new Set(
      view.state.opens.filter((one) => one.thingId === removalId).map((one) => one.fluidId),
    );
    return view.state.fluid.filter((fluid) => opened.has(fluid.id)).map((fluid) => plainRow('fluid', fluid));
  }
  const rows = view.state[table] as readonly (Readonly<Record<string, unknown>> & {
    removalId: string | null;
  })[];
  return rows.filter((row) => row.removalId === removalId).map((row) => plainRow(table, row));
}

/** All things of a removal by kind; a kind with nothing in it is left out. */
export function benchGroups(view: JobView, removalId: string): BenchGroup[] {
  return THINGS.map((table) => ({
    table,
    title: say.things[table],
    rows: rowsOf(view, table, removalId),
  })).filter((group) => group.rows.length > 0);
}

/** Sides as this job names them, or none. */
function sideOptions(view: JobView): Option[] {
  const { left, right } = view.state.job.sideNames;
  return [
    { value: '', label: say.noSide },
    { value: 'left', label: left || sayRemoval.sides.left },
    { value: 'right', label: right || sayRemoval.sides.right },
    { value: 'both', label: sayRemoval.sides.both },
  ];
}

/** All that can be said of the removal itself. */
export function removalFields(view: JobView, removal: Row<'removal'>): BenchField[] {
  const { line, text, choice } = fieldKinds(removal.id);
  const change = (values: Record<string, unknown>): Result<Write> =>
    ok({ verb: 'change', table: 'removal', id: removal.id, values });
  const said = (field: 'title' | 'place' | 'heldBy', label: string, example: string) =>
    line(field, label, removal[field], example, (typed) => change({ [field]: typed.trim() }));
  const note = (field: 'note' | 'noteBack' | 'caution', label: string, example: string) =>
    text(field, label, removal[field], example, (typed) => change({ [field]: typed }));
  const who = view.state.person.find((one) => one.id === removal.personId)?.name ?? '';
  const dids = (['off', 'slackened', 'opened', 'aside'] as const).map((value) => ({
    value,
    label: sayRemoval.dids[value],
  }));
  return [
    said('title', say.removalTitle, say.removalTitleExample),
    choice('did', say.did, removal.did, dids, (did) =>
      ok({ verb: 'did', removalId: removal.id, did: did as Row<'removal'>['did'] }),
    ),
    note('noteBack', say.noteBack, say.noteBackExample),
    note('caution', say.caution, say.cautionExample),
    note('note', say.note, say.noteExample),
    said('place', say.place, say.placeExample),
    choice('side', say.side, removal.side ?? '', sideOptions(view), (side) =>
      change({ side: side === '' ? null : side }),
    ),
    said('heldBy', say.heldBy, say.heldByExample),
    line('who', say.who, who, say.whoExample, (name) =>
      ok({ verb: 'who', removalId: removal.id, name: name.trim() }),
    ),
  ];
}

const MINUTE = 60_000;

/** When it was worked on: from, to, how long, and each pause. */
export function benchTimes(
  view: JobView,
  removalId: string,
  now: number,
): { head: string; pauses: string[] } {
  const times = view.times[removalId];
  if (!times) return { head: say.noTimes, pauses: [] };
  const span =
    times.end === null ? say.since(clock(times.start)) : say.from(clock(times.start), clock(times.end));
  const worked = say.worked(Math.round(times.workedMs / MINUTE));
  return { head: `${span}, ${worked}`, pauses: pauseLines(times, now) };
}

/** The removals that another can be joined into or moved beside, in the order of the log. */
export function logChoices(view: JobView): { id: string; name: string }[] {
  return logOf(view).map((removal, i) => ({
    id: removal.id,
    name: `${i + 1} ${removal.title || removal.typed.split('\n')[0] || sayRemoval.untitled}`,
  }));
}
