import { describeSpec } from './spec-words.ts';
import type { JobState, Row } from './tables.ts';

interface Owned {
  readonly id: string;
  readonly removalId: string | null;
}

/** What its first line said when it was typed; "" for nothing. */
const typedLine = (typed: string): string => typed.split('\n')[0]?.trim() ?? '';

/** The removal a thing came off with, as its title says it; "" where it has none. */
export function removalWords(state: JobState, removalId: string | null): string {
  const removal = state.removal.find((one) => one.id === removalId);
  return removal === undefined ? '' : removal.title || typedLine(removal.typed);
}

/** The removal that a thing of the job belongs to; null for what belongs to none, such as a fluid. */
export function removalIdOf(state: JobState, id: string): string | null {
  if (state.removal.some((one) => one.id === id)) return id;
  const hole = state.position.find((one) => one.id === id);
  const own = hole?.setId ?? id;
  const rows = [state.fset, state.part, state.connection, state.temporary, state.isolation, state.measure];
  const row = rows.flatMap((list) => list as readonly Owned[]).find((one) => one.id === own);
  return row?.removalId ?? null;
}

/** A size of fastener of a set; the set's own where `specId` is null. */
function sizeWords(state: JobState, set: Row<'fset'>, specId: string | null): string {
  const spec = state.spec.find((one) => one.id === (specId ?? set.specId));
  return spec === undefined ? '' : describeSpec(spec);
}

const plainWords = (state: JobState, set: Row<'fset'>): string =>
  sizeWords(state, set, null) || typedLine(set.typed) || 'fasteners';

/**
 * A set by its name and size: "cover bolts (bolt M8 × 25 mm, hex 13 mm)"; without a name by its size alone. A hole may
 * take another size than its set, then `specId` names that.
 */
export function setWords(state: JobState, set: Row<'fset'>, specId: string | null = null): string {
  const size = sizeWords(state, set, specId);
  if (set.name !== '') return size === '' ? set.name : `${set.name} (${size})`;
  // Two sets of one removal that nothing tells apart are told apart by their place, as "4/2" does.
  const own = plainWords(state, set);
  const all = state.fset
    .filter((one) => one.removalId === set.removalId)
    .sort((a, b) => (a.ord < b.ord ? -1 : 1));
  const twins = all.filter((one) => one.name === '' && plainWords(state, one) === own);
  const words = size || own;
  return twins.length < 2 ? words : `${words} (set ${all.findIndex((one) => one.id === set.id) + 1})`;
}

/** Holes of a set: "hole 3", "holes 1, 2 and 5", "both holes", "all 14 holes". */
export function holeWords(numbers: readonly number[], inSet: number): string {
  const list = [...numbers].sort((a, b) => a - b);
  if (list.length === 1) return `hole ${list[0]}`;
  if (list.length === inSet) return inSet === 2 ? 'both holes' : `all ${inSet} holes`;
  return `holes ${list.slice(0, -1).join(', ')} and ${list.at(-1)}`;
}

/** A set as it is got or carried: how many of each size, its name, whose it is. */
function countedWords(state: JobState, set: Row<'fset'>): string {
  const counts = new Map<string, number>();
  for (const hole of state.position.filter((one) => one.setId === set.id)) {
    const size = sizeWords(state, set, hole.specId) || plainWords(state, set);
    counts.set(size, (counts.get(size) ?? 0) + 1);
  }
  const sizes = [...counts].map(([size, n]) => `${n} × ${size}`).join(' and ') || plainWords(state, set);
  return set.name === '' ? sizes : `${set.name}, ${sizes}`;
}

/** A thing of the job by its name, else by what is known of it, with the removal it belongs to; never empty. */
export function thingWords(state: JobState, id: string): string {
  const of = (words: string, removalId: string | null): string => {
    const removal = removalWords(state, removalId);
    return removal === '' ? words : `${words} of ${removal}`;
  };
  const set = state.fset.find((one) => one.id === id);
  if (set) return of(countedWords(state, set), set.removalId);
  const part = state.part.find((one) => one.id === id);
  if (part) {
    // A gasket is one of many: told apart by where it came off.
    const one = state.part.filter((other) => other.name === part.name).length === 1;
    if (part.name !== '') return one ? part.name : of(part.name, part.removalId);
    return of(part.kind === 'part' ? 'part without a name' : part.kind, part.removalId);
  }
  const hole = state.position.find((one) => one.id === id);
  const home = state.fset.find((one) => one.id === hole?.setId);
  if (hole && home) return of(`${setWords(state, home)}, hole ${hole.n}`, home.removalId);
  const connection = state.connection.find((one) => one.id === id);
  if (connection) return connection.name || of(connection.kind, connection.removalId);
  const fluid = state.fluid.find((one) => one.id === id);
  if (fluid) return fluid.name || fluid.type || 'fluid without a name';
  const isolation = state.isolation.find((one) => one.id === id);
  if (isolation) return isolation.how || of(`${isolation.energy} made safe`, isolation.removalId);
  return removalWords(state, id) || 'something that was not named';
}
