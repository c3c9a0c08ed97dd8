import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { holderOf } from '../../core/store/lock.ts';
import { launchChromium } from './chromium.ts';
import { ask, makeFolder } from './running-host.ts';

/** `npm start`, run for real, with a browser that is another program than the user's. */

const START = join(import.meta.dirname, '..', '..', 'core', 'cli', 'start.ts');

let folder: ReturnType<typeof makeFolder>;
const running: ChildProcess[] = [];

beforeEach(() => {
  folder = makeFolder();
});
afterEach(async () => {
  for (const child of running.splice(0))
    if (child.exitCode === null && child.signalCode === null) await stop(child, 'SIGTERM');
  folder.remove();
});

interface Started {
  readonly child: ChildProcess;
  /** What stands in the terminal. */
  said(): string;
  /** Waits until that stands there. */
  says(pattern: RegExp): Promise<RegExpExecArray>;
}

function start(env: Record<string, string>): Started {
  const child = spawn(
    process.execPath,
    [START, '--workshop', join(folder.path, 'workshop'), '--screens', join(folder.path, 'renderer')],
    {
      stdio: ['ignore', 'pipe', 'pipe'],
      env: {
        PATH: process.env['PATH'],
        HOME: folder.path,
        XDG_CACHE_HOME: join(folder.path, 'cache'),
        ...env,
      },
    },
  );
  running.push(child);
  let text = '';
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (chunk: Buffer) => {
      text += chunk.toString();
    });
  return {
    child,
    said: () => text,
    says: async (pattern) => {
      for (let wait = 0; wait < 200; wait++) {
        const found = pattern.exec(text);
        if (found) return found;
        await new Promise((resolve) => setTimeout(resolve, 50));
      }
      throw new Error(`Expected ${pattern} in the terminal, got:\n${text}`);
    },
  };
}

async function stop(child: ChildProcess, signal: NodeJS.Signals): Promise<number | null> {
  const gone = once(child, 'exit');
  child.kill(signal);
  await gone;
  return child.exitCode;
}

/** A folder for the path with a browser opener that only writes down what it was given. */
function fakeOpener(ends = 0): { path: string; given: () => string | null } {
  const bin = join(folder.path, 'bin');
  mkdirSync(bin);
  const note = join(folder.path, 'given.txt');
  writeFileSync(join(bin, 'xdg-open'), `#!/bin/sh\nprintf '%s' "$*" > '${note}'\nexit ${ends}\n`);
  chmodSync(join(bin, 'xdg-open'), 0o755);
  return {
    path: `${bin}:${process.env['PATH'] ?? ''}`,
    given: () => (existsSync(note) ? readFileSync(note, 'utf8') : null),
  };
}

const typeCode = async (address: string, code: string) => {
  const body = `code=${encodeURIComponent(code)}`;
  const headers = {
    Host: address.slice('http://'.length),
    Origin: address,
    'Sec-Fetch-Site': 'same-origin',
    'Sec-Fetch-Mode': 'navigate',
    'Sec-Fetch-Dest': 'document',
    'Content-Type': 'application/x-www-form-urlencoded',
    'Content-Length': String(body.length),
  };
  return ask(Number(address.split(':')[2]), 'POST', '/session/code', headers, body);
};

const CODE_LINE =
  /Open (http:\S+) in a browser on this computer and type the code (\d{4} \d{4}) \(([a-z ]+), ([a-z ]+)\)/;

describe('npm start', () => {
  it('without a display says why, the address and a code, and the code opens the workshop once', async () => {
    const started = start({});
    const [, address = '', code = ''] = await started.says(CODE_LINE);
    expect(started.said()).toContain('No window is opened: there is no display here.');
    // The main job can be seen all the same: the sample's way back, with what stands open.
    expect(started.said()).toMatch(
      /22 off, 8 back, 14 left\.[\s\S]*\[w\] 14 Gear cover[\s\S]*Open points[\s\S]*STOP Tin 27/,
    );
    const first = await typeCode(address, code);
    expect(first.headers['set-cookie']).toHaveLength(1);
    expect((await typeCode(address, code)).headers['set-cookie']).toBeUndefined();
  });

  it('ends with Ctrl+C, also when npm passes it on a second time, and leaves nothing running', async () => {
    const started = start({});
    await started.says(CODE_LINE);
    const gone = once(started.child, 'exit');
    started.child.kill('SIGINT');
    await new Promise((resolve) => setTimeout(resolve, 5));
    started.child.kill('SIGINT');
    await gone;
    expect(started.child.exitCode).toBe(0);
    expect(started.said()).toContain('Closing the workshop.');
    expect(holderOf(join(folder.path, 'workshop'))).toEqual({ held: false });
  });

  it('killed with -9 takes its host with it', async () => {
    const started = start({});
    await started.says(CODE_LINE);
    await stop(started.child, 'SIGKILL');
    for (let wait = 0; wait < 100 && holderOf(join(folder.path, 'workshop')).held; wait++)
      await new Promise((resolve) => setTimeout(resolve, 50));
    expect(holderOf(join(folder.path, 'workshop'))).toEqual({ held: false });
  });

  it('starts a killed host again under the same address', async () => {
    const started = start({});
    const [, address = ''] = await started.says(CODE_LINE);
    const holder = holderOf(join(folder.path, 'workshop'));
    if (!holder.held || holder.note === null) throw new Error('Expected a host, got none.');
    process.kill(holder.note.pid, 'SIGKILL');
    await started.says(/It runs again; open windows go on by themselves/);
    expect(holderOf(join(folder.path, 'workshop'))).toMatchObject({ note: { address } });
  });

  it('opens the browser by a file that only this user can read, with nothing secret in any argument', async () => {
    const opener = fakeOpener();
    const started = start({ DISPLAY: ':77', PATH: opener.path });
    await started.says(/Opening it in the browser: the runtime for a window of its own is not here\./);
    for (let wait = 0; wait < 100 && !opener.given(); wait++)
      await new Promise((resolve) => setTimeout(resolve, 50));
    const file = opener.given() ?? '';
    expect(file).toMatch(/\/open-\w+\/everybolt\.html$/);
    expect(statSync(file).mode & 0o077).toBe(0);
    expect(statSync(join(file, '..')).mode & 0o077).toBe(0);
    const [, ticket = ''] = /name="ticket" value="([0-9a-f]{64})"/.exec(readFileSync(file, 'utf8')) ?? [];
    expect(ticket).not.toBe('');
    expect(file).not.toContain(ticket);
    expect(started.said()).not.toContain(ticket);

    const browser = await launchChromium();
    const page = await browser.newPage();
    await page.goto(pathToFileURL(file).href);
    await expect.poll(async () => page.title()).toBe('Workshop, running');
    await browser.close();
    // Used: the file goes away, and no code is said.
    await expect.poll(() => existsSync(file)).toBe(false);
    expect(started.said()).not.toContain('No browser came');
  });

  it('says a code where the browser could not be started', async () => {
    const opener = fakeOpener(3);
    const started = start({ DISPLAY: ':77', PATH: opener.path });
    await started.says(/No browser came/);
    const [, address = '', code = ''] = await started.says(CODE_LINE);
    expect((await typeCode(address, code)).headers['set-cookie']).toHaveLength(1);
    expect(readdirSync(join(folder.path, 'cache', 'everybolt'))).toEqual(['desks']);
  });

  it('where one runs already, opens that one and says so', async () => {
    const first = start({});
    const [, address = ''] = await first.says(CODE_LINE);
    const second = start({});
    const gone = once(second.child, 'exit');
    const [, again = '', code = ''] = await second.says(CODE_LINE);
    await gone;
    expect(second.said()).toMatch(/^Everybolt already runs on .*: opening that one\./);
    expect(again).toBe(address);
    expect(second.child.exitCode).toBe(0);
    expect((await typeCode(address, code)).headers['set-cookie']).toHaveLength(1);
    expect(first.child.exitCode).toBeNull();
  });
});
