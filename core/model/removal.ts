import { z } from 'zod';
import { Energy, Id, Line, Ms, Ord, Side, Text, Zone } from './fields.ts';

/** Kinds a marker, deed, finding or photo card can point at. */
export const ThingKind = z.enum([
  'removal',
  'part',
  'set',
  'position',
  'connection',
  'fluid',
  'isolation',
  'temporary',
  'mark',
  'own step',
  'measure',
]);
export type ThingKind = z.infer<typeof ThingKind>;
export const Thing = z.strictObject({ id: Id, jobId: Id, kind: ThingKind });

/** One entry of the removal log. Only that something came off, and when, is ever required. */
export const Removal = z.strictObject({
  id: Id,
  jobId: Id,
  ord: Ord,
  title: Line,
  typed: Text,
  /** off, only slackened, only opened, only moved aside; "safe" made an energy safe and nothing else. */
  did: z.enum(['off', 'slackened', 'opened', 'aside', 'safe']),
  /** The assembly that is taken apart on its own; null = the machine. */
  benchPartId: Id.nullable(),
  place: Line,
  side: Side.nullable(),
  twinOfId: Id.nullable(),
  /** The need on the removal before it on the same bench. */
  defaultNeed: z.enum(['assumed', 'confirmed', 'loosened']),
  defaultNeedWhy: Text,
  phase: z.enum(['planned', 'under way', 'off', 'given up', 'void']),
  phaseWhy: Text,
  /** What holds it, when it was moved aside. */
  heldBy: Line,
  startedAt: Ms.nullable(),
  endedAt: Ms.nullable(),
  pauses: z.array(z.strictObject({ from: Ms, to: Ms.nullable() })).max(1000),
  zone: Zone,
  personId: Id.nullable(),
  note: Text,
  /** For the way back, shown large. */
  noteBack: Text,
  caution: Text,
});

/** The ordered actions inside a removal: the way back is their reverse. */
export const Action = z.strictObject({
  id: Id,
  jobId: Id,
  removalId: Id,
  ord: Ord,
  what: Line.min(1),
  thingId: Id.nullable(),
});

/** `removalId` needs `needsId`: it had to be off before. Only deviations from the default are stored. */
export const Need = z.strictObject({
  id: Id,
  jobId: Id,
  removalId: Id,
  needsId: Id,
  confirmed: z.boolean(),
  why: Text,
});

/** The user's own "first this, then that" on the way back, between things of the job. */
export const BackOrder = z.strictObject({ id: Id, jobId: Id, beforeId: Id, afterId: Id, why: Text });

/** An energy source made safe. */
export const Isolation = z.strictObject({
  id: Id,
  jobId: Id,
  removalId: Id,
  energy: Energy,
  how: Line,
  byPersonId: Id.nullable(),
  lockOwner: Line,
  /** "all" dead work on the machine, "fluid" the steps that open that fluid, or the listed removals. */
  scope: z.enum(['all', 'fluid', 'listed']),
  fluidId: Id.nullable(),
});
export const Protects = z.strictObject({ id: Id, jobId: Id, isolationId: Id, removalId: Id });

/** Something put IN for the duration, on the way out or on the way back; counted. */
export const Temporary = z.strictObject({
  id: Id,
  jobId: Id,
  /** Put in with this removal, on the way out … */
  removalId: Id.nullable(),
  /** … or with this step on the way back. */
  stepThingId: Id.nullable(),
  name: Line.min(1),
  typed: Text,
  qty: z.int().min(1).max(10_000),
  role: z.enum(['blocks', 'supports', 'cages', 'locks', 'aid']),
  holdsThingId: Id.nullable(),
  /** The removal whose step it comes out with; null = the step it was put in with. */
  outWithId: Id.nullable(),
});
