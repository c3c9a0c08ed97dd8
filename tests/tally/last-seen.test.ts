import { describe, expect, it } from 'vitest';
import { bagCounts, contentsOf, expectedOf, openSearches } from '../../core/tally/index.ts';
import type { Search } from '../../core/tally/index.ts';
import { TallyJob } from '../support/build-tally.ts';

const last = (job: TallyJob): Search => openSearches(job.state).at(-1) as Search;

describe('where it was seen last', () => {
  const bagOf5 = () => {
    const job = new TallyJob();
    const [bag, other] = [job.bag('4'), job.bag('7')];
    const set = job.set(5, { name: 'cover bolts' });
    const off = job.cameOff(set, 5, bag);
    return { job, bag, other, set, off, own: { homeSetId: set.id, specId: set.specId } };
  };

  it('is the last count of that bag that agreed, in words', () => {
    const { job, bag, other } = bagOf5();
    job.counted({ stowId: bag, expected: 5, counted: 5 });
    const good = job.counted({ stowId: bag, expected: 5, counted: 5 });
    job.counted({ stowId: other, expected: 0, counted: 0 });
    job.counted({ stowId: bag, expected: 5, counted: 4 });
    expect(last(job).lastSeen).toEqual({
      at: good.at,
      how: 'counted',
      sentence: 'Last counted right: 5 in bag 4.',
    });
    expect(last(job).lookAt).toEqual(['bag 4: empty it, its seams and what it stood on.']);
  });

  it('is the moment that the first of its kind was put there, where it was never counted', () => {
    const { job, bag, other, set, own, off } = bagOf5();
    job.cameOff(job.set(1), 1, other);
    job.move({ ...own, src: 'stow', dst: 'stow', srcStowId: bag, dstStowId: other, cause: 'moved' });
    const count = job.counted({ stowId: bag, expected: 4, counted: 3 });
    job.move({ ...own, src: 'stow', dst: 'unknown', srcStowId: bag, cause: 'counted', countId: count.id });
    job.cameOff(set, 1, bag);
    expect(last(job).lastSeen).toEqual({
      at: off.at,
      how: 'booked',
      sentence: 'Never counted since it was noted at bag 4.',
    });
    expect(last(job).of).toEqual([{ setId: set.id, specId: set.specId, partId: null, qty: 1 }]);
  });

  it('of another bag is not when something came into this one', () => {
    const { job, other, own } = bagOf5();
    const moved = job.move({
      ...own,
      src: 'stow',
      dst: 'stow',
      srcStowId: null,
      dstStowId: other,
      cause: 'moved',
    });
    job.counted({ stowId: other, expected: 1, counted: 0 });
    expect(last(job).lastSeen.at).toBe(moved.at);
    expect(last(job).of).toMatchObject([{ qty: 1 }]);
  });

  it('is not recorded where nothing was', () => {
    const job = new TallyJob();
    job.counted({ stowId: job.bag('4'), expected: 1, counted: 0 });
    expect(last(job)).toMatchObject({
      lastSeen: { at: null, how: 'not recorded', sentence: 'When bag 4 was last seen is not recorded.' },
      of: [],
    });
  });

  it('says what was handled and fitted between then and the count, and nothing from before or after', () => {
    const { job, bag, other, own } = bagOf5();
    const early = job.set(1, { name: 'early bolts' });
    job.cameOff(early, 1, other);
    job.refit(early, 1, other);
    job.counted({ stowId: bag, expected: 5, counted: 5 });
    const later = job.set(1, { name: 'pump bolts' });
    const third = job.bag('9');
    job.cameOff(later, 1, third);
    job.refit(later, 1, third);
    const count = job.counted({ stowId: bag, expected: 5, counted: 4 });
    job.move({ ...own, src: 'stow', dst: 'unknown', srcStowId: bag, cause: 'counted', countId: count.id });
    job.refit({ id: own.homeSetId, specId: own.specId }, 1, job.bag('11'));
    expect(last(job).lookAt).toEqual([
      'bag 4: empty it, its seams and what it stood on.',
      'bag 9: handled since.',
      'pump bolts: fitted since. Is one of them in there?',
    ]);
  });

  it('counts what was found since, not what was given up for lost', () => {
    const { job, bag, own } = bagOf5();
    const count = job.counted({ stowId: bag, expected: 5, counted: 2 });
    const search = { ...own, countId: count.id } as const;
    job.move({ ...search, src: 'stow', dst: 'unknown', srcStowId: bag, qty: 3, cause: 'counted' });
    job.move({ ...search, src: 'unknown', dst: 'lost', cause: 'written off' });
    expect(last(job).missing).toBe(3);
    job.move({ ...search, src: 'unknown', dst: 'stow', dstStowId: bag, cause: 'found' });
    expect(last(job)).toMatchObject({ missing: 2, of: [{ qty: 3 }] });
    job.move({ ...own, src: 'unknown', dst: 'stow', dstStowId: bag, cause: 'found' });
    expect(last(job).missing, 'found in another search').toBe(2);
  });

  it('of one that is too many asks which set it belongs to', () => {
    const { job, bag } = bagOf5();
    job.counted({ stowId: bag, expected: 5, counted: 7 });
    expect(last(job)).toMatchObject({ missing: -2 });
    expect(last(job).lookAt.at(-1)).toBe('More than expected: which set or job does it belong to?');
  });
});

describe('things that are looked for by themselves', () => {
  it('a part, since it was put away, by its last good count', () => {
    const job = new TallyJob();
    const part = job.add('part', { name: 'key', removalId: job.removal() });
    const off = job.move({ partId: part.id, src: 'hole', dst: 'stow', cause: 'came off' });
    job.counted({ thingId: part.id, expected: 1, counted: 0 });
    expect(last(job)).toMatchObject({
      name: 'key',
      thingId: part.id,
      lastSeen: { at: off.at, how: 'booked' },
    });
    expect(last(job).lookAt[0]).toBe('key: where it was put in, and the bench.');
    const good = job.counted({ thingId: part.id, expected: 1, counted: 1 });
    job.counted({ thingId: job.id(), expected: 1, counted: 1 });
    job.counted({ thingId: part.id, stowId: job.bag('4'), expected: 1, counted: 1 });
    job.counted({ thingId: part.id, expected: 1, counted: 0 });
    expect(last(job).lastSeen).toMatchObject({ at: good.at, how: 'counted' });
  });

  it('a cap, since it was put in: by its deed, else by its removal', () => {
    const job = new TallyJob();
    const cap = job.add('temporary', {
      name: 'cap',
      removalId: job.removal({ startedAt: 500, endedAt: 900 }),
    });
    job.counted({ thingId: cap.id, expected: 1, counted: 0 });
    expect(last(job).lastSeen.at).toBe(500);
    job.change('removal', cap.removalId ?? '', { startedAt: null });
    expect(last(job).lastSeen.at).toBe(900);
    job.deed(cap.id, 'put in', { at: 1200 });
    job.deed(cap.id, 'taken out', { at: 1300 });
    expect(last(job).lastSeen.at).toBe(1200);
    const aid = new TallyJob();
    const pin = aid.add('temporary', { name: 'pin' });
    aid.counted({ thingId: pin.id, expected: 1, counted: 0 });
    expect(last(aid).lastSeen).toMatchObject({ at: null, how: 'not recorded' });
  });

  it('a tool by the name that was written down, since the removal it was last used at', () => {
    const job = new TallyJob();
    const removal = job.removal({ title: 'Sump', startedAt: 500 });
    job.counted({ thingId: removal, expected: 1, counted: 0, note: ' 10 mm socket \nfrom the blue set' });
    expect(last(job)).toMatchObject({
      name: '10 mm socket',
      lastSeen: { at: 500, how: 'booked', sentence: 'Used last, as far as is known, at Sump.' },
    });
    expect(last(job).lookAt[0]).toBe('The bench, the tool trolley, pockets, and under the machine.');
    job.counted({ expected: 1, counted: 0 });
    expect(last(job)).toMatchObject({
      name: 'Something',
      lastSeen: { how: 'not recorded', sentence: 'When Something was last seen is not recorded.' },
    });
  });
});

describe('what should be there', () => {
  it('of a set as many as are in hand, in whatever bag, and no parts of it', () => {
    const job = new TallyJob();
    const [set, other] = [job.set(5), job.set(3)];
    const part = job.add('part', { name: 'shim', qty: 9 });
    job.cameOff(set, 3, job.bag('4'));
    job.cameOff(set, 1);
    job.cameOff(other, 3);
    job.move({ homeSetId: set.id, partId: part.id, src: 'hole', dst: 'stow', qty: 7 });
    expect(expectedOf(job.state, set.id)).toBe(4);
    expect(expectedOf(job.state, other.id)).toBe(3);
    expect(expectedOf(job.state, part.id)).toBe(7);
    expect(expectedOf(job.state, job.id())).toBe(0);
  });

  it('of a part that was noted and never booked as many as were noted, whatever others were booked', () => {
    const job = new TallyJob();
    const [noted, booked] = [
      job.add('part', { name: 'cap', qty: 4 }),
      job.add('part', { name: 'key', qty: 2 }),
    ];
    job.move({ partId: booked.id, src: 'hole', dst: 'stow' });
    expect(expectedOf(job.state, noted.id)).toBe(4);
    expect(expectedOf(job.state, booked.id)).toBe(1);
  });

  it('lies there since something of it was last put in, whatever was taken out since', () => {
    const job = new TallyJob();
    const bag = job.bag('4');
    const set = job.set(5);
    job.cameOff(set, 2, bag);
    const put = job.cameOff(set, 2, bag);
    job.refit(set, 1, bag);
    expect(contentsOf(job.state, bag)).toMatchObject([{ qty: 3, putAt: put.at }]);
  });

  it('bags by label, each due until it was counted right after it was last touched', () => {
    const job = new TallyJob();
    const [seven, four] = [job.bag('7'), job.bag('4')];
    const set = job.set(5);
    job.cameOff(set, 1, seven);
    job.cameOff(set, 2, four);
    job.cameOff(set, 1);
    expect(bagCounts(job.state).map((bag) => [bag.stowId, bag.qty, bag.due])).toEqual([
      [four, 2, true],
      [seven, 1, true],
    ]);
    job.counted({ stowId: four, expected: 2, counted: 1 });
    expect(bagCounts(job.state)[0]).toMatchObject({ countedAt: null, due: true });
    const good = job.counted({ stowId: four, expected: 2, counted: 2 });
    job.counted({ thingId: set.id, expected: 1, counted: 1 });
    expect(bagCounts(job.state)[0]).toMatchObject({ countedAt: good.at, due: false });
    job.move({
      homeSetId: set.id,
      specId: set.specId,
      src: 'stow',
      dst: 'scrap',
      srcStowId: four,
      at: good.at,
    });
    expect(bagCounts(job.state)[0], 'touched in the same moment').toMatchObject({ due: false });
    job.refit(set, 1, seven);
    expect(bagCounts(job.state).map((bag) => bag.stowId)).toEqual([four]);
  });
});
