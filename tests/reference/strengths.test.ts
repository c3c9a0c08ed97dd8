import { describe, expect, it } from 'vitest';
import {
  findThread,
  parseClass,
  proofLoad,
  proofStrength,
  tensileStrength,
  yieldStrength,
  type PropertyClass,
  type Thread,
} from '../../core/fastening/index.ts';
import { num, offPercent, rowsOf, text, type Row } from './rows.ts';

const ROWS = rowsOf('proof_loads');

function classOf(row: Row): PropertyClass {
  const name = text(row, 'grade_or_class');
  const parsed = parseClass(text(row, 'system') === 'SAE J429' ? `grade ${name}` : name);
  if (!parsed.ok) throw new Error(parsed.sentence);
  return parsed.value;
}

function threadOf(designation: string): Thread {
  const found = findThread(designation);
  if (!found.ok) throw new Error(found.sentence);
  return found.value;
}

/** Printed loads that are not area times strength within the rounding of the standard (0.6 %). */
function wrongLoads(rows: readonly Row[]): readonly string[] {
  const strengths = new Map(
    ROWS.filter((r) => text(r, 'quantity') === 'proof_strength_Sp').map((r) => [
      `${text(r, 'grade_or_class')} ${text(r, 'size_or_range')}`,
      num(r, 'value'),
    ]),
  );
  const areas = new Map(
    rowsOf('iso_metric_threads').map((r) => [text(r, 'designation'), num(r, 'tensile_stress_area_mm2')]),
  );
  return rows
    .filter((row) => text(row, 'quantity').startsWith('proof_load'))
    .filter((row) => {
      const size = text(row, 'size_or_range');
      const name = text(row, 'grade_or_class');
      const d = Number(/^M([\d.]+)/.exec(size)?.[1]);
      const strength =
        strengths.get(`${name} all`) ?? strengths.get(`${name} d${d > 16 ? '>' : '<='}16`) ?? 0;
      return offPercent(num(row, 'value'), strength * (areas.get(size) ?? 0)) > 0.6;
    })
    .map((row) => `${text(row, 'size_or_range')} ${text(row, 'grade_or_class')}`);
}

/** A diameter inside a printed range, mm. */
function diameterFor(range: string): number {
  if (range === 'd>16') return 20;
  if (range.startsWith('over 3/4')) return 25.4;
  if (range.startsWith('over 1 ')) return 31.75;
  return 8;
}

describe('strength by class against ISO 898-1, SAE J429 and ISO 3506-1', () => {
  it('gives every printed proof load', () => {
    const loads = ROWS.filter((row) => text(row, 'quantity').startsWith('proof_load'));
    expect(loads.length).toBeGreaterThan(90);
    for (const row of loads) {
      expect(proofLoad(threadOf(text(row, 'size_or_range')), classOf(row))?.loadN).toBe(num(row, 'value'));
    }
  });

  it('gives every printed strength', () => {
    let checked = 0;
    for (const row of ROWS.filter((r) => !text(r, 'quantity').startsWith('proof_load'))) {
      const quantity = text(row, 'quantity');
      const find = quantity.startsWith('proof')
        ? proofStrength
        : quantity.startsWith('tensile')
          ? tensileStrength
          : yieldStrength;
      const value = find(classOf(row), diameterFor(text(row, 'size_or_range')))?.valueMPa ?? 0;
      const printed = num(row, 'value') * (text(row, 'unit') === 'psi' ? 6894.757293168 / 1e6 : 1);
      expect(offPercent(value, printed), JSON.stringify(row)).toBeLessThan(0.001);
      checked += 1;
    }
    expect(checked).toBeGreaterThan(40);
  });

  it('finds the loads sound, and would notice a wrong one', () => {
    expect(wrongLoads(ROWS)).toEqual([]);
    const bad = ROWS.map((row) =>
      text(row, 'size_or_range') === 'M10' && text(row, 'grade_or_class') === '8.8'
        ? { ...row, value: '37300' }
        : row,
    );
    expect(wrongLoads(bad)).toEqual(['M10 8.8']);
  });

  it('says nothing about the proof load of stainless', () => {
    const stainless = parseClass('A2-70');
    if (!stainless.ok) throw new Error(stainless.sentence);
    expect(proofLoad(threadOf('M8'), stainless.value)).toBeUndefined();
  });
});
