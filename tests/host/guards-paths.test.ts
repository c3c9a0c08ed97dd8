import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pathOf, photoOf } from '../../core/host/guards.ts';
import { ALL, asset, ask, call, changes, code, HOST, ID, photo, sheet, status, ticket } from './requests.ts';

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
  it('a sheet is asked for by its job, a number of the list or all, and how it is printed', () => {
    const job = sheet.target.split('/')[2] ?? '';
    const route = (path: string) => {
      const verdict = ask(sheet, { target: `/sheet/${path}` });
      return verdict.ok && verdict.route.kind === 'sheet' ? verdict.route.sheet : status(verdict);
    };
    expect(route(`${job}/all`)).toEqual({ jobId: job, step: null, light: false });
    expect(route(`${job}/12/light`)).toEqual({ jobId: job, step: 12, light: true });
    for (const bad of [
      job,
      `${job}/0`,
      `${job}/-1`,
      `${job}/3/dark`,
      `${job}/all/light/x`,
      'x/all',
      `${job}/9999999`,
    ])
      expect(route(bad), bad).toBeOneOf([400, 404]);
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
