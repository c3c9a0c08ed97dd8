import { clean, plant } from '../reinstall/judge.ts';
import { MISTAKES } from '../reinstall/mistakes.ts';
import { openYard } from '../reinstall/story.ts';

/**
 * Clean jobs through the operations: none may raise a stop or a warning, in any order of clean deeds. Then each planted
 * mistake in machines of other numbers. Run: node tests/bench/clean.ts [clean jobs] [machines for each mistake]. Prints
 * false alarms and misses; exit 1 when there is one.
 */
const jobs = Number(process.argv[2] ?? 1_000);
const each = Number(process.argv[3] ?? 10);
/** A new workshop after so many, so that one does not grow without end. */
const BATCH = 25;
const wrong: string[] = [];

let yard = openYard();
for (let seed = 1; seed <= jobs; seed += 1) {
  const alarm = await clean(yard, 10_000 + seed);
  if (alarm !== null) wrong.push(`machine ${10_000 + seed}: ${alarm}`);
  if (seed % BATCH === 0) {
    yard.close();
    yard = openYard();
  }
}
process.stdout.write(`${jobs} clean jobs: ${wrong.length} false alarms.\n`);

let missed = 0;
for (const mistake of MISTAKES)
  for (let seed = 1; seed <= each; seed += 1) {
    const verdict = await plant(yard, mistake, 100 + seed, mistake.deadline === 'guard' && seed % 2 === 0);
    if (verdict.found) continue;
    missed += 1;
    wrong.push(`${mistake.name}, machine ${100 + seed}: ${verdict.how}`);
  }
yard.close();
process.stdout.write(`${MISTAKES.length} mistakes in ${each} machines each: ${missed} missed.\n`);
for (const line of wrong.slice(0, 20)) process.stdout.write(`${line}\n`);
if (wrong.length > 0) process.exitCode = 1;
