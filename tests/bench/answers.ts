import type { JobState } from '../../core/model/tables.ts';
import {
  dayAheadOf,
  outlookOf,
  planJob,
  reachOf,
  suggestionsOf,
  timeLeftOf,
  toolPlan,
  walked,
} from '../../core/reinstall/index.ts';
import { weighed } from '../../core/reinstall/weighed.ts';
import { openSearches } from '../../core/tally/index.ts';
import { hitsIn } from '../../core/usecases/answers.ts';
import { build, type RemovalBuilder } from '../support/build.ts';
import { chance } from '../reinstall/story.ts';

/**
 * The questions beside the plan, on a job of 2 000 removals and 10 000 holes, in ms and as a ratio to planning the same
 * job in the same run: what each costs once the job is planned, as it is whenever a window shows it (promise: 100 ms),
 * and what it costs from cold.
 * Run: node tests/bench/answers.ts. Exit 1 past the promise.
 */
const REMOVALS = 2_000;
const HOLES = 5;
const ROUNDS = 7;
const PROMISE_MS = 100;
const DAY = 86_400_000;

/** Most follow the log, some are loose; a third is back, some wait for parts, some bolts are short or on order. */
function bigJob(loose: number): { state: JobState; now: number; targets: string[] } {
  const rnd = chance(REMOVALS);
  const job = build();
  const made: RemovalBuilder[] = [];
  const parts: string[] = [];
  const drives = ['8 mm', '10 mm', '13 mm', '17 mm', '19 mm', 'T30'];
  for (let i = 0; i < REMOVALS; i += 1) {
    const removal = job.removal(`r${i}`, {
      defaultNeed: rnd() < loose ? 'loosened' : 'assumed',
      place: ['front', 'rear', 'under', ''][i % 4] ?? '',
    });
    const other = made[Math.floor(rnd() * made.length)];
    if (other) removal.needs(other);
    parts.push(removal.part(`part ${i}`, rnd() < 0.05 ? { renew: 'must' } : {}));
    removal.set(
      HOLES,
      {},
      { drive: 'hex external', driveTyped: drives[Math.floor(rnd() * drives.length)] ?? '' },
    );
    made.push(removal);
  }
  for (let i = 0; i < 40; i += 1) {
    const part = parts[Math.floor(rnd() * parts.length)] ?? '';
    if (i % 2 === 0) job.away(part, { due: job.at + (i % 9) * DAY });
    else job.want(part, 'ordered', { promisedAt: job.at + (i % 7) * DAY });
  }
  const back = planJob(job.state(), job.at).steps.slice(0, REMOVALS / 3);
  for (const step of back) if (step.kind === 'S') job.deed(step.thingId, 'done');
  return { state: job.state(), now: job.at, targets: parts.slice(0, 20) };
}

/** The least of so many runs from cold: a copy of the state is nothing that was weighed up before. */
function best(
  state: JobState,
  run: (state: JobState) => void,
  warm: ((state: JobState) => void) | null = null,
): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < ROUNDS; i += 1) {
    const copy = { ...state };
    warm?.(copy);
    const from = performance.now();
    run(copy);
    least = Math.min(least, performance.now() - from);
  }
  return least;
}

let broken = false;
for (const loose of [0.1, 0.9]) {
  const { state, now, targets } = bigJob(loose);
  const plan = best(state, (one) => planJob(one, now));
  process.stdout.write(
    `${REMOVALS} removals, ${REMOVALS * HOLES} holes, ${loose * 100} % loosened: planning ${plan.toFixed(1)} ms\n`,
  );
  const listed = planJob(state, now);
  const questions: Record<string, (state: JobState) => unknown> = {
    'ahead, by date, one more item': (one) => outlookOf(one, now),
    'a day three days on': (one) => dayAheadOf(one, now, now + 3 * DAY),
    'reach, 20 targets': (one) => reachOf(one, targets, now),
    'suggestions for needs': (one) => suggestionsOf(one, now),
    'tools, and the list walked by them': (one) => walked(listed, toolPlan(one, now).order),
    'was it touched, 1 in 10': (one) => hitsIn(one, 'part 1', now),
    'lost, what to look at': (one) => openSearches(one),
    'time left': (one) => timeLeftOf(one, now),
  };
  for (const [name, ask] of Object.entries(questions)) {
    const cold = best(state, ask);
    const warm = best(state, ask, (one) => weighed(one, now));
    if (warm > PROMISE_MS) broken = true;
    process.stdout.write(
      `  ${name.padEnd(35)} ${warm.toFixed(1).padStart(6)} ms, ${(warm / plan).toFixed(3)} of planning; from cold ${cold.toFixed(0)} ms, ${(cold / plan).toFixed(2)}\n`,
    );
  }
}
if (broken) process.exitCode = 1;
