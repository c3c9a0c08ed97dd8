import { once } from 'node:events';
import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { holderOf } from '../../core/store/lock.ts';
import { call, listenTo, makeFolder, type RunningHost, startHost, startRaw } from './running-host.ts';

/** How the host process starts, ends, is killed and comes again. */

describe('a host comes and goes', () => {
  let folder: ReturnType<typeof makeFolder>;
  const hosts: RunningHost[] = [];
  beforeEach(() => {
    folder = makeFolder();
  });
  afterEach(async () => {
    for (const host of hosts.splice(0)) await host.kill('SIGKILL');
    folder.remove();
  });
  const start = async (options: { secret?: string; again?: string } = {}) => {
    const host = await startHost({ folder: folder.path, ...options });
    hosts.push(host);
    return host;
  };

  it('a second one is refused, and told where the first answers', async () => {
    const first = await start();
    const { child, report } = await startRaw({ folder: folder.path });
    await once(child, 'exit');
    expect(child.exitCode).toBe(1);
    expect(report).toMatchObject({
      everybolt: 'refused',
      code: 'locked',
      holder: { address: first.address, desk: first.desk },
    });
  });

  it('ends when its shell does, and leaves nothing but the workshop', async () => {
    const host = await start();
    expect(await host.end()).toBe(0);
    expect(holderOf(host.workshop)).toEqual({ held: false });
    expect(existsSync(host.desk)).toBe(false);
    expect(readdirSync(host.workshop).filter((name) => /wal|shm|host\.json/.test(name))).toEqual([]);
    expect(host.faults()).toBe('');
  });

  it('ends on SIGTERM while windows listen for changes', async () => {
    const host = await start();
    const { answer } = await listenTo(host);
    answer.on('error', () => {});
    answer.resume();
    const before = Date.now();
    await host.kill('SIGTERM');
    expect(host.child.exitCode).toBe(0);
    expect(Date.now() - before).toBeLessThan(2500);
  });

  it('is not ended by the Ctrl+C of the terminal it shares with its shell', async () => {
    if (process.platform === 'win32') return;
    const host = await start();
    host.child.kill('SIGINT');
    host.child.kill('SIGHUP');
    expect((await call(host, 'workshop/info', {})).status).toBe(200);
  });

  it('killed with -9 frees the workshop at once, and the next one takes name, port and session over', async () => {
    const first = await start();
    expect((await call(first, 'workshop/info', {})).status).toBe(200);
    await first.kill('SIGKILL');
    expect(holderOf(first.workshop)).toEqual({ held: false });
    const second = await start({ secret: first.secret, again: first.host });
    expect(second.address).toBe(first.address);
    // What the window before had still opens the door.
    expect((await call(first, 'workshop/info', {})).status).toBe(200);
  });

  it('takes another port where its old one is gone', async () => {
    const first = await start();
    await first.kill('SIGKILL');
    const taker = createServer().listen(first.port, '127.0.0.1');
    await once(taker, 'listening');
    const second = await start({ again: first.host });
    taker.close();
    expect(second.port).not.toBe(first.port);
    expect(second.host.split(':')[0]).toBe(first.host.split(':')[0]);
  });

  it('a session of one host opens no other', async () => {
    const first = await start();
    await first.end();
    const second = await start();
    expect(second.host.split(':')[0]).not.toBe(first.host.split(':')[0]);
    const answer = await call(second, 'workshop/info', {}, { Cookie: `everybolt-session=${first.secret}` });
    expect(answer.status).toBe(401);
  });

  it.each(['', 'hello', '{"secret":"short"}'])(
    'without a proper secret it does not start: %j',
    async (line) => {
      const { child, report } = await startRaw({ folder: folder.path, line });
      if (child.exitCode === null) await once(child, 'exit');
      expect(report).toMatchObject({ everybolt: 'refused', code: 'input' });
      expect(child.exitCode).toBe(2);
      expect(existsSync(join(folder.path, 'workshop'))).toBe(false);
    },
  );

  it('refuses a damaged workshop in words, and frees it', async () => {
    const host = await start();
    await host.end();
    writeFileSync(
      join(host.workshop, 'workshop.db'),
      'this is no database, and long enough to be seen as one'.repeat(99),
    );
    const { child, report } = await startRaw({ folder: folder.path });
    if (child.exitCode === null) await once(child, 'exit');
    expect(report).toMatchObject({ everybolt: 'refused', code: 'damaged' });
    expect(holderOf(host.workshop)).toEqual({ held: false });
  });
});
