import { z } from 'zod';
import { Id, Line, Text } from '../model/fields.ts';
import { TABLES } from '../model/tables.ts';
import { jobCommand } from './shapes.ts';

/** One line of a tray of loose fasteners, as typed: nothing is read before all of it is kept. */
export const TrayRow = z.strictObject({
  /** As a table numbers it: the first line is 1, a heading included. */
  row: z.int().min(1).max(1_000_000),
  count: Line,
  /** "M8", "5/16-18"; a bare number is a measured diameter. */
  thread: Line,
  /** Measured over the crests. */
  diameter: Line,
  /** "1.25", "18 tpi". */
  pitch: Line,
  length: Line,
  /** How far the length may be off either way; left empty, 1 mm. */
  tolerance: Line,
  /** Across flats, key or number of the head: "13", "5 mm key", "T30". */
  head: Line,
  /** "nut", "washer"; empty: something with a thread or shank. */
  kind: Line,
  note: Text,
});
export type TrayRow = z.infer<typeof TrayRow>;

const MAX_ROWS = 500;
const Unit = z.enum(['mm', 'in']);

/** A table of loose fasteners as text: comma, semicolon or tab between the values. Reads nothing of a job. */
export const trayRead = {
  input: z.strictObject({ text: z.string().max(1_000_000), unit: Unit.optional() }),
  value: z.strictObject({
    rows: z.array(TrayRow),
    /** A sentence for each line that cannot be taken as it stands, and for what was made of the heading. */
    said: z.array(z.strictObject({ row: z.int(), sentence: z.string() })),
  }),
};

const tray = {
  rows: z.array(TrayRow).max(MAX_ROWS),
  /** Unit of bare numbers; mm when not said. */
  unit: Unit.optional(),
  /** Bags and trays that were spilled: nothing is left in them. Empty = not said. */
  from: z.array(Id).max(10_000),
};

export const trayMatch = { input: z.strictObject({ jobId: Id, ...tray }) };

/** The same answer, booked: sorted into a bag, found again, and a search for what lay in the spilled bags and is not here. */
export const trayAccept = {
  input: z.strictObject({
    ...jobCommand,
    ...tray,
    /** Where the sorted ones are put; null = back where the books have them. */
    into: z.strictObject({ kind: TABLES.stow.schema.shape.kind, label: Line.min(1) }).nullable(),
    /** Books also what went to holes whose size was never written down; false when left out. */
    doubtful: z.boolean().optional(),
  }),
  value: z.strictObject({
    said: Text,
    moved: z.int(),
    found: z.int(),
    missing: z.int(),
    /** Assigned, but more than the books know of; nothing is booked for them. */
    unbooked: z.int(),
    /** Left where they are, because the size of their holes was never written down. */
    doubtful: z.int(),
  }),
};

/** One loose fastener against every open hole of every job. */
export const boltWhose = { input: z.strictObject({ row: TrayRow, unit: Unit.optional() }) };

/** Holes of a job that nothing recorded tells apart. */
export interface HoleGroup {
  readonly key: string;
  /** "M8 × 25 mm, hex 13 mm" */
  readonly what: string;
  readonly homes: readonly {
    readonly setId: string;
    readonly removalId: string;
    readonly name: string;
    readonly open: number;
    /** "bag 4"; "" where nobody said. */
    readonly bag: string;
  }[];
  /** Holes, times pieces in each, that wait to be filled. */
  readonly open: number;
  /** Usable in hand by the books. */
  readonly inHand: number;
  /** Looked for by the books. */
  readonly lookedFor: number;
  /** Each must go back into its own hole: measuring does not say which. */
  readonly ownPlace: boolean;
  /** The holes take a new one: what is found here is not refitted. */
  readonly mustBeNew: boolean;
}

export interface TrayAnswer {
  /** Pieces in the rows that could be read. */
  readonly pieces: number;
  readonly rows: readonly {
    readonly row: number;
    readonly count: number;
    readonly says: string;
    /** Why it could not be read; it takes no part in the matching. */
    readonly problem: string | null;
  }[];
  /** Groups that got something, or that are short. */
  readonly groups: readonly (HoleGroup & { readonly assigned: number; readonly short: number })[];
  readonly assigned: readonly {
    readonly row: number;
    readonly key: string;
    readonly qty: number;
    readonly says: string;
    /** "length not recorded there": it goes in only by what nobody wrote down. Null = no doubt. */
    readonly doubt: string | null;
  }[];
  readonly leftOver: readonly { readonly row: number; readonly qty: number; readonly says: string }[];
  /** Groups that measuring cannot tell apart. */
  readonly alike: readonly { readonly keys: readonly string[]; readonly sentence: string }[];
}

export interface BoltAnswer {
  readonly says: string;
  /** True while at least one hole takes it; else the hits are the nearest that do not. */
  readonly fits: boolean;
  /** Open holes that take it, shown among the hits or not. */
  readonly holes: number;
  readonly hits: readonly (HoleGroup & {
    readonly jobId: string;
    readonly jobTitle: string;
    readonly says: string;
  })[];
  readonly sentence: string;
}
