/** What was done at a removal; each has a notch of its own shape. */
export type Did = 'off' | 'slackened' | 'opened' | 'aside' | 'safe';

/** One removal on the depth line. */
export interface Notch {
  readonly kind: 'removal';
  readonly id: string;
  /** Its number in the log, from 1. */
  readonly number: number;
  readonly title: string;
  /** Pieces that came off; 0 where nobody said how many. */
  readonly pieces: number;
  readonly did: Did;
  /** True once it is back on the machine. */
  readonly back: boolean;
  /** Where on the machine; neighbours with the same words share one rule. "" is no place. */
  readonly place: string;
  /** Short remark under the title ("away, 5 days late"); "" for none. */
  readonly note: string;
}

/** A check drawn across the line between two removals. */
export interface Gate {
  readonly kind: 'gate';
  readonly id: string;
  readonly title: string;
  readonly passed: boolean;
  /** What holds it, or who passed it. */
  readonly note: string;
}

export type LineItem = Notch | Gate;

/** Top is the machine as found, down is deeper. */
export interface LineData {
  readonly direction: 'apart' | 'back';
  readonly items: readonly LineItem[];
  /** The removal or gate at hand. */
  readonly atId: string | null;
}
