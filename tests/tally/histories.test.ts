import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  balances,
  bookDifference,
  countLines,
  expectedIn,
  moveProblems,
  openSearches,
  poolLines,
} from '../../core/tally/index.ts';
import type { CountLine, PoolLine } from '../../core/tally/index.ts';
import { runs } from '../support/runs.ts';
import { Bench, OPS } from './bench.ts';
import type { Op } from './bench.ts';

const history = fc.record({
  named: fc.boolean(),
  ops: fc.array(fc.tuple(fc.constantFrom(...OPS), fc.nat(50), fc.nat(50)), { minLength: 1, maxLength: 120 }),
});
const start: [Op, number, number][] = Array.from({ length: 6 }, (_, i) => ['off', i, i]);

function played(told: { named: boolean; ops: readonly [Op, number, number][] }): Bench {
  const bench = new Bench(told.named);
  for (const [op, n, m] of [...start, ...told.ops]) bench.play(op, n, m);
  return bench;
}

const NUMBERS = [
  'out',
  'got',
  'inBag',
  'away',
  'backIn',
  'scrapped',
  'lost',
  'unknown',
  'toStock',
  'newInBag',
] as const;
const POOLED = [
  ...NUMBERS,
  'mustRenew',
  'damaged',
  'usable',
  'emptied',
  'filled',
  'slackened',
  'blocked',
] as const;

describe('over any history of valid moves', () => {
  it('the count says what following every piece by itself says', () => {
    fc.assert(
      fc.property(history, (told) => {
        const bench = played(told);
        const lines = countLines(bench.job.state);
        bench.sets.forEach((set, i) => {
          expect(lines.find((line) => line.setId === set.id)).toMatchObject(bench.seen(i));
        });
        for (const [i, bag] of bench.bags.entries())
          expect(expectedIn(bench.job.state, bag)).toBe(
            bench.pieces.filter((piece) => piece.place === 'stow' && piece.bag === i).length,
          );
      }),
      runs(300),
    );
  });

  it('the books are sound and close, and the sum over the accounts is 0', () => {
    fc.assert(
      fc.property(history, (told) => {
        const { state } = played(told).job;
        expect(moveProblems(state)).toEqual([]);
        for (const by of ['all', 'set', 'spec', 'part', 'pool'] as const)
          for (const row of balances(state, by).values()) {
            expect(Object.values(row).reduce((sum, qty) => sum + qty, 0)).toBe(0);
            const bought = state.move.filter((move) => move.src === 'supply').length;
            if (by === 'all') expect(row.supply + bought).toBe(0);
          }
        for (const line of countLines(state)) expect(bookDifference(line)).toBe(0);
      }),
      runs(200),
    );
  });

  it('a pool is the sum of its members, and is never shorter than they are together', () => {
    fc.assert(
      fc.property(history, (told) => {
        const bench = played(told);
        const pools = poolLines(bench.job.state);
        const pool = pools.find((row) => row.lines.length > 1) as PoolLine;
        expect(pool.lines.map((line) => line.setId)).toEqual(bench.sets.slice(0, 2).map((set) => set.id));
        for (const column of POOLED)
          expect(pool[column], column).toBe(pool.lines.reduce((sum, line) => sum + line[column], 0));
        const [a, b] = [bench.seen(0), bench.seen(1)];
        expect(pool.toFill).toBe(a.toFill + b.toFill);
        expect(pool.short).toBe(Math.max(0, a.toFill + b.toFill - a.usable - b.usable));
        expect(pool.short).toBeLessThanOrEqual(a.short + b.short);
      }),
      runs(200),
    );
  });

  it('buying never ends a search, and only its own row does', () => {
    fc.assert(
      fc.property(history, fc.array(fc.nat(50), { minLength: 1, maxLength: 10 }), (told, bought) => {
        const bench = played(told);
        const before = openSearches(bench.job.state).map((search) => [search.countingId, search.missing]);
        expect(before.length).toBe(bench.pieces.filter((piece) => piece.search !== null).length);
        for (const n of bought) bench.play('buy', n, n);
        const after = openSearches(bench.job.state).map((search) => [search.countingId, search.missing]);
        expect(after).toEqual(before);
      }),
      runs(200),
    );
  });

  it('one more piece in hand never makes anything shorter, one gone never makes it less short', () => {
    const short = (lines: readonly (CountLine | PoolLine)[]) => lines.map((line) => line.short ?? 0);
    fc.assert(
      fc.property(
        history,
        fc.constantFrom('buy', 'find', 'back', 'scrap', 'miss', 'send'),
        fc.nat(50),
        (told, op, n) => {
          const bench = played(told);
          const before = [...short(countLines(bench.job.state)), ...short(poolLines(bench.job.state))];
          bench.play(op, n, n);
          const after = [...short(countLines(bench.job.state)), ...short(poolLines(bench.job.state))];
          const more = op === 'buy' || op === 'find' || op === 'back';
          after.forEach((qty, i) => {
            if (more) expect(qty).toBeLessThanOrEqual(before[i] as number);
            else expect(qty).toBeGreaterThanOrEqual(before[i] as number);
          });
        },
      ),
      runs(300),
    );
  });
});
