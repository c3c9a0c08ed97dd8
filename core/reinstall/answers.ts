/** Answers beside the plan: by date, one more item, reach, tools, time left, needs. Derived like everything else. */

/** How the tool of a fastener is known. */
export type ToolKnown = 'recorded' | 'by the standard' | 'not recorded';

/** One tool and what it is needed for. */
export interface ToolLine {
  /** "13 mm spanner or socket"; empty = nobody recorded the head. */
  readonly tool: string;
  readonly known: ToolKnown;
  readonly fasteners: number;
  readonly steps: number;
}

export interface ToolPlan {
  readonly tools: readonly ToolLine[];
  /** Changes of tool when the list is worked off as it stands. */
  readonly listed: number;
  /** Ids of the steps not done, with the fewest changes; empty while steps wait for each other in a ring. */
  readonly order: readonly string[];
  readonly changes: number;
  /** False: found by a rule of thumb, there may be better. */
  readonly exact: boolean;
  readonly ring: boolean;
}

/** A lack that ends by itself or is promised, and the steps that become possible then. */
export interface DateLine {
  /** UTC ms. */
  readonly at: number;
  /** What comes, is back or has cured then. */
  readonly what: readonly string[];
  /** Steps that can go ahead from then on, in list order, if nothing else changes. */
  readonly stepIds: readonly string[];
}

/** One thing that is lacking, and what having it would free by itself. */
export interface FreeLine {
  readonly code: 'to get' | 'short' | 'away' | 'repair' | 'cure';
  /** The part, set, position or consumable that is lacking. */
  readonly thingId: string;
  /** Pieces; 0 where pieces do not say it. */
  readonly qty: number;
  readonly sentence: string;
  readonly stepIds: readonly string[];
}

/** A set or step that the user has served first: the alike pieces of other sets go to it. */
export interface PromiseLine {
  readonly wantId: string;
  readonly setId: string;
  readonly qty: number;
}

/** Where stock could be promised: a set that is short while alike pieces lie ready for others. */
export interface PromiseOffer {
  readonly setId: string;
  readonly qty: number;
  /** Sets that would give pieces up, last in the list first. */
  readonly fromSetIds: readonly string[];
  readonly sentence: string;
}

/** What can go ahead by a day, and what cannot. Step ids, in list order. */
export interface DayAhead {
  /** UTC ms. */
  readonly on: number;
  /** With the time from which on; null = now. */
  readonly ahead: readonly { readonly stepId: string; readonly at: number | null }[];
  readonly not: readonly {
    readonly stepId: string;
    /** What it still lacks by then, a sentence each. */
    readonly lacks: readonly string[];
    /** A step right before it that cannot go ahead either; null: it lacks something itself, or an open point holds it. */
    readonly firstId: string | null;
  }[];
  /** What one more item would free by then, the greatest first. */
  readonly oneMore: readonly FreeLine[];
}

/** What becomes possible, when, and by what. */
export interface Outlook {
  readonly dates: readonly DateLine[];
  /** Overdue: their day has passed, so nothing is built on them. */
  readonly late: readonly { readonly thingId: string; readonly due: number; readonly sentence: string }[];
  /** Greatest first. */
  readonly oneMore: readonly FreeLine[];
  readonly promises: readonly PromiseLine[];
  readonly offers: readonly PromiseOffer[];
}

/** One removal that has to come off. */
export interface ReachRemoval {
  readonly removalId: string;
  readonly number: number;
  readonly title: string;
  readonly why: string;
  /** again: it was back · partly: some of it is back · still: it was never off. */
  readonly state: 'again' | 'partly' | 'still';
  /** It is in the way only by the order of the log; nobody has confirmed that. */
  readonly assumed: boolean;
  readonly fasteners: number;
  /** Minutes it took to take off; null = not recorded. */
  readonly minutes: number | null;
}

/** What must come off to reach something. */
export interface Reach {
  /** In the order of taking off. */
  readonly removals: readonly ReachRemoval[];
  /** Positions that hold a part of these removals and are undone with another. */
  readonly shared: readonly string[];
  /** Isolations to make again, fluids to drain again. */
  readonly isolations: readonly string[];
  readonly fluids: readonly string[];
  /** Fasteners that are in now and have to come out. */
  readonly fasteners: number;
  readonly tools: readonly ToolLine[];
  /** Parts and sets of which new ones will be needed. */
  readonly renew: readonly string[];
  /** Parts that need a new one if the old one is worn. */
  readonly renewIfWorn: readonly string[];
  /** Minutes, from the times in the log; null where none was recorded. */
  readonly minutesLow: number | null;
  readonly minutesHigh: number | null;
  /** Targets that cannot be answered, each with a sentence. */
  readonly unknown: readonly { readonly targetId: string; readonly sentence: string }[];
}

/** The time that is left, as a range; or why nobody can say yet. */
export type TimeLeft =
  | {
      readonly known: true;
      readonly minutesLow: number;
      readonly minutesHigh: number;
      /** Steps put back that the pace is taken from. */
      readonly from: number;
      /** Steps that are left, and how many of them have no time of their own. */
      readonly left: number;
      readonly untimed: number;
      /** "About 3 to 5 hours" */
      readonly short: string;
      readonly sentence: string;
    }
  | { readonly known: false; readonly sentence: string };

/** A need that nobody has confirmed and that may well not be one. */
export interface NeedSuggestion {
  readonly removalId: string;
  readonly needsId: string;
  readonly reason: string;
  /** Removals that it would still need, by the log, if this need went. */
  readonly instead: readonly string[];
  /** The step that waits because of it, and the step it waits for; null where nothing waits for it now. */
  readonly waiting: { readonly stepId: string; readonly forId: string } | null;
}

/** A need that only the order of the log says. */
export interface AssumedNeed {
  readonly removalId: string;
  readonly needsId: string;
  /** Why it is not doubted: "nobody wrote down where both are". */
  readonly kept: string;
}
