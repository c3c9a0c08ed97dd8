import { z } from 'zod';
import { Id, Line, Ms, Qty, Text } from './fields.ts';

/** What is done to a thing on the way back. State = last deed of the current round. */
export const DeedWhat = z.enum([
  'started',
  'tightened',
  'paint-checked',
  'left out',
  'fitted',
  'joined',
  'put in',
  'taken out',
  'drained',
  'filled',
  'cold leak checked',
  'bled',
  'hot leak checked',
  'given back',
  'measured',
  'repaired',
  'put on',
  'done',
  'came off again',
]);
export type DeedWhat = z.infer<typeof DeedWhat>;

/** Append-only. Taking a thing off again opens its next round. */
export const Deed = z.strictObject({
  id: Id,
  jobId: Id,
  thingId: Id,
  round: z.int().min(1).max(1000),
  what: DeedWhat,
  /** In the unit of the thing: N·m for a position, ml for a fluid, the measure's own unit. */
  value: z.number().nullable(),
  valueTyped: Line,
  known: z.enum(['read', 'ticked']),
  toolId: Id.nullable(),
  /** The exact piece, where it matters: the spec or the part that went in. */
  withThingId: Id.nullable(),
  withSpecId: Id.nullable(),
  fresh: z.boolean(),
  personId: Id.nullable(),
  at: Ms,
  why: Text,
});

/** What must be bought, made or fetched. */
export const Want = z.strictObject({
  id: Id,
  jobId: Id,
  thingId: Id.nullable(),
  specId: Id.nullable(),
  what: Line.min(1),
  qty: Qty,
  state: z.enum(['needed', 'ordered', 'here', 'dropped']),
  cause: Line,
  promisedAt: Ms.nullable(),
});

/** A finding passed by name and reason; opens again when the facts, and so the digest, change. */
export const Accepted = z.strictObject({
  id: Id,
  jobId: Id,
  finding: z.string().max(300),
  digest: z.string().max(128),
  why: Text.min(1),
  personId: Id.nullable(),
  at: Ms,
});

/** Facts of an untouched original, once for the workshop; its id is the SHA-256 of the file. */
export const Original = z.strictObject({
  id: z.string().regex(/^[0-9a-f]{64}$/),
  bytes: z.int().min(1),
  type: z.string().max(64),
  width: z.int().min(1).max(100_000),
  height: z.int().min(1).max(100_000),
  turn: z.int().min(1).max(8),
  takenLocal: z.string().max(40).nullable(),
  takenZone: z.string().max(10).nullable(),
  takenUtc: Ms.nullable(),
  camera: Line,
  sharpness: z.number().nullable(),
  phash: z
    .string()
    .regex(/^[0-9a-f]{16}$/)
    .nullable(),
  hasLocation: z.boolean(),
  gone: z.boolean(),
  goneWhy: Text,
});

/** An original used in a job; it may be used in several. */
export const Photo = z.strictObject({
  id: Id,
  jobId: Id,
  originalId: z.string().regex(/^[0-9a-f]{64}$/),
  fileName: Line,
  removalId: Id.nullable(),
  stowId: Id.nullable(),
  role: z.enum(['as found', 'as refitted', 'other']),
  filedBy: z.enum(['hand', 'card', 'time', 'none']),
  filedWhy: Text,
  addedAt: Ms,
});

/** A numbered point in the upright picture, as fractions 0 to 1. */
export const Marker = z.strictObject({
  id: Id,
  jobId: Id,
  photoId: Id,
  n: z.int().min(-100_000).max(100_000),
  x: z.number().min(0).max(1),
  y: z.number().min(0).max(1),
  thingId: Id.nullable(),
  togetherId: Id.nullable(),
  carriedFromId: Id.nullable(),
  confidence: z.number().min(0).max(1).nullable(),
});

/** A printed or on-screen code that tells where the following photos belong. */
export const Card = z.strictObject({
  id: Id,
  jobId: Id,
  code: Line.min(4),
  thingId: Id.nullable(),
  stowId: Id.nullable(),
});
