import { mkdir, rm } from 'node:fs/promises';
import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { v7 } from 'uuid';
import { blank } from '../model/blank.ts';
import { ok, type Result, refuse } from '../model/result.ts';
import type { JobState, Row } from '../model/tables.ts';
import { settle } from '../photos/disk.ts';
import { type Filed, fileByTime } from '../photos/filing.ts';
import { isBlurred } from '../model/shots.ts';
import type { PicturePool } from '../photos/pool.ts';
import { MAX_FILE_BYTES, type PictureFacts, type Taken } from '../photos/protocol.ts';
import { misnamed } from '../photos/sniff.ts';
import { originalPath } from '../store/check.ts';
import { places } from '../store/workshop.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply, rowIn } from './frame.ts';
import { logOrder } from './log/order.ts';
import { removeMarkers } from './markers.ts';

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
  /** Waited for as soon as the hash is known: where several files come in at once, they keep their order by it. */
  readonly hashed?: (sha256: string) => Promise<void>;
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
export async function addPhoto(context: Context, pool: PicturePool, input: PhotoInput): Promise<PhotoAdded> {
  const dir = incomingFolder(context.workshop.dir);
  await mkdir(dir, { recursive: true, mode: 0o700 });
  const incoming = input.ours === true ? input.path : join(dir, v7());
  try {
    // Copied in first, so that what is hashed, read and kept is one and the same even if the source changes.
    const to = input.ours === true ? null : incoming;
    const taken = await pool.run({ op: 'take', from: input.path, to, maxBytes: MAX_FILE_BYTES });
    if (!taken.ok) return refusedFile(input.fileName, null, taken.fault.sentence);
    await input.hashed?.(taken.value.sha256);
    return await addIncoming(context, pool, input, { ...taken.value, path: incoming });
  } finally {
    await rm(incoming, { force: true });
  }
}

async function addIncoming(
  context: Context,
  pool: PicturePool,
  input: PhotoInput,
  incoming: Taken & { readonly path: string },
): Promise<PhotoAdded> {
  const { workshop } = context;
  const id = incoming.sha256;
  if (!workshop.job(input.jobId))
    return refusedFile(input.fileName, id, `Expected a job that is there, got ${input.jobId}.`);
  const at = places(workshop.dir);
  const there = originalPath(at.originals, id);
  const known = workshop.original(id);
  let facts: PictureFacts | null = null;
  if (!known || known.gone) {
    const ask = { op: 'read', path: incoming.path, sha256: id, renditions: at.renditions } as const;
    const read = await pool.run(ask);
    if (!read.ok) return refusedFile(input.fileName, id, read.fault.sentence);
    facts = read.value;
    if (facts.dark) workshop.local?.photoTasks.keepDark(id);
  }
  if (!existsSync(there)) await settle(incoming.path, there);
  const original = facts === null ? (known as Row<'original'>) : originalRow(incoming, facts);
  const done = commitPhoto(context, input, original);
  if (!done.ok) return refusedFile(input.fileName, id, done.fault.sentence);
  return addedFile(context, input, original, { ...done.value, facts });
}

function addedFile(
  context: Context,
  input: PhotoInput,
  original: Row<'original'>,
  { photo, already, facts }: { photo: Row<'photo'>; already: boolean; facts: PictureFacts | null },
): PhotoAdded {
  const { id, gone: _gone, goneWhy: _goneWhy, ...row } = original;
  const elsewhere = photo.fileName === input.fileName ? '' : ` as ${photo.fileName}`;
  return {
    status: already ? 'duplicate' : 'added',
    fileName: input.fileName,
    photoId: photo.id,
    originalId: id,
    facts: row,
    removalId: photo.removalId,
    filedWhy: photo.filedWhy,
    sentence: already
      ? `This job has this photo already${elsewhere}.`
      : ['Added.', ...notesOn(context, input, original, facts)].join(' '),
  };
}

function originalRow({ sha256, bytes }: Taken, facts: PictureFacts): Row<'original'> {
  const { dark: _dark, notices: _notices, ...kept } = facts;
  return { ...kept, id: sha256, bytes, gone: false, goneWhy: '' };
}

/** What is to be said at once, while a shot can be repeated. */
function notesOn(
  context: Context,
  input: PhotoInput,
  original: Row<'original'>,
  facts: PictureFacts | null,
): string[] {
  const notes = facts === null ? [] : [misnamed(input.fileName, facts.type), ...facts.notices];
  if (facts?.dark) notes.push('Very dark. Take it again while it can be repeated.');
  const others = (context.workshop.job(input.jobId)?.original ?? [])
    .filter((one) => one.id !== original.id && one.camera === original.camera)
    .flatMap((one) => one.sharpness ?? []);
  if (isBlurred(original.sharpness, others))
    notes.push('Blurred against the others of this camera. Take it again while it can be repeated.');
  return notes.filter((note) => note !== null);
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

function filedIn({ state, at }: Decision, original: Row<'original'>): Filed {
  const removals = logOrder(state.removal).map((removal, i) => ({ ...removal, number: i + 1 }));
  return fileByTime(original, removals, { zone: state.job.zone, now: at });
}

/**
 * Takes photos away from a job, with their marks. Nothing is lost by it: the originals stay, and one undo brings all of
 * them back.
 */
export function photoRemove(
  context: Context,
  input: JobInput & { photoIds: readonly string[] },
): Reply<{ said: string }> {
  return inJob(context, 'photo.remove', input, (decision) => {
    const ids = new Set(input.photoIds);
    for (const id of ids) {
      const photo = rowIn(decision, 'photo', id, 'photo');
      if (!photo.ok) return photo;
    }
    const marks = decision.state.marker.filter((marker) => ids.has(marker.photoId));
    removeMarkers(decision, marks);
    for (const id of ids) decision.writer.remove('photo', id);
    const marked =
      marks.length === 0 ? '' : `, with ${marks.length === 1 ? '1 mark' : `${marks.length} marks`}`;
    return ok({ said: `${photosWord(ids.size)} taken away from the job${marked}. Undo brings them back.` });
  });
}

/** Says of photos that they show the machine as found, as refitted, or neither. */
export function photoRole(
  context: Context,
  input: JobInput & { photoIds: readonly string[]; role: Row<'photo'>['role'] },
): Reply<{ said: string }> {
  return inJob(context, 'photo.role', input, (decision) => {
    for (const id of input.photoIds) {
      const photo = rowIn(decision, 'photo', id, 'photo');
      if (!photo.ok) return photo;
      decision.writer.put('photo', { ...photo.value, role: input.role });
    }
    return ok({ said: 'Kept.' });
  });
}

const photosWord = (count: number): string => (count === 1 ? '1 photo' : `${count} photos`);

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
  const photos = photosWord(input.photoIds.length);
  if (input.removalId === null) return `${photos} not filed any more.`;
  const number = logOrder(state.removal).findIndex((removal) => removal.id === input.removalId) + 1;
  return `${photos} filed into ${number}.`;
}
