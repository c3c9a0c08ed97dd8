/** What a mark on a photo stands for; each has an outline of its own. */
export type MarkKind = 'position' | 'part' | 'connection' | 'match' | 'temporary';

/** The state, told by how the outline is filled. */
export type MarkState =
  | 'in'
  | 'slackened'
  | 'out'
  | 'started'
  | 'tightened'
  | 'paint-checked'
  | 'later'
  | 'missing'
  | 'left out'
  | 'blocked';

/** A numbered point on the upright picture. */
export interface PhotoMark {
  readonly id: string;
  /** What stands in the mark: one to three characters. */
  readonly text: string;
  readonly kind: MarkKind;
  readonly state: MarkState;
  /** Fraction of the upright picture's width, 0 to 1. */
  readonly x: number;
  /** Fraction of the upright picture's height, 0 to 1. */
  readonly y: number;
  /** What it is, in words, without its state: "hole 3". */
  readonly name: string;
  /** Marks of the same joint are placed round its centre. */
  readonly group: string;
  /** Marks with the same value belong together and are joined by a double rule. */
  readonly together?: string | null;
  /** Radius of the head or washer as a share of the picture's width; left out, it is judged. */
  readonly radius?: number;
}

/** A move of the tightening order, between two marks by id. Moves done are not handed over: they disappear. */
export interface Move {
  readonly fromId: string;
  readonly toId: string;
  readonly now: boolean;
}
