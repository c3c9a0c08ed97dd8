import type { Row } from '../model/tables.ts';
import { describeSpec } from '../tally/index.ts';
import { action } from './action.ts';
import type { Content, Hole } from './content.ts';
import type { Situation } from './situation.ts';
import { isIn, isTight, last, standing } from './standing.ts';
import type { StepAction } from './types.ts';

function setsOf(content: Content): Hole[][] {
  const bySet = new Map<string, Hole[]>();
  for (const hole of content.holes) {
    const list = bySet.get(hole.set.id);
    if (list) list.push(hole);
    else bySet.set(hole.set.id, [hole]);
  }
  return [...bySet.values()];
}

/** Dowels and keys of a set: they place the part, so they are in before it. */
export function locators(at: Situation, content: Content): StepAction[] {
  return setsOf(content)
    .filter((holes) => isLocator(at, holes))
    .map((holes) => pushAction(at, holes));
}

/** Every thread, unions too, is started by hand before any is tightened; what has no thread goes in first. */
export function threads(at: Situation, content: Content, unions: readonly Row<'connection'>[]): StepAction[] {
  const all = setsOf(content).filter((holes) => !isLocator(at, holes));
  if (all.length === 0) return [];
  const pushed = all.filter((holes) => isPushedIn(at, holes));
  const sets = all.filter((holes) => !pushed.includes(holes));
  const starts = sets.map((holes) => startAction(at, holes));
  if (sets.length > 0 && unions.length > 0)
    starts.push(
      action(
        'start',
        `Start by hand: ${unions.map((row) => row.name || row.kind).join(', ')}.`,
        unions.map((row) => row.id),
        unions.every(
          (row) =>
            last(standing(at.graph.log, row.id, row.removalId), 'started', 'joined', 'tightened', 'done') !==
            undefined,
        ),
      ),
    );
  return [...pushed.map((holes) => pushAction(at, holes)), ...starts, ...sets.map(tightenAction)];
}

/** What has no thread: nothing is started by hand, and nothing comes to a torque. */
const PUSHED_IN: ReadonlySet<Row<'spec'>['kind']> = new Set([
  'washer',
  'spacer',
  'clip',
  'push rivet',
  'rivet',
  'pin',
  'split pin',
  'roll pin',
  'dowel pin',
  'taper pin',
  'clevis pin',
  'R-clip',
  'circlip',
  'E-clip',
  'cable tie',
  'key',
]);

function isPushedIn(at: Situation, holes: readonly Hole[]): boolean {
  const set = (holes[0] as Hole).set;
  const spec = at.graph.log.spec.get(set.specId);
  return spec !== undefined && PUSHED_IN.has(spec.kind) && set.torqueTyped === '' && set.laterWhen === null;
}

const LOCATORS: ReadonlySet<Row<'spec'>['kind']> = new Set(['dowel pin', 'key']);

function isLocator(at: Situation, holes: readonly Hole[]): boolean {
  const kind = at.graph.log.spec.get((holes[0] as Hole).set.specId)?.kind;
  return kind !== undefined && LOCATORS.has(kind) && isPushedIn(at, holes);
}

/** Fitted in one go; the deed is the one that a tight bolt gets, so that holes have one kind of state. */
function pushAction(at: Situation, holes: readonly Hole[]): StepAction {
  const ids = holes.map((hole) => hole.position.id);
  const done = holes.every((hole) => isIn(hole.mark) || hole.mark === 'left out');
  return action('tighten', `Fit ${whatOf(at, holes)}.`, ids, done);
}

function startAction(at: Situation, holes: readonly Hole[]): StepAction {
  const done = holes.every((hole) => hole.mark !== 'out' && hole.mark !== 'blocked');
  const ids = holes.map((hole) => hole.position.id);
  return action('start', `Start all by hand: ${whatOf(at, holes)}.`, ids, done);
}

/** "new 14 × bolt M8 × 30 mm, from tin 7", by length where they differ. */
function whatOf(at: Situation, holes: readonly Hole[]): string {
  const set = (holes[0] as Hole).set;
  const lengths = new Map<string, number[]>();
  for (const { position } of holes) {
    const own = at.graph.log.spec.get(position.specId ?? set.specId);
    const name = own ? describeSpec(own) : 'fasteners';
    const list = lengths.get(name);
    if (list) list.push(position.n);
    else lengths.set(name, [position.n]);
  }
  const what =
    lengths.size === 1
      ? `${holes.length} × ${[...lengths.keys()][0]}`
      : [...lengths]
          .map(([name, ns]) => `${name} in ${ns.length === 1 ? 'hole' : 'holes'} ${ns.join(', ')}`)
          .join('; ');
  const stow = at.graph.log.stow.get(set.stowId ?? '');
  const from = stow ? `, from ${stow.kind} ${stow.label}` : '';
  const alike = lengths.size > 1 ? '. All heads must stand out alike' : '';
  const fresh = set.renew === 'must' ? 'new ' : '';
  return `${fresh}${what}${from}${alike}`;
}

function tightenAction(holes: readonly Hole[]): StepAction {
  const set = (holes[0] as Hole).set;
  const ids = holes.map((hole) => hole.position.id);
  const done = holes.every((hole) => isIn(hole.mark) || hole.mark === 'left out');
  if (set.laterWhen !== null)
    return action('snug', `Snug only; final tightening ${set.laterWhen}.`, ids, done);
  const figure =
    set.torqueTyped !== '' ? ` to ${set.torqueTyped}` : set.torqueFrom === 'by feel' ? ', snug by feel' : '';
  const name = set.name || `${holes.length} ${holes.length === 1 ? 'fastener' : 'fasteners'}`;
  const order = holes.length > 2 ? ', in order and in rounds' : '';
  const left = holes.some((hole) => hole.set.lubrication === 'threadlock') ? ', with threadlock' : '';
  return action('tighten', `Tighten ${name}${figure}${order}${left}.`, ids, done);
}

export function finalActions(content: Content): StepAction[] {
  const ids = content.holes.map((hole) => hole.position.id);
  const set = content.holes[0]?.set;
  const figure = set?.torqueTyped ? ` to ${set.torqueTyped}` : '';
  const done =
    content.holes.length > 0 && content.holes.every((hole) => isTight(hole.mark) || hole.mark === 'left out');
  return [action('final tighten', `Final tightening${figure}, ${set?.laterWhen ?? 'now'}.`, ids, done)];
}
