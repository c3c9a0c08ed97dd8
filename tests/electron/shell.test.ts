import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { runShell } from '../../electron/shell.ts';
import { type PlayedHost, playedHost, type StandIn, standIn } from './stand-in.ts';

/** The shell against a stand-in of the runtime and a host that the test plays. */

const ADDRESS = 'http://eb-0123456789abcdef0123.localhost:41234';
const MOVED = 'http://eb-0123456789abcdef0123.localhost:41999';
const SECRET = 'ab'.repeat(32);

const ready = (address = ADDRESS) =>
  JSON.stringify({ everybolt: 'ready', address, desk: '/d', workshop: '/w', pid: 1 });

let electron: StandIn;
let host: PlayedHost;
const run = async (workshop = '/home/ana/shop') =>
  runShell(electron.parts, {
    workshop,
    preload: '/preload.cjs',
    platform: 'linux',
    secret: SECRET,
    start: host.start,
  });
/** Lets everything run that waits for nothing but its turn. */
const settle = async () => {
  await vi.advanceTimersByTimeAsync(0);
};
const last = () => {
  const start = host.starts.at(-1);
  if (start === undefined) throw new Error('Expected a host to be started, got none.');
  return start;
};
const answers = async (address = ADDRESS) => {
  last().hears.line(ready(address));
  await settle();
};

beforeEach(() => {
  vi.useFakeTimers();
  electron = standIn({ first: true });
  host = playedHost();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('the shell', () => {
  it('says once that its window shows the page, however often the host comes back', async () => {
    const onShown = vi.fn();
    await runShell(electron.parts, {
      workshop: '/home/ana/shop',
      preload: '/preload.cjs',
      platform: 'linux',
      secret: SECRET,
      start: host.start,
      onShown,
    });
    expect(onShown).not.toHaveBeenCalled();
    await answers();
    expect(onShown).toHaveBeenCalledTimes(1);
    last().hears.gone();
    await vi.advanceTimersByTimeAsync(60_000);
    await answers(MOVED);
    expect(onShown).toHaveBeenCalledTimes(1);
  });

  it('hands its secret to the host, sets the cookie, then opens the window', async () => {
    await run();
    expect(host.starts.map((start) => start.handover)).toEqual([{ secret: SECRET }]);
    expect(electron.windows).toHaveLength(0);
    await answers();
    expect(electron.cookies).toEqual([
      { url: `${ADDRESS}/`, name: 'everybolt-session', value: SECRET, httpOnly: true, sameSite: 'strict' },
    ]);
    expect(electron.windows[0]?.loaded).toEqual([`${ADDRESS}/`]);
    expect(electron.windows[0]?.shown).toBe(false);
    electron.windows[0]?.say('ready-to-show');
    expect(electron.windows[0]?.shown).toBe(true);
  });

  it('opens windows in a sandbox, with nothing of Node in them', async () => {
    await run();
    await answers();
    expect(electron.windows[0]?.options.webPreferences).toMatchObject({
      preload: '/preload.cjs',
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
    });
  });

  it('is one per workshop: the second start brings the first one’s window forward and goes', async () => {
    await run();
    await answers();
    const [window] = electron.windows;
    if (window === undefined) throw new Error('Expected a window, got none.');
    window.minimized = true;
    electron.say('second-instance');
    expect([window.minimized, window.shown]).toEqual([false, true]);

    const second = standIn({ first: false });
    const secondHost = playedHost();
    await runShell(second.parts, {
      workshop: '/home/ana/shop',
      preload: '/p',
      platform: 'linux',
      secret: SECRET,
      start: secondHost.start,
    });
    expect(second.log).toContain('quit');
    expect(secondHost.starts).toHaveLength(0);
  });

  it('keeps workshops apart by a folder each, so that two can be open', async () => {
    const path = async (workshop: string) => {
      electron = standIn({ first: true });
      await run(workshop);
      return electron.log.find((line) => line.startsWith('path userData'));
    };
    const [one, two] = [await path('/a'), await path('/b')];
    expect(one).toMatch(/^path userData .*Everybolt.[0-9a-f]{16}$/);
    expect(one).not.toBe(two);
    expect(await path('/a')).toBe(one);
  });

  it('starts a dead host again under the same name, and leaves the window where it is', async () => {
    await run();
    await answers();
    last().hears.gone();
    await vi.advanceTimersByTimeAsync(0);
    expect(host.starts).toHaveLength(2);
    expect(last().handover).toEqual({ secret: SECRET, host: ADDRESS.slice(7) });
    await answers();
    expect(electron.windows).toHaveLength(1);
    expect(electron.windows[0]?.loaded).toHaveLength(1);
  });

  it('follows a host that had to take another port, with a cookie for it', async () => {
    await run();
    await answers();
    last().hears.gone();
    await vi.advanceTimersByTimeAsync(0);
    await answers(MOVED);
    expect(electron.cookies.at(-1)?.url).toBe(`${MOVED}/`);
    expect(electron.windows[0]?.loaded).toEqual([`${ADDRESS}/`, `${MOVED}/`]);
  });

  it('waits longer each time the host dies, and stops with a sentence after the fifth', async () => {
    await run();
    const pauses: number[] = [];
    for (let death = 0; death < 5; death++) {
      await answers();
      const [died, before] = [Date.now(), host.starts.length];
      last().hears.gone();
      while (host.starts.length === before) await vi.advanceTimersByTimeAsync(100);
      pauses.push(Math.floor((Date.now() - died) / 500) * 500);
    }
    expect(pauses).toEqual([0, 500, 2000, 5000, 15_000]);
    await answers();
    last().hears.gone();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(host.starts).toHaveLength(6);
    expect(electron.log).toContain(
      'error Expected the program to stay up, but it ended 6 times in a row. What was saved is saved.',
    );
    expect(electron.log).toContain('quit');
  });

  it('counts a death once, however often it is told of it', async () => {
    await run();
    await answers();
    const { gone } = last().hears;
    gone();
    gone();
    await settle();
    gone();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(host.starts).toHaveLength(2);
  });

  it('says why a host refused to start', async () => {
    await run();
    last().hears.line(
      JSON.stringify({ everybolt: 'refused', code: 'locked', sentence: 'Held by another.', holder: null }),
    );
    last().hears.gone();
    await vi.advanceTimersByTimeAsync(60_000);
    expect(electron.log.filter((line) => line.startsWith('error'))).toEqual(['error Held by another.']);
    expect(host.starts).toHaveLength(1);
    expect(electron.windows).toHaveLength(0);
  });

  it('kills a host that says anything but its line', async () => {
    await run();
    last().hears.line('Listening on port 80');
    await settle();
    expect(electron.log.some((line) => line.startsWith('error Expected the program to stay up'))).toBe(true);
    expect(electron.windows).toHaveLength(0);
  });

  it('quits only after the host has put things away', async () => {
    await run();
    await answers();
    expect(electron.sayQuit()).toBe(true);
    expect(electron.sayQuit()).toBe(true);
    expect(last().ended).toBe(true);
    await settle();
    expect(electron.log).not.toContain('quit');
    last().hears.gone();
    await settle();
    expect(electron.log).toContain('quit');
    expect(electron.sayQuit()).toBe(false);
    expect(host.starts).toHaveLength(1);
  });

  it('kills a host that does not end within ten seconds', async () => {
    await run();
    await answers();
    electron.sayQuit();
    await vi.advanceTimersByTimeAsync(9999);
    expect(electron.log).not.toContain('quit');
    await vi.advanceTimersByTimeAsync(1);
    expect(electron.log).toContain('quit');
  });

  it('closing the last window quits', async () => {
    await run();
    await answers();
    electron.windows[0]?.say('closed');
    electron.say('window-all-closed');
    expect(electron.log).toContain('quit');
  });
});
