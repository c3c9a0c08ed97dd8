import { basename, resolve } from 'node:path';
import { v7 } from 'uuid';
import { PicturePool } from '../../photos/pool.ts';
import type { Context } from '../../usecases/frame.ts';
import { addPhoto, type PhotoAdded } from '../../usecases/photos.ts';
import {
  type Answer,
  fine,
  found,
  jobIdOf,
  type Options,
  refusal,
  type Verb,
  wrongUsage,
  writing,
} from '../frame.ts';

/** So many files are on their way at once: one is copied and hashed while others are decoded. */
const AT_ONCE = 3;

/** Adds files a few at a time; the answers come in the order of the files. */
async function addAll(context: Context, jobId: string, files: readonly string[]): Promise<PhotoAdded[]> {
  const pool = new PicturePool();
  const batch = v7();
  const answers: PhotoAdded[] = [];
  let next = 0;
  const work = async (): Promise<void> => {
    for (let i = next++; i < files.length; i = next++) {
      const file = files[i] as string;
      answers[i] = await addPhoto(context, pool, {
        jobId,
        path: resolve(file),
        fileName: basename(file),
        batch,
      });
    }
  };
  try {
    await Promise.all(Array.from({ length: AT_ONCE }, work));
  } finally {
    await pool.close();
  }
  return answers;
}

function lineOf(file: string, answer: PhotoAdded): string {
  const { facts } = answer;
  if (answer.status === 'refused' || facts === null) return `${file}: refused. ${answer.sentence}`;
  const taken =
    facts.takenLocal === null
      ? 'time not known'
      : `${facts.takenLocal.replace('T', ' ')}${facts.takenZone ?? ', zone not known'}`;
  const about = [
    facts.type,
    `${facts.width} × ${facts.height}`,
    ...(facts.turn === 1 ? [] : [`turn ${facts.turn}`]),
    taken,
    facts.camera || 'camera not known',
    facts.hasLocation ? 'with location' : 'without location',
  ].join(', ');
  return `${file}: ${answer.status}. ${about}. ${answer.sentence} ${answer.filedWhy}`.trim();
}

async function runAdd(options: Options): Promise<Answer> {
  const files = options.words;
  if (files.length === 0) return wrongUsage('Expected photos: photos-add --job ID FILE…');
  return writing(options, async (context) => {
    const job = jobIdOf(context, options.flags['job']);
    if (!job.ok) return refusal(job.fault);
    const answers = await addAll(context, job.value, files);
    const value = answers.map((answer, i) => ({ file: files[i], ...answer }));
    const lines = answers.map((answer, i) => lineOf(files[i] ?? '', answer));
    return answers.some((answer) => answer.status === 'refused') ? found(value, lines) : fine(value, lines);
  });
}

/** Photos by the command line. */
export const PHOTO_VERBS: readonly Verb[] = [
  {
    name: 'photos-add',
    usage: 'photos-add [--job ID] FILE…',
    says: 'adds photos to a job: a line per file (added, duplicate, refused) with facts and the reason',
    options: ['job'],
    run: runAdd,
  },
];
