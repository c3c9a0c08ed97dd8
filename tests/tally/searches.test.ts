import { describe, expect, it } from 'vitest';
import { bagCounts, contentsOf, expectedIn, expectedOf, openSearches } from '../../core/tally/index.ts';
import { TallyJob } from '../support/build-tally.ts';

const shortBag = () => {
  const job = new TallyJob();
  const bag = job.bag('4');
  const set = job.set(5);
  job.cameOff(set, 5, bag);
  const count = job.counted({ stowId: bag, expected: 5, counted: 4 });
  const own = { homeSetId: set.id, specId: set.specId, countId: count.id };
  job.move({ ...own, src: 'stow', dst: 'unknown', srcStowId: bag, cause: 'counted' });
  return { job, bag, set, count, own };
};

describe('what a bag should hold', () => {
  it('is everything booked into it and not out of it, parts as well', () => {
    const job = new TallyJob();
    const bag = job.bag('4');
    const set = job.set(5);
    job.cameOff(set, 5, bag);
    job.refit(set, 2, bag);
    const part = job.add('part', { name: 'shim' });
    job.move({ partId: part.id, src: 'hole', dst: 'stow', dstStowId: bag, cause: 'came off' });
    expect(expectedIn(job.state, bag)).toBe(4);
    expect(contentsOf(job.state, bag).map((content) => [content.setId, content.partId, content.qty])).toEqual(
      [
        [set.id, null, 3],
        [null, part.id, 1],
      ],
    );
  });

  it('is as many rags as went in, and as many parts as are in hand', () => {
    const job = new TallyJob();
    const rag = job.add('temporary', { name: 'rag', qty: 3 });
    const part = job.add('part', { name: 'cap', qty: 4 });
    expect(expectedOf(job.state, rag.id)).toBe(3);
    expect(expectedOf(job.state, part.id)).toBe(4);
    job.move({ partId: part.id, src: 'hole', dst: 'stow', qty: 4, cause: 'came off' });
    job.move({ partId: part.id, src: 'stow', dst: 'hole', qty: 1, cause: 'refitted' });
    expect(expectedOf(job.state, part.id)).toBe(3);
  });

  it('is to be counted until a count agreed after the last time it was touched', () => {
    const job = new TallyJob();
    const bag = job.bag('4');
    const set = job.set(5);
    job.cameOff(set, 4, bag);
    expect(bagCounts(job.state)).toMatchObject([{ stowId: bag, qty: 4, countedAt: null, due: true }]);
    const good = job.counted({ stowId: bag, expected: 4, counted: 4 });
    expect(bagCounts(job.state)).toMatchObject([{ countedAt: good.at, due: false }]);
    job.cameOff(set, 1, bag);
    expect(bagCounts(job.state)).toMatchObject([{ countedAt: good.at, due: true }]);
  });
});

describe('a search', () => {
  it('opens with a count that differs, and not with one that agrees', () => {
    const { job, bag, set, count } = shortBag();
    job.counted({ stowId: bag, expected: 4, counted: 4 });
    expect(openSearches(job.state)).toMatchObject([
      { countingId: count.id, stowId: bag, missing: 1, of: [{ setId: set.id, specId: set.specId, qty: 1 }] },
    ]);
  });

  it('stays open when a new one is bought, and when a later count agrees', () => {
    const { job, bag, set } = shortBag();
    job.buy(set, 5, bag);
    job.counted({ stowId: bag, expected: 9, counted: 9 });
    expect(openSearches(job.state)).toHaveLength(1);
  });

  it.each(['found', 'accepted'] as const)('ends when its own row says: %s', (ended) => {
    const { job, count } = shortBag();
    job.change('counting', count.id, { ended });
    expect(openSearches(job.state)).toEqual([]);
  });

  it('says how many are still missing when some were found', () => {
    const { job, bag, own } = shortBag();
    job.move({ ...own, src: 'unknown', dst: 'stow', dstStowId: bag, cause: 'found' });
    expect(openSearches(job.state)[0]?.missing).toBe(0);
  });

  it('is about a surplus too', () => {
    const job = new TallyJob();
    const bag = job.bag('4');
    job.counted({ stowId: bag, expected: 5, counted: 6 });
    expect(openSearches(job.state)).toMatchObject([{ missing: -1 }]);
    expect(openSearches(job.state)[0]?.lookAt.at(-1)).toContain('More than expected');
  });

  it('looks for a rag by itself, since it was put in', () => {
    const job = new TallyJob();
    const rag = job.add('temporary', { name: 'blue rag', removalId: job.removal() });
    job.counted({ thingId: rag.id, expected: 1, counted: 0 });
    const [search] = openSearches(job.state);
    expect(search).toMatchObject({ thingId: rag.id, missing: 1, lastSeen: { how: 'booked' } });
    expect(search?.lookAt[0]).toContain('blue rag');
  });

  it('says where it was seen last: the last count that agreed, else when it was put there', () => {
    const { job, bag, set, own } = shortBag();
    const cameOff = job.state.move[0]?.at;
    expect(openSearches(job.state)[0]?.lastSeen).toMatchObject({ at: cameOff, how: 'booked' });
    const good = job.counted({ stowId: bag, expected: 4, counted: 4 });
    const second = job.counted({ stowId: bag, expected: 4, counted: 3 });
    job.move({ ...own, countId: second.id, src: 'stow', dst: 'unknown', srcStowId: bag, cause: 'counted' });
    expect(openSearches(job.state)[1]).toMatchObject({ lastSeen: { at: good.at, how: 'counted' } });
    expect(set.id).toBe(openSearches(job.state)[1]?.of[0]?.setId);
  });

  it('takes neither a count that differed nor a later one for the last time it was seen', () => {
    const job = new TallyJob();
    const bag = job.bag('4');
    const off = job.cameOff(job.set(5), 5, bag);
    job.counted({ stowId: bag, expected: 5, counted: 4, ended: 'found' });
    job.counted({ stowId: bag, expected: 5, counted: 3 });
    job.counted({ stowId: bag, expected: 5, counted: 5 });
    expect(openSearches(job.state)[0]?.lastSeen).toMatchObject({ at: off.at, how: 'booked' });
  });

  it('names the bags that were handled and the sets that went back since', () => {
    const job = new TallyJob();
    const [bag, other] = [job.bag('4'), job.bag('7')];
    const set = job.set(5);
    const later = job.set(2, { name: 'pump bolts' });
    job.cameOff(set, 5, bag);
    job.cameOff(later, 2, other);
    job.refit(later, 2, other);
    job.counted({ stowId: bag, expected: 5, counted: 4 });
    const said = openSearches(job.state)[0]?.lookAt.join('\n');
    expect(said).toContain('bag 7: handled since');
    expect(said).toContain('pump bolts: fitted since');
  });
});

describe('what stood open meanwhile', () => {
  /** A cover off, a hose apart, an electrical plug apart; a good count; then whatever happens; then a short count. */
  const story = (meanwhile: (job: TallyJob, ids: Record<'cover' | 'hose' | 'plug', string>) => void) => {
    const job = new TallyJob();
    const bag = job.bag('4');
    const set = job.set(5);
    const removalId = job.removal({ title: 'sump cover' });
    const cover = job.add('part', { removalId, name: 'cover' }).id;
    const hose = job.add('connection', { removalId, name: 'lower hose', joint: 'hose on stub' }).id;
    const plug = job.add('connection', { removalId, name: 'sensor plug', joint: 'plug' }).id;
    job.cameOff(set, 5, bag);
    job.deed(cover, 'fitted');
    job.counted({ stowId: bag, expected: 5, counted: 5 });
    meanwhile(job, { cover, hose, plug });
    job.counted({ stowId: bag, expected: 5, counted: 4 });
    return { openings: openSearches(job.state)[0]?.openings ?? [], cover, hose, plug };
  };

  it('is the hose and not the cover that was closed before the last good count, nor the electrical plug', () => {
    const { openings, hose } = story(() => {});
    expect(openings.map((opening) => opening.thingIds)).toEqual([[hose]]);
    expect(openings[0]?.closedAt).toBeNull();
  });

  it('is the cover again when it came off again', () => {
    const { openings, cover, hose } = story((job, ids) =>
      job.deed(ids.cover, 'came off again', { round: 2 }),
    );
    expect(openings.map((opening) => opening.thingIds)).toEqual([[cover, hose]]);
  });

  it('is what was closed between the good count and the short one: that is where it may lie', () => {
    const { openings, hose } = story((job, ids) => job.deed(ids.hose, 'joined'));
    expect(openings.map((opening) => opening.thingIds)).toEqual([[hose]]);
    expect(openings[0]?.closedAt).not.toBeNull();
  });

  it('says what was stuffed into it', () => {
    const { openings } = story((job) =>
      job.add('temporary', {
        removalId: job.state.removal.at(-1)?.id as string,
        name: 'rag',
        role: 'blocks',
      }),
    );
    expect(openings[0]?.coveredBy).toEqual(['rag']);
  });

  it('is a drain plug that opened a fluid, though no part is written down', () => {
    const job = new TallyJob();
    const bag = job.bag('4');
    const set = job.set(2);
    job.cameOff(set, 2, bag);
    const removalId = job.removal({ title: 'drain plug' });
    const fluid = job.add('fluid', { name: 'gear oil' });
    job.add('opens', { fluidId: fluid.id, thingId: removalId });
    job.counted({ stowId: bag, expected: 2, counted: 1 });
    expect(openSearches(job.state)[0]?.openings).toMatchObject([{ removalId, thingIds: [fluid.id] }]);
  });

  it('is nothing that was opened after the count, given up before it began, or only made safe', () => {
    const job = new TallyJob();
    const bag = job.bag('4');
    job.cameOff(job.set(2), 2, bag);
    for (const values of [{ phase: 'planned' }, { phase: 'void' }, { did: 'safe' }] as const)
      job.add('part', { removalId: job.removal(values), name: 'cover' });
    job.counted({ stowId: bag, expected: 2, counted: 1 });
    job.add('part', { removalId: job.removal(), name: 'cover' });
    expect(openSearches(job.state)[0]?.openings).toEqual([]);
  });
});
