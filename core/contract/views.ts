import type { PatternView } from './pattern.ts';
import type { JobState, Row } from '../model/tables.ts';
import type { WorkTimes } from '../model/work-times.ts';
import type { Depth, NeedSuggestion, Outlook, Plan, TimeLeft } from '../reinstall/index.ts';
import type { BagCount, CountLine, GetLine, LookAlike, PoolLine, Search } from '../tally/index.ts';

/** A job on the Jobs screen and in `jobs`. */
export interface JobCard {
  readonly job: Row<'job'>;
  readonly depth: Depth;
  /** Notches from the top, for the silhouette. */
  readonly notches: readonly {
    readonly pieces: number;
    readonly back: boolean;
    readonly did: Row<'removal'>['did'];
  }[];
  /** The photo taken last; where no time is known, the one added last. */
  readonly photo: { readonly photo: Row<'photo'>; readonly original: Row<'original'> } | null;
  readonly last: { readonly number: number; readonly title: string; readonly at: number | null } | null;
  /** The removal that something was last put back of; null while nothing is back. */
  readonly lastBack: { readonly number: number; readonly title: string; readonly at: number } | null;
  readonly changedAt: number;
  readonly open: { readonly stop: number; readonly warn: number };
  readonly loose: readonly string[];
  readonly away: readonly {
    readonly what: string;
    readonly since: number;
    readonly due: number | null;
    readonly toWhom: string;
  }[];
  readonly openToAir: readonly string[];
  readonly inside: readonly string[];
  readonly notCounted: readonly string[];
  readonly halt: { readonly at: number; readonly note: string; readonly by: string | null } | null;
}

/** What a window needs to draw a job: its rows and what was computed from them. */
export interface JobView {
  readonly state: JobState;
  /** Its steps stand in the order in which they are walked. */
  readonly plan: Plan;
  /** As the list has it, or with the fewest changes of tool. */
  readonly walk: 'list' | 'tools';
  /** What becomes possible when, and what one more item would free. */
  readonly outlook: Outlook;
  readonly timeLeft: TimeLeft;
  /** Needs that may well be none, each with its reason. */
  readonly suggestions: readonly NeedSuggestion[];
  readonly counts: readonly CountLine[];
  readonly pools: readonly PoolLine[];
  readonly searches: readonly Search[];
  readonly bags: readonly BagCount[];
  readonly toGet: readonly GetLine[];
  readonly lookAlikes: readonly LookAlike[];
  /** Every specification in words: "M8 × 25 mm, hex 13 mm". */
  readonly specNames: Readonly<Record<string, string>>;
  /** Pieces expected in each bag, by its id. */
  readonly inBag: Readonly<Record<string, number>>;
  /** The earlier job that this one follows, and what differs; null where it follows none. */
  readonly pattern: PatternView | null;
  /** When each removal was worked on, by its id, where that is known. */
  readonly times: Readonly<Record<string, WorkTimes>>;
  readonly history: { readonly undo: string | null; readonly redo: string | null };
}
