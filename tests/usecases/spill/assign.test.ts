import { createRequire } from 'node:module';
import type * as highsTypes from 'highs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assign } from '../../../core/usecases/spill/assign.ts';

// Its types are those of its CommonJS build.
const loadHighs = createRequire(import.meta.url)('highs') as () => Promise<highsTypes.LegacyHighs>;

interface Case {
  readonly supply: number[];
  readonly demand: number[];
  /** −1 where it does not fit. */
  readonly costs: number[][];
}

const cases = (rows: number, groups: number, pieces: number): fc.Arbitrary<Case> =>
  fc.tuple(fc.integer({ min: 1, max: rows }), fc.integer({ min: 1, max: groups })).chain(([r, g]) =>
    fc.record({
      supply: fc.array(fc.integer({ min: 1, max: pieces }), { minLength: r, maxLength: r }),
      demand: fc.array(fc.integer({ min: 1, max: pieces }), { minLength: g, maxLength: g }),
      costs: fc.array(fc.array(fc.integer({ min: -1, max: 9 }), { minLength: g, maxLength: g }), {
        minLength: r,
        maxLength: r,
      }),
    }),
  );

const costOf =
  ({ costs }: Case) =>
  (row: number, group: number): number | undefined => {
    const cost = costs[row]?.[group] ?? -1;
    return cost < 0 ? undefined : cost;
  };

function solved(one: Case): { pieces: number; cost: number } {
  const pairs = assign({ ...one, cost: costOf(one) });
  const given = one.supply.map(() => 0);
  const taken = one.demand.map(() => 0);
  let cost = 0;
  for (const { row, group, qty } of pairs) {
    const each = costOf(one)(row, group);
    expect(each, 'a pair that does not fit').toBeDefined();
    expect(qty).toBeGreaterThan(0);
    given[row] = (given[row] ?? 0) + qty;
    taken[group] = (taken[group] ?? 0) + qty;
    cost += qty * (each ?? 0);
  }
  given.forEach((qty, r) => expect(qty).toBeLessThanOrEqual(one.supply[r] ?? 0));
  taken.forEach((qty, g) => expect(qty).toBeLessThanOrEqual(one.demand[g] ?? 0));
  return { pieces: given.reduce((sum, qty) => sum + qty, 0), cost };
}

/** Every way of putting pieces into holes, tried: the most pieces, then the least cost. */
function tried(one: Case): { pieces: number; cost: number } {
  const units = one.supply.flatMap((qty, r) => new Array<number>(qty).fill(r));
  let best = { pieces: 0, cost: 0 };
  const place = (at: number, left: readonly number[], pieces: number, cost: number): void => {
    if (pieces > best.pieces || (pieces === best.pieces && cost < best.cost)) best = { pieces, cost };
    const row = units[at];
    if (row === undefined) return;
    place(at + 1, left, pieces, cost);
    left.forEach((holes, g) => {
      const each = costOf(one)(row, g);
      if (holes > 0 && each !== undefined)
        place(
          at + 1,
          left.map((qty, i) => (i === g ? qty - 1 : qty)),
          pieces + 1,
          cost + each,
        );
    });
  };
  place(0, one.demand, 0, 0);
  return best;
}

describe('the matching of loose pieces to holes', () => {
  it('places as many as can be placed at the least cost: the same as trying every way, up to 8 pieces', () => {
    fc.assert(
      fc.property(
        cases(8, 4, 3).filter((one) => one.supply.reduce((sum, qty) => sum + qty, 0) <= 8),
        (one) => {
          expect(solved(one)).toEqual(tried(one));
        },
      ),
      { numRuns: 250, seed: 31 },
    );
  });

  it('is what a linear programme of the same problem gives', async () => {
    const highs = await loadHighs();
    await fc.assert(
      fc.asyncProperty(cases(12, 12, 15), async (one) => {
        const names: string[] = [];
        const rowsOf = one.supply.map((): string[] => []);
        const groupsOf = one.demand.map((): string[] => []);
        // A piece placed is worth more than every cost there is.
        const worth = 10 * one.supply.reduce((sum, qty) => sum + qty, 1);
        one.supply.forEach((_, r) =>
          one.demand.forEach((_d, g) => {
            const cost = costOf(one)(r, g);
            if (cost === undefined) return;
            names.push(`${cost - worth} x${r}_${g}`);
            rowsOf[r]?.push(`x${r}_${g}`);
            groupsOf[g]?.push(`x${r}_${g}`);
          }),
        );
        fc.pre(names.length > 0);
        const limits = [
          ...rowsOf.map((list, r) =>
            list.length > 0 ? `r${r}: ${list.join(' + ')} <= ${one.supply[r]}` : '',
          ),
          ...groupsOf.map((list, g) =>
            list.length > 0 ? `g${g}: ${list.join(' + ')} <= ${one.demand[g]}` : '',
          ),
        ].filter((line) => line !== '');
        const objective = names.map((name) => (name.startsWith('-') ? name : `+ ${name}`)).join(' ');
        const answer = highs.solve(`Minimize\n obj: ${objective}\nSubject To\n ${limits.join('\n ')}\nEnd`, {
          output_flag: false,
        });
        expect(answer.Status).toBe('Optimal');
        const { pieces, cost } = solved(one);
        expect(cost - worth * pieces).toBeCloseTo(answer.ObjectiveValue, 3);
      }),
      { numRuns: 120, seed: 32 },
    );
  });

  it('rather places one more piece than places them nicely', () => {
    const one = {
      supply: [1, 1],
      demand: [1, 1],
      costs: [
        [0, 9],
        [0, -1],
      ],
    };
    expect(solved(one)).toEqual({ pieces: 2, cost: 9 });
  });
});
