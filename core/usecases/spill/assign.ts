import { munkres } from 'munkres';

/** One pairing of so many of a row with a group. */
export interface Pairing {
  readonly row: number;
  readonly group: number;
  readonly qty: number;
}

interface Problem {
  /** Pieces of each row. */
  readonly supply: readonly number[];
  /** Open holes of each group. */
  readonly demand: readonly number[];
  /** Cost of one piece of a row in a hole of a group, a whole number from 0; undefined where it does not fit. */
  readonly cost: (row: number, group: number) => number | undefined;
}

/** Most pieces of one knot of rows and groups that are matched one by one: 1 000 take about a tenth of a second. */
const MOST_UNITS = 2_000;

/**
 * Most pieces into holes, and of all such ways the one with the least cost (minimum-cost maximum matching). Alike pieces
 * and alike holes are grouped, knots that share nothing are solved by themselves, and only what is left in a knot of
 * several rows and groups goes through the assignment solver. Order: by row, then by group.
 */
export function assign(problem: Problem): Pairing[] {
  const { supply, demand } = problem;
  const fits = supply.map((_, r) => demand.flatMap((_d, g) => (problem.cost(r, g) === undefined ? [] : [g])));
  return knots(fits, demand.length)
    .flatMap((knot) => solve(problem, knot))
    .sort((a, b) => a.row - b.row || a.group - b.group);
}

interface Knot {
  readonly rows: number[];
  readonly groups: number[];
}

/** Rows and groups that hang together. */
function knots(fits: readonly (readonly number[])[], groups: number): Knot[] {
  const owner = new Int32Array(groups).fill(-1);
  const root = fits.map((_, r) => r);
  const find = (r: number): number => {
    let at = r;
    while (root[at] !== at) at = root[at] as number;
    return at;
  };
  fits.forEach((list, r) => {
    for (const g of list) {
      const other = owner[g] as number;
      if (other < 0) owner[g] = r;
      else root[find(r)] = find(other);
    }
  });
  const found = new Map<number, Knot>();
  fits.forEach((list, r) => {
    if (list.length === 0) return;
    const knot = found.get(find(r)) ?? { rows: [], groups: [] };
    knot.rows.push(r);
    found.set(find(r), knot);
  });
  owner.forEach((r, g) => {
    if (r >= 0) found.get(find(r))?.groups.push(g);
  });
  return [...found.values()];
}

function solve({ supply, demand, cost }: Problem, { rows, groups }: Knot): Pairing[] {
  const pieces = rows.reduce((sum, r) => sum + (supply[r] ?? 0), 0);
  if (rows.length === 1 || groups.length === 1) return greedy({ supply, demand, cost }, rows, groups);
  // No group can take more than there are pieces for it.
  const cap = (g: number): number =>
    Math.min(
      demand[g] ?? 0,
      rows.reduce((sum, r) => sum + (cost(r, g) === undefined ? 0 : (supply[r] ?? 0)), 0),
    );
  const unitRow = rows.flatMap((r) => new Array<number>(supply[r] ?? 0).fill(r));
  const unitGroup = groups.flatMap((g) => new Array<number>(cap(g)).fill(g));
  if (pieces > MOST_UNITS) throw new Error(`Expected at most ${MOST_UNITS} pieces, got ${pieces}.`);
  if (unitRow.length === 0 || unitGroup.length === 0) return [];
  let highest = 0;
  for (const r of rows) for (const g of groups) highest = Math.max(highest, cost(r, g) ?? 0);
  // One pairing more is worth more than all costs together.
  const never = (highest + 1) * (Math.min(unitRow.length, unitGroup.length) + 1);
  const lines = new Map(rows.map((r) => [r, unitGroup.map((g) => cost(r, g) ?? never)]));
  const sums = new Map<string, Pairing>();
  for (const [i, j] of munkres(unitRow.map((r) => lines.get(r) ?? []))) {
    const [row, group] = [unitRow[i] as number, unitGroup[j] as number];
    if (cost(row, group) === undefined) continue;
    const key = `${row}/${group}`;
    sums.set(key, { row, group, qty: (sums.get(key)?.qty ?? 0) + 1 });
  }
  return [...sums.values()];
}

/** With one row, or one group, the cheapest first is the best. */
function greedy(problem: Problem, rows: readonly number[], groups: readonly number[]): Pairing[] {
  const { supply, demand, cost } = problem;
  const [single] = rows.length === 1 ? rows : groups;
  let left = (rows.length === 1 ? supply[single as number] : demand[single as number]) ?? 0;
  const pairs = rows.flatMap((row) => groups.map((group) => ({ row, group, cost: cost(row, group) })));
  const found: Pairing[] = [];
  for (const { row, group, cost: one } of pairs.sort((a, b) => (a.cost ?? 0) - (b.cost ?? 0))) {
    if (one === undefined) continue;
    const qty = Math.min(left, (rows.length === 1 ? demand[group] : supply[row]) ?? 0);
    if (qty > 0) found.push({ row, group, qty });
    left -= qty;
  }
  return found;
}
