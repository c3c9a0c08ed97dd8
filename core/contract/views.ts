import type { JobState, Row } from '../model/tables.ts';

/** A job on the Jobs screen and in `jobs`. */
export interface JobCard {
  readonly job: Row<'job'>;
  readonly depth: Depth;
  /** Notches from the top, for the silhouette. */
  readonly notches: readonly { readonly pieces: number; readonly back: boolean }[];
  readonly last: { readonly number: number; readonly title: string; readonly at: number | null } | null;
  readonly changedAt: number;
  readonly open: { readonly stop: number; readonly warn: number };
  readonly loose: readonly string[];
  readonly away: readonly { readonly what: string; readonly since: number; readonly due: number | null }[];
  readonly openToAir: readonly string[];
  readonly inside: readonly string[];
  readonly notCounted: readonly string[];
  readonly halt: { readonly at: number; readonly note: string; readonly by: string | null } | null;
}

export interface Depth {
  readonly off: number;
  readonly back: number;
  readonly left: number;
  readonly pieces: number;
}

/** What a window needs to draw a job: its rows and what was computed from them. */
export interface JobView {
  readonly state: JobState;
  readonly history: { readonly undo: string | null; readonly redo: string | null };
}
