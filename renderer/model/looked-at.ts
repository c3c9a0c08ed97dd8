import type { JobView } from '../../core/contract/views.ts';
import { lookedAt as say } from '../texts/looked-at.ts';
import { lastAmong } from './deeds.ts';
import { plannedIds } from './line.ts';

const TIGHT: ReadonlySet<string> = new Set(['tightened', 'paint-checked']);

/** So many of so many are as they should be. */
interface Tally {
  readonly good: number;
  readonly all: number;
}

/** Fasteners of all steps: tight or left out for a reason, and those of them that have a torque. */
function fastenersOf(view: JobView): { tight: Tally; torque: Tally; leftOut: number } {
  // A final tightening is a step of its own over holes that another step has already.
  const sets = view.plan.steps.filter((step) => step.kind !== 'T').flatMap((step) => step.fasteners);
  const holes = sets.flatMap((set) => set.holes.map((hole) => ({ mark: hole.mark, torque: set.torqueNm })));
  const leftOut = holes.filter((hole) => hole.mark === 'left out').length;
  const meant = holes.filter((hole) => hole.mark !== 'left out');
  const tally = (some: typeof meant): Tally => ({
    good: some.filter((hole) => TIGHT.has(hole.mark)).length,
    all: some.length,
  });
  return { tight: tally(meant), torque: tally(meant.filter((hole) => hole.torque !== null)), leftOut };
}

function stepsOf(view: JobView, kinds: readonly string[]): Tally {
  const some = view.plan.steps.filter((step) => kinds.includes(step.kind));
  return { good: some.filter((step) => step.state === 'done').length, all: some.length };
}

/** Things of which the last deed says how they stand. */
function thingsOf(
  view: JobView,
  ids: readonly string[],
  good: 'fitted' | 'taken out' | 'joined',
  bad: 'came off again' | 'put in',
): Tally {
  const last = lastAmong(view, [good, bad]);
  return { good: ids.filter((id) => last.get(id) === good).length, all: ids.length };
}

/**
 * What a check before the job is closed looks at, a line each with its numbers; last what the job has none of, so that
 * an empty line is not taken for one that was forgotten.
 */
export function lookedAt(view: JobView): readonly string[] {
  const { state, plan } = view;
  const planned = plannedIds(view);
  const happened = (removalId: string | null) => removalId === null || !planned.has(removalId);
  const { tight, torque, leftOut } = fastenersOf(view);
  const parts = state.part.filter(
    (part) => part.how === 'off' && part.fate !== 'leave out' && happened(part.removalId),
  );
  const temporaries = state.temporary.filter((one) => one.removalId !== null);
  const kinds: readonly (readonly [keyof typeof say.kinds, Tally])[] = [
    ['fasteners', tight],
    ['torques', torque],
    ['parts', thingsOf(view, ids(parts), 'fitted', 'came off again')],
    ['fluids', stepsOf(view, ['C1'])],
    ['bleedings', stepsOf(view, ['C2'])],
    ['isolations', stepsOf(view, ['I'])],
    ['temporaries', thingsOf(view, ids(temporaries), 'taken out', 'put in')],
    ['finals', stepsOf(view, ['T'])],
    ['own', stepsOf(view, ['U'])],
  ];
  const none = kinds.filter(([kind, { all }]) => all === 0 && say.none[kind] !== undefined);
  const missing = view.searches.reduce((sum, one) => sum + Math.max(0, one.missing), 0);
  const passed = new Set(plan.gates.flatMap((gate) => gate.passedBy.map((one) => one.finding))).size;
  return [
    ...kinds.filter(([, { all }]) => all > 0).map(([kind, { good, all }]) => say.kinds[kind](good, all)),
    ...(leftOut > 0 ? [say.leftOut(leftOut)] : []),
    say.missing(missing),
    ...(passed > 0 ? [say.passed(passed)] : []),
    ...(none.length > 0 ? [say.noneOf(none.map(([kind]) => say.none[kind] ?? '').join(', '))] : []),
  ];
}

const ids = (rows: readonly { readonly id: string }[]): string[] => rows.map((row) => row.id);
