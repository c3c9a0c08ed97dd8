import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import sharp from 'sharp';
import { v7 } from 'uuid';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { UploadAnswer } from '../../core/contract/photos.ts';
import type { JobState } from '../../core/model/tables.ts';
import { checkDatabase, originalPath } from '../../core/store/check.ts';
import { openWorkshop, places } from '../../core/store/workshop.ts';
import { call, makeFolder, own, type RunningHost, startHost } from './running-host.ts';

/** Photo files sent to the host process over real HTTP. */

interface Sent {
  readonly status: number;
  readonly body: string;
}

async function send(
  host: RunningHost,
  path: string,
  bytes: Buffer,
  change: Readonly<Record<string, string>> = {},
): Promise<Sent> {
  const headers = {
    ...own(host),
    Origin: host.address,
    'Content-Type': 'application/octet-stream',
    'Content-Length': String(bytes.length),
    'X-Everybolt-Name': encodeURIComponent('Zylinder über dem Tisch.jpg'),
    ...change,
  };
  return new Promise((resolve, reject) => {
    const asked = request(
      { host: '127.0.0.1', port: host.port, method: 'POST', path, headers, setHost: false, agent: false },
      (answer) => {
        let body = '';
        answer.setEncoding('utf8');
        answer.on('data', (chunk: string) => {
          body += chunk;
        });
        answer.on('end', () => resolve({ status: answer.statusCode ?? 0, body }));
      },
    );
    asked.on('error', reject);
    asked.end(bytes);
  });
}

async function get(
  host: RunningHost,
  path: string,
): Promise<{ type: string; bytes: Buffer; status: number }> {
  return new Promise((resolve, reject) => {
    const asked = request(
      { host: '127.0.0.1', port: host.port, path, headers: own(host), setHost: false, agent: false },
      (answer) => {
        const chunks: Buffer[] = [];
        answer.on('data', (chunk: Buffer) => chunks.push(chunk));
        answer.on('end', () =>
          resolve({
            type: String(answer.headers['content-type']),
            bytes: Buffer.concat(chunks),
            status: answer.statusCode ?? 0,
          }),
        );
      },
    );
    asked.on('error', reject);
    asked.end();
  });
}

const uploaded = async (
  host: RunningHost,
  jobId: string,
  bytes: Buffer,
  change: Readonly<Record<string, string>> = {},
): Promise<UploadAnswer> => {
  const answer = await send(host, `/upload/${jobId}`, bytes, change);
  expect(answer.status, answer.body).toBe(200);
  return JSON.parse(answer.body) as UploadAnswer;
};

/** A picture of its own for each number. */
async function picture(n: number, turn = 1): Promise<Buffer> {
  const dots = Array.from(
    { length: 30 },
    (_, i) => `<circle cx="${(i * 211 + n * 97) % 2400}" cy="${(i * 149 + n * 53) % 1600}" r="${20 + i}"/>`,
  );
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="2400" height="1600"><rect width="2400" height="1600" fill="#aab"/>${dots.join('')}</svg>`;
  return sharp(Buffer.from(svg))
    .withExif({
      IFD0: { Make: 'Acme', Model: 'Field 2' },
      IFD2: {
        DateTimeOriginal: `2026:05:03 10:44:${String(n % 60).padStart(2, '0')}`,
        OffsetTimeOriginal: '+02:00',
      },
      IFD3: {
        GPSLatitudeRef: 'N',
        GPSLatitude: '51/1 30/1 0/1',
        GPSLongitudeRef: 'E',
        GPSLongitude: '7/1 0/1 0/1',
      },
    })
    .withMetadata({ orientation: turn })
    .jpeg()
    .toBuffer();
}

const sha = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

async function newJob(host: RunningHost): Promise<string> {
  const jobId = v7();
  const made = await call(host, 'jobs/add', { command: v7(), id: jobId, title: 'Bench grinder' });
  expect(made.status).toBe(200);
  return jobId;
}

async function stateOf(host: RunningHost, jobId: string): Promise<JobState> {
  const answer = await call(host, 'jobs/state', { jobId });
  return (JSON.parse(answer.body) as { json: { value: JobState } }).json.value;
}

const incomingOf = (host: RunningHost): string[] => {
  const dir = join(places(host.workshop).originals, 'incoming');
  return existsSync(dir) ? readdirSync(dir) : [];
};

describe('photos sent to a running host', () => {
  let folder: ReturnType<typeof makeFolder>;
  let host: RunningHost;
  beforeAll(async () => {
    folder = makeFolder();
    host = await startHost({ folder: folder.path });
  });
  afterAll(async () => {
    await host.kill('SIGKILL');
    folder.remove();
  });

  it('are kept byte for byte under their hash, and shown small, large and whole without their location', async () => {
    const jobId = await newJob(host);
    const bytes = await picture(1, 6);
    const answer = await uploaded(host, jobId, bytes);
    expect(answer).toMatchObject({ status: 'added', photoId: expect.any(String) });
    expect(answer.filedWhy).toContain('2026');
    expect(readFileSync(originalPath(places(host.workshop).originals, sha(bytes)))).toEqual(bytes);
    const state = await stateOf(host, jobId);
    expect(state.photo[0]).toMatchObject({ fileName: 'Zylinder über dem Tisch.jpg', originalId: sha(bytes) });
    expect(state.original[0]).toMatchObject({
      width: 2400,
      height: 1600,
      turn: 6,
      hasLocation: true,
      bytes: bytes.length,
    });
    for (const [size, type, width, height] of [
      ['320', 'image/webp', 213, 320],
      ['2048', 'image/jpeg', 1365, 2048],
    ] as const) {
      const shown = await get(host, `/photo/${sha(bytes)}/${size}`);
      expect(shown.type).toBe(type);
      const meta = await sharp(shown.bytes).metadata();
      expect({ width: meta.width, height: meta.height, exif: meta.exif }).toEqual({
        width,
        height,
        exif: undefined,
      });
    }
    const full = await get(host, `/photo/${sha(bytes)}/full`);
    expect(full.status).toBe(200);
    const { width, height } = (await sharp(full.bytes).metadata()).autoOrient;
    expect({ width, height }).toEqual({ width: 1600, height: 2400 });
  });

  it('are one photo when the same file comes twice, one after the other or at once', async () => {
    const jobId = await newJob(host);
    const bytes = await picture(2);
    const both = await Promise.all([uploaded(host, jobId, bytes), uploaded(host, jobId, bytes)]);
    expect(both.map((one) => one.status).sort()).toEqual(['added', 'duplicate']);
    expect((await uploaded(host, jobId, bytes)).status).toBe('duplicate');
    expect(new Set(both.map((one) => one.photoId)).size).toBe(1);
    expect((await stateOf(host, jobId)).photo).toHaveLength(1);
  });

  it('of one import go back with one undo, also where another job uses the same file', async () => {
    const [first, second] = [await newJob(host), await newJob(host)];
    const batch = { 'X-Everybolt-Batch': v7() };
    for (const n of [3, 4]) await uploaded(host, first, await picture(n), batch);
    await uploaded(host, second, await picture(3));
    await call(host, 'history/undo', { command: v7(), jobId: first });
    expect((await stateOf(host, first)).photo).toHaveLength(0);
    expect((await stateOf(host, second)).photo).toHaveLength(1);
    await call(host, 'history/redo', { command: v7(), jobId: first });
    expect((await stateOf(host, first)).photo).toHaveLength(2);
  });

  it('are shown again after their renditions were thrown away', async () => {
    const jobId = await newJob(host);
    const bytes = await picture(5);
    await uploaded(host, jobId, bytes);
    rmSync(places(host.workshop).renditions, { recursive: true });
    const shown = await get(host, `/photo/${sha(bytes)}/320`);
    expect((await sharp(shown.bytes).metadata()).width).toBe(320);
  });

  it('that are none are refused in words, and leave nothing behind', async () => {
    const jobId = await newJob(host);
    const good = await picture(6);
    for (const bytes of [Buffer.alloc(0), Buffer.from('no picture'), good.subarray(0, good.length / 2)])
      expect(await uploaded(host, jobId, bytes)).toMatchObject({
        status: 'refused',
        photoId: null,
        sentence: expect.stringMatching(/^Expected/),
      });
    expect(await uploaded(host, v7(), good)).toMatchObject({ status: 'refused' });
    expect(await uploaded(host, jobId, good, { 'X-Everybolt-Name': '%E0%A4%A' })).toMatchObject({
      status: 'refused',
    });
    expect((await stateOf(host, jobId)).photo).toHaveLength(0);
    expect(incomingOf(host)).toEqual([]);
  });

  it('are taken from the program’s own page only', async () => {
    const jobId = await newJob(host);
    const bytes = await picture(7);
    const path = `/upload/${jobId}`;
    const refused = async (change: Readonly<Record<string, string>>, at = path) =>
      (await send(host, at, bytes, change)).status;
    expect(await refused({ Cookie: '' })).toBe(401);
    expect(await refused({ Origin: 'http://localhost:1' })).toBe(403);
    expect(await refused({ 'Sec-Fetch-Site': 'same-site' })).toBe(403);
    expect(await refused({ Host: `127.0.0.1:${host.port}` })).toBe(421);
    expect(await refused({ 'Content-Type': 'multipart/form-data; boundary=x' })).toBe(415);
    expect(await refused({}, '/upload/../secret')).toBe(400);
    expect(await refused({}, '/upload/not-a-job')).toBe(404);
    expect((await stateOf(host, jobId)).photo).toHaveLength(0);
  });

  it('too large are refused before they are read', async () => {
    const jobId = await newJob(host);
    const answer = await send(host, `/upload/${jobId}`, Buffer.alloc(0), {
      'Content-Length': '200000001',
    }).catch((error: unknown) => error as Error);
    expect(answer).toMatchObject({ status: 413 });
  });

  it('broken off on the way leave nothing behind', async () => {
    const jobId = await newJob(host);
    const bytes = await picture(8);
    await new Promise<void>((done) => {
      const headers = {
        ...own(host),
        Origin: host.address,
        'Content-Type': 'application/octet-stream',
        'Content-Length': String(bytes.length),
        'X-Everybolt-Name': 'half.jpg',
      };
      const asked = request({
        host: '127.0.0.1',
        port: host.port,
        method: 'POST',
        path: `/upload/${jobId}`,
        headers,
        setHost: false,
      });
      asked.on('error', () => done());
      asked.write(bytes.subarray(0, 1000));
      setTimeout(() => asked.destroy(new Error('gone')), 200);
    });
    for (let wait = 0; wait < 40 && incomingOf(host).length > 0; wait++)
      await new Promise((done) => setTimeout(done, 50));
    expect(incomingOf(host)).toEqual([]);
    expect((await stateOf(host, jobId)).photo).toHaveLength(0);
    expect((await uploaded(host, jobId, bytes)).status).toBe('added');
  });
});

describe('a host killed in the middle of an import', () => {
  it('loses no photo that it answered for, doubles none, and leaves a workshop without faults', async () => {
    const folder = makeFolder();
    let host = await startHost({ folder: folder.path });
    const jobId = await newJob(host);
    const files = await Promise.all([11, 12, 13, 14, 15, 16, 17, 18].map(async (n) => picture(n)));
    const answered: string[] = [];
    const sending = files.map(async (bytes) =>
      send(host, `/upload/${jobId}`, bytes).then(
        () => answered.push(sha(bytes)),
        () => {},
      ),
    );
    await Promise.race(sending);
    await host.kill('SIGKILL');
    await Promise.allSettled(sending);
    host = await startHost({ folder: folder.path });
    const before = (await stateOf(host, jobId)).photo.map((photo) => photo.originalId);
    expect(answered.length).toBeGreaterThan(0);
    expect(answered.filter((id) => !before.includes(id))).toEqual([]);
    expect(incomingOf(host)).toEqual([]);
    for (const bytes of files) await uploaded(host, jobId, bytes);
    const after = (await stateOf(host, jobId)).photo.map((photo) => photo.originalId).sort();
    expect(after).toEqual(files.map(sha).sort());
    await host.end();
    const opened = openWorkshop(host.workshop, { write: false });
    if (!opened.ok) throw new Error(opened.fault.sentence);
    expect(await checkDatabase(opened.value.db, places(host.workshop).originals)).toEqual([]);
    opened.value.close();
    folder.remove();
  });
});
