import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type KeptHost, keepHost, type Ready, type Refusal } from '../../core/host/launch.ts';
import { holderOf } from '../../core/store/lock.ts';
import { hostProcess } from '../../electron/host-process.ts';

/** The shell's way of starting a host, with the real host: the runtime itself has no part in it. */

const MAIN = join(import.meta.dirname, '..', '..', 'core', 'host', 'main.ts');

let folder = '';
let kept: KeptHost | null = null;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'everybolt-shell-'));
});
afterEach(async () => {
  await kept?.close();
  kept = null;
  rmSync(folder, { recursive: true, force: true });
});

describe('the host of the shell', () => {
  it('answers, is started again after kill -9 under the same address, and ends with the shell', async () => {
    const readies: Ready[] = [];
    const workshop = join(folder, 'workshop');
    kept = keepHost({
      start: hostProcess({ node: process.execPath, main: MAIN, workshop, screens: folder }),
      secret: 'ab'.repeat(32),
      onReady: (ready) => readies.push(ready),
      onDown: (refusal) => {
        throw new Error(refusal.sentence);
      },
      onDeath: () => {},
    });
    await expect.poll(() => readies.length, { timeout: 10_000 }).toBe(1);
    process.kill(readies[0]?.pid ?? 0, 'SIGKILL');
    await expect.poll(() => readies.length, { timeout: 10_000 }).toBe(2);
    expect(readies[1]?.address).toBe(readies[0]?.address);
    expect(readies[1]?.pid).not.toBe(readies[0]?.pid);
    await kept.close();
    expect(holderOf(workshop)).toEqual({ held: false });
  });

  it('that cannot be started at all is said once', async () => {
    const said: Refusal[] = [];
    kept = keepHost({
      start: hostProcess({
        node: join(folder, 'no-node'),
        main: MAIN,
        workshop: join(folder, 'w'),
        screens: folder,
      }),
      secret: 'ab'.repeat(32),
      onReady: () => {},
      onDown: (refusal) => said.push(refusal),
      onDeath: () => {},
    });
    await expect.poll(() => said.length, { timeout: 10_000 }).toBe(1);
    expect(said[0]?.sentence).toContain('it ended at once');
  });
});
