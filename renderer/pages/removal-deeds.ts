import { v7 } from 'uuid';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { journal } from '../data/journal.ts';
import { remember } from '../data/remember.ts';
import type { Next } from './use-removal.ts';

/** Fields of the removal at hand are written when the hand leaves them, not at every letter. */
export function changeRemoval(job: OpenJob, id: string, values: Record<string, unknown>): void {
  void send(job.id, (command) =>
    client.record.change({ command, jobId: job.id, table: 'removal', id, values }),
  );
}

/** What was done to a removal that is logged already: what is booked for it follows. */
export function changeDid(job: OpenJob, removalId: string, did: Next['did']): void {
  void send(job.id, (command) => client.removal.did({ command, jobId: job.id, removalId, did }));
}

/** What is said of a removal that is not begun; what was not said stays as the record begins it. */
const saidOf = (next: Next): Partial<Next> => ({
  ...(next.did === 'off' ? {} : { did: next.did }),
  ...(next.place === '' ? {} : { place: next.place }),
  ...(next.side === null ? {} : { side: next.side }),
});

/**
 * A title or note written before anything was logged begins the next removal, with what was said of it. It is at hand
 * at once: a line typed before the reply came belongs to it.
 */
export async function writeFields(
  job: OpenJob,
  id: string | null,
  values: { title?: string; noteBack?: string },
  next: Next,
): Promise<void> {
  if (id !== null) {
    changeRemoval(job, id, values);
    return;
  }
  const text = values.title ?? values.noteBack ?? '';
  if (text === '') return;
  const newId = v7();
  const { go } = remember.getState();
  go({ removalId: newId });
  const made = await send(
    job.id,
    (command) =>
      client.record.make({
        command,
        jobId: job.id,
        table: 'removal',
        id: newId,
        values: { ...saidOf(next), ...values },
      }),
    { removal: { id: newId, text: values.title ?? '' } },
  );
  if (!made && remember.getState().removalId === newId) go({ removalId: null });
}

/** Logs the line: into the removal at hand, or as the next one, which is shown before the record has it. */
export async function logLine(
  job: OpenJob,
  text: string,
  removalId: string | null,
  next: Next,
): Promise<boolean> {
  const newId = v7();
  const said = { newRemovalId: newId, ...saidOf(next) };
  const done = await send(
    job.id,
    (command) =>
      client.log.add({ command, jobId: job.id, text, removalId, ...(removalId === null ? said : {}) }),
    { removal: removalId === null ? { id: newId, text } : null },
  );
  // A line that took nothing off went to the removal under way.
  if (done && done.removalId !== newId) journal.getState().forget(newId);
  return done !== null;
}
