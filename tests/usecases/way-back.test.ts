import { describe, expect, it } from 'vitest';
import { countOfSet, openSearches } from '../../core/tally/index.ts';
import type { Workshop } from '../../core/store/workshop.ts';
import { command, good, holes, named, refused, stateOf, type TestClient } from '../support/client.ts';
import { codes, gearbox } from '../support/gearbox.ts';

async function receive(
  client: TestClient,
  workshop: Workshop,
  jobId: string,
  name: string,
  qty = 1,
): Promise<void> {
  const part = named(stateOf(workshop, jobId).part, name);
  good(await client.piece.receive({ ...command(), jobId, thingId: part.id, qty, stowId: null }));
}

describe('putting back', () => {
  it('a hole left empty under a cover stops the cover’s guard, by name of the hole', async () => {
    const job = await gearbox(['guard, 2 M6x12', '8 M8x25 hex 13', '+ cover']);
    const [, cover] = [...job.state().removal].sort((a, b) => (a.ord < b.ord ? -1 : 1));
    const set = job.state().fset.find((one) => one.removalId === cover?.id);
    const all = holes(job.workshop, job.jobId, set?.id ?? '');
    good(
      await job.client.tick.do({
        ...job.base(),
        thingIds: all.slice(0, 7).map((hole) => hole.id),
        what: 'tightened',
      }),
    );
    good(
      await job.client.tick.do({
        ...job.base(),
        thingIds: [named(job.state().part, 'cover').id],
        what: 'fitted',
      }),
    );
    const guard = named(job.state().removal, 'Guard');
    const first = job.plan().steps.find((step) => step.thingId === guard.id);
    expect(first?.state).toBe('behind');
    good(
      await job.client.tick.do({
        ...job.base(),
        thingIds: [named(job.state().part, 'guard').id],
        what: 'fitted',
      }),
    );
    const plan = job.plan();
    expect(
      plan.findings.find((one) => one.code === 'fastener.short' && one.severity === 'stop')?.sentence,
    ).toMatch(/hole 8 of 8 is empty/);
    const said = refused(await job.client.tick.do({ ...job.base(), thingIds: [guard.id], what: 'done' }));
    expect(said).toContain('hole 8 of 8 is empty');
  });

  it('a gate is passed with one reason for each point, and opens again when the facts change', async () => {
    const job = await gearbox(['guard, 2 M6x12', 'cover, 2 M8x25', '2 rags in the port']);
    const cover = named(job.state().removal, 'Cover');
    good(await job.client.tick.do({ ...job.base(), thingIds: [cover.id], what: 'done' }));
    const guard = named(job.state().removal, 'Guard');
    const stop = job.plan().findings.find((one) => one.code === 'temporary.in-place');
    expect(stop).toMatchObject({ severity: 'stop', sentence: expect.stringContaining('rag') });
    refused(await job.client.tick.do({ ...job.base(), thingIds: [guard.id], what: 'done' }));
    good(
      await job.client.tick.do({
        ...job.base(),
        thingIds: [guard.id],
        what: 'done',
        accept: [{ finding: stop?.key ?? '', why: 'both rags lie on the bench' }],
      }),
    );
    expect(codes(job.plan())).toEqual([]);
    expect(job.plan().findings.find((one) => one.key === stop?.key)?.accepted?.why).toBe(
      'both rags lie on the bench',
    );
    const rag = job.state().temporary[0];
    good(
      await job.client.tick.do({
        ...job.base(),
        thingIds: [rag?.id ?? ''],
        what: 'taken out',
        valueTyped: '1',
      }),
    );
    expect(codes(job.plan())).toEqual(['item.unaccounted']);
  });

  it('came off again is a second round: seals must be new once more, the first tightening stays in the record', async () => {
    const job = await gearbox(['guard, 2 M6x12', 'cover, gasket, 2 M8x25']);
    await receive(job.client, job.workshop, job.jobId, 'gasket');
    const cover = named(job.state().removal, 'Cover');
    good(await job.client.tick.do({ ...job.base(), thingIds: [cover.id], what: 'done' }));
    good(await job.client.tick.again({ ...job.base(), thingId: cover.id, why: 'it leaked' }));
    const step = () => job.plan().steps.find((one) => one.thingId === cover.id);
    expect(step()).toMatchObject({ round: 2, state: 'waiting' });
    expect(step()?.why).toContain('must be new');
    const deeds = job.state().deed.filter((deed) => deed.what === 'tightened');
    expect(deeds).toHaveLength(2);
    await receive(job.client, job.workshop, job.jobId, 'gasket');
    good(await job.client.tick.do({ ...job.base(), thingIds: [cover.id], what: 'done' }));
    expect(step()?.state).toBe('done');
    expect(codes(job.plan())).toEqual([]);
  });

  it('came off again is refused while a step that is back covers it', async () => {
    const job = await gearbox(['guard, 2 M6x12', 'cover, 2 M8x25']);
    for (const title of ['Cover', 'Guard'])
      good(
        await job.client.tick.do({
          ...job.base(),
          thingIds: [named(job.state().removal, title).id],
          what: 'done',
        }),
      );
    expect(
      refused(
        await job.client.tick.again({
          ...job.base(),
          thingId: named(job.state().removal, 'Cover').id,
          why: '',
        }),
      ),
    ).toContain('First take off Guard');
  });

  it('a seal that went back old is found at once, and passed only with a reason', async () => {
    const job = await gearbox(['guard, 2 M6x12', 'cover, gasket, 2 M8x25']);
    const cover = named(job.state().removal, 'Cover');
    good(await job.client.tick.do({ ...job.base(), thingIds: [cover.id], what: 'done', fresh: false }));
    expect(codes(job.plan())).toEqual(['renew.not-in-hand']);
    refused(
      await job.client.tick.do({
        ...job.base(),
        thingIds: [named(job.state().removal, 'Guard').id],
        what: 'done',
      }),
    );
  });

  it('a bag counted short opens a search that buying does not end; found ends it', async () => {
    const job = await gearbox(['cover, 8 M8x25, bag 4']);
    const set = job.state().fset[0];
    const stowId = set?.stowId ?? '';
    const counted = good(await job.client.piece.count({ ...job.base(), stowId, counted: 7 }));
    expect(counted.said).toContain('Look for the difference before you buy');
    expect(countOfSet(job.state(), set?.id ?? '')[0]).toMatchObject({ unknown: 1, short: 1 });
    good(await job.client.piece.receive({ ...job.base(), thingId: set?.id ?? '', qty: 1, stowId: null }));
    expect(countOfSet(job.state(), set?.id ?? '')[0]).toMatchObject({ short: 0 });
    expect(openSearches(job.state())).toHaveLength(1);
    good(
      await job.client.piece.found({
        ...job.base(),
        countingId: counted.countingId,
        where: 'under the vice',
      }),
    );
    expect(openSearches(job.state())).toHaveLength(0);
    expect(countOfSet(job.state(), set?.id ?? '')[0]).toMatchObject({ unknown: 0, inBag: 9 });
  });
});
