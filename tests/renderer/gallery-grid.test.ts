import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { GAP, gridRows, gridSizes, shownIds, stepFrom } from '../../renderer/screens/photos/layout.ts';
import type { GallerySection } from '../../renderer/screens/photos/types.ts';

/** Sections of so many photos each; every second one is a group of alike ones where that is asked for. */
function sectionsOf(counts: readonly number[], alike: boolean): GallerySection[] {
  return counts.map((count, s) => {
    const ids = Array.from({ length: count }, (_, i) => `${s}/${i}`);
    return {
      id: String(s),
      head: `section ${s}`,
      said: false,
      alike: alike && s % 2 === 0 ? ids : null,
      tiles: ids.map((id) => ({
        id,
        src: '',
        taken: '',
        name: id,
        why: '',
        blurred: false,
        dark: false,
        unbound: 0,
        best: false,
      })),
    };
  });
}

const grid = fc.record({
  counts: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 12 }),
  columns: fc.integer({ min: 1, max: 6 }),
  alike: fc.boolean(),
});

describe('the grid of photos', () => {
  it('shows every photo once and in order, heads over the first of each section, what is alike in a row of its own', () => {
    fc.assert(
      fc.property(grid, ({ counts, columns, alike }) => {
        const sections = sectionsOf(counts, alike);
        const rows = gridRows(sections, columns);
        expect(rows.flatMap((row) => row.tiles.map(({ tile }) => tile.id))).toEqual(shownIds(sections));
        const heads = rows.flatMap((row) => row.tiles.flatMap(({ head }) => head?.id ?? []));
        expect(heads).toEqual(sections.map((section) => section.id));
        for (const row of rows) {
          expect(row.tiles.length).toBeLessThanOrEqual(columns);
          for (const [at, { head, span, tile }] of row.tiles.entries()) {
            if (head === null) continue;
            if (head.alike !== null) expect(at).toBe(0);
            // The head is as wide as the photos of its section in this row, and no wider.
            const own = row.tiles.filter((one) => one.tile.id.split('/')[0] === tile.id.split('/')[0]);
            expect(span).toBe(own.length);
          }
        }
      }),
      { seed: 7 },
    );
  });

  it('is walked by arrow keys without ever leaving it, there and back again in the middle of a row', () => {
    fc.assert(
      fc.property(grid, fc.nat(200), ({ counts, columns, alike }, pick) => {
        const sections = sectionsOf(counts, alike);
        const rows = gridRows(sections, columns);
        const ids = shownIds(sections);
        const id = ids[pick % ids.length] as string;
        const at = ids.indexOf(id);
        expect(stepFrom(rows, id, 'ArrowRight')).toBe(ids[Math.min(ids.length - 1, at + 1)]);
        expect(stepFrom(rows, id, 'ArrowLeft')).toBe(ids[Math.max(0, at - 1)]);
        expect(stepFrom(rows, id, 'Home')).toBe(ids[0]);
        expect(stepFrom(rows, id, 'End')).toBe(ids.at(-1));
        expect(stepFrom(rows, id, 'x')).toBeNull();
        const rowOf = (one: string | null) =>
          rows.findIndex((row) => row.tiles.some(({ tile }) => tile.id === one));
        const columnOf = (one: string | null) =>
          rows[rowOf(one)]?.tiles.findIndex(({ tile }) => tile.id === one) ?? -1;
        const down = stepFrom(rows, id, 'ArrowDown');
        expect(rowOf(down)).toBe(Math.min(rows.length - 1, rowOf(id) + 1));
        if (rowOf(down) !== rowOf(id) && columnOf(down) === columnOf(id))
          expect(stepFrom(rows, down, 'ArrowUp')).toBe(id);
      }),
      { seed: 8 },
    );
  });

  it('fills its width with tiles that are never narrower than a finger needs', () => {
    fc.assert(
      fc.property(fc.integer({ min: 200, max: 2600 }), (width) => {
        const { columns, tile } = gridSizes(width);
        expect(columns * tile + (columns - 1) * GAP).toBeLessThanOrEqual(width);
        expect(columns * (tile + 1) + (columns - 1) * GAP).toBeGreaterThan(width);
        expect(tile).toBeGreaterThanOrEqual(144);
      }),
      { seed: 9 },
    );
  });
});
