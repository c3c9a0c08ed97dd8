import fc from 'fast-check';
import type {
  ConditionItem,
  ConnectionItem,
  EntryItem,
  FluidItem,
  MadeSafeItem,
  MarkItem,
  MeasurementItem,
  NoteItem,
  PartItem,
  PlaceItem,
  PutOn,
  TemporaryItem,
} from '../../core/entry/index.ts';
import { fasteners } from './any-set.ts';
import { anyText, maybe, count, tenths, stow, condition, conditions } from './any-value.ts';

const happened = fc.constantFrom('off' as const, 'slackened' as const, 'opened' as const, 'aside' as const);

const putOn = fc.constantFrom<PutOn>(
  { what: 'sealant', typed: 'PTFE tape' },
  { what: 'sealant', typed: 'sealant' },
  { what: 'threadlock', typed: 'thread locker' },
  { what: 'greased', typed: 'greased' },
  { what: 'oiled', typed: 'oiled' },
  { what: 'anti-seize', typed: 'anti-seize' },
);
const treatments = fc.uniqueArray(putOn, { maxLength: 2 });

const part: fc.Arbitrary<PartItem> = fc.record({
  kind: fc.constant('part'),
  name: anyText,
  look: maybe(fc.constantFrom('gasket', 'O-ring', 'seal', 'filter', 'sleeve', 'shim')),
  happened,
  qty: maybe(count),
  ownPlace: fc.boolean(),
  stamped: maybe(anyText),
  renew: maybe(fc.constantFrom('must', 'if worn')),
  heldBy: maybe(anyText),
  treatments,
  stow: maybe(stow),
  conditions,
});

const connection: fc.Arbitrary<ConnectionItem> = fc.record({
  kind: fc.constant('connection'),
  what: fc.constantFrom('hose', 'pipe', 'plug', 'connector', 'cable', 'earth lead', 'union', 'linkage'),
  name: anyText,
  happened,
  qty: maybe(count),
  ends: maybe(fc.integer({ min: 1, max: 99 })),
  clampMm: maybe(tenths),
  pins: maybe(fc.integer({ min: 1, max: 99 })),
  leaveAlone: fc.boolean(),
  heldBy: maybe(anyText),
  treatments,
  stow: maybe(stow),
  conditions,
});

const fluid: fc.Arbitrary<FluidItem> = fc
  .record({
    kind: fc.constant('fluid'),
    name: anyText.filter((name) => name !== ''),
    did: maybe(fc.constantFrom('drained', 'lost', 'filled', 'bled')),
    amount: maybe(fc.integer({ min: 1, max: 99_999 })),
    type: maybe(fc.oneof(fc.constantFrom('75W-90', 'DOT 4', 'ISO VG 46'), anyText)),
    conditions,
  })
  .map(({ amount, ...rest }) => ({
    ...rest,
    amountMl: amount,
    amountTyped: amount === null ? null : `${amount} ml`,
  }));

const madeSafe: fc.Arbitrary<MadeSafeItem> = fc.record({
  kind: fc.constant('made safe'),
  energy: fc.constantFrom(
    'electricity',
    'pressure',
    'spring',
    'load',
    'fuel',
    'motion',
    'ignition',
    'heat',
    'other',
  ),
  how: fc.oneof(anyText, fc.constantFrom('battery earth off', 'on stands', 'fuel tap shut')),
});

const temporary: fc.Arbitrary<TemporaryItem> = fc.record({
  kind: fc.constant('temporary'),
  name: fc.oneof(anyText, fc.constantFrom('rag', 'caging bolt')).filter((name) => name !== ''),
  role: fc.constantFrom('blocks', 'supports', 'cages', 'locks', 'aid'),
  qty: maybe(count),
  where: maybe(fc.oneof(anyText, fc.constant('in the inlet'))),
});

const measurement: fc.Arbitrary<MeasurementItem> = fc.record({
  kind: fc.constant('measurement'),
  what: fc.oneof(anyText, fc.constantFrom('end float', 'oil pressure')),
  value: fc.oneof(
    tenths,
    fc.double({ noNaN: true, noDefaultInfinity: true }).map((v) => (Object.is(v, -0) ? 0 : v)),
  ),
  unit: fc.oneof(fc.constantFrom('mm', 'bar', ''), anyText),
});

const small = fc.oneof(
  fc.record({ kind: fc.constant('mark' as const), text: anyText }) satisfies fc.Arbitrary<MarkItem>,
  fc.record({ kind: fc.constant('condition' as const), condition }) satisfies fc.Arbitrary<ConditionItem>,
  fc.record({ kind: fc.constant('stow' as const), stow }),
  fc.record({ kind: fc.constant('place' as const), place: anyText }) satisfies fc.Arbitrary<PlaceItem>,
  fc.record({ kind: fc.constant('treatment' as const), treatment: putOn }),
  fc.record({ kind: fc.constant('note' as const), text: anyText }) satisfies fc.Arbitrary<NoteItem>,
);

export const anyItem: fc.Arbitrary<EntryItem> = fc.oneof(
  { weight: 4, arbitrary: fasteners },
  part,
  connection,
  fluid,
  madeSafe,
  temporary,
  measurement,
  small,
);

/** Lines as they are typed and mistyped: words of the trade, numbers, signs and noise, in any order. */
export const anyLine: fc.Arbitrary<string> = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc
    .array(
      fc.oneof(
        fc.constantFrom(
          ...'5 13 M8x25 M10x1.5x30 1/4-20 #10-32 1/2 16mm 3/4" x × * , ; . + & - ( ) : = / "quoted" " bolt nut washer hex flange AF'.split(
            ' ',
          ),
          ...'of them long rest missing as found hole 3 snapped one stripped bag 4 class 8.8 grade T30 hose clamp ends plug 3-pin'.split(
            ' ',
          ),
          ...'slackened aside off opened hung on wire must come out rag in the inlet drained oil 2,5 l with stack each note: no a torque 25 Nm 90°'.split(
            ' ',
          ),
        ),
        fc.string({ maxLength: 6 }),
      ),
      { maxLength: 14 },
    )
    .map((words) => words.join(' ')),
);
