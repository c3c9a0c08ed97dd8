import { v7 } from 'uuid';
import { create } from 'zustand';
import { PHOTO_BATCH_HEADER, PHOTO_NAME_HEADER, UploadAnswer } from '../../core/contract/photos.ts';
import { photos as say } from '../texts/photos.ts';
import { journal } from './journal.ts';
import { remember } from './remember.ts';

/** One import under way. */
interface Importing {
  readonly jobId: string;
  readonly total: number;
  readonly done: number;
  readonly bytes: number;
  readonly bytesDone: number;
  /** Milliseconds since 1970. */
  readonly since: number;
  readonly added: number;
  readonly here: number;
  /** Sentences of what was refused, and what was said of a shot. */
  readonly said: readonly string[];
}

export interface Uploads {
  readonly now: Importing | null;
  /** What came of the last import, until it is closed. */
  readonly ended: { readonly jobId: string; readonly say: string; readonly added: number } | null;
  /** All that was said of the photos of the last import, a sentence each, until it is read. */
  readonly said: { readonly jobId: string; readonly sentences: readonly string[] } | null;
  forget(): void;
  read(): void;
}

export const uploads = create<Uploads>()((set) => ({
  now: null,
  ended: null,
  said: null,
  forget: () => set({ ended: null }),
  read: () => set({ said: null }),
}));

/** Two at a time: one is sent while the other is read. */
const AT_ONCE = 2;
const PAUSES_MS = [500, 2000, 5000];

interface Waiting {
  readonly jobId: string;
  readonly batch: string;
  readonly file: File;
}

const queue: Waiting[] = [];
let working = 0;
let stop = new AbortController();

/** Sends files to a job. All that are dropped while an import runs belong to it: one undo takes them all back. */
export function addPhotos(jobId: string, files: readonly File[]): void {
  if (files.length === 0) return;
  const running = uploads.getState().now;
  const batch = running?.jobId === jobId ? (queue.at(-1)?.batch ?? v7()) : v7();
  queue.push(...files.map((file) => ({ jobId, batch, file })));
  const bytes = files.reduce((sum, file) => sum + file.size, 0);
  uploads.setState({
    ended: null,
    now: running
      ? { ...running, total: running.total + files.length, bytes: running.bytes + bytes }
      : {
          jobId,
          total: files.length,
          done: 0,
          bytes,
          bytesDone: 0,
          since: Date.now(),
          added: 0,
          here: 0,
          said: [],
        },
  });
  if (working === 0) stop = new AbortController();
  while (working < AT_ONCE && working < queue.length) void work();
}

/** Lets go of what waits; what is in already stays, and one undo takes it back. */
export function cancelPhotos(): void {
  queue.length = 0;
  stop.abort();
}

async function work(): Promise<void> {
  working++;
  for (let next = queue.shift(); next !== undefined; next = queue.shift()) {
    const answer = await deliver(next);
    if (answer !== null) count(next, answer);
  }
  working--;
  if (working === 0) end();
}

async function deliver(one: Waiting): Promise<UploadAnswer | null> {
  const { signal } = stop;
  for (const pause of [...PAUSES_MS, 0]) {
    if (signal.aborted) return null;
    try {
      return await sendFile(one, signal);
    } catch {
      // The same file sent twice is one photo, so that a reply that got lost does no harm.
      if (pause > 0) await new Promise((done) => setTimeout(done, pause));
    }
  }
  if (signal.aborted) return null;
  return { status: 'refused', photoId: null, filedWhy: '', sentence: say.noAnswer };
}

async function sendFile({ jobId, batch, file }: Waiting, signal: AbortSignal): Promise<UploadAnswer> {
  const { personId } = remember.getState();
  const reply = await fetch(`/upload/${jobId}`, {
    method: 'POST',
    body: file,
    signal,
    headers: {
      'Content-Type': 'application/octet-stream',
      [PHOTO_NAME_HEADER]: encodeURIComponent(file.name || say.pasted),
      [PHOTO_BATCH_HEADER]: batch,
      ...(personId === null ? {} : { 'x-everybolt-person': personId }),
    },
  });
  const body: unknown = await reply.json();
  const known = UploadAnswer.safeParse(body);
  if (known.success) return known.data;
  const { sentence } = body as { sentence?: unknown };
  if (reply.status >= 500) throw new Error(String(sentence));
  return { status: 'refused', photoId: null, filedWhy: '', sentence: String(sentence ?? say.noAnswer) };
}

function count({ file }: Waiting, answer: UploadAnswer): void {
  const { now } = uploads.getState();
  if (!now) return;
  const note = answer.sentence.replace(/^Added\. ?/, '');
  const tell = answer.status === 'duplicate' || note === '' ? [] : [`${file.name}: ${note}`];
  uploads.setState({
    now: {
      ...now,
      done: now.done + 1,
      bytesDone: now.bytesDone + file.size,
      added: now.added + (answer.status === 'added' ? 1 : 0),
      here: now.here + (answer.status === 'duplicate' ? 1 : 0),
      said: [...now.said, ...tell],
    },
  });
}

function end(): void {
  const { now } = uploads.getState();
  if (!now) return;
  uploads.setState({
    now: null,
    ended: { jobId: now.jobId, say: say.came(now.added, now.here, now.total - now.done), added: now.added },
  });
  if (now.said.length > 0) uploads.setState({ said: { jobId: now.jobId, sentences: now.said } });
  // What was not taken, or must be taken again, is said until it is closed.
  const [first, ...more] = now.said;
  if (first !== undefined) journal.getState().refuse(say.told(first, more.length));
}

/** Count and time left, for the status line. */
export function progressOf(now: Importing, at: number): string {
  const rate = now.bytesDone / Math.max(1, at - now.since);
  const left = now.bytesDone === 0 ? null : (now.bytes - now.bytesDone) / rate / 1000;
  return say.progress(now.done, now.total, left);
}
