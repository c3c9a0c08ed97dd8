import { z } from 'zod';
import { Id, Line } from '../model/fields.ts';
import { TABLES } from '../model/tables.ts';
import { Done, jobCommand, Made } from './shapes.ts';

/** Files photos by hand, many at once; null = back to the unfiled ones. */
export const photoFile = {
  input: z.strictObject({
    ...jobCommand,
    photoIds: z.array(Id).min(1).max(10_000),
    removalId: Id.nullable(),
  }),
  value: Done,
};

const Many = z.array(Id).min(1).max(10_000);
/** Longest pause within one removal, in milliseconds; five minutes when not said. */
const Pause = z.int().min(0).max(86_400_000).optional();

/**
 * Draft removals from a roll of pictures, one for each run without a longer pause, or one for each group of `rolls`;
 * one undo takes them all back.
 */
export const photoDraft = {
  input: z.strictObject({
    ...jobCommand,
    photoIds: Many.optional(),
    pauseMs: Pause,
    rolls: z.array(Many).min(1).max(1_000).optional(),
  }),
  value: z.strictObject({ ids: z.array(Id), said: z.string() }),
};

/** The groups that draft removals would be made from, with the times of their first and last photo: a reading. */
export const photoRolls = {
  input: z.strictObject({ jobId: Id, photoIds: Many, pauseMs: Pause }),
  value: z.strictObject({
    rolls: z.array(z.strictObject({ photoIds: z.array(Id), from: z.number(), to: z.number() })),
  }),
};

/** Takes photos away from the job with their marks, many at once; one undo brings them back. */
export const photoRemove = { input: z.strictObject({ ...jobCommand, photoIds: Many }), value: Done };

/** Says of photos that they show the machine as found, as refitted, or neither. */
export const photoRole = {
  input: z.strictObject({ ...jobCommand, photoIds: Many, role: TABLES.photo.schema.shape.role }),
  value: Done,
};

/**
 * Unfiled photos by the removal they are offered to (null: the next one), photos that show nearly the same, and those
 * that are very dark.
 */
export const photoTray = {
  input: z.strictObject({ jobId: Id }),
  value: z.strictObject({
    offers: z.array(z.strictObject({ removalId: Id.nullable(), photoIds: z.array(Id) })),
    /** Best first in each; nothing is deleted. */
    groups: z.array(z.array(Id)),
    dark: z.array(Id),
  }),
};

const MarkerIds = z.array(Id).min(1).max(1_000);

/** Marks that go together: this pin into that slot, also across photos. */
export const markerJoin = {
  input: z.strictObject({ ...jobCommand, markerIds: MarkerIds, name: Line.optional() }),
  value: Made,
};
/** Marks that go together with nothing any more. */
export const markerPart = { input: z.strictObject({ ...jobCommand, markerIds: MarkerIds }), value: Done };
/** Another number for a mark; the mark of the photo that has it gets the number of this one. */
export const markerNumber = {
  input: z.strictObject({ ...jobCommand, markerId: Id, n: z.int().min(1).max(999) }),
  value: Done,
};

/** Sent with a file on its way in: its name, percent-encoded. */
export const PHOTO_NAME_HEADER = 'x-everybolt-name';
/** Sent with each file of one import: an id, the same for all, so that one undo takes them all back. */
export const PHOTO_BATCH_HEADER = 'x-everybolt-batch';

/** What the host answers to one file. */
export const UploadAnswer = z.object({
  status: z.enum(['added', 'duplicate', 'refused']),
  photoId: Id.nullable(),
  sentence: z.string(),
  filedWhy: z.string(),
});
export type UploadAnswer = z.infer<typeof UploadAnswer>;
