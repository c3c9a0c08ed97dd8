import { good, refuse, type Basis, type Outcome } from './outcome.ts';
import { parseClass, sayClass, type PropertyClass } from './strengths.ts';

/** What a mark on a head or nut says. */
export interface MarkReading extends Basis {
  readonly meanings: readonly string[];
  readonly propertyClass?: PropertyClass;
}

/** Nut classes: a nut of class 8 goes with bolts up to 8.8. Source: ISO 898-2, from memory. */
const NUT_CLASSES: ReadonlyMap<string, string> = new Map([
  ['5', '5.8'],
  ['6', '6.8'],
  ['8', '8.8'],
  ['9', '9.8'],
  ['10', '10.9'],
  ['12', '12.9'],
]);

/** Radial lines on an inch head. Source: SAE J429. */
const LINES: ReadonlyMap<number, string> = new Map([
  [0, '2'],
  [3, '5'],
  [6, '8'],
]);

/**
 * Reads a class or grade mark: "8.8", "10.9", "A2-70", "3 lines", "6 radial lines", "no mark", "nut 10", "|8|".
 * A head without a mark may be of any class, so it is said to be unknown.
 */
export function readMark(text: string): Outcome<MarkReading> {
  const bare = text.trim().toLowerCase();
  const lines = /^(\d)\s*(radial\s*)?(lines?|dashes|strokes?)$/.exec(bare);
  const nut = /^(?:nut\s*\|?|\|)(\d{1,2})\|?$/.exec(bare);
  if (/^(none|no mark|unmarked|plain|blank)$/.test(bare))
    return good(
      reading([
        'No mark: the class is unknown; an inch head without lines is grade 1 or 2, or not to any grade.',
      ]),
    );
  if (lines) return lineMark(Number(lines[1]), text);
  if (nut) return nutMark(nut[1] ?? '', text);
  const cls = parseClass(text);
  if (!cls.ok) return cls;
  return good(reading(meaning(cls.value), cls.value));
}

function lineMark(count: number, typed: string): Outcome<MarkReading> {
  const grade = LINES.get(count);
  if (grade === undefined)
    return refuse('mark.lines', '0, 3 or 6 radial lines on an inch head', typed.trim());
  const cls: PropertyClass = { system: 'SAE J429', name: grade, stainless: false };
  return good(
    reading(
      [`${count} radial lines: ${sayClass(cls)} (inch)${count === 0 ? ', or grade 1, or no grade' : ''}`],
      cls,
    ),
  );
}

function nutMark(name: string, typed: string): Outcome<MarkReading> {
  const bolt = NUT_CLASSES.get(name);
  if (bolt === undefined) return refuse('mark.nut', 'a nut class of 5, 6, 8, 9, 10 or 12', typed.trim());
  return good(
    reading([
      `Nut class ${name}: for bolts up to class ${bolt}.`,
      'Two digits with a leading zero (04, 05) are thin nuts: they cannot bear the full load of the bolt.',
    ]),
  );
}

function meaning(cls: PropertyClass): readonly string[] {
  if (cls.stainless) {
    const [steel = '', strength = ''] = cls.name.split('-');
    return [
      `Stainless ${steel}, tensile strength at least ${Number(strength) * 10} MPa; its proof load is unknown, its torque too.`,
    ];
  }
  if (cls.system === 'SAE J429') return [`${sayClass(cls)} (inch)`];
  const [tensile = '', share = ''] = cls.name.split('.');
  const nominal = Number(tensile) * 100;
  return [
    `Class ${cls.name}: nominal tensile strength ${nominal} MPa, nominal yield ${nominal * Number(share) * 0.1} MPa.`,
    ...(cls.name === '8.8'
      ? ['Class 8.8 is not SAE grade 8: grade 8 has 6 lines and is nearer to 10.9.']
      : []),
  ];
}

function reading(meanings: readonly string[], propertyClass?: PropertyClass): MarkReading {
  return {
    meanings,
    ...(propertyClass ? { propertyClass } : {}),
    formula: 'read from the mark',
    inputs: [],
    source: 'ISO 898-1, ISO 898-2, SAE J429, ISO 3506-1',
    limits: ['A mark says what the part was sold as; heat, wear and forged parts change that.'],
    cautions: ['A worn or stretched bolt keeps its mark and loses its strength.'],
  };
}
