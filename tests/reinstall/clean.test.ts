import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planJob } from '../../core/reinstall/index.ts';
import type { JobBuilder } from '../support/build.ts';
import { runs } from '../support/runs.ts';
import { cleanJob } from './clean-jobs.ts';
import { tapes } from './random-jobs.ts';
import { alarms, WayBack } from './way-back.ts';

const RUNS = runs(600);
const quiet = (job: JobBuilder, event: string) =>
  expect(
    alarms(planJob(job.state(), job.at)).map((one) => `${one.severity} ${one.code}: ${one.sentence}`),
    event,
  ).toEqual([]);

describe('a job without a mistake', () => {
  test('has no stop and no warning after any event, in whatever order its free steps are done', () => {
    let steps = 0;
    fc.assert(
      fc.property(tapes(200), (tape) => {
        const { job } = cleanJob(tape, (half) => quiet(half, 'taking apart'));
        const way = new WayBack(job, (event) => quiet(job, event));
        way.everything(
          (of) => tape.pick(of),
          (step) => {
            steps += 1;
            expect(step.state).toBe('ready');
          },
        );
        const plan = way.plan();
        expect(plan.steps.filter((step) => step.kind !== 'K' && step.state !== 'done')).toEqual([]);
        expect([plan.depth.back, plan.depth.left]).toEqual([plan.depth.off, 0]);
        job.rows.job = { ...job.rows.job, phase: 'closed' };
        quiet(job, 'closed');
        expect(way.plan().gates.filter((gate) => !gate.open)).toEqual([]);
      }),
      RUNS,
    );
    expect(steps).toBeGreaterThan(3 * RUNS.numRuns);
  });
});
