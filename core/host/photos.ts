import { createWriteStream, existsSync } from 'node:fs';
import { mkdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable, Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { ReadableStream as WebStream } from 'node:stream/web';
import { v7 } from 'uuid';
import type { UploadAnswer } from '../contract/photos.ts';
import { RENDITION_TYPES, renditionPath } from '../photos/disk.ts';
import { PicturePool } from '../photos/pool.ts';
import { originalPath } from '../store/check.ts';
import { places, type Workshop } from '../store/workshop.ts';
import { addPhoto, incomingFolder, sweepIncoming } from '../usecases/photos.ts';
import { sheetPdf } from '../usecases/sheet.ts';
import type { Incoming } from './app.ts';
import { BODY_LIMITS } from './guards.ts';
import type { HostPhotos } from './host.ts';

/** Pictures of one workshop: what windows are shown, and what they send in. Decoding is done by child processes. */
export function hostPhotos(workshop: Workshop): HostPhotos {
  const at = places(workshop.dir);
  const pool = new PicturePool();
  sweepIncoming(workshop.dir);
  return {
    photoFile: async (id, size) => {
      const original = originalPath(at.originals, id);
      if (!existsSync(original)) return null;
      const path = renditionPath(at.renditions, id, size);
      if (existsSync(path)) return { path, type: RENDITION_TYPES[size] };
      // Somebody waits for it with the screen open: before all that is being imported.
      const ask = { op: 'render', path: original, sha256: id, renditions: at.renditions, size } as const;
      const made = await pool.run(ask, true);
      if (!made.ok) return null;
      return made.value.original
        ? { path: original, type: made.value.type }
        : { path, type: RENDITION_TYPES[size] };
    },
    takeUpload: async (incoming) => {
      if (incoming.fileName === null)
        return refused('Expected a photo with its name, percent-encoded, got none that can be read.');
      const file = join(incomingFolder(workshop.dir), v7());
      try {
        await receive(incoming, file);
        const { status, photoId, sentence, filedWhy } = await addPhoto(
          { workshop, actor: knownActor(workshop, incoming.actor) },
          pool,
          {
            jobId: incoming.jobId,
            path: file,
            fileName: incoming.fileName,
            batch: incoming.batch ?? v7(),
            ours: true,
          },
        );
        return { status, photoId, sentence, filedWhy };
      } catch (error) {
        const sentence = receiveProblem(error);
        if (sentence === null) throw error;
        return refused(sentence);
      } finally {
        await rm(file, { force: true });
      }
    },
    sheet: async ({ jobId, step, light }) =>
      sheetPdf({ workshop, actor: null }, pool, { jobId, steps: step === null ? null : [step], light }),
    close: async () => pool.close(),
  };
}

const refused = (sentence: string): UploadAnswer => ({
  status: 'refused',
  photoId: null,
  sentence,
  filedWhy: '',
});

/** Who acts is only believed where the workshop knows that person. */
function knownActor(workshop: Workshop, actor: string | null): string | null {
  return actor !== null && workshop.person(actor) !== null ? actor : null;
}

class TooLong extends Error {}

/** To disk as it comes, so that a large file never stands in memory. */
async function receive(incoming: Incoming, file: string): Promise<void> {
  await mkdir(join(file, '..'), { recursive: true, mode: 0o700 });
  let bytes = 0;
  const count = new Transform({
    transform: (chunk: Buffer, _encoding, done) => {
      bytes += chunk.length;
      // The length was said before; what is sent may still be longer.
      if (bytes > BODY_LIMITS.upload) done(new TooLong());
      else done(null, chunk);
    },
  });
  const body = incoming.body === null ? Readable.from([]) : Readable.fromWeb(incoming.body as WebStream);
  await pipeline(body, count, createWriteStream(file, { flags: 'wx', mode: 0o600 }));
}

/** What stood in the way, in words; null for what should not happen. */
function receiveProblem(error: unknown): string | null {
  if (error instanceof TooLong)
    return `Expected a photo of at most ${BODY_LIMITS.upload / 1e6} MB, got a larger one.`;
  const { code, name } = error as NodeJS.ErrnoException;
  if (code === 'ENOSPC') return 'Expected room on the disk for this photo, found none.';
  if (name === 'AbortError' || code === 'ECONNRESET' || code === 'ERR_STREAM_PREMATURE_CLOSE')
    return 'Expected the whole photo, but sending it was broken off.';
  return null;
}
