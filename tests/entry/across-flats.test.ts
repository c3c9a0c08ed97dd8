import { describe, expect, it } from 'vitest';
import { readEntry, type FastenerItem } from '../../core/entry/index.ts';
import { rowsOf, text } from '../reference/rows.ts';

// Source: ISO 272, the product standards and ASME B18 named in each row of the file, flange heads of all kinds included.
const ROWS = rowsOf('widths_across_flats');

const first = (line: string): FastenerItem => {
  const [item] = readEntry(line).items;
  if (item?.kind !== 'fasteners') throw new Error(`No fasteners in ${line}`);
  return item;
};

const sizesOf = (drive: string, unit: string): ReadonlyMap<string, Set<string>> => {
  const sizes = new Map<string, Set<string>>();
  for (const row of ROWS.filter((one) => one['drive'] === drive && one['unit'] === unit)) {
    const size = text(row, 'tool_size');
    sizes.set(size, (sizes.get(size) ?? new Set()).add(text(row, 'thread_or_drive')));
  }
  return sizes;
};

describe('a head size typed on the number pad', () => {
  it('keeps every thread that an outside table has for a spanner in mm', () => {
    const sizes = sizesOf('hex external', 'mm');
    expect(sizes.size).toBeGreaterThan(20);
    for (const [size, threads] of sizes) {
      expect({ size, possible: first(`5 ${size}`).threadsPossible }).toEqual({
        size,
        possible: expect.arrayContaining([...threads]),
      });
    }
  });

  it('keeps every thread for a spanner in inches', () => {
    const sizes = sizesOf('hex external', 'in');
    expect(sizes.size).toBeGreaterThan(8);
    for (const [size, threads] of sizes) {
      expect({ size, possible: first(`${size} in AF`).threadsPossible }).toEqual({
        size,
        possible: expect.arrayContaining([...threads]),
      });
    }
  });

  it('keeps every thread for a hex key in mm', () => {
    const sizes = sizesOf('hex socket', 'mm');
    expect(sizes.size).toBeGreaterThan(8);
    for (const [size, threads] of sizes) {
      expect({ size, possible: first(`5 bolts ${size} mm hex key`).threadsPossible }).toEqual({
        size,
        possible: expect.arrayContaining([...threads]),
      });
    }
  });

  it('keeps every thread for a hexalobular number', () => {
    for (const row of ROWS.filter(
      (one) => one['drive'] === 'hexalobular' && one['unit'] === 'ISO 10664 no.',
    )) {
      const size = text(row, 'tool_size');
      expect(first(`4 ${size}`).threadsPossible).toContain(text(row, 'thread_or_drive'));
    }
  });

  it('has only flange threads for a flange head, where there are any', () => {
    // 17 mm is M10 on a DIN 931 hexagon, but M12 on a flange; the rows with "flange" say so.
    const flange = ROWS.filter((row) => row['tool_size'] === '17' && /flange/.test(text(row, 'family')));
    const wanted = new Set(flange.map((row) => text(row, 'thread_or_drive')));
    expect(first('8 flange 17 mm').threadsPossible).not.toContain('M10');
    expect([...first('8 flange 17 mm').threadsPossible].sort()).toEqual([...wanted].sort());
    expect(first('8 17').threadsPossible).toContain('M10');
  });
});
