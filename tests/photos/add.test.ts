import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { v7 } from 'uuid';
import { describe, expect, it, onTestFinished } from 'vitest';
import { runCommand } from '../../core/cli/main.ts';
import { PicturePool } from '../../core/photos/pool.ts';
import { originalPath } from '../../core/store/check.ts';
import { places, type Workshop } from '../../core/store/workshop.ts';
import { addPhoto, incomingFolder, type PhotoAdded } from '../../core/usecases/photos.ts';
import { clientOf, command, good, logJob, refused, stateOf } from '../support/client.ts';
import { newWorkshop, tempFolder } from '../support/workshop.ts';
import { scene, tag } from './made.ts';

/** Photos into a job, and from one removal to another. */

async function start(): Promise<{
  workshop: Workshop;
  jobId: string;
  folder: string;
  add: (path: string, batch?: string) => Promise<PhotoAdded>;
}> {
  const workshop = newWorkshop();
  const pool = new PicturePool();
  onTestFinished(async () => pool.close());
  const jobId = await logJob(workshop, 'Bench grinder', ['wheel guard, 4 M6x16', 'belt']);
  return {
    workshop,
    jobId,
    folder: tempFolder(),
    add: async (path, batch = v7()) =>
      addPhoto({ workshop, actor: null }, pool, {
        jobId,
        path,
        fileName: path.split('/').at(-1) ?? '',
        batch,
      }),
  };
}

async function photo(folder: string, name: string, taken?: number, width = 400): Promise<string> {
  const path = join(folder, name);
  writeFileSync(path, await scene(width, 300).jpeg().toBuffer());
  if (taken !== undefined) {
    const clock = new Date(taken).toISOString().slice(0, 19).replaceAll('-', ':').replace('T', ' ');
    tag(path, `DateTimeOriginal=${clock}`, 'OffsetTimeOriginal=+00:00');
  }
  return path;
}

describe('adding a photo', () => {
  it('files it into the removal that was under way, keeps the source untouched, and leaves nothing half-way', async () => {
    const { workshop, jobId, folder, add } = await start();
    const [guard] = stateOf(workshop, jobId).removal;
    const path = await photo(folder, 'guard.jpg', guard?.startedAt ?? 0);
    const bytes = readFileSync(path);
    const added = await add(path);
    expect(added).toMatchObject({ status: 'added', removalId: guard?.id });
    expect(added.filedWhy).toContain('removal 1 (Wheel guard)');
    expect(readFileSync(path)).toEqual(bytes);
    expect(readFileSync(originalPath(places(workshop.dir).originals, added.originalId ?? ''))).toEqual(bytes);
    expect(readdirSync(incomingFolder(workshop.dir))).toEqual([]);
  });

  it('a second time, under another name, is the same photo', async () => {
    const { workshop, jobId, folder, add } = await start();
    const first = await add(await photo(folder, 'one.jpg'));
    const path = join(folder, 'copy of one.jpg');
    writeFileSync(path, readFileSync(join(folder, 'one.jpg')));
    expect(await add(path)).toMatchObject({
      status: 'duplicate',
      photoId: first.photoId,
      sentence: 'This job has this photo already as one.jpg.',
    });
    expect(stateOf(workshop, jobId).photo).toHaveLength(1);
  });

  it('refuses what is not there and what is a folder, in words', async () => {
    const { folder, add } = await start();
    expect(await add(join(folder, 'none.jpg'))).toMatchObject({
      status: 'refused',
      sentence: expect.stringContaining('not there'),
    });
    expect(await add(folder)).toMatchObject({
      status: 'refused',
      sentence: expect.stringContaining('folder'),
    });
  });

  it('says that a name is wrong, and takes the photo for what it is', async () => {
    const { folder, add } = await start();
    const added = await add(await photo(folder, 'really-a-jpeg.png'));
    expect(added).toMatchObject({ status: 'added', facts: { type: 'image/jpeg' } });
    expect(added.sentence).toContain('.png');
  });
});

describe('photos filed by hand', () => {
  it('go many at once, and one undo puts all of them back', async () => {
    const { workshop, jobId, folder, add } = await start();
    const client = clientOf(workshop);
    const ids = [];
    for (const n of [1, 2, 3])
      ids.push((await add(await photo(folder, `${n}.jpg`, undefined, 400 + n))).photoId ?? '');
    const [, belt] = stateOf(workshop, jobId).removal;
    const input = { jobId, photoIds: ids, removalId: belt?.id ?? '' };
    good(await client.photo.file({ ...command(), ...input }));
    const filed = () => stateOf(workshop, jobId).photo.map((one) => one.removalId);
    expect(filed()).toEqual([belt?.id, belt?.id, belt?.id]);
    good(await client.history.undo({ ...command(), jobId }));
    expect(filed()).toEqual([null, null, null]);
    good(
      await client.removal.void({
        ...command(),
        jobId,
        removalId: belt?.id ?? '',
        phase: 'void',
        why: 'typed twice',
      }),
    );
    expect(refused(await client.photo.file({ ...command(), ...input }))).toContain('void');
  });

  it('taken away from a job take their marks with them, and come back with them', async () => {
    const { workshop, jobId, folder, add } = await start();
    const client = clientOf(workshop);
    const { photoId } = await add(await photo(folder, 'one.jpg'));
    const hole = stateOf(workshop, jobId).position[0];
    good(
      await client.record.make({
        ...command(),
        jobId,
        table: 'marker',
        values: { photoId, x: 0.25, y: 0.5, thingId: hole?.id },
      }),
    );
    good(await client.record.remove({ ...command(), jobId, table: 'photo', id: photoId ?? '' }));
    expect(stateOf(workshop, jobId)).toMatchObject({ photo: [], marker: [] });
    good(await client.history.undo({ ...command(), jobId }));
    expect(stateOf(workshop, jobId).marker[0]).toMatchObject({ x: 0.25, y: 0.5, n: 1, thingId: hole?.id });
  });
});

describe('photos-add on the command line', () => {
  it('says a line for each file in their order, and ends with 1 where one was refused', async () => {
    const { workshop, jobId, folder } = await start();
    const dir = workshop.dir;
    workshop.close();
    const files = [
      await photo(folder, 'a.jpg'),
      join(folder, 'none.jpg'),
      await photo(folder, 'b.jpg', undefined, 500),
    ];
    const answer = await runCommand([
      'photos-add',
      '--workshop',
      dir,
      '--job',
      jobId,
      ...files,
      files[0] ?? '',
    ]);
    expect(answer.code).toBe(1);
    expect(answer.lines.map((line) => /: (added|duplicate|refused)\./.exec(line)?.[1])).toEqual([
      'added',
      'refused',
      'added',
      'duplicate',
    ]);
    expect((await runCommand(['photos-add', '--workshop', dir, files[0] ?? ''])).code).toBe(0);
    expect((await runCommand(['photos-add', '--workshop', dir])).code).toBe(2);
  });
});
