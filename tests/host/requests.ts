import { type Door, type Facts, judge, type Verdict } from '../../core/host/guards.ts';

/** What each kind of request looks like in a browser, read off Chromium 156 with a server of its own. */

export const HOST = 'eb-0123456789abcdef0123.localhost:41234';
export const DOOR: Door = { host: HOST, secret: 'c'.repeat(64) };
export const ID = 'ab'.repeat(32);

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
export const call: Facts = {
  ...NOTHING,
  method: 'POST',
  target: '/rpc/jobs/list',
  origin: [`http://${HOST}`],
  contentType: ['application/json'],
  contentLength: ['2'],
};
export const page: Facts = {
  ...NOTHING,
  method: 'GET',
  target: '/',
  site: ['none'],
  mode: ['navigate'],
  dest: ['document'],
};
export const asset: Facts = {
  ...NOTHING,
  method: 'GET',
  target: '/assets/index-a1b2c3d4.js',
  dest: ['script'],
};
export const photo: Facts = {
  ...NOTHING,
  method: 'GET',
  target: `/photo/${ID}/320`,
  mode: ['no-cors'],
  dest: ['image'],
};
const JOB = `${'0'.repeat(8)}-0000-7000-8000-${'0'.repeat(12)}`;
export const sheet: Facts = { ...NOTHING, method: 'GET', target: `/sheet/${JOB}/all` };
export const changes: Facts = { ...NOTHING, method: 'GET', target: '/changes' };
export const upload: Facts = {
  ...call,
  target: `/upload/${JOB}`,
  contentType: ['application/octet-stream'],
};
const form = { contentType: ['application/x-www-form-urlencoded'], contentLength: ['71'] };
export const ticket: Facts = {
  ...page,
  ...form,
  method: 'POST',
  target: '/session/ticket',
  origin: ['null'],
  site: ['cross-site'],
  cookie: [],
};
export const code: Facts = {
  ...page,
  ...form,
  method: 'POST',
  target: '/session/code',
  origin: [`http://${HOST}`],
  site: ['same-origin'],
  cookie: [],
};
export const ALL = { call, upload, page, asset, photo, sheet, changes, ticket, code };

export const status = (verdict: Verdict) => (verdict.ok ? 200 : verdict.status);
export const ask = (facts: Facts, change: Partial<Facts> = {}) => judge({ ...facts, ...change }, DOOR);
