import { describe, expect, it } from 'vitest';
import { reachOf } from '../../../core/reinstall/index.ts';
import { costLines } from '../../../renderer/model/way-in.ts';
import { seeded } from './seed.ts';

describe('what it costs to reach something', () => {
  it('says how long only where there are times to tell it from', async () => {
    const job = await seeded(['guard, 4 M8x25', 'cover']);
    await job.tick('done', [job.removalId('cover')]);
    await job.tick('done', [job.removalId('guard')]);
    const reach = reachOf(job.view().state, [job.removalId('cover')]);
    const last = (minutesLow: number | null, minutesHigh: number | null) =>
      costLines(job.view(), { ...reach, minutesLow, minutesHigh }).at(-1);
    const unknown = 'How long it takes is not known: there are no times to tell it from yet.';
    expect(last(null, null)).toBe(unknown);
    expect(last(0, 0)).toBe(unknown);
    expect(last(0, 1)).toBe('Up to 1 minute to take off; putting back is not in it.');
    expect(last(2, 2)).toBe('About 2 minutes to take off; putting back is not in it.');
    expect(last(3, 7)).toBe('About 3 to 7 minutes to take off; putting back is not in it.');
  });
});
