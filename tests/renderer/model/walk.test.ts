import { describe, expect, it } from 'vitest';
import { jointOf } from '../../../renderer/model/joint.ts';
import { markables } from '../../../renderer/model/marks.ts';
import { stepAt } from '../../../renderer/model/putback.ts';
import { command, good } from '../../support/client.ts';
import { type Seeded, seeded } from './seed.ts';

/** The joint of the step at hand, without a photo. */
function jointAt(job: Seeded) {
  const view = job.view();
  const step = stepAt(view, null);
  if (!step) throw new Error('Expected a step at hand.');
  return jointOf(view, step, { photoId: null, markers: [], things: markables(view), allShown: '' });
}

describe('a joint walked in rounds', () => {
  async function joint(count: number, line: string, values: Record<string, unknown>) {
    const job = await seeded([line]);
    const set = job.view().state.fset[0];
    if (!set) throw new Error('Expected a set.');
    good(
      await job.client.record.change({ ...command(), jobId: job.jobId, table: 'fset', id: set.id, values }),
    );
    const at = () => {
      const { nextId, nextRound, rounds } = jointAt(job);
      const n = job.view().state.position.find((hole) => hole.id === nextId)?.n ?? null;
      return { nextId, n, nextRound, now: rounds.findIndex((round) => round.state === 'now') };
    };
    const step = async () => {
      const { nextId, nextRound } = at();
      good(
        await job.client.tick.round({
          ...command(),
          jobId: job.jobId,
          holeIds: [nextId ?? ''],
          round: nextRound,
        }),
      );
    };
    expect(job.view().state.position).toHaveLength(count);
    return { job, at, step };
  }

  it('lights each hole once in every round, by the maker’s numbers where they are given, to the end', async () => {
    const { job, at, step } = await joint(4, 'end cover, 4 M8x25, 25 Nm', { orderKind: 'maker' });
    const walked: string[] = [];
    while (at().nextId !== null && walked.length < 40) {
      walked.push(`${at().nextRound} ${at().n}`);
      await step();
    }
    expect(walked).toEqual(
      ['snug', '30 %', '70 %', '100 %', 'once around'].flatMap((round) =>
        [1, 2, 3, 4].map((n) => `${round} ${n}`),
      ),
    );
    expect(job.view().state.position.map((hole) => hole.id)).toHaveLength(4);
    expect(job.view().plan.steps[0]?.fasteners[0]?.holes.map((hole) => hole.mark)).toEqual(
      Array(4).fill('tightened'),
    );
    const pulls = job.view().state.deed.filter((deed) => deed.valueTyped === '70 %');
    expect(pulls.map((deed) => [deed.what, deed.value])).toEqual(Array(4).fill(['started', 17.5]));
  });

  it('stands in the record: undo takes back one hole, and coming off again begins anew', async () => {
    const { job, at, step } = await joint(3, 'end cover, 3 M8x25, 25 Nm', { orderKind: 'as numbered' });
    for (let i = 0; i < 5; i += 1) await step();
    expect(at()).toMatchObject({ n: 3, nextRound: '30 %', now: 1 });
    good(await job.client.history.undo({ ...command(), jobId: job.jobId }));
    expect(at()).toMatchObject({ n: 2, nextRound: '30 %' });
    good(await job.client.history.redo({ ...command(), jobId: job.jobId }));
    expect(at().n).toBe(3);
    good(
      await job.client.tick.again({
        ...command(),
        jobId: job.jobId,
        thingId: job.removalId('end cover'),
        why: 'it leaked',
      }),
    );
    expect(at()).toMatchObject({ n: 1, nextRound: 'snug', now: 0 });
  });

  it('walks the maker’s own stages, and no round at full torque after an angle', async () => {
    const { at, step } = await joint(2, 'end cover, 2 M10x80', {
      orderKind: 'maker',
      torqueMnm: 40_000,
      torqueTyped: '20 Nm + 40 Nm + 90°',
      angleDeg: 90,
    });
    const walked: string[] = [];
    while (at().nextId !== null && walked.length < 20) {
      walked.push(`${at().nextRound} ${at().n}`);
      await step();
    }
    expect(walked).toEqual(
      ['snug', 'stage 1', 'stage 2', 'stage 3'].flatMap((round) => [1, 2].map((n) => `${round} ${n}`)),
    );
  });

  it('is over once its step is done: nothing is asked and no round is at hand', async () => {
    const { job } = await joint(4, 'end cover, 4 M8x25, 25 Nm', { orderKind: 'maker' });
    await job.tick('done', [job.removalId('end cover')]);
    const view = job.view();
    const [step] = view.plan.steps;
    if (!step) throw new Error('Expected a step.');
    const over = jointOf(view, step, { photoId: null, markers: [], things: markables(view), allShown: '' });
    expect(step.state).toBe('done');
    expect(over.question).toBe(false);
    expect(over.rounds.filter((round) => round.state === 'now')).toEqual([]);
  });
});
