import { describe, expect, it } from 'vitest';
import { awayThings, newPartFor, toGet } from '../../core/tally/index.ts';
import { TallyJob } from '../support/build-tally.ts';

const lines = (job: TallyJob) => toGet(job.state).map((line) => [line.cause, line.needed, line.state]);

describe('the list to get', () => {
  it('holds nothing for a job in which nothing is missing', () => {
    const job = new TallyJob();
    job.cameOff(job.set(4), 4);
    job.add('part', { name: 'cover', removalId: job.removal() });
    expect(toGet(job.state)).toEqual([]);
  });

  it('holds what is short, over the pool and not set by set', () => {
    const job = new TallyJob();
    const a = job.set(2);
    const b = job.set(2, { specId: job.spec() });
    for (const set of [a, b]) {
      job.cameOff(set, 2);
      job.move({ homeSetId: set.id, specId: set.specId, src: 'stow', dst: 'lost', cause: 'written off' });
    }
    job.buy(a, 1);
    expect(toGet(job.state)).toMatchObject([
      {
        cause: 'short',
        needed: 1,
        what: 'bolt M8 × 1.25 × 25 mm, hex 13 mm, class 8.8',
        thingIds: [a.id, b.id],
      },
    ]);
  });

  it('leaves out what is only away', () => {
    const job = new TallyJob();
    const set = job.set(2);
    job.cameOff(set, 2);
    job.move({ homeSetId: set.id, specId: set.specId, src: 'stow', dst: 'away', qty: 2, cause: 'sent out' });
    expect(toGet(job.state)).toEqual([]);
  });

  it('holds fasteners and parts that must be new until new ones are in hand', () => {
    const job = new TallyJob();
    const set = job.set(4, { renew: 'must' });
    job.cameOff(set, 4);
    const part = job.add('part', { name: 'gasket', kind: 'gasket', removalId: job.removal(), renew: 'must' });
    expect(lines(job)).toEqual([
      ['must renew', 4, 'needed'],
      ['must renew', 1, 'needed'],
    ]);
    job.buy(set, 3);
    job.move({ partId: part.id, src: 'supply', dst: 'stow', cause: 'received', fresh: true });
    expect(lines(job)).toEqual([['must renew', 1, 'needed']]);
  });

  it('says that new ones are needed even where their count was not recorded', () => {
    const job = new TallyJob();
    job.set(0, { countKnown: false, renew: 'must' });
    expect(lines(job)).toEqual([['must renew', null, 'needed']]);
  });

  it('holds the repair of a blocked hole until it is recorded', () => {
    const job = new TallyJob();
    const set = job.set(2, { name: 'pump bolts' });
    job.cameOff(set, 2);
    job.change('position', set.holes[1] as string, { fate: 'blocked', fateWhy: 'bad thread' });
    expect(toGet(job.state)).toMatchObject([
      { cause: 'repair', what: 'repair: hole 2 of pump bolts, bad thread' },
    ]);
    job.deed(set.holes[1] as string, 'repaired');
    expect(toGet(job.state)).toEqual([]);
  });

  it('joins a need with what was noted for it, and is on order only when enough is', () => {
    const job = new TallyJob();
    const set = job.set(4, { renew: 'must' });
    job.cameOff(set, 4);
    const want = job.add('want', {
      specId: set.specId,
      what: 'bolts',
      qty: 3,
      state: 'ordered',
      promisedAt: 77,
    });
    expect(toGet(job.state)).toMatchObject([
      { needed: 4, ordered: 3, state: 'needed', promisedAt: 77, wantIds: [want.id] },
    ]);
    job.change('want', want.id, { qty: 4 });
    expect(lines(job)).toEqual([['must renew', 4, 'ordered']]);
    job.change('want', want.id, { state: 'dropped' });
    expect(lines(job)).toEqual([['must renew', 4, 'dropped']]);
    job.change('want', want.id, { state: 'here' });
    expect(lines(job)).toEqual([['must renew', 4, 'needed']]);
  });

  it('joins a note that names a hole or a set', () => {
    const job = new TallyJob();
    const set = job.set(2, { renew: 'must' });
    job.cameOff(set, 2);
    job.add('want', { thingId: set.holes[0] as string, what: 'bolt' });
    job.add('want', { thingId: set.id, what: 'bolt' });
    expect(toGet(job.state)).toMatchObject([{ noted: 2, wantIds: [expect.anything(), expect.anything()] }]);
  });

  it('keeps what was only noted, after the needs', () => {
    const job = new TallyJob();
    job.add('want', { what: 'grease', qty: 1, state: 'needed' });
    const set = job.set(1, { renew: 'must' });
    job.cameOff(set, 1);
    expect(toGet(job.state).map((line) => line.what)).toEqual([expect.stringContaining('bolt M8'), 'grease']);
  });
});

describe('a part that must be new', () => {
  const gasket = () => {
    const job = new TallyJob();
    const removalId = job.removal();
    const part = job.add('part', { name: 'gasket', kind: 'gasket', removalId, renew: 'must' });
    job.move({ partId: part.id, src: 'hole', dst: 'stow', cause: 'came off' });
    return { job, part, lacking: () => newPartFor(job.state, part.id)?.lacking };
  };
  const buy = (job: TallyJob, partId: string) =>
    job.move({ partId, src: 'supply', dst: 'stow', cause: 'received', fresh: true });

  it('is not replaced by the old one that lies in the bag', () => {
    const { lacking } = gasket();
    expect(lacking()).toBe(1);
  });

  it('lacks again when the new one came off again', () => {
    const { job, part, lacking } = gasket();
    buy(job, part.id);
    job.move({ partId: part.id, src: 'stow', dst: 'hole', cause: 'renewed', fresh: true });
    job.deed(part.id, 'fitted', { fresh: true });
    expect(lacking()).toBe(0);
    job.move({ partId: part.id, src: 'hole', dst: 'stow', cause: 'came off again' });
    job.deed(part.id, 'came off again', { round: 2 });
    expect(lacking()).toBe(1);
  });

  it('is no longer to be got once the old one was fitted all the same: the record says so', () => {
    const { job, part, lacking } = gasket();
    job.move({ partId: part.id, src: 'stow', dst: 'hole', cause: 'refitted' });
    job.deed(part.id, 'fitted');
    expect(lacking()).toBe(0);
  });

  it.each([
    { renew: 'overridden' as const },
    { fate: 'leave out' as const },
    { how: 'aside' as const },
    { kind: 'new part' as const },
  ])('is none with %o', (values) => {
    const { job, part } = gasket();
    job.change('part', part.id, values);
    expect(newPartFor(job.state, part.id)).toBeNull();
  });

  it('is wanted as an exchange where the old core goes back', () => {
    const { job, part } = gasket();
    job.change('part', part.id, { renew: 'no', fate: 'exchange' });
    expect(newPartFor(job.state, part.id)?.cause).toBe('exchange');
  });
});

describe('what is away', () => {
  const DAY = 86_400_000;
  it('puts late ones first and says for how long', () => {
    const job = new TallyJob();
    const [a, b, c] = ['a', 'b', 'c'].map((name) => job.add('part', { name }).id) as [string, string, string];
    job.add('away', { thingId: a, toWhom: 'the machinist', since: 0, due: null });
    job.add('away', { thingId: b, toWhom: 'the plater', since: 2 * DAY, due: 5 * DAY });
    job.add('away', { thingId: c, toWhom: 'a friend', since: DAY, due: 50 * DAY, backAt: 2 * DAY });
    expect(awayThings(job.state, 8.5 * DAY)).toMatchObject([
      { thingId: b, days: 6, late: true, daysLate: 3 },
      { thingId: a, days: 8, late: false, daysLate: 0 },
    ]);
    expect(awayThings(job.state, 5 * DAY)[1]).toMatchObject({ thingId: b, late: false });
  });
});
