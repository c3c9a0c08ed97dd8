import { describe, expect, it } from 'vitest';
import { countOfSet } from '../../core/tally/index.ts';
import { good, named, refused } from '../support/client.ts';
import { codes, gearbox } from '../support/gearbox.ts';

describe('what a job knows of itself', () => {
  it('a snapped bolt blocks its hole until a repair is written down', async () => {
    const job = await gearbox(['cover, 8 M8x25, hole 3 snapped']);
    expect(codes(job.plan())).toEqual(['hole.blocked']);
    const hole = job.state().position.find((one) => one.n === 3);
    expect(hole).toMatchObject({ fate: 'blocked', condition: 'snapped' });
    expect(
      refused(await job.client.tick.do({ ...job.base(), thingIds: [hole?.id ?? ''], what: 'tightened' })),
    ).toContain('blocked');
    good(
      await job.client.tick.do({
        ...job.base(),
        thingIds: [hole?.id ?? ''],
        what: 'repaired',
        why: 'thread insert',
      }),
    );
    expect(codes(job.plan())).toEqual([]);
    expect(job.plan().steps[0]?.state).toBe('waiting');
    good(
      await job.client.piece.receive({
        ...job.base(),
        thingId: job.state().fset[0]?.id ?? '',
        qty: 1,
        stowId: null,
      }),
    );
    expect(job.plan().steps[0]?.state).toBe('ready');
  });

  it('a slackened set is loose on the machine: never in hand, never short, tightened on the way back', async () => {
    const job = await gearbox(['slackened 4 M12 hex 19']);
    const set = job.state().fset[0];
    expect(countOfSet(job.state(), set?.id ?? '')[0]).toMatchObject({ slackened: 4, inBag: 0, short: 0 });
    good(await job.client.tick.do({ ...job.base(), thingIds: [set?.id ?? ''], what: 'tightened' }));
    expect(job.plan().depth).toMatchObject({ back: 1, left: 0 });
  });

  it('a torque in the wrong unit is found by its size and the right unit is named', async () => {
    const job = await gearbox(['cover, 4 M6x20 hex 10, class 8.8, 10 Nm']);
    const set = job.state().fset[0];
    good(
      await job.client.tick.do({
        ...job.base(),
        thingIds: [set?.id ?? ''],
        what: 'tightened',
        valueTyped: '90 Nm',
        known: 'read',
      }),
    );
    const found = job.plan().findings.filter((one) => one.code.startsWith('torque.'));
    expect(found.map((one) => one.code)).toContain('torque.off');
    expect(found.map((one) => one.sentence).join(' ')).toContain('lbf·in');
  });

  it('too little fluid is found before the next gate, and topping up clears it', async () => {
    const job = await gearbox(['drained gear oil 2,5 l', 'cover, 2 M8x25']);
    const oil = job.state().fluid[0]?.id ?? '';
    // What came off because the system was empty is on again before it is filled.
    expect(job.plan().steps.map((step) => step.kind)).toEqual(['S', 'S', 'C1']);
    const cover = named(job.state().removal, 'Cover').id;
    good(await job.client.tick.do({ ...job.base(), thingIds: [cover], what: 'done' }));
    good(await job.client.tick.do({ ...job.base(), thingIds: [oil], what: 'filled', valueTyped: '1,5 l' }));
    expect(codes(job.plan())).toContain('fluid.amount');
    good(await job.client.tick.do({ ...job.base(), thingIds: [oil], what: 'filled', valueTyped: '1 l' }));
    expect(codes(job.plan())).not.toContain('fluid.amount');
  });

  it('what is away waits, and goes on when it is back', async () => {
    const job = await gearbox(['pulley']);
    const pulley = named(job.state().part, 'pulley');
    const sent = good(
      await job.client.away.send({
        ...job.base(),
        thingId: pulley.id,
        toWhom: 'machinist',
        due: null,
        note: 're-bore',
      }),
    );
    expect(job.plan().steps[0]).toMatchObject({ state: 'waiting', why: 'pulley is away, with machinist.' });
    expect(
      refused(await job.client.tick.do({ ...job.base(), thingIds: [pulley.id], what: 'fitted' })),
    ).toContain('it is away, with machinist');
    good(await job.client.away.back({ ...job.base(), awayId: sent.id }));
    expect(job.plan().steps[0]?.state).toBe('ready');
  });

  it('a job is closed only when every step is done and nothing stops it', async () => {
    const job = await gearbox(['cover, 2 M8x25']);
    expect(
      refused(await job.client.jobs.close({ ...job.base(), phase: 'closed', recheckDue: null })),
    ).toContain('Expected every step to be done');
    good(
      await job.client.tick.do({
        ...job.base(),
        thingIds: [named(job.state().removal, 'Cover').id],
        what: 'done',
      }),
    );
    good(await job.client.jobs.close({ ...job.base(), phase: 'closed', recheckDue: null }));
    expect(job.state().job.phase).toBe('closed');
  });

  it('a need that would turn round in a new order is said, and loosened only when asked to', async () => {
    const job = await gearbox(['guard', 'cover']);
    const [guard, cover] = ['Guard', 'Cover'].map((title) => named(job.state().removal, title).id);
    good(
      await job.client.record.make({
        ...job.base(),
        table: 'need',
        values: { removalId: cover, needsId: guard, why: 'the guard is in the way' },
      }),
    );
    expect(
      refused(
        await job.client.removal.reorder({
          ...job.base(),
          removalId: guard ?? '',
          afterId: cover ?? '',
          loosen: false,
        }),
      ),
    ).toContain('Cover needs Guard');
    expect(
      good(
        await job.client.removal.reorder({
          ...job.base(),
          removalId: guard ?? '',
          afterId: cover ?? '',
          loosen: true,
        }),
      ).said,
    ).toContain('Loosened');
    expect(job.state().need).toEqual([]);
  });

  it('an order of one’s own that closes a ring is refused with the ring', async () => {
    const job = await gearbox(['guard', 'cover']);
    const [guard, cover] = ['Guard', 'Cover'].map((title) => named(job.state().removal, title).id);
    const said = refused(
      await job.client.record.make({
        ...job.base(),
        table: 'backOrder',
        values: { beforeId: guard, afterId: cover },
      }),
    );
    expect(said).toContain('would close a ring');
    expect(said).toContain('may be loosened');
  });

  it('a washer that is noted after its bolts are off comes out of the same holes, and goes again with its row', async () => {
    const job = await gearbox(['cover, 4 M8x20 bolts hex 13']);
    const setId = job.state().fset[0]?.id ?? '';
    const make = async (table: 'spec' | 'stackItem', values: Record<string, unknown>) =>
      good(await job.client.record.make({ ...job.base(), table, values })).id;
    const specId = await make('spec', { kind: 'washer' });
    const id = await make('stackItem', { setId, what: 'washer', specId, qty: 2 });
    const washers = () => countOfSet(job.state(), setId).find((line) => line.specId === specId);
    expect(washers()).toMatchObject({ out: 8, inBag: 8, toFill: 8, short: 0 });
    good(await job.client.record.remove({ ...job.base(), table: 'stackItem', id }));
    expect(washers()?.out ?? 0).toBe(0);
    // Once a hole is filled again, nobody knows what went in with its bolt.
    good(await job.client.tick.do({ ...job.base(), thingIds: [setId], what: 'tightened' }));
    const late = await job.client.record.make({
      ...job.base(),
      table: 'stackItem',
      values: { setId, what: 'washer', specId },
    });
    expect(refused(late)).toContain('worked on');
  });

  it('pieces that come in answer every note that was made of them', async () => {
    const job = await gearbox(['cover, 4 M8x20 bolts hex 13']);
    const thingId = job.state().fset[0]?.id ?? '';
    const note = async (what: string) => {
      const values = { thingId, what, qty: 1, state: 'ordered' };
      return good(await job.client.record.make({ ...job.base(), table: 'want', values })).id;
    };
    const wantIds = [await note('bolt, hole 1'), await note('bolt, hole 2')];
    good(await job.client.piece.receive({ ...job.base(), thingId, qty: 2, stowId: null, wantIds }));
    expect(job.state().want.map((want) => want.state)).toEqual(['here', 'here']);
    const strange = { ...job.base(), thingId, qty: 1, stowId: null, wantIds: [thingId] };
    expect(refused(await job.client.piece.receive(strange))).toContain('list to get');
  });
});
