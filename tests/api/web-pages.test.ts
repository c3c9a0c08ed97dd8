import { mkdirSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContext } from '@playwright/test';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { leaveCode, leaveTicket } from '../../core/host/desk.ts';
import { ticketFile } from '../../core/host/pages.ts';
import { launchChromium } from './chromium.ts';
import { call, makeFolder, type RunningHost, startHost } from './running-host.ts';

/**
 * Real Chromium, a real host, and a second real server beside it: no page from elsewhere reads or writes anything.
 * The name evil.example is made to point at this computer, as a rebinding name server would.
 */

let browser: Browser;
let folder: ReturnType<typeof makeFolder>;
let host: RunningHost;
let other: Server;
let otherPort = 0;
/** Cookies that reached the second server, by the name it was asked under. */
let leaked: { name: string; cookie: string }[] = [];
let context: BrowserContext;

beforeAll(async () => {
  browser = await launchChromium(['--host-resolver-rules=MAP evil.example 127.0.0.1']);
  folder = makeFolder();
  host = await startHost({ folder: folder.path });
  other = createServer((request, response) => {
    leaked.push({ name: request.headers.host ?? '', cookie: request.headers.cookie ?? '' });
    response.setHeader('Content-Type', 'text/html');
    if (request.url === '/toss') response.setHeader('Set-Cookie', 'everybolt-session=false; Path=/');
    if (request.url === '/toss-wide')
      response.setHeader('Set-Cookie', 'everybolt-session=false; Path=/; Domain=localhost');
    response.end('<!doctype html><title>Elsewhere</title>');
  }).listen(0, '127.0.0.1');
  await new Promise((resolve) => other.once('listening', resolve));
  otherPort = (other.address() as AddressInfo).port;
});
afterAll(async () => {
  await browser.close();
  other.closeAllConnections();
  other.close();
  await host.kill('SIGKILL');
  folder.remove();
});
beforeEach(async () => {
  leaked = [];
  context = await browser.newContext();
});
afterEach(async () => {
  await context.close();
});

/** Opens the workshop in this browser as `npm start` does: by the file that posts a ticket. */
async function openByTicket() {
  const file = join(folder.path, 'open.html');
  mkdirSync(folder.path, { recursive: true });
  writeFileSync(file, ticketFile(host.address, leaveTicket(host.desk)), { mode: 0o600 });
  const page = await context.newPage();
  await page.goto(pathToFileURL(file).href);
  await page.waitForURL(`${host.address}/`);
  return page;
}

const seq = async () => {
  const reply = JSON.parse((await call(host, 'workshop/info', {})).body) as { json: { seq: number } };
  return reply.json.seq;
};

/** Everything a page can try against an address; says what it could read. Runs inside the browser. */
async function attack({
  address,
  command,
}: {
  address: string;
  command: string;
}): Promise<Record<string, string>> {
  const read: Record<string, string> = {};
  const write = JSON.stringify({ json: { command, title: 'Written from elsewhere' } });
  const attempt = async (name: string, act: () => Promise<string | null>) => {
    const answer = await Promise.race([
      act().catch(() => null),
      new Promise<null>((resolve) => setTimeout(() => resolve(null), 1500)),
    ]);
    if (answer !== null) read[name] = answer;
  };
  const fetched = (path: string, init: RequestInit) => async () => {
    const response = await fetch(address + path, init);
    const text = await response.text();
    return text === '' ? null : text;
  };
  const element = (tag: 'img' | 'script' | 'iframe' | 'link', path: string) => async () =>
    new Promise<string | null>((resolve) => {
      const made = document.createElement(tag);
      made.addEventListener('load', () =>
        resolve(tag === 'iframe' ? framed(made as HTMLIFrameElement) : 'loaded'),
      );
      made.addEventListener('error', () => resolve(null));
      if (made instanceof HTMLLinkElement) {
        made.rel = 'stylesheet';
        made.href = address + path;
      } else made.src = address + path;
      document.documentElement.append(made);
    });
  const framed = (frame: HTMLIFrameElement) => {
    try {
      return frame.contentDocument?.body.innerText || null;
    } catch {
      return null;
    }
  };
  const json = { 'Content-Type': 'application/json' };
  const posts: [string, RequestInit][] = [
    ['json', { method: 'POST', headers: json, body: write, credentials: 'include' }],
    ['text', { method: 'POST', body: write, credentials: 'include' }],
    ['no-cors', { method: 'POST', mode: 'no-cors', body: write, credentials: 'include' }],
    [
      'beacon-like',
      { method: 'POST', mode: 'no-cors', keepalive: true, body: write, credentials: 'include' },
    ],
    ['put', { method: 'PUT', headers: json, body: write, credentials: 'include' }],
  ];
  for (const [name, init] of posts) await attempt(`post ${name}`, fetched('/rpc/jobs/add', init));
  for (const path of ['/', '/rpc/jobs/list', '/changes', '/assets/index-a1b2c3d4.js'])
    for (const mode of ['cors', 'no-cors'] as const)
      await attempt(`get ${mode} ${path}`, fetched(path, { mode, credentials: 'include' }));
  navigator.sendBeacon(`${address}/rpc/jobs/add`, new Blob([write], { type: 'text/plain' }));
  await attempt(
    'stream',
    async () =>
      new Promise((resolve) => {
        const source = new EventSource(`${address}/changes`, { withCredentials: true });
        source.onmessage = (event) => resolve(String(event.data));
        source.onerror = () => resolve(null);
      }),
  );
  await attempt(
    'socket',
    async () =>
      new Promise((resolve) => {
        const socket = new WebSocket(`${address.replace('http', 'ws')}/changes`);
        socket.onopen = () => resolve('open');
        socket.onerror = () => resolve(null);
      }),
  );
  await attempt('script', element('script', '/assets/index-a1b2c3d4.js'));
  await attempt('image', element('img', `/photo/${'a'.repeat(64)}/320`));
  await attempt('frame', element('iframe', '/'));
  // As text it can be made to read as JSON; as a form with files it is the other shape that calls are sent in.
  const fields: [string, string, string][] = [
    ['text/plain', write.slice(0, -1), '"}'],
    ['application/x-www-form-urlencoded', 'data', write],
    ['multipart/form-data', 'data', JSON.stringify({ ...JSON.parse(write), meta: [], maps: [] })],
  ];
  for (const [enctype, name, value] of fields) {
    const form = document.createElement('form');
    const target = document.createElement('iframe');
    target.name = `frame-${enctype}`;
    Object.assign(form, { method: 'post', enctype, action: `${address}/rpc/jobs/add`, target: target.name });
    form.append(Object.assign(document.createElement('input'), { name, value }));
    document.documentElement.append(target, form);
    form.submit();
  }
  await new Promise((resolve) => setTimeout(resolve, 300));
  return read;
}

const nothingHappens = async (from: string, address = host.address) => {
  const before = await seq();
  const page = await context.newPage();
  await page.goto(from);
  const read = await page.evaluate(attack, { address, command: crypto.randomUUID() });
  expect(await seq()).toBe(before);
  return read;
};

describe('the way in', () => {
  it('the file of npm start opens the workshop, and its scripts run under the strict policy', async () => {
    const page = await openByTicket();
    await expect.poll(async () => page.title()).toBe('Workshop, running');
    expect(await page.evaluate(() => document.cookie)).toBe('');
    expect(page.url()).not.toContain('ticket');
    await page.reload();
    await expect.poll(async () => page.title()).toBe('Workshop, running');
  });

  it('the code typed into the page opens the workshop; a wrong one is said to be wrong', async () => {
    const code = leaveCode(host.desk);
    const page = await context.newPage();
    await page.goto(host.address);
    await page.getByLabel('Code, 8 digits').fill(code === '12345678' ? '87654321' : '12345678');
    await page.getByRole('button').click();
    expect(await page.getByRole('alert').innerText()).toContain('That is not the code');
    await page.getByLabel('Code, 8 digits').fill(`${code.slice(0, 4)} ${code.slice(4)}`);
    await page.getByRole('button').click();
    await page.waitForURL(`${host.address}/`);
    await expect.poll(async () => page.title()).toBe('Workshop, running');
  });

  it('the program’s own page may do what the attacks below may not: they are not refused for being broken', async () => {
    const page = await openByTicket();
    const before = await seq();
    const answers = await page.evaluate(async (command) => {
      const body = JSON.stringify({ json: { command, title: 'Written from its own page' } });
      const headers = { 'Content-Type': 'application/json' };
      const response = await fetch('/rpc/jobs/add', { method: 'POST', headers, body });
      const heard = await new Promise<string>((resolve) => {
        const source = new EventSource('/changes');
        source.onmessage = (event) => {
          source.close();
          resolve(String(event.data));
        };
      });
      return { status: response.status, heard };
    }, crypto.randomUUID());
    expect(answers.status).toBe(200);
    expect(answers.heard).toContain('"seq"');
    expect(await seq()).toBeGreaterThan(before);
  });
});

describe('a page from elsewhere, in the same browser as an open workshop', () => {
  it('on another port of this computer reads and writes nothing', async () => {
    await openByTicket();
    expect(await nothingHappens(`http://localhost:${otherPort}/`)).toEqual({});
    expect(await nothingHappens(`http://127.0.0.1:${otherPort}/`)).toEqual({});
    expect(await nothingHappens(`http://localhost:${otherPort}/`, `http://127.0.0.1:${host.port}`)).toEqual(
      {},
    );
  });

  it('of another site reads and writes nothing', async () => {
    await openByTicket();
    expect(await nothingHappens(`http://evil.example:${otherPort}/`)).toEqual({});
  });

  it('under the very name of the host, on another port, reads and writes nothing, though the cookie is sent', async () => {
    await openByTicket();
    const [name] = host.host.split(':');
    expect(await nothingHappens(`http://${name}:${otherPort}/`)).toEqual({});
    // Cookies do not know ports: this is why the name must be one that nobody can guess.
    expect(leaked.some(({ cookie }) => cookie.includes(host.secret))).toBe(true);
  });

  it('under a name made to point at this computer gets nothing from the host’s own port', async () => {
    await openByTicket();
    const before = await seq();
    const page = await context.newPage();
    const shown = await page.goto(`http://evil.example:${host.port}/`);
    expect(shown?.status()).toBe(421);
    const read = await page.evaluate(attack, { address: '', command: crypto.randomUUID() });
    expect(Object.keys(read)).toContain('post json');
    for (const text of Object.values(read)) expect(text).toContain('"code":"host"');
    expect(await seq()).toBe(before);
  });

  it('under plain localhost or the number gets nothing from the host’s own port', async () => {
    await openByTicket();
    for (const name of ['localhost', '127.0.0.1', '[::1]', 'eb-ffffffffffffffffffff.localhost']) {
      const page = await context.newPage();
      const shown = await page.goto(`http://${name}:${host.port}/`);
      expect(shown?.status()).toBe(421);
    }
  });

  it('cannot send its reader into the workshop, or show it inside itself', async () => {
    await openByTicket();
    const page = await context.newPage();
    await page.goto(`http://localhost:${otherPort}/`);
    const [answer] = await Promise.all([
      page.waitForResponse((response) => response.url() === `${host.address}/`),
      page.evaluate((address) => location.assign(address), host.address),
    ]);
    expect(answer.status()).toBe(403);
    expect(await answer.text()).toContain('"code":"source"');
  });
});

describe('a second server on this computer', () => {
  it('does not get the session, and its cookies do not get in the way', async () => {
    const workshop = await openByTicket();
    const page = await context.newPage();
    for (const path of ['/', '/toss', '/toss-wide', '/'])
      await page.goto(`http://localhost:${otherPort}${path}`);
    expect(leaked.some(({ cookie }) => cookie.includes(host.secret))).toBe(false);
    await workshop.reload();
    await expect.poll(async () => workshop.title()).toBe('Workshop, running');
  });

  it('that sets a session cookie itself lets nobody in', async () => {
    const page = await context.newPage();
    const [name] = host.host.split(':');
    await page.goto(`http://${name}:${otherPort}/toss`);
    await page.goto(host.address);
    expect(await page.title()).toBe('Everybolt');
    expect(await page.getByLabel('Code, 8 digits').count()).toBe(1);
  });
});
