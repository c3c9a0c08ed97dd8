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
