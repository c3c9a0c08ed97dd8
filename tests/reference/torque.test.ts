import { describe, expect, it } from 'vitest';
import {
  aircraftTorque,
  appliedTorque,
  leastDragNm,
  lowestPreloadN,
  type Thread,
  convert,
  findThread,
  fullTorque,
  NUT_FACTORS,
  parseClass,
  preloadFromTorque,
  PROOF_SHARE,
  PROOF_SHARE_PERMANENT,
  readingWithDrag,
  referenceTorque,
  torqueFromPreload,
  wrenchSetting,
} from '../../core/fastening/index.ts';
import { inputsOf, num, offPercent, rowsOf, text, type Row } from './rows.ts';

const ROWS = rowsOf('torque_examples');
const LBF = 4.4482216152605;
const group = (name: string): readonly Row[] => ROWS.filter((row) => text(row, 'group').startsWith(name));

function toleranceOf(row: Row, otherwise: number): number {
  return text(row, 'tolerance_percent') === '' ? otherwise : Math.max(1e-9, num(row, 'tolerance_percent'));
}

/** What the program says to a worked example of the fuller formula, in the unit of the example. */
function byFullFormula(row: Row): number {
  const given = inputsOf(row);
  const thread = findThread(given['thread'] ?? '');
  const cls = parseClass(given['class'] ?? '');
  if (!thread.ok || !cls.ok) throw new Error(JSON.stringify(row));
  const found = fullTorque({
    thread: thread.value,
    propertyClass: cls.value,
    threadFriction: Number(given['mu_total']),
    utilisation: Number(given['utilisation'] ?? 0.9),
  });
  if (!found.ok) throw new Error(found.sentence);
  return text(row, 'unit') === 'kN' ? found.value.preloadN / 1000 : found.value.torqueNm;
}

function wrongCells(rows: readonly Row[], otherwise: number): readonly string[] {
  return rows
    .filter((row) => offPercent(byFullFormula(row), num(row, 'expected_low')) > toleranceOf(row, otherwise))
    .map((row) => `${text(row, 'example_id')} ${text(row, 'quantity')}`);
}

describe('torque against worked examples', () => {
  it('takes its nut factors from the published table (Shigley; handbooks)', () => {
    const own = NUT_FACTORS.map((factor) => factor.k);
    for (const row of group('nut_factor')) expect(own).toContain(num(row, 'expected_low'));
    expect(group('nut_factor').length).toBe(7);
  });

  it('reckons T = K·d·F and its inverse as the printed examples do', () => {
    let checked = 0;
    for (const row of group('torque_short_form')) {
      const given = inputsOf(row);
      const d = given['d_mm'] === undefined ? Number(given['d_in']) * 25.4 : Number(given['d_mm']);
      const k = Number(given['K']);
      const expected = num(row, 'expected_low');
      const unit = text(row, 'unit');
      if (text(row, 'quantity') === 'torque') {
        const forceN = given['F_N'] === undefined ? Number(given['F_lbf']) * LBF : Number(given['F_N']);
        const torqueNm = torqueFromPreload(k, d, forceN);
        const shown = convert(torqueNm, 'N.m', unit);
        expect(shown.ok && offPercent(shown.value, expected)).toBeLessThanOrEqual(toleranceOf(row, 0.5));
        checked += 1;
      }
      if (text(row, 'quantity') === 'preload') {
        expect(offPercent(preloadFromTorque(k, d, Number(given['T_Nm'])), expected)).toBeLessThanOrEqual(0.1);
        checked += 1;
      }
    }
    expect(checked).toBeGreaterThanOrEqual(6);
    expect([PROOF_SHARE, PROOF_SHARE_PERMANENT]).toEqual([0.75, 0.9]);
  });

  it('comes to a distributor chart for grade 2 (3/8-16: 20, 1/2-13: 48.8 lbf·ft)', () => {
    for (const [designation, printed] of [
      ['3/8-16', 19.98],
      ['1/2-13', 48.78],
    ] as const) {
      const thread = findThread(designation);
      const cls = parseClass('grade 2');
      if (!thread.ok || !cls.ok) throw new Error(designation);
      const found = referenceTorque({ thread: thread.value, propertyClass: cls.value });
      expect(found.ok && offPercent(found.value.torqueNm / 1.3558179483314004, printed)).toBeLessThan(0.5);
    }
  });

  it('reproduces the VDI 2230 tables, coarse and fine, and would notice a wrong cell', () => {
    const rows = group('vdi2230_coarse').concat(group('vdi2230_fine'));
    expect(rows.length).toBeGreaterThan(140);
    expect(wrongCells(rows, 2)).toEqual([]);
    const bad = rows.map((row, i) =>
      i === 17 ? { ...row, expected_low: String(num(row, 'expected_low') * 1.04) } : row,
    );
    expect(wrongCells(bad, 2).length).toBe(1);
  });

  it('lies above the older basis by up to 12 %, as the sources say: bases are not mixed', () => {
    for (const row of group('older_basis')) {
      const ratio = byFullFormula(row) / num(row, 'expected_low');
      expect(ratio).toBeGreaterThan(1.05);
      expect(ratio).toBeLessThan(1.13);
    }
  });

  it('comes to a supplier table for stainless when the friction is given (M5 class 50 differs between copies)', () => {
    for (const row of group('stainless')) {
      const loose = text(row, 'example_id') === 'M5 A class 50';
      expect(offPercent(byFullFormula(row), num(row, 'expected_low')), text(row, 'example_id')).toBeLessThan(
        loose ? 7 : 1.5,
      );
    }
  });
});

describe('aircraft practice against FAA AC 43.13-1B', () => {
  const threadOf = (row: Row): Thread => {
    const found = findThread(inputsOf(row)['thread'] ?? '');
    if (!found.ok) throw new Error(found.sentence);
    return found.value;
  };

  it('lists every printed range of table 7-1', () => {
    const rows = group('ac43_table_7_1');
    expect(rows.length).toBe(69);
    for (const row of rows) {
      const found = aircraftTorque(threadOf(row));
      const value = {
        recommended_tension_type_nut: found?.tensionNm,
        recommended_shear_type_nut: found?.shearNm,
        maximum_tension_type_nut: found && ([found.mostNm, found.mostNm] as const),
      }[text(row, 'quantity')];
      expect((value?.[0] ?? 0) / 0.1129848290276167).toBeCloseTo(num(row, 'expected_low'), 6);
      expect((value?.[1] ?? 0) / 0.1129848290276167).toBeCloseTo(num(row, 'expected_high'), 6);
    }
  });

  it('lists the least drag of a used self-locking nut, table 7-2', () => {
    for (const row of group('ac43_table_7_2')) {
      expect((leastDragNm(threadOf(row)) ?? 0) / 0.1129848290276167).toBeCloseTo(num(row, 'expected_low'), 6);
    }
  });

  it('comes to the least preload after torque tightening (scatter 1.8)', () => {
    const row = group('vdi2230_scatter')[0];
    const found = lowestPreloadN(41.9, 1.8);
    expect(found.ok && row && offPercent(found.value, num(row, 'expected_low'))).toBeLessThanOrEqual(0.5);
  });
});

describe('wrench extensions against FAA AC 43.13-1B, Navy and Army manuals', () => {
  it('comes to every printed setting, forwards and back', () => {
    const rows = group('extension');
    expect(rows.length).toBe(8);
    for (const row of rows) {
      const given = inputsOf(row);
      const inverse = given['S'] !== undefined;
      const found = (inverse ? appliedTorque : wrenchSetting)({
        torque: Number(given['S'] ?? given['T']),
        wrenchLength: Number(given['L']),
        extensionLength: Number(given['E']),
        angleDeg: Number(given['angle_deg'] ?? 0),
      });
      if (!found.ok) throw new Error(found.sentence);
      expect(
        offPercent(found.value.torque, num(row, 'expected_low')),
        text(row, 'example_id'),
      ).toBeLessThanOrEqual(toleranceOf(row, 0.1));
    }
  });

  it('would notice the cosine left out', () => {
    const row = group('extension').find((r) => text(r, 'example_id') === 'angled extension 45 degrees');
    const right = wrenchSetting({ torque: 100, wrenchLength: 500, extensionLength: 100, angleDeg: 45 });
    const without = wrenchSetting({ torque: 100, wrenchLength: 500, extensionLength: 100 });
    if (!row || !right.ok || !without.ok) throw new Error('example missing');
    expect(offPercent(right.value.torque, num(row, 'expected_low'))).toBeLessThan(0.01);
    expect(offPercent(without.value.torque, num(row, 'expected_low'))).toBeGreaterThan(4);
  });

  it('adds the drag of a self-locking nut (AC 43.13-1B 7-40)', () => {
    const rows = group('prevailing');
    expect(rows.length).toBe(2);
    for (const row of rows) {
      const given = inputsOf(row);
      const low = readingWithDrag(Number(given['desired'] ?? given['minimum']), Number(given['drag']));
      const high = readingWithDrag(Number(given['desired'] ?? given['maximum']), Number(given['drag']));
      expect(low.ok && low.value).toBe(num(row, 'expected_low'));
      expect(high.ok && high.value).toBe(num(row, 'expected_high'));
    }
  });
});

/** Conversions that miss the exact factor. */
function wrongUnits(
  rows: readonly Row[],
  reckon: (value: number, from: string, to: string) => number,
): readonly string[] {
  return rows
    .filter((row) => {
      const given = inputsOf(row);
      const value = reckon(Number(given['value']), given['from'] ?? '', given['to'] ?? '');
      return offPercent(value, num(row, 'expected_low')) > 1e-9;
    })
    .map((row) => text(row, 'example_id'));
}

describe('units against NIST SP 811 and the BIPM', () => {
  const exact = (value: number, from: string, to: string): number => {
    const found = convert(value, from, to);
    if (!found.ok) throw new Error(found.sentence);
    return found.value;
  };

  it('converts with exact factors, and would notice the rounded ones of pocket tables', () => {
    const rows = group('unit_conversion');
    expect(rows.length).toBeGreaterThan(10);
    expect(wrongUnits(rows, exact)).toEqual([]);
    const pocket = (value: number, from: string, to: string): number =>
      Number(exact(value, from, to).toPrecision(5));
    expect(wrongUnits(rows, pocket)).toContain('1 lbf.ft in N.m');
  });

  it('refuses units of different kinds', () => {
    const found = convert(1, 'N·m', 'psi');
    expect(!found.ok && found.sentence).toBe(
      'Expected two units of one kind, such as lbf·ft and N·m, got "N·m to psi".',
    );
  });
});
