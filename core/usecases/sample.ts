import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { v7 } from 'uuid';
import { readJobFile, stateOfFile } from '../model/job-file.ts';
import { refuse } from '../model/result.ts';
import type { JobState, Row } from '../model/tables.ts';
import { answer, type Context, type Reply } from './frame.ts';
import { bringJob } from './job-bring.ts';

/** The sample job comes with the program: three copies of it as job files, and their photos. */
const SAMPLES = join(import.meta.dirname, '..', '..', 'samples');

/** In the order in which they come into a workshop: the last is the one to carry on with. */
const COPIES = ['finished', 'half-back', 'half-apart'] as const;
export type SampleCopy = (typeof COPIES)[number];

const textOf = (copy: SampleCopy): string => readFileSync(join(SAMPLES, 'jobs', `${copy}.json`), 'utf8');

/** One copy of the sample as a job's rows, without any workshop. */
export function sampleState(copy: SampleCopy): JobState {
  const read = readJobFile(textOf(copy));
  if ('sentence' in read) throw new Error(read.sentence);
  return stateOfFile(read.file);
}

/** Puts the sample job with its photos into the workshop; what is there already stays as it is. */
export async function jobsSample(
  context: Context,
  input: { readonly command: string },
): Promise<Reply<{ ids: string[]; said: string }>> {
  const ids: string[] = [];
  for (const copy of COPIES) {
    const text = textOf(copy);
    const state = sampleState(copy);
    if (context.workshop.job(state.job.id)) continue;
    const names = new Map(state.photo.map((photo: Row<'photo'>) => [photo.originalId, photo.fileName]));
    const brought = await bringJob(context, {
      command: ids.length === 0 ? input.command : v7(),
      text,
      photoFile: (sha256) => join(SAMPLES, 'photos', basename(names.get(sha256) ?? sha256)),
    });
    if (!brought.ok) return brought;
    ids.push(brought.value.id);
  }
  if (ids.length === 0)
    return refuse('refused', 'The sample job is in this workshop already. Nothing was changed.');
  return answer(context, {
    ids,
    said: 'The sample job is in this workshop three times: half apart, half back, finished.',
  });
}
