import { exactSegment, NONE } from './tool-exact.ts';
import { goodSegment } from './tool-greedy.ts';
import { segmentsOf } from './tool-segments.ts';

/**
 * Steps in an order that they may be done in (every edge leads to a later number), and the tools of each, as numbers
 * from 0. A step without tools changes nothing in hand; inside a step its tools may be used in any order.
 */
export interface ToolProblem {
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly tools: readonly (readonly number[])[];
  /** The tool in hand before the first step; none by itself. */
  readonly hand?: number;
}

export interface ToolOrder {
  /** Step numbers. */
  readonly order: readonly number[];
  /** How often one tool is put down for another; taking up the first is none. */
  readonly changes: number;
  /** False where a stretch with more choice than can be searched was ordered by a rule of thumb. */
  readonly exact: boolean;
}

/** Stretches with up to so many steps are searched to the end. */
const EXACT_UP_TO = 24;
/** States looked at before a stretch is given to the rule of thumb, over the whole list. */
const MOST_STATES = 30_000;

/**
 * The order with the fewest changes of tool under the edges. Exact by dynamic programming over what is done and what is
 * in hand, stretch by stretch between the points that every order passes; stretches too large for that by a rule of
 * thumb, and then it says so. A problem of its kind: fewest set-ups under precedence, for chains the shortest common
 * supersequence (Räihä and Ukkonen 1981, from memory).
 */
export function fewestChanges(problem: ToolProblem, exactUpTo = EXACT_UP_TO): ToolOrder {
  const order: number[] = [];
  let exact = true;
  const hand = problem.hand ?? NONE;
  let hands: readonly number[] = [hand];
  let states = MOST_STATES;
  const later = lastUse(problem);
  // Every way of ending a stretch that costs no more than the best is kept, each with the way there.
  let ways = new Map<number, readonly (readonly number[])[]>([[hand, []]]);
  for (const segment of segmentsOf(problem)) {
    const ends =
      segment.nodes.length <= exactUpTo && states > 0 ? exactSegment(segment, hands, later, states) : null;
    if (ends !== null) {
      states -= ends.states;
      ways = joined(ways, ends.ways);
    } else {
      exact = false;
      const before = hands[0] ?? NONE;
      const way = goodSegment(segment, before);
      const { hand: end, order: steps } = way;
      ways = joined(new Map([[before, ways.get(before) ?? []]]), [{ hand: before, end, order: steps }]);
    }
    hands = [...ways.keys()];
  }
  for (const list of [...ways.values()][0] ?? []) order.push(...list);
  return { order, changes: changesOf(order, problem.tools, hand), exact };
}

interface Way {
  /** Tool in hand before and after. */
  readonly hand: number;
  readonly end: number;
  readonly order: readonly number[];
}

function joined(
  ways: ReadonlyMap<number, readonly (readonly number[])[]>,
  more: readonly Way[],
): Map<number, readonly (readonly number[])[]> {
  return new Map(more.map((way) => [way.end, [...(ways.get(way.hand) ?? []), way.order]]));
}

/** By tool: the last step that uses it, so that a tool needed again later is not put away too soon. */
function lastUse(problem: ToolProblem): ReadonlyMap<number, number> {
  const last = new Map<number, number>();
  problem.tools.forEach((tools, node) => {
    for (const tool of tools) last.set(tool, node);
  });
  return last;
}

/** How often a tool is put down for another when the steps are done in this order, each step as well as it can be. */
export function changesOf(
  order: readonly number[],
  tools: readonly (readonly number[])[],
  inHand = NONE,
): number {
  let best = new Map<number, number>([[inHand, 0]]);
  for (const node of order) {
    const own = tools[node] ?? [];
    if (own.length === 0) continue;
    const next = new Map<number, number>();
    for (const [hand, cost] of best)
      for (const end of own) {
        const taken = hand === NONE || own.includes(hand) ? 0 : 1;
        // With the tool in hand used first, another one is in hand at the end.
        if (own.length > 1 && taken === 0 && hand === end) continue;
        const total = cost + taken + own.length - 1;
        if (total < (next.get(end) ?? Number.POSITIVE_INFINITY)) next.set(end, total);
      }
    best = next;
  }
  return Math.min(...best.values());
}
