import { v7 } from 'uuid';
import { ok, type Result, refuse } from '../model/result.ts';
import type { PicturePool } from '../photos/pool.ts';
import type { PhotoTask, PhotoTasks } from '../store/photo-tasks.ts';
import type { Context } from './frame.ts';
import { addPhoto, type PhotoAdded } from './photos.ts';

export interface ImportFile {
  /** Whole path on this computer. */
  readonly path: string;
  /** As its owner calls it. */
  readonly fileName: string;
}

export interface ImportProgress {
  readonly done: number;
  readonly total: number;
  /** Milliseconds that the rest will take at the speed so far; null while too few are done to say. */
  readonly leftMs: number | null;
}

export interface ImportOptions {
  /** Lets go of what waits; what is being read is finished. */
  readonly signal?: AbortSignal;
  readonly onProgress?: (progress: ImportProgress) => void;
  /** So many files are on their way at once: one is copied and hashed while others are unpacked. */
  readonly atOnce?: number;
}

/** What became of one file; "cancelled" was waiting when the import was called off. */
export type Imported = Omit<PhotoAdded, 'status'> & {
  readonly path: string;
  readonly status: PhotoAdded['status'] | 'cancelled';
};

const AT_ONCE = 4;
/** Fewer files than this say nothing about the speed. */
const ENOUGH = 3;

/**
 * Adds files to a job as one import: one undo takes all of them back. Each file is written down as a task first, so
 * that an import cut short by a kill is finished by the next one in this job (also by one of no files at all), under
 * the batch it had. Answers: the files asked for in their order, then what was left of an import before.
 */
export async function addPhotos(
  context: Context,
  pool: PicturePool,
  jobId: string,
  files: readonly ImportFile[],
  options: ImportOptions = {},
): Promise<Result<Imported[]>> {
  const { workshop } = context;
  const job = workshop.job(jobId)?.job;
  if (!job) return refuse('not-found', `Expected a job that is there, got ${jobId}.`);
  if (job.phase === 'signed')
    return refuse('refused', 'This job is signed off. Start a new job that names it as the earlier one.');
  const tasks = workshop.local?.photoTasks;
  if (!tasks) throw new Error('Expected a workshop opened for writing.');
  const queue = enqueue(tasks, jobId, files, workshop.now());
  const answers: Imported[] = [];
  const since = performance.now();
  let [next, done] = [0, 0];
  const inOrder = turns();
  const work = async (): Promise<void> => {
    for (let i = next++; i < queue.length; i = next++) {
      const task = queue[i] as PhotoTask;
      const turn = inOrder();
      const add = async () => addPhoto(context, pool, { ...task, hashed: turn.hashed }).finally(turn.end);
      answers[i] = options.signal?.aborted ? cancelled(task) : { ...(await add()), path: task.path };
      const { status, sentence } = answers[i] as Imported;
      const end = status === 'refused' ? 'failed' : status === 'cancelled' ? 'skipped' : 'done';
      tasks.end(task.id, end, sentence, workshop.now());
      done++;
      const pace = (performance.now() - since) / done;
      const leftMs = done < ENOUGH ? null : Math.round(pace * (queue.length - done));
      options.onProgress?.({ done, total: queue.length, leftMs });
    }
  };
  await Promise.all(Array.from({ length: options.atOnce ?? AT_ONCE }, work));
  return ok(answers);
}

interface Turn {
  /** To be called with the hash of the file; answers when no file before it is on its way with the same hash. */
  readonly hashed: (sha256: string) => Promise<void>;
  readonly end: () => void;
}

/**
 * Lets the first of two files that are the same be the one that is added, whichever is quicker. Only hashes are waited
 * for, and the whole way of a file only where a later one is the same: others are read side by side.
 */
function turns(): () => Turn {
  const before = new Set<{ hash: Promise<string | null>; ended: Promise<void> }>();
  return () => {
    const earlier = [...before];
    const hash = Promise.withResolvers<string | null>();
    const ended = Promise.withResolvers<void>();
    const own = { hash: hash.promise, ended: ended.promise };
    before.add(own);
    return {
      hashed: async (sha256) => {
        hash.resolve(sha256);
        for (const one of earlier) if ((await one.hash) === sha256) await one.ended;
      },
      end: () => {
        before.delete(own);
        hash.resolve(null);
        ended.resolve();
      },
    };
  };
}

/** Tasks for the files, those that waited already under their own batch, and after them what else was left waiting. */
function enqueue(tasks: PhotoTasks, jobId: string, files: readonly ImportFile[], at: number): PhotoTask[] {
  const left = new Map(tasks.waiting(jobId).map((task) => [task.path, task]));
  const batch = v7();
  const fresh: PhotoTask[] = [];
  const asked = files.map(({ path, fileName }) => {
    const known = left.get(path);
    left.delete(path);
    if (known) return known;
    const task: PhotoTask = { id: v7(), jobId, batch, path, fileName };
    fresh.push(task);
    return task;
  });
  tasks.add(fresh, at);
  return [...asked, ...left.values()];
}

function cancelled({ path, fileName }: PhotoTask): Imported {
  return {
    path,
    status: 'cancelled',
    fileName,
    photoId: null,
    originalId: null,
    facts: null,
    removalId: null,
    filedWhy: '',
    sentence: 'Called off before it was read.',
  };
}
