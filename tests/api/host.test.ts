import { once } from 'node:events';
import { readdirSync, readFileSync, statSync, utimesSync } from 'node:fs';
import { connect, createServer } from 'node:net';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { leaveCode, leaveTicket } from '../../core/host/desk.ts';
import { ask, call, makeFolder, listenTo, own, type RunningHost, startHost, typed } from './running-host.ts';

/** The host process over real HTTP. */

const until = async (holds: () => boolean) => {
  for (let wait = 0; wait < 100 && !holds(); wait++) await new Promise((resolve) => setTimeout(resolve, 50));
};

describe('a running host', () => {
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

  const form = (kind: 'ticket' | 'code', value: string) => {
    const body = `${kind}=${encodeURIComponent(value)}`;
    const source =
      kind === 'ticket'
        ? { 'Sec-Fetch-Site': 'cross-site', Origin: 'null' }
        : { 'Sec-Fetch-Site': 'same-origin', Origin: host.address };
    const headers = {
      ...typed(host),
      ...source,
      'Content-Type': 'application/x-www-form-urlencoded',
      'Content-Length': String(body.length),
    };
    return ask(host.port, 'POST', `/session/${kind}`, headers, body);
  };

  it('answers a call of its own page, and nobody else’s', async () => {
    const answer = await call(host, 'workshop/info', {});
    expect(answer.status).toBe(200);
    expect(JSON.parse(answer.body)).toMatchObject({ json: { ok: true } });
    expect((await call(host, 'workshop/info', {}, { Cookie: '' })).status).toBe(401);
    expect((await call(host, 'workshop/info', {}, { Origin: 'http://localhost:1' })).status).toBe(403);
    expect((await call(host, 'workshop/info', {}, { Host: `127.0.0.1:${host.port}` })).status).toBe(421);
    expect((await call(host, 'workshop/info', {}, { 'Sec-Fetch-Site': 'cross-site' })).status).toBe(403);
    expect((await call(host, 'workshop/info', {}, { 'Content-Type': 'text/plain' })).status).toBe(415);
  });

  it('serves the screens to a window that was let in, with strict headers', async () => {
    const page = await ask(host.port, 'GET', '/', {
      ...typed(host),
      Cookie: `everybolt-session=${host.secret}`,
    });
    expect(page.body).toContain('<title>Workshop</title>');
    expect(page.headers['content-security-policy']).toContain("default-src 'none'");
    expect(page.headers['x-content-type-options']).toBe('nosniff');
    expect(page.headers['referrer-policy']).toBe('no-referrer');
    expect(page.headers['cross-origin-opener-policy']).toBe('same-origin');
    expect(page.headers['cross-origin-resource-policy']).toBe('same-origin');
    expect(page.headers['access-control-allow-origin']).toBeUndefined();
    const script = await ask(host.port, 'GET', '/assets/index-a1b2c3d4.js', own(host));
    expect(script.status).toBe(200);
    expect(script.headers['content-type']).toContain('text/javascript');
    expect(script.headers['content-security-policy']).toContain("default-src 'none'");
  });

  it('asks a window that was not let in for the code, and shows nothing else', async () => {
    const page = await ask(host.port, 'GET', '/', typed(host));
    expect(page.status).toBe(200);
    expect(page.body).toContain('action="/session/code"');
    expect(page.body).not.toContain('<title>Workshop</title>');
    expect(page.headers['set-cookie']).toBeUndefined();
  });

  it('says what it does not have in a JSON sentence', async () => {
    for (const path of ['/assets/none.js', `/photo/${'a'.repeat(64)}/320`]) {
      const answer = await ask(host.port, 'GET', path, own(host));
      expect(answer.status).toBe(404);
      expect(JSON.parse(answer.body)).toMatchObject({
        code: 'not-found',
        sentence: expect.stringMatching(/^Expected/),
      });
    }
    expect((await call(host, 'no/such/call', {})).status).toBe(404);
  });

  it('gives no file beside the screens', async () => {
    for (const path of [
      '/../secret.txt',
      '/assets/../../secret.txt',
      '/..%2fsecret.txt',
      '/%2e%2e/secret.txt',
    ]) {
      const answer = await ask(host.port, 'GET', path, own(host));
      expect(answer.status).toBe(400);
      expect(answer.body).not.toContain('not for the window');
    }
    expect((await ask(host.port, 'GET', '/secret.txt', own(host))).status).toBe(404);
  });

  it('refuses what is sent twice, in pieces or too long, before it is read', async () => {
    const twice = {
      ...own(host),
      Origin: [host.address, 'http://evil.example'],
      'Content-Type': 'application/json',
    };
    expect(
      (await ask(host.port, 'POST', '/rpc/workshop/info', { ...twice, 'Content-Length': '2' }, '{}')).status,
    ).toBe(403);
    const chunked = {
      ...own(host),
      Origin: host.address,
      'Content-Type': 'application/json',
      'Transfer-Encoding': 'chunked',
    };
    expect((await ask(host.port, 'POST', '/rpc/workshop/info', chunked, '{}')).status).toBe(415);
    const socket = connect(host.port, '127.0.0.1');
    socket.write(
      `POST /rpc/workshop/info HTTP/1.1\r\nHost: ${host.host}\r\nOrigin: ${host.address}\r\nSec-Fetch-Site: same-origin\r\nCookie: everybolt-session=${host.secret}\r\nContent-Type: application/json\r\nContent-Length: 99999999\r\n\r\n`,
    );
    const [answer] = (await once(socket, 'data')) as [Buffer];
    socket.destroy();
    expect(answer.toString()).toMatch(/^HTTP\/1\.1 413/);
  });

  it('does not take a whole address, or two names, in place of a path', async () => {
    const raw = async (text: string) => {
      const socket = connect(host.port, '127.0.0.1');
      socket.write(text);
      const [answer] = (await once(socket, 'data')) as [Buffer];
      socket.destroy();
      return answer.toString();
    };
    const rest = `Sec-Fetch-Site: none\r\nSec-Fetch-Mode: navigate\r\nSec-Fetch-Dest: document\r\nCookie: everybolt-session=${host.secret}\r\n\r\n`;
    expect(await raw(`GET http://evil.example/ HTTP/1.1\r\nHost: ${host.host}\r\n${rest}`)).toMatch(
      /^HTTP\/1\.1 400/,
    );
    expect(await raw(`GET / HTTP/1.1\r\nHost: ${host.host}\r\nHost: evil.example\r\n${rest}`)).toMatch(
      /^HTTP\/1\.1 4/,
    );
    expect(await raw(`GET / HTTP/1.0\r\n${rest}`)).toMatch(/^HTTP\/1\.1 4/);
    expect(await raw(`GET / HTTP/1.1\r\nHost: a b\r\n${rest}`)).toMatch(/^HTTP\/1\.1 4/);
    expect(await raw(`GET / HTTP/1.1\r\nHost: ${host.host}\r\n${rest}`)).toMatch(/^HTTP\/1\.1 200/);
  });

  it('lets a window in by a ticket once, with a cookie that scripts cannot read', async () => {
    const ticket = leaveTicket(host.desk);
    const first = await form('ticket', ticket);
    expect(first.status).toBe(200);
    expect(first.headers['set-cookie']).toEqual([
      `everybolt-session=${host.secret}; HttpOnly; SameSite=Strict; Path=/`,
    ]);
    const second = await form('ticket', ticket);
    expect(second.status).toBe(403);
    expect(second.headers['set-cookie']).toBeUndefined();
  });

  it('takes no ticket older than 30 seconds', async () => {
    const ticket = leaveTicket(host.desk);
    const [file] = readdirSync(host.desk).filter((name) => name.includes('ticket'));
    const then = Date.now() / 1000 - 31;
    utimesSync(join(host.desk, file ?? ''), then, then);
    const late = await form('ticket', ticket);
    expect(late.status).toBe(403);
    expect(late.headers['set-cookie']).toBeUndefined();
  });

  it('lets a window in by a typed code, and withdraws the code after five wrong ones', async () => {
    const code = leaveCode(host.desk);
    expect((await form('code', `${code.slice(0, 4)} ${code.slice(4)}`)).headers['set-cookie']).toHaveLength(
      1,
    );
    expect((await form('code', code)).headers['set-cookie']).toBeUndefined();

    const next = leaveCode(host.desk);
    const wrong = next === '12345678' ? '87654321' : '12345678';
    const bodies = [];
    for (let miss = 0; miss < 5; miss++) bodies.push((await form('code', wrong)).body);
    expect(bodies[0]).toContain('That is not the code');
    expect(bodies[4]).toContain('There is no code to be used now');
    const right = await form('code', next);
    expect(right.status).toBe(403);
    expect(right.headers['set-cookie']).toBeUndefined();
  });

  it('tells of changes: first the present number, then each one', async () => {
    const { asked, answer } = await listenTo(host);
    answer.setEncoding('utf8');
    expect(answer.headers['content-type']).toContain('text/event-stream');
    let heard = '';
    answer.on('data', (chunk: string) => {
      heard += chunk;
    });
    await until(() => heard.includes('"chain":""'));
    const [, first] = /"seq":(\d+),"chain":""/.exec(heard) ?? [];
    expect(first).toBeDefined();
    const made = await call(host, 'jobs/add', { command: newId(), title: 'Pump, back yard' });
    expect(JSON.parse(made.body)).toMatchObject({ json: { ok: true } });
    await until(() => heard.split('data:').length > 2);
    const [, next] = /"seq":(\d+),"chain":"[^"]+"/.exec(heard) ?? [];
    expect(Number(next)).toBeGreaterThan(Number(first));
    asked.destroy();
  });

  it('leaves its address for others, readable by this user only', () => {
    const note = join(host.workshop, 'host.json');
    expect(JSON.parse(readFileSync(note, 'utf8'))).toMatchObject({
      address: host.address,
      pid: host.child.pid,
    });
    if (process.platform !== 'win32') expect(statSync(note).mode & 0o077).toBe(0);
    expect(readFileSync(note, 'utf8')).not.toContain(host.secret);
  });

  it('answers on both loopback addresses, so that nobody else can have the other half of its port', async () => {
    const taker = createServer();
    const taken = await new Promise<string>((resolve) => {
      taker.once('error', (error: NodeJS.ErrnoException) => resolve(error.code ?? ''));
      taker.listen(host.port, '::1', () => resolve('bound'));
    });
    taker.close();
    expect(['EADDRINUSE', 'EADDRNOTAVAIL', 'EAFNOSUPPORT']).toContain(taken);
  });

  it('puts its secret nowhere that other users can look', () => {
    if (process.platform !== 'linux') return;
    const of = (name: string) => readFileSync(`/proc/${host.child.pid}/${name}`, 'utf8');
    expect(of('cmdline')).not.toContain(host.secret);
    expect(of('environ')).not.toContain(host.secret);
  });
});

function newId(): string {
  return crypto.randomUUID();
}
