import { describe, expect, it } from 'vitest';
import { placeOfHit } from '../../../renderer/model/hit.ts';
import { command, good } from '../../support/client.ts';
import { seeded } from './seed.ts';

describe('where a hit of the search opens', () => {
  it('is the removal while things come off, and the step once something is back', async () => {
    const job = await seeded(['guard, 2 M6x16', 'end cover, 2 M8x25', 'drained gear oil 1 l']);
    const set = job.view().state.fset[1];
    const hit = { thingId: set?.id ?? null, removalId: set?.removalId ?? null };
    expect(placeOfHit(job.view(), hit)).toEqual({ screen: 'removal', removalId: set?.removalId });
    const cover = job.view().plan.steps.find((one) => one.removalId === set?.removalId);
    good(
      await job.client.tick.do({
        ...command(),
        jobId: job.jobId,
        thingIds: [set?.removalId ?? ''],
        what: 'done',
      }),
    );
    expect(placeOfHit(job.view(), hit)).toEqual({ screen: 'putback', stepId: cover?.id });
    expect(placeOfHit(job.view(), { ...hit, thingId: hit.removalId })).toMatchObject({ stepId: cover?.id });
    expect(placeOfHit(job.view(), { thingId: null, removalId: null })).toBeNull();
  });
});
