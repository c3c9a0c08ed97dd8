import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planJob } from '../../core/reinstall/index.ts';
import type { JobState } from '../../core/model/tables.ts';
import { build } from '../support/build.ts';
import { runs } from '../support/runs.ts';
import { shuffled } from '../support/shuffled.ts';
import { randomJob, tapes } from './random-jobs.ts';

/** What a plan says, as far as its order means something. */
function said(state: JobState, now: number) {
  const plan = planJob(state, now);
  return {
    steps: plan.steps.map(({ id, state: how, round, number }) => [id, how, round, number]),
    edges: plan.edges
      .map(({ from, to, rule, assumed, covers }) => [from, to, rule, assumed, covers].join(' '))
      .sort(),
    findings: plan.findings.map(({ key, severity, stepId, latestStep }) => [
      key,
      severity,
      stepId,
      latestStep,
    ]),
    ahead: [...plan.ahead].sort(),
    depth: plan.depth,
  };
}

describe('the order in which rows happen to be stored', () => {
  test('changes neither the list nor its order, states or findings', () => {
    fc.assert(
      fc.property(tapes(), fc.integer({ min: 1, max: 1_000_000 }), (tape, seed) => {
        const { job } = randomJob(tape);
        for (const step of planJob(job.state(), job.at).steps)
          if (tape.once(3)) {
            job.deed(step.thingId, tape.of(['done', 'given back', 'filled', 'tightened'] as const));
            if (tape.once(3)) job.deed(step.thingId, 'came off again');
          }
        const state = job.state();
        expect(said(shuffled(state, seed), job.at)).toEqual(said(state, job.at));
      }),
      runs(150),
    );
  });

  test('what was written down at the same moment stands in the order of its writing, and a round before the time', () => {
    const job = build();
    const step = job.removal('Cover');
    const hole = step.set(1).holes[0] ?? '';
    job.deed(hole, 'tightened');
    job.deed(hole, 'came off again', { at: job.at });
    const state = () => planJob(job.state(), job.at).steps[0];
    expect(state()).toMatchObject({ state: 'ready', round: 1 });
    expect(state()?.fasteners[0]?.holes[0]?.mark).toBe('out');
    job.deed(hole, 'started', { round: 1, at: job.at + 5 });
    expect(state()?.fasteners[0]?.holes[0]?.mark, 'a deed of the first round, written down late').toBe('out');
    job.deed(hole, 'started');
    expect(state()?.fasteners[0]?.holes[0]?.mark).toBe('started');
  });

  test('holes stand in the order of their numbers, sets and actions in the order of their keys', () => {
    const job = build();
    const step = job.removal('Cover');
    step.set(1, { name: 'second', ord: 'b' });
    const first = step.set(3, { name: 'first', ord: 'a' });
    job.set('position', first.holes[0] ?? '', { n: 9 });
    job.add('action', job.id('action'), { removalId: step.id, ord: 'z', what: 'Last' });
    job.add('action', job.id('action'), { removalId: step.id, ord: 'a', what: 'First' });
    const one = planJob(job.state(), job.at).steps[0];
    expect(one?.fasteners.map((set) => [set.name, set.holes.map((hole) => hole.n)])).toEqual([
      ['first', [2, 3, 9]],
      ['second', [1]],
    ]);
    expect(
      one?.actions.filter((action) => action.code === 'as logged').map((action) => action.sentence),
    ).toEqual(['Undo: Last.', 'Undo: First.']);
  });
});
