import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  identifyThread,
  majorBand,
  readMark,
  THREADS,
  type Thread,
  type ThreadIdentity,
} from '../../core/fastening/index.ts';

function identity(measure: Parameters<typeof identifyThread>[0]): ThreadIdentity {
  const found = identifyThread(measure);
  if (!found.ok) throw new Error(found.sentence);
  return found.value;
}

/** Diameters over the whole tolerance band with the caliper's 0.05 mm on top, evenly spread. */
function samples(thread: Thread, count: number): readonly number[] {
  const band = majorBand(thread);
  const [low, high] = [band.lowMm - 0.05, band.highMm + 0.05];
  return Array.from({ length: count }, (_, i) => low + ((high - low) * i) / (count - 1));
}

const MEASURABLE = THREADS.filter((thread) => thread.nominalMm >= 1.6);

describe('identifying a measured thread', () => {
  it('has the true thread among the first three always, and first in at least 95 %, where the pitch is given', () => {
    let first = 0;
    let all = 0;
    for (const thread of MEASURABLE) {
      for (const diameterMm of samples(thread, 25)) {
        const measure =
          thread.tpi === undefined
            ? { diameterMm, pitchMm: thread.pitchMm }
            : { diameterMm, tpi: thread.tpi };
        const names = identity(measure).candidates.map((c) => c.designation);
        expect(names.slice(0, 3), `${thread.designation} at ${diameterMm}`).toContain(thread.designation);
        all += 1;
        if (names[0] === thread.designation) first += 1;
      }
    }
    expect(all).toBeGreaterThan(1500);
    expect(first / all).toBeGreaterThanOrEqual(0.95);
  });

  it('bears a pitch that was measured, not read from a gauge (±1 %)', () => {
    let first = 0;
    let all = 0;
    for (const thread of MEASURABLE) {
      for (const diameterMm of samples(thread, 9)) {
        for (const error of [-0.01, 0.01]) {
          const found = identity({ diameterMm, pitchMm: thread.pitchMm * (1 + error) }).candidates;
          expect(found.slice(0, 3).map((c) => c.designation)).toContain(thread.designation);
          all += 1;
          if (found[0]?.designation === thread.designation) first += 1;
        }
      }
    }
    expect(first / all).toBeGreaterThanOrEqual(0.9);
  });

  it('has the true size among the first three ranks always where no pitch is given', () => {
    for (const thread of MEASURABLE) {
      for (const diameterMm of samples(thread, 25)) {
        const found = identity({ diameterMm }).candidates.find((c) => c.designation === thread.designation);
        expect(found?.rank ?? 99, `${thread.designation} at ${diameterMm}`).toBeLessThanOrEqual(3);
      }
    }
  });

  it('shares a rank among threads that the diameter cannot tell apart', () => {
    const found = identity({ diameterMm: 11.85 }).candidates;
    expect(found.map((c) => c.designation).sort()).toEqual(['M12', 'M12x1', 'M12x1.25', 'M12x1.5']);
    expect(new Set(found.map((c) => c.rank)).size).toBe(1);
  });

  it('names the traps: M8x1.25 and 5/16-18, whichever of the two was measured', () => {
    for (const measure of [
      { diameterMm: 7.88, pitchMm: 1.25 },
      { diameterMm: 7.85, tpi: 18 },
      { diameterMm: 7.87 },
    ]) {
      const pairs = identity(measure).traps.map((trap) => trap.between.join(' and '));
      expect(pairs).toContain('M8x1.25 and 5/16-18');
    }
    expect(identity({ diameterMm: 9.85, pitchMm: 1.5 }).traps.map((t) => t.between.join(' and '))).toEqual([
      'M10x1.5 and M10x1.25',
      'M10x1.5 and 3/8-16',
    ]);
    expect(identity({ diameterMm: 13.1, tpi: 19 }).traps.map((t) => t.between[1])).toContain(
      'G 1/4 pipe thread',
    );
  });

  it('lets the words on the gauge decide where no caliper can: 0.7 mm is M4, 36 per inch is #8-36', () => {
    expect(identity({ diameterMm: 4.02, pitchMm: 0.7 }).candidates[0]?.designation).toBe('M4');
    expect(identity({ diameterMm: 4.02, tpi: 36 }).candidates[0]?.designation).toBe('#8-36');
  });

  it('says how far off the measurement is, below nominal as external threads are', () => {
    const best = identity({ diameterMm: 9.85, pitchMm: 1.5 }).candidates[0];
    expect(best?.designation).toBe('M10');
    expect(best?.diameterDeviationMm).toBeCloseTo(-0.15, 9);
    expect(best?.says).toContain('−0.15 mm from nominal, inside the 6g band');
  });

  it('follows the published tolerance formulas (ISO 965-1, from memory) within their rounding', () => {
    for (const thread of THREADS.filter((t) => t.system === 'metric')) {
      const band = majorBand(thread);
      const grade = (180 * thread.pitchMm ** (2 / 3) - 3.15 / Math.sqrt(thread.pitchMm)) / 1000;
      const below = (15 + 11 * thread.pitchMm) / 1000;
      expect(Math.abs(band.highMm - band.lowMm - grade) / grade, thread.designation).toBeLessThan(0.055);
      expect(Math.abs(thread.nominalMm - band.highMm - below), thread.designation).toBeLessThan(0.0025);
    }
  });

  it('comes to the printed 2A limits of 5/16-18 and 1/2-13 (ASME B1.1, from memory)', () => {
    for (const [designation, high, low] of [
      ['5/16-18', 0.3113, 0.3026],
      ['1/2-13', 0.4985, 0.4876],
    ] as const) {
      const thread = THREADS.find((t) => t.designation === designation);
      if (!thread) throw new Error(designation);
      expect(majorBand(thread).highMm / 25.4).toBeCloseTo(high, 3);
      expect(Math.abs(majorBand(thread).lowMm / 25.4 - low)).toBeLessThan(0.0002);
    }
  });

  it('refuses what cannot be measured, with the expected range in words', () => {
    for (const [measure, words] of [
      [{ diameterMm: 0.4 }, 'Expected a measured diameter from 1 to 60 mm, got "0.4 mm".'],
      [{ diameterMm: 8, pitchMm: 12 }, 'Expected a pitch from 0.2 to 8 mm, got "12 mm".'],
      [{ diameterMm: 8, tpi: 1 }, 'Expected 3 to 100 threads per inch, got 1.'],
      [{ diameterMm: Number.NaN }, 'Expected a measured diameter from 1 to 60 mm, got "NaN mm".'],
    ] as const) {
      const found = identifyThread(measure);
      expect(found.ok ? '' : found.sentence).toBe(words);
    }
  });

  it('never throws and never ranks a thread that is far away', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 60, noNaN: true }),
        fc.option(fc.double({ min: 0.2, max: 8, noNaN: true })),
        (d, p) => {
          const found = identity(p === null ? { diameterMm: d } : { diameterMm: d, pitchMm: p });
          for (const c of found.candidates) expect(c.outsideBandMm).toBeLessThanOrEqual(0.45);
        },
      ),
    );
  });
});

describe('marks on heads and nuts', () => {
  it('reads property classes, grade lines, stainless and nuts, and says when nothing is marked', () => {
    for (const [mark, words] of [
      ['8.8', 'nominal tensile strength 800 MPa, nominal yield 640 MPa'],
      ['6 radial lines', 'grade 8 (inch)'],
      ['A2-70', 'at least 700 MPa; its proof load is unknown'],
      ['nut 10', 'for bolts up to class 10.9'],
      ['no mark', 'the class is unknown'],
    ] as const) {
      const found = readMark(mark);
      expect(found.ok && found.value.meanings.join(' ')).toContain(words);
    }
    const bad = readMark('4 lines');
    expect(bad.ok ? '' : bad.sentence).toBe(
      'Expected 0, 3 or 6 radial lines on an inch head, got "4 lines".',
    );
  });
});
