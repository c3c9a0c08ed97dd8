import type { Unit } from './meaning.ts';

export const INCH_MM = 25.4;

/** Source text of a decimal number, point or comma: "12", "1,5", "0.75". */
export const NUM = String.raw`\d+(?:[.,]\d+)?`;
/** Source text of an inch fraction: "1/2", "1-1/2", "1½", "¾". "4 1/2" is four and a half inch only behind a "x". */
export const FRAC = String.raw`(?:(?:\d+-)?\d+\/\d+|\d*[½¼¾⅛⅜⅝⅞])`;
/** Nothing that would carry a word or a number on. */
export const STOP = String.raw`(?![\p{L}\p{N}])`;
/** "in" as inches: only where no place can follow, so that "M8x25 in bag 4" stays 25 mm. */
export const INCH_WORD = String.raw`in(?=\s*(?:$|[,;)]|long|af|a\/f|x\b|hex|head|spanner|wrench|socket|key|external|internal|square|triple|bi|slot|allen|for|with))`;
/** As STOP, but a "x" with a number behind it may follow at once. */
export const STOP_OR_TIMES = String.raw`(?:(?=[x×*]\s*[\d#½¼¾⅛⅜⅝⅞])|(?![\p{L}\p{N}]|[.]\d))`;

const GLYPHS: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};

/** A sticky, case-blind, Unicode regular expression. */
export function sticky(source: string): RegExp {
  return new RegExp(source, 'iuy');
}

/** "1,5" → 1.5, "1-1/2" → 1.5, "1½" → 1.5; NaN for anything else. */
export function numberOf(text: string): number {
  const typed = text.trim();
  const glyph = GLYPHS[typed.slice(-1)];
  if (glyph !== undefined) return (typed.length > 1 ? Number(typed.slice(0, -1)) : 0) + glyph;
  const parts = /^(?:(\d+)[- ])?(\d+)\/(\d+)$/.exec(typed);
  if (parts) return Number(parts[1] ?? 0) + Number(parts[2]) / Number(parts[3]);
  return /^\d+(?:[.,]\d+)?$/.test(typed) ? Number(typed.replace(',', '.')) : Number.NaN;
}

/** Whether a number was written as a fraction, so in inches unless it says otherwise. */
export function isFraction(text: string): boolean {
  return /[/½¼¾⅛⅜⅝⅞]/.test(text);
}

/** Millimetres of a value in a unit, kept to 0.001 mm. */
export function toMm(value: number, unit: Unit): number {
  return Math.round(value * (unit === 'in' ? INCH_MM : 1) * 1000) / 1000;
}

/** Inches as the trade writes them: "3/4", "1-1/2", "2", or decimals where no 64th fits. */
export function inchText(mm: number): string {
  const exact = (mm / INCH_MM) * 64;
  const parts = Math.round(exact);
  // 0.001 mm of rounding is 0.0026 of a 64th.
  if (parts === 0 || Math.abs(exact - parts) > 0.003) return String(Math.round((mm / INCH_MM) * 1e6) / 1e6);
  const whole = Math.floor(parts / 64);
  let top = parts % 64;
  if (top === 0) return String(whole);
  let bottom = 64;
  while (top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  return `${whole > 0 ? `${whole}-` : ''}${top}/${bottom}`;
}

/** A length with its unit: "16 mm", "3/4 in". */
export function lengthText(mm: number, unit: Unit): string {
  return unit === 'in' ? `${inchText(mm)} in` : `${mm} mm`;
}
