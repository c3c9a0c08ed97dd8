/** An expected failure is data: a code for programs, and one sentence for people. */
export interface Refusal {
  readonly ok: false;
  readonly code: string;
  readonly sentence: string;
}

/** Either a value or a refusal in words. */
export type Outcome<T> = { readonly ok: true; readonly value: T } | Refusal;

/** How well a value is known: copies of the source that agree, a formula only, or memory. */
export type Confidence = string;

/** What stands beside every computed result, so that nobody has to take it on trust. */
export interface Basis {
  readonly formula: string;
  readonly inputs: readonly string[];
  readonly source: string;
  readonly limits: readonly string[];
  readonly cautions: readonly string[];
}

/** The sentence that goes with every reference value: the trade's rule that the maker comes first. */
export const MAKER_FIRST =
  "A reference value, not an instruction: the maker's figure, local codes and licensed practice come first.";

export function good<T>(value: T): Outcome<T> {
  return { ok: true, value };
}

/**
 * Builds a refusal "Expected …, got …."
 * `got` is quoted when it is text, and is "nothing" when it is empty.
 */
export function refuse(code: string, expected: string, got: string | number | undefined): Refusal {
  const said =
    got === undefined || got === '' ? 'nothing' : typeof got === 'number' ? showNumber(got) : `"${got}"`;
  return { ok: false, code, sentence: `Expected ${expected}, got ${said}.` };
}

/** A number without a tail of binary digits, for sentences. */
export function showNumber(value: number): string {
  if (!Number.isFinite(value)) return String(value);
  return String(Number(value.toPrecision(6)));
}
