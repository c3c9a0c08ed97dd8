import fc from 'fast-check';
import type { Condition, Stow } from '../../core/entry/index.ts';

/** Every meaning that an entry line can have, at random, texts with quotes, commas and other scripts included. */

export const anyText = fc.oneof(
  fc.string({ maxLength: 30 }),
  fc.string({ unit: 'grapheme', maxLength: 20 }),
  fc.constantFrom(
    'M8 bracket',
    'a "quoted" part',
    'cover, front',
    '5 13',
    'bag 4',
    'no gasket',
    'hung on wire',
    '1/2" hose',
  ),
  fc.constantFrom('lower front cover', 'caliper', 'left drive shaft', 'bearing cap 3'),
);
export const maybe = <T>(value: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(value, { nil: null });
export const count = fc.integer({ min: 1, max: 9999 });
export const tenths = fc.integer({ min: 1, max: 4000 }).map((n) => n / 10);
const sixtyFourths = fc.integer({ min: 1, max: 640 }).map((n) => Math.round((n / 64) * 25.4 * 1000) / 1000);
export const length = fc.oneof(
  tenths.map((mm) => ({ lengthMm: mm, unit: 'mm' as const })),
  sixtyFourths.map((mm) => ({ lengthMm: mm, unit: 'in' as const })),
);

export const stow: fc.Arbitrary<Stow> = fc.record({
  kind: fc.constantFrom('bag', 'tin', 'tray', 'shelf'),
  label: maybe(
    fc.oneof(fc.integer({ min: 1, max: 999 }).map(String), fc.constantFrom('B2', 'C', '12-3'), anyText),
  ),
});

export const condition: fc.Arbitrary<Condition> = fc.record({
  what: fc.constantFrom(
    ...([
      'stripped',
      'stretched',
      'cross-threaded',
      'bent',
      'cracked',
      'snapped',
      'seized',
      'rusted',
      'rounded',
    ] as const),
    ...([
      'worn',
      'scored',
      'leaking',
      'perished',
      'burnt',
      'milky',
      'dirty',
      'loose',
      'damaged',
      'wrong',
    ] as const),
  ),
  qty: maybe(count),
  holes: fc.array(fc.integer({ min: 1, max: 999 }), { maxLength: 3 }),
});
export const conditions = fc.array(condition, { maxLength: 3 });
