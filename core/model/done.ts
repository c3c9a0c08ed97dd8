import type { JobState, Row } from './tables.ts';
import { holeWords, setWords } from './thing-words.ts';
import type { DeedWhat } from './work.ts';

/** One thing that somebody did at one time, over all that it was done to. Times in UTC ms. */
export interface DoneLine {
  readonly at: number;
  /** Who did it; "" where nobody said. */
  readonly by: string;
  readonly what: DeedWhat;
  /** Names of what it was done to; holes of a set together: "cover bolts (bolt M8), all 12 holes". */
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

/** What was put on is written on the thing it was put on: both are told. */
function putOnWords(state: JobState, deed: Row<'deed'>): string {
  const own = state.consumable.filter((one) => one.thingId === deed.thingId);
  const then = own.filter((one) => one.putAt === deed.at);
  const names = [...new Set((then.length > 0 ? then : own).map((one) => one.name || one.kind))].join(', ');
  const set = state.fset.find((one) => one.id === deed.thingId);
  const where = set === undefined ? nameOf(state, deed.thingId) : setWords(state, set);
  return [names, where].filter((word) => word !== '').join(' on ');
}

/** Holes of one set that take the same size. */
interface SameSize {
  readonly setId: string;
  readonly specId: string | null;
  readonly numbers: Set<number>;
}

/** What these deeds were done to, each once: holes of a set that take the same size together. */
export function namesOfDeeds(state: JobState, deeds: readonly Row<'deed'>[]): string[] {
  const holes = new Map<string, SameSize>();
  const names: string[] = [];
  for (const deed of deeds) {
    const hole = state.position.find((one) => one.id === deed.thingId);
    if (hole) {
      // What went in counts, where it is not what the hole takes.
      const specId = deed.withSpecId ?? hole.specId;
      const key = `${hole.setId} ${specId ?? ''}`;
      const same = holes.get(key) ?? { setId: hole.setId, specId, numbers: new Set() };
      holes.set(key, same);
      same.numbers.add(hole.n);
    } else {
      const name = deed.what === 'put on' ? putOnWords(state, deed) : nameOf(state, deed.thingId);
      if (name !== '') names.push(name);
    }
  }
  for (const { setId, specId, numbers } of holes.values()) {
    const inSet = state.position.filter((one) => one.setId === setId).length;
    const set = state.fset.find((one) => one.id === setId);
    const words = set ? setWords(state, set, specId) : '';
    names.push([words, holeWords([...numbers], inSet)].filter((word) => word !== '').join(', '));
  }
  return [...new Set(names)];
}

const isOneGo = (a: Row<'deed'>, b: Row<'deed'>): boolean =>
  a.what === b.what &&
  a.personId === b.personId &&
  a.valueTyped === b.valueTyped &&
  a.why === b.why &&
  a.fresh === b.fresh &&
  Math.abs(a.at - b.at) <= ONE_GO;

/** All that was done to these things on the way back, the oldest first; `which` leaves out deeds told elsewhere. */
export function doneOf(
  state: JobState,
  things: ReadonlySet<string>,
  which: (deed: Row<'deed'>) => boolean = () => true,
): DoneLine[] {
  const own = state.deed
    .filter((deed) => things.has(deed.thingId) && which(deed))
    .sort((a, b) => a.at - b.at);
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
      names: namesOfDeeds(state, go),
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

/** "filled gear oil 2,5 l", "tightened cover bolts (bolt M8), all 12 holes, read 25 N·m": a line without its time and person. */
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
