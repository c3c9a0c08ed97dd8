import { describe, expect, it } from 'vitest';
import { balances, countOfSet } from '../../core/tally/index.ts';
import { jobView } from '../../core/usecases/views.ts';
import { clientOf, command, good, holes, logJob, named, refused, stateOf } from '../support/client.ts';
import { codes, gearbox } from '../support/gearbox.ts';
import { openTest, tempFolder } from '../support/workshop.ts';

async function oneSet(line: string) {
  const job = await gearbox([line]);
  const set = () => {
    const [only] = job.state().fset;
    if (!only) throw new Error('Expected a set.');
    return only;
  };
  const specOf = (n: number) => {
    const hole = holes(job.workshop, job.jobId, set().id)[n - 1];
    return job.state().spec.find((spec) => spec.id === (hole?.specId ?? set().specId));
  };
  return { ...job, set, specOf };
}

describe('changed later at the bench', () => {
  it('a confirmed thread is known for every hole, also for those with a length of their own', async () => {
    const job = await oneSet('6 13, 4 of them 20 long, 2 of them 45');
    expect(job.specOf(1)).toMatchObject({ thread: 'M8', threadKnown: false, lengthUm: 20_000 });
    const values = { thread: 'M8', threadKnown: true, pitchUm: 1250 };
    good(await job.client.set.spec({ ...job.base(), setId: job.set().id, values }));
    expect(job.specOf(1)).toMatchObject({ ...values, lengthUm: 20_000 });
    expect(job.specOf(6)).toMatchObject({ ...values, lengthUm: 45_000 });
    good(await job.client.history.undo(job.base()));
    expect(job.specOf(6)).toMatchObject({ threadKnown: false, lengthUm: 45_000 });
  });

  it('lengths go on for all, by hole, and back to one for all; the books follow', async () => {
    const job = await oneSet('4 M8 hex 13');
    const setId = job.set().id;
    const put = (allUm: number | undefined, byHole: Record<number, number> = {}) =>
      job.client.set.lengths({
        ...job.base(),
        setId,
        ...(allUm === undefined ? {} : { allUm }),
        holes: Object.entries(byHole).map(([n, lengthUm]) => ({ n: Number(n), lengthUm })),
      });
    const lengths = () => [1, 2, 3, 4].map((n) => job.specOf(n)?.lengthUm);
    good(await put(30_000, { 3: 40_000 }));
    expect(lengths()).toEqual([30_000, 30_000, 40_000, 30_000]);
    const inHand = () =>
      [...balances(job.state(), 'spec')].map(([spec, sums]) => [
        job.state().spec.find((one) => one.id === spec)?.lengthUm,
        sums.stow,
      ]);
    expect(Object.fromEntries(inHand())).toEqual({ 30_000: 3, 40_000: 1 });
    good(await put(undefined, { 3: 30_000 }));
    expect(lengths()).toEqual([30_000, 30_000, 30_000, 30_000]);
    expect(holes(job.workshop, job.jobId, setId).map((hole) => hole.specId)).toEqual([
      null,
      null,
      null,
      null,
    ]);
    good(await put(25_000));
    expect(lengths()).toEqual([25_000, 25_000, 25_000, 25_000]);
    expect(refused(await put(undefined, { 9: 30_000 }))).toContain('from 1 to 4');
  });

  it('a torque is kept as typed and in N·m; with an angle the bolts must be new', async () => {
    const job = await oneSet('4 M10x60 hex 16, class 10.9');
    const torque = (typed: string) =>
      job.client.set.torque({ ...job.base(), setId: job.set().id, typed, from: 'maker', page: 'p. 12' });
    good(await torque('18 lbf·ft'));
    expect(job.set()).toMatchObject({
      torqueTyped: '18 lbf·ft',
      torqueMnm: 24_405,
      torqueFrom: 'maker',
      renew: 'no',
    });
    good(await torque('20 Nm + 90°'));
    expect(job.set()).toMatchObject({ torqueMnm: 20_000, angleDeg: 90, renew: 'must' });
    good(await torque('by feel'));
    expect(job.set()).toMatchObject({ torqueMnm: null, torqueFrom: 'by feel', torqueTyped: '' });
    expect(refused(await torque('90'))).toContain('unit');
    expect(refused(await torque('tight'))).toContain('Expected');
  });

  it('what was logged as off and was only slackened never left the machine, and the other way round', async () => {
    const job = await oneSet('tensioner, 2 M8x30 hex 13');
    const removalId = named(job.state().removal, 'Tensioner').id;
    const did = (value: 'off' | 'slackened' | 'aside') =>
      job.client.removal.did({ ...job.base(), removalId, did: value });
    good(await did('slackened'));
    expect(job.set()).toMatchObject({ how: 'slackened', stowId: null });
    expect(named(job.state().part, 'tensioner').how).toBe('aside');
    expect(countOfSet(job.state(), job.set().id)[0]).toMatchObject({ slackened: 2, inBag: 0, short: 0 });
    expect(job.state().move).toEqual([]);
    good(await did('off'));
    expect(countOfSet(job.state(), job.set().id)[0]).toMatchObject({ slackened: 0, inBag: 2 });
    expect(
      job
        .state()
        .move.map((move) => move.partId !== null)
        .sort(),
    ).toEqual([false, false, true]);
    good(await job.client.tick.do({ ...job.base(), thingIds: [removalId], what: 'done' }));
    expect(refused(await did('slackened'))).toContain('worked on already');
  });

  it('a part that was only slackened is tightened again where it is, and makes no finding', async () => {
    const job = await gearbox(['slackened tensioner']);
    expect(job.state().move).toEqual([]);
    expect(codes(job.plan())).toEqual([]);
    const said = job.plan().steps[0]?.actions.map((action) => action.sentence);
    expect(said).toContain('Set and tighten: tensioner.');
  });
});

describe('times by themselves', () => {
  it('a removal keeps its start, its end and the pauses between, from the journal', async () => {
    let now = Date.UTC(2026, 8, 1, 8);
    const workshop = openTest(tempFolder(), { now: () => now });
    const jobId = await logJob(workshop, 'Winch gearbox', ['side cover, 4 M8x25']);
    const client = clientOf(workshop);
    const log = async (minutes: number, text: string, removalId: string | null) => {
      now += minutes * 60_000;
      good(await client.log.add({ ...command(), jobId, text, removalId }));
    };
    const first = () => named(stateOf(workshop, jobId).removal, 'Side cover');
    await log(5, 'one stripped', first().id);
    await log(40, 'gasket', first().id);
    const timesOf = () => {
      const view = jobView({ workshop, actor: null }, jobId);
      return view.ok ? view.value.times[first().id] : undefined;
    };
    expect(timesOf()).toMatchObject({ end: null, workedMs: 5 * 60_000 });
    await log(10, 'bearing cap 1', null);
    const start = Date.UTC(2026, 8, 1, 8);
    const pause = { from: start + 5 * 60_000, to: start + 45 * 60_000 };
    expect(first()).toMatchObject({ startedAt: start, endedAt: start + 55 * 60_000, pauses: [pause] });
    expect(timesOf()).toMatchObject({ end: start + 55 * 60_000, pauses: [pause], workedMs: 15 * 60_000 });
  });
});
