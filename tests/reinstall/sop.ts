import { readFileSync } from 'node:fs';
import type { ToolProblem } from '../../core/reinstall/tool-order.ts';

/** A sequential ordering problem: go through every node once, from the first to the last, some only after others. */
export interface Sop {
  readonly name: string;
  /** Length of the way from a node to the next; -1 = the second has to come before the first. */
  readonly cost: readonly (readonly number[])[];
}

/** Reads an instance of the TSPLIB 95 format (type SOP, full matrix). */
export function sopOf(name: string): Sop {
  const text = readFileSync(new URL(`data/sop/${name}.sop`, import.meta.url), 'utf8');
  const [, body = ''] = text.split('EDGE_WEIGHT_SECTION');
  const [n = 0, ...cells] = body.replace('EOF', '').trim().split(/\s+/).map(Number);
  if (n < 2 || cells.length !== n * n || cells.some(Number.isNaN))
    throw new Error(`Expected ${n} × ${n} numbers in ${name}, got ${cells.length}.`);
  return { name, cost: Array.from({ length: n }, (_, i) => cells.slice(i * n, (i + 1) * n)) };
}

/** Every "this before that" of the matrix. */
export function pairsOf(sop: Sop): [number, number][] {
  return sop.cost.flatMap((row, after) =>
    row.flatMap((value, before): [number, number][] => (value === -1 ? [[before, after]] : [])),
  );
}

/**
 * Length of the shortest way that keeps the order (Held and Karp 1962: over every set of nodes gone through, and where
 * one stands). `length` is what a move costs.
 */
export function shortest(sop: Sop, length: (i: number, j: number) => number): number {
  const n = sop.cost.length;
  const pre = sop.cost.map((row) => row.reduce((mask, v, j) => (v === -1 ? mask | (1 << j) : mask), 0));
  const best = new Float64Array((1 << n) * n).fill(Number.POSITIVE_INFINITY);
  best[n] = 0;
  for (let set = 1; set < 1 << n; set += 1)
    for (let at = 0; at < n; at += 1) {
      const had = best[set * n + at] as number;
      if (had === Number.POSITIVE_INFINITY) continue;
      for (let v = 0; v < n; v += 1) {
        if ((set & (1 << v)) !== 0 || ((pre[v] as number) & ~set) !== 0) continue;
        const slot = (set | (1 << v)) * n + v;
        best[slot] = Math.min(best[slot] as number, had + length(at, v));
      }
    }
  return Math.min(...best.subarray(((1 << n) - 1) * n));
}

/** The way between two nodes, whichever direction the matrix tells (one of them may be shut by the order). */
const either = (sop: Sop, i: number, j: number): number => {
  const there = sop.cost[i]?.[j] ?? -1;
  return there === -1 ? (sop.cost[j]?.[i] ?? -1) : there;
};

/**
 * Nodes that lie no way apart take the same tool: number of the group by node. Throws where "no way apart" does not
 * group them (a far from c though both are next to b).
 */
export function groupsOf(sop: Sop): number[] {
  const group: number[] = [];
  sop.cost.forEach((_, i) => {
    const like = group.findIndex((_, j) => either(sop, i, j) === 0);
    group.push(like >= 0 ? (group[like] as number) : Math.max(-1, ...group) + 1);
  });
  group.forEach((a, i) => {
    group.forEach((b, j) => {
      // The way from the first node straight to the last is shut by a number of its own.
      const ends = Math.min(i, j) === 0 && Math.max(i, j) === group.length - 1;
      if (i !== j && !ends && (a === b) !== (either(sop, i, j) === 0))
        throw new Error(`Expected groups in ${sop.name}, got nodes ${i} and ${j} against them.`);
    });
  });
  return group;
}

/** Nodes as steps, numbered anew so that each comes after what it waits for. */
export function stepsOf(sop: Sop, tools: readonly number[]): ToolProblem {
  const pairs = pairsOf(sop);
  const order: number[] = [];
  while (order.length < sop.cost.length) {
    const next = sop.cost.findIndex(
      (_, v) => !order.includes(v) && pairs.every(([a, b]) => b !== v || order.includes(a)),
    );
    if (next < 0) throw new Error(`Expected an order in ${sop.name}, got a circle.`);
    order.push(next);
  }
  const place = new Map(order.map((v, i) => [v, i]));
  return {
    from: Int32Array.from(pairs, ([a]) => place.get(a) ?? 0),
    to: Int32Array.from(pairs, ([, b]) => place.get(b) ?? 0),
    tools: order.map((v) => [tools[v] ?? 0]),
  };
}
