import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PAUSE_MS, workTimes } from '../../core/model/work-times.ts';

const MIN = 60_000;
const at = (minutes: number): number => 1_000_000_000 + minutes * MIN;
const times = (from: number, to: number | null, changes: number[], halts: number[] = [], now = 600) =>
  workTimes(
    { startedAt: at(from), endedAt: to === null ? null : at(to) },
    changes.map(at),
    halts.map(at),
    at(now),
  );

describe('when a removal was worked on', () => {
  it('is from start to end, without pauses of more than a quarter of an hour', () => {
    expect(times(0, 60, [5, 14, 40, 50])).toEqual({
      start: at(0),
      end: at(60),
      pauses: [{ from: at(14), to: at(40) }],
      workedMs: 34 * MIN,
    });
  });

  it('a gap of just a quarter of an hour is still work', () => {
    expect(times(0, 15, [])?.pauses).toEqual([]);
    expect(times(0, 16, [])?.pauses).toEqual([{ from: at(0), to: at(16) }]);
  });

  it('a stop of work is a pause however short it was', () => {
    expect(times(0, 20, [10, 12], [10])?.pauses).toEqual([{ from: at(10), to: at(12) }]);
  });

  it('while it is under way, the last gap is a pause that lasts', () => {
    expect(times(0, null, [5], [], 60)).toEqual({
      start: at(0),
      end: null,
      pauses: [{ from: at(5), to: null }],
      workedMs: 5 * MIN,
    });
    expect(times(0, null, [5], [], 10)?.pauses).toEqual([]);
  });

  it('changes before it began and after it ended do not count; without a start nothing is known', () => {
    expect(times(100, 110, [1, 99, 111, 300])?.pauses).toEqual([]);
    expect(workTimes({ startedAt: null, endedAt: at(5) }, [], [], at(9))).toBeNull();
  });

  it('work and pauses make up the whole time, and no pause overlaps another', () => {
    const minute = fc.integer({ min: 0, max: 500 });
    fc.assert(
      fc.property(minute, minute, fc.array(minute), fc.array(minute), (a, b, changes, halts) => {
        const [from, to] = [Math.min(a, b), Math.max(a, b)];
        const sorted = [...changes, ...halts].sort((x, y) => x - y);
        const got = times(from, to, sorted, halts);
        const paused = (got?.pauses ?? []).reduce((sum, one) => sum + ((one.to ?? 0) - one.from), 0);
        expect((got?.workedMs ?? 0) + paused).toBe((to - from) * MIN);
        let last = at(from);
        for (const pause of got?.pauses ?? []) {
          expect(pause.from).toBeGreaterThanOrEqual(last);
          last = pause.to ?? 0;
          const stopped = halts.some((halt) => at(halt) === pause.from);
          expect(stopped || last - pause.from > PAUSE_MS).toBe(true);
        }
      }),
      { seed: 8, numRuns: 400 },
    );
  });
});
