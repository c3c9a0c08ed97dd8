import { describe, expect, it } from 'vitest';
import { countLines, countOfSet, damagesPiece, poolLines } from '../../core/tally/index.ts';
import type { CountLine } from '../../core/tally/index.ts';
import { TallyJob } from '../support/build-tally.ts';

const only = (job: TallyJob, setId: string): CountLine => {
  const [line, ...rest] = countOfSet(job.state, setId);
  expect(rest).toEqual([]);
  return line as CountLine;
};

describe('pieces that may not go back', () => {
  it('asks for new ones where the old ones must be renewed', () => {
    const job = new TallyJob();
    const set = job.set(4, { renew: 'must' });
    job.cameOff(set, 4);
    expect(only(job, set.id)).toMatchObject({ mustRenew: 4, usable: 0, short: 4 });
    job.buy(set, 4);
    expect(only(job, set.id)).toMatchObject({ mustRenew: 4, usable: 4, short: 0, spare: 0 });
    job.refit(set, 4, null, true);
    expect(only(job, set.id)).toMatchObject({ toFill: 0, leftOver: 0, short: 0 });
  });

  it.each([true, false])('takes a new bolt that came off again for used (booked as bought: %s)', (fresh) => {
    const job = new TallyJob();
    const set = job.set(2, { renew: 'must' });
    job.cameOff(set, 2);
    job.buy(set, 2);
    job.refit(set, 2, null, true);
    const own = { homeSetId: set.id, specId: set.specId };
    job.move({ ...own, src: 'hole', dst: 'stow', qty: 2, cause: 'came off again', fresh });
    expect(only(job, set.id)).toMatchObject({ out: 2, backIn: 0, newInBag: 0, toFill: 2, short: 2 });
    job.buy(set, 2);
    job.move({ ...own, src: 'stow', dst: 'scrap', qty: 2, cause: 'scrapped', fresh });
    expect(only(job, set.id)).toMatchObject({ newInBag: 2, short: 0 });
  });

  it('takes a used one that was away for used when it comes back', () => {
    const job = new TallyJob();
    const set = job.set(1, { renew: 'must' });
    const own = { homeSetId: set.id, specId: set.specId, fresh: true };
    job.cameOff(set, 1);
    job.buy(set, 1);
    job.refit(set, 1, null, true);
    job.move({ ...own, src: 'hole', dst: 'stow', cause: 'came off again' });
    job.move({ ...own, src: 'stow', dst: 'away', cause: 'sent out' });
    job.move({ ...own, src: 'away', dst: 'stow', cause: 'came back' });
    expect(only(job, set.id)).toMatchObject({ inBag: 2, newInBag: 0, short: 1 });
  });

  // Common practice, no source.
  it.each([
    ['bent', true],
    ['cross-threaded', true],
    ['stripped (one of the set)', true],
    ['rusted, snapped', true],
    ['rusted', false],
    ['dirty, greasy', false],
    ['hole stripped', false],
    ['thread insert damaged', false],
    ['not bent', false],
    ['', false],
  ])('“%s” takes the piece out of use: %s', (condition, harm) => {
    expect(damagesPiece(condition)).toBe(harm);
  });

  it('does not condemn the bolts of a stack when a rule was raised for its washers', () => {
    const job = new TallyJob();
    const set = job.set(2, { renew: 'must', renewRule: 'lock-washer' });
    const washer = job.spec({ kind: 'washer', head: null, more: 'spring washer' });
    job.add('stackItem', { setId: set.id, ord: 'a0', what: 'bolt', specId: set.specId });
    job.add('stackItem', { setId: set.id, ord: 'a1', what: 'spring washer', specId: washer });
    job.cameOff(set, 2);
    job.cameOff({ id: set.id, specId: washer }, 2);
    expect(countOfSet(job.state, set.id).map((line) => [line.what, line.mustRenew, line.short])).toEqual([
      ['bolt', 0, 0],
      ['spring washer', 2, 2],
    ]);
  });

  it('takes a damaged bolt out of what is usable until it is scrapped', () => {
    const job = new TallyJob();
    const set = job.set(4);
    job.change('position', set.holes[1] as string, { condition: 'bent' });
    job.change('position', set.holes[2] as string, { condition: 'rusted, dirty' });
    job.cameOff(set, 4);
    expect(only(job, set.id)).toMatchObject({ damaged: 1, usable: 3, short: 1 });
    job.move({ homeSetId: set.id, specId: set.specId, src: 'stow', dst: 'scrap', cause: 'scrapped' });
    expect(only(job, set.id)).toMatchObject({ damaged: 0, usable: 3, short: 1, scrapped: 1 });
  });
});

describe('pooling', () => {
  const two = (values: Parameters<TallyJob['set']>[1] = {}, spec: Parameters<TallyJob['spec']>[0] = {}) => {
    const job = new TallyJob();
    const a = job.set(4);
    const b = job.set(2, { specId: job.spec(spec), ...values });
    job.cameOff(a, 4);
    job.cameOff(b, 2);
    job.move({ homeSetId: b.id, specId: b.specId, src: 'stow', dst: 'lost', cause: 'written off' });
    job.buy(a, 1);
    return poolLines(job.state).map((pool) => pool.short);
  };

  it('covers one set out of another when all that matters is known and equal', () => {
    expect(two()).toEqual([0]);
  });

  it.each([
    ['own place', { ownPlace: true }, {}],
    ['class not recorded', {}, { grade: null }],
    ['another length', {}, { lengthUm: 30_000 }],
    ['thread only guessed from the head', {}, { threadKnown: false }],
  ])('never pools across a difference: %s', (_what, values, spec) => {
    expect(two(values, spec)).toEqual([0, 1]);
  });

  it('never fills a hole that needs a new one out of old ones of another set', () => {
    const job = new TallyJob();
    const a = job.set(4);
    const b = job.set(2, { specId: job.spec(), renew: 'must' });
    job.cameOff(a, 4);
    job.cameOff(b, 2);
    for (const id of a.holes) job.change('position', id, { fate: 'leave out', fateWhy: 'left open' });
    job.buy(a, 1);
    const [pool] = poolLines(job.state);
    expect(pool).toMatchObject({ toFill: 2, toFillNew: 2, usable: 5, newInBag: 1, short: 1, toGet: 1 });
  });

  it('counts pieces that were bought for no set, and shares them in the pool', () => {
    const job = new TallyJob();
    const set = job.set(2);
    job.cameOff(set, 2);
    job.move({ homeSetId: set.id, specId: set.specId, src: 'stow', dst: 'lost', cause: 'written off' });
    job.move({ specId: job.spec(), src: 'supply', dst: 'stow', cause: 'received', fresh: true });
    expect(countLines(job.state).map((line) => [line.setId, line.short])).toEqual([
      [set.id, 1],
      [null, 0],
    ]);
    expect(poolLines(job.state).map((pool) => pool.short)).toEqual([0]);
  });

  it('is right where pieces went into another set’s hole without anybody naming the hole', () => {
    const job = new TallyJob();
    const a = job.set(1);
    const b = job.set(1, { specId: job.spec() });
    job.cameOff(a, 1);
    job.cameOff(b, 1);
    job.buy(a, 1);
    job.refit(a, 2);
    expect(poolLines(job.state)[0]).toMatchObject({ filled: 2, toFill: 0, short: 0, leftOver: 1 });
  });

  it('is right where a piece of one set went into the hole of another', () => {
    const job = new TallyJob();
    const a = job.set(1);
    const b = job.set(1, { specId: job.spec() });
    job.cameOff(a, 1);
    job.cameOff(b, 1);
    job.move({
      homeSetId: a.id,
      specId: a.specId,
      src: 'stow',
      dst: 'hole',
      positionId: b.holes[0] as string,
    });
    expect(countOfSet(job.state, b.id)[0]).toMatchObject({ filled: 1, toFill: 0, inBag: 1 });
    expect(poolLines(job.state)[0]).toMatchObject({ filled: 1, toFill: 1, usable: 1, short: 0, leftOver: 0 });
  });
});
