import type { JobState, Row } from './tables.ts';
import type { DeedWhat } from './work.ts';

/** One thing that somebody did at one time, over all that it was done to. Times in UTC ms. */
export interface DoneLine {
  readonly at: number;
  /** Who did it; "" where nobody said. */
  readonly by: string;
  readonly what: DeedWhat;
  /** Names of what it was done to; holes of a set together: "cover, 12 holes", "hole 3". */
  readonly names: readonly string[];
  /** What was read or measured, what went in, as typed; "" for none. */
  readonly read: string;
  /** The reason, for what needs one. */
  readonly why: string;
  /** A piece that was never fitted before. */
  readonly fresh: boolean;
}

/** An open point that somebody passed by name and with a reason. */
export interface PassedLine {
  readonly finding: string;
  readonly at: number;
  readonly by: string;
  readonly why: string;
}

/** Deeds of one hand within this time, with the same reading and reason, are one line. Ms. */
const ONE_GO = 60_000;

/** What a step of the plan is made of, as far as it is asked here. */
interface StepThings {
  readonly thingId: string;
  readonly renew: readonly string[];
  readonly actions: readonly { readonly thingIds: readonly string[] }[];
  readonly fasteners: readonly { readonly holes: readonly { readonly positionId: string }[] }[];
}

/** Everything that a deed of this step may be written on. */
export function thingsDone(step: StepThings): Set<string> {
  return new Set([
    step.thingId,
    ...step.renew,
    ...step.actions.flatMap((action) => action.thingIds),
    ...step.fasteners.flatMap((set) => set.holes.map((hole) => hole.positionId)),
  ]);
}

const personOf = (state: JobState, id: string | null): string =>
  state.person.find((person) => person.id === id)?.name ?? '';

/** What a thing that is no hole is called; "" for a removal, whose step has its title above. */
function nameOf(state: JobState, id: string): string {
  const named = [state.part, state.connection, state.fluid, state.temporary, state.consumable]
    .flatMap((rows) => rows as readonly { id: string; name: string }[])
    .find((row) => row.id === id)?.name;
  return (
    named ??
    state.isolation.find((row) => row.id === id)?.how ??
    state.measure.find((row) => row.id === id)?.what ??
    state.ownStep.find((row) => row.id === id)?.title ??
    ''
  );
}

function namesOf(state: JobState, ids: readonly string[]): string[] {
  const sets = new Map(state.fset.map((set) => [set.id, set]));
  const holes = new Map<string, number[]>();
  const names: string[] = [];
  for (const id of new Set(ids)) {
    const hole = state.position.find((one) => one.id === id);
    if (hole) holes.set(hole.setId, [...(holes.get(hole.setId) ?? []), hole.n]);
    else if (nameOf(state, id) !== '') names.push(nameOf(state, id));
  }
  for (const [setId, numbers] of holes) {
    const count = numbers.length === 1 ? `hole ${numbers[0]}` : `${numbers.length} holes`;
    const set = sets.get(setId)?.name ?? '';
    names.push(set === '' ? count : `${set}, ${count}`);
  }
  return names;
}

const isOneGo = (a: Row<'deed'>, b: Row<'deed'>): boolean =>
  a.what === b.what &&
  a.personId === b.personId &&
  a.valueTyped === b.valueTyped &&
  a.why === b.why &&
  a.fresh === b.fresh &&
  Math.abs(a.at - b.at) <= ONE_GO;

/** All that was done to these things on the way back, the oldest first. */
export function doneOf(state: JobState, things: ReadonlySet<string>): DoneLine[] {
  const own = state.deed.filter((deed) => things.has(deed.thingId)).sort((a, b) => a.at - b.at);
  const gos: Row<'deed'>[][] = [];
  for (const deed of own) {
    const go = gos.find((one) => one[0] !== undefined && isOneGo(one[0], deed));
    if (go) go.push(deed);
    else gos.push([deed]);
  }
  return gos.flatMap((go) => {
    const [deed] = go;
    if (!deed) return [];
    return {
      at: deed.at,
      by: personOf(state, deed.personId),
      what: deed.what,
      names: namesOf(
        state,
        go.map((one) => one.thingId),
      ),
      read: deed.valueTyped,
      why: deed.why,
      fresh: deed.fresh,
    };
  });
}

/** Every open point of the job that was passed, the oldest first. */
export function passedOf(state: JobState): PassedLine[] {
  return [...state.accepted]
    .sort((a, b) => a.at - b.at)
    .map(({ finding, at, personId, why }) => ({ finding, at, why, by: personOf(state, personId) }));
}

/** "filled gear oil 2,5 l", "tightened cover, 12 holes, read 25 N·m": a line without its time and person. */
export function sayDone({ what, names, read, why, fresh }: DoneLine): string {
  const readings: readonly DeedWhat[] = ['tightened', 'paint-checked'];
  const value = read === '' ? '' : readings.includes(what) ? `, read ${read}` : ` ${read}`;
  // Of a whole step: its title stands above.
  const said = what === 'done' && names.length === 0 ? 'said to be back' : what;
  return [
    said,
    names.length === 0 ? '' : ` ${names.join('; ')}`,
    fresh ? ' (new)' : '',
    value,
    why === '' ? '' : `: ${why}`,
  ].join('');
}
