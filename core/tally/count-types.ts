/** Pieces of one kind. out + got = inBag + away + backIn + scrapped + lost + unknown + toStock, always. */
export interface Pieces {
  /** Came off the machine; coming off again takes away from `backIn` instead. */
  readonly out: number;
  /** Bought or made. */
  readonly got: number;
  readonly inBag: number;
  readonly away: number;
  readonly backIn: number;
  readonly scrapped: number;
  readonly lost: number;
  /** Looked for: a count says that they are gone. */
  readonly unknown: number;
  readonly toStock: number;
  /** Of `inBag`: new and never fitted. */
  readonly newInBag: number;
  /** Of `inBag`: old ones that may not go back because new ones must. */
  readonly mustRenew: number;
  /** Of `inBag`: old ones that may not go back because of their condition. */
  readonly damaged: number;
  /** inBag − mustRenew − damaged. */
  readonly usable: number;
}

/** Holes of one kind. toFill = emptied + newHoles − filled − leftOut; blocked holes stand apart. */
export interface Holes {
  /** All holes of the set that take this piece, times pieces per hole; null while the count was not recorded. */
  readonly holes: number | null;
  readonly emptied: number;
  /** New holes, and holes found empty that are to be filled. */
  readonly newHoles: number;
  readonly filled: number;
  readonly leftOut: number;
  readonly blocked: number;
  /** Found empty and not to be filled: neither short nor lost. */
  readonly foundEmpty: number;
  /** Loose on the machine: never in hand, never short. */
  readonly slackened: number;
  /** Null while the count was not recorded: not recorded is not none. */
  readonly toFill: number | null;
  /** Of `toFill`: only a new one will do. */
  readonly toFillNew: number;
}

export interface Verdict {
  /** max(0, toFill − usable); null while the count was not recorded. Pieces that are away count as short until back. */
  readonly short: number | null;
  /** Of `short`: what nothing that is away will cover, so that it has to be bought or made. */
  readonly toGet: number | null;
  /** Old usable pieces when nothing is left to fill. */
  readonly leftOver: number | null;
  /** Bought and not needed. */
  readonly spare: number;
}

/** One kind of piece of one set (its bolts of one length, its washers), or pieces that belong to no set. */
export interface CountLine extends Pieces, Holes, Verdict {
  readonly setId: string | null;
  readonly removalId: string | null;
  readonly specId: string | null;
  readonly what: string;
  /** The fastener itself; false for the washers, spacers and nuts of its stack. */
  readonly main: boolean;
  /** Pieces of this kind in each hole; 0 for a substitute that no hole asks for. */
  readonly perHole: number;
  readonly ownPlace: boolean;
  readonly countKnown: boolean;
  readonly mustBeNew: boolean;
}

/** Lines that may stand in for each other, added up; or one line that may not. */
export interface PoolLine extends Pieces, Holes, Verdict {
  /** The pool key, or null for a line that stands alone. */
  readonly poolKey: string | null;
  /** A specification of the pool to show; all of them are alike. */
  readonly specId: string | null;
  readonly countKnown: boolean;
  readonly lines: readonly CountLine[];
}
