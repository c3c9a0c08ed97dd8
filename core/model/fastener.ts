import { z } from 'zod';
import { Id, Line, Mnm, Ms, Ord, Qty, Renew, Side, Text, Um } from './fields.ts';

/** What a fastener is, as far as it is known. Null is "not recorded", never "none". */
export const Spec = z.strictObject({
  id: Id,
  jobId: Id,
  /** Equal keys may be pooled; null while anything that matters is unknown. Derived, see core/tally. */
  poolKey: z.string().max(300).nullable(),
  kind: z.enum([
    'bolt',
    'screw',
    'set screw',
    'stud',
    'banjo bolt',
    'wood screw',
    'self-tapping screw',
    'nut',
    'washer',
    'spacer',
    'clip',
    'push rivet',
    'rivet',
    'pin',
    'split pin',
    'roll pin',
    'dowel pin',
    'taper pin',
    'clevis pin',
    'R-clip',
    'circlip',
    'E-clip',
    'clamp',
    'cable tie',
    'key',
    'plug',
    'other',
    'unknown',
  ]),
  /** As the standard writes it without pitch and length: "M8", "5/16-18 UNC". */
  thread: Line.nullable(),
  /** Whether the thread was read or only follows from the head. */
  threadKnown: z.boolean(),
  pitchUm: Um.nullable(),
  lengthUm: Um.nullable(),
  head: Line.nullable(),
  drive: Line.nullable(),
  driveSizeUm: Um.nullable(),
  driveTyped: Line,
  grade: Line.nullable(),
  hand: z.enum(['right', 'left']),
  more: Text,
});

/** Fasteners alike in purpose. The count is the number of its positions. */
export const Fset = z.strictObject({
  id: Id,
  jobId: Id,
  removalId: Id,
  ord: Ord,
  name: Line,
  typed: Text,
  specId: Id,
  side: Side.nullable(),
  how: z.enum(['out', 'slackened']),
  countKnown: z.boolean(),
  stowId: Id.nullable(),
  /** Fitted bolts and others that may never be pooled. */
  ownPlace: z.boolean(),
  torqueMnm: Mnm.nullable(),
  torqueTyped: Line,
  torqueFrom: z.enum(['maker', 'reference', 'own', 'by feel']).nullable(),
  torquePage: Line,
  angleDeg: z.number().min(0).max(3600).nullable(),
  stages: z.array(Line).max(20),
  lubrication: z.enum(['unknown', 'dry', 'oiled', 'greased', 'anti-seize', 'threadlock']),
  /** Where it matters: brakes, steering, rotating, pressure, fuel, lifting, electrical power. */
  critical: z.boolean(),
  /** Final tightening later: "on the ground", "warm", …; null = in its step. */
  laterWhen: Line.nullable(),
  orderKind: z.enum(['auto', 'cross', 'centre out', 'line', 'as numbered', 'maker']),
  recheck: z.boolean(),
  renew: Renew,
  renewRule: Line.nullable(),
  renewWhy: Text,
});

/** One piece of the stack that a set's positions hold: bolt, washers, spacer, nut, in order from the head. */
export const StackItem = z.strictObject({
  id: Id,
  jobId: Id,
  setId: Id,
  ord: Ord,
  what: Line.min(1),
  specId: Id.nullable(),
  qty: z.int().min(1).max(100),
  points: Line,
});

/** One numbered place of a set: the hole one fastener or stack lives in. */
export const Position = z.strictObject({
  id: Id,
  jobId: Id,
  setId: Id,
  n: z.int().min(1).max(100_000),
  /** Its own specification where it differs from the set's, its length above all. */
  specId: Id.nullable(),
  stowId: Id.nullable(),
  found: z.enum(['fitted', 'empty', 'new hole', 'unknown']),
  condition: Text,
  hidden: z.boolean(),
  fate: z.enum(['fill', 'leave out', 'blocked']),
  fateWhy: Text,
});

/** A position that holds a part beside those of its own removal: one bolt, two parts. */
export const Holds = z.strictObject({ id: Id, jobId: Id, positionId: Id, partId: Id });

export const Account = z.enum(['hole', 'stow', 'away', 'scrap', 'lost', 'unknown', 'supply', 'stock']);
export type Account = z.infer<typeof Account>;

/** One double entry: `qty` pieces leave one account and come into another. Never changed, only added to. */
export const Move = z.strictObject({
  id: Id,
  jobId: Id,
  specId: Id.nullable(),
  homeSetId: Id.nullable(),
  partId: Id.nullable(),
  qty: z.int().min(1).max(100_000),
  src: Account,
  dst: Account,
  positionId: Id.nullable(),
  srcStowId: Id.nullable(),
  dstStowId: Id.nullable(),
  cause: z.enum([
    'came off',
    'refitted',
    'came off again',
    'received',
    'counted',
    'found',
    'scrapped',
    'renewed',
    'sent out',
    'came back',
    'to stock',
    'moved',
    'written off',
  ]),
  countId: Id.nullable(),
  /** Bought or made, not from this machine. */
  fresh: z.boolean(),
  at: Ms,
  personId: Id.nullable(),
});

/** A physical count; a difference opens a search that ends in found, or accepted by name. */
export const Counting = z.strictObject({
  id: Id,
  jobId: Id,
  stowId: Id.nullable(),
  /** A rag, cap, tool, key or part that is looked for, when it is no bag. */
  thingId: Id.nullable(),
  expected: Qty,
  counted: Qty,
  at: Ms,
  personId: Id.nullable(),
  note: Text,
  ended: z.enum(['found', 'accepted']).nullable(),
  endedWhy: Text,
  endedAt: Ms.nullable(),
  endedBy: Id.nullable(),
});
