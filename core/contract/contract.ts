import { oc } from '@orpc/contract';
import { z } from 'zod';
import { Id, Line, Ms, Text } from '../model/fields.ts';
import { type JobState, TABLES } from '../model/tables.ts';
import type { DayAhead, Reach, ToolPlan } from '../reinstall/index.ts';
import * as answers from './answers.ts';
import type { JobCard, JobView } from './views.ts';
import * as pattern from './pattern.ts';
import * as record from './record.ts';
import { command, Done, jobCommand, Made, reply } from './shapes.ts';
import * as photos from './photos.ts';
import * as tray from './tray.ts';
import * as work from './work.ts';

type Op<I extends z.ZodType, V extends z.ZodType> = { readonly input: I; readonly value: V };
const op = <I extends z.ZodType, V extends z.ZodType>({ input, value }: Op<I, V>) =>
  oc.input(input).output(reply(value));

/** Made by the host from checked rows; a second check of thousands of rows on each reading would only cost time. */
const trusted = <T>() => z.custom<T>(() => true);

const JobValues = TABLES.job.schema
  .omit({ id: true, createdAt: true, phase: true, recheckDue: true })
  .partial();

/** Every operation: name, input, output. Client, validation and command line all follow from this one value. */
export const contract = {
  workshop: {
    info: op({
      input: z.strictObject({}),
      value: z.strictObject({ name: z.string(), version: z.string() }),
    }),
    people: op({
      input: z.strictObject({}),
      value: z.strictObject({
        person: z.array(TABLES.person.schema),
        tool: z.array(TABLES.tool.schema),
        stow: z.array(TABLES.stow.schema),
      }),
    }),
    put: op({
      input: z.strictObject({
        ...command,
        table: z.enum(['person', 'tool', 'stow']),
        id: Id.optional(),
        values: record.Values,
      }),
      value: Made,
    }),
    draft: op({ input: z.strictObject({ key: Line }), value: z.strictObject({ text: Text }) }),
    keepDraft: op({ input: z.strictObject({ key: Line, text: Text }), value: Done }),
    search: op({
      input: z.strictObject({ text: Line }),
      value: trusted<readonly SearchHit[]>(),
    }),
    near: op({ input: z.strictObject({ text: Line }), value: trusted<NearNames>() }),
  },
  jobs: {
    list: op({ input: z.strictObject({}), value: trusted<readonly JobCard[]>() }),
    add: op({
      input: z.strictObject({
        ...command,
        id: Id.optional(),
        title: Line.min(1),
        values: JobValues.optional(),
      }),
      value: Made,
    }),
    change: op({ input: z.strictObject({ ...jobCommand, values: JobValues }), value: Done }),
    /** The sample job with its photos, in three stages. */
    sample: op({
      input: z.strictObject({ ...command }),
      value: z.strictObject({ ids: z.array(Id), said: Line }),
    }),
    close: op(work.jobClose),
    state: op({ input: z.strictObject({ jobId: Id }), value: trusted<JobState>() }),
    view: op({ input: z.strictObject({ jobId: Id }), value: trusted<JobView>() }),
    touched: op({ input: answers.jobsTouched, value: trusted<answers.Touched>() }),
  },
  record: {
    make: op(record.recordMake),
    change: op(record.recordChange),
    remove: op(record.recordRemove),
  },
  photo: {
    file: op(photos.photoFile),
    draft: op(photos.photoDraft),
    rolls: op(photos.photoRolls),
    tray: op(photos.photoTray),
    remove: op(photos.photoRemove),
    role: op(photos.photoRole),
  },
  marker: {
    join: op(photos.markerJoin),
    part: op(photos.markerPart),
    number: op(photos.markerNumber),
  },
  log: { add: op(record.logAdd) },
  removal: {
    did: op(record.removalDid),
    end: op(record.removalEnd),
    reorder: op(record.removalReorder),
    split: op(record.removalSplit),
    merge: op(record.removalMerge),
    repeat: op(record.removalRepeat),
    void: op(record.removalVoid),
  },
  set: {
    takeOut: op(record.setTakeOut),
    stow: op(record.setStow),
    lengths: op(record.positionLengths),
    spec: op(record.setSpec),
    torque: op(record.setTorque),
    count: op(record.setCount),
  },
  part: { stow: op(record.partStow) },
  halt: { add: op(record.haltAdd), seen: op(record.haltSeen) },
  tick: {
    do: op(work.tickDo),
    again: op(work.tickAgain),
    broke: op(work.tickBroke),
    round: op(work.tickRound),
  },
  finding: { accept: op(work.findingAccept) },
  piece: {
    count: op(work.pieceCount),
    miss: op(work.pieceMiss),
    found: op(work.pieceFound),
    gone: op(work.pieceGone),
    receive: op(work.pieceReceive),
    scrap: op(work.pieceScrap),
    kit: op(work.kitSplit),
    promise: op(answers.piecePromise),
  },
  pattern: { use: op(pattern.patternUse), begin: op(pattern.patternBegin) },
  item: { lost: op(work.itemLost) },
  tray: {
    read: op(tray.trayRead),
    match: op({ ...tray.trayMatch, value: trusted<tray.TrayAnswer>() }),
    accept: op(tray.trayAccept),
  },
  bolt: { whose: op({ ...tray.boltWhose, value: trusted<tray.BoltAnswer>() }) },
  plan: {
    reach: op({ input: answers.planReach, value: trusted<Reach>() }),
    tools: op({ input: z.strictObject({ jobId: Id }), value: trusted<ToolPlan>() }),
    day: op({ input: answers.planDay, value: trusted<DayAhead>() }),
    walk: op(answers.planWalk),
    comeOff: op(answers.planComeOff),
  },
  need: { settle: op(answers.needSettle) },
  away: { send: op(work.awaySend), back: op(work.awayBack) },
  renew: { override: op(work.renewOverride) },
  history: {
    undo: op({ input: z.strictObject({ ...jobCommand }), value: z.strictObject({ what: z.string() }) }),
    redo: op({ input: z.strictObject({ ...jobCommand }), value: z.strictObject({ what: z.string() }) }),
    state: op({
      input: z.strictObject({ jobId: Id }),
      value: z.strictObject({ undo: z.string().nullable(), redo: z.string().nullable() }),
    }),
    list: op({
      input: z.strictObject({ jobId: Id, limit: z.int().min(1).max(10_000) }),
      value: z.array(
        z.strictObject({
          seq: z.int(),
          n: z.int(),
          at: Ms,
          actor: z.string(),
          what: z.string(),
          hash: z.string(),
        }),
      ),
    }),
  },
};

/** What is offered where a search found nothing. */
export interface NearNames {
  /** Names in the workshop, the nearest first; each of them is found. */
  readonly near: readonly string[];
  /** The fields that were searched, in words. */
  readonly lookedIn: string;
}

/** One hit of the search over every job. */
export interface SearchHit {
  readonly jobId: string;
  readonly jobTitle: string;
  /** The removal it belongs to; null for the job itself. */
  readonly removalId: string | null;
  readonly thingId: string | null;
  readonly kind: string;
  readonly text: string;
}
