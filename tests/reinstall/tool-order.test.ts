import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { changesOf, fewestChanges, type ToolProblem } from '../../core/reinstall/tool-order.ts';
import { fewestByAllSets, randomProblem } from './tool-brute.ts';

const problem = (
  pairs: readonly (readonly [number, number])[],
  tools: readonly (readonly number[])[],
): ToolProblem => ({
  from: Int32Array.from(pairs, ([a]) => a),
  to: Int32Array.from(pairs, ([, b]) => b),
  tools,
});

/** Letters of words as tools: each word is a chain of steps. */
function chains(...words: readonly string[]): ToolProblem {
  const pairs: [number, number][] = [];
  const tools: number[][] = [];
  for (const word of words)
    [...word].forEach((letter, i) => {
      tools.push([letter.charCodeAt(0) - 65]);
      if (i > 0) pairs.push([tools.length - 2, tools.length - 1]);
    });
  return problem(pairs, tools);
}

function keepsEdges(one: ToolProblem, order: readonly number[]): boolean {
  const place = new Map(order.map((node, i) => [node, i]));
  return (
    place.size === one.tools.length &&
    [...one.from].every((tail, e) => (place.get(tail) ?? 0) < (place.get(one.to[e] as number) ?? -1))
  );
}

const any = fc
  .record({
    seed: fc.nat(1_000_000),
    n: fc.integer({ min: 1, max: 11 }),
    dense: fc.constantFrom(0, 0.1, 0.2, 0.35),
    kinds: fc.integer({ min: 1, max: 5 }),
  })
  .map(({ seed, n, dense, kinds }) => randomProblem(seed, n, dense, kinds));

describe('the order with the fewest changes of tool', () => {
  // Fewest set-ups over chains without repeats is the length of their shortest common supersequence less one.
  // LCS of ABCBDAB and BDCABA is 4 (Cormen, Leiserson, Rivest, Stein, Introduction to Algorithms, chapter on dynamic
  // programming, from memory), so the supersequence has 7 + 6 − 4 = 9 letters; AGGTAB and GXTXAYB is a stock example of
  // lectures with LCS 4 (from memory): its GG is one visit, so 5 + 7 − 4 = 8.
  test.each([
    [['ABCBDAB', 'BDCABA'], 8],
    [['AGGTAB', 'GXTXAYB'], 7],
    [['ABAC', 'CAB'], 4],
    [['ABABABAB'], 7],
    [['A', 'A', 'B', 'B', 'A'], 1],
  ] as const)('chains %j need %i changes', (words, least) => {
    const found = fewestChanges(chains(...words));
    expect(found).toMatchObject({ changes: least, exact: true });
    expect(keepsEdges(chains(...words), found.order)).toBe(true);
  });

  test('on the graphs of the literature it is what looking at every set gives', () => {
    const rows = readFileSync(new URL('data/precedence.csv', import.meta.url), 'utf8')
      .split('\n')
      .map((line) => line.split(','))
      .filter((cells) => cells[4] === 'linear_extensions' && Number(cells[1]) <= 16);
    expect(rows.length).toBeGreaterThan(8);
    for (const [name = '', n = '', pairs = ''] of rows) {
      const edges = pairs
        .split(' ')
        .filter((pair) => pair !== '')
        .map((pair) => pair.split('>').map((k) => Number(k) - 1) as unknown as readonly [number, number]);
      for (const kinds of [2, 3, 4]) {
        const one = ordered(
          Number(n),
          edges,
          Array.from({ length: Number(n) }, (_, i) => [(i * 7 + 3) % kinds]),
        );
        expect([name, fewestChanges(one).changes]).toEqual([name, fewestByAllSets(one)]);
      }
    }
  });

  test('for any list of steps: exact, keeps every edge, counts its own changes, and never more than the list itself', () => {
    fc.assert(
      fc.property(any, (one) => {
        const found = fewestChanges(one);
        expect(found.exact).toBe(true);
        expect(keepsEdges(one, found.order)).toBe(true);
        expect(changesOf(found.order, one.tools)).toBe(found.changes);
        expect(found.changes).toBe(fewestByAllSets(one));
        expect(found.changes).toBeLessThanOrEqual(changesOf([...one.tools.keys()], one.tools));
      }),
      { numRuns: 400, seed: 4 },
    );
  });

  test.each([14, 16])('with %i steps it is what looking at every set gives', (n) => {
    for (let seed = 1; seed <= 4; seed += 1) {
      const one = randomProblem(seed * 31, n, 0.12, 4);
      expect(fewestChanges(one)).toMatchObject({ exact: true, changes: fewestByAllSets(one) });
    }
  });

  test('the rule of thumb says that it is one, keeps every edge, and is never better than exact', () => {
    fc.assert(
      fc.property(any, (one) => {
        const rough = fewestChanges(one, 0);
        expect(rough.exact).toBe(false);
        expect(keepsEdges(one, rough.order)).toBe(true);
        expect(changesOf(rough.order, one.tools)).toBe(rough.changes);
        expect(rough.changes).toBeGreaterThanOrEqual(fewestByAllSets(one));
      }),
      { numRuns: 150, seed: 5 },
    );
  });

  test('a long chain has one order and is exact, whatever its length', () => {
    const n = 500;
    const pairs = Array.from({ length: n - 1 }, (_, i) => [i, i + 1] as const);
    const found = fewestChanges(
      problem(
        pairs,
        Array.from({ length: n }, (_, i) => [i % 3]),
      ),
    );
    expect(found).toMatchObject({ changes: n - 1, exact: true });
  });

  test('unrelated steps of many sizes are exact at once, a crossed heap of them is not claimed to be', () => {
    const sizes = Array.from({ length: 24 }, (_, i) => [i]);
    expect(fewestChanges(problem([], sizes))).toMatchObject({ changes: 23, exact: true });
    const heap = randomProblem(9, 60, 0.05, 9);
    expect(fewestChanges(heap).exact).toBe(false);
  });
});

/** Renumbered so that every edge leads to a later number, as the list has it. */
function ordered(
  n: number,
  edges: readonly (readonly [number, number])[],
  tools: readonly (readonly number[])[],
): ToolProblem {
  const order: number[] = [];
  while (order.length < n)
    for (let v = 0; v < n; v += 1)
      if (!order.includes(v) && edges.every(([a, b]) => b !== v || order.includes(a))) order.push(v);
  const place = new Map(order.map((v, i) => [v, i]));
  return problem(
    edges.map(([a, b]) => [place.get(a) ?? 0, place.get(b) ?? 0] as const),
    order.map((v) => tools[v] ?? []),
  );
}
