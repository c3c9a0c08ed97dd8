import { figuresTyped, parseDecimal, parseFraction, toFigures } from './numbers.ts';
import { good, refuse, type Outcome } from './outcome.ts';

/**
 * Exact factors: inch 25.4 mm, pound 0.45359237 kg, standard gravity 9.80665 m/s², US gallon 231 in³,
 * imperial gallon 4.54609 l. Source: NIST SP 811, BIPM.
 */
const POUND_FORCE_N = 0.45359237 * 9.80665;
const INCH_M = 0.0254;

const TORQUE_UNITS = {
  N·m: 1,
  N·cm: 0.01,
  daN·m: 10,
  lbf·ft: POUND_FORCE_N * 0.3048,
  lbf·in: POUND_FORCE_N * INCH_M,
  ozf·in: (POUND_FORCE_N * INCH_M) / 16,
  kgf·m: 9.80665,
  kgf·cm: 0.0980665,
} as const;
export type TorqueUnit = keyof typeof TORQUE_UNITS;
export const TORQUE_UNIT_NAMES = Object.keys(TORQUE_UNITS) as readonly TorqueUnit[];

const FORCE_UNITS = { N: 1, kN: 1000, lbf: POUND_FORCE_N, kip: POUND_FORCE_N * 1000, kgf: 9.80665 } as const;
const PRESSURE_UNITS = {
  Pa: 1,
  kPa: 1e3,
  MPa: 1e6,
  bar: 1e5,
  psi: POUND_FORCE_N / (INCH_M * INCH_M),
} as const;
const LENGTH_UNITS = { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 } as const;
const VOLUME_UNITS = {
  ml: 0.001,
  l: 1,
  'US qt': 231 * 0.016387064 * 0.25,
  'US gal': 231 * 0.016387064,
  'imp gal': 4.54609,
  'imp pt': 4.54609 / 8,
} as const;

const MASS_UNITS = { g: 0.001, kg: 1, oz: 0.45359237 / 16, lb: 0.45359237 } as const;
/** Size of a degree in kelvin, and where the scale begins. */
const SCALES: Readonly<Record<string, readonly [number, number]>> = {
  '°C': [1, 273.15],
  '°F': [5 / 9, 459.67 * (5 / 9)],
};

/** Every unit with its size in the base unit of its kind (N·m, N, Pa, mm, l, kg). */
const KINDS: readonly (readonly [string, Readonly<Record<string, number>>])[] = [
  ['torque', TORQUE_UNITS],
  ['force', FORCE_UNITS],
  ['pressure', PRESSURE_UNITS],
  ['length', LENGTH_UNITS],
  ['volume', VOLUME_UNITS],
  ['mass', MASS_UNITS],
  ['area', { 'mm²': 1, 'in²': 25.4 * 25.4 }],
  ['temperature', { '°C': 1, '°F': 5 / 9 }],
];

/** Converts between two units of one kind with exact factors; refuses units that are unknown or of different kinds. */
export function convert(value: number, from: string, to: string): Outcome<number> {
  const a = canonicalUnit(from);
  const b = canonicalUnit(to);
  const units = KINDS.find(([, own]) => a in own && b in own)?.[1];
  const size = units?.[a];
  const target = units?.[b];
  if (size === undefined || target === undefined) {
    return refuse('unit.unknown', 'two units of one kind, such as lbf·ft and N·m', `${from} to ${to}`);
  }
  if (a === b) return good(value);
  const scale = SCALES[a];
  const other = SCALES[b];
  if (scale && other) return good((value * scale[0] + scale[1] - other[1]) / other[0]);
  return good((value * size) / target);
}

/** The unit that a piece of text means, with its kind and every unit of that kind; undefined where none is meant. */
export function unitsLike(
  text: string,
): { readonly unit: string; readonly kind: string; readonly units: readonly string[] } | undefined {
  const unit = canonicalUnit(text);
  const found = KINDS.find(([, units]) => unit in units);
  return found && { unit, kind: found[0], units: Object.keys(found[1]) };
}

/** Other spellings of a unit, lower case without points and blanks. */
const SPELLINGS: Readonly<Record<string, string>> = {
  '"': 'in',
  '″': 'in',
  inch: 'in',
  inches: 'in',
  foot: 'ft',
  feet: 'ft',
  millimetre: 'mm',
  millimetres: 'mm',
  millimeters: 'mm',
  c: '°C',
  degc: '°C',
  f: '°F',
  degf: '°F',
  celsius: '°C',
  fahrenheit: '°F',
  lbs: 'lb',
  pound: 'lb',
  pounds: 'lb',
  kp: 'kgf',
  newton: 'N',
  newtons: 'N',
  'lbf/in²': 'psi',
  'lbf/in2': 'psi',
  'n/mm²': 'MPa',
  'n/mm2': 'MPa',
  mm2: 'mm²',
  sqmm: 'mm²',
  in2: 'in²',
  sqin: 'in²',
};

function canonicalUnit(text: string): string {
  const torque = torqueUnit(text);
  if (torque !== undefined) return torque;
  const bare = text.trim().toLowerCase().replace(/[.\s]/g, '');
  const known = KINDS.flatMap(([, units]) => Object.keys(units));
  const exact = known.find((unit) => unit === text.trim());
  const found =
    exact ?? known.find((unit) => unit.toLowerCase().replace(/\s/g, '') === bare) ?? SPELLINGS[bare];
  return found ?? (bare === '' ? '' : (volumeUnit(bare, 'l') ?? text.trim()));
}

/** Newton metres of a torque given in a unit. Exact factor. */
export function toNewtonMetres(value: number, unit: TorqueUnit): number {
  return value * TORQUE_UNITS[unit];
}

/** A torque in N·m seen in another unit. Exact factor. */
export function fromNewtonMetres(torqueNm: number, unit: TorqueUnit): number {
  return torqueNm / TORQUE_UNITS[unit];
}

/** The unit of torque that a piece of text means; word order and points do not matter ("ft-lb", "lbf·ft", "in lb"). */
function torqueUnit(text: string): TorqueUnit | undefined {
  const bare = text
    .toLowerCase()
    .replace(/pounds?|pound-force/g, 'lb')
    .replace(/foot|feet/g, 'ft')
    .replace(/inch(es)?/g, 'in')
    .replace(/newton|neuton/g, 'n')
    .replace(/met(er|re)s?/g, 'm')
    .replace(/[\s.·⋅∙•*×x-]/g, '')
    .replace(/"/g, 'in');
  if (/^(nm|mn)$/.test(bare)) return 'N·m';
  if (/^n?cmn?$/.test(bare) && bare.includes('n')) return 'N·cm';
  if (bare === 'danm') return 'daN·m';
  if (/^(lbs?f?ft|ftlbs?f?)$/.test(bare)) return 'lbf·ft';
  if (/^(lbs?f?in|inlbs?f?)$/.test(bare)) return 'lbf·in';
  if (/^(ozf?in|inozf?)$/.test(bare)) return 'ozf·in';
  if (/^(kgf?m|mkgf?|kpm|mkp)$/.test(bare)) return 'kgf·m';
  if (/^(kgf?cm|cmkgf?|kpcm|cmkp)$/.test(bare)) return 'kgf·cm';
  return undefined;
}

/** A torque as typed, with its value in N·m beside it. */
export interface Torque {
  readonly torqueNm: number;
  readonly typed: string;
  readonly typedValue: number;
  readonly unit: TorqueUnit;
}

/** The greatest torque taken as meant: a hand tool with a multiplier ends near here (common practice, no source). */
const TORQUE_MAX_NM = 20_000;

/**
 * Reads a torque with its unit: "40 N·m", "40 Nm", "29.5 lbf·ft", "29 ft-lb", "90 in lb", "4 kgf·m", "29,5 Nm".
 * Without a unit the given default is taken; without a default it is refused, because a bare 90 hides a factor of nine.
 * Range: more than 0, at most 20 000 N·m.
 */
export function parseTorque(text: string, defaultUnit?: TorqueUnit): Outcome<Torque> {
  const expected = 'a torque with its unit, such as 25 N·m, 18 lbf·ft or 90 lbf·in';
  const typed = text.trim();
  const parts = /^([+-]?[\d.,\u00a0\u202f ]*\d[.,]?)\s*(.*)$/.exec(typed);
  if (!parts) return refuse('torque.unreadable', expected, typed);
  const number = parseDecimal(parts[1] ?? '');
  if (!number.ok) return number;
  const tail = (parts[2] ?? '').trim();
  const unit = tail === '' ? defaultUnit : torqueUnit(tail);
  if (unit === undefined) return refuse('torque.unit', expected, typed);
  const torqueNm = toNewtonMetres(number.value, unit);
  if (!(torqueNm > 0) || torqueNm > TORQUE_MAX_NM) {
    return refuse('torque.range', 'a torque above 0 and up to 20 000 N·m', typed);
  }
  return good({ torqueNm, typed, typedValue: number.value, unit });
}

/**
 * A torque for reading: "25.4 N·m". Three figures unless told, because no bolt is tightened to four.
 * `torqueNm` in N·m.
 */
export function formatTorque(torqueNm: number, unit: TorqueUnit = 'N·m', figures = 3): string {
  return `${toFigures(fromNewtonMetres(torqueNm, unit), figures)} ${unit}`;
}

/** Both sides of the ocean: "25 N·m (18.4 lbf·ft)". Small torques are shown in lbf·in. */
export function formatTorqueBoth(torqueNm: number, figures = 3): string {
  const other: TorqueUnit = torqueNm < 20 ? 'lbf·in' : 'lbf·ft';
  return `${formatTorque(torqueNm, 'N·m', figures)} (${formatTorque(torqueNm, other, figures)})`;
}

/** What was typed, and the other system beside it, with as many figures as were typed, three at least: fewer would move the value. */
export function formatTyped(torque: Torque): string {
  const figures = Math.min(4, Math.max(3, figuresTyped(torque.typed)));
  const other: TorqueUnit = torque.unit === 'N·m' ? (torque.torqueNm < 20 ? 'lbf·in' : 'lbf·ft') : 'N·m';
  return `${torque.typed} (${formatTorque(torque.torqueNm, other, figures)})`;
}

/** A length as typed, with millimetres beside it. */
export interface Length {
  readonly lengthMm: number;
  readonly typed: string;
  readonly unit: 'mm' | 'in';
}

/**
 * Reads a length: "8", "8 mm", "8,5 mm", "2 cm", "5/16", "1-1/8 in", '0.3125"', "#10" is not a length.
 * A bare number is millimetres, a bare fraction is inches. Range: more than 0, up to 10 m.
 */
export function parseLength(text: string, defaultUnit: 'mm' | 'in' = 'mm'): Outcome<Length> {
  const expected = 'a length such as 8 mm, 5/16 in or 0.313 in';
  const typed = text.trim();
  const parts = /^([+-]?[\d.,/⁄\s-]*\d[.,]?)\s*(mm|cm|m|inch(?:es)?|in\.?|"|″|ft|foot|feet)?$/i.exec(typed);
  if (!parts) return refuse('length.unreadable', expected, typed);
  const number = parseFraction(parts[1] ?? '');
  if (!number.ok)
    return number.code === 'number.ambiguous' ? number : refuse('length.unreadable', expected, typed);
  const named = (parts[2] ?? '').toLowerCase();
  const unit = named !== '' ? lengthUnit(named) : number.value.fraction ? 'in' : defaultUnit;
  const lengthMm = number.value.value * LENGTH_UNITS[unit];
  if (!(lengthMm > 0) || lengthMm > 10_000)
    return refuse('length.range', 'a length above 0 and up to 10 m', typed);
  return good({ lengthMm, typed, unit: unit === 'in' || unit === 'ft' ? 'in' : 'mm' });
}

function lengthUnit(named: string): keyof typeof LENGTH_UNITS {
  if (named === 'mm' || named === 'cm' || named === 'm') return named;
  return named.startsWith('f') ? 'ft' : 'in';
}

/** "7.94 mm (0.3125 in)": metric and inch side by side, to 0.01 mm and 0.0005 in or the figures asked for. */
export function formatLength(lengthMm: number, decimalsMm = 2): string {
  return `${trim(lengthMm.toFixed(decimalsMm))} mm (${trim((lengthMm / 25.4).toFixed(decimalsMm + 1))} in)`;
}

function trim(text: string): string {
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** A volume as typed, with litres beside it. */
export interface Volume {
  readonly litres: number;
  readonly typed: string;
  readonly unit: keyof typeof VOLUME_UNITS;
}

/** Reads a volume: "10 l", "500 ml", "8 qt" (US), "2 gal" (US), "1 imp gal". A bare number takes the given unit, litres unless told. 0 is allowed. */
export function parseVolume(text: string, defaultUnit: keyof typeof VOLUME_UNITS = 'l'): Outcome<Volume> {
  const expected = 'a volume such as 10 l, 500 ml, 8 qt or 2 gal';
  const typed = text.trim();
  const parts = /^([\d.,\u00a0\u202f ]*\d[.,]?)\s*([a-z. ]*)$/i.exec(typed);
  const number = parts && parseDecimal(parts[1] ?? '');
  if (!parts || !number?.ok) return refuse('volume.unreadable', expected, typed);
  const unit = volumeUnit((parts[2] ?? '').toLowerCase().replace(/[.\s]/g, ''), defaultUnit);
  if (unit === undefined) return refuse('volume.unreadable', expected, typed);
  return good({ litres: number.value * VOLUME_UNITS[unit], typed, unit });
}

function volumeUnit(
  named: string,
  fallback: keyof typeof VOLUME_UNITS,
): keyof typeof VOLUME_UNITS | undefined {
  if (named === '') return fallback;
  if (/^(l|litres?|liters?|ltr)$/.test(named)) return 'l';
  if (/^(ml|millilit(re|er)s?|cc)$/.test(named)) return 'ml';
  if (/^(us)?(qt|quarts?)$/.test(named)) return 'US qt';
  if (/^(us)?(gal|gallons?)$/.test(named)) return 'US gal';
  if (/^(imp|uk)(gal|gallons?)$/.test(named)) return 'imp gal';
  return /^(imp|uk)?(pt|pints?)$/.test(named) ? 'imp pt' : undefined;
}

/** Litres seen in another unit of volume. Exact factor. */
export function fromLitres(litres: number, unit: keyof typeof VOLUME_UNITS): number {
  return litres / VOLUME_UNITS[unit];
}

/** "4.00 US qt (3.79 l)", "4.00 l (4.23 US qt)": both systems, to a hundredth. */
export function formatVolume(amount: number, unit: keyof typeof VOLUME_UNITS): string {
  const other = unit === 'l' || unit === 'ml' ? 'US qt' : 'l';
  const litres = amount * VOLUME_UNITS[unit];
  return `${amount.toFixed(2)} ${unit} (${fromLitres(litres, other).toFixed(2)} ${other})`;
}
