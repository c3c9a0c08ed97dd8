import { describe, expect, it } from 'vitest';
import { beginLists, keptFields, onlyMadeSafe } from '../../../renderer/model/begin.ts';
import { clientOf, command, good } from '../../support/client.ts';
import { seeded } from './seed.ts';

describe('before you start', () => {
  it('shows the owner by name, and nothing where nobody is named', async () => {
    const job = await seeded(['guard']);
    expect(keptFields(job.view()).owner).toBe('');
    const { id } = good(
      await clientOf(job.workshop).workshop.put({
        ...command(),
        table: 'person',
        values: { name: 'Ana Ruiz', role: 'owns' },
      }),
    );
    good(await job.client.jobs.change({ ...command(), jobId: job.jobId, values: { ownerId: id } }));
    expect(keptFields(job.view()).owner).toBe('Ana Ruiz');
  });

  it('lists what was made safe with its energy, and says what is given back', async () => {
    const job = await seeded(['mains locked out', 'guard']);
    expect(beginLists(job.view()).safe).toMatchObject([{ text: 'mains locked out', about: 'electricity' }]);
    await job.tick('done', [job.removalId('guard')]);
    await job.tick('given back', [job.view().state.isolation[0]?.id ?? '']);
    expect(beginLists(job.view()).safe[0]?.about).toBe('electricity, given back');
  });

  it('strikes a removal out with the one thing that it made safe, and never one on which more hangs', async () => {
    const alone = await seeded(['mains locked out']);
    const id = alone.view().state.isolation[0]?.id ?? '';
    const removalId = onlyMadeSafe(alone.view(), id);
    expect(removalId).toBe(alone.view().state.removal[0]?.id);
    good(
      await alone.client.removal.void({
        ...command(),
        jobId: alone.jobId,
        removalId: removalId ?? '',
        phase: 'void',
        why: 'typed by mistake',
      }),
    );
    expect(beginLists(alone.view()).safe).toEqual([]);
    const more = await seeded(['mains locked out', '+2 M6x12']);
    expect(onlyMadeSafe(more.view(), more.view().state.isolation[0]?.id ?? '')).toBeNull();
  });
});
