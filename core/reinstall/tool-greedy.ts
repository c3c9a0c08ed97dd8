import { NONE } from './tool-exact.ts';
import type { Segment } from './tool-segments.ts';

interface Way {
  readonly order: readonly number[];
  /** Tool in hand at the end. */
  readonly hand: number;
  readonly changes: number;
}

/** What is weighed beside the steps that a move gets done: how far ahead it looks, and how much a finished tool counts. */
interface Taste {
  readonly ahead: boolean;
  readonly finish: number;
  /** How much of the weight is drawn by lot, and from which seed. */
  readonly lot?: number;
  readonly seed?: number;
}
const TASTES: readonly Taste[] = [
  { ahead: false, finish: 0 },
  { ahead: false, finish: 2 },
  { ahead: true, finish: 0 },
  { ahead: true, finish: 1 },
  { ahead: true, finish: 3 },
  { ahead: true, finish: 8 },
];
/** Short stretches are tried again with the weights stirred by lot: about so many steps in all. */
const STIRRED_STEPS = 1_200;
const MOST_STIRRED = 32;
const LOOK_AHEAD_UP_TO = 500;

/** The tastes for a stretch: the fixed ones, and for short ones some that are stirred, always in the same way. */
function tastesFor(steps: number): readonly Taste[] {
  const count = Math.min(MOST_STIRRED, Math.floor(STIRRED_STEPS / steps));
  const stirred = Array.from({ length: count }, (_, k): Taste => {
    return { ahead: k % 2 === 0, finish: k % 4, lot: 0.5, seed: k + 1 };
  });
  // Looking one move further costs too much where there are thousands of steps.
  return [...TASTES.filter((taste) => !taste.ahead || steps <= LOOK_AHEAD_UP_TO), ...stirred];
}

/** 0 to 1, evenly, the same for the same seed (Park and Miller, Comm. ACM 31, 1988). */
function lots(seed: number): () => number {
  let at = (seed * 48_271) % 2_147_483_647;
  return () => {
    at = (at * 48_271) % 2_147_483_647;
    return at / 2_147_483_647;
  };
}

/**
 * A good way through a stretch that is too large to search: at each change the tool that gets most done, weighed in a
 * few ways, and the best of them kept. How far it may be off is measured by tests/bench/tool-order.ts.
 */
export function goodSegment(segment: Segment, hand: number): Way {
  let best: Way | null = null;
  for (const taste of tastesFor(segment.nodes.length)) {
    const way = new Walk(segment, hand).run(taste);
    if (best === null || way.changes < best.changes) best = way;
  }
  if (best === null) throw new Error('Expected a way of weighing.');
  return { ...best, order: best.order.map((v) => segment.nodes[v] as number) };
}

interface Move {
  readonly tool: number;
  /** A step of more than one tool; -1 = a round of single steps. */
  readonly step: number;
  readonly cost: number;
}

class Walk {
  private readonly segment: Segment;
  private readonly waits: Int32Array;
  private readonly left: Map<number, number> = new Map();
  private readonly free = new Set<number>();
  private readonly order: number[] = [];
  private hand: number;
  private changes = 0;

  constructor(segment: Segment, hand: number) {
    this.segment = segment;
    this.hand = hand;
    this.waits = Int32Array.from(segment.before, (list) => list.length);
    segment.tools.forEach((own, v) => {
      for (const tool of own) this.left.set(tool, (this.left.get(tool) ?? 0) + 1);
      if (this.waits[v] === 0) this.free.add(v);
    });
  }

  run(taste: Taste): Way {
    this.do({ tool: this.hand, step: -1, cost: 0 });
    const lot = lots(taste.seed ?? 1);
    while (this.free.size > 0) {
      let best: Move | null = null;
      let most = Number.NEGATIVE_INFINITY;
      for (const move of this.moves()) {
        const worth = this.worth(move, taste) * (1 + (taste.lot ?? 0) * lot());
        if (worth > most) [most, best] = [worth, move];
      }
      if (best === null) throw new Error('Expected a step that can be done next.');
      this.do(best);
    }
    return { order: this.order, hand: this.hand, changes: this.changes };
  }

  private moves(): Move[] {
    const moves = new Map<string, Move>();
    const change = this.hand === NONE ? 0 : 1;
    for (const v of this.free) {
      const own = this.segment.tools[v] as readonly number[];
      const first = own[0];
      if (own.length < 2 && first !== undefined)
        moves.set(`${first}`, { tool: first, step: -1, cost: change });
      if (own.length < 2) continue;
      const inHand = own.includes(this.hand);
      for (const tool of own)
        if (!(inHand && tool === this.hand))
          moves.set(`${tool}/${v}`, { tool, step: v, cost: own.length - 1 + (inHand ? 0 : change) });
    }
    return [...moves.values()];
  }

  /** Steps done per change; a tool that is finished with counts on top, and so does the best that could follow. */
  private worth(move: Move, taste: Taste): number {
    const mark = this.order.length;
    const before = { hand: this.hand, changes: this.changes };
    this.do(move);
    let worth = this.order.length - mark;
    if ((this.left.get(move.tool) ?? 0) === 0) worth += taste.finish;
    if (taste.ahead) {
      let next = 0;
      const inner = this.order.length;
      for (const follow of this.moves()) {
        const held = { hand: this.hand, changes: this.changes };
        this.do(follow);
        next = Math.max(next, (this.order.length - inner) / Math.max(1, follow.cost));
        this.undo(inner, held);
      }
      worth += next * 0.9;
    }
    this.undo(mark, before);
    return worth / Math.max(1, move.cost);
  }

  private do(move: Move): void {
    this.changes += move.cost;
    this.hand = move.tool;
    const ready: number[] = [];
    if (move.step >= 0) ready.push(move.step);
    else for (const v of this.free) if (this.goes(v)) ready.push(v);
    for (let v = ready.pop(); v !== undefined; v = ready.pop()) {
      if (!this.free.delete(v)) continue;
      this.order.push(v);
      for (const tool of this.segment.tools[v] ?? []) this.left.set(tool, (this.left.get(tool) ?? 0) - 1);
      for (const next of this.segment.after[v] ?? []) {
        const waits = (this.waits[next] as number) - 1;
        this.waits[next] = waits;
        if (waits > 0) continue;
        this.free.add(next);
        if (this.goes(next)) ready.push(next);
      }
      if (v === move.step) for (const other of this.free) if (this.goes(other)) ready.push(other);
    }
  }

  /** Done at once, with what is in hand or by hand. */
  private goes(v: number): boolean {
    const own = this.segment.tools[v] as readonly number[];
    return own.length === 0 || (own.length === 1 && own[0] === this.hand);
  }

  private undo(mark: number, held: { readonly hand: number; readonly changes: number }): void {
    while (this.order.length > mark) {
      const v = this.order.pop() as number;
      for (const tool of this.segment.tools[v] ?? []) this.left.set(tool, (this.left.get(tool) ?? 0) + 1);
      for (const next of this.segment.after[v] ?? []) {
        if (this.waits[next] === 0) this.free.delete(next);
        this.waits[next] = (this.waits[next] as number) + 1;
      }
      this.free.add(v);
    }
    this.hand = held.hand;
    this.changes = held.changes;
  }
}
