import { describe, expect, it } from 'vitest';
import { aheadData } from '../../../renderer/model/putback.ts';
import { lookedAt } from '../../../renderer/model/looked-at.ts';
import { command, good } from '../../support/client.ts';
import { seeded } from './seed.ts';

describe('the check before closing', () => {
  it('says with numbers what it looked at, and what the job has none of', async () => {
    const job = await seeded([
      'mains locked out',
      'drained gear oil 1 l',
      'end cover, 4 M8x25, 25 Nm, bag 4',
      '+rag in the port',
      'guard, 2 M6x16',
    ]);
    expect(lookedAt(job.view())).toEqual([
      '0 of 6 fasteners in and tight.',
      '0 of 4 of them with a torque, ticked as reached.',
      '0 of 2 parts back on.',
      '0 of 1 fluid filled and checked for leaks.',
      '0 of 1 isolation given back: power, pressure and the like.',
      '0 of 1 rag, cap or strap taken out again.',
      'No piece is looked for.',
    ]);
    expect(aheadData(job.view(), 0).lookedAt).toEqual([]);
    await job.tick('taken out', [job.view().state.temporary[0]?.id ?? '']);
    await job.tick('done', [job.removalId('guard')]);
    await job.tick('done', [job.removalId('end cover')]);
    expect(lookedAt(job.view())).toEqual([
      '6 fasteners in and tight.',
      '4 of them with a torque, ticked as reached.',
      '2 parts back on.',
      '0 of 1 fluid filled and checked for leaks.',
      '0 of 1 isolation given back: power, pressure and the like.',
      '1 rag, cap or strap taken out again.',
      'No piece is looked for.',
    ]);
  });

  it('stands beside the end of the job, also where nothing holds it, and a piece looked for is said', async () => {
    const job = await seeded(['guard, 2 M6x16, bag 1']);
    const stowId = job.view().state.stow[0]?.id ?? '';
    good(await job.client.piece.count({ ...command(), jobId: job.jobId, stowId, counted: 1 }));
    expect(lookedAt(job.view())).toContain('1 still looked for.');
    const free = await seeded(['guard, 2 M6x16']);
    await free.tick('done', [free.removalId('guard')]);
    expect(aheadData(free.view(), 0)).toMatchObject({
      close: 'open',
      lookedAt: [
        'Nothing holds the check before closing.',
        '2 fasteners in and tight.',
        '1 part back on.',
        'No piece is looked for.',
        'None in this job: torques, fluids, isolations, rags, caps and straps.',
      ],
    });
  });
});
