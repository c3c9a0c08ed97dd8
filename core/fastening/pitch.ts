import { parseDecimal } from './numbers.ts';
import { good, refuse, type Outcome } from './outcome.ts';

/** A pitch as a gauge shows it: in millimetres or in threads per inch. */
export interface Pitch {
  readonly pitchMm?: number;
  readonly tpi?: number;
}

/** Reads "1.25", "1,25 mm", "18 tpi", "18 per inch", "18/in". A bare number is millimetres. */
export function parsePitch(text: string): Outcome<Pitch> {
  const perInch = /^([\d.,]+)\s*(tpi|per\s*inch|\/\s*in)$/i.exec(text.trim());
  const number = parseDecimal(perInch?.[1] ?? text.replace(/\s*mm$/i, ''));
  if (!number.ok) return refuse('identify.pitch', 'a pitch such as 1.25 mm or 18 tpi', text.trim());
  return good(perInch ? { tpi: number.value } : { pitchMm: number.value });
}
