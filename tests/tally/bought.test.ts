import { describe, expect, it } from 'vitest';
import { countOfSet, poolLines } from '../../core/tally/index.ts';
import { TallyJob } from '../support/build-tally.ts';

/** A set of which only new ones will do: four holes, all emptied, so many bought. */
const bench = (bought: number, renew: 'must' | 'no' = 'must') => {
  const job = new TallyJob();
  const set = job.set(4, { renew });
  const own = { homeSetId: set.id, specId: set.specId };
  job.cameOff(set, 4);
  job.move({ ...own, src: 'stow', dst: 'scrap', qty: 4, cause: 'scrapped' });
  if (bought > 0) job.buy(set, bought);
  const line = () => countOfSet(job.state, set.id)[0];
  return { job, set, own, line };
};

describe('bought pieces', () => {
  it('are new however the receipt was written down', () => {
    const { job, own, line } = bench(0);
    job.move({ ...own, src: 'supply', dst: 'stow', qty: 2, cause: 'received' });
    expect(line()).toMatchObject({ newInBag: 2, mustRenew: 0, short: 2 });
  });

  it('stay new when they change bags', () => {
    const { job, own, line } = bench(2);
    job.move({
      ...own,
      src: 'stow',
      dst: 'stow',
      qty: 2,
      dstStowId: job.bag('9'),
      fresh: true,
      cause: 'moved',
    });
    expect(line()).toMatchObject({ newInBag: 2, inBag: 2 });
  });

  it('that came off again are in hand, but where only new ones will do they are short', () => {
    const { job, own, set, line } = bench(4);
    job.refit(set, 4, null, true);
    expect(line()).toMatchObject({ newInBag: 0, toFill: 0, short: 0 });
    job.move({ ...own, src: 'hole', dst: 'stow', qty: 1, fresh: true, cause: 'came off again' });
    expect(line()).toMatchObject({
      newInBag: 0,
      inBag: 1,
      mustRenew: 1,
      usable: 0,
      toFill: 1,
      short: 1,
      toGet: 1,
    });
  });

  it('that were fitted by an earlier time than they came are no stock beside those that came', () => {
    const { job, own, set, line } = bench(0);
    job.refit(set, 4, null, true);
    job.buy(set, 4);
    expect(line()).toMatchObject({ newInBag: 0, inBag: 0, short: 0 });
    job.move({ ...own, src: 'hole', dst: 'stow', qty: 4, fresh: false, cause: 'came off again' });
    expect(line()).toMatchObject({ newInBag: 0, inBag: 4, toFill: 4, short: 4, toGet: 4 });
    job.buy(set, 4);
    expect(line()).toMatchObject({ newInBag: 4, short: 0 });
  });

  it('go in unused ones first, and into the bin used ones first', () => {
    const { job, own, set, line } = bench(3);
    job.refit(set, 1, null, true);
    job.move({ ...own, src: 'hole', dst: 'stow', fresh: true, cause: 'came off again' });
    expect(line()).toMatchObject({ inBag: 3, newInBag: 2 });
    job.refit(set, 1, null, true);
    expect(line()).toMatchObject({ inBag: 2, newInBag: 1 });
    job.move({ ...own, src: 'stow', dst: 'scrap', fresh: true, cause: 'scrapped' });
    expect(line()).toMatchObject({ inBag: 1, newInBag: 1 });
  });

  it.each(['away', 'unknown'] as const)(
    'that were used and went to “%s” come back as used ones',
    (elsewhere) => {
      const { job, own, set, line } = bench(2);
      job.refit(set, 1, null, true);
      job.move({ ...own, src: 'hole', dst: 'stow', fresh: true, cause: 'came off again' });
      const cause = elsewhere === 'away' ? ('sent out' as const) : ('counted' as const);
      job.move({ ...own, src: 'stow', dst: elsewhere, qty: 2, fresh: true, cause });
      expect(line()).toMatchObject({ inBag: 0, newInBag: 0 });
      job.move({ ...own, src: elsewhere, dst: 'stow', qty: 2, fresh: true, cause: 'found' });
      expect(line()).toMatchObject({ inBag: 2, newInBag: 1, mustRenew: 1 });
    },
  );

  it('bought later are new, though used ones are away', () => {
    const { job, own, set, line } = bench(1);
    job.refit(set, 1, null, true);
    job.move({ ...own, src: 'hole', dst: 'stow', fresh: true, cause: 'came off again' });
    job.move({ ...own, src: 'stow', dst: 'away', fresh: true, cause: 'sent out' });
    job.buy(set, 1);
    expect(line()).toMatchObject({ newInBag: 1 });
    job.move({ ...own, src: 'stock', dst: 'stow', fresh: true, cause: 'moved' });
    expect(line()).toMatchObject({ newInBag: 2 });
    job.move({ ...own, src: 'away', dst: 'stow', fresh: true, cause: 'came back' });
    expect(line()).toMatchObject({ inBag: 3, newInBag: 2, mustRenew: 1 });
  });

  it('that were scrapped do not come back as used ones', () => {
    const { job, own, set, line } = bench(3);
    job.refit(set, 1, null, true);
    job.move({ ...own, src: 'hole', dst: 'stow', fresh: true, cause: 'came off again' });
    job.move({ ...own, src: 'stow', dst: 'scrap', fresh: true, cause: 'scrapped' });
    job.move({ ...own, src: 'stow', dst: 'away', fresh: true, cause: 'sent out' });
    job.move({ ...own, src: 'away', dst: 'stow', fresh: true, cause: 'came back' });
    expect(line()).toMatchObject({ inBag: 2, newInBag: 2 });
  });

  it('are spare only beyond what is to be filled, a blocked hole included', () => {
    const { job, set, line } = bench(6, 'no');
    expect(line()).toMatchObject({ toFill: 4, spare: 2, leftOver: 0 });
    job.change('position', set.holes[0] ?? '', { fate: 'blocked', fateWhy: 'bad thread' });
    expect(line()).toMatchObject({ toFill: 3, blocked: 1, spare: 2 });
  });

  it('for a new hole are no more than the new hole asks for', () => {
    const job = new TallyJob();
    const set = job.set(2);
    job.change('position', set.holes[1] ?? '', { found: 'new hole' });
    job.cameOff(set, 1);
    expect(countOfSet(job.state, set.id)[0]).toMatchObject({ newHoles: 1, emptied: 1, toFill: 2, short: 1 });
    job.change('position', set.holes[1] ?? '', { fate: 'leave out', fateWhy: 'not needed' });
    expect(countOfSet(job.state, set.id)[0]).toMatchObject({ toFill: 1, leftOut: 1, short: 0 });
    expect(poolLines(job.state)[0]).toMatchObject({ newHoles: 1, leftOut: 1, toFill: 1, holes: 2 });
  });
});
