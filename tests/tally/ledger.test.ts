import { describe, expect, it } from 'vitest';
import { balances, moveProblems, NONE } from '../../core/tally/index.ts';
import { TallyJob } from '../support/build-tally.ts';

const job = () => {
  const made = new TallyJob();
  const bag = made.bag('4');
  const set = made.set(5);
  made.cameOff(set, 5, bag);
  return { made, bag, set, own: { homeSetId: set.id, specId: set.specId } };
};

describe('balances', () => {
  it('lets the hole go below 0 and keeps the sum at 0', () => {
    const { made, bag, set } = job();
    made.buy(set, 2, bag);
    made.refit(set, 3, bag);
    expect(balances(made.state, 'all').get(NONE)).toMatchObject({ hole: -2, stow: 4, supply: -2 });
  });

  it('splits by set, by bag, by part and by pool', () => {
    const { made, bag, set, own } = job();
    const other = made.bag('7');
    made.move({ ...own, src: 'stow', dst: 'stow', qty: 2, srcStowId: bag, dstStowId: other });
    const part = made.add('part', { name: 'cover' });
    made.move({ partId: part.id, src: 'hole', dst: 'stow', cause: 'came off' });
    expect(balances(made.state, 'set').get(set.id)).toMatchObject({ hole: -5, stow: 5 });
    expect(balances(made.state, 'stow').get(bag)?.stow).toBe(3);
    expect(balances(made.state, 'stow').get(other)?.stow).toBe(2);
    expect([...balances(made.state, 'part')]).toEqual([
      [part.id, expect.objectContaining({ hole: -1, stow: 1 })],
    ]);
    expect([...balances(made.state, 'pool').values()].map((row) => row.stow)).toEqual([5]);
  });

  it('leaves pieces with their own places out of every pool', () => {
    const made = new TallyJob();
    const set = made.set(2, { ownPlace: true });
    made.cameOff(set, 2);
    expect([...balances(made.state, 'pool')]).toEqual([[NONE, expect.objectContaining({ stow: 2 })]]);
  });

  it('takes set and specification from the hole where the move does not name them', () => {
    const made = new TallyJob();
    const set = made.set(1);
    made.move({ src: 'hole', dst: 'stow', cause: 'came off', positionId: set.holes[0] as string });
    expect([...balances(made.state, 'set').keys()]).toEqual([set.id]);
    expect([...balances(made.state, 'spec').keys()]).toEqual([set.specId]);
  });
});

describe('what the books cannot hold', () => {
  it('finds nothing wrong in sound books', () => {
    const { made, bag, set, own } = job();
    made.refit(set, 5, bag);
    made.move({ ...own, src: 'hole', dst: 'stow', qty: 5, dstStowId: bag, cause: 'came off again' });
    expect(moveProblems(made.state)).toEqual([]);
  });

  it('names the move that takes more out of a bag than is in it', () => {
    const { made, bag, set } = job();
    const wrong = made.refit(set, 6, bag);
    expect(moveProblems(made.state)).toEqual([
      {
        code: 'move.negative',
        moveId: wrong.id,
        sentence: 'Expected at most 5 to leave what is in the bag, got 6.',
      },
    ]);
  });

  it('does not take pieces out of another bag, another set or another length', () => {
    const { made, bag, own } = job();
    const other = made.set(1);
    made.move({ ...own, src: 'stow', dst: 'scrap', srcStowId: made.bag('9') });
    made.move({ homeSetId: other.id, specId: other.specId, src: 'stow', dst: 'scrap', srcStowId: bag });
    made.move({ ...own, specId: made.spec({ lengthUm: 9000 }), src: 'stow', dst: 'scrap', srcStowId: bag });
    expect(moveProblems(made.state).map((problem) => problem.code)).toEqual(Array(3).fill('move.negative'));
  });

  it('refuses that more comes off again than went back', () => {
    const { made, bag, set, own } = job();
    made.refit(set, 2, bag);
    made.move({ ...own, src: 'hole', dst: 'stow', qty: 3, cause: 'came off again' });
    expect(moveProblems(made.state)).toMatchObject([
      { code: 'move.off-again', sentence: 'Expected at most 2 to come off again, got 3.' },
    ]);
  });

  it('does not take a corrected count for a refit that may come off again', () => {
    const { made, bag, own } = job();
    made.move({ ...own, src: 'stow', dst: 'hole', srcStowId: bag, cause: 'counted' });
    made.move({ ...own, src: 'hole', dst: 'stow', dstStowId: bag, cause: 'came off again' });
    expect(moveProblems(made.state).map((problem) => problem.code)).toEqual(['move.off-again']);
  });

  it('does not mind the order of moves of one instant', () => {
    const { made, bag, own } = job();
    const at = made.now + 1;
    made.move({ ...own, src: 'unknown', dst: 'lost', at });
    made.move({ ...own, src: 'stow', dst: 'unknown', srcStowId: bag, at });
    expect(moveProblems(made.state)).toEqual([]);
  });

  it.each([
    ['move.into-supply', { src: 'stow', dst: 'supply' }],
    ['move.nowhere', { src: 'stow', dst: 'stow' }],
    ['move.stow', { src: 'stow', dst: 'lost', dstStowId: 'x' }],
  ] as const)('names a move that cannot be: %s', (code, wrong) => {
    const { made, own } = job();
    made.move({ ...own, src: 'supply', dst: 'stow', fresh: true });
    made.move({ ...own, ...wrong });
    expect(moveProblems(made.state).map((problem) => problem.code)).toEqual([code]);
  });
});

describe('whose piece it is', () => {
  it('is said by the move, else by the hole it names, else by its set', () => {
    const made = new TallyJob();
    const set = made.set(2);
    const other = made.set(1);
    const long = made.spec({ lengthUm: 45_000 });
    made.change('position', set.holes[1] ?? '', { specId: long });
    const out = { src: 'hole', dst: 'stow' } as const;
    made.move({ ...out, positionId: set.holes[1] ?? '' });
    made.move({ ...out, positionId: set.holes[1] ?? '', homeSetId: other.id });
    made.move({ ...out, positionId: set.holes[0] ?? '' });
    made.move({ ...out, homeSetId: set.id });
    made.move(out);
    const bySpec = balances(made.state, 'spec');
    expect([...bySpec].map(([key, row]) => [key, row.stow])).toEqual([
      [long, 2],
      [set.specId, 2],
      [NONE, 1],
    ]);
    const bySet = balances(made.state, 'set');
    expect([...bySet].map(([key, row]) => [key, row.stow])).toEqual([
      [set.id, 3],
      [other.id, 1],
      [NONE, 1],
    ]);
  });

  it('of no set and no known size stands in no pool; of a known size it does, whatever its set', () => {
    const made = new TallyJob();
    const out = { src: 'hole', dst: 'stow' } as const;
    const known = made.spec();
    made.move({ ...out, specId: known });
    made.move({ ...out, specId: made.spec({ grade: null }) });
    made.move(out);
    made.move({ ...out, homeSetId: made.id(), specId: known });
    const pools = balances(made.state, 'pool');
    expect([...pools].map(([key, row]) => [key === NONE, row.stow])).toEqual([
      [false, 2],
      [true, 2],
    ]);
  });

  it('a part is in no account of fasteners, and a fastener in none of parts', () => {
    const made = new TallyJob();
    const set = made.set(1);
    made.cameOff(set, 1);
    made.move({
      src: 'hole',
      dst: 'stow',
      partId: made.add('part', {}).id,
      homeSetId: set.id,
      specId: set.specId,
    });
    for (const by of ['set', 'spec', 'pool'] as const)
      expect(
        [...balances(made.state, by).values()].map((row) => row.stow),
        by,
      ).toEqual([1]);
    expect([...balances(made.state, 'part').values()].map((row) => row.stow)).toEqual([1]);
    expect(balances(made.state, 'all').get(NONE)?.stow).toBe(2);
  });

  it('by bag, what leaves a bag or comes into one belongs to that bag, and what is in none to nobody', () => {
    const { made, bag, own } = job();
    const other = made.bag('7');
    made.move({ ...own, src: 'stow', dst: 'scrap', srcStowId: bag });
    made.move({ ...own, src: 'stow', dst: 'stow', srcStowId: bag, dstStowId: null });
    made.move({ ...own, src: 'stow', dst: 'stow', srcStowId: null, dstStowId: other });
    made.move({ ...own, src: 'hole', dst: 'stow' });
    made.move({ ...own, src: 'stow', dst: 'away' });
    const by = balances(made.state, 'stow');
    expect(by.get(bag)).toMatchObject({ hole: -5, stow: 3, scrap: 1 });
    expect(by.get(other)).toMatchObject({ stow: 1 });
    expect(by.get(NONE)).toMatchObject({ hole: -1, stow: 0, away: 1 });
  });
});

describe('what is said of a move that cannot be', () => {
  it.each([
    ['stow', 'in the bag'],
    ['away', 'away'],
    ['scrap', 'scrapped'],
    ['lost', 'lost'],
    ['unknown', 'looked for'],
    ['stock', 'in stock'],
  ] as const)('from “%s”: at most what is %s', (src, words) => {
    const { made, own } = job();
    made.move({ ...own, src, dst: 'hole', qty: 2 });
    expect(moveProblems(made.state).map((one) => one.sentence)).toEqual([
      `Expected at most 0 to leave what is ${words}, got 2.`,
    ]);
  });

  it('names the places where it goes nowhere', () => {
    const said = (values: Parameters<TallyJob['move']>[0]) => {
      const { made, bag, own } = job();
      made.move({ ...own, ...values, ...(values.src === 'stow' ? { srcStowId: bag } : {}) });
      return moveProblems(made.state).map((one) => `${one.code}: ${one.sentence}`);
    };
    expect(said({ src: 'hole', dst: 'hole', cause: 'came off' })).toEqual([
      'move.nowhere: Expected two different places, got in its hole twice.',
    ]);
    expect(said({ src: 'supply', dst: 'supply' })).toEqual([
      'move.into-supply: Expected pieces to come from supply only, got some going back to it.',
    ]);
    expect(said({ src: 'hole', dst: 'stow', srcStowId: 'x' })).toEqual([
      'move.stow: Expected a bag only where pieces leave or enter one, got one beside another place.',
    ]);
    expect(said({ src: 'stow', dst: 'lost', dstStowId: 'x' })).toEqual([
      'move.stow: Expected a bag only where pieces leave or enter one, got one beside another place.',
    ]);
  });

  it('pieces of a bag are only moved when the bag changes', () => {
    const { made, bag, own } = job();
    made.move({ ...own, src: 'stow', dst: 'stow', srcStowId: bag, dstStowId: made.bag('7') });
    expect(moveProblems(made.state)).toEqual([]);
    made.move({ ...own, src: 'stow', dst: 'stow', srcStowId: bag, dstStowId: bag });
    expect(moveProblems(made.state).map((one) => one.code)).toEqual(['move.nowhere']);
  });

  it('pieces that come off again are no more than went back, of that set and size', () => {
    const { made, bag, set, own } = job();
    made.refit(set, 1, bag);
    made.move({ ...own, src: 'hole', dst: 'stow', dstStowId: bag, cause: 'came off' });
    expect(moveProblems(made.state)).toEqual([]);
    made.move({ ...own, src: 'hole', dst: 'stow', dstStowId: bag, cause: 'came off again' });
    expect(moveProblems(made.state)).toEqual([]);
    made.move({
      ...own,
      specId: made.spec({ grade: '10.9' }),
      src: 'hole',
      dst: 'stow',
      cause: 'came off again',
    });
    expect(moveProblems(made.state).map((one) => one.code)).toEqual(['move.off-again']);
  });
});
