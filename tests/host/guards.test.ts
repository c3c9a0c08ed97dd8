import { describe, expect, it } from 'vitest';
import { BODY_LIMITS, type Facts, hasSession, judge, sameSecret } from '../../core/host/guards.ts';
import {
  ALL,
  asset,
  ask,
  call,
  changes,
  code,
  DOOR,
  HOST,
  page,
  photo,
  sheet,
  status,
  ticket,
} from './requests.ts';

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
      for (const facts of [call, asset, photo, sheet, changes, code])
        expect(status(ask(facts, { site }))).toBe(403);
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
        for (const facts of [page, asset, photo, sheet, changes])
          expect(status(ask(facts, { origin }))).toBe(403);
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
      for (const facts of [call, asset, photo, sheet, changes])
        expect(status(ask(facts, { cookie }))).toBe(401);
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
    for (const facts of [page, asset, photo, sheet, changes])
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
