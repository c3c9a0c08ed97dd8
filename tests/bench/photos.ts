import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { constants, loadavg, setPriority, tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import sharp from 'sharp';
import { v7 } from 'uuid';
import { blank } from '../../core/model/blank.ts';
import { ok } from '../../core/model/result.ts';
import { PicturePool } from '../../core/photos/pool.ts';
import { openWorkshop, type Workshop } from '../../core/store/workshop.ts';
import { addPhotos } from '../../core/usecases/photo-import.ts';
import { call, makeFolder, own, type RunningHost, startHost } from '../api/running-host.ts';

/**
 * Import of 12 MP JPEGs against bare sharp making the same two renditions in the same run (promise: at least 80 %),
 * peak memory of all processes together (under 1 GB), and what the host answers in meanwhile (under 50 ms).
 * `node tests/bench/photos.ts [COUNT]`: so many photos for memory and host; 2 000 is what is promised, 200 the default.
 */
const COUNT = Number(process.argv[2] ?? 200);
const ROUNDS = 5;
const PER_ROUND = 24;
const AT_ONCE = 2;
const SAMPLES = join(import.meta.dirname, '..', '..', 'samples', 'photos');

/** A few real pictures of 4000 × 3000, as phones pack them. */
async function basePictures(): Promise<Buffer[]> {
  const names = readdirSync(SAMPLES)
    .filter((name) => name.endsWith('.jpg'))
    .slice(0, 6);
  return Promise.all(
    names.map(async (name) =>
      sharp(join(SAMPLES, name)).resize(4000, 3000, { fit: 'fill' }).jpeg({ quality: 92 }).toBuffer(),
    ),
  );
}

/** As many files as wanted, no two alike: a comment segment of its own goes into each (JPEG, B.2.4.5). */
function unlike(bases: readonly Buffer[], n: number): Buffer {
  const base = bases[n % bases.length] as Buffer;
  const comment = Buffer.from(`photo ${n} ${v7()}`);
  const head = Buffer.from([0xff, 0xfe, 0, comment.length + 2]);
  return Buffer.concat([base.subarray(0, 2), head, comment, base.subarray(2)]);
}

async function each<T>(items: readonly T[], run: (item: T, i: number) => Promise<unknown>): Promise<number> {
  const since = performance.now();
  let next = 0;
  const work = async () => {
    for (let i = next++; i < items.length; i = next++) await run(items[i] as T, i);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, work));
  return performance.now() - since;
}

/** Time on the clock, and time of processors: only the second says much on a machine that is busy with other things. */
interface Took {
  readonly ms: number;
  readonly cpuMs: number;
}

/** Bare sharp in a process of its own, at the priority that picture processes have; says what it took. */
async function bare(paths: readonly string[], dir: string): Promise<Took> {
  const child = spawn(process.execPath, [join(import.meta.dirname, 'bare-child.ts'), dir], {
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
  });
  if (child.pid !== undefined) setPriority(child.pid, constants.priority.PRIORITY_BELOW_NORMAL);
  const took = await new Promise<Took>((resolve) => {
    child.on('message', (message: 'ready' | Took) => {
      // Loading sharp is not counted; the import had its processes before too.
      if (message === 'ready') child.send({ paths, atOnce: AT_ONCE });
      else resolve(message);
    });
  });
  child.disconnect();
  return took;
}

/** Processor time of a process so far, in milliseconds; 0 where the system does not say it this way. */
function cpuMsOf(pid: number): number {
  try {
    const line = readFileSync(`/proc/${pid}/stat`, 'utf8');
    const fields = line.slice(line.lastIndexOf(')') + 2).split(' ');
    // In hundredths of a second: fields 14 and 15 of proc(5).
    return (Number(fields[11]) + Number(fields[12])) * 10;
  } catch {
    return 0;
  }
}

function rssMb(pid: number): number {
  try {
    return (Number(readFileSync(`/proc/${pid}/statm`, 'utf8').split(' ')[1]) * 4096) / 1e6;
  } catch {
    return 0;
  }
}

/** Watches the memory of processes together; says the most of it, in megabytes. */
function watchMemory(pids: () => readonly number[]): () => number {
  let most = 0;
  const timer = setInterval(() => {
    most = Math.max(
      most,
      pids().reduce((sum, pid) => sum + rssMb(pid), 0),
    );
  }, 50);
  return () => {
    clearInterval(timer);
    return most;
  };
}

function newWorkshop(dir: string): { workshop: Workshop; jobId: string } {
  const opened = openWorkshop(dir, { write: true });
  if (!opened.ok) throw new Error(opened.fault.sentence);
  const workshop = opened.value;
  const jobId = v7();
  workshop.commit({ id: v7(), what: 'job', chain: jobId, actor: 'unnamed', at: 1 }, (writer) => {
    writer.put('job', blank('job', jobId, '', { title: 'Import' }));
    return ok(null);
  });
  return { workshop, jobId };
}

async function imported(
  workshop: Workshop,
  pool: PicturePool,
  jobId: string,
  paths: string[],
): Promise<Took> {
  const files = paths.map((path) => ({ path, fileName: basename(path) }));
  const before = pool.pids().map((pid) => [pid, cpuMsOf(pid)] as const);
  const [since, spent] = [performance.now(), process.cpuUsage()];
  const done = await addPhotos({ workshop, actor: null }, pool, jobId, files);
  const ms = performance.now() - since;
  const { user, system } = process.cpuUsage(spent);
  if (!done.ok || done.value.some(({ status }) => status !== 'added')) throw new Error('Expected all added.');
  const theirs = before.reduce((sum, [pid, cpuMs]) => sum + cpuMsOf(pid) - cpuMs, 0);
  return { ms, cpuMs: theirs + (user + system) / 1000 };
}

const middleOf = (values: number[]): number =>
  values.sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

/** Bare sharp by import: on the clock and in processor time. More is better, 1 is as fast as bare sharp. */
async function ratios(dir: string, bases: readonly Buffer[]): Promise<Took> {
  const { workshop, jobId } = newWorkshop(join(dir, 'ratio'));
  const out = join(dir, 'bare');
  mkdirSync(out);
  const pool = new PicturePool();
  const shares: Took[] = [];
  let n = 0;
  for (let round = 0; round <= ROUNDS; round++) {
    const paths = Array.from({ length: PER_ROUND }, () => {
      const path = join(dir, `round-${n}.jpg`);
      writeFileSync(path, unlike(bases, n++));
      return path;
    });
    const plain = await bare(paths, out);
    const whole = await imported(workshop, pool, jobId, paths);
    for (const path of paths) rmSync(path);
    const share = { ms: plain.ms / whole.ms, cpuMs: plain.cpuMs / whole.cpuMs };
    // The first round starts the processes: it is not counted.
    if (round > 0) shares.push(share);
    const each = (ms: number) => `${(ms / PER_ROUND).toFixed(0)} ms`;
    console.log(
      `round ${round}: bare ${each(plain.ms)} a photo (processor ${each(plain.cpuMs)}), import ${each(whole.ms)} (${each(whole.cpuMs)}), ${percent(share.ms)} (${percent(share.cpuMs)})`,
    );
  }
  await pool.close();
  workshop.close();
  return { ms: middleOf(shares.map((one) => one.ms)), cpuMs: middleOf(shares.map((one) => one.cpuMs)) };
}

const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;

async function upload(host: RunningHost, jobId: string, bytes: Buffer): Promise<void> {
  const headers = {
    ...own(host),
    Origin: host.address,
    'Content-Type': 'application/octet-stream',
    'Content-Length': String(bytes.length),
    'X-Everybolt-Name': 'photo.jpg',
  };
  const body = await new Promise<string>((resolve, reject) => {
    const asked = request(
      {
        host: '127.0.0.1',
        port: host.port,
        method: 'POST',
        path: `/upload/${jobId}`,
        headers,
        setHost: false,
      },
      (answer) => {
        let text = '';
        answer.on('data', (chunk: Buffer) => {
          text += chunk.toString();
        });
        answer.on('end', () => resolve(text));
      },
    );
    asked.on('error', reject);
    asked.end(bytes);
  });
  if (!body.includes('"added"')) throw new Error(body);
}

const childrenOf = (pid: number): number[] => {
  try {
    return readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8')
      .trim()
      .split(' ')
      .filter(Boolean)
      .map(Number);
  } catch {
    return [];
  }
};

interface Meanwhile {
  readonly peakMb: number;
  /** Milliseconds that a call took, for each call, in order. */
  readonly waits: number[];
}

/** Uploads all photos to a host process and calls it every 50 ms meanwhile. */
async function meanwhile(bases: readonly Buffer[]): Promise<Meanwhile> {
  const folder = makeFolder();
  const host = await startHost({ folder: folder.path });
  const jobId = v7();
  await call(host, 'jobs/add', { command: v7(), id: jobId, title: 'Import' });
  const pid = host.child.pid as number;
  const peak = watchMemory(() => [pid, ...childrenOf(pid)]);
  const waits: number[] = [];
  let over = false;
  const asking = (async () => {
    while (!over) {
      const since = performance.now();
      await call(host, 'history/state', { jobId });
      waits.push(performance.now() - since);
      await new Promise((done) => setTimeout(done, 50));
    }
  })();
  const numbers = Array.from({ length: COUNT }, (_, n) => n);
  const ms = await each(numbers, async (n) => upload(host, jobId, unlike(bases, n)));
  over = true;
  await asking;
  const peakMb = peak();
  await host.end();
  folder.remove();
  console.log(`${COUNT} photos sent to a host in ${(ms / 1000).toFixed(0)} s`);
  return { peakMb, waits };
}

async function main(): Promise<void> {
  const dir = mkdtempSync(join(tmpdir(), 'everybolt-bench-photos-'));
  const bases = await basePictures();
  console.log(
    `${bases.length} pictures of 12 MP, ${(bases.reduce((sum, one) => sum + one.length, 0) / bases.length / 1e6).toFixed(1)} MB each; load ${loadavg()[0]?.toFixed(1)}`,
  );
  const share = await ratios(dir, bases);
  rmSync(dir, { recursive: true, force: true });
  const { peakMb, waits } = await meanwhile(bases);
  waits.sort((a, b) => a - b);
  const wait = (part: number) => waits[Math.min(waits.length - 1, Math.floor(waits.length * part))] ?? 0;
  console.log(
    `import / bare sharp: ${percent(share.ms)} on the clock, ${percent(share.cpuMs)} in processor time (promise: at least 80 %); load now ${loadavg()[0]?.toFixed(1)}`,
  );
  console.log(
    `peak memory at ${COUNT} photos: ${peakMb.toFixed(0)} MB, all processes (promise: under 1 000 MB)`,
  );
  console.log(
    `host meanwhile: half of the calls within ${wait(0.5).toFixed(1)} ms, 95 % within ${wait(0.95).toFixed(1)} ms, slowest of ${waits.length} ${wait(1).toFixed(1)} ms (promise: under 50 ms)`,
  );
  process.exitCode = share.ms >= 0.8 && peakMb < 1000 && wait(0.95) < 50 ? 0 : 1;
}

await main();
