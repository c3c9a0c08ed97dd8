import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { screensAreOld } from '../../core/cli/screens.ts';
import { codeInWords } from '../../core/cli/way-in.ts';
import { chooseWindow, type Computer, findRuntime, onPath } from '../../core/cli/window-choice.ts';

/** What `npm start` decides before it does anything. */

const computer: Computer = {
  platform: 'linux',
  env: { DISPLAY: ':0' },
  runtime: null,
  hasProgram: () => true,
};

describe('how the workshop is shown', () => {
  it.each<[string, Partial<Computer>, string, RegExp]>([
    ['a display and the runtime', { runtime: '/e' }, 'desktop', /runtime .* is here/],
    ['a display only', {}, 'browser', /runtime .* is not here/],
    ['Wayland only', { env: { WAYLAND_DISPLAY: 'wayland-0' } }, 'browser', /is not here/],
    ['no display', { env: {} }, 'code', /no display/],
    ['an empty display', { env: { DISPLAY: '' } }, 'code', /no display/],
    ['no display, though the runtime is there', { env: {}, runtime: '/e' }, 'code', /no display/],
    ['a machine that builds', { env: { DISPLAY: ':0', CI: 'true' }, runtime: '/e' }, 'code', /CI is set/],
    ['nothing to open a browser with', { hasProgram: () => false }, 'code', /no xdg-open/],
    ['macOS', { platform: 'darwin', env: {} }, 'browser', /is not here/],
    ['Windows', { platform: 'win32', env: {} }, 'browser', /is not here/],
    ['macOS from afar', { platform: 'darwin', env: { SSH_CONNECTION: 'x' } }, 'code', /remote login/],
  ])('%s', (_, change, kind, why) => {
    const choice = chooseWindow({ ...computer, ...change });
    expect(choice.kind).toBe(kind);
    expect(choice.why).toMatch(why);
  });

  it('opens files with what each system has for it, the path as one argument of its own', () => {
    const opener = (platform: NodeJS.Platform) => {
      const choice = chooseWindow({ ...computer, platform });
      return choice.kind === 'browser' ? choice.opener : null;
    };
    expect(opener('linux')).toEqual({ program: 'xdg-open', arguments: [] });
    expect(opener('darwin')).toEqual({ program: 'open', arguments: [] });
    expect(opener('win32')).toEqual({ program: 'explorer.exe', arguments: [] });
  });
});

describe('what lies on the disk', () => {
  let root = '';
  beforeEach(() => {
    root = mkdtempSync(join(tmpdir(), 'everybolt-start-'));
  });
  afterEach(() => {
    rmSync(root, { recursive: true, force: true });
  });
  const put = (path: string, ageSeconds: number) => {
    const file = join(root, path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, 'x');
    const then = Date.now() / 1000 - ageSeconds;
    utimesSync(file, then, then);
    utimesSync(dirname(file), then, then);
  };

  it('screens are old when missing, or older than anything they are built from', () => {
    put('renderer/screens/deep/Screen.tsx', 100);
    put('renderer/index.html', 100);
    expect(screensAreOld(root)).toBe(true);
    put('dist/renderer/index.html', 50);
    for (const folder of ['renderer', 'renderer/screens']) {
      const then = Date.now() / 1000 - 100;
      utimesSync(join(root, folder), then, then);
    }
    expect(screensAreOld(root)).toBe(false);
    put('renderer/screens/deep/Screen.tsx', 10);
    expect(screensAreOld(root)).toBe(true);
  });
  it.each([
    'core/contract/contract.ts',
    'core/model/job.ts',
    'core/entry/index.ts',
    'vite.config.ts',
    'package-lock.json',
  ])('screens are old when %s is newer', (source) => {
    put('dist/renderer/index.html', 50);
    put(source, 100);
    const asBefore = screensAreOld(root);
    put(source, 10);
    expect([asBefore, screensAreOld(root)]).toEqual([false, true]);
  });
  it('the runtime is looked for, never fetched', () => {
    expect(findRuntime(root, {})).toBeNull();
    put('node_modules/electron/path.txt', 0);
    writeFileSync(join(root, 'node_modules/electron/path.txt'), 'runtime\n');
    expect(findRuntime(root, {})).toBeNull();
    put('node_modules/electron/dist/runtime', 0);
    expect(findRuntime(root, {})).toBe(join(root, 'node_modules/electron/dist/runtime'));
    expect(findRuntime(root, { ELECTRON_OVERRIDE_DIST_PATH: join(root, 'elsewhere') })).toBeNull();
  });
  it('a program is looked for on the path', () => {
    put('bin/xdg-open', 0);
    expect(onPath('xdg-open', { PATH: `/nowhere:${join(root, 'bin')}` })).toBe(true);
    expect(onPath('xdg-open', { PATH: '/nowhere:' })).toBe(false);
    expect(onPath('xdg-open', {})).toBe(false);
  });
});

describe('a code', () => {
  it('is said in figures and in words', () => {
    expect(codeInWords('47190238')).toBe('4719 0238 (four seven one nine, zero two three eight)');
  });
});
