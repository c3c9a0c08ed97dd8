import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readLengths, writeLengths } from '../../core/entry/index.ts';

const read = (text: string, count = 8) => {
  const got = readLengths(text, count);
  return got.ok ? got.value : got.fault.sentence;
};

describe('lengths by hole, as typed at the bench', () => {
  it.each([
    ['30', { allUm: 30_000, holes: [] }],
    ['30,5 mm', { allUm: 30_500, holes: [] }],
    ['1 1/4 in', { allUm: 31_750, holes: [] }],
    [
      '1,2: 30; 3: 40',
      {
        allUm: null,
        holes: [
          { n: 1, lengthUm: 30_000 },
          { n: 2, lengthUm: 30_000 },
          { n: 3, lengthUm: 40_000 },
        ],
      },
    ],
    [
      'holes 7-8: 45; rest: 20',
      {
        allUm: 20_000,
        holes: [
          { n: 7, lengthUm: 45_000 },
          { n: 8, lengthUm: 45_000 },
        ],
      },
    ],
  ])('“%s”', (text, meaning) => expect(read(text)).toEqual(meaning));

  it.each([
    ['', 'got “”'],
    ['9: 30', 'from 1 to 8'],
    ['3-1: 30', 'from 1 to 8'],
    ['1: 30; 1: 40', 'hole 1 twice'],
    ['1: 2: 3', 'one colon'],
    ['long', 'length'],
    ['30; 40', 'got two'],
  ])('“%s” is refused in words', (text, words) => expect(read(text)).toContain(words));

  it('are written as they are read, for any lengths', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(8_000, 12_500, 30_000, 45_000), { minLength: 1, maxLength: 14 }),
        (byHole) => {
          const meaning = readLengths(writeLengths(byHole), byHole.length);
          expect(meaning.ok).toBe(true);
          if (!meaning.ok) return;
          const got = byHole.map((_, i) => {
            const own = meaning.value.holes.find((hole) => hole.n === i + 1);
            return own?.lengthUm ?? meaning.value.allUm;
          });
          expect(got).toEqual(byHole);
        },
      ),
      { seed: 4, numRuns: 300 },
    );
  });

  it('never throws, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 40 }), fc.nat(20), (text, count) => {
        readLengths(text, count);
      }),
      { seed: 5, numRuns: 2000 },
    );
  });
});
