import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  BODY_LIMITS,
  type Door,
  type Facts,
  hasSession,
  judge,
  pathOf,
  photoOf,
  sameSecret,
  type Verdict,
} from '../../core/host/guards.ts';

/** What each kind of request looks like in a browser was read off Chromium 156 with a server of its own. */

const HOST = 'eb-0123456789abcdef0123.localhost:41234';
const DOOR: Door = { host: HOST, secret: 'c'.repeat(64) };
const ID = 'ab'.repeat(32);

const NOTHING: Omit<Facts, 'method' | 'target'> = {
  host: [HOST],
  origin: [],
  site: ['same-origin'],
  mode: ['cors'],
  dest: ['empty'],
  contentType: [],
  contentLength: [],
  contentEncoding: [],
  transferEncoding: [],
  cookie: [`everybolt-session=${DOOR.secret}`],
};
const call: Facts = {
  ...NOTHING,
  method: 'POST',
  target: '/rpc/jobs/list',
  origin: [`http://${HOST}`],
  contentType: ['application/json'],
  contentLength: ['2'],
};
const page: Facts = {
  ...NOTHING,
  method: 'GET',
  target: '/',
  site: ['none'],
  mode: ['navigate'],
  dest: ['document'],
};
const asset: Facts = { ...NOTHING, method: 'GET', target: '/assets/index-a1b2c3d4.js', dest: ['script'] };
const photo: Facts = {
  ...NOTHING,
  method: 'GET',
  target: `/photo/${ID}/320`,
  mode: ['no-cors'],
  dest: ['image'],
};
const changes: Facts = { ...NOTHING, method: 'GET', target: '/changes' };
const form = { contentType: ['application/x-www-form-urlencoded'], contentLength: ['71'] };
const ticket: Facts = {
  ...page,
  ...form,
  method: 'POST',
  target: '/session/ticket',
  origin: ['null'],
  site: ['cross-site'],
  cookie: [],
};
const code: Facts = {
  ...page,
  ...form,
  method: 'POST',
  target: '/session/code',
  origin: [`http://${HOST}`],
  site: ['same-origin'],
  cookie: [],
};
const ALL = { call, page, asset, photo, changes, ticket, code };

const status = (verdict: Verdict) => (verdict.ok ? 200 : verdict.status);
const ask = (facts: Facts, change: Partial<Facts> = {}) => judge({ ...facts, ...change }, DOOR);

describe('what this program asks of itself is let through', () => {
  it.each(Object.entries(ALL))('%s', (kind, facts) => {
    const verdict = ask(facts);
    expect(verdict).toMatchObject({ ok: true, route: { kind: kind === 'call' ? 'rpc' : kind } });
  });

  it.each([
    ['the page after the way in', page, { site: ['same-origin'] }],
    ['an address of the screens', page, { target: '/job/0190f3c2-7b1a-7c3d-8e4f-001122334455/put-back' }],
    ['a page with a question mark', page, { target: '/?from=mail' }],
    ['a script, which says its origin', asset, { origin: [`http://${HOST}`] }],
    ['JSON with its character set', call, { contentType: ['application/json; charset=utf-8'] }],
    ['the largest body', call, { contentLength: [String(BODY_LIMITS.rpc)] }],
    ['a cookie among others', call, { cookie: [`a=1; everybolt-session=${DOOR.secret}; b=2`] }],
    [
      'a cookie after a false one',
      call,
      { cookie: [`everybolt-session=no; everybolt-session=${DOOR.secret}`] },
    ],
  ] satisfies [string, Facts, Partial<Facts>][])('%s', (_, facts, change) => {
    expect(ask(facts, change).ok).toBe(true);
  });

  it('the page knows whether its window was let in', () => {
    expect(ask(page)).toMatchObject({ route: { signedIn: true } });
    expect(ask(page, { cookie: [] })).toMatchObject({ route: { signedIn: false } });
  });
});

/** Names an attacker can make point at this computer, or slips that a loose comparison lets through. */
const HOSTS: readonly (readonly string[])[] = [
  [],
  [''],
  ['127.0.0.1:41234'],
  ['[::1]:41234'],
  ['localhost:41234'],
  ['localhost'],
  ['0.0.0.0:41234'],
  ['evil.example'],
  ['evil.example:41234'],
  ['eb-0123456789abcdef0123.localhost'],
  ['eb-0123456789abcdef0123.localhost:80'],
  ['eb-0123456789abcdef0123.localhost:41235'],
  ['eb-0123456789abcdef0123.localhost:041234'],
  ['eb-0123456789abcdef0123.localhost:41234 '],
  ['eb-0123456789abcdef0123.localhost.:41234'],
  ['EB-0123456789ABCDEF0123.localhost:41234'],
  ['eb-0123456789abcdef0123.localhost:41234.evil.example'],
  ['eb-0123456789abcdef0123.localhost.evil.example:41234'],
  ['evil.example,eb-0123456789abcdef0123.localhost:41234'],
  ['user@eb-0123456789abcdef0123.localhost:41234'],
  ['eb-ffffffffffffffffffff.localhost:41234'],
  [HOST, HOST],
  [HOST, 'evil.example'],
];

describe('another host name gets nothing, whatever it asks', () => {
  it.each(HOSTS.map((host) => [host.join(' + ') || 'none', host] as const))('%s', (_, host) => {
    for (const facts of Object.values(ALL)) expect(status(ask(facts, { host }))).toBe(421);
  });
  it('and a host without a name yet answers nobody', () => {
    expect(status(judge({ ...page, host: [] }, { ...DOOR, host: '' }))).toBe(421);
  });
});

describe('a page from elsewhere gets nothing', () => {
  const sites = [
    [],
    ['cross-site'],
    ['same-site'],
    ['none'],
    ['Same-Origin'],
    ['same-origin', 'same-origin'],
    [''],
  ];
  for (const site of sites)
    it(`a request that says ${site.join(' + ') || 'nothing'} of where it comes from`, () => {
      for (const facts of [call, asset, photo, changes, code]) expect(status(ask(facts, { site }))).toBe(403);
      if (site[0] !== 'none') expect(status(ask(page, { site }))).toBe(403);
    });

  const origins = [
    [],
    ['null'],
    ['http://evil.example'],
    ['http://localhost:41234'],
    ['http://127.0.0.1:41234'],
    ['http://eb-0123456789abcdef0123.localhost'],
    ['http://eb-0123456789abcdef0123.localhost:41235'],
    [`https://${HOST}`],
    [`http://${HOST}/`],
    [`http://${HOST}.evil.example`],
    [`http://${HOST}`, `http://${HOST}`],
  ];
  for (const origin of origins)
    it(`a POST of origin ${origin.join(' + ') || 'none'}`, () => {
      expect(status(ask(call, { origin }))).toBe(403);
      expect(status(ask(code, { origin }))).toBe(403);
      // Where something is only read the origin may be missing, but never another.
      if (origin.length > 0)
        for (const facts of [page, asset, photo, changes]) expect(status(ask(facts, { origin }))).toBe(403);
    });

  it('a ticket is taken from a file only: as a whole page, with the origin that files have', () => {
    expect(status(ask(ticket, { origin: [`http://${HOST}`] }))).toBe(403);
    expect(status(ask(ticket, { origin: ['http://evil.example'] }))).toBe(403);
    expect(status(ask(ticket, { origin: [] }))).toBe(403);
    expect(status(ask(ticket, { dest: ['iframe'] }))).toBe(403);
    expect(status(ask(ticket, { mode: ['no-cors'], dest: ['empty'] }))).toBe(403);
    expect(status(ask(ticket, { site: ['same-site'] }))).toBe(403);
  });

  it.each([['iframe'], ['embed'], ['object'], ['frame'], ['empty'], ['script'], ['image']])(
    'the page as %s',
    (dest) => {
      expect(status(ask(page, { dest: [dest] }))).toBe(403);
    },
  );
});

describe('a request without the session gets nothing but the way in', () => {
  const cookies = [
    [],
    [''],
    ['everybolt-session'],
    ['everybolt-session='],
    [`everybolt-session=${'d'.repeat(64)}`],
    [`everybolt-session=${DOOR.secret}0`],
    [`everybolt-session=${DOOR.secret.slice(1)}`],
    [`Everybolt-Session=${DOOR.secret}`],
    [`session=${DOOR.secret}`],
    [`x-everybolt-session=${DOOR.secret}`],
    [`everybolt-session="${DOOR.secret}"`],
    [DOOR.secret],
    [`a=everybolt-session=${DOOR.secret}`],
  ];
  for (const cookie of cookies)
    it(cookie.join() || 'no cookie', () => {
      for (const facts of [call, asset, photo, changes]) expect(status(ask(facts, { cookie }))).toBe(401);
    });
  it('an empty secret opens nothing', () => {
    expect(hasSession(['everybolt-session='], '')).toBe(false);
    expect(sameSecret('', '')).toBe(false);
  });
});

describe('methods and bodies', () => {
  it.each(['PUT', 'DELETE', 'PATCH', 'OPTIONS', 'HEAD', 'TRACE', 'CONNECT', 'get', 'POST\u0000', ''])(
    'the method %s is refused everywhere',
    (method) => {
      for (const facts of Object.values(ALL)) expect(status(ask(facts, { method }))).toBe(405);
    },
  );
  it('what is read is not posted to, what is written is not got', () => {
    for (const facts of [page, asset, photo, changes])
      expect(status(ask(facts, { method: 'POST' }))).toBe(405);
    for (const facts of [call, ticket, code]) expect(status(ask(facts, { method: 'GET' }))).toBe(405);
  });
  it.each([
    [[]],
    [['text/plain']],
    [['application/x-www-form-urlencoded']],
    [['multipart/form-data; boundary=x']],
    [['application/json;charset=utf-16']],
    [['text/plain; application/json']],
    [['application/jsonp']],
    [['application/json', 'application/json']],
  ])('a call as %j is refused: only JSON makes a browser ask first', (contentType) => {
    expect(status(ask(call, { contentType }))).toBe(415);
  });
  it('forms are taken as plain forms only', () => {
    for (const facts of [ticket, code])
      for (const contentType of [
        [],
        ['application/json'],
        ['text/plain'],
        ['multipart/form-data; boundary=x'],
      ])
        expect(status(ask(facts, { contentType }))).toBe(415);
  });
  it('bodies have one length, within the limit, and are not packed', () => {
    expect(status(ask(call, { contentLength: [String(BODY_LIMITS.rpc + 1)] }))).toBe(413);
    expect(status(ask(ticket, { contentLength: [String(BODY_LIMITS.ticket + 1)] }))).toBe(413);
    expect(status(ask(code, { contentLength: [String(BODY_LIMITS.code + 1)] }))).toBe(413);
    for (const contentLength of [
      [],
      ['-1'],
      ['1e3'],
      ['0x10'],
      [' 2'],
      ['2', '2'],
      ['2, 2'],
      ['9'.repeat(30)],
      [''],
    ])
      expect(status(ask(call, { contentLength }))).toBe(411);
    expect(status(ask(call, { transferEncoding: ['chunked'] }))).toBe(415);
    expect(status(ask(call, { contentEncoding: ['gzip'] }))).toBe(415);
    expect(status(ask(page, { contentLength: ['5'] }))).toBe(400);
    expect(status(ask(page, { transferEncoding: ['chunked'] }))).toBe(400);
  });
});

const BAD_TARGETS = [
  '',
  '*',
  'assets/a.js',
  '//evil.example/a.js',
  'http://evil.example/',
  `http://${HOST}/rpc/jobs/list`,
  '/../package.json',
  '/assets/../../secret.txt',
  '/assets/./index.js',
  '/assets//index.js',
  '/assets/%2e%2e/secret.txt',
  '/assets/..%2fsecret.txt',
  '/assets/%00.js',
  '/assets\\..\\secret.txt',
  '/.git/config',
  '/assets/.env',
  '/assets/…',
  '/C:/Windows/win.ini',
  '/assets/a.js#x',
  '/assets/a b.js',
  '/assets/a.js\u0000',
  '/assets/a.js\n',
  '/-rf',
  '/rpc/jobs/list;x=1',
  '/assets/',
  `/${'a'.repeat(2000)}`,
  '/?\u0000',
  '/?a b',
];

describe('paths', () => {
  it.each(BAD_TARGETS)('%j is refused before anything reads it', (target) => {
    expect(pathOf(target)).toBeNull();
    for (const facts of Object.values(ALL)) expect(status(ask(facts, { target }))).toBe(400);
  });
  it('whatever is accepted stays below its folder under any reading of it', () => {
    const sign = fc.constantFrom('a', 'Z', '0', '.', '/', '-', '_', '%', '\\', '2', 'e', '?', ':', '~');
    fc.assert(
      fc.property(fc.array(sign, { maxLength: 12 }), (signs) => {
        const target = `/${signs.join('')}`;
        const path = pathOf(target);
        if (path === null) return true;
        const parsed = new URL(target, 'http://a.localhost').pathname;
        return (
          parsed === `/${path.segments.join('/')}` &&
          path.segments.every((segment) => !/^\.|[\\%:]/.test(segment))
        );
      }),
      { numRuns: 5000 },
    );
  });
  it.each([
    '/rpc',
    '/photo',
    '/photo/12/320',
    `/photo/${ID}`,
    `/photo/${ID}/321`,
    `/photo/${ID}/original`,
    `/photo/${ID.toUpperCase()}/320`,
    `/photo/${ID}0/320`,
    `/photo/${ID}/320/x`,
    '/changes/1',
  ])('%s is not there', (target) => {
    const facts = target === '/rpc' ? call : photo;
    expect(status(ask(facts, { target }))).toBe(404);
  });
  it('a picture id is 64 hex digits and nothing else', () => {
    expect(photoOf([ID, '2048'])).toEqual({ id: ID, size: '2048' });
    for (const id of ['', '..', ID.slice(1), `${ID}a`, `${ID.slice(1)}g`, `${ID.slice(1)}\n`, `${ID}\n`])
      expect(photoOf([id, '320'])).toBeNull();
  });
  it('questions are asked of the page only', () => {
    for (const facts of [call, asset, photo, changes, ticket, code])
      expect(status(ask(facts, { target: `${facts.target}?a=1` }))).toBe(400);
  });
  it('what is said of a refusal never repeats what an attacker sent, but for a few plain signs', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        for (const verdict of [
          ask(call, { host: [text] }),
          ask(call, { origin: [text] }),
          ask(call, { method: text }),
        ])
          if (!verdict.ok && !/^[\w\s.,:/;?'…-]*$/.test(verdict.sentence)) return false;
        return true;
      }),
    );
  });
});
