import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  centreAfterPan,
  centreAfterZoom,
  framePhoto,
  layPhoto,
  onPhoto,
  toFraction,
  toScreen,
  toStored,
  toUpright,
  uprightExtent,
  type Turn,
} from '../../core/drawing/geometry.ts';

const fraction = fc.record({
  x: fc.double({ min: 0, max: 1, noNaN: true }),
  y: fc.double({ min: 0, max: 1, noNaN: true }),
});
const photo = fc.record({
  width: fc.integer({ min: 8, max: 12_000 }),
  height: fc.integer({ min: 8, max: 12_000 }),
});
const box = fc.record({
  width: fc.integer({ min: 40, max: 3000 }),
  height: fc.integer({ min: 40, max: 3000 }),
});
const zoom = fc.double({ min: 1, max: 8, noNaN: true });
const turns: Turn[] = [1, 2, 3, 4, 5, 6, 7, 8];

describe('where a mark stands', () => {
  it('a fraction goes to the screen and comes back the same, at any size, fit, zoom and centre', () => {
    fc.assert(
      fc.property(
        photo,
        box,
        fc.constantFrom('whole' as const, 'crop' as const),
        zoom,
        fraction,
        fraction,
        (p, b, fit, z, centre, point) => {
          const view = layPhoto(p, b, { scale: framePhoto(p, b, fit, [], 0).scale * z, centre });
          const back = toFraction(toScreen(point, view), view);
          expect(back.x).toBeCloseTo(point.x, 9);
          expect(back.y).toBeCloseTo(point.y, 9);
        },
      ),
    );
  });

  it('a point of the screen on the photo comes back to the same pixel', () => {
    fc.assert(
      fc.property(photo, box, zoom, fraction, fraction, (p, b, z, centre, at) => {
        const view = layPhoto(p, b, { scale: framePhoto(p, b, 'whole', [], 0).scale * z, centre });
        const point = { x: at.x * b.width, y: at.y * b.height };
        fc.pre(onPhoto(point, view));
        const back = toScreen(toFraction(point, view), view);
        expect(back.x).toBeCloseTo(point.x, 6);
        expect(back.y).toBeCloseTo(point.y, 6);
      }),
    );
  });

  it('a point beside the photo is taken for the nearest point of its edge', () => {
    const view = layPhoto(
      { width: 100, height: 100 },
      { width: 300, height: 100 },
      { scale: 1, centre: { x: 0.5, y: 0.5 } },
    );
    expect(toFraction({ x: 20, y: 50 }, view)).toEqual({ x: 0, y: 0.5 });
    expect(toFraction({ x: 290, y: 500 }, view)).toEqual({ x: 1, y: 1 });
    expect(onPhoto({ x: 20, y: 50 }, view)).toBe(false);
  });
});

describe('how a photo stands in its box', () => {
  it('shown whole it is inside the box and touches two sides', () => {
    fc.assert(
      fc.property(photo, box, (p, b) => {
        const view = layPhoto(p, b, framePhoto(p, b, 'whole', [], 0));
        expect(view.width).toBeLessThanOrEqual(b.width + 1e-6);
        expect(view.height).toBeLessThanOrEqual(b.height + 1e-6);
        expect(Math.min(b.width - view.width, b.height - view.height)).toBeCloseTo(0, 6);
      }),
    );
  });

  it('cropped without marks it leaves no gap, wherever its centre is drawn to', () => {
    fc.assert(
      fc.property(photo, box, fraction, zoom, (p, b, centre, z) => {
        const view = layPhoto(p, b, { scale: framePhoto(p, b, 'crop', [], 0).scale * z, centre });
        expect(view.left).toBeLessThanOrEqual(1e-6);
        expect(view.top).toBeLessThanOrEqual(1e-6);
        expect(view.left + view.width).toBeGreaterThanOrEqual(b.width - 1e-6);
        expect(view.top + view.height).toBeGreaterThanOrEqual(b.height - 1e-6);
      }),
    );
  });

  it('a crop draws back so far that every mark keeps its margin, or shows the photo whole', () => {
    fc.assert(
      fc.property(photo, box, fc.array(fraction, { minLength: 1, maxLength: 12 }), (p, b, marks) => {
        const margin = 30;
        const framing = framePhoto(p, b, 'crop', marks, margin);
        const whole = framePhoto(p, b, 'whole', [], 0).scale;
        const fill = framePhoto(p, b, 'crop', [], 0).scale;
        fc.pre(framing.scale > whole * 1.0001 && framing.scale < fill * 0.9999);
        const view = layPhoto(p, b, framing);
        for (const mark of marks) {
          const at = toScreen(mark, view);
          // The photo's own edge may be nearer than the margin; never is the mark outside the box.
          expect(at.x).toBeGreaterThanOrEqual(-1e-6);
          expect(at.y).toBeGreaterThanOrEqual(-1e-6);
          expect(at.x).toBeLessThanOrEqual(b.width + 1e-6);
          expect(at.y).toBeLessThanOrEqual(b.height + 1e-6);
        }
      }),
    );
  });

  it('marks spread over the height of a shallow box are all in sight', () => {
    const view = layPhoto(
      { width: 1600, height: 1200 },
      { width: 724, height: 300 },
      framePhoto(
        { width: 1600, height: 1200 },
        { width: 724, height: 300 },
        'crop',
        [
          { x: 0.5, y: 0.1 },
          { x: 0.5, y: 0.9 },
        ],
        40,
      ),
    );
    expect(toScreen({ x: 0.5, y: 0.1 }, view).y).toBeGreaterThan(0);
    expect(toScreen({ x: 0.5, y: 0.9 }, view).y).toBeLessThan(300);
  });

  it('a zoom keeps what is under the pointer under it, as long as there is picture all round', () => {
    const p = { width: 4000, height: 3000 };
    const b = { width: 800, height: 600 };
    const scale = 0.4;
    const before = layPhoto(p, b, { scale, centre: { x: 0.5, y: 0.5 } });
    const held = { x: 500, y: 200 };
    const under = toFraction(held, before);
    const centre = centreAfterZoom(p, before, scale * 1.5, held);
    const after = toScreen(under, layPhoto(p, b, { scale: scale * 1.5, centre }));
    expect(after.x).toBeCloseTo(500, 6);
    expect(after.y).toBeCloseTo(200, 6);
  });

  it('drawn along by a finger it follows the finger', () => {
    const p = { width: 4000, height: 3000 };
    const b = { width: 800, height: 600 };
    const before = layPhoto(p, b, { scale: 0.6, centre: { x: 0.5, y: 0.5 } });
    const under = toFraction({ x: 400, y: 300 }, before);
    const view = layPhoto(p, b, { scale: 0.6, centre: centreAfterPan(before, { x: 70, y: -40 }) });
    const after = toScreen(under, view);
    expect(after.x).toBeCloseTo(470, 6);
    expect(after.y).toBeCloseTo(260, 6);
  });
});

describe('the eight ways in which a camera stores a picture', () => {
  // EXIF 2.32, tag 0x0112: which visual side the stored row 0 and the stored column 0 are.
  const firstRow: Record<Turn, 'top' | 'right' | 'bottom' | 'left'> = {
    1: 'top',
    2: 'top',
    3: 'bottom',
    4: 'bottom',
    5: 'left',
    6: 'right',
    7: 'right',
    8: 'left',
  };
  const firstColumn: Record<Turn, 'top' | 'right' | 'bottom' | 'left'> = {
    1: 'left',
    2: 'right',
    3: 'right',
    4: 'left',
    5: 'top',
    6: 'top',
    7: 'bottom',
    8: 'bottom',
  };
  const onSide = { top: ['y', 0], bottom: ['y', 1], left: ['x', 0], right: ['x', 1] } as const;

  it.each(turns)('turn %i puts the first row and the first column on the sides that EXIF names', (turn) => {
    const row = toUpright({ x: 0.3, y: 0 }, turn);
    const column = toUpright({ x: 0, y: 0.3 }, turn);
    const [rowAxis, rowAt] = onSide[firstRow[turn]];
    const [columnAxis, columnAt] = onSide[firstColumn[turn]];
    expect(row[rowAxis]).toBe(rowAt);
    expect(column[columnAxis]).toBe(columnAt);
  });

  it.each(turns)('turn %i there and back is where it began', (turn) => {
    fc.assert(
      fc.property(fraction, (point) => {
        const back = toStored(toUpright(point, turn), turn);
        expect(back.x).toBeCloseTo(point.x, 12);
        expect(back.y).toBeCloseTo(point.y, 12);
      }),
    );
  });

  it('the four quarter turns swap width and height, the other four do not', () => {
    const stored = { width: 4000, height: 3000 };
    expect(turns.map((turn) => uprightExtent(stored, turn).width)).toEqual([
      4000, 4000, 4000, 4000, 3000, 3000, 3000, 3000,
    ]);
  });
});
