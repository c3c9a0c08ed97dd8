import { describe, expect, it } from 'vitest';
import { chromiumFlags, ensureChromium, findChromium } from '../support/chromium.ts';
import type { Machine } from '../support/chromium.ts';

const debian = 'PRETTY_NAME="Debian GNU/Linux 12 (bookworm)"\nID=debian\n';
const derived = 'NAME="Something"\nID=something\nID_LIKE=debian\n';

interface Given {
  readonly platform?: string;
  readonly env?: Record<string, string>;
  readonly isRoot?: boolean;
  readonly files?: string[];
  readonly os?: string;
  /** Exit codes of the programs run, in order; 0 when the list is at its end. */
  readonly codes?: (number | null)[];
  /** What apt-get install puts on the disk. */
  readonly brings?: string;
}

function machine(given: Given): { machine: Machine; ran: string[] } {
  const ran: string[] = [];
  const files = new Set(given.files);
  const codes = [...(given.codes ?? [])];
  const run: Machine['run'] = (program, args) => {
    ran.push([program, ...args].join(' '));
    const code = codes.length === 0 ? 0 : (codes.shift() ?? null);
    if (code === 0 && args[0] === 'install' && given.brings !== undefined) files.add(given.brings);
    return code;
  };
  return {
    ran,
    machine: {
      platform: given.platform ?? 'linux',
      env: given.env ?? {},
      isRoot: given.isRoot ?? false,
      exists: (path) => files.has(path),
      osRelease: () => given.os ?? debian,
      run,
    },
  };
}

describe('looking for a browser', () => {
  it.each([
    [
      'the one named',
      { env: { EVERYBOLT_CHROMIUM: '/my/c' }, files: ['/my/c', '/usr/bin/chromium'] },
      '/my/c',
    ],
    [
      'the first of the usual ones',
      { files: ['/usr/bin/google-chrome', '/usr/bin/chromium'] },
      '/usr/bin/chromium',
    ],
    ['another usual one', { files: ['/usr/bin/chromium-browser'] }, '/usr/bin/chromium-browser'],
    [
      'the one of a Mac',
      { platform: 'darwin', files: ['/Applications/Google Chrome.app/Contents/MacOS/Google Chrome'] },
      '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    ],
    [
      'the one of a Windows machine',
      {
        platform: 'win32',
        env: { ProgramFiles: 'C:\\Program Files' },
        files: ['C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe'],
      },
      'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
    ],
  ])('finds %s', (_, given, path) => {
    expect(findChromium(machine(given).machine)).toEqual({ path });
  });

  it('says a wrong name instead of taking another browser', () => {
    const { machine: here, ran } = machine({
      env: { EVERYBOLT_CHROMIUM: '/my/c' },
      files: ['/usr/bin/chromium'],
      isRoot: true,
    });
    const missing = 'Expected a browser at /my/c (EVERYBOLT_CHROMIUM), got no such file.';
    expect(findChromium(here)).toEqual({ missing });
    expect(ensureChromium(here)).toEqual({ missing });
    expect(ran).toEqual([]);
  });

  it('says what to install in one sentence', () => {
    expect(findChromium(machine({}).machine)).toEqual({
      missing: 'Expected Chromium for the browser tests, got none: run "apt-get install chromium" as root.',
    });
    expect(findChromium(machine({ platform: 'darwin', os: '' }).machine)).toEqual({
      missing:
        'Expected Chromium for the browser tests, got none: ' +
        'install Chromium or Chrome, or set EVERYBOLT_CHROMIUM to the path of one.',
    });
  });

  it('installs nothing by looking', () => {
    const { machine: here, ran } = machine({ isRoot: true, brings: '/usr/bin/chromium' });
    expect(findChromium(here)).toHaveProperty('missing');
    expect(ran).toEqual([]);
  });
});

describe('making sure of a browser', () => {
  it('installs it as root on Debian', () => {
    const { machine: here, ran } = machine({ isRoot: true, brings: '/usr/bin/chromium' });
    expect(ensureChromium(here)).toEqual({ path: '/usr/bin/chromium' });
    expect(ran).toEqual(['apt-get update -qq', 'apt-get install -y -qq --no-install-recommends chromium']);
  });

  it.each([
    ['there is one', { isRoot: true, files: ['/usr/bin/chromium'] }],
    ['the user is not root', { brings: '/usr/bin/chromium' }],
    ['the system is only derived from Debian', { isRoot: true, os: derived, brings: '/usr/bin/chromium' }],
    ['the system is another', { isRoot: true, platform: 'darwin', os: '' }],
  ])('installs nothing when %s', (_, given) => {
    const { machine: here, ran } = machine(given);
    ensureChromium(here);
    expect(ran).toEqual([]);
  });

  it.each([
    ['the list of packages can not be had', [100], 'it ended with code 100'],
    ['the package can not be had', [0, 100], 'it ended with code 100'],
    ['it never ends', [0, null], 'it did not finish'],
  ])('says in a sentence that %s', (_, codes, words) => {
    const chromium = ensureChromium(machine({ isRoot: true, codes }).machine);
    expect(chromium).toEqual({
      missing: expect.stringMatching(new RegExp(`^Expected "apt-get .*${words}\\.$`)),
    });
  });

  it('does not believe an installation that brought nothing', () => {
    expect(ensureChromium(machine({ isRoot: true }).machine)).toHaveProperty('missing');
  });
});

describe('the flags of the test browser', () => {
  it('give up the sandbox only for root, who has none', () => {
    expect(chromiumFlags({ isRoot: true })).toContain('--no-sandbox');
    expect(chromiumFlags({ isRoot: false })).not.toContain('--no-sandbox');
    expect(chromiumFlags({ isRoot: false })).toContain('--disable-background-networking');
  });
});
