import type { Segment } from './tool-segments.ts';

/** Nothing in hand yet: the first tool is taken up, not changed for. */
export const NONE = -1;

interface State {
  readonly mask: number;
  readonly hand: number;
  readonly cost: number;
  readonly parent: State | null;
  /** The step begun with, where it takes more than one tool; -1 = a round of single steps. */
  readonly step: number;
}

interface Ends {
  readonly ways: readonly {
    readonly hand: number;
    readonly end: number;
    readonly order: readonly number[];
  }[];
  readonly states: number;
}

/**
 * Every cheapest way through a stretch of at most 30 steps, from any of these tools in hand (all reached at the same
 * cost); null when more than `most` states would be looked at. Dynamic programming over (what is done, what is in hand),
 * cheapest first, with the tools still to be taken up as the least that is still to come. What the tool in hand can do
 * is done at once: it costs nothing, and nothing becomes dearer by it. Ends that cost more than the best are left out:
 * putting a tool down and taking another up costs no more.
 */
export function exactSegment(
  segment: Segment,
  hands: readonly number[],
  later: ReadonlyMap<number, number>,
  most: number,
): Ends | null {
  const search = new Search(segment, later);
  for (const hand of hands) search.put(search.closed(0, hand), hand, 0, null, -1);
  let best = Number.POSITIVE_INFINITY;
  const ends = new Map<number, State>();
  for (let state = search.take(); state !== null; state = search.take()) {
    if (state.cost + search.least(state.mask, state.hand) > best) break;
    if (state.mask === search.all) {
      best = state.cost;
      if (!ends.has(state.hand)) ends.set(state.hand, state);
      continue;
    }
    if (search.count > most) return null;
    search.expand(state);
  }
  return { ways: [...ends.values()].map((end) => search.way(end)), states: search.count };
}

/** Masks have at most 30 bits and there are fewer than 4,000 tools, so that a number holds both exactly. */
const keyOf = (mask: number, hand: number): number => mask * 4096 + hand + 1;

class Search {
  readonly all: number;
  count = 0;
  private readonly segment: Segment;
  private readonly pre: number[];
  private readonly later: ReadonlyMap<number, number>;
  private readonly known = new Map<number, number>();
  private readonly buckets: State[][] = [];
  private at = 0;

  constructor(segment: Segment, later: ReadonlyMap<number, number>) {
    this.segment = segment;
    this.later = later;
    this.all = 2 ** segment.nodes.length - 1;
    this.pre = segment.before.map((list) => list.reduce((mask, other) => mask | (1 << other), 0));
  }

  /** What is done once everything that this tool alone can do, or that takes none, has been done. */
  closed(mask: number, hand: number, done: number[] = []): number {
    const { tools } = this.segment;
    let now = mask;
    for (let changed = true; changed; ) {
      changed = false;
      for (let v = 0; v < tools.length; v++) {
        if ((now & (1 << v)) !== 0 || ((this.pre[v] as number) & ~now) !== 0) continue;
        const own = tools[v] as readonly number[];
        if (own.length > 1 || (own.length === 1 && own[0] !== hand)) continue;
        now |= 1 << v;
        done.push(v);
        changed = true;
      }
    }
    return now;
  }

  /** No way on from here costs less: each other tool that is still needed is taken up at least once. */
  least(mask: number, hand: number): number {
    const needed = new Set<number>();
    this.segment.tools.forEach((own, v) => {
      if ((mask & (1 << v)) === 0) for (const tool of own) if (tool !== hand) needed.add(tool);
    });
    return hand === NONE ? Math.max(0, needed.size - 1) : needed.size;
  }

  put(mask: number, hand: number, cost: number, parent: State | null, step: number): void {
    const key = keyOf(mask, hand);
    if ((this.known.get(key) ?? Number.POSITIVE_INFINITY) <= cost) return;
    this.known.set(key, cost);
    this.count += 1;
    const rank = cost + this.least(mask, hand);
    const bucket = this.buckets[rank];
    if (bucket) bucket.push({ mask, hand, cost, parent, step });
    else this.buckets[rank] = [{ mask, hand, cost, parent, step }];
    this.at = Math.min(this.at, rank);
  }

  take(): State | null {
    for (; this.at < this.buckets.length; this.at++) {
      const state = this.buckets[this.at]?.pop();
      if (state && (this.known.get(keyOf(state.mask, state.hand)) ?? 0) >= state.cost) return state;
      if (state) this.at -= 1;
    }
    return null;
  }

  expand(state: State): void {
    const { mask, hand, cost } = state;
    const free = this.segment.tools.flatMap((_, v) =>
      (mask & (1 << v)) === 0 && ((this.pre[v] as number) & ~mask) === 0 ? [v] : [],
    );
    const singles = new Set<number>();
    for (const v of free) {
      const own = this.segment.tools[v] as readonly number[];
      if (own.length === 1) singles.add(own[0] as number);
    }
    const only = this.whollyFree(state, singles, free);
    if (only !== null) {
      this.put(this.closed(mask, only), only, cost + (hand === NONE ? 0 : 1), state, -1);
      return;
    }
    for (const tool of singles)
      this.put(this.closed(mask, tool), tool, cost + (hand === NONE ? 0 : 1), state, -1);
    for (const v of free) {
      const own = this.segment.tools[v] as readonly number[];
      if (own.length < 2) continue;
      const inHand = own.includes(hand);
      const total = cost + own.length - 1 + (inHand || hand === NONE ? 0 : 1);
      for (const end of own)
        if (!(inHand && end === hand)) this.put(this.closed(mask | (1 << v), end), end, total, state, v);
    }
  }

  /**
   * A tool all of whose steps are free and that nothing later wants: it has to be taken up once, and now costs no more
   * than then, unless a step of several tools could begin with the one in hand. Without this every order of unrelated
   * tools would be looked at.
   */
  private whollyFree(state: State, singles: ReadonlySet<number>, free: readonly number[]): number | null {
    const { tools, nodes } = this.segment;
    const { mask, hand } = state;
    if (tools.some((own, v) => own.length > 1 && (mask & (1 << v)) === 0 && own.includes(hand))) return null;
    const last = nodes.at(-1) ?? 0;
    const open = new Set(free);
    for (const tool of singles) {
      if ((this.later.get(tool) ?? 0) > last) continue;
      const rest = tools.every(
        (own, v) => (mask & (1 << v)) !== 0 || !own.includes(tool) || (own.length === 1 && open.has(v)),
      );
      if (rest) return tool;
    }
    return null;
  }

  /** The steps of a way in their order, from its first state on. */
  way(end: State): { hand: number; end: number; order: readonly number[] } {
    const states: State[] = [];
    for (let state: State | null = end; state !== null; state = state.parent) states.unshift(state);
    const order: number[] = [];
    let mask = 0;
    for (const state of states) {
      const done = state.step >= 0 ? [state.step] : [];
      mask = this.closed(done.length > 0 ? mask | (1 << state.step) : mask, state.hand, done);
      order.push(...done);
    }
    return {
      hand: states[0]?.hand ?? NONE,
      end: end.hand,
      order: order.map((v) => this.segment.nodes[v] as number),
    };
  }
}
