import { describe, expect, it } from 'vitest';
import { toGet } from '../../core/tally/index.ts';
import { command, good, named, refused } from '../support/client.ts';
import { codes, gearbox } from '../support/gearbox.ts';

type Box = Awaited<ReturnType<typeof gearbox>>;

const holesOfStep = (job: Box, title: string) =>
  (job.plan().steps.find((step) => step.title === title && step.kind === 'S')?.fasteners ?? []).flatMap(
    (set) => set.holes.map((hole) => `${hole.n} ${hole.mark}`),
  );

/** Everything of a removal that this deed is for, as the large key sends it. */
async function all(job: Box, title: string, what: 'started' | 'tightened' | 'done') {
  const { id } = named(job.state().removal, title);
  return job.client.tick.do({ ...job.base(), thingIds: [id], what });
}

describe('a tick of many says no more than is so', () => {
  it('leaves the hole of a damaged fastener open until a new one is here, and takes that one for it', async () => {
    const job = await gearbox(['lid, 4 M8x25, hole 2 stripped']);
    expect(good(await all(job, 'Lid', 'started')).said).toContain(
      'Hole 2: stripped, and no new one is in hand',
    );
    expect(holesOfStep(job, 'Lid')).toEqual(['1 started', '2 out', '3 started', '4 started']);
    expect(codes(job.plan(), 'warn')).toContain('fastener.damaged');
    expect(refused(await all(job, 'Lid', 'started'))).toContain('no new one is in hand');
    const set = job.state().fset[0]?.id ?? '';
    good(await job.client.piece.receive({ ...job.base(), thingId: set, qty: 1, stowId: null }));
    good(await all(job, 'Lid', 'started'));
    const hole = job.state().position.find((one) => one.n === 2)?.id;
    expect(job.state().deed.filter((deed) => deed.thingId === hole)).toMatchObject([{ fresh: true }]);
    expect(job.plan().findings.filter((one) => one.severity === 'stop')).toEqual([]);
  });

  it('the same where nobody said which hole it was', async () => {
    const job = await gearbox(['lid, 4 M8x25, one stripped']);
    good(await all(job, 'Lid', 'tightened'));
    expect(holesOfStep(job, 'Lid').filter((one) => one.endsWith('out'))).toHaveLength(1);
  });

  it('an old damaged one goes back only when its own hole is ticked, and is found there', async () => {
    const job = await gearbox(['lid, 4 M8x25, hole 2 stripped']);
    const hole = job.state().position.find((one) => one.n === 2)?.id ?? '';
    good(await job.client.tick.do({ ...job.base(), thingIds: [hole], what: 'tightened' }));
    expect(
      job
        .plan()
        .findings.filter((one) => one.severity === 'stop')
        .map((one) => one.subjects),
    ).toEqual([[hole]]);
  });

  it('does not tick a hole that waits for another part', async () => {
    const job = await gearbox(['bracket', 'cover, 4 M8x25']);
    const hole = job.state().position.find((one) => one.n === 3)?.id ?? '';
    good(
      await job.client.record.make({
        ...job.base(),
        table: 'holds',
        values: { positionId: hole, partId: named(job.state().part, 'bracket').id },
      }),
    );
    good(await all(job, 'Cover', 'done'));
    expect(job.state().deed.some((deed) => deed.thingId === hole)).toBe(false);
    expect(job.plan().steps.map((step) => [step.kind, step.state])).toEqual([
      ['S', 'done'],
      ['S', 'ready'],
      ['F', 'behind'],
    ]);
    good(await all(job, 'Bracket', 'done'));
    good(await job.client.tick.do({ ...job.base(), thingIds: [hole], what: 'tightened' }));
    expect(job.plan().steps.every((step) => step.state === 'done')).toBe(true);
  });

  it('whoever says that all is done has put the sealant on: what waits for its cure waits from then', async () => {
    const job = await gearbox(['drained gear oil 1 l', 'cover, 2 M8x25']);
    const cover = named(job.state().part, 'cover').id;
    const values = {
      thingId: cover,
      kind: 'sealant',
      name: 'grey sealant',
      cureMinutes: 120,
      cureBefore: 'fill',
    };
    good(await job.client.record.make({ ...job.base(), table: 'consumable', values }));
    good(await all(job, 'Gear oil', 'done'));
    good(await all(job, 'Cover', 'done'));
    expect(job.state().consumable[0]?.putAt).toBe(job.state().deed.at(-1)?.at);
    const fill = job.plan().steps.find((step) => step.kind === 'C1');
    expect(fill).toMatchObject({ state: 'waiting', why: expect.stringContaining('still curing') });
  });

  it('a step that came about piece by piece, its sealant never ticked, holds the filling', async () => {
    const job = await gearbox(['drained gear oil 1 l', 'cover, 2 M8x25']);
    const cover = named(job.state().part, 'cover').id;
    const values = {
      thingId: cover,
      kind: 'sealant',
      name: 'grey sealant',
      cureMinutes: 120,
      cureBefore: 'fill',
    };
    good(await job.client.record.make({ ...job.base(), table: 'consumable', values }));
    good(await all(job, 'Gear oil', 'done'));
    good(await job.client.tick.do({ ...job.base(), thingIds: [cover], what: 'fitted' }));
    good(await all(job, 'Cover', 'tightened'));
    const fill = () => job.plan().steps.find((step) => step.kind === 'C1');
    expect(fill()?.why).toContain('nobody wrote down when it was put on');
    const sealant = job.state().consumable[0]?.id ?? '';
    good(await job.client.tick.do({ ...job.base(), thingIds: [sealant], what: 'put on' }));
    expect(fill()?.why).toContain('still curing');
  });

  it('a hole found empty is said until somebody decides; to be filled means one to get', async () => {
    const job = await gearbox(['cover, 4 M8x25, hole 4 missing as found']);
    const hole = job.state().position.find((one) => one.found === 'empty');
    expect(hole?.n).toBe(4);
    const change = async (values: Record<string, unknown>) =>
      good(
        await job.client.record.change({
          ...command(),
          jobId: job.jobId,
          table: 'position',
          id: hole?.id ?? '',
          values,
        }),
      );
    const found = () => job.plan().findings.find((one) => one.code === 'hole.empty');
    expect(found()).toMatchObject({ severity: 'warn', subjects: [hole?.id] });
    await change({ fate: 'fill', fateWhy: 'was empty as found' });
    expect(found()).toBeUndefined();
    expect(toGet(job.state()).map((one) => one.needed)).toEqual([1]);
    expect(job.plan().steps[0]?.state).toBe('waiting');
    await change({ fate: 'fill', fateWhy: '' });
    good(await all(job, 'Cover', 'done'));
    expect(found()?.sentence).toContain('hole 4 was empty as found');
    await change({ fate: 'leave out', fateWhy: 'so by the maker' });
    expect(found()).toBeUndefined();
  });

  it('what is void came off nowhere, the count of pieces too', async () => {
    const job = await gearbox(['guard, 3 M6x16', 'cover, 4 M8x25']);
    const before = job.plan().depth.pieces;
    const { id } = named(job.state().removal, 'Guard');
    good(await job.client.removal.void({ ...job.base(), removalId: id, phase: 'void', why: 'typed twice' }));
    expect(job.plan().depth.pieces).toBe(before - 4);
  });

  it('a closed job asks nobody to count its bags', async () => {
    const job = await gearbox(['cover, 2 M8x25, bag 4']);
    const { id } = named(job.state().removal, 'Cover');
    const set = job.state().fset[0]?.id ?? '';
    good(
      await job.client.piece.receive({
        ...job.base(),
        thingId: set,
        qty: 1,
        stowId: job.state().stow[0]?.id ?? null,
      }),
    );
    good(await job.client.tick.do({ ...job.base(), thingIds: [id], what: 'done' }));
    const card = async () => good(await job.client.jobs.list({})).find((one) => one.job.id === job.jobId);
    expect((await card())?.notCounted).toEqual(['bag 4']);
    good(await job.client.jobs.close({ ...job.base(), phase: 'closed', recheckDue: null }));
    expect((await card())?.notCounted).toEqual([]);
  });

  it('what was moved aside comes back from where it hangs, and was never taken apart', async () => {
    const job = await gearbox(['aside pressure line, hung on wire', 'aside motor, 3 M6x16, hung on a strap']);
    const told = (title: string) =>
      job
        .plan()
        .steps.find((step) => step.title === title)
        ?.actions.map((action) => action.sentence)
        .filter((sentence) => sentence.startsWith('Bring back'));
    expect(told('Pressure line')).toEqual(['Bring back: pressure line, hung on wire.']);
    expect(told('Motor')).toEqual(['Bring back: motor, hung on a strap.']);
  });

  it('a hose is on before its clamps are set', async () => {
    const job = await gearbox(['hose, 2 ends', '+ 2 clamps 25 mm']);
    expect(job.plan().steps[0]?.actions.map((action) => action.code)).toEqual(['join', 'start', 'tighten']);
  });
});

describe('“done” of a single thing', () => {
  it('is kept by the word its kind has for it, so that books, searches and lists agree', async () => {
    const job = await gearbox([
      'mains plug drawn',
      'suction hose, 2 ends',
      'end cover, 2 M8x25',
      '+2 rags in the port',
    ]);
    const { state } = job;
    const rag = state().temporary[0]?.id ?? '';
    const [hole] = state().position;
    const done = async (id: string) =>
      good(await job.client.tick.do({ ...job.base(), thingIds: [id], what: 'done' }));
    const last = (id: string) => state().deed.findLast((deed) => deed.thingId === id)?.what;
    await done(rag);
    expect(last(rag)).toBe('taken out');
    await done(hole?.id ?? '');
    expect(last(hole?.id ?? '')).toBe('tightened');
    expect(state().move.some((move) => move.dst === 'hole' && move.positionId === hole?.id)).toBe(true);
    await done(named(state().removal, 'End cover').id);
    const hose = state().connection[0]?.id ?? '';
    await done(hose);
    expect(last(hose)).toBe('joined');
    await done(named(state().removal, 'Suction hose').id);
    const mains = state().isolation[0]?.id ?? '';
    await done(mains);
    expect(last(mains)).toBe('given back');
  });
});
