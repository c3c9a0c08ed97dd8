import type { z } from 'zod';
import * as fastener from './fastener.ts';
import * as fluid from './fluid.ts';
import * as job from './job.ts';
import * as part from './part.ts';
import * as removal from './removal.ts';
import * as work from './work.ts';

/**
 * Every table of the record: one schema each, from which types, columns, checks and the job file follow.
 * `refs` names the table each reference points at. The order is the order of writing on import.
 */
const table = <
  S extends z.ZodObject,
  C extends 'workshop' | 'job',
  R extends Partial<Record<keyof z.infer<S> & string, string>>,
>(
  schema: S,
  scope: C,
  refs: R,
) => ({ schema, scope, refs });

export const TABLES = {
  person: table(job.Person, 'workshop', {}),
  tool: table(job.Tool, 'workshop', {}),
  stow: table(job.Stow, 'workshop', {}),
  original: table(work.Original, 'workshop', {}),
  job: table(job.Job, 'workshop', { ownerId: 'person', earlierJobId: 'job', patternJobId: 'job' }),
  thing: table(removal.Thing, 'job', { jobId: 'job' }),
  asFound: table(job.AsFound, 'job', { jobId: 'job' }),
  ready: table(job.Ready, 'job', { jobId: 'job' }),
  halt: table(job.Halt, 'job', { jobId: 'job', personId: 'person', seenBy: 'person' }),
  signoff: table(job.Signoff, 'job', { jobId: 'job', personId: 'person' }),
  removal: table(removal.Removal, 'job', {
    id: 'thing',
    jobId: 'job',
    benchPartId: 'part',
    twinOfId: 'removal',
    personId: 'person',
  }),
  action: table(removal.Action, 'job', { jobId: 'job', removalId: 'removal', thingId: 'thing' }),
  need: table(removal.Need, 'job', { jobId: 'job', removalId: 'removal', needsId: 'removal' }),
  backOrder: table(removal.BackOrder, 'job', { jobId: 'job', beforeId: 'thing', afterId: 'thing' }),
  ownStep: table(job.OwnStep, 'job', { id: 'thing', jobId: 'job' }),
  part: table(part.Part, 'job', {
    id: 'thing',
    jobId: 'job',
    removalId: 'removal',
    parentId: 'part',
    kitId: 'part',
    stowId: 'stow',
    carryToId: 'part',
  }),
  away: table(part.Away, 'job', { jobId: 'job', thingId: 'thing' }),
  spec: table(fastener.Spec, 'job', { jobId: 'job' }),
  fset: table(fastener.Fset, 'job', {
    id: 'thing',
    jobId: 'job',
    removalId: 'removal',
    specId: 'spec',
    stowId: 'stow',
  }),
  stackItem: table(fastener.StackItem, 'job', { jobId: 'job', setId: 'fset', specId: 'spec' }),
  position: table(fastener.Position, 'job', {
    id: 'thing',
    jobId: 'job',
    setId: 'fset',
    specId: 'spec',
    stowId: 'stow',
  }),
  holds: table(fastener.Holds, 'job', { jobId: 'job', positionId: 'position', partId: 'part' }),
  counting: table(fastener.Counting, 'job', {
    jobId: 'job',
    stowId: 'stow',
    thingId: 'thing',
    personId: 'person',
    endedBy: 'person',
  }),
  move: table(fastener.Move, 'job', {
    jobId: 'job',
    specId: 'spec',
    homeSetId: 'fset',
    partId: 'part',
    positionId: 'position',
    srcStowId: 'stow',
    dstStowId: 'stow',
    countId: 'counting',
    personId: 'person',
  }),
  connection: table(part.Connection, 'job', {
    id: 'thing',
    jobId: 'job',
    removalId: 'removal',
    sealPartId: 'part',
  }),
  fluid: table(fluid.Fluid, 'job', { id: 'thing', jobId: 'job' }),
  opens: table(fluid.Opens, 'job', { jobId: 'job', fluidId: 'fluid', thingId: 'thing' }),
  isolation: table(removal.Isolation, 'job', {
    id: 'thing',
    jobId: 'job',
    removalId: 'removal',
    byPersonId: 'person',
    fluidId: 'fluid',
  }),
  protects: table(removal.Protects, 'job', {
    jobId: 'job',
    isolationId: 'isolation',
    removalId: 'removal',
  }),
  temporary: table(removal.Temporary, 'job', {
    id: 'thing',
    jobId: 'job',
    removalId: 'removal',
    stepThingId: 'thing',
    holdsThingId: 'thing',
    outWithId: 'removal',
  }),
  mark: table(part.Mark, 'job', { id: 'thing', jobId: 'job', removalId: 'removal', partId: 'part' }),
  together: table(part.Together, 'job', { jobId: 'job' }),
  measure: table(part.Measure, 'job', { id: 'thing', jobId: 'job', removalId: 'removal' }),
  consumable: table(part.Consumable, 'job', { jobId: 'job', thingId: 'thing' }),
  deed: table(work.Deed, 'job', {
    jobId: 'job',
    thingId: 'thing',
    toolId: 'tool',
    withThingId: 'thing',
    withSpecId: 'spec',
    personId: 'person',
  }),
  want: table(work.Want, 'job', { jobId: 'job', thingId: 'thing', specId: 'spec' }),
  accepted: table(work.Accepted, 'job', { jobId: 'job', personId: 'person' }),
  photo: table(work.Photo, 'job', {
    jobId: 'job',
    originalId: 'original',
    removalId: 'removal',
    stowId: 'stow',
  }),
  marker: table(work.Marker, 'job', {
    jobId: 'job',
    photoId: 'photo',
    thingId: 'thing',
    togetherId: 'together',
    carriedFromId: 'marker',
  }),
  card: table(work.Card, 'job', { jobId: 'job', thingId: 'thing', stowId: 'stow' }),
} as const;

export type TableName = keyof typeof TABLES;
/** A row of the named table, as the program sees it (camel case, booleans, arrays). */
export type Row<T extends TableName> = z.infer<(typeof TABLES)[T]['schema']>;
export const TABLE_NAMES = Object.keys(TABLES) as TableName[];

export type JobTable = {
  [K in TableName]: (typeof TABLES)[K]['scope'] extends 'job' ? K : never;
}[TableName];
/** The tables whose rows belong to one job, in writing order. */
export const JOB_TABLES = TABLE_NAMES.filter((name) => TABLES[name].scope === 'job') as JobTable[];

/** Everything one job holds, and the workshop's rows it names. Order: as stored; see each use for sorting. */
export type JobState = { [K in JobTable]: readonly Row<K>[] } & {
  job: Row<'job'>;
  person: readonly Row<'person'>[];
  tool: readonly Row<'tool'>[];
  stow: readonly Row<'stow'>[];
  original: readonly Row<'original'>[];
};

/** Thing kind of each table that has one. */
export const THING_TABLES = {
  removal: 'removal',
  ownStep: 'own step',
  part: 'part',
  fset: 'set',
  position: 'position',
  connection: 'connection',
  fluid: 'fluid',
  isolation: 'isolation',
  temporary: 'temporary',
  mark: 'mark',
  measure: 'measure',
} as const satisfies Partial<Record<TableName, removal.ThingKind>>;
export type ThingTable = keyof typeof THING_TABLES;

/** An empty job: for tests, for a new job before it is stored. */
export function emptyState(job: Row<'job'>): JobState {
  const state: Record<string, unknown> = { job, person: [], tool: [], stow: [], original: [] };
  for (const name of JOB_TABLES) state[name] = [];
  return state as JobState;
}
