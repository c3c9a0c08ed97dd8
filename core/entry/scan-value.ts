import type { Sense } from './atom.ts';
import type { Stow, TorqueUnit } from './meaning.ts';
import { FRAC, INCH_WORD, isFraction, NUM, numberOf, sticky, STOP, STOP_OR_TIMES, toMm } from './numbers.ts';
import type { Found } from './scan-thread.ts';

/** One pattern and what it means; null when it only looked like it. */
interface Rule {
  readonly pattern: RegExp;
  readonly read: (parts: RegExpExecArray) => readonly Sense[] | null;
}

export const QUOTED = String.raw`"((?:[^"]|"")*)"`;
/** The text inside quotes, doubled quotes made single. */
export const unquote = (inner: string): string => inner.replaceAll('""', '"');

const TORQUE_NM: Readonly<Record<TorqueUnit, number>> = {
  Nm: 1,
  'lbf ft': 1.3558179483,
  'lbf in': 0.112984829,
  'kgf m': 9.80665,
};

function torqueUnit(typed: string): TorqueUnit {
  const unit = typed.toLowerCase();
  if (unit.includes('k')) return 'kgf m';
  if (unit.includes('in')) return 'lbf in';
  return unit.includes('ft') || unit.includes('foot') ? 'lbf ft' : 'Nm';
}

/** Newton metres, kept to 0.001. */
export function torqueNm(value: number, unit: TorqueUnit): number {
  return Math.round(value * TORQUE_NM[unit] * 1000) / 1000;
}

const LBF = String.raw`(?:lbs?f?|pounds?)`;
const TORQUE_UNIT = String.raw`(n[·. ]?m|newton[ -]?met(?:re|er)s?|${LBF}[·.\s-]?(?:ft|foot|in)|(?:ft|foot|in)[·.\s-]?${LBF}|kgf?[·. ]?m|kpm)`;
const ANGLE = String.raw`(\d{1,4})\s?(?:°|degs?|degrees)`;

const ML: Readonly<Record<string, number>> = { ml: 1, cc: 1, cl: 10, dl: 100, l: 1000 };
/** US customary and imperial: NIST SP 811, Appendix B. */
const GALLONS: Readonly<Record<string, number>> = { us: 3785.411784, imp: 4546.09 };
const SHARE: Readonly<Record<string, number>> = { gal: 1, qt: 4, pt: 8 };

/** Millilitres; null for a pint, quart or gallon that does not say whose it is. */
function millilitres(value: number, unit: string, whose: string): number | null {
  const name = unit.toLowerCase();
  if (/^(pt|pint|qt|quart|gal)/.test(name)) {
    const gallon = GALLONS[/^u/i.test(whose) ? 'us' : /^i/i.test(whose) ? 'imp' : ''];
    const share = SHARE[name.startsWith('p') ? 'pt' : name.startsWith('q') ? 'qt' : 'gal'] ?? 1;
    return gallon === undefined ? null : Math.round((value * gallon) / share);
  }
  const factor = ML[name] ?? 1000;
  return Math.round(value * factor);
}

/** Property classes of ISO 898-1 that are understood without the word "class". */
export const CLASSES = '4[.,]6|4[.,]8|5[.,]6|5[.,]8|6[.,]8|8[.,]8|9[.,]8|10[.,]9|12[.,]9|14[.,]9';

function className(word: string, value: string): string {
  const plain = value.replace(/(?<=\d),(?=\d)/, '.');
  return /^gr/i.test(word) && !plain.includes('.') ? `grade ${plain.toUpperCase()}` : plain.toUpperCase();
}

function stow(kind: string, label: string | undefined, quoted: string | undefined): Stow {
  const name = kind.toLowerCase().replace('baggie', 'bag');
  return { kind: name as Stow['kind'], label: quoted === undefined ? (label ?? null) : unquote(quoted) };
}

/** "holes 2 and 5 M8" are hole 2 and five of something; "holes 2 and 5 30 long" are two holes. */
const NO_NUMBER = String.raw`(?!\d|\s*\p{L}*\d(?![\d.,/\-]*\s*(?:mm|in|["″”])?\s*long))`;
const holesIn = (text: string): readonly number[] => (text.match(/\d+/g) ?? []).map(Number);

const FLUID_TYPE: Rule = {
  pattern: sticky(
    String.raw`(\d{1,2}w-?\d{2,3}|dot\s?\d(?:[.,]\d)?|iso\s?vg\s?\d+|vg\s?\d+|sae\s?\d+w?|hlp?\s?\d+|(?:api\s)?gl-?\d)${STOP}`,
  ),
  read: ([whole]) => [{ s: 'fluid-type', type: whole }],
};

const ENDS: Rule = {
  pattern: sticky(String.raw`(?:(\d{1,3})|(both|one|two|three|four))[ -]ends?${STOP}`),
  read: ([, digits, word]) => {
    const words = ['', 'one', 'two', 'three', 'four'];
    return [
      {
        s: 'ends',
        ends:
          digits === undefined
            ? word?.toLowerCase() === 'both'
              ? 2
              : words.indexOf(word?.toLowerCase() ?? '')
            : Number(digits),
      },
    ];
  },
};

/** "4 off M10", "3 no. M8", "6 pcs": the count with the word that goes with counts. */
const COUNT_OFF: Rule = {
  pattern: sticky(String.raw`(\d{1,4})\s?(?:off|no\.|nos\.?|pcs\.?|pieces)(?=\s+[\p{L}\d#])`),
  read: ([, digits]) => [{ s: 'num', value: Number(digits), whole: true }],
};

/** Rules for what begins with a digit. */
const DIGIT_RULES: readonly Rule[] = [
  COUNT_OFF,
  {
    pattern: sticky(
      String.raw`(${NUM})\s?${TORQUE_UNIT}${STOP}(?:\s*(?:\+|plus|then|and)\s*${ANGLE}${STOP})?`,
    ),
    read: ([, typed = '', name = '', angle]) => {
      const value = numberOf(typed);
      const unit = torqueUnit(name);
      const angleDeg = angle === undefined ? null : Number(angle);
      return [
        {
          s: 'torque',
          torque: { value, unit, torqueNm: torqueNm(value, unit), angleDeg, byFeel: false, stages: [] },
        },
      ];
    },
  },
  {
    pattern: sticky(String.raw`${ANGLE}${STOP}(?!\s*c\b)`),
    read: ([, angle]) => [
      {
        s: 'torque',
        torque: {
          value: null,
          unit: 'Nm',
          torqueNm: null,
          angleDeg: Number(angle),
          byFeel: false,
          stages: [],
        },
      },
    ],
  },
  {
    pattern: sticky(
      String.raw`(${NUM}|${FRAC})\s?(?:(us|imp(?:erial)?)\.?\s?)?(ml|cc|cl|dl|l|lit(?:re|er)s?|ltrs?|pts?|pints?|qts?|quarts?|gal(?:lon)?s?)${STOP}`,
    ),
    read: ([, typed = '', whose = '', unit = '']) => [
      { s: 'amount', ml: millilitres(numberOf(typed), unit, whose) },
    ],
  },
  FLUID_TYPE,
  ENDS,
  {
    pattern: sticky(
      String.raw`(\d{1,3})(?:-pins?|[ -]ways?|[ -]pole|\s?pins? (?=(?:electrical )?(?:plug|connector)))${STOP}`,
    ),
    read: ([, digits]) => [{ s: 'pins', pins: Number(digits) }],
  },
  {
    pattern: sticky(String.raw`(${CLASSES})${STOP}(?!\s?(?:mm|in\b|"))`),
    read: ([, value = '']) => [{ s: 'class', value: value.replace(',', '.') }],
  },
  {
    pattern: sticky(String.raw`(${NUM}|${FRAC})\s?(mm|cm|inch(?:es)?|${INCH_WORD}|["″”])${STOP_OR_TIMES}`),
    read: ([, typed = '', name = '']) => {
      const unit = /^[cm]m$/i.test(name) ? 'mm' : 'in';
      const value = numberOf(typed) * (name.toLowerCase() === 'cm' ? 10 : 1);
      return value > 0 && value < 100_000 ? [{ s: 'size', mm: toMm(value, unit), unit, bare: false }] : null;
    },
  },
  {
    pattern: sticky(String.raw`${FRAC}${STOP_OR_TIMES}`),
    read: ([typed]) => {
      const value = numberOf(typed);
      return value > 0 && value < 1000
        ? [{ s: 'size', mm: toMm(value, 'in'), unit: 'in', bare: true }]
        : null;
    },
  },
  {
    pattern: sticky(String.raw`${NUM}(?:(?=[x×*](?:\s|\d|m\d|$)|(?<!\d[.,]\d*)m\d)|(?![\p{L}\p{N}]|[.,]\d))`),
    read: ([typed]) => {
      const value = numberOf(typed);
      return value < 1e6
        ? [{ s: 'num', value, whole: Number.isInteger(value) && !isFraction(typed) && !/[.,]/.test(typed) }]
        : null;
    },
  },
];

/** Rules for what begins with a letter. */
const LETTER_RULES: readonly Rule[] = [
  FLUID_TYPE,
  {
    pattern: sticky(String.raw`type:?\s*(?:${QUOTED})`),
    read: ([, quoted = '']) => [{ s: 'fluid-type', type: unquote(quoted) }],
  },
  ENDS,
  {
    pattern: sticky(
      String.raw`(?:property\s+)?(class|cl\.?|strength|grade|gr\.?)\s?(?:${QUOTED}|(\d{1,2}(?:[.,]\d)?|[a-d]\d(?:-\d\d)?|[a-d](?![\p{L}])))${STOP}`,
    ),
    read: ([, word = '', quoted, value = '']) => [
      { s: 'class', value: quoted === undefined ? className(word, value) : unquote(quoted) },
    ],
  },
  {
    pattern: sticky(String.raw`a[1245](?:-\d\d)?${STOP}`),
    read: ([value]) => [{ s: 'class', value: value.toUpperCase() }],
  },
  {
    pattern: sticky(
      String.raw`(baggie|bag|tin|tray|shelf)(?:\s*(?:no\.?|nr\.?|number|#)?\s*(?:${QUOTED}|([a-z]?\d+[a-z]?(?:[-/]\d+)?|[A-Z](?![\p{L}]))))?${STOP}(?![.,]\d)`,
    ),
    read: ([, kind = '', quoted, label]) => [{ s: 'stow', stow: stow(kind, label, quoted) }],
  },
  {
    pattern: sticky(
      String.raw`(?:(?<!\p{L}\s)(?:holes|positions)\s?(\d{1,4}(?:\s*(?:,|and|&|\+)\s*\d{1,4}${NO_NUMBER})*)|(?:holes|positions)\s?(\d{1,4}(?:\s*(?:and|&|\+)\s*\d{1,4}${NO_NUMBER})*))${STOP}`,
    ),
    read: ([whole]) => [{ s: 'holes', holes: holesIn(whole) }],
  },
  {
    pattern: sticky(
      String.raw`(?:hole|position|pos\.?|number|no\.?|nr\.?)\s?#?(\d{1,4}(?:\s*(?:and|&)\s*\d{1,4}${NO_NUMBER})?)${STOP}`,
    ),
    read: ([, list = '']) => [{ s: 'holes', holes: holesIn(list) }],
  },
  {
    pattern: sticky(
      String.raw`(?:stamped|stamp)(?:\s+(?:no\.?|number|with))?:?\s*(?:${QUOTED}|([\p{L}\p{N}][\p{L}\p{N}./-]*(?:\s(?:and|&)\s[\p{L}\p{N}]{1,3}(?=\s*(?:[,;]|$)))?))`,
    ),
    read: ([, quoted, value = '']) => [
      { s: 'stamped', value: quoted === undefined ? value : unquote(quoted) },
    ],
  },
];

/** The first rule that fits at this place: values with their units, classes, bags, holes, bare numbers. */
export function scanValue(text: string, at: number): Found | null {
  const first = text.charAt(at);
  const rules = /\p{L}/u.test(first) ? LETTER_RULES : DIGIT_RULES;
  for (const { pattern, read } of rules) {
    pattern.lastIndex = at;
    const parts = pattern.exec(text);
    if (!parts || parts[0] === '') continue;
    const senses = read(parts);
    if (senses) return { end: at + parts[0].length, senses };
  }
  return null;
}
