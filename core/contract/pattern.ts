import { z } from 'zod';
import { Id, Text } from '../model/fields.ts';
import { jobCommand } from './shapes.ts';

/** An earlier job on a like machine as the pattern: its removals as a plan. One undo takes it back. */
export const patternUse = {
  input: z.strictObject({ ...jobCommand, fromJobId: Id }),
  value: z.strictObject({ removals: z.int(), said: Text }),
};

/** A planned removal is off; how many were found of each set, where it is not as many as expected. */
export const patternBegin = {
  input: z.strictObject({
    ...jobCommand,
    removalId: Id,
    found: z.array(z.strictObject({ setId: Id, count: z.int().min(0).max(10_000) })).max(1_000),
  }),
  value: z.strictObject({ said: Text, differences: z.array(z.string()) }),
};

export interface PatternRemoval {
  readonly removalId: string;
  readonly title: string;
  readonly state: 'planned' | 'begun' | 'given up';
  readonly expected: readonly {
    /** The set here; null where none was found. */
    readonly setId: string | null;
    readonly what: string;
    readonly count: number;
    readonly torque: string;
  }[];
  readonly parts: readonly string[];
  /** "8 expected, 7 found: M8 × 25 mm." Empty while it is only planned. */
  readonly differences: readonly string[];
}

/** What an earlier job lets expect, and what was found of it. */
export interface PatternView {
  readonly fromJobId: string;
  readonly fromTitle: string;
  readonly removals: readonly PatternRemoval[];
  /** Came off here and not there. */
  readonly beyond: readonly { readonly removalId: string; readonly title: string }[];
}
