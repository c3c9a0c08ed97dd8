import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { momentIn, wallClock } from '../../core/photos/clock.ts';
import { cameraOf, clockOf, zoneOf } from '../../core/photos/exif.ts';
import { isBlurred, isDark, sharpnessOfAll } from '../../core/model/shots.ts';
import { lightOf, perceptualHash, sharpnessOf } from '../../core/photos/measure.ts';
import { hammingDistance, type Likeness, nearDuplicates } from '../../core/photos/near.ts';
import { thenTurn, toUpright, type Turn, turnBack, turnOf, uprightSize } from '../../core/photos/turn.ts';

const turn = fc.constantFrom<Turn>(1, 2, 3, 4, 5, 6, 7, 8);
const share = fc.double({ min: 0, max: 1, noNaN: true });

/** Where EXIF says the first row and column of the stored picture lie (CIPA DC-008-2019, table 8, tag 0x0112). */
const FIRST: Readonly<Record<Turn, readonly [string, string]>> = {
  1: ['top', 'left'],
  2: ['top', 'right'],
  3: ['bottom', 'right'],
  4: ['bottom', 'left'],
  5: ['left', 'top'],
  6: ['right', 'top'],
  7: ['right', 'bottom'],
  8: ['left', 'bottom'],
};

describe('turns', () => {
  it('lay the first row and the first column where EXIF says', () => {
    const edge = ({ x, y }: { x: number; y: number }) =>
      x === 0 ? 'left' : x === 1 ? 'right' : y === 0 ? 'top' : 'bottom';
    for (const [key, [row, column]] of Object.entries(FIRST)) {
      const one = turnOf(Number(key));
      expect(edge(toUpright(0.5, 0, one)), `row of ${key}`).toBe(row);
      expect(edge(toUpright(0, 0.5, one)), `column of ${key}`).toBe(column);
    }
  });

  it('made and taken back leave every point where it was', () => {
    fc.assert(
      fc.property(turn, share, share, (one, x, y) => {
        const there = toUpright(x, y, one);
        const back = toUpright(there.x, there.y, turnBack(one));
        expect(Math.abs(back.x - x) + Math.abs(back.y - y)).toBeLessThan(1e-12);
      }),
    );
  });

  it('one after the other are the one turn that says both', () => {
    fc.assert(
      fc.property(turn, turn, share, share, (first, then, x, y) => {
        const once = toUpright(x, y, first);
        const twice = toUpright(once.x, once.y, then);
        const both = toUpright(x, y, thenTurn(first, then));
        expect(Math.abs(both.x - twice.x) + Math.abs(both.y - twice.y)).toBeLessThan(1e-12);
      }),
    );
  });

  it('keep the number of pixels, and change the sides only for the four lying ones', () => {
    fc.assert(
      fc.property(turn, fc.integer({ min: 1, max: 9000 }), fc.integer({ min: 1, max: 9000 }), (one, w, h) => {
        const size = uprightSize(w, h, one);
        expect(size).toEqual(one >= 5 ? { width: h, height: w } : { width: w, height: h });
      }),
    );
  });

  it('that are none mean upright', () => {
    for (const none of [0, 9, -1, 1.5, '6', null, undefined, Number.NaN]) expect(turnOf(none)).toBe(1);
  });
});

const hash = fc.stringMatching(/^[0-9a-f]{16}$/);
const ones = (hex: string): number =>
  [...BigInt(`0x${hex}`).toString(2)].filter((digit) => digit === '1').length;

describe('alike photos', () => {
  it('differ in as many bits as their hashes do', () => {
    fc.assert(
      fc.property(hash, hash, (a, b) => {
        const apart = (BigInt(`0x${a}`) ^ BigInt(`0x${b}`)).toString(16);
        expect(hammingDistance(a, b)).toBe(ones(apart));
      }),
    );
  });

  const photos = fc
    .array(
      fc.record({
        phash: fc.option(
          fc.constantFrom(
            '0000000000000000',
            '0000000000000003',
            '00000000000001ff',
            'ffffffffffffffff',
            'fffffffffffffff0',
          ),
        ),
        sharpness: fc.option(fc.integer({ min: 0, max: 900 })),
        pixels: fc.integer({ min: 1, max: 50 }),
      }),
      { maxLength: 12 },
    )
    .map((list): Likeness[] => list.map((one, i) => ({ ...one, id: `photo ${i}` })));

  it('are grouped once each, the sharpest first, all near to it; photos without a like stay out', () => {
    fc.assert(
      fc.property(photos, (list) => {
        const byId = new Map(list.map((one) => [one.id, one]));
        const groups = nearDuplicates(list).map((group) => group.map((id) => byId.get(id) as Likeness));
        const all = groups.flat();
        expect(new Set(all).size).toBe(all.length);
        for (const [best, ...rest] of groups) {
          expect(rest.length).toBeGreaterThan(0);
          for (const other of rest) {
            expect(hammingDistance(best?.phash ?? '', other.phash ?? '')).toBeLessThanOrEqual(8);
            expect(other.sharpness ?? -1).toBeLessThanOrEqual(best?.sharpness ?? -1);
          }
        }
        const alone = list.filter((one) => one.phash !== null && !all.includes(one));
        for (const [i, one] of alone.entries())
          for (const other of alone.slice(i + 1))
            expect(hammingDistance(one.phash ?? '', other.phash ?? '')).toBeGreaterThan(8);
      }),
    );
  });

  it('of the same sharpness are led by the larger, then by the one that came first', () => {
    const like = (id: string, pixels: number): Likeness => ({
      id,
      phash: '00ff00ff00ff00ff',
      sharpness: 5,
      pixels,
    });
    expect(nearDuplicates([like('a', 1), like('b', 9), like('c', 1)])).toEqual([['b', 'a', 'c']]);
  });
});

const grey = (width: number, height: number, at: (x: number, y: number) => number) => ({
  data: Uint8Array.from({ length: width * height }, (_, i) => at(i % width, Math.floor(i / width))),
  width,
  height,
});

describe('sharpness', () => {
  it('is the variance of the Laplacian: worked out by hand for one bright pixel', () => {
    // 5 × 5, one pixel of 9 in the middle: nine inner values, one of 36, four of -9, four of 0. Mean 0, squares 1620.
    const picture = grey(5, 5, (x, y) => (x === 2 && y === 2 ? 9 : 0));
    expect(sharpnessOf(picture)).toBeCloseTo(1620 / 9, 10);
  });

  it('is nothing on an even ramp or an even bowl, and not said of pictures too small for it', () => {
    expect(sharpnessOf(grey(16, 9, (x) => x * x))).toBeCloseTo(0, 10);
    expect(sharpnessOf(grey(40, 30, (x, y) => 2 * x + 3 * y))).toBeCloseTo(0, 10);
    expect(sharpnessOf(grey(2, 40, () => 7))).toBeNull();
  });

  it('falls with each blurring of the same picture', () => {
    let picture = grey(64, 64, (x, y) => (((x >> 3) + (y >> 3)) % 2 === 0 ? 40 : 210));
    let before = sharpnessOf(picture) as number;
    for (let round = 0; round < 4; round++) {
      const { data } = picture;
      const near = (x: number, y: number) =>
        data[Math.min(63, Math.max(0, y)) * 64 + Math.min(63, Math.max(0, x))] as number;
      picture = grey(
        64,
        64,
        (x, y) => (near(x, y) * 2 + near(x - 1, y) + near(x + 1, y) + near(x, y - 1) + near(x, y + 1)) / 6,
      );
      const now = sharpnessOf(picture) as number;
      expect(now).toBeLessThan(before);
      before = now;
    }
  });

  it('is judged against the camera’s own others, never with fewer than four of them', () => {
    expect(isBlurred(50, [400, 500, 450, 480])).toBe(true);
    expect(isBlurred(97, [400, 500, 450, 480])).toBe(false);
    expect(isBlurred(1, [400, 500, 450])).toBe(false);
    expect(isBlurred(50, [60, 55, 48, 70])).toBe(false);
    expect(isBlurred(null, [400, 500, 450, 480])).toBe(false);
  });
});

describe('the sharpness of all photos of a job', () => {
  it('says of each what is said of it alone, camera by camera', () => {
    const shot = fc.record({
      camera: fc.constantFrom('', 'A', 'B'),
      sharpness: fc.option(fc.double({ min: 0, max: 1000, noNaN: true })),
    });
    fc.assert(
      fc.property(fc.array(shot, { maxLength: 30 }), (list) => {
        const shots = list.map((one, i) => ({ ...one, id: String(i) }));
        const all = sharpnessOfAll(shots);
        for (const one of shots) {
          const others = shots
            .filter((other) => other.id !== one.id && other.camera === one.camera)
            .flatMap((other) => other.sharpness ?? []);
          expect(all.get(one.id) === 'blurred').toBe(isBlurred(one.sharpness, others));
          expect(all.has(one.id)).toBe(one.sharpness !== null && others.length >= 4);
        }
      }),
      { seed: 5 },
    );
  });

  it('has a word for softer ones, which need not be taken again', () => {
    const shots = [100, 100, 100, 100, 100, 59, 61].map((sharpness, i) => ({
      id: String(i),
      camera: 'A',
      sharpness,
    }));
    expect([...sharpnessOfAll(shots)].filter(([, word]) => word === 'soft').map(([id]) => id)).toEqual(['5']);
  });
});

describe('darkness', () => {
  it('is called where next to nothing can be seen, and not for a lit part on a dark ground', () => {
    expect(isDark(lightOf(grey(50, 50, () => 9)))).toBe(true);
    expect(isDark(lightOf(grey(50, 50, (x) => (x < 10 ? 120 : 4))))).toBe(false);
    expect(lightOf(grey(10, 10, (x) => (x < 5 ? 0 : 100))).mean).toBe(50);
  });
});

describe('the perceptual hash', () => {
  const wavy = (k: number) =>
    grey(32, 32, (x, y) => 128 + 50 * Math.sin((x * k) / 9) + 40 * Math.cos((y * (k + 1)) / 11));
  it('stays when the picture gets brighter, and differs for another picture', () => {
    const picture = wavy(1);
    const brighter = { ...picture, data: picture.data.map((value) => Math.min(255, value + 20)) };
    expect(hammingDistance(perceptualHash(picture), perceptualHash(brighter))).toBeLessThanOrEqual(2);
    expect(hammingDistance(perceptualHash(picture), perceptualHash(wavy(3)))).toBeGreaterThan(10);
  });
  it('is taken from 32 × 32 only', () => {
    expect(() => perceptualHash(grey(16, 64, () => 0))).toThrow('32 × 32');
  });
});

describe('clocks', () => {
  it.each([
    // Source: IANA time zone data; from memory of the rules, both checked with zdump.
    ['Europe/Berlin', '2026-07-01T12:00:00', Date.UTC(2026, 6, 1, 10)],
    ['Europe/Berlin', '2026-01-01T12:00:00', Date.UTC(2026, 0, 1, 11)],
    ['America/New_York', '2026-07-01T12:00:00', Date.UTC(2026, 6, 1, 16)],
    ['Asia/Kathmandu', '2026-07-01T12:00:00', Date.UTC(2026, 6, 1, 6, 15)],
    ['+02:00', '2026-07-01T12:00:00', Date.UTC(2026, 6, 1, 10)],
    // 29 March 2026: from 02:00 to 03:00 there is no such time; the later clock is taken.
    ['Europe/Berlin', '2026-03-29T02:30:00', Date.UTC(2026, 2, 29, 1, 30)],
    // 25 October 2026: 02:30 comes twice; the earlier moment is taken.
    ['Europe/Berlin', '2026-10-25T02:30:00', Date.UTC(2026, 9, 25, 0, 30)],
  ])('in %s show %s at the right moment', (zone, local, utc) => {
    expect(momentIn(zone, local)).toBe(utc);
  });

  it('there and back again show the same', () => {
    const zones = fc.constantFrom(
      'Europe/Berlin',
      'America/St_Johns',
      'Pacific/Apia',
      'Australia/Lord_Howe',
      '-03:30',
    );
    const moment = fc
      .integer({ min: Date.UTC(1995, 0), max: Date.UTC(2040, 0) })
      .map((ms) => ms - (ms % 1000));
    fc.assert(
      fc.property(zones, moment, (zone, utc) => {
        const local = wallClock(utc, zone) as string;
        expect(wallClock(momentIn(zone, local) as number, zone)).toBe(local);
      }),
    );
  });

  it('of no zone and no time say so', () => {
    expect(momentIn('Nowhere/Town', '2026-07-01T12:00:00')).toBeNull();
    expect(wallClock(0, 'Nowhere/Town')).toBeNull();
    expect(momentIn('Europe/Berlin', 'yesterday')).toBeNull();
  });

  it.each([
    ['0000:00:00 00:00:00'],
    ['    :  :     :  :  '],
    ['2026:02:31 10:00:00'],
    ['2026:09:01 24:00:00'],
    ['2026:09:01'],
    [''],
    [20260901],
    [null],
  ])('as no camera shows them are unknown: %s', (time) => {
    expect(clockOf(time, '5', '+02:00')).toEqual({ takenLocal: null, takenZone: null, takenUtc: null });
  });

  it('with an offset give the moment, without one they never do', () => {
    const day = fc.integer({ min: Date.UTC(1971, 0), max: Date.UTC(2099, 0) }).map((ms) => ms - (ms % 1000));
    const minutes = fc.integer({ min: -14 * 60, max: 14 * 60 });
    fc.assert(
      fc.property(day, minutes, (utc, offset) => {
        const clock = new Date(utc + offset * 60_000).toISOString();
        const typed = `${clock.slice(0, 10).replaceAll('-', ':')} ${clock.slice(11, 19)}`;
        const size = Math.abs(offset);
        const two = (n: number) => String(n).padStart(2, '0');
        const zone = `${offset < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
        expect(clockOf(typed, null, zone)).toEqual({
          takenLocal: clock.slice(0, 19),
          takenZone: zone,
          takenUtc: utc,
        });
        expect(clockOf(typed, null, null)).toMatchObject({ takenZone: null, takenUtc: null });
      }),
    );
  });

  it('offsets that no place has are none', () => {
    for (const none of ['+15:00', '+02:60', '02:00', 'CET', '   :  ', '', 2, null])
      expect(zoneOf(none)).toBeNull();
    expect(zoneOf('+0200')).toBe('+02:00');
    expect(zoneOf('Z')).toBe('+00:00');
  });
});

describe('a camera', () => {
  it.each([
    ['Acme', 'Field 2', 'Acme Field 2'],
    ['Acme', 'ACME Field 2', 'ACME Field 2'],
    ['Acme', 'Acmeter', 'Acme Acmeter'],
    ['Acme\0\0\0', ' Field 2\0junk', 'Acme Field 2'],
    [undefined, 'Field 2', 'Field 2'],
    ['Acme', 7, 'Acme'],
    [null, null, ''],
  ])('of %s and %s is called %s', (make, model, camera) => {
    expect(cameraOf(make, model)).toBe(camera);
  });
});
