import type { PointData } from '../../ui/Point.tsx';

export type Topic = 'identify' | 'torque' | 'extension' | 'order' | 'oring' | 'mix' | 'units';

/** One thing to fill in. */
export interface FieldData {
  readonly id: string;
  readonly label: string;
  readonly example: string;
  readonly value: string;
  /** What was expected, where it cannot be read; "" when it can. */
  readonly refused: string;
  /** Seldom needed: folded away until it holds something. */
  readonly more: boolean;
  /** One of a few; empty for a typed field. */
  readonly options: readonly { readonly value: string; readonly label: string }[];
}

/** The one answer, read from a metre. */
export interface AnswerFigure {
  readonly value: string;
  readonly unit: string;
  /** The other system, or whose figure it is. */
  readonly other: string;
}

export interface AnswerRow {
  readonly id: string;
  readonly mark: string;
  readonly name: string;
  readonly about: string;
}

export interface AnswerGroup {
  readonly title: string;
  readonly rows: readonly AnswerRow[];
}

/** Holes of an order of tightening, as fractions of a square. */
export interface DrawnHole {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  /** Its place in the order, from 1. */
  readonly step: number;
}

/** Where a result comes from: always shown. */
export interface BasisData {
  readonly formula: string;
  readonly inputs: readonly string[];
  readonly source: string;
  readonly limits: readonly string[];
  readonly cautions: readonly string[];
}

export interface AnswerData {
  readonly figure: AnswerFigure | null;
  /** Whose figure the large one is: "The maker's value, page 12" or "Reference, not an instruction". */
  readonly whose: string;
  /** The figure that stands beside it, smaller; "" for none. */
  readonly beside: string;
  readonly says: readonly string[];
  readonly groups: readonly AnswerGroup[];
  readonly points: readonly PointData[];
  readonly drawing: readonly DrawnHole[];
  readonly basis: BasisData | null;
  /** A ring or the like that can be put on the list to get; "" for none. */
  readonly want: string;
}
