import { z } from 'zod';
import { Id } from '../model/fields.ts';
import { Done, jobCommand } from './shapes.ts';

/** Files photos by hand, many at once; null = back to the unfiled ones. */
export const photoFile = {
  input: z.strictObject({
    ...jobCommand,
    photoIds: z.array(Id).min(1).max(10_000),
    removalId: Id.nullable(),
  }),
  value: Done,
};

/** Draft removals from a roll of pictures, one for each run without a longer pause; one undo takes them all back. */
export const photoDraft = {
  input: z.strictObject({
    ...jobCommand,
    photoIds: z.array(Id).min(1).max(10_000),
    /** Milliseconds; five minutes when not said. */
    pauseMs: z.int().min(0).max(86_400_000).optional(),
  }),
  value: z.strictObject({ ids: z.array(Id), said: z.string() }),
};

/** Unfiled photos by the removal they are offered to (null: the next one), and photos that show nearly the same. */
export const photoTray = {
  input: z.strictObject({ jobId: Id }),
  value: z.strictObject({
    offers: z.array(z.strictObject({ removalId: Id.nullable(), photoIds: z.array(Id) })),
    /** Best first in each; nothing is deleted by itself. */
    groups: z.array(z.array(Id)),
  }),
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
