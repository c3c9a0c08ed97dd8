import { describe, expect, it } from 'vitest';
import {
  DRIVE_ROWS,
  HEXALOBULAR_MM,
  threadsForAcrossFlats,
  threadsForHexalobular,
  threadsForHexKey,
} from '../../core/fastening/index.ts';
import { num, rowsOf, text, type Row } from './rows.ts';

const ROWS = rowsOf('widths_across_flats');

function toolMm(row: Row): number {
  const [whole = '', fraction] = text(row, 'tool_size').includes('-')
    ? text(row, 'tool_size').split('-')
    : ['0', text(row, 'tool_size')];
  const [above, below] = (fraction ?? '').split('/');
  const value = Number(whole) + Number(above) / Number(below ?? 1);
  return text(row, 'unit') === 'in' ? value * 25.4 : value;
}

/** Larger threads never have a smaller tool within one standard: catches a slipped line. */
function outOfOrder(
  rows: readonly { size: string; standard: string; family: string; mm: number }[],
): readonly string[] {
  const wrong: string[] = [];
  for (const [i, row] of rows.entries()) {
    const before = rows[i - 1];
    if (before && before.standard === row.standard && before.family === row.family && row.mm < before.mm) {
      wrong.push(`${row.standard} ${row.size}`);
    }
  }
  return wrong;
}

describe('heads against ISO 272, withdrawn DIN and ASME B18', () => {
  it('names, for every listed head, its thread and its standard', () => {
    const heads = ROWS.filter((row) => text(row, 'drive').startsWith('hex '));
    expect(heads.length).toBeGreaterThan(300);
    for (const row of heads) {
      const find = text(row, 'drive') === 'hex external' ? threadsForAcrossFlats : threadsForHexKey;
      const match = find(toolMm(row)).find((m) => m.size === text(row, 'thread_or_drive'));
      expect(
        match?.rows.map((r) => r.standard),
        JSON.stringify(row),
      ).toContain(text(row, 'standard'));
      expect(match?.deviationMm ?? 9).toBeCloseTo(0, 6);
    }
  });

  it('names every thread of a hexalobular number, and the size of the socket', () => {
    for (const row of ROWS.filter((r) => text(r, 'drive') === 'hexalobular')) {
      if (text(row, 'unit') === 'mm') {
        expect(HEXALOBULAR_MM.get(text(row, 'thread_or_drive'))).toBe(num(row, 'tool_size'));
      } else {
        const sizes = threadsForHexalobular(text(row, 'tool_size')).map((m) => m.size);
        expect(sizes).toContain(text(row, 'thread_or_drive'));
      }
    }
  });

  it('never gives one answer where the tables know several', () => {
    expect(threadsForAcrossFlats(10).map((m) => m.size)).toEqual(['M6', 'M8']);
    expect(threadsForAcrossFlats(13).map((m) => m.size)).toEqual(['M8', 'M10']);
    expect(
      threadsForAcrossFlats(17)
        .map((m) => m.size)
        .slice(0, 2),
    ).toEqual(['M10', 'M12']);
    expect(threadsForHexKey(10).map((m) => m.size).length).toBeGreaterThan(4);
  });

  it('knows a head that measures a little under its spanner (ISO 4014: 13 is 12.73 at least), and no smaller one', () => {
    const sizes = (mm: number): readonly string[] => threadsForAcrossFlats(mm).map((m) => m.size);
    expect(sizes(12.75)).toContain('M8');
    expect(sizes(12.5)).not.toContain('M8');
    expect(sizes(13.3)).toEqual([]);
  });

  it('has no slipped line, and would notice one', () => {
    const own = DRIVE_ROWS.filter((r) => r.toolMm !== undefined).map((r) => ({ ...r, mm: r.toolMm ?? 0 }));
    expect(outOfOrder(own)).toEqual([]);
    const slipped = own.map((r) => (r.standard === 'ISO 4014' && r.size === 'M12' ? { ...r, mm: 13 } : r));
    expect(outOfOrder(slipped)).toEqual(['ISO 4014 M12']);
  });
});
