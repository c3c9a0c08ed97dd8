import { chance } from './story.ts';
import type { ToolProblem } from '../../core/reinstall/tool-order.ts';

/**
 * The fewest changes by plain dynamic programming over every set of done steps and every tool in hand, written apart
 * from the program's search: no bound, no step done at once, no cutting. Up to 20 steps.
 */
export function fewestByAllSets(problem: ToolProblem): number {
  const n = problem.tools.length;
  const kinds = Math.max(0, ...problem.tools.flat().map((tool) => tool + 1));
  const pre = new Array<number>(n).fill(0);
  problem.from.forEach((tail, e) => {
    const head = problem.to[e] as number;
    pre[head] = (pre[head] as number) | (1 << tail);
  });
  // Slot `kinds` is the empty hand.
  const width = kinds + 1;
  const cost = new Uint8Array((1 << n) * width).fill(255);
  cost[kinds] = 0;
  for (let set = 0; set < 1 << n; set += 1)
    for (let hand = 0; hand < width; hand += 1) {
      const had = cost[set * width + hand] as number;
      if (had === 255) continue;
      for (let v = 0; v < n; v += 1) {
        if ((set & (1 << v)) !== 0 || ((pre[v] as number) & ~set) !== 0) continue;
        for (const [end, more] of handsAfter(problem.tools[v] ?? [], hand, kinds)) {
          const slot = (set | (1 << v)) * width + end;
          if (had + more < (cost[slot] as number)) cost[slot] = had + more;
        }
      }
    }
  return Math.min(...cost.subarray(((1 << n) - 1) * width));
}

/** Every order of using the tools of one step, as the tool in hand afterwards and the changes on the way. */
function handsAfter(own: readonly number[], hand: number, empty: number): [number, number][] {
  if (own.length === 0) return [[hand, 0]];
  return permutations(own).map((order) => {
    let [now, changes] = [hand, 0];
    for (const tool of order) {
      if (now !== tool && now !== empty) changes += 1;
      now = tool;
    }
    return [now, changes];
  });
}

function permutations(list: readonly number[]): number[][] {
  if (list.length <= 1) return [[...list]];
  return list.flatMap((one, i) =>
    permutations([...list.slice(0, i), ...list.slice(i + 1)]).map((rest) => [one, ...rest]),
  );
}

/** A random list of steps: edges with this chance between any two, few tools, some steps with none or several. */
export function randomProblem(seed: number, n: number, dense: number, kinds: number): ToolProblem {
  const rnd = chance(seed);
  const from: number[] = [];
  const to: number[] = [];
  for (let b = 1; b < n; b += 1)
    for (let a = 0; a < b; a += 1)
      if (rnd() < dense) {
        from.push(a);
        to.push(b);
      }
  const tools = Array.from({ length: n }, () => {
    const some = rnd();
    const count = some < 0.1 ? 0 : some < 0.85 ? 1 : 2;
    const own = new Set<number>();
    for (let k = 0; k < count; k += 1) own.add(Math.floor(rnd() * kinds));
    return [...own];
  });
  return { from: Int32Array.from(from), to: Int32Array.from(to), tools };
}
