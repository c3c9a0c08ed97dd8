import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bagCounts,
  countLines,
  moveProblems,
  openSearches,
  poolLines,
  toGet,
} from '../../core/tally/index.ts';
import { runs } from '../support/runs.ts';
import { shuffled } from '../support/shuffled.ts';
import { Bench, OPS } from './bench.ts';

const bySubject = <T>(rows: readonly T[]): string[] => rows.map((row) => JSON.stringify(row)).sort();

describe('the order in which rows happen to be stored', () => {
  it('changes no count, no search, no problem and nothing that is to be got', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(...OPS), fc.nat(99), fc.nat(99)), { maxLength: 40, size: 'max' }),
        fc.boolean(),
        fc.integer({ min: 1, max: 1_000_000 }),
        (plays, named, seed) => {
          const bench = new Bench(named);
          for (const set of bench.sets) {
            bench.job.add('stackItem', { setId: set.id, ord: 'a1', what: 'bolt', specId: set.specId });
            bench.job.add('stackItem', { setId: set.id, ord: 'a0', what: 'washer', qty: 2 });
          }
          for (const [op, n, m] of plays) bench.play(op, n, m);
          const state = bench.job.state;
          const other = shuffled(state, seed);
          expect(countLines(other)).toEqual(countLines(state));
          expect(bySubject(poolLines(other))).toEqual(bySubject(poolLines(state)));
          expect(openSearches(other)).toEqual(openSearches(state));
          expect(moveProblems(other)).toEqual(moveProblems(state));
          expect(bagCounts(other)).toEqual(bagCounts(state));
          expect(
            toGet(other)
              .map((line) => [line.key, line.needed])
              .sort(),
          ).toEqual(
            toGet(state)
              .map((line) => [line.key, line.needed])
              .sort(),
          );
        },
      ),
      runs(60),
    );
  });

  it('a deed that is written down afterwards still belongs to its own round', () => {
    const bench = new Bench(false);
    const set = bench.sets[0];
    const hole = set?.holes[0] ?? '';
    bench.job.change('fset', set?.id ?? '', { how: 'slackened' });
    bench.job.deed(hole, 'came off again', { round: 2, at: 5000 });
    bench.job.deed(hole, 'tightened', { round: 1, at: 9000 });
    const slack = () => countLines(bench.job.state).find((line) => line.setId === set?.id)?.slackened;
    expect(slack()).toBe(4);
    bench.job.deed(hole, 'tightened', { round: 2, at: 8000 });
    expect(slack()).toBe(3);
    bench.job.deed(hole, 'measured', { round: 2, at: 9500 });
    expect(slack(), 'a measurement loosens nothing').toBe(3);
    bench.job.deed(set?.id ?? '', 'came off again', { round: 3, at: 9900 });
    expect(slack(), 'the whole set came off again').toBe(4);
    bench.job.deed(set?.id ?? '', 'done', { round: 3, at: 9950 });
    expect(slack()).toBe(0);
  });
});
