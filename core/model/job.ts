import { z } from 'zod';
import { Id, Line, Ms, Ord, Text, Zone } from './fields.ts';

/** Someone who works here, or who owns a machine. Never deleted, only retired: records name them. */
export const Person = z.strictObject({
  id: Id,
  name: Line.min(1),
  role: z.enum(['works', 'owns']),
  contact: Text,
  retired: z.boolean(),
});

/** A wrench, a gauge: what a value was read on. */
export const Tool = z.strictObject({
  id: Id,
  name: Line.min(1),
  calibratedUntil: Ms.nullable(),
  retired: z.boolean(),
});

/** Bag, tin, tray or shelf. The workshop's, not a job's; a label is in use once. */
export const Stow = z.strictObject({
  id: Id,
  kind: z.enum(['bag', 'tin', 'tray', 'shelf']),
  label: Line.min(1),
  place: Line,
  emptied: z.boolean(),
});

/** One machine taken apart and put back. */
export const Job = z.strictObject({
  id: Id,
  title: Line.min(1),
  machine: Line,
  ownerId: Id.nullable(),
  complaint: Text,
  cause: Text,
  correction: Text,
  sideNames: z.strictObject({ left: Line, right: Line, seenFrom: Line }),
  earlierJobId: Id.nullable(),
  patternJobId: Id.nullable(),
  phase: z.enum(['open', 'closed', 'signed']),
  recheckDue: Ms.nullable(),
  zone: Zone,
  createdAt: Ms,
});

/** The state before anyone touched it. */
export const AsFound = z.strictObject({
  id: Id,
  jobId: Id,
  kind: z.enum(['reading', 'damage', 'missing', 'wrong']),
  text: Text.min(1),
  valueTyped: Line.nullable(),
  closedWhy: Text.nullable(),
  at: Ms,
});

/** A tool or part to have at hand before the first bolt turns. */
export const Ready = z.strictObject({ id: Id, jobId: Id, ord: Ord, text: Line.min(1), done: z.boolean() });

/** The user's own step on the way back; "recheck" comes after closing and blocks nothing. */
export const OwnStep = z.strictObject({
  id: Id,
  jobId: Id,
  ord: Ord,
  title: Line.min(1),
  body: Text,
  kind: z.enum(['work', 'recheck']),
  /** Live work needs this energy given back first; null = dead work. */
  liveEnergy: z
    .enum(['electricity', 'pressure', 'spring', 'load', 'motion', 'ignition', 'fuel', 'heat', 'other'])
    .nullable(),
});

/** Work was stopped: what the next person must see first. */
export const Halt = z.strictObject({
  id: Id,
  jobId: Id,
  at: Ms,
  personId: Id.nullable(),
  note: Text,
  seenAt: Ms.nullable(),
  seenBy: Id.nullable(),
});

/** A named head of the chain: nothing before it can be undone. */
export const Signoff = z.strictObject({
  id: Id,
  jobId: Id,
  head: z.string().regex(/^[0-9a-f]{64}$/),
  personId: Id,
  said: Text,
  at: Ms,
});
