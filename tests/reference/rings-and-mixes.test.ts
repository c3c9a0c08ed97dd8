import { describe, expect, it } from 'vitest';
import {
  drainAndReplace,
  freezePoint,
  identifyORing,
  insideToleranceMm,
  mix,
  publishedPattern,
  ringByDash,
  sectionToleranceMm,
  strengthAfterFlushes,
  volumePercentOf,
} from '../../core/fastening/index.ts';
import { inputsOf, num, offPercent, rowsOf, text, type Row } from './rows.ts';

const AS568 = rowsOf('as568_orings');
const METRIC = rowsOf('metric_orings');
const MIXES = rowsOf('mixing_examples');
const PATTERNS = rowsOf('tightening_patterns').filter(
  (row) => text(row, 'kind') === 'cross_pattern_sequence',
);

/** Inside diameters that do not grow with the number within a series (0, 1, 2, 3, 4, 9), or leap out of line. */
function misprints(rows: readonly Row[]): readonly string[] {
  return rows
    .filter((row, i) => {
      const before = rows[i - 1];
      const after = rows[i + 1];
      if (
        !before ||
        !after ||
        text(before, 'dash')[0] !== text(row, 'dash')[0] ||
        text(after, 'dash')[0] !== text(row, 'dash')[0]
      )
        return false;
      const up = num(row, 'id_in') - num(before, 'id_in');
      const on = num(after, 'id_in') - num(row, 'id_in');
      // Large rings grow by equal steps of half an inch and more: a step unlike the next one is a slip of the pen.
      const even = up > 0.4 && on > 0.4 && Math.abs(up - on) > 0.03 && Math.abs(up - on) < 0.05;
      return up <= 0 || on <= 0 || even;
    })
    .map((row) => text(row, 'dash'));
}

describe('O-rings against SAE AS568, ISO 3601-1 and ISO 6149', () => {
  it('knows every dash number by its size', () => {
    expect(AS568.length).toBeGreaterThan(360);
    for (const row of AS568) {
      const ring = ringByDash(text(row, 'dash'));
      if (!ring.ok) throw new Error(ring.sentence);
      expect(ring.value.insideMm).toBeCloseTo(num(row, 'id_in') * 25.4, 6);
      expect(ring.value.sectionMm).toBeCloseTo(num(row, 'cs_in') * 25.4, 6);
      expect(ring.value.insideToleranceMm).toBeCloseTo(num(row, 'id_tol_in') * 25.4, 6);
    }
  });

  it('has the ring among its candidates anywhere within its tolerance, and first when measured at nominal', () => {
    for (const row of AS568) {
      const [inside, section] = [num(row, 'id_in') * 25.4, num(row, 'cs_in') * 25.4];
      const [slackInside, slackSection] = [num(row, 'id_tol_in') * 25.4, num(row, 'cs_tol_in') * 25.4];
      for (const [a, b] of [
        [0, 0],
        [0.95, 0.95],
        [-0.95, 0.95],
        [0.95, -0.95],
        [-0.95, -0.95],
      ] as const) {
        const found = identifyORing({
          insideMm: inside + a * slackInside,
          sectionMm: section + b * slackSection,
        });
        if (!found.ok) throw new Error(found.sentence);
        const names = found.value.candidates.map((c) => c.name);
        expect(names, `${text(row, 'dash')} ${a} ${b}`).toContain(`AS568-${text(row, 'dash')}`);
        if (a === 0) expect(names.slice(0, 3)).toContain(`AS568-${text(row, 'dash')}`);
      }
    }
  });

  it('would notice swapped digits and a number out of order', () => {
    expect(misprints(AS568)).toEqual([]);
    const swapped = AS568.map((row) => (text(row, 'dash') === '456' ? { ...row, id_in: '13.457' } : row));
    expect(misprints(swapped)).toContain('456');
    const wrong = AS568.map((row) => (text(row, 'dash') === '325' ? { ...row, id_in: '1.745' } : row));
    expect(misprints(wrong).length).toBeGreaterThan(0);
  });

  it('gives the class B tolerances of the ISO table', () => {
    for (const row of METRIC) {
      if (text(row, 'kind') === 'class_B_id_tolerance') {
        expect(Math.abs(insideToleranceMm(num(row, 'id_mm')) - num(row, 'id_tol_mm'))).toBeLessThan(0.006);
        // The exponent as misprinted in the copy would miss the table from 160 mm on.
        if (num(row, 'id_mm') >= 160) {
          expect(Math.abs(0.009 * num(row, 'id_mm') ** 0.93 + 0.11 - num(row, 'id_tol_mm'))).toBeGreaterThan(
            0.05,
          );
        }
      }
      if (text(row, 'kind') === 'iso3601_cross_section') {
        expect(sectionToleranceMm(num(row, 'cs_mm'))).toBe(num(row, 'cs_tol_mm'));
      }
    }
  });

  it('finds port seals and tells metric from inch near twins', () => {
    for (const row of METRIC.filter((r) => text(r, 'kind') === 'iso6149_port_seal')) {
      const found = identifyORing({ insideMm: num(row, 'id_mm'), sectionMm: num(row, 'cs_mm') });
      if (!found.ok) throw new Error(found.sentence);
      expect(found.value.candidates[0]?.name).toContain(text(row, 'key'));
    }
    const first = (insideMm: number, sectionMm: number): readonly string[] => {
      const found = identifyORing({ insideMm, sectionMm });
      return found.ok ? found.value.candidates.map((c) => c.standard) : [];
    };
    expect(first(20, 2.65)[0]).toBe('ISO 3601-1');
    expect(first(30, 3.5).indexOf('JIS B2401 P22A-P50')).toBeLessThan(
      first(30, 3.5).indexOf('plain metric (no size standard)'),
    );
    const twin = identifyORing({ insideMm: 25, sectionMm: 3.54 });
    if (!twin.ok) throw new Error(twin.sentence);
    expect(twin.value.twins.join(' ')).toMatch(/AS568-214 and 25 × 3\.55 mm .* not the same part/);
  });
});

const byGroup = (name: string): readonly Row[] => MIXES.filter((row) => text(row, 'group') === name);
const toleranceOf = (row: Row): number => num(row, 'tolerance');

describe('mixes against published and constructed examples', () => {
  it('comes to concentrate, water and best strength of every example', () => {
    const rows = byGroup('residual_mix');
    expect(rows.length).toBeGreaterThan(20);
    for (const row of rows) {
      const given = inputsOf(row);
      const found = mix({
        capacity: Number(given['total_L']),
        remaining: Number(given['residual_L']),
        remainingStrength: Number(given['residual_conc']),
        targetStrength: Number(given['target_conc']),
        concentrateStrength: Number(given['concentrate_conc']),
      });
      if (!found.ok) throw new Error(found.sentence);
      const value = {
        concentrate_to_add: found.value.concentrate,
        water_to_add: found.value.water,
        best_reachable_conc: found.value.bestStrength,
      }[text(row, 'quantity')];
      expect(Math.abs((value ?? 99) - num(row, 'expected')), text(row, 'example_id')).toBeLessThanOrEqual(
        toleranceOf(row),
      );
      expect(found.value.feasible).toBe(text(row, 'feasible') === 'yes');
      expect(found.value.sentence).toMatch(found.value.feasible ? /^Add / : /^Drain at least .* first/);
    }
  });

  it('drains just enough: after draining what it says, the target can be reached', () => {
    for (const [capacity, remaining, remainingStrength, targetStrength, concentrateStrength] of [
      [10, 6, 0, 0.5, 1],
      [10, 4, 0.7, 0.25, 1],
      [10, 3, 0, 0.4, 0.5],
    ] as const) {
      const input = { capacity, remaining, remainingStrength, targetStrength, concentrateStrength };
      const found = mix(input);
      const drain = found.ok ? (found.value.drainFirst ?? 0) : 0;
      expect(drain).toBeGreaterThan(0);
      const after = mix({ ...input, remaining: remaining - drain });
      const tooLittle = mix({ ...input, remaining: remaining - 0.9 * drain });
      expect(after.ok && after.value.feasible).toBe(true);
      expect(tooLittle.ok && tooLittle.value.feasible).toBe(false);
    }
  });

  it('drains and replaces, flushes, and turns mass into volume as the examples do', () => {
    for (const row of byGroup('drain_and_replace')) {
      const given = inputsOf(row);
      const found = drainAndReplace(
        Number(given['total_L']),
        Number(given['present_conc']),
        Number(given['target_conc']),
        Number(given['replacement_conc']),
      );
      expect(found.ok && Math.abs(found.value - num(row, 'expected'))).toBeLessThanOrEqual(toleranceOf(row));
    }
    for (const row of byGroup('repeated_flush')) {
      const given = inputsOf(row);
      const left = strengthAfterFlushes(
        Number(given['start_conc']),
        Number(given['residual_L']),
        Number(given['total_L']),
        Number(given['flushes']),
      );
      expect(Math.abs(left - num(row, 'expected'))).toBeLessThanOrEqual(1e-6);
    }
    for (const row of byGroup('weight_to_volume')) {
      const given = inputsOf(row);
      const found = volumePercentOf(Number(given['wt_fraction']) * 100, Number(given['SG_glycol']));
      expect(found.ok && Math.abs(found.value - num(row, 'expected'))).toBeLessThanOrEqual(toleranceOf(row));
    }
    expect(
      byGroup('drain_and_replace').length +
        byGroup('repeated_flush').length +
        byGroup('weight_to_volume').length,
    ).toBeGreaterThan(9);
  });

  it('reads freezing points from one family of tables and never across', () => {
    for (const row of byGroup('freeze_point').concat(byGroup('freeze_interpolation'))) {
      const found = freezePoint(Number(inputsOf(row)['glycol_vol_percent']));
      if (!found.ok) throw new Error(found.sentence);
      if (text(row, 'expected').startsWith('below')) expect(found.value.celsius).toBeUndefined();
      else
        expect(Math.abs((found.value.celsius ?? 99) - num(row, 'expected'))).toBeLessThanOrEqual(
          toleranceOf(row),
        );
    }
    for (const row of byGroup('freeze_point_pure')) {
      const given = Number(inputsOf(row)['glycol_wt_percent']);
      const pure = freezePoint(given, 'mass', 'pure');
      if (!pure.ok) throw new Error(pure.sentence);
      expect(Math.abs((pure.value.celsius ?? 99) - num(row, 'expected'))).toBeLessThanOrEqual(
        toleranceOf(row),
      );
      const other = freezePoint(given, 'mass', 'inhibited');
      if (given >= 40)
        expect(other.ok && Math.abs((other.value.celsius ?? 99) - num(row, 'expected'))).toBeGreaterThan(0.2);
    }
  });
});

/** What the standard's own text promises of a sequence: each place once, opposite pairs, fours a quarter apart. */
function faults(sequence: readonly number[]): readonly string[] {
  const n = sequence.length;
  const wrong: string[] = [];
  if (new Set(sequence).size !== n || Math.min(...sequence) !== 1 || Math.max(...sequence) !== n)
    wrong.push('not each once');
  for (let i = 0; i < n; i += 2) {
    if (Math.abs((sequence[i] ?? 0) - (sequence[i + 1] ?? 0)) !== n / 2)
      wrong.push(`pair at ${i + 1} not opposite`);
  }
  for (let i = 0; i < n; i += 4) {
    if ((((sequence[i + 2] ?? 0) - (sequence[i] ?? 0) + n) % n) % (n / 2) !== n / 4)
      wrong.push(`four at ${i + 1} not a quarter`);
  }
  return wrong;
}

describe('cross patterns against ASME PCC-1', () => {
  it('has each published sequence, sound by the standard’s own rule', () => {
    expect(PATTERNS.length).toBe(8);
    for (const row of PATTERNS) {
      const printed = text(row, 'sequence_or_pattern').split(' ').map(Number);
      expect(publishedPattern(num(row, 'n_bolts'))?.sequence).toEqual(printed);
      expect(faults(printed)).toEqual([]);
    }
    expect(publishedPattern(6)).toBeUndefined();
  });

  it('would notice two numbers swapped and one twice', () => {
    expect(faults([1, 5, 7, 3, 2, 6, 8, 4])).toEqual([]);
    expect(faults([1, 3, 5, 7, 2, 6, 4, 8]).length).toBeGreaterThan(0);
    expect(faults([1, 5, 3, 7, 2, 6, 4, 4])).toContain('not each once');
  });
});

describe('the percent tool of these tests', () => {
  it('measures a difference and not its sign', () => {
    expect(offPercent(99, 100)).toBeCloseTo(1, 9);
    expect(offPercent(101, 100)).toBeCloseTo(1, 9);
  });
});
