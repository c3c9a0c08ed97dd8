import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as after } from 'node:timers/promises';
import { v7 } from 'uuid';
import { describe, expect, it, onTestFinished } from 'vitest';
import { PicturePool } from '../../core/photos/pool.ts';
import type { Ask, Outcome, Values } from '../../core/photos/protocol.ts';
import { checkDatabase } from '../../core/store/check.ts';
import { places, type Workshop } from '../../core/store/workshop.ts';
import { historyUndo } from '../../core/usecases/history.ts';
import {
  addPhotos,
  type ImportFile,
  type ImportOptions,
  type ImportProgress,
} from '../../core/usecases/photo-import.ts';
import { photoTray } from '../../core/usecases/photo-rolls.ts';
import { incomingFolder, sweepIncoming } from '../../core/usecases/photos.ts';
import { addJob, newWorkshop, openTest, tempFolder } from '../support/workshop.ts';
import { patches } from './make.ts';

/** Many files at once: what one import promises, also when it is called off or killed. */

async function makeFiles(dir: string, count: number, width = 640): Promise<ImportFile[]> {
  const files: ImportFile[] = [];
  for (let n = 0; n < count; n++) {
    const path = join(dir, `photo-${n}.jpg`);
    writeFileSync(
      path,
      await patches(width + 2 * n, 480)
        .jpeg()
        .toBuffer(),
    );
    files.push({ path, fileName: basename(path) });
  }
  return files;
}

function importInto(workshop: Workshop) {
  const pool = new PicturePool();
  onTestFinished(async () => pool.close());
  return async (jobId: string, files: readonly ImportFile[], options: ImportOptions = {}) => {
    const done = await addPhotos({ workshop, actor: null }, pool, jobId, files, options);
    if (!done.ok) throw new Error(done.fault.sentence);
    return done.value;
  };
}

/** Picture processes beside a disk on which one file takes its time. */
class SlowDisk extends PicturePool {
  private readonly slow: string;

  constructor(slow: string) {
    super();
    this.slow = slow;
  }

  override async run<A extends Ask>(ask: A, first = false): Promise<Outcome<Values[A['op']]>> {
    if (ask.op === 'take' && ask.from === this.slow) await after(300);
    return super.run(ask, first);
  }
}

const shaOf = (path: string): string => createHash('sha256').update(readFileSync(path)).digest('hex');
const photosIn = (workshop: Workshop, jobId: string) => workshop.job(jobId)?.photo ?? [];
const faultsOf = async (workshop: Workshop) => checkDatabase(workshop.db, places(workshop.dir).originals);

describe('an import', () => {
  it('answers for each file in order, says how far it is and how long the rest takes, and is one undo', async () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    const dir = tempFolder();
    const files = await makeFiles(dir, 5);
    writeFileSync(join(dir, 'note.jpg'), 'milk, bread');
    const all = [
      ...files.slice(0, 3),
      { path: join(dir, 'note.jpg'), fileName: 'note.jpg' },
      ...files.slice(3),
    ];
    const told: ImportProgress[] = [];
    const answers = await importInto(workshop)(jobId, all, { onProgress: (progress) => told.push(progress) });
    expect(answers.map(({ path, status }) => [path, status])).toEqual(
      all.map(({ path, fileName }) => [path, fileName === 'note.jpg' ? 'refused' : 'added']),
    );
    expect(told.map(({ done, total }) => [done, total])).toEqual([1, 2, 3, 4, 5, 6].map((n) => [n, 6]));
    expect(told[0]?.leftMs).toBeNull();
    expect(told[3]?.leftMs).toBeGreaterThan(0);
    expect(told[5]?.leftMs).toBe(0);
    expect(new Set(photosIn(workshop, jobId).map((photo) => photo.originalId))).toEqual(
      new Set(files.map(({ path }) => shaOf(path))),
    );
    const undone = historyUndo({ workshop, actor: null }, { command: v7(), jobId });
    expect(undone.ok).toBe(true);
    expect(photosIn(workshop, jobId)).toEqual([]);
    expect(await faultsOf(workshop)).toEqual([]);
  });

  it('takes a file that is named twice, and the same picture under two names, once', async () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    const dir = tempFolder();
    const [file] = (await makeFiles(dir, 1)) as [ImportFile];
    const copy = { path: join(dir, 'copy.jpg'), fileName: 'copy.jpg' };
    writeFileSync(copy.path, readFileSync(file.path));
    const answers = await importInto(workshop)(jobId, [file, file, copy, copy]);
    expect(answers.map(({ status }) => status)).toEqual(['added', 'duplicate', 'duplicate', 'duplicate']);
    expect(new Set(answers.map(({ photoId }) => photoId)).size).toBe(1);
    expect(photosIn(workshop, jobId)).toHaveLength(1);
  });

  it('adds the first of two that are the same, even where the second was copied sooner', async () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    const dir = tempFolder();
    const [file, other] = (await makeFiles(dir, 2)) as [ImportFile, ImportFile];
    const copy = { path: join(dir, 'copy.jpg'), fileName: 'copy.jpg' };
    writeFileSync(copy.path, readFileSync(file.path));
    const pool = new SlowDisk(file.path);
    onTestFinished(async () => pool.close());
    const done = await addPhotos({ workshop, actor: null }, pool, jobId, [file, copy, other]);
    expect(done.ok && done.value.map(({ fileName, status }) => `${fileName} ${status}`)).toEqual([
      `${file.fileName} added`,
      'copy.jpg duplicate',
      `${other.fileName} added`,
    ]);
  });

  it('called off keeps what is in, answers for the rest, and the rest does not come back by itself', async () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    const files = await makeFiles(tempFolder(), 8);
    const stop = new AbortController();
    const run = importInto(workshop);
    const answers = await run(jobId, files, {
      signal: stop.signal,
      atOnce: 2,
      onProgress: ({ done }) => {
        if (done === 2) stop.abort();
      },
    });
    const added = answers.filter(({ status }) => status === 'added').length;
    const off = answers.filter(({ status }) => status === 'cancelled').length;
    expect(added).toBeGreaterThanOrEqual(2);
    expect(off).toBeGreaterThanOrEqual(4);
    expect(added + off).toBe(8);
    expect(photosIn(workshop, jobId)).toHaveLength(added);
    expect(await run(jobId, [])).toEqual([]);
    expect(readdirSync(incomingFolder(workshop.dir))).toEqual([]);
    expect(await faultsOf(workshop)).toEqual([]);
  });

  it('into no job, or one that is signed off, is refused before a file is touched', async () => {
    const workshop = newWorkshop();
    const files = await makeFiles(tempFolder(), 1);
    const pool = new PicturePool();
    onTestFinished(async () => pool.close());
    const done = await addPhotos({ workshop, actor: null }, pool, v7(), files);
    expect(done).toMatchObject({ ok: false, fault: { code: 'not-found' } });
    expect(pool.pids()).toEqual([]);
    expect(workshop.local?.photoTasks.waiting(v7())).toEqual([]);
  });

  it('says at once that a shot is blurred against the others of its camera, or very dark', async () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    const dir = tempFolder();
    const run = importInto(workshop);
    await run(jobId, await makeFiles(dir, 5));
    const [blurred, dark] = ['blurred.jpg', 'dark.jpg'].map((name) => ({
      path: join(dir, name),
      fileName: name,
    }));
    writeFileSync(blurred?.path ?? '', await patches(660, 480).blur(9).jpeg().toBuffer());
    writeFileSync(dark?.path ?? '', await patches(660, 480).linear(0.05, 0).jpeg().toBuffer());
    const answers = await run(jobId, [blurred, dark] as ImportFile[]);
    expect(answers[0]?.sentence).toContain('Blurred against the others of this camera');
    expect(answers[0]?.sentence).not.toContain('dark');
    expect(answers[1]?.sentence).toContain('Very dark');
    const tray = photoTray({ workshop, actor: null }, jobId);
    expect(tray.ok && tray.value.dark).toEqual([answers[1]?.photoId]);
    expect(answers.map(({ status }) => status)).toEqual(['added', 'added']);
  });
});

const alive = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
};

/** Starts the import in a process of its own, kills it once so many files are done, and waits until all of it is gone. */
async function killAfter(
  dir: string,
  jobId: string,
  files: readonly ImportFile[],
  count: number,
): Promise<void> {
  const child = spawn(
    process.execPath,
    [join(import.meta.dirname, 'import-child.ts'), dir, jobId, ...files.map(({ path }) => path)],
    { stdio: ['ignore', 'pipe', 'inherit'] },
  );
  let pictures: number[] = [];
  const gone = new Promise((resolve) => child.once('exit', (code, signal) => resolve(signal ?? code)));
  for await (const line of createInterface({ input: child.stdout })) {
    const [done, ...pids] = line.split(' ').map(Number);
    if (line.startsWith('pool')) {
      if (count === 0) child.kill('SIGKILL');
      continue;
    }
    pictures = pids;
    if ((done ?? 0) >= count) child.kill('SIGKILL');
  }
  expect(await gone).toBe('SIGKILL');
  for (let wait = 0; wait < 200 && pictures.some(alive); wait++)
    await new Promise((done) => setTimeout(done, 50));
  expect(pictures.filter(alive), 'picture processes end with the one that asks them').toEqual([]);
}

describe('an import killed with SIGKILL', () => {
  it.each([0, 1, 4])(
    'after %i files is finished by the next one: nothing lost, nothing doubled, one undo',
    async (count) => {
      const dir = tempFolder();
      const first = openTest(dir);
      const jobId = addJob(first);
      first.close();
      const files = await makeFiles(tempFolder(), 9, 1600);
      await killAfter(dir, jobId, files, count);

      const workshop = openTest(dir);
      const before = photosIn(workshop, jobId);
      expect(before.length).toBeGreaterThanOrEqual(count);
      expect(before.length).toBeLessThan(files.length);
      // Asked for again, or not: what was written down is finished under the batch it had.
      const answers = await importInto(workshop)(jobId, count === 1 ? [] : files);
      expect(answers.length).toBeGreaterThanOrEqual(files.length - before.length);
      expect(workshop.local?.photoTasks.waiting(jobId)).toEqual([]);
      const again = await importInto(workshop)(jobId, files);
      expect(again.every(({ status }) => status === 'duplicate')).toBe(true);
      const after = photosIn(workshop, jobId).map((photo) => photo.originalId);
      expect(after).toHaveLength(files.length);
      expect(new Set(after)).toEqual(new Set(files.map(({ path }) => shaOf(path))));
      expect(await faultsOf(workshop)).toEqual([]);
      const { originals, renditions } = places(dir);
      sweepIncoming(dir);
      for (const id of after) {
        expect(existsSync(join(originals, id.slice(0, 2), id))).toBe(true);
        for (const name of [`${id}-320.webp`, `${id}-2048.jpg`])
          expect(existsSync(join(renditions, id.slice(0, 2), name))).toBe(true);
      }
      expect(historyUndo({ workshop, actor: null }, { command: v7(), jobId }).ok).toBe(true);
      expect(photosIn(workshop, jobId)).toEqual([]);
    },
  );
});
