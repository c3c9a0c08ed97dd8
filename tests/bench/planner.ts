import { buildGraph, listOrder } from '../../core/reinstall/build-graph.ts';
import { planJob } from '../../core/reinstall/index.ts';
import type { JobState } from '../../core/model/tables.ts';
import { build, type RemovalBuilder } from '../support/build.ts';
import { chance } from '../reinstall/story.ts';

/**
 * How planning grows with the job: the slope of time against size on a log-log scale, from 2 500 to 40 000 removals, on
 * chains, wide and random graphs (promise: at most 1.2), and the graph part against a bare Kahn sort on typed arrays of
 * the same graph in the same run (promise: at most 10). Run: node tests/bench/planner.ts [largest]. Exit 1 past a promise.
 */
const SIZES = [2_500, 5_000, 10_000, 20_000, 40_000].filter((n) => n <= Number(process.argv[2] ?? 40_000));
/** The least of so many runs: the rest is the machine's. */
const ROUNDS = 5;
const SHORT_ROUNDS = 40;
const SLOPE = 1.2;
const RATIO = 10;

type Shape = 'chain' | 'wide' | 'random';

function jobOf(shape: Shape, n: number): JobState {
  const rnd = chance(n);
  const job = build();
  const made: RemovalBuilder[] = [];
  for (let i = 0; i < n; i += 1) {
    const removal = job.removal(`r${i}`, shape === 'chain' || i === 0 ? {} : { defaultNeed: 'loosened' });
    removal.part(`part ${i}`);
    removal.set(1);
    const first = made[0];
    if (shape === 'wide' && first) removal.needs(first);
    if (shape === 'random')
      for (let k = 0; k < 2; k += 1) {
        const other = made[Math.floor(rnd() * made.length)];
        if (other) removal.needs(other);
      }
    made.push(removal);
  }
  return job.state();
}

/** Kahn's sort with nothing around it: degrees, a stack, typed arrays. Gives how many came out. */
function kahn(n: number, from: Int32Array, to: Int32Array): number {
  const start = new Int32Array(n + 1);
  const degree = new Int32Array(n);
  for (let e = 0; e < from.length; e += 1) {
    start[(from[e] as number) + 1] = (start[(from[e] as number) + 1] as number) + 1;
    degree[to[e] as number] = (degree[to[e] as number] as number) + 1;
  }
  for (let v = 0; v < n; v += 1) start[v + 1] = (start[v + 1] as number) + (start[v] as number);
  const next = start.slice();
  const out = new Int32Array(from.length);
  for (let e = 0; e < from.length; e += 1) {
    const u = from[e] as number;
    out[next[u] as number] = to[e] as number;
    next[u] = (next[u] as number) + 1;
  }
  const stack = new Int32Array(n);
  let top = 0;
  let done = 0;
  for (let v = 0; v < n; v += 1) if (degree[v] === 0) stack[top++] = v;
  while (top > 0) {
    const u = stack[--top] as number;
    done += 1;
    for (let e = start[u] as number; e < (start[u + 1] as number); e += 1) {
      const v = out[e] as number;
      degree[v] = (degree[v] as number) - 1;
      if (degree[v] === 0) stack[top++] = v;
    }
  }
  return done;
}

function best(run: () => void, rounds = ROUNDS): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < rounds; i += 1) {
    const from = performance.now();
    run();
    least = Math.min(least, performance.now() - from);
  }
  return least;
}

/** Least squares through the logarithms. */
function slopeOf(points: readonly (readonly [number, number])[]): number {
  const xs = points.map(([x]) => Math.log(x));
  const ys = points.map(([, y]) => Math.log(y));
  const mean = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0) / list.length;
  const [mx, my] = [mean(xs), mean(ys)];
  const top = xs.reduce((sum, x, i) => sum + (x - mx) * ((ys[i] ?? 0) - my), 0);
  return top / xs.reduce((sum, x) => sum + (x - mx) ** 2, 0);
}

let broken = false;
const say = (line: string) => process.stdout.write(`${line}\n`);

function measure(shape: Shape): void {
  const points: (readonly [number, number])[] = [];
  const ratios: number[] = [];
  for (const n of SIZES) {
    const state = jobOf(shape, n);
    const now = state.job.createdAt;
    const graph = buildGraph(state);
    const from = Int32Array.from(graph.edges, (edge) => edge.from);
    const to = Int32Array.from(graph.edges, (edge) => edge.to);
    const plan = best(() => planJob(state, now));
    const build = best(() => buildGraph(state));
    const order = best(() => listOrder(graph), SHORT_ROUNDS);
    const bare = best(() => {
      if (kahn(graph.nodes.length, from, to) !== graph.nodes.length) throw new Error('Expected no ring.');
    }, SHORT_ROUNDS);
    points.push([n, plan]);
    ratios.push(order / bare);
    say(
      `${shape.padEnd(6)} ${String(n).padStart(6)} removals: plan ${plan.toFixed(0)} ms, graph ${build.toFixed(1)} ms, order ${order.toFixed(2)} ms, bare Kahn ${bare.toFixed(2)} ms, ratio ${(order / bare).toFixed(1)}`,
    );
  }
  const slope = slopeOf(points);
  const ratio = ratios.at(-1) ?? 0;
  say(
    `${shape}: slope ${slope.toFixed(2)} (promise ${SLOPE}), order against bare Kahn ${ratio.toFixed(1)} (promise ${RATIO})`,
  );
  if (slope > SLOPE || ratio > RATIO) broken = true;
}

// Compiled before anything is measured, so that the first shape is not slower than the others.
for (const shape of ['chain', 'wide', 'random'] as const) {
  const state = jobOf(shape, 1_000);
  best(() => planJob(state, state.job.createdAt));
}
for (const shape of ['chain', 'wide', 'random'] as const) measure(shape);
if (broken) process.exitCode = 1;
