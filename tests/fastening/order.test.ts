import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  publishedPattern,
  ringSequence,
  tighteningOrder,
  type HolePoint,
  type OrderOptions,
  type PictureSize,
  type TighteningOrder,
} from '../../core/fastening/index.ts';

const PICTURE: PictureSize = { width: 4000, height: 3000 };

function order(points: readonly HolePoint[], options: OrderOptions = {}, picture = PICTURE): TighteningOrder {
  const found = tighteningOrder(points, picture, options);
  if (!found.ok) throw new Error(found.sentence);
  return found.value;
}

interface View {
  /** Camera off the axis, degrees; distance in radii; turn and mirror of the picture; noise as a share of the radius. */
  readonly tiltDeg?: number;
  readonly distance?: number;
  readonly turnDeg?: number;
  readonly mirror?: boolean;
  readonly noise?: number;
  readonly seed?: number;
}

/** Repeatable noise, −1 to 1. */
function noiseOf(seed: number): () => number {
  let state = (seed * 2654435761 + 12345) % 4294967296;
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return (state / 4294967296) * 2 - 1;
  };
}

/** Points in a plane (radius about 1), seen by a camera, as fractions of the picture. */
function seen(plane: readonly (readonly [number, number])[], view: View = {}): readonly HolePoint[] {
  const tilt = ((view.tiltDeg ?? 0) * Math.PI) / 180;
  const turn = ((view.turnDeg ?? 0) * Math.PI) / 180;
  const distance = view.distance ?? 4;
  const noise = noiseOf(view.seed ?? 1);
  const scale = 900;
  return plane.map(([px, py], i) => {
    const near = distance / (distance + py * Math.sin(tilt));
    const x = px * near + (view.noise ?? 0) * noise();
    const y = py * Math.cos(tilt) * near + (view.noise ?? 0) * noise();
    const u = (x * Math.cos(turn) - y * Math.sin(turn)) * (view.mirror ? -1 : 1);
    const v = x * Math.sin(turn) + y * Math.cos(turn);
    return { id: String(i + 1), x: 0.5 + (u * scale) / PICTURE.width, y: 0.5 + (v * scale) / PICTURE.height };
  });
}

function ring(n: number): readonly (readonly [number, number])[] {
  return Array.from({ length: n }, (_, i) => {
    const angle = (2 * Math.PI * i) / n - 1.1;
    return [Math.cos(angle), Math.sin(angle)] as const;
  });
}

function grid(
  columns: number,
  rows: number,
  stepX = 0.4,
  stepY = 0.4,
): readonly (readonly [number, number])[] {
  return Array.from({ length: columns * rows }, (_, i) => [
    ((i % columns) - (columns - 1) / 2) * stepX,
    (Math.floor(i / columns) - (rows - 1) / 2) * stepY,
  ]);
}

describe('rings', () => {
  it('follow the published pattern where there is one, from the first marker on', () => {
    for (const n of [4, 8, 12, 16, 20, 24, 28, 32]) {
      const found = order(seen(ring(n)));
      expect(found.layout).toBe('ring');
      expect(found.published).toBe(true);
      expect(found.order.map(Number)).toEqual(publishedPattern(n)?.sequence);
    }
  });

  it('have a sensible order for 3, 5, 6, 7 and others (common practice, no source)', () => {
    const sequence = (n: number): string => order(seen(ring(n))).order.join(' ');
    expect(sequence(3)).toBe('1 2 3');
    expect(sequence(5)).toBe('1 3 5 2 4');
    expect(sequence(6)).toBe('1 4 2 5 3 6');
    expect(sequence(7)).toBe('1 4 7 3 6 2 5');
    expect(sequence(10)).toBe('1 6 3 8 2 7 4 9 5 10');
  });

  it('tighten each hole once, and even counts in opposite pairs, for every count', () => {
    for (let n = 3; n <= 48; n += 1) {
      const sequence = ringSequence(n);
      expect([...sequence].sort((a, b) => a - b)).toEqual(Array.from({ length: n }, (_, i) => i + 1));
      if (n % 2 === 0) {
        for (let i = 0; i < n; i += 2)
          expect(Math.abs((sequence[i] ?? 0) - (sequence[i + 1] ?? 0))).toBe(n / 2);
      } else if (n > 3) {
        for (let i = 1; i < n; i += 1) {
          const step = Math.abs((sequence[i] ?? 0) - (sequence[i - 1] ?? 0));
          expect(Math.min(step, n - step)).toBe((n - 1) / 2);
        }
      }
    }
  });

  it('are found with the camera 45° off and 1 % noise, for every count from 5 to 32', () => {
    for (let n = 5; n <= 32; n += 1) {
      const plain = order(seen(ring(n))).order;
      for (let seed = 1; seed <= 8; seed += 1) {
        for (const distance of [2.5, 4, 10]) {
          const found = order(
            seen(ring(n), { tiltDeg: 45, distance, noise: 0.01, seed, turnDeg: seed * 37 }),
          );
          expect(found.layout, `${n} holes, seed ${seed}, distance ${distance}`).toBe('ring');
          expect(found.order).toEqual(plain);
        }
      }
    }
  });

  it('bear markers that were set by a thumb (up to 5 % of the radius)', () => {
    for (const n of [5, 6, 8, 12]) {
      for (let seed = 1; seed <= 20; seed += 1) {
        const found = order(seen(ring(n), { tiltDeg: 45, noise: 0.05, seed }));
        expect(found.order).toEqual(order(seen(ring(n))).order);
      }
    }
  });

  it('do not depend on how the picture is turned or mirrored', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 32 }),
        fc.integer({ min: 0, max: 359 }),
        fc.boolean(),
        fc.integer({ min: 1, max: 32 }),
        (n, turnDeg, mirror, pick) => {
          const firstId = String(((pick - 1) % n) + 1);
          const plain = order(seen(ring(n)), { firstId }).order;
          expect(order(seen(ring(n), { turnDeg, mirror }), { firstId }).order).toEqual(plain);
          expect(plain[0]).toBe(firstId);
        },
      ),
    );
  });

  it('shift as a whole with the first bolt', () => {
    for (const n of [5, 6, 8, 12]) {
      const from1 = order(seen(ring(n))).order.map(Number);
      const from3 = order(seen(ring(n)), { firstId: '3' }).order.map(Number);
      const forwards = from1.map((place) => ((place + 1) % n) + 1);
      const backwards = from1.map((place) => ((3 - place + 2 * n) % n) + 1);
      expect([forwards, backwards]).toContainEqual(from3);
    }
  });

  it('need the size of the picture: a circle in a wide picture is still a ring', () => {
    const wide = { width: 6000, height: 2000 };
    const points = ring(8).map(([x, y], i) => ({
      id: String(i + 1),
      x: 0.5 + (x * 900) / 6000,
      y: 0.5 + (y * 900) / 2000,
    }));
    expect(order(points, {}, wide).order.map(Number)).toEqual(publishedPattern(8)?.sequence);
  });

  it('say that a flat ring may be an oval, and go outwards where the part is known to be one', () => {
    const oval = seen(ring(10).map(([x, y]) => [x, 0.45 * y] as const));
    expect(order(oval).limits.join(' ')).toContain('if the part is oval');
    expect(order(oval, { shape: 'round' }).limits.join(' ')).not.toContain('oval');
    expect(order(seen(ring(10), { tiltDeg: 45 })).limits.join(' ')).not.toContain('oval');
    const outwards = order(oval, { shape: 'other' });
    expect(outwards.layout).not.toBe('ring');
    expect(outwards.undoing).toEqual([...outwards.order].reverse());
  });

  it('hint at a hole that is not shown, in a slanted view too, and not where none is missing', () => {
    for (const tiltDeg of [0, 45]) {
      const holes = seen(ring(8), { tiltDeg });
      expect(order(holes.filter((p) => p.id !== '4')).hint).toContain('Between holes');
      expect(order(holes.filter((p) => p.id !== '4')).hint).toMatch(/3 and 5|5 and 3/);
      expect(order(holes).hint).toBeUndefined();
    }
  });
});

describe('everything that is no ring', () => {
  it('goes from the centre outwards, sides in turn', () => {
    const line = order(seen(grid(6, 1)));
    expect([line.layout, line.order.join(' ')]).toEqual(['line', '3 4 2 5 1 6']);
    const head = order(seen(grid(5, 2)));
    expect(head.layout).toBe('rectangle');
    expect([...head.order.slice(0, 2)].sort()).toEqual(['3', '8']);
    expect([...head.order.slice(-4)].sort()).toEqual(['1', '10', '5', '6']);
    const cover = order(seen(grid(3, 3)));
    expect([cover.layout, cover.order[0]]).toEqual(['scattered', '5']);
  });

  it('knows one and two holes', () => {
    expect(order(seen([[0, 0]])).layout).toBe('single');
    const pair = order(seen(grid(2, 1)));
    expect([pair.layout, pair.order.join(' '), pair.undoing.join(' ')]).toEqual(['pair', '1 2', '1 2']);
  });

  it('undoes castings from the ends inwards, and rings crosswise', () => {
    const head = order(seen(grid(4, 2)));
    expect(head.undoing).toEqual([...head.order].reverse());
    expect(head.undoingSays).toContain('ends inwards');
    const flange = order(seen(ring(8)));
    expect(flange.undoing).toEqual(flange.order);
  });

  it('never moves farther out and then back in by more than the width of a row', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 })), {
          minLength: 5,
          maxLength: 20,
          selector: (p) => p.join(' '),
        }),
        (places) => {
          const plane = places.map(([x, y]) => [x / 10, y / 10] as const);
          const found = order(seen(plane));
          expect([...found.order].sort()).toEqual(places.map((_, i) => String(i + 1)).sort());
          if (found.layout === 'ring') return;
          const c = [0, 1].map((k) => plane.reduce((sum, p) => sum + (p[k as 0 | 1] ?? 0), 0) / plane.length);
          const distance = (id: string): number => {
            const p = plane[Number(id) - 1] ?? [0, 0];
            return Math.hypot(p[0] - (c[0] ?? 0), p[1] - (c[1] ?? 0));
          };
          const reach = Math.max(...found.order.map(distance));
          let out = 0;
          for (const id of found.order) {
            expect(distance(id)).toBeGreaterThanOrEqual(out - 0.0601 * reach);
            out = Math.max(out, distance(id));
          }
        },
      ),
    );
  });

  it('does not depend on how the picture is turned or mirrored', () => {
    for (const plane of [
      grid(6, 1),
      grid(5, 2),
      grid(4, 2, 0.5, 0.3),
      grid(3, 3),
      [
        [0, 0],
        [0.3, 0.1],
        [-0.4, 0.2],
        [0.1, -0.5],
        [0.6, 0.4],
        [-0.7, -0.3],
      ] as const,
    ]) {
      const plain = order(seen(plane));
      for (const turnDeg of [10, 45, 90, 133, 180, 270]) {
        for (const mirror of [false, true]) {
          const turned = order(seen(plane, { turnDeg, mirror }));
          expect(turned.order).toEqual(plain.order);
          expect(turned.layout).toBe(plain.layout);
        }
      }
    }
  });

  it('gives one order over several sets', () => {
    const points = seen(grid(4, 2)).map((p, i) => ({ ...p, setId: i % 2 === 0 ? 'long' : 'short' }));
    const found = order(points);
    expect(found.order.length).toBe(8);
    expect(found.inputs[0]).toBe('8 holes of 2 sets in one order');
  });
});

describe('the question', () => {
  it('is asked until it is answered', () => {
    const holes = seen(ring(8));
    expect(order(holes).question).toBe('Are all holes of this joint on the photo?');
    expect(order(holes, { allShown: true }).question).toBeUndefined();
    expect(order(holes, { allShown: false }).cautions.join(' ')).toContain('not the whole joint');
  });
});

describe('bad input', () => {
  it('is refused with the expected range in words', () => {
    const said = (points: readonly HolePoint[], options: OrderOptions = {}, picture = PICTURE): string => {
      const found = tighteningOrder(points, picture, options);
      return found.ok ? '' : found.sentence;
    };
    expect(said([])).toBe('Expected 1 to 200 holes, got 0.');
    expect(said([{ id: '1', x: 1.2, y: 0 }])).toBe(
      'Expected places as fractions from 0 to 1 of the picture, got "1.2, 0".',
    );
    expect(said([{ id: '1', x: Number.NaN, y: 0 }])).toContain('fractions from 0 to 1');
    expect(
      said([
        { id: '1', x: 0, y: 0 },
        { id: '1', x: 1, y: 1 },
      ]),
    ).toBe('Expected each hole once, got "1".');
    expect(
      said([
        { id: '1', x: 0, y: 0 },
        { id: '2', x: 0, y: 0 },
      ]),
    ).toContain('different places');
    expect(said(seen(ring(5)), { firstId: '9' })).toBe(
      'Expected a first hole that is one of the holes, got "9".',
    );
    expect(said(seen(ring(5)), {}, { width: 0, height: 10 })).toContain(
      'a picture with a width and a height',
    );
  });
});
