import { changesOf, fewestChanges } from '../../core/reinstall/tool-order.ts';
import { randomProblem } from '../reinstall/tool-brute.ts';

/**
 * How good the rule of thumb for tool changes is: against the exact answer on random lists of 20 steps (promise: on
 * average at most 10 % more), what either saves against the list as it stands, and how long both take.
 * Run: node tests/bench/tool-order.ts [lists]. Exit 1 past the promise.
 */
const LISTS = Number(process.argv[2] ?? 400);
const PROMISE = 1.1;
let [rough, exact, listed, slowest, searched] = [0, 0, 0, 0, 0];
for (let seed = 1; seed <= LISTS; seed += 1) {
  const one = randomProblem(seed, 20, [0.05, 0.1, 0.15, 0.25][seed % 4] ?? 0.1, 3 + (seed % 5));
  const from = performance.now();
  const best = fewestChanges(one);
  slowest = Math.max(slowest, performance.now() - from);
  if (!best.exact) continue;
  searched += 1;
  exact += best.changes;
  rough += fewestChanges(one, 0).changes;
  listed += changesOf([...one.tools.keys()], one.tools);
}
const ratio = rough / exact;
process.stdout.write(
  `${searched} of ${LISTS} lists of 20 steps searched to the end, the slowest in ${slowest.toFixed(0)} ms\n` +
    `changes: as listed ${(listed / searched).toFixed(2)}, rule of thumb ${(rough / searched).toFixed(2)}, exact ${(exact / searched).toFixed(2)}\n` +
    `rule of thumb against exact: ${ratio.toFixed(3)} (promise ${PROMISE})\n`,
);
if (ratio > PROMISE || searched < LISTS) process.exitCode = 1;
