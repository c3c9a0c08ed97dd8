import { z } from 'zod';
import { Id, Line, Ms, Qty, Renew, Text } from './fields.ts';

/** Anything that comes off and is not a fastener. */
export const Part = z.strictObject({
  id: Id,
  jobId: Id,
  removalId: Id.nullable(),
  /** The part it sits in or on. */
  parentId: Id.nullable(),
  /** The receipt of a kit it was split from, or null. */
  kitId: Id.nullable(),
  name: Line,
  typed: Text,
  kind: z.enum(['part', 'seal', 'gasket', 'o-ring', 'filter', 'sleeve', 'key', 'shim', 'kit', 'new part']),
  qty: Qty,
  how: z.enum(['off', 'aside', 'opened', 'fitted new']),
  /** Must go back exactly where it was. */
  ownPlace: z.boolean(),
  ownPlaceText: Line,
  stamped: Line,
  hidden: z.boolean(),
  stowId: Id.nullable(),
  condition: Text,
  fate: z.enum([
    'refit',
    'clean and refit',
    'renew',
    'repair',
    'send out',
    'exchange',
    'carry over',
    'leave out',
    'undecided',
  ]),
  fateWhy: Text,
  /** The new parent when it is carried over. */
  carryToId: Id.nullable(),
  renew: Renew,
  renewRule: Line.nullable(),
  renewWhy: Text,
});

/** Sent out, lent, at the machinist's. */
export const Away = z.strictObject({
  id: Id,
  jobId: Id,
  thingId: Id,
  toWhom: Line,
  since: Ms,
  due: Ms.nullable(),
  backAt: Ms.nullable(),
  note: Text,
});

/** What is joined again. */
export const Connection = z.strictObject({
  id: Id,
  jobId: Id,
  removalId: Id.nullable(),
  name: Line,
  typed: Text,
  kind: z.enum(['plug', 'hose', 'pipe', 'union', 'cable', 'earth lead', 'linkage', 'other']),
  joint: z.enum([
    'hose on stub',
    'flare',
    'taper thread',
    'face',
    'port',
    'plug',
    'earth',
    'linkage',
    'unknown',
  ]),
  ends: z.int().min(1).max(100),
  seal: z.enum(['unknown', 'none', 'part']),
  sealPartId: Id.nullable(),
  /** Where each end goes, so that two alike are not swapped. */
  goesTo: Line,
  hidden: z.boolean(),
  leaveAlone: z.boolean(),
});

/** Alignment, order or direction mark made before removal, or the way a hose or loom runs. */
export const Mark = z.strictObject({
  id: Id,
  jobId: Id,
  removalId: Id.nullable(),
  partId: Id.nullable(),
  kind: z.enum(['match', 'order', 'direction', 'routing']),
  body: Text.min(1),
});

/** Two or more markers that belong together: this pin into that slot. */
export const Together = z.strictObject({ id: Id, jobId: Id, name: Line });

/** A value as found, its limit, and whether the step may close without it. */
export const Measure = z.strictObject({
  id: Id,
  jobId: Id,
  removalId: Id.nullable(),
  what: Line.min(1),
  unit: Line,
  asFound: z.number().nullable(),
  asFoundTyped: Line,
  limitLow: z.number().nullable(),
  limitHigh: z.number().nullable(),
  required: z.boolean(),
});

/** Sealant, threadlock, grease, paste; a cure time holds filling or running. */
export const Consumable = z.strictObject({
  id: Id,
  jobId: Id,
  /** The removal, set, part or connection it goes on. */
  thingId: Id,
  kind: z.enum(['sealant', 'threadlock', 'grease', 'paste', 'oil', 'other']),
  name: Line,
  batch: Line,
  skinMinutes: z.int().min(0).max(100_000).nullable(),
  cureMinutes: z.int().min(0).max(100_000).nullable(),
  cureBefore: z.enum(['fill', 'run']).nullable(),
  putAt: Ms.nullable(),
});
