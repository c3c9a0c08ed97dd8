import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type HostNote, holderOf, takeLock } from '../../core/store/lock.ts';

/** One host per workshop: real second processes, really killed. */

let dir = '';
const children: ChildProcess[] = [];

beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'everybolt-lock-'));
});
afterEach(async () => {
  for (const child of children.splice(0)) await end(child, 'SIGKILL');
  rmSync(dir, { recursive: true, force: true });
});

async function otherProcess(): Promise<{ child: ChildProcess; said: string }> {
  const child = spawn(process.execPath, [join(import.meta.dirname, 'lock-child.ts'), dir], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  children.push(child);
  const [said] = (await once(createInterface({ input: child.stdout }), 'line')) as [string];
  return { child, said };
}

async function end(child: ChildProcess, signal: NodeJS.Signals): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const gone = once(child, 'exit');
  child.kill(signal);
  await gone;
}

const NOTE: HostNote = {
  address: 'http://eb-11111111111111111111.localhost:4711',
  desk: '/desk',
  pid: process.pid,
};

describe('the lock of a workshop', () => {
  it('is held by one process, and says where that one answers', async () => {
    const first = await otherProcess();
    expect(first.said).toBe('taken');
    const second = takeLock(dir);
    expect(second.ok).toBe(false);
    if (!second.ok) {
      expect(second.fault.code).toBe('locked');
      expect(second.fault.sentence).toContain('http://eb-00000000000000000000.localhost:1');
    }
    expect(holderOf(dir)).toEqual({
      held: true,
      note: { address: 'http://eb-00000000000000000000.localhost:1', desk: '/desk', pid: first.child.pid },
    });
  });

  it('refuses another process while this one holds it', async () => {
    const mine = takeLock(dir);
    expect(mine.ok).toBe(true);
    expect((await otherProcess()).said).toBe('locked');
    if (mine.ok) mine.value.release();
    expect((await otherProcess()).said).toBe('taken');
  });

  it('is refused twice in the same process too', () => {
    const mine = takeLock(dir);
    expect(takeLock(dir).ok).toBe(false);
    if (mine.ok) mine.value.release();
  });

  it('is freed by kill -9, and the note of the killed host is not believed', async () => {
    for (let round = 0; round < 5; round++) {
      const { child, said } = await otherProcess();
      expect(said).toBe('taken');
      await end(child, 'SIGKILL');
      expect(readFileSync(join(dir, 'host.json'), 'utf8')).toContain('eb-0000');
      expect(holderOf(dir)).toEqual({ held: false });
    }
    const mine = takeLock(dir);
    expect(mine.ok).toBe(true);
    // Held, but where it answers is not said yet: the old address would be somebody else's by now.
    expect(holderOf(dir)).toEqual({ held: true, note: null });
    if (mine.ok) mine.value.release();
  });

  it('lets exactly one of many that start together have it', async () => {
    const said = (await Promise.all(Array.from({ length: 6 }, otherProcess))).map((each) => each.said);
    expect(said.filter((word) => word === 'taken')).toHaveLength(1);
    expect(said.filter((word) => word === 'locked')).toHaveLength(5);
  });

  it('is not disturbed by those who only look', async () => {
    const mine = takeLock(dir);
    for (let look = 0; look < 50; look++) expect(holderOf(dir).held).toBe(true);
    expect((await otherProcess()).said).toBe('locked');
    if (mine.ok) mine.value.release();
    expect(holderOf(dir).held).toBe(false);
  });

  it('leaves a note only this user can read, whole, and takes it away', () => {
    const mine = takeLock(dir);
    if (!mine.ok) throw new Error(mine.fault.sentence);
    mine.value.announce(NOTE);
    expect(statSync(join(dir, 'host.json')).mode & 0o777).toBe(process.platform === 'win32' ? 0o666 : 0o600);
    expect(holderOf(dir)).toEqual({ held: true, note: NOTE });
    expect(readdirSync(dir).sort()).toEqual(['host.json', 'host.lock']);
    mine.value.release();
    mine.value.release();
    expect(readdirSync(dir)).toEqual(['host.lock']);
  });

  it('says nobody holds a folder that no host was ever in', () => {
    expect(holderOf(dir)).toEqual({ held: false });
    expect(readdirSync(dir)).toEqual([]);
  });

  it('takes a note that is not one for none', () => {
    const mine = takeLock(dir);
    for (const text of [
      '',
      '{',
      '[]',
      'null',
      '{"address":1,"desk":"x","pid":1}',
      '{"address":"http://x"}',
    ]) {
      writeFileSync(join(dir, 'host.json'), text);
      expect(holderOf(dir)).toEqual({ held: true, note: null });
    }
    if (mine.ok) mine.value.release();
  });
});
