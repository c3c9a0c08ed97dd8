import { z } from 'zod';
import { Id, Line, Ms, Qty, Text } from '../model/fields.ts';
import { DeedWhat } from '../model/work.ts';
import { Done, jobCommand, Made } from './shapes.ts';

/** What was done to things on the way back. "tightened" on a removal or set means all of its holes that are open. */
export const tickDo = {
  input: z.strictObject({
    ...jobCommand,
    thingIds: z.array(Id).min(1).max(10_000),
    what: DeedWhat,
    /** As typed, with its unit ("40 N·m", "0,12 mm"); read on `toolId` when `known` is "read". */
    valueTyped: Line.optional(),
    known: z.enum(['read', 'ticked']).optional(),
    toolId: Id.nullable().optional(),
    /** A new piece was fitted, not the old one. */
    fresh: z.boolean().optional(),
    withThingId: Id.nullable().optional(),
    withSpecId: Id.nullable().optional(),
    why: Text.optional(),
    /** Set after a refusal that asked for a name and a reason: one reason for each open point. */
    accept: z
      .array(z.strictObject({ finding: z.string().max(300), why: Text.min(1) }))
      .max(1000)
      .optional(),
  }),
  value: Done,
};

/** Holes that went through one round of tightening: "snug", "30 %", "stage 2", "100 %", "once around". */
export const tickRound = {
  input: z.strictObject({
    ...jobCommand,
    holeIds: z.array(Id).min(1).max(10_000),
    round: Line.min(1),
    accept: tickDo.input.shape.accept,
  }),
  value: Done,
};

/** It came off again on the way back: a second round, and not an undo. */
export const tickAgain = {
  input: z.strictObject({ ...jobCommand, thingId: Id, why: Text }),
  value: Done,
};

/** A fastener that broke or was spoilt on the way back: scrapped; stuck, its hole is blocked. */
export const tickBroke = {
  input: z.strictObject({ ...jobCommand, thingId: Id, stuck: z.boolean(), why: Text }),
  value: Done,
};

/** An open point passed by name and reason; it opens again when its facts change. */
export const findingAccept = {
  input: z.strictObject({
    ...jobCommand,
    finding: z.string().min(1).max(300),
    why: Text.min(1),
    /** The step whose tick was refused, where the point is one only once that step covers it. */
    coveredBy: z.string().max(300).optional(),
  }),
  value: Done,
};

/** A bag counted by hand. A difference opens a search. */
export const pieceCount = {
  input: z.strictObject({ ...jobCommand, stowId: Id, counted: Qty, note: Text.optional() }),
  value: z.strictObject({ countingId: Id, expected: Qty, counted: Qty, said: Text }),
};
/** A search opened without a count: a rag, cap, tool, key or broken-off bit that is not where it should be. */
export const pieceMiss = {
  input: z.strictObject({ ...jobCommand, thingId: Id, qty: z.int().min(1).max(10_000), note: Text }),
  value: z.strictObject({ countingId: Id, said: Text }),
};
/** A search for what the job has no row of: a tool, a key, a cap, by its name. */
export const itemLost = {
  input: z.strictObject({
    ...jobCommand,
    what: Line.min(1),
    qty: z.int().min(1).max(10_000),
    /** Where it was used last; null = at the removal that was begun last. */
    thingId: Id.nullable(),
    note: Text,
  }),
  value: z.strictObject({ countingId: Id, said: Text }),
};
export const pieceFound = {
  input: z.strictObject({ ...jobCommand, countingId: Id, where: Text }),
  value: Done,
};
export const pieceGone = {
  input: z.strictObject({ ...jobCommand, countingId: Id, why: Text.min(1) }),
  value: Done,
};
/** New pieces in hand for a set or a part, bought or made. Never ends a search. */
export const pieceReceive = {
  input: z.strictObject({
    ...jobCommand,
    thingId: Id,
    qty: z.int().min(1).max(100_000),
    stowId: Id.nullable(),
    wantId: Id.nullable().optional(),
    /** All notes that these pieces answer. */
    wantIds: z.array(Id).max(1000).optional(),
    /** The washer or nut of a stack; left out, the fastener itself. */
    specId: Id.nullable().optional(),
  }),
  value: Done,
};
/** Out of use: scrapped, or put to stock. */
export const pieceScrap = {
  input: z.strictObject({
    ...jobCommand,
    thingId: Id,
    qty: z.int().min(1).max(100_000),
    to: z.enum(['scrap', 'stock']),
    fresh: z.boolean(),
    why: Text,
  }),
  value: Done,
};
export const awaySend = {
  input: z.strictObject({ ...jobCommand, thingId: Id, toWhom: Line.min(1), due: Ms.nullable(), note: Text }),
  value: Made,
};
export const awayBack = { input: z.strictObject({ ...jobCommand, awayId: Id }), value: Done };

/** A kit's receipt split into its items, each a new part in hand. */
export const kitSplit = {
  input: z.strictObject({
    ...jobCommand,
    partId: Id,
    items: z
      .array(z.strictObject({ name: Line.min(1), qty: Qty, forPartId: Id.nullable() }))
      .min(1)
      .max(200),
  }),
  value: Done,
};

/** "must" turned down with a reason that is kept; or asked for again. */
export const renewOverride = {
  input: z.strictObject({
    ...jobCommand,
    thingId: Id,
    renew: z.enum(['no', 'must', 'if worn', 'overridden']),
    why: Text.min(1),
  }),
  value: Done,
};

export const jobClose = {
  input: z.strictObject({ ...jobCommand, phase: z.enum(['open', 'closed']), recheckDue: Ms.nullable() }),
  value: Done,
};
