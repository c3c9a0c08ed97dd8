import { describe, expect, it } from 'vitest';
import { isAddress, parseHandover, parseReport, pauseBefore } from '../../core/host/launch.ts';

const ADDRESS = 'http://eb-0123456789abcdef0123.localhost:41234';
const READY = { everybolt: 'ready', address: ADDRESS, desk: '/d', workshop: '/w', pid: 7 };

describe('the line of a host', () => {
  it('is read when it is whole', () => {
    expect(parseReport(JSON.stringify(READY))).toEqual(READY);
    const refused = {
      everybolt: 'refused',
      code: 'locked',
      sentence: 'Held.',
      holder: { address: ADDRESS, desk: '/d' },
    };
    expect(parseReport(JSON.stringify(refused))).toEqual(refused);
    expect(parseReport(JSON.stringify({ ...refused, holder: null }))).toEqual({ ...refused, holder: null });
  });
  it.each([
    '',
    'Listening',
    '[]',
    'null',
    '7',
    '{}',
    JSON.stringify({ ...READY, everybolt: 'maybe' }),
    JSON.stringify({ ...READY, pid: '7' }),
    JSON.stringify({ ...READY, desk: undefined }),
    JSON.stringify({ ...READY, address: 'http://evil.example' }),
    JSON.stringify({ everybolt: 'refused', code: 'locked' }),
  ])('%s is none', (line) => {
    expect(parseReport(line)).toBeNull();
  });
  it('does not pass on another address than one of this program', () => {
    const refused = {
      everybolt: 'refused',
      code: 'locked',
      sentence: 'Held.',
      holder: { address: 'http://evil.example', desk: '/d' },
    };
    expect(parseReport(JSON.stringify(refused))).toMatchObject({ holder: null });
  });
});

describe('an address', () => {
  it('has our kind of name and a port', () => {
    expect(isAddress(ADDRESS)).toBe(true);
  });
  it.each([
    '',
    'http://',
    `${ADDRESS}/`,
    `${ADDRESS}\n`,
    ADDRESS.replace('http', 'https'),
    ADDRESS.replace('http', 'file'),
    'http://localhost:41234',
    'http://127.0.0.1:41234',
    'http://eb-0123456789abcdef0123.localhost',
    'http://eb-0123456789abcdef0123.localhost:0',
    'http://eb-0123456789abcdef0123.localhost:123456',
    'http://eb-0123456789ABCDEF0123.localhost:41234',
    'http://eb-0123.localhost:41234',
    'http://eb-0123456789abcdef0123.localhost.evil.example:41234',
    'http://a@eb-0123456789abcdef0123.localhost:41234',
    'javascript:alert(1)//eb-0123456789abcdef0123.localhost:41234',
  ])('%j is none', (address) => {
    expect(isAddress(address)).toBe(false);
  });
});

describe('what is handed over', () => {
  const secret = 'a1'.repeat(32);
  it('is a secret, with or without the name of the host before', () => {
    expect(parseHandover(JSON.stringify({ secret }))).toEqual({ secret });
    const host = ADDRESS.slice(7);
    expect(parseHandover(JSON.stringify({ secret, host }))).toEqual({ secret, host });
  });
  it.each([
    '',
    '{}',
    JSON.stringify({ secret: '' }),
    JSON.stringify({ secret: 'a1' }),
    JSON.stringify({ secret: 'g'.repeat(64) }),
    JSON.stringify({ secret: `${secret}\n` }),
    JSON.stringify({ secret, host: 'localhost:80' }),
    JSON.stringify({ secret, host: 5 }),
    JSON.stringify([secret]),
  ])('%s is refused', (line) => {
    expect(parseHandover(line)).toBeNull();
  });
});

describe('the pause before a dead host is started again', () => {
  it('grows, and after five deaths in a row it stays down', () => {
    expect(
      [[], [0], [0, 1], [0, 1, 2], [0, 1, 2, 3], [0, 1, 2, 3, 4], [0, 1, 2, 3, 4, 5]].map(pauseBefore),
    ).toEqual([0, 0, 500, 2000, 5000, 15_000, null]);
  });
  it('starts anew after a host that ran well for two minutes', () => {
    expect(pauseBefore([0, 1, 2, 3, 4, 200_000])).toBe(0);
    expect(pauseBefore([0, 1, 2, 3, 200_000, 200_001])).toBe(500);
    expect(pauseBefore([0, 120_000])).toBe(500);
    expect(pauseBefore([0, 120_001])).toBe(0);
  });
});
