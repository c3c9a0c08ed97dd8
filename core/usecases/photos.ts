import { copyFile, mkdir, rm, stat } from 'node:fs/promises';
import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { v7 } from 'uuid';
import { blank } from '../model/blank.ts';
import { ok, type Result, refuse } from '../model/result.ts';
import type { JobState, Row } from '../model/tables.ts';
import { settle } from '../photos/disk.ts';
import type { PhotoFacts } from '../photos/facts.ts';
import { type Filed, fileByTime, shotProblem } from '../photos/filing.ts';
import type { PhotoPool } from '../photos/pool.ts';
import { MAX_PHOTO_BYTES } from '../photos/messages.ts';
import { mislabelled } from '../photos/sniff.ts';
import { hashFile, originalPath } from '../store/check.ts';
import { places } from '../store/workshop.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply, rowIn } from './frame.ts';
import { logOrder } from './log/add.ts';

export interface PhotoInput {
  readonly jobId: string;
  /** Where the file lies now. */
  readonly path: string;
  /** As its owner calls it; never becomes a path. */
  readonly fileName: string;
  /** The same for all files of one import: one press of undo takes them all back. */
  readonly batch: string;
  /** The file may be moved instead of copied. */
  readonly ours?: boolean;
}

/** What became of one file. */
export interface PhotoAdded {
  readonly status: 'added' | 'duplicate' | 'refused';
  readonly fileName: string;
  readonly photoId: string | null;
  /** SHA-256 of the file; null where it could not even be read. */
  readonly originalId: string | null;
  readonly facts: Omit<Row<'original'>, 'id' | 'gone' | 'goneWhy'> | null;
  readonly removalId: string | null;
  readonly filedWhy: string;
  readonly sentence: string;
}

/** Folder inside the originals for what is on its way in. Nothing in it is record. */
export function incomingFolder(workshopDir: string): string {
  return join(places(workshopDir).originals, 'incoming');
}

/** Throws away what a kill left half-way in. Only while no import runs. */
export function sweepIncoming(workshopDir: string): void {
  const dir = incomingFolder(workshopDir);
  if (!existsSync(dir)) return;
  for (const name of readdirSync(dir)) rmSync(join(dir, name), { force: true });
}

const refusedFile = (fileName: string, originalId: string | null, sentence: string): PhotoAdded => ({
  status: 'refused',
  fileName,
  photoId: null,
  originalId,
  facts: null,
  removalId: null,
  filedWhy: '',
  sentence,
});

/**
 * Adds one file to a job: kept byte for byte under its SHA-256, read in the picture process, filed by its time with
 * the reason. The same file a second time is the same photo. On disk before it is in the record.
 */
export async function addPhoto(context: Context, pool: PhotoPool, input: PhotoInput): Promise<PhotoAdded> {
  const dir = incomingFolder(context.workshop.dir);
  await mkdir(dir, { recursive: true, mode: 0o700 });
  const incoming = input.ours === true ? input.path : join(dir, v7());
  try {
    const problem = await takeIn(input, incoming);
    if (problem !== null) return refusedFile(input.fileName, null, problem);
    return await addIncoming(context, pool, input, incoming);
  } finally {
    await rm(incoming, { force: true });
  }
}

/** Copies the file in, so that what is hashed, read and kept is one and the same even if the source changes. */
async function takeIn(input: PhotoInput, incoming: string): Promise<string | null> {
  try {
    const about = await stat(input.path);
    if (about.isDirectory()) return 'Expected a photo, got a folder. Name the files in it.';
    if (!about.isFile()) return 'Expected a photo, got something that is no file.';
    if (about.size === 0) return 'Expected a photo, got an empty file.';
    if (about.size > MAX_PHOTO_BYTES)
      return `Expected a photo of at most ${MAX_PHOTO_BYTES / 1e6} MB, got ${Math.ceil(about.size / 1e6)} MB.`;
    if (incoming !== input.path) await copyFile(input.path, incoming);
    return null;
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT' || code === 'ENOTDIR') return 'Expected a file, found none of this name.';
    if (code === 'EACCES' || code === 'EPERM') return 'Expected a file that may be read; this one may not.';
    if (code === 'ENOSPC') return 'Expected room on the disk for this photo, found none.';
    throw error;
  }
}

async function addIncoming(
  context: Context,
  pool: PhotoPool,
  input: PhotoInput,
  incoming: string,
): Promise<PhotoAdded> {
  const { workshop } = context;
  const id = await hashFile(incoming);
  const state = workshop.job(input.jobId);
  if (!state) return refusedFile(input.fileName, id, `Expected a job that is there, got ${input.jobId}.`);
  const there = originalPath(places(workshop.dir).originals, id);
  const known = workshop.original(id);
  const read: Result<PhotoFacts | null> = known && !known.gone ? ok(null) : await pool.read(id, incoming);
  if (!read.ok) return refusedFile(input.fileName, id, read.fault.sentence);
  if (!existsSync(there)) await settle(incoming, there);
  const about = read.value;
  const original = about === null ? (known as Row<'original'>) : await originalRow(id, about, there);
  const done = commitPhoto(context, input, original);
  if (!done.ok) return refusedFile(input.fileName, id, done.fault.sentence);
  const { photo, already } = done.value;
  const { gone: _gone, goneWhy: _goneWhy, id: _id, ...facts } = original;
  const notes = already ? [] : notesOn(context, input, original, about);
  return {
    status: already ? 'duplicate' : 'added',
    fileName: input.fileName,
    photoId: photo.id,
    originalId: id,
    facts,
    removalId: photo.removalId,
    filedWhy: photo.filedWhy,
    sentence: already
      ? `This job has this photo already${photo.fileName === input.fileName ? '' : ` as ${photo.fileName}`}.`
      : ['Added.', ...notes].join(' '),
  };
}

async function originalRow(id: string, facts: PhotoFacts, path: string): Promise<Row<'original'>> {
  const { brightness: _brightness, pictures: _pictures, ...kept } = facts;
  return { ...kept, id, bytes: (await stat(path)).size, gone: false, goneWhy: '' };
}

function notesOn(
  context: Context,
  input: PhotoInput,
  original: Row<'original'>,
  facts: PhotoFacts | null,
): string[] {
  const notes: string[] = [];
  const wrong = mislabelled(input.fileName, original.type);
  if (wrong !== null) notes.push(wrong);
  if (!facts) return notes;
  if (facts.pictures > 1) notes.push(`It holds ${facts.pictures} pictures; the first is shown.`);
  const others = (context.workshop.job(input.jobId)?.original ?? [])
    .filter((one) => one.id !== original.id && one.camera === original.camera)
    .flatMap((one) => one.sharpness ?? []);
  const problem = shotProblem(facts, others);
  return problem === null ? notes : [...notes, problem];
}

/** Original and photo in one command. Asked again inside it, since the same file may be on its way in twice. */
function commitPhoto(
  context: Context,
  input: PhotoInput,
  original: Row<'original'>,
): Result<{ photo: Row<'photo'>; already: boolean }> {
  const command: JobInput = { command: v7(), jobId: input.jobId, batch: input.batch };
  return inJob<{ photo: Row<'photo'>; already: boolean }>(context, 'photo.add', command, (decision) => {
    const known = decision.state.photo.find((photo) => photo.originalId === original.id);
    if (known) return ok({ photo: known, already: true });
    const kept = decision.writer.get('original', original.id);
    if (!kept || kept.gone) decision.writer.put('original', original);
    const photo = blank('photo', decision.newId(), decision.jobId, {
      originalId: original.id,
      fileName: input.fileName.slice(0, 300),
      addedAt: decision.at,
      ...filedIn(decision, original),
    });
    decision.writer.put('photo', photo);
    return ok({ photo, already: false });
  });
}

function filedIn(decision: Decision, original: Row<'original'>): Filed {
  const { state, at } = decision;
  const removals = logOrder(state.removal).map((removal, i) => ({ ...removal, number: i + 1 }));
  return fileByTime(original, removals, { zone: state.job.zone, now: at });
}

/** Files photos by hand: into a removal, or back to the unfiled ones. One command, so one undo. */
export function photoFile(
  context: Context,
  input: JobInput & { photoIds: readonly string[]; removalId: string | null },
): Reply<{ said: string }> {
  return inJob(context, 'photo.file', input, (decision) => {
    if (input.removalId !== null) {
      const removal = rowIn(decision, 'removal', input.removalId, 'removal');
      if (!removal.ok) return removal;
      if (removal.value.phase === 'void') return refuse('refused', 'This removal is void. Choose another.');
    }
    for (const id of input.photoIds) {
      const photo = rowIn(decision, 'photo', id, 'photo');
      if (!photo.ok) return photo;
      const filedWhy = input.removalId === null ? 'Put back by hand.' : 'Put there by hand.';
      decision.writer.put('photo', { ...photo.value, removalId: input.removalId, filedBy: 'hand', filedWhy });
    }
    return ok({ said: filedSentence(decision.state, input) });
  });
}

function filedSentence(
  state: JobState,
  input: { photoIds: readonly string[]; removalId: string | null },
): string {
  const photos = input.photoIds.length === 1 ? '1 photo' : `${input.photoIds.length} photos`;
  if (input.removalId === null) return `${photos} not filed any more.`;
  const number = logOrder(state.removal).findIndex((removal) => removal.id === input.removalId) + 1;
  return `${photos} filed into ${number}.`;
}
