import type { PatternRemoval, PatternView } from '../../contract/pattern.ts';
import { JOB_TABLES, type JobState, type JobTable, type Row } from '../../model/tables.ts';
import { describeSpec } from '../../tally/index.ts';
import type { Context, Decision } from '../frame.ts';
import { logOrder } from '../log/order.ts';
import { patternRemovals } from './copy.ts';
import { patternId } from './origin.ts';

/** A set as it is compared: what it is, how many, how tight. */
interface Seen {
  readonly set: Row<'fset'>;
  readonly spec: Row<'spec'>;
  readonly count: number;
}

/** Sets by removal, with their specification and count; found empty is not found. */
function setsOf(state: JobState, all: boolean): Map<string, Seen[]> {
  const specs = new Map(state.spec.map((spec) => [spec.id, spec]));
  const counts = new Map<string, number>();
  for (const hole of state.position)
    if (all || hole.found === 'fitted') counts.set(hole.setId, (counts.get(hole.setId) ?? 0) + 1);
  const sets = new Map<string, Seen[]>();
  for (const set of [...state.fset].sort((a, b) => (a.ord < b.ord ? -1 : 1))) {
    const spec = specs.get(set.specId);
    if (!spec) continue;
    const list = sets.get(set.removalId) ?? [];
    list.push({ set, spec, count: counts.get(set.id) ?? 0 });
    sets.set(set.removalId, list);
  }
  return sets;
}

const nameOf = ({ set, spec }: Seen): string =>
  [set.name, describeSpec(spec).replace(/^fastener\s*/, '')].filter((word) => word !== '').join(', ') ||
  'fasteners';

type Told = Pick<Row<'spec'>, 'thread' | 'lengthUm' | 'driveSizeUm' | 'grade'>;
const FIELDS = ['thread', 'lengthUm', 'driveSizeUm', 'grade'] as const satisfies readonly (keyof Told)[];

/** How much two specifications agree; below 0 where the thread is another one. */
export function likeness(a: Told, b: Told): number {
  let sum = 0;
  for (const field of FIELDS) {
    if (a[field] === null || b[field] === null) continue;
    sum += a[field] === b[field] ? 2 : field === 'thread' ? -8 : -1;
  }
  return sum;
}

/** Each expected set with the one found for it: the same row, else the one most like it that nothing is found for. */
function pairUp(jobId: string, expected: readonly Seen[], found: readonly Seen[]) {
  const left = new Set(found);
  const pairs = expected.map((one) => {
    const same = found.find(({ set }) => set.id === patternId(jobId, one.set.id));
    if (same) left.delete(same);
    return { one, same: same ?? null };
  });
  for (const pair of pairs) {
    if (pair.same) continue;
    const [best] = [...left]
      .map((other) => ({ other, like: likeness(pair.one.spec, other.spec) }))
      .filter(({ like }) => like >= 0)
      .sort((a, b) => b.like - a.like);
    if (!best) continue;
    pair.same = best.other;
    left.delete(best.other);
  }
  return { pairs, extra: [...left] };
}

function setDifferences(jobId: string, expected: readonly Seen[], found: readonly Seen[]): string[] {
  const { pairs, extra } = pairUp(jobId, expected, found);
  const said = pairs.flatMap(({ one, same }) => {
    if (!same) return [`${one.count} expected, none found: ${nameOf(one)}.`];
    const list: string[] = [];
    if (same.set.countKnown && same.count !== one.count)
      list.push(`${one.count} expected, ${same.count} found: ${nameOf(same)}.`);
    for (const field of FIELDS)
      if (one.spec[field] !== null && same.spec[field] !== null && one.spec[field] !== same.spec[field]) {
        list.push(`${nameOf(one)} expected, ${nameOf(same)} found.`);
        break;
      }
    if (one.set.torqueTyped !== '' && same.set.torqueTyped !== '' && one.set.torqueMnm !== same.set.torqueMnm)
      list.push(`${nameOf(same)}: ${one.set.torqueTyped} in the earlier job, ${same.set.torqueTyped} here.`);
    return list;
  });
  return [...said, ...extra.map((one) => `Not in the earlier job: ${one.count} × ${nameOf(one)}.`)];
}

function partDifferences(expected: readonly Row<'part'>[], found: readonly Row<'part'>[]): string[] {
  const names = (parts: readonly Row<'part'>[]) => parts.map((part) => (part.name || part.typed).trim());
  const has = (list: readonly string[], name: string) =>
    list.some((one) => one.toLowerCase() === name.toLowerCase());
  const [wanted, got] = [names(expected), names(found)];
  return [
    ...wanted.filter((name) => !has(got, name)).map((name) => `Expected, not found: ${name || 'a part'}.`),
    ...got.filter((name) => !has(wanted, name)).map((name) => `Not in the earlier job: ${name || 'a part'}.`),
    ...expected.flatMap((part) => {
      const same = found.find((one) => one.name.toLowerCase() === part.name.toLowerCase());
      return same && same.qty !== part.qty ? [`${part.qty} expected, ${same.qty} found: ${part.name}.`] : [];
    }),
  ];
}

/** Rows by the removal they came off with, of parts that are no receipts. */
function partsOf(state: JobState): Map<string, Row<'part'>[]> {
  const parts = new Map<string, Row<'part'>[]>();
  for (const part of state.part) {
    if (part.removalId === null || part.kind === 'kit' || part.kind === 'new part') continue;
    parts.set(part.removalId, [...(parts.get(part.removalId) ?? []), part]);
  }
  return parts;
}

/** What the earlier job lets expect, what was found of it, and what differs. Reads both jobs, changes nothing. */
export function comparePattern(from: JobState, state: JobState): PatternView {
  const jobId = state.job.id;
  const [sets, parts] = [setsOf(from, true), partsOf(from)];
  const [here, partsHere] = [setsOf(state, false), partsOf(state)];
  const own = new Map(state.removal.map((removal) => [removal.id, removal]));
  const planned = setsOf(state, true);
  const removals = patternRemovals(from).flatMap((source): PatternRemoval[] => {
    const removal = own.get(patternId(jobId, source.id));
    if (!removal) return [];
    const expected = sets.get(source.id) ?? [];
    const begun = removal.phase === 'under way' || removal.phase === 'off';
    const differences = begun
      ? [
          ...setDifferences(jobId, expected, here.get(removal.id) ?? []),
          ...partDifferences(parts.get(source.id) ?? [], partsHere.get(removal.id) ?? []),
        ]
      : [];
    return [
      {
        removalId: removal.id,
        title: removal.title,
        state: removal.phase === 'planned' ? 'planned' : begun ? 'begun' : 'given up',
        expected: expected.map((one) => ({
          setId: (planned.get(removal.id) ?? []).find(({ set }) => set.id === patternId(jobId, one.set.id))
            ? patternId(jobId, one.set.id)
            : null,
          what: nameOf(one),
          count: one.count,
          torque: one.set.torqueTyped,
        })),
        parts: (parts.get(source.id) ?? []).map((part) => part.name || part.typed),
        differences,
      },
    ];
  });
  const mapped = new Set(removals.map((one) => one.removalId));
  return {
    fromJobId: from.job.id,
    fromTitle: from.job.title,
    removals,
    beyond: logOrder(state.removal)
      .filter((removal) => !mapped.has(removal.id) && removal.phase !== 'planned')
      .map(({ id, title, typed }) => ({ removalId: id, title: title || typed })),
  };
}

/** The same for a job that follows a pattern which is still in this workshop; null otherwise. */
export function patternOf(context: Context, state: JobState): PatternView | null {
  const from = state.job.patternJobId === null ? null : context.workshop.job(state.job.patternJobId);
  return from ? comparePattern(from, state) : null;
}

/** The job as this command leaves it. */
function stateAfter({ state, writer }: Decision): JobState {
  const after: Record<string, unknown> = { ...state };
  for (const table of JOB_TABLES) after[table] = rowsAfter(writer, table, state);
  return after as JobState;
}

const rowsAfter = <T extends JobTable>(writer: Decision['writer'], table: T, state: JobState) =>
  writer.list(table, () => true, state[table] as readonly Row<T>[]);

/** What differs in one removal, as this command leaves it; said where it is logged. */
export function differencesOf(context: Context, decision: Decision, removalId: string): string[] {
  if (decision.state.job.patternJobId === null) return [];
  const view = patternOf(context, stateAfter(decision));
  return [...(view?.removals.find((one) => one.removalId === removalId)?.differences ?? [])];
}
