import { describe, expect, it } from 'vitest';
import { command, good, refused } from '../support/client.ts';
import { codes, gearbox } from '../support/gearbox.ts';

describe('rounds of tightening in the record', () => {
  it('refuses a round that is none, a hole that is not in, and once around before full torque', async () => {
    const job = await gearbox(['cover, 2 M8x25, 25 Nm']);
    const [first, second] = job.state().position.map((hole) => hole.id);
    const base = { ...command(), jobId: job.jobId, holeIds: [first ?? ''] };
    expect(refused(await job.client.tick.round({ ...base, round: 'half' }))).toContain(
      'Expected a round such as snug',
    );
    expect(refused(await job.client.tick.round({ ...base, ...command(), round: '130 %' }))).toContain(
      'got “130 %”',
    );
    expect(refused(await job.client.tick.round({ ...base, ...command(), round: '30 %' }))).toBe(
      'Hole 1 is not started by hand yet.',
    );
    expect(refused(await job.client.tick.round({ ...base, ...command(), round: 'once around' }))).toContain(
      'not tight yet',
    );
    good(await job.client.tick.round({ ...base, ...command(), round: 'snug' }));
    good(await job.client.tick.round({ ...base, ...command(), round: '30 %' }));
    // The same again is no second deed.
    expect(refused(await job.client.tick.round({ ...base, ...command(), round: '30 %' }))).toContain(
      'it is so already',
    );
    const deeds = job.state().deed.filter((deed) => deed.thingId === first);
    expect(deeds.map((deed) => [deed.what, deed.valueTyped, deed.value])).toEqual([
      ['started', '', null],
      ['started', '30 %', 7.5],
    ]);
    expect(job.state().deed.some((deed) => deed.thingId === second)).toBe(false);
  });

  it('keeps what was read on the wrench through once around, and a share is never taken for a torque reached', async () => {
    const job = await gearbox(['cover, 1 M8x25, 25 Nm']);
    const holeIds = job.state().position.map((hole) => hole.id);
    const round = (name: string) =>
      job.client.tick.round({ ...command(), jobId: job.jobId, holeIds, round: name });
    good(await round('snug'));
    good(await round('70 %'));
    const hole = () => job.plan().steps[0]?.fasteners[0]?.holes[0];
    expect(hole()).toMatchObject({ mark: 'started', round: '70 %', reachedNm: null });
    expect(codes(job.plan())).not.toContain('torque.off');
    good(
      await job.client.tick.do({
        ...command(),
        jobId: job.jobId,
        thingIds: holeIds,
        what: 'tightened',
        valueTyped: '24 N·m',
        known: 'read',
      }),
    );
    good(await round('once around'));
    expect(hole()).toMatchObject({ mark: 'tightened', round: 'once around', reachedNm: 24 });
    // Tight already: a share lies behind it.
    expect(refused(await round('30 %'))).toContain('it is so already');
  });
});
