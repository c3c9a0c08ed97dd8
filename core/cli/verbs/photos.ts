import { basename, resolve } from 'node:path';
import { PicturePool } from '../../photos/pool.ts';
import type { Context } from '../../usecases/frame.ts';
import { addPhotos, type Imported, type ImportProgress } from '../../usecases/photo-import.ts';
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

/** Told on the terminal while it goes on; a pipe or a file gets the answer only. */
function tell({ done, total, leftMs }: ImportProgress): void {
  if (!process.stderr.isTTY) return;
  const left = leftMs === null || done === total ? '' : `, about ${Math.ceil(leftMs / 1000)} s left`;
  process.stderr.write(`\r\u001b[K${done} of ${total}${left}${done === total ? '\n' : ''}`);
}

/** Adds all files as one import; Ctrl-C lets go of those that wait, and what is in stays in. */
async function addAll(context: Context, jobId: string, files: readonly string[]) {
  const pool = new PicturePool();
  const stop = new AbortController();
  const interrupt = () => stop.abort();
  process.once('SIGINT', interrupt);
  try {
    const named = files.map((file) => ({ path: resolve(file), fileName: basename(file) }));
    return await addPhotos(context, pool, jobId, named, { signal: stop.signal, onProgress: tell });
  } finally {
    process.off('SIGINT', interrupt);
    await pool.close();
  }
}

function lineOf(file: string, answer: Imported): string {
  const { facts } = answer;
  if (facts === null) return `${file}: ${answer.status}. ${answer.sentence}`;
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
  return writing(options, async (context) => {
    const job = jobIdOf(context, options.flags['job']);
    if (!job.ok) return refusal(job.fault);
    const done = await addAll(context, job.value, files);
    if (!done.ok) return refusal(done.fault);
    if (done.value.length === 0) return wrongUsage('Expected photos: photos-add --job ID FILE…');
    // Files of an import that was killed before are finished too, and said by their whole path.
    const value = done.value.map((answer, i) => ({ file: files[i] ?? answer.path, ...answer }));
    const lines = value.map((answer) => lineOf(answer.file, answer));
    return value.every(({ status }) => status === 'added' || status === 'duplicate')
      ? fine(value, lines)
      : found(value, lines);
  });
}

/** Photos by the command line. */
export const PHOTO_VERBS: readonly Verb[] = [
  {
    name: 'photos-add',
    usage: 'photos-add [--job ID] FILE…',
    says: 'adds photos to a job: a line per file (added, duplicate, refused) with facts and the reason; finishes an import that was killed',
    options: ['job'],
    run: runAdd,
  },
];
