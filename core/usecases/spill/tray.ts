import type { BoltAnswer, TrayAnswer, TrayRow } from '../../contract/tray.ts';
import { ok, type Result, refuse } from '../../model/result.ts';
import type { JobState } from '../../model/tables.ts';
import type { Context } from '../frame.ts';
import { jobState } from '../views.ts';
import { assign, type Pairing } from './assign.ts';
import { type Fit, fitOf } from './fit.ts';
import { bare, openGroups, type OpenGroup } from './groups.ts';
import { type Measured, readRow, type Unit } from './measure.ts';
import { spilledOf, tookPart } from './spilled.ts';

/** Most pieces of one tray: the matching is exact up to here and quick. */
const MAX_PIECES = 2_000;

export interface Tray {
  readonly rows: readonly TrayRow[];
  readonly unit?: Unit | undefined;
  /** Bags that were spilled; empty = not said. */
  readonly from: readonly string[];
}

/** The matching with what it was made of, for the answer and for booking it. */
export interface Matched {
  readonly measured: readonly Measured[];
  readonly groups: readonly OpenGroup[];
  readonly pairs: readonly Pairing[];
  readonly fit: (row: number, group: number) => Fit;
  /** Pieces of each group in the bags that were spilled, by the books. */
  readonly spilled: readonly number[];
  readonly problems: ReadonlyMap<number, string>;
  /** Holes whose pieces lie in bags that were not spilled: they take no part. */
  readonly others: readonly OpenGroup[];
}

/** Reads the rows and matches them to the open holes of a job; deterministic, so that booking it matches the same. */
export function matchTray(state: JobState, tray: Tray): Result<Matched> {
  const problems = new Map<number, string>();
  const measured: Measured[] = [];
  for (const row of tray.rows) {
    const read = readRow(row, tray.unit);
    if (read.ok) measured.push(read.value);
    else problems.set(row.row, read.fault.sentence);
  }
  const pieces = measured.reduce((sum, one) => sum + one.count, 0);
  if (pieces > MAX_PIECES)
    return refuse('input', `Expected at most ${MAX_PIECES} pieces in one tray, got ${pieces}.`);
  const takesPart = tookPart(state, tray.from);
  const groups = openGroups(state, takesPart);
  const others = tray.from.length > 0 ? openGroups(state, (line) => !takesPart(line)) : [];
  const fits = measured.map((one) => groups.map(({ wanted }) => fitOf(one, wanted)));
  const fit = (row: number, group: number): Fit => fits[row]?.[group] as Fit;
  const spilled = spilledOf(state, groups, tray.from);
  const cost = (row: number, group: number): number | undefined => {
    const one = fit(row, group);
    // Where the measures do not decide, a group of which something was spilled comes first.
    return one.fits ? one.cost * 2 + Number(tray.from.length > 0 && spilled[group] === 0) : undefined;
  };
  const supply = measured.map(({ count }) => count);
  const pairs = assign({ supply, demand: groups.map(({ open }) => open), cost });
  return ok({ measured, groups, pairs, fit, spilled, problems, others });
}

const nameOf = ({ what, homes }: OpenGroup): string => {
  const names = [...new Set(homes.map(({ name }) => name).filter((name) => name !== ''))];
  return names.length === 0
    ? what
    : `${what} (${names.slice(0, 3).join('; ')}${names.length > 3 ? '; …' : ''})`;
};

/** Why a hole does not take it, nearest hole first. */
function leftSays({ measured, groups, fit, others }: Matched, row: number): string {
  const fitting = groups.flatMap((group, g) => (fit(row, g).fits ? [group] : []));
  const [first] = fitting;
  if (first) return `All holes it fits are taken: ${nameOf(first)}.`;
  const one = measured[row];
  const elsewhere = one ? others.find(({ wanted }) => fitOf(one, wanted).fits) : undefined;
  if (elsewhere)
    return `It fits nothing that lay in what was spilled, but ${nameOf(elsewhere)}: name that bag too if it was spilled.`;
  const nearest = nearestOf(groups, (g) => fit(row, g))[0];
  if (!nearest) return 'No hole of its kind waits for a piece.';
  const { group, fit: off } = nearest;
  return `It fits no open hole${measured[row]?.kind ? ` for a ${measured[row]?.kind}` : ''}. Nearest: ${nameOf(group)}: ${off.says.join(', ')}.`;
}

function nearestOf(groups: readonly OpenGroup[], fit: (g: number) => Fit) {
  return groups
    .map((group, g) => ({ group, fit: fit(g) }))
    .filter((one) => !one.fit.fits && one.fit.off < 1_000)
    .sort((a, b) => a.fit.off - b.fit.off)
    .slice(0, 3);
}

/** What tells groups apart that a caliper does not. */
function hintOf(groups: readonly OpenGroup[]): string {
  const differ = (of: (group: OpenGroup) => unknown) => new Set(groups.map(of)).size > 1;
  const lacking = groups.some(
    ({ wanted }) => wanted.spec.lengthUm === null || wanted.size === null || !wanted.sizeSure,
  );
  const hints = [
    differ(({ wanted }) => wanted.spec.grade) ? 'Look at the mark on the head.' : '',
    differ(({ wanted }) => wanted.spec.hand) ? 'Look whether the thread is left-hand.' : '',
    differ(({ wanted }) => wanted.spec.lengthUm) && !lacking
      ? 'Their lengths lie within the tolerance: measure closer.'
      : '',
    lacking ? 'Not all that these holes take was written down.' : '',
    groups.every(({ ownPlace }) => ownPlace)
      ? 'Each must go into its own hole: look at stamps and wear.'
      : '',
  ].filter((hint) => hint !== '');
  return hints.length > 0 ? hints.join(' ') : 'Try it by hand in the hole.';
}

function alikeOf({ measured, groups, fit }: Matched): TrayAnswer['alike'] {
  const root = groups.map((_, g) => g);
  const find = (g: number): number => (root[g] === g ? g : find(root[g] as number));
  measured.forEach((_, row) => {
    const fitting = groups.flatMap((_group, g) => (fit(row, g).fits ? [g] : []));
    for (const g of fitting) root[find(g)] = find(fitting[0] as number);
  });
  const sets = new Map<number, OpenGroup[]>();
  groups.forEach((group, g) => sets.set(find(g), [...(sets.get(find(g)) ?? []), group]));
  return [...sets.values()]
    .filter((list) => list.length > 1)
    .map((list) => {
      const names = list.slice(0, 4).map(nameOf);
      const more = list.length > 4 ? ` and ${list.length - 4} more` : '';
      return {
        keys: list.map(({ key }) => key),
        sentence: `Measuring does not tell apart: ${names.join('; ')}${more}. ${hintOf(list)}`,
      };
    });
}

/** What the hand must know: where each goes, what is short, what is left over, what measuring cannot decide. */
export function answerOf(matched: Matched, tray: Tray): TrayAnswer {
  const { measured, groups, pairs, fit, spilled, problems } = matched;
  const got = groups.map((_, g) => pairs.reduce((sum, { group, qty }) => sum + (group === g ? qty : 0), 0));
  const given = measured.map((_, r) => pairs.reduce((sum, { row, qty }) => sum + (row === r ? qty : 0), 0));
  const read = new Map(measured.map((one) => [one.row, one]));
  const counted = groups.map((group, g) => {
    const assigned = got[g] ?? 0;
    // What was not spilled still lies in its bags; where nobody said what was spilled, the books are believed.
    const here =
      tray.from.length > 0
        ? Math.max(0, group.inHand - (spilled[g] ?? 0)) + assigned
        : Math.max(group.inHand, assigned);
    return { ...bare(group), assigned, short: Math.max(0, group.open - here) };
  });
  return {
    pieces: measured.reduce((sum, { count }) => sum + count, 0),
    rows: tray.rows.map(({ row }) => ({
      row,
      count: read.get(row)?.count ?? 0,
      says: read.get(row)?.says ?? '',
      problem: problems.get(row) ?? null,
    })),
    groups: counted.filter(({ assigned, short }) => assigned > 0 || short > 0),
    assigned: pairs.map(({ row, group, qty }) => ({
      row: measured[row]?.row ?? 0,
      key: groups[group]?.key ?? '',
      qty,
      says: fit(row, group).says.join(', '),
      doubt: fit(row, group).doubt,
    })),
    leftOver: measured.flatMap(({ row, count }, r) => {
      const qty = count - (given[r] ?? 0);
      return qty > 0 ? [{ row, qty, says: leftSays(matched, r) }] : [];
    }),
    alike: alikeOf(matched),
  };
}

/** Where the loose fasteners of a tray belong. Changes nothing. */
export function trayMatch(context: Context, input: Tray & { readonly jobId: string }): Result<TrayAnswer> {
  const state = jobState(context, input.jobId);
  if (!state.ok) return state;
  const matched = matchTray(state.value, input);
  return matched.ok ? ok(answerOf(matched.value, input)) : matched;
}

/** A bolt from the floor against the open holes of the jobs given: best first, else the nearest that it does not fit. */
export function whose(states: readonly JobState[], one: Measured): BoltAnswer {
  const all = states.flatMap((state) =>
    openGroups(state).map((group) => ({ state, group, fit: fitOf(one, group.wanted) })),
  );
  const hit = ({ state, group, fit }: (typeof all)[number]) => ({
    ...bare(group),
    jobId: state.job.id,
    jobTitle: state.job.title,
    says: fit.says.join(', '),
  });
  const fitting = all
    .filter(({ fit }) => fit.fits)
    .sort((a, b) => a.fit.cost - b.fit.cost || b.group.lookedFor - a.group.lookedFor);
  if (fitting.length > 0) {
    const holes = fitting.reduce((sum, { group }) => sum + group.open, 0);
    const jobs = new Set(fitting.map(({ state }) => state.job.id)).size;
    return {
      says: one.says,
      fits: true,
      holes,
      hits: fitting.slice(0, 20).map(hit),
      sentence: `It fits ${holes} open ${holes === 1 ? 'hole' : 'holes'} in ${jobs} ${jobs === 1 ? 'job' : 'jobs'}. Best first.`,
    };
  }
  const nearest = all
    .filter(({ fit }) => fit.off < 1_000)
    .sort((a, b) => a.fit.off - b.fit.off)
    .slice(0, 3);
  const [first] = nearest;
  return {
    says: one.says,
    fits: false,
    holes: 0,
    hits: nearest.map(hit),
    sentence: first
      ? `It fits none of the open holes. Nearest: ${nameOf(first.group)} in “${first.state.job.title}”: ${first.fit.says.join(', ')}.`
      : 'It fits none: no hole of its kind stands open in any job.',
  };
}

/** An unknown bolt against every open hole of every job that is not signed off. */
export function boltWhose(
  context: Context,
  input: { readonly row: TrayRow; readonly unit?: Unit | undefined },
): Result<BoltAnswer> {
  const read = readRow(input.row, input.unit);
  if (!read.ok) return read;
  const { workshop } = context;
  const states = workshop
    .jobs()
    .filter((job) => job.phase !== 'signed')
    .flatMap((job) => workshop.job(job.id) ?? []);
  return ok(whose(states, read.value));
}
