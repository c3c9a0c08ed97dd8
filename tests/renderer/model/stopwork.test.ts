import { describe, expect, it } from 'vitest';
import { stopGroups } from '../../../renderer/model/stopwork.ts';
import { command, good } from '../../support/client.ts';
import { type Seeded, seeded } from './seed.ts';

const groups = (job: Seeded) =>
  Object.fromEntries(
    stopGroups(job.view()).map((one) => [one.group, one.rows.map((row) => `${row.name}: ${row.count}`)]),
  );

describe('what the next person must know', () => {
  it('is nothing where nothing is loose, open, inside, off or uncounted', async () => {
    const job = await seeded(['guard']);
    expect(stopGroups(job.view())).toEqual([]);
  });

  it('is what is loose: slackened ones, and those started by hand until they are tight', async () => {
    const job = await seeded(['slackened 2 M12 hex 19', 'end cover, 3 M8x25, bag 1']);
    const [bolts, plate] = ['out', 'slackened'].map((how) => {
      const set = job.view().state.fset.find((one) => one.how === how);
      return job.view().state.position.flatMap((hole) => (hole.setId === set?.id ? [hole.id] : []));
    });
    expect(groups(job)['loose']).toEqual([expect.stringMatching(/: 2$/)]);
    await job.tick('started', bolts?.slice(0, 1) ?? []);
    expect(groups(job)['loose']).toContain('End cover: 1');
    await job.tick('tightened', bolts?.slice(0, 1) ?? []);
    expect(groups(job)['loose']).toEqual([expect.stringMatching(/: 2$/)]);
    await job.tick('done', [job.removalId('end cover')]);
    await job.tick('tightened', plate ?? []);
    expect(groups(job)['loose']).toBeUndefined();
  });

  it('is no bag to be counted once the job is closed', async () => {
    const job = await seeded(['end cover, 2 M8x25, bag 1']);
    good(
      await job.client.piece.receive({
        ...command(),
        jobId: job.jobId,
        thingId: job.view().state.fset[0]?.id ?? '',
        qty: 1,
        stowId: job.view().state.stow[0]?.id ?? null,
      }),
    );
    await job.tick('done', [job.removalId('end cover')]);
    expect(groups(job)['uncounted']).toHaveLength(1);
    good(await job.client.jobs.close({ ...command(), jobId: job.jobId, phase: 'closed', recheckDue: null }));
    expect(stopGroups(job.view())).toEqual([]);
  });

  it('is what stands open, what is inside and what is off, each until it is closed, out and given back', async () => {
    const job = await seeded(['mains locked out', 'drained gear oil 1 l', 'end cover', '+rag in the port']);
    expect(groups(job)).toMatchObject({
      open: [expect.stringContaining('gear oil') as string],
      inside: ['rag in the port: 1'],
      energy: [expect.stringContaining('mains') as string],
    });
    const rag = job.view().state.temporary[0]?.id ?? '';
    await job.tick('taken out', [rag]);
    expect(groups(job)['inside']).toBeUndefined();
    await job.tick('put in', [rag]);
    expect(groups(job)['inside']).toEqual(['rag in the port: 1']);
    await job.tick('taken out', [rag]);
    await job.tick('done', [job.removalId('end cover')]);
    for (const step of job.view().plan.steps.filter((one) => one.kind === 'S' && one.state !== 'done'))
      await job.tick('done', [step.thingId]);
    const fluid = job.view().state.fluid[0]?.id ?? '';
    good(
      await job.client.tick.do({
        ...command(),
        jobId: job.jobId,
        thingIds: [fluid],
        what: 'filled',
        valueTyped: '1 l',
      }),
    );
    await job.tick('cold leak checked', [fluid]);
    expect(groups(job)['open']).toBeUndefined();
    await job.tick('given back', [job.view().state.isolation[0]?.id ?? '']);
    expect(groups(job)['energy']).toBeUndefined();
  });

  it('is each bag that was not counted since something went in', async () => {
    const job = await seeded(['end cover, 4 M8x25, bag 4']);
    expect(groups(job)['uncounted']).toEqual(['Bag 4: 4']);
    const bag = job.view().state.stow[0]?.id ?? '';
    good(await job.client.piece.count({ ...command(), jobId: job.jobId, stowId: bag, counted: 4 }));
    expect(groups(job)['uncounted']).toBeUndefined();
  });
});
