import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { good, scene, tried } from './made.ts';

/** What native code may do to its process, and what it may not do to the others. */

const CHILD = join(import.meta.dirname, 'misbehaving-child.ts');
const alive = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
};

describe('picture processes', () => {
  it.each([
    ['crash', /SIGSEGV/],
    ['hang', /within 1 s/],
    ['exit', /code 3/],
  ])('that %s fail one photo with a sentence, and the ones before and after go on', async (what, why) => {
    const at = tried({ program: CHILD, size: 1, timeoutMs: 1000 });
    const files = ['good', what, 'good', 'good'].map((text, i) => at.write(`${i}`, Buffer.from(text)));
    const outcomes = await Promise.all(files.map(async (file) => at.read(file)));
    expect(outcomes.map((one) => one.ok)).toEqual([true, false, true, true]);
    const [, failed] = outcomes;
    expect(failed && !failed.ok ? failed.fault.sentence : '').toMatch(why);
  });

  it('killed in the middle of a picture fail that one, and the next is read by another process', async () => {
    const at = tried({ size: 1 });
    const big = at.write('big.png', await scene(7000, 5000).png({ compressionLevel: 1 }).toBuffer());
    const small = at.write('small.jpg', await scene().jpeg().toBuffer());
    good(await at.read(small));
    const [before] = at.pool.pids();
    const reading = at.read(big);
    const after = at.read(small);
    await new Promise((done) => setTimeout(done, 60));
    process.kill(before as number, 'SIGKILL');
    expect(await reading).toMatchObject({ ok: false, fault: { code: 'crashed' } });
    good(await after);
    expect(at.pool.pids()).not.toContain(before);
  });

  it('that take more memory than they may fail that picture with its own sentence', async () => {
    const at = tried({ size: 1, memoryMb: 200 });
    good(await at.read(at.write('small.jpg', await scene().jpeg().toBuffer())));
    // Interlaced, so that it must be held whole to be read: 240 MB.
    const large = scene(10_000, 8000).png({ compressionLevel: 1, progressive: true });
    const path = at.write('large.png', await large.toBuffer());
    const outcome = await at.read(path);
    expect(outcome).toMatchObject({ ok: false, fault: { code: 'too-much-memory' } });
  });

  it('work at lower priority, end with the pool, and end when they have nothing to do', async () => {
    const at = tried({ size: 1, idleMs: 300 });
    const path = at.write('a.jpg', await scene().jpeg().toBuffer());
    good(await at.read(path));
    const [pid] = at.pool.pids() as [number];
    const nice = Number(spawnSync('ps', ['-o', 'ni=', '-p', String(pid)], { encoding: 'utf8' }).stdout);
    expect(nice).toBeGreaterThan(0);
    for (let wait = 0; wait < 60 && alive(pid); wait++) await new Promise((done) => setTimeout(done, 50));
    expect(alive(pid)).toBe(false);
    good(await at.read(path));
    const [second] = at.pool.pids() as [number];
    await at.pool.close();
    expect(alive(second)).toBe(false);
  });

  it('alone load the picture library: the host, the command line and the use cases never do', () => {
    const root = `file://${join(import.meta.dirname, '..', '..')}/`;
    // Loaded at the end all the same, to see that it would have been seen.
    const script = `
      const { readFileSync } = await import('node:fs');
      const loaded = () => readFileSync('/proc/self/maps', 'utf8').includes('libvips');
      await import('${root}core/cli/main.ts');
      await import('${root}core/host/photos.ts');
      const before = loaded();
      await import('${root}node_modules/sharp/dist/index.mjs');
      console.log(JSON.stringify([before, loaded()]));`;
    const ran = spawnSync(process.execPath, ['--input-type=module', '-e', script], { encoding: 'utf8' });
    expect(JSON.parse(ran.stdout)).toEqual([false, true]);
  });
});
