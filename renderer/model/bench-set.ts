import type { JobView } from '../../core/contract/views.ts';
import { readLengths, writeLengths } from '../../core/entry/index.ts';
import { parseLength } from '../../core/fastening/index.ts';
import { ok, type Result, refuse } from '../../core/model/result.ts';
import { type Row, TABLES } from '../../core/model/tables.ts';
import { bench as say } from '../texts/bench.ts';
import { fieldKinds, optionsOf, readStow, stowName } from './bench-build.ts';
import type { BenchField, Write } from './bench-fields.ts';
import { holesIn, lengthUm } from './bench-holes.ts';
import { spec, takeThread, threadCandidates, threadShown, typeThread } from './bench-thread.ts';

type Set = Row<'fset'>;
type Spec = Row<'spec'>;

function typeDrive(set: Set, typed: string): Result<Write> {
  const text = typed.trim();
  if (text === '') return spec(set, { driveTyped: '', driveSizeUm: null });
  if (/^(?:T|E|TX)\s?\d+$/i.test(text)) {
    const style = /^E/i.test(text) ? 'hexalobular external' : 'hexalobular';
    return spec(set, { drive: style, driveTyped: text.toUpperCase().replace(/\s/, ''), driveSizeUm: null });
  }
  const size = parseLength(text);
  if (!size.ok) return refuse('input', size.sentence);
  const shown = /^[\d.,]+$/.test(text) ? `${text} mm` : text;
  return spec(set, { driveTyped: shown, driveSizeUm: Math.round(size.value.lengthMm * 1000) });
}

function typeBag(set: Set, typed: string): Result<Write> {
  const stow = readStow(typed);
  return stow.ok ? ok({ verb: 'stow', setId: set.id, positionIds: [], ...stow.value }) : stow;
}

function typeCount(set: Set, typed: string): Result<Write> {
  const count = Number(typed.trim());
  if (typed.trim() === '' || !Number.isInteger(count) || count < 0 || count > 10_000)
    return refuse('input', say.countExpected(typed));
  return ok({ verb: 'count', setId: set.id, count });
}

function typeLengths(set: Set, typed: string, count: number): Result<Write> {
  if (typed.trim() === '') return ok({ verb: 'lengths', setId: set.id, allUm: null, holes: [] });
  const read = readLengths(typed, count);
  if (!read.ok) return read;
  const holes = read.value.holes.map((hole) => ({ ...hole }));
  return ok({
    verb: 'lengths',
    setId: set.id,
    holes,
    ...(read.value.allUm === null ? {} : { allUm: read.value.allUm }),
  });
}

/** What is asked most: thread, lengths, count, bag. */
function firstFields(view: JobView, set: Set, of: Spec): BenchField[] {
  const { line } = fieldKinds(set.id);
  const holes = holesIn(view, set.id);
  const byHole =
    holes.length === 0 ? [lengthUm(view, set, null)] : holes.map((hole) => lengthUm(view, set, hole));
  const options = threadCandidates(of);
  const confirm: BenchField = {
    kind: 'touch',
    id: `${set.id}/confirm`,
    label: say.confirm,
    options,
    write: (value) => takeThread(set, value),
  };
  const count = set.countKnown ? String(holes.length) : '';
  return [
    ...(options.length > 0 ? [confirm] : []),
    line('thread', say.thread, threadShown(of), 'M8 × 1.25', (typed) => typeThread(set, typed)),
    line('lengths', say.lengths, writeLengths(byHole), '1,2,4: 30; 3: 40', (typed) =>
      typeLengths(set, typed, holes.length),
    ),
    line('count', say.count, count, '5', (typed) => typeCount(set, typed)),
    line('bag', say.bag, stowName(view, set.stowId), 'bag 4', (typed) => typeBag(set, typed)),
  ];
}

function torqueFields(set: Set): BenchField[] {
  const { line, pick } = fieldKinds(set.id);
  const from = set.torqueFrom === 'maker' || set.torqueFrom === 'reference' ? set.torqueFrom : 'own';
  const shown = set.torqueFrom === 'by feel' ? say.byFeel : set.torqueTyped;
  const torque = (typed: string, source: string, page: string): Result<Write> =>
    ok({ verb: 'torque', setId: set.id, typed, from: source as typeof from, page });
  return [
    line('torque', say.torque, shown, '25 N·m + 90°', (typed) => torque(typed.trim(), from, set.torquePage)),
    pick('from', say.torqueFrom, from, optionsOf(['own', 'maker', 'reference']), (source) =>
      torque(shown, source, set.torquePage),
    ),
    line('page', say.page, set.torquePage, say.pageExample, (page) => torque(shown, from, page.trim())),
  ];
}

/** What the fasteners are. */
function specFields(set: Set, of: Spec): BenchField[] {
  const { line, pick, choice } = fieldKinds(set.id);
  const { kind } = TABLES.spec.schema.shape;
  const hands = (['right', 'left'] as const).map((value) => ({ value, label: say.hands[value] }));
  return [
    pick('kind', say.kind, of.kind, optionsOf(kind.options), (value) =>
      spec(set, { kind: value as Spec['kind'] }),
    ),
    pick('head', say.head, of.head ?? '', optionsOf(['', ...say.heads]), (head) =>
      spec(set, { head: head || null }),
    ),
    pick('drive', say.drive, of.drive ?? '', optionsOf(['', ...say.drives]), (drive) =>
      spec(set, { drive: drive || null }),
    ),
    line('tool', say.tool, of.driveTyped, '13 mm, T30', (typed) => typeDrive(set, typed)),
    line('class', say.grade, of.grade ?? '', '8.8', (grade) => spec(set, { grade: grade.trim() || null })),
    choice('hand', say.hand, of.hand, hands, (hand) => spec(set, { hand: hand as Spec['hand'] })),
  ];
}

/** All that can be said of a set of fasteners. */
export function setFields(view: JobView, set: Set): BenchField[] {
  const of = view.state.spec.find((one) => one.id === set.specId);
  if (!of) return [];
  const { line, pick, yes } = fieldKinds(set.id);
  const change = (values: Record<string, unknown>): Result<Write> =>
    ok({ verb: 'change', table: 'fset', id: set.id, values });
  const { lubrication } = TABLES.fset.schema.shape;
  return [
    ...firstFields(view, set, of),
    line('name', say.name, set.name, say.nameExample, (name) => change({ name: name.trim() })),
    ...torqueFields(set),
    ...specFields(set, of),
    pick('lubrication', say.lubrication, set.lubrication, optionsOf(lubrication.options), (value) =>
      change({ lubrication: value }),
    ),
    line('later', say.later, set.laterWhen ?? '', say.laterExample, (when) =>
      change({ laterWhen: when.trim() || null }),
    ),
    yes('own', say.ownPlace, set.ownPlace, (ownPlace) => change({ ownPlace })),
    yes('critical', say.critical, set.critical, (critical) => change({ critical })),
    yes('recheck', say.recheck, set.recheck, (recheck) => change({ recheck })),
  ];
}
