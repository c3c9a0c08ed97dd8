import { z } from 'zod';
import { Id, Line, Side, Text } from '../model/fields.ts';
import { TABLES } from '../model/tables.ts';
import { Done, jobCommand, Made } from './shapes.ts';

/**
 * Rows that are plainly made, changed and taken away, each with its own checks. What books pieces or ticks steps has
 * verbs of its own instead.
 */
const PLAIN_TABLES = [
  'asFound',
  'ready',
  'action',
  'need',
  'backOrder',
  'ownStep',
  'part',
  'away',
  'spec',
  'fset',
  'stackItem',
  'position',
  'holds',
  'connection',
  'fluid',
  'opens',
  'isolation',
  'protects',
  'temporary',
  'mark',
  'together',
  'measure',
  'consumable',
  'want',
  'removal',
  'photo',
  'marker',
  'card',
] as const satisfies readonly (keyof typeof TABLES)[];
export type PlainTable = (typeof PLAIN_TABLES)[number];
export const PlainTable = z.enum(PLAIN_TABLES);

/** Fields by name; each is checked against the schema of its table, unknown names are refused. */
export const Values = z.record(z.string().max(40), z.unknown());

export const recordMake = {
  input: z.strictObject({ ...jobCommand, table: PlainTable, id: Id.optional(), values: Values }),
  value: Made,
};
export const recordChange = {
  input: z.strictObject({ ...jobCommand, table: PlainTable, id: Id, values: Values }),
  value: Done,
};
export const recordRemove = {
  input: z.strictObject({ ...jobCommand, table: PlainTable, id: Id }),
  value: Done,
};

/** One entry line as typed: into the removal named, else into a new one. */
export const logAdd = {
  input: z.strictObject({
    ...jobCommand,
    text: Text.min(1),
    removalId: Id.nullable(),
    newRemovalId: Id.optional(),
    did: TABLES.removal.schema.shape.did.optional(),
    place: Line.optional(),
    side: Side.nullable().optional(),
    personId: Id.nullable().optional(),
  }),
  value: z.strictObject({
    removalId: Id,
    number: z.int().min(1),
    made: z.array(z.strictObject({ table: z.string(), id: Id })),
    notUnderstood: z.array(z.string()),
    /** Against the earlier job that this one follows: "8 expected, 7 found". */
    differences: z.array(z.string()),
    said: Text,
  }),
};

/** What was done at a removal, said or corrected later; what was booked for it follows. */
export const removalDid = {
  input: z.strictObject({ ...jobCommand, removalId: Id, did: TABLES.removal.schema.shape.did }),
  value: Done,
};

export const removalEnd = { input: z.strictObject({ ...jobCommand, removalId: Id }), value: Done };

/** Moves a removal in the log. A need it would break is refused, or loosened when asked to. */
export const removalReorder = {
  input: z.strictObject({
    ...jobCommand,
    removalId: Id,
    /** Null = to the top of the log. */
    afterId: Id.nullable(),
    loosen: z.boolean(),
  }),
  value: Done,
};

/** Takes things of one removal into a new one right after it. */
export const removalSplit = {
  input: z.strictObject({
    ...jobCommand,
    removalId: Id,
    thingIds: z.array(Id).min(1).max(1000),
    title: Line,
  }),
  value: Made,
};

/** Everything of the second goes into the first; the second becomes void. */
export const removalMerge = {
  input: z.strictObject({ ...jobCommand, intoId: Id, fromId: Id }),
  value: Done,
};

/** The same on the other side: specification and expected count are copied, never bag, photo, condition or values. */
export const removalRepeat = {
  input: z.strictObject({
    ...jobCommand,
    removalId: Id,
    side: Side.nullable(),
    /** Left-hand threads on this side: asked, never assumed. */
    mirrorThreads: z.boolean(),
  }),
  value: Made,
};

/** Given up, or void once pieces hang on it: never deleted. */
export const removalVoid = {
  input: z.strictObject({
    ...jobCommand,
    removalId: Id,
    phase: z.enum(['given up', 'void']),
    why: Text.min(1),
  }),
  value: Done,
};

/** Slackened so far, now out: the pieces go into a bag. */
export const setTakeOut = {
  input: z.strictObject({ ...jobCommand, setId: Id, stowId: Id.nullable() }),
  value: Done,
};
/** Another bag for a set, or for some of its holes; the pieces move with it. */
export const setStow = {
  input: z.strictObject({
    ...jobCommand,
    setId: Id,
    positionIds: z.array(Id).max(10_000),
    kind: TABLES.stow.schema.shape.kind,
    label: Line.min(1),
  }),
  value: Done,
};
/** Where a part lies: a bag, tin, tray or shelf by its label; made where there is none of it yet. */
export const partStow = {
  input: z.strictObject({
    ...jobCommand,
    partId: Id,
    kind: TABLES.stow.schema.shape.kind,
    label: Line.min(1),
  }),
  value: Done,
};

const LengthUm = z.int().min(1).max(10_000_000);

/** Lengths, micrometres: `allUm` for the whole set (null = not known), then by hole; a hole that differs gets its own specification. */
export const positionLengths = {
  input: z.strictObject({
    ...jobCommand,
    setId: Id,
    allUm: LengthUm.nullable().optional(),
    holes: z.array(z.strictObject({ n: z.int().min(1).max(100_000), lengthUm: LengthUm })).max(10_000),
  }),
  value: Done,
};

/** All that a specification says but its length, which is by hole. */
export const SpecValues = TABLES.spec.schema
  .pick({
    kind: true,
    thread: true,
    threadKnown: true,
    pitchUm: true,
    head: true,
    drive: true,
    driveSizeUm: true,
    driveTyped: true,
    grade: true,
    hand: true,
    more: true,
  })
  .partial();
export const setSpec = {
  input: z.strictObject({ ...jobCommand, setId: Id, values: SpecValues }),
  value: Done,
};
/** The torque wanted, with its unit, or "by feel"; "" = not known. */
export const setTorque = {
  input: z.strictObject({
    ...jobCommand,
    setId: Id,
    typed: Line,
    from: z.enum(['maker', 'reference', 'own']),
    page: Line,
  }),
  value: Done,
};
/** More or fewer holes than first noted. Holes that pieces came out of are never dropped. */
export const setCount = {
  input: z.strictObject({ ...jobCommand, setId: Id, count: z.int().min(0).max(10_000) }),
  value: Done,
};

export const haltAdd = { input: z.strictObject({ ...jobCommand, note: Text }), value: Made };
export const haltSeen = { input: z.strictObject({ ...jobCommand, haltId: Id }), value: Done };
