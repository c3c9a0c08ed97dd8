import type { RoundFigure } from '../drawing/joint.ts';
import type { LineData } from '../drawing/line/types.ts';
import type { MarkState, Move, PhotoMark } from '../drawing/marks.ts';

/** An open point: what, how grave, and what clears it. */
export interface SheetPoint {
  readonly grave: 'stop' | 'warn';
  readonly sentence: string;
  readonly clears: string;
}

/** A check across the way: drawn as a bar before its step, or after the last one. */
export interface SheetGate {
  readonly title: string;
  readonly points: readonly SheetPoint[];
  /** Not wrong, only to be done before: a box each. */
  readonly notYet: readonly string[];
}

/** Something to be ticked by hand. */
export interface SheetBox {
  readonly text: string;
  readonly done: boolean;
  /** A rule to write a value on. */
  readonly write: boolean;
}

/** A hole in the table. */
export interface SheetHole {
  /** Place in the order of tightening, from 1; null where it is in none. */
  readonly order: number | null;
  readonly text: string;
  readonly state: MarkState;
  /** All boxes; only the first (a pin, or what is tightened later); none where it stays out. */
  readonly boxes: 'all' | 'first' | 'none';
  /** Own torque where the holes of the step differ, what was read, why it stays out. */
  readonly note: string;
}

/** One kind of fastener in its holes, over its rows in the table. */
export interface SheetSet {
  /** "8 × bolt M10 × 35 mm, hex 16 mm, from bag 6"; "" where the line over the table says it already. */
  readonly title: string;
  readonly holes: readonly SheetHole[];
}

export interface SheetPhoto {
  /** A JPEG, upright. */
  readonly bytes: Uint8Array;
  /** Of the upright picture, px. */
  readonly width: number;
  readonly height: number;
  readonly marks: readonly PhotoMark[];
  readonly moves: readonly Move[];
}

export interface SheetStep {
  readonly id: string;
  /** The removal on the depth line. */
  readonly removalId: string | null;
  /** In the log; null for steps of no removal. */
  readonly number: number | null;
  readonly title: string;
  /** "step 3 of 16" */
  readonly place: string;
  /** Why it cannot go ahead now; "" when it can. */
  readonly why: string;
  readonly figure: { readonly value: string; readonly unit: string; readonly other: string } | null;
  /** Null: there is none, or its file is gone. */
  readonly photo: SheetPhoto | null;
  readonly noPhoto: string;
  readonly gate: SheetGate | null;
  readonly points: readonly SheetPoint[];
  readonly cautions: readonly string[];
  /** As written while taking apart. */
  readonly notes: readonly string[];
  readonly before: readonly SheetBox[];
  readonly rounds: readonly RoundFigure[];
  readonly sets: readonly SheetSet[];
  readonly after: readonly SheetBox[];
  /** What goes in, from which bag, by whose figure. */
  readonly about: string;
}

/** Everything that a put-back sheet says; nothing else is looked up while it is drawn. */
export interface SheetData {
  readonly job: string;
  readonly machine: string;
  readonly owner: string;
  /** When it was printed, in words. */
  readonly date: string;
  readonly line: LineData;
  readonly steps: readonly SheetStep[];
  /** The check before handing over or closing; only on a sheet of all that is left. */
  readonly last: SheetGate | null;
}
