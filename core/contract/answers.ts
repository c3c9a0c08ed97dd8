import { z } from 'zod';
import { Id, Line, Ms, Text } from '../model/fields.ts';
import { Done, jobCommand, Made } from './shapes.ts';

export type { DayAhead, Reach } from '../reinstall/index.ts';

/** "Does 8 really have to go in before 7?" answered: it has to, or it need not. What that needed is handed on. */
export const needSettle = {
  input: z.strictObject({
    ...jobCommand,
    removalId: Id,
    needsId: Id,
    answer: z.enum(['confirmed', 'loosened']),
    why: Text,
  }),
  value: Done,
};

/** Alike pieces that lie ready for other sets go to this one first. Taken back with `record.remove` of the line. */
export const piecePromise = {
  input: z.strictObject({ ...jobCommand, setId: Id, qty: z.int().min(1).max(100_000) }),
  value: Made,
};

/** In which order the job is put back. A choice of the hand: kept beside the record, and no change of it. */
export const planWalk = {
  input: z.strictObject({ jobId: Id, by: z.enum(['list', 'tools']) }),
  value: Done,
};

/** What can go ahead by a time, UTC ms. */
export const planDay = z.strictObject({ jobId: Id, on: Ms });

export const planReach = z.strictObject({ jobId: Id, targetIds: z.array(Id).min(1).max(1000) });

/** What must come off to reach them, as planned removals; pattern.begin takes one after the other off. */
export const planComeOff = {
  input: z.strictObject({ ...jobCommand, targetIds: z.array(Id).min(1).max(1000) }),
  value: z.strictObject({ removals: z.int(), said: Text }),
};

/** A joint by the words it goes by, over the jobs of one machine: named, or that of a job. */
export const jobsTouched = z.strictObject({
  text: Line.min(1),
  machine: Line.optional(),
  jobId: Id.optional(),
});

/** One time that it was off, and how it went back. Times in UTC ms. */
export interface TouchedRound {
  readonly offAt: number | null;
  readonly offBy: string | null;
  /** Why it came off again, and what of it where that was not all; "" the first time. */
  readonly why: string;
  readonly what: readonly string[];
  /** When it was back; null = not. */
  readonly backAt: number | null;
  /** Who put the last of it back; null = not back, or nobody said. */
  readonly backBy: string | null;
  /** What went in new with it, by name and size. */
  readonly renewed: readonly string[];
  /** Torque read on it on the way back, as typed; empty = none. */
  readonly read: readonly string[];
}

/** One removal in which something of that name was touched. */
export interface TouchedHit {
  readonly removalId: string;
  readonly number: number;
  readonly title: string;
  /** The things of that name. */
  readonly names: readonly string[];
  readonly did: 'off' | 'slackened' | 'opened' | 'aside' | 'safe';
  /** Each time it was off, the earliest first; at least one. */
  readonly rounds: readonly TouchedRound[];
}

export interface Touched {
  /** False where nothing of that name is in any of these jobs: then nothing is known of it. */
  readonly known: boolean;
  /** Jobs of the machine, the oldest first, with what was touched in each. */
  readonly jobs: readonly {
    readonly jobId: string;
    readonly title: string;
    readonly createdAt: number;
    /** IANA name; null = that of whoever reads it. */
    readonly zone: string | null;
    readonly hits: readonly TouchedHit[];
  }[];
  readonly sentence: string;
}
