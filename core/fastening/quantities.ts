import { parseFraction, toFigures } from './numbers.ts';
import { good, refuse, type Basis, type Outcome } from './outcome.ts';
import { convert, unitsLike } from './units.ts';

/** One value in another unit of its kind. */
export interface Converted {
  readonly unit: string;
  readonly value: number;
  /** Rounded for reading: no more figures than the typed ones bear, four at least. */
  readonly shown: string;
}

/** A quantity as typed, and the same in every other unit of its kind. */
export interface Quantity extends Basis {
  readonly typed: string;
  readonly value: number;
  readonly unit: string;
  readonly kind: string;
  readonly converted: readonly Converted[];
}

const EXPECTED = 'a number with its unit, such as 25 N·m, 18 lbf·ft, 5/16 in, 30 psi, 8 qt or 180 °F';

const SOURCE = 'NIST SP 811, BIPM: inch 25.4 mm, pound 0.45359237 kg, standard gravity 9.80665 m/s²';

/**
 * Reads a number with its unit, glued or apart, point or comma, fractions too, and converts it with exact factors to
 * the other units of its kind: torque, force, pressure, length, volume, mass, temperature.
 */
export function readQuantity(text: string): Outcome<Quantity> {
  const typed = text.trim();
  // In the workshop a bare fraction means inches.
  const parts = /^([+\-−]?[\d.,/⁄\s-]*\d[.,]?)\s*([^\d\s].*)$/.exec(
    /^[\d\s-]+[/⁄]\d+$/.test(typed) ? `${typed} in` : typed,
  );
  if (!parts) return refuse('unit.unreadable', EXPECTED, typed);
  const number = parseFraction((parts[1] ?? '').replace('−', '-'));
  if (!number.ok) return number;
  return quantityOf(number.value.value, parts[2] ?? '', typed);
}

/** The same for a number and a unit that came apart. Refuses a unit that is not known, and lengths, volumes and the like below 0. */
export function quantityOf(value: number, unitText: string, typed?: string): Outcome<Quantity> {
  const said = typed ?? `${value} ${unitText}`;
  const like = unitsLike(unitText);
  if (!like) return refuse('unit.unreadable', EXPECTED, said);
  if (value < 0 && like.kind !== 'temperature')
    return refuse('unit.range', `a ${like.kind} of 0 or more`, said);
  const converted = like.units
    .filter((unit) => unit !== like.unit)
    .map((unit): Converted => {
      const found = convert(value, like.unit, unit);
      if (!found.ok) throw new Error(found.sentence);
      return { unit, value: found.value, shown: `${shown(found.value, said)} ${unit}` };
    });
  return good({
    typed: said,
    value,
    unit: like.unit,
    kind: like.kind,
    converted,
    formula:
      like.kind === 'temperature' ? '°F = °C · 9/5 + 32' : 'value · factor of one unit / factor of the other',
    inputs: [said],
    source: SOURCE,
    limits: ['The factors are exact; the figures shown are rounded and never say more than what was typed.'],
    cautions: ['A figure without its unit may be off by nine: 90 N·m is not 90 lbf·in.'],
  });
}

function shown(value: number, typed: string): string {
  const digits = typed.replace(/[^\d]/g, '').replace(/^0+/, '').length;
  const text = toFigures(value, /[/⁄]/.test(typed) ? 4 : Math.min(6, Math.max(4, digits)));
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}
