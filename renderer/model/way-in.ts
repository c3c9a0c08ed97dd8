import type { JobView } from '../../core/contract/views.ts';
import { plannedAgain } from '../../core/model/off-again.ts';
import type { Reach } from '../../core/contract/answers.ts';
import type { ChosenData, PlannedRow, TargetRow, WayRow } from '../screens/ahead/ReachScreen.tsx';
import { ahead as say } from '../texts/ahead.ts';
import { namesOf } from './ahead.ts';
import { logOf } from './line.ts';

/** Rows in sight before something is typed: more than a hand scrolls through is found by typing. */
const MOST = 40;

/** Removals that have something on the machine: back, back in part, or only planned so far; with their numbers. */
function onNow(view: JobView): { readonly id: string; readonly number: number; readonly title: string }[] {
  const begun = new Set(
    view.plan.steps
      .filter((step) => step.kind === 'S' && (step.state === 'done' || step.actions.some((one) => one.done)))
      .map((step) => step.removalId),
  );
  const plans = new Set(plannedAgain(view.state).map((one) => one.removal.id));
  return logOf(view).flatMap(({ id, title, typed, phase }, i) =>
    begun.has(id) || (phase === 'planned' && !plans.has(id))
      ? [{ id, number: i + 1, title: title || (typed.split('\n')[0] ?? '') }]
      : [],
  );
}

/** What can be chosen: the parts that are on, each under the removal it came off with, and removals without such a part. */
function choices(view: JobView): TargetRow[] {
  return onNow(view).flatMap(({ id, number, title }) => {
    const parts = view.state.part.filter(
      (part) => part.removalId === id && part.name !== '' && part.kind !== 'kit',
    );
    const same = parts.some((part) => part.name.toLowerCase() === title.toLowerCase());
    const whole = same || title === '' ? [] : [{ id, mark: String(number), name: title, about: '' }];
    return [
      ...whole,
      ...parts.map((part) => ({
        id: part.id,
        mark: String(number),
        name: part.name,
        about: part.name.toLowerCase() === title.toLowerCase() ? '' : title,
      })),
    ];
  });
}

/** The rows that fit what is typed, those that are chosen first while nothing is; and how many more there are. */
export function targetRows(view: JobView, typed: string): { rows: TargetRow[]; more: number } {
  const low = (typed.split(',').at(-1) ?? '').trim().toLowerCase();
  const all = choices(view);
  const hits = low === '' ? all : all.filter((row) => `${row.name} ${row.about}`.toLowerCase().includes(low));
  return { rows: hits.slice(0, MOST), more: Math.max(0, hits.length - MOST) };
}

/** What was chosen, by name; a thing that is gone from the job is none. */
export function chosenOf(view: JobView, ids: readonly string[]): ChosenData[] {
  const titles = new Map(logOf(view).map((removal) => [removal.id, removal.title]));
  const connections = new Map(view.state.connection.map((one) => [one.id, one.name]));
  return ids.flatMap((id) => {
    const name = namesOf(view, [id]) || titles.get(id) || connections.get(id) || '';
    return name === '' ? [] : [{ id, name }];
  });
}

/** What must come off, row by row in the order of taking off. */
export function wayRows(reach: Reach): WayRow[] {
  return reach.removals.map((one) => ({
    id: one.removalId,
    mark: String(one.number),
    name: one.title,
    about: [say.states[one.state], one.assumed ? say.assumed : ''].filter((word) => word !== '').join(', '),
    count: one.fasteners,
  }));
}

/** What is planned to come off again, in order. */
export function plannedRows(view: JobView): PlannedRow[] {
  return plannedAgain(view.state).map(({ removal, thingId }) => ({
    id: removal.id,
    name: removal.title,
    about: removal.note,
    holes: holesOf(view, thingId),
  }));
}

function holesOf(view: JobView, thingId: string): number {
  const sets = new Set(view.state.fset.filter((set) => set.removalId === thingId).map((set) => set.id));
  return view.state.position.filter((hole) => hole.id === thingId || sets.has(hole.setId)).length;
}

/** How long it takes; what was ticked through in seconds tells nothing. */
function timeOf({ minutesLow, minutesHigh }: Reach): string {
  if (minutesLow === null || minutesHigh === null || minutesHigh < 1) return say.noTimes;
  return say.minutes(minutesLow, minutesHigh);
}

/** What it costs, a line each. */
export function costLines(view: JobView, reach: Reach): string[] {
  const named = (ids: readonly string[], line: (names: string) => string) =>
    ids.length > 0 ? [line(namesOf(view, ids))] : [];
  if (reach.removals.length === 0) return [];
  return [
    ...named(reach.isolations, say.safe),
    ...named(reach.fluids, say.drain),
    say.cost(reach.fasteners, reach.shared.length),
    ...named(reach.renew, say.renew),
    ...named(reach.renewIfWorn, say.worn),
    ...(reach.tools.length > 0
      ? [say.toolList(reach.tools.map((one) => say.tool(one.tool)).join(', '))]
      : []),
    timeOf(reach),
  ];
}
