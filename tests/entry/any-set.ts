import fc from 'fast-check';
import { threadsThatFit } from '../../core/entry/fits.ts';
import { lengthText } from '../../core/entry/numbers.ts';
import { torqueNm } from '../../core/entry/scan-value.ts';
import type { Drive, FastenerItem, LengthGroup, Thread, Torque } from '../../core/entry/index.ts';
import { anyText, maybe, count, tenths, length, stow, conditions } from './any-value.ts';

const metric = fc
  .record({
    size: fc.constantFrom<[number, number]>(
      [3, 0.5],
      [5, 0.8],
      [6, 1],
      [8, 1.25],
      [10, 1.5],
      [12, 1.75],
      [16, 2],
      [24, 3],
    ),
    pitch: fc.constantFrom('assumed', 'said', 'fine', 'unknown'),
  })
  .map(({ size: [diameter, coarse], pitch }): Thread => {
    const pitchMm = pitch === 'unknown' ? null : pitch === 'fine' ? 0.5 : coarse;
    const base = { designation: `M${diameter}`, system: 'metric' as const, threadsPerInch: null };
    return { ...base, pitchMm, pitchAssumed: pitch === 'assumed' };
  });
const inch = (
  designation: string,
  threads: number,
  system: 'unified' | 'pipe',
  pitchAssumed = false,
): Thread => ({
  designation,
  system,
  pitchMm: Math.round((25.4 / threads) * 1000) / 1000,
  threadsPerInch: threads,
  pitchAssumed,
});
const thread = fc.oneof(
  metric,
  fc.constantFrom<Thread>(
    inch('1/4-20 UNC', 20, 'unified'),
    inch('5/16-18', 18, 'unified'),
    inch('#10-32', 32, 'unified'),
    inch('1-1/2-6 UNC', 6, 'unified'),
    inch('1/2 UNF', 20, 'unified', true),
    inch('G 1/2', 14, 'pipe'),
    inch('1/8 NPT', 27, 'pipe'),
    { designation: 'Tr 20x4', system: 'trapezoidal', pitchMm: 4, threadsPerInch: null, pitchAssumed: false },
  ),
);

const drive: fc.Arbitrary<Drive> = fc.oneof(
  fc.constantFrom<Drive>(
    { style: 'hexalobular', size: 'T30', acrossFlatsMm: null },
    { style: 'hexalobular external', size: 'E12', acrossFlatsMm: null },
    { style: 'cross PH', size: 'PH2', acrossFlatsMm: null },
    { style: 'cross PZ', size: null, acrossFlatsMm: null },
    { style: 'slotted', size: null, acrossFlatsMm: null },
    { style: 'hex socket', size: null, acrossFlatsMm: null },
  ),
  fc
    .record({
      style: fc.constantFrom(
        'hex external',
        'hex socket',
        'triple square',
        'bi-hex',
        'square external',
        'square socket',
      ),
      size: length,
    })
    .map(({ style, size: { lengthMm, unit } }) => ({
      style: style as Drive['style'],
      size: lengthText(lengthMm, unit),
      acrossFlatsMm: lengthMm,
    })),
);

const torque: fc.Arbitrary<Torque> = fc.oneof(
  fc.constant<Torque>({ value: null, unit: 'Nm', torqueNm: null, angleDeg: null, byFeel: true, stages: [] }),
  fc.constant<Torque>({ value: null, unit: 'Nm', torqueNm: null, angleDeg: 90, byFeel: false, stages: [] }),
  fc
    .record({
      value: tenths,
      unit: fc.constantFrom('Nm' as const, 'lbf ft' as const, 'lbf in' as const, 'kgf m' as const),
      angleDeg: maybe(fc.integer({ min: 1, max: 720 })),
    })
    .map(({ value, unit, angleDeg }) => ({
      value,
      unit,
      torqueNm: torqueNm(value, unit),
      angleDeg,
      byFeel: false,
      stages: [],
    })),
  fc
    .record({
      values: fc.uniqueArray(fc.integer({ min: 1, max: 400 }), { minLength: 1, maxLength: 4 }),
      angles: fc.array(fc.integer({ min: 1, max: 360 }), { maxLength: 3 }),
      unit: fc.constantFrom('Nm' as const, 'lbf ft' as const, 'kgf m' as const),
    })
    .filter(({ values, angles }) => values.length + angles.length > 2 || values.length > 1)
    .map(({ values, angles, unit }): Torque => {
      const up = [...values].sort((a, b) => a - b);
      const last = up.at(-1) ?? 0;
      return {
        value: last,
        unit,
        torqueNm: torqueNm(last, unit),
        angleDeg: angles.length === 0 ? null : angles.reduce((sum, one) => sum + one, 0),
        byFeel: false,
        stages: [...up.map((value) => `${value} ${unit}`), ...angles.map((angle) => `${angle}°`)],
      };
    }),
);

const holes = fc.oneof(
  { weight: 3, arbitrary: fc.constant<number[]>([]) },
  fc.uniqueArray(fc.integer({ min: 1, max: 99 }), { minLength: 1, maxLength: 3 }),
);

const groups: fc.Arbitrary<LengthGroup[]> = fc
  .array(fc.record({ count: maybe(count), size: length, holes }), { minLength: 1, maxLength: 3 })
  .filter((all) => all.length > 1 || all[0]?.count !== null || all[0].holes.length > 0)
  .map((all) =>
    all.map(({ count: n, size, holes: at }) => ({
      count: at.length > 0 ? at.length : n,
      ...size,
      holes: at,
    })),
  );

const missing = fc.oneof(
  fc.constant({ missingAsFound: null, missingHoles: [] as number[], missingAre: 'not said' as const }),
  fc
    .record({
      n: fc.integer({ min: 0, max: 50 }),
      are: fc.constantFrom('among' as const, 'besides' as const, 'not said' as const),
    })
    .map(({ n, are }) => ({ missingAsFound: n, missingHoles: [] as number[], missingAre: are })),
  fc
    .array(fc.integer({ min: 1, max: 99 }), { minLength: 1, maxLength: 3 })
    .map((holes) => ({ missingAsFound: holes.length, missingHoles: holes, missingAre: 'among' as const })),
);

const kind = fc.oneof(
  fc.record({
    what: fc.constantFrom(
      'unspecified' as const,
      'bolt' as const,
      'screw' as const,
      'stud' as const,
      'set screw' as const,
    ),
    head: maybe(
      fc.constantFrom(
        ...([
          'hex',
          'flange',
          'socket cap',
          'button',
          'countersunk',
          'pan',
          'cheese',
          'round',
          'square',
          'wing',
        ] as const),
        ...(['coach', 'eye', 'knurled', 'T-head', 'shoulder', 'headless'] as const),
      ),
    ),
    sizeMm: fc.constant(null),
    stack: fc.array(
      fc.record({
        what: fc.constantFrom(
          ...(['unspecified', 'bolt', 'screw', 'stud', 'washer', 'spring washer', 'spacer', 'bush'] as const),
          ...(['nut', 'lock nut', 'pin'] as const),
        ),
        qty: fc.integer({ min: 1, max: 9 }),
      }),
      { maxLength: 4 },
    ),
  }),
  fc.record({
    what: fc.constant('nut' as const),
    head: maybe(
      fc.constantFrom(
        'nyloc' as const,
        'castle' as const,
        'thin' as const,
        'domed' as const,
        'flange' as const,
      ),
    ),
    sizeMm: fc.constant(null),
    stack: fc.constant([]),
  }),
  fc.record({
    what: fc.constantFrom(
      ...([
        'washer',
        'spacer',
        'clip',
        'push rivet',
        'rivet',
        'pin',
        'split pin',
        'roll pin',
        'dowel pin',
        'taper pin',
      ] as const),
      ...([
        'clevis pin',
        'R-clip',
        'circlip',
        'E-clip',
        'clamp',
        'cable tie',
        'key',
        'wood screw',
        'self-tapping screw',
      ] as const),
    ),
    head: fc.constant(null),
    sizeMm: maybe(tenths),
    stack: fc.constant([]),
  }),
);

/** Any fastener set. */
export const fasteners: fc.Arbitrary<FastenerItem> = fc
  .record({
    kind,
    name: maybe(anyText),
    happened: fc.constantFrom('off' as const, 'slackened' as const),
    count: maybe(count),
    missing,
    thread: maybe(thread),
    one: maybe(length),
    groups: maybe(groups),
    drive: maybe(drive),
    propertyClass: maybe(
      fc.oneof(fc.constantFrom('8.8', '10.9', 'A2-70', 'grade 5', 'grade 8', '10'), anyText),
    ),
    leftHand: fc.boolean(),
    treatments: fc.uniqueArray(
      fc.constantFrom('threadlock', 'sealant', 'greased', 'oiled', 'anti-seize', 'dry'),
    ),
    torque: maybe(torque),
    renew: maybe(fc.constantFrom('must' as const, 'if worn' as const)),
    stow: maybe(stow),
    conditions,
  })
  .map((r): FastenerItem => {
    const fits = r.thread === null && r.drive !== null ? threadsThatFit(r.drive, r.kind.head) : [];
    return {
      kind: 'fasteners',
      what: r.kind.what,
      name: r.name,
      happened: r.happened,
      count: r.count,
      ...r.missing,
      thread: r.thread,
      threadsPossible: fits,
      threadToConfirm: fits[0] ?? null,
      lengthMm: r.groups === null ? (r.one?.lengthMm ?? null) : null,
      lengthUnit: r.groups === null ? (r.one?.unit ?? null) : null,
      lengths: r.groups ?? [],
      sizeMm: r.kind.sizeMm,
      head: r.kind.head,
      drive: r.drive,
      propertyClass: r.propertyClass,
      leftHand: r.leftHand,
      treatments: r.treatments as FastenerItem['treatments'],
      stack: r.kind.stack,
      torque: r.torque,
      renew: r.renew,
      stow: r.stow,
      conditions: r.conditions,
    };
  });
