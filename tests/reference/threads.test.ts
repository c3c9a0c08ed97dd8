import { describe, expect, it } from 'vitest';
import {
  findThread,
  metricStressAreaMm2,
  minorDiameterMm,
  pitchDiameterMm,
  THREADS,
  unifiedStressAreaIn2,
} from '../../core/fastening/index.ts';
import { num, offPercent, rowsOf, text, type Row } from './rows.ts';

/** ISO 898-1 by its own words: the mean of d2 and d3, not the short constant that the program uses. */
function areaByDiameters(d: number, pitch: number): number {
  const height = (Math.sqrt(3) / 2) * pitch;
  const d2 = d - 2 * (3 / 8) * height;
  const d3 = d - (17 / 12) * height;
  return (Math.PI / 4) * ((d2 + d3) / 2) ** 2;
}

/** Rows of a metric table whose printed area is not what d2 and d3 give, within the rounding to three figures. */
function wrongAreas(rows: readonly Row[]): readonly string[] {
  return rows
    .filter(
      (row) =>
        offPercent(
          num(row, 'tensile_stress_area_mm2'),
          areaByDiameters(num(row, 'nominal_d_mm'), num(row, 'pitch_mm')),
        ) > 0.5,
    )
    .map((row) => text(row, 'designation'));
}

const METRIC = rowsOf('iso_metric_threads');
const UNIFIED = rowsOf('unified_threads');

describe('threads against ISO 261, ISO 724, ISO 898-1 and ASME B1.1', () => {
  it('finds every listed metric thread with its pitch and area', () => {
    expect(METRIC.length).toBeGreaterThan(30);
    for (const row of METRIC) {
      const found = findThread(text(row, 'designation'));
      if (!found.ok) throw new Error(found.sentence);
      expect(found.value.pitchMm).toBe(num(row, 'pitch_mm'));
      expect(found.value.stressAreaMm2).toBe(num(row, 'tensile_stress_area_mm2'));
      expect(found.value.pitchDiameterMm).toBeCloseTo(num(row, 'd2_mm'), 3);
      expect(found.value.minorDiameterMm).toBeCloseTo(num(row, 'd3_mm'), 3);
    }
  });

  it('computes stress areas as the standards define them', () => {
    for (const row of METRIC) {
      const [d, pitch] = [num(row, 'nominal_d_mm'), num(row, 'pitch_mm')];
      expect(metricStressAreaMm2(d, pitch)).toBeCloseTo(areaByDiameters(d, pitch), 2);
      expect(metricStressAreaMm2(d, pitch)).toBeCloseTo(num(row, 'formula_area_mm2'), 3);
      expect(pitchDiameterMm(d, pitch)).toBeCloseTo(num(row, 'd2_mm'), 3);
      expect(minorDiameterMm(d, pitch)).toBeCloseTo(num(row, 'd3_mm'), 3);
    }
    for (const row of UNIFIED) {
      expect(
        offPercent(
          unifiedStressAreaIn2(num(row, 'major_d_in'), num(row, 'tpi')),
          num(row, 'formula_area_in2'),
        ),
      ).toBeLessThan(0.1);
    }
  });

  it('finds every listed unified thread with its area, and keeps the two constants apart', () => {
    expect(UNIFIED.length).toBeGreaterThan(30);
    for (const row of UNIFIED) {
      const found = findThread(text(row, 'designation'));
      if (!found.ok) throw new Error(found.sentence);
      expect(found.value.tpi).toBe(num(row, 'tpi'));
      expect(found.value.nominalMm).toBeCloseTo(num(row, 'major_d_in') * 25.4, 6);
      expect(found.value.stressAreaMm2 / 25.4 ** 2).toBeCloseTo(num(row, 'tensile_stress_area_in2'), 6);
      const metricWay = metricStressAreaMm2(found.value.nominalMm, found.value.pitchMm) / 25.4 ** 2;
      expect(metricWay).toBeGreaterThan(
        unifiedStressAreaIn2(num(row, 'major_d_in'), num(row, 'tpi')) * 1.001,
      );
    }
  });

  it('has no wrong area in its own table, and would notice the misprints that are about', () => {
    const own = THREADS.filter((t) => t.system === 'metric').map((t) => ({
      designation: t.designation,
      nominal_d_mm: String(t.nominalMm),
      pitch_mm: String(t.pitchMm),
      tensile_stress_area_mm2: String(t.stressAreaMm2),
    }));
    expect(wrongAreas(own)).toEqual([]);
    // Planted: the public table that averages d2 with d1, and a swapped pair of digits.
    const planted: Readonly<Record<string, string>> = {
      M8x1: '39.97',
      'M10x1.25': '62.46',
      'M12x1.25': '93.61',
      M16: '175',
    };
    const bad = own.map((row) => ({
      ...row,
      tensile_stress_area_mm2: planted[row.designation] ?? row.tensile_stress_area_mm2,
    }));
    expect([...wrongAreas(bad)].sort()).toEqual(Object.keys(planted).sort());
  });
});
