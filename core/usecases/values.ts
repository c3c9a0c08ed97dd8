import { parseTorque } from '../fastening/index.ts';
import { ok, type Result, refuse } from '../model/result.ts';
import type { DeedWhat } from '../model/work.ts';

const NUMBER = /^\s*([+-]?\d+(?:[.,]\d+)?)\s*(.*?)\s*$/;

/** Millilitres in one of each unit; US and imperial customary units by their exact definitions (NIST SP 811, from memory). */
const ML: Record<string, number> = {
  ml: 1,
  cc: 1,
  cl: 10,
  dl: 100,
  l: 1000,
  litre: 1000,
  litres: 1000,
  liter: 1000,
  liters: 1000,
  'us qt': 946.352946,
  qt: 946.352946,
  'us gal': 3785.411784,
  'fl oz': 29.5735295625,
};

/** An amount of fluid as typed, in whole millilitres. Range: more than 0, up to 100 000 l. */
function parseAmount(typed: string): Result<number> {
  const match = NUMBER.exec(typed);
  const factor = ML[(match?.[2] ?? '').toLowerCase().replace(/\.$/, '')];
  const ml =
    match && factor !== undefined ? Math.round(Number((match[1] ?? '').replace(',', '.')) * factor) : 0;
  return ml > 0 && ml <= 100_000_000
    ? ok(ml)
    : refuse('input', `Expected an amount with its unit, such as 2,5 l or 750 ml, got “${typed}”.`);
}

/** A measured value as typed: the number; the unit is the measure's own. */
function parseReading(typed: string): Result<number> {
  const match = NUMBER.exec(typed);
  return match
    ? ok(Number((match[1] ?? '').replace(',', '.')))
    : refuse('input', `Expected a number, such as 0,12 mm, got “${typed}”.`);
}

/** The value of a deed: N·m for a tightening, ml for a fluid, a plain number for a measurement or a count. */
export function deedValue(what: DeedWhat, typed: string): Result<number | null> {
  if (typed.trim() === '') return ok(null);
  if (what === 'tightened') {
    const torque = parseTorque(typed);
    return torque.ok ? ok(torque.value.torqueNm) : refuse('input', torque.sentence);
  }
  if (what === 'filled' || what === 'drained') return parseAmount(typed);
  if (what === 'measured' || what === 'taken out' || what === 'put in') return parseReading(typed);
  return ok(null);
}
