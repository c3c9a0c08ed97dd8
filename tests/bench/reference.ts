import fc from 'fast-check';
import { differs } from '../reinstall/agree.ts';
import { anyRecipe, jobOf } from '../reinstall/any-job.ts';
import { reference } from '../reinstall/reference.ts';

/**
 * Plans random jobs and compares each with the brute-force reference. Run: node tests/bench/reference.ts [jobs] [seed].
 * Prints how many agree, what the jobs held, and the first that differs; exit 1 when one does.
 */
const jobs = Number(process.argv[2] ?? 10_000);
const seed = Number(process.argv[3] ?? 1);
const seen = new Map<string, number>();
let agreed = 0;
let first = '';

const recipes = fc.sample(anyRecipe, { numRuns: jobs, seed });
for (const [i, recipe] of recipes.entries()) {
  const { nodes, order } = reference(jobOf(recipe).state(), new Set());
  for (const kind of new Set(nodes.map((node) => node.split(':')[0] ?? '')))
    seen.set(kind, (seen.get(kind) ?? 0) + 1);
  if (order) seen.set('list order', (seen.get('list order') ?? 0) + 1);
  const difference = differs(recipe, i % 2 === 0);
  if (difference === null) agreed += 1;
  else first ||= `${JSON.stringify(recipe)}\n${difference}`;
}
const held = [...seen].map(([kind, count]) => `${kind} in ${count}`).join(', ');
process.stdout.write(`${agreed} of ${jobs} random jobs agree with the reference (seed ${seed}): ${held}.\n`);
if (first !== '') {
  process.stdout.write(`First that differs: ${first}\n`);
  process.exitCode = 1;
}
