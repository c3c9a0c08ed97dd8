import {
  existsSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
  mkdirSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { FuseV1Options } from '@electron/fuses';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FUSES } from '../../electron/package/fuses.ts';
import { packedPaths } from '../../electron/package/places.ts';
import { stage } from '../../electron/package/stage.ts';
import { tryHost } from '../../electron/package/try-host.ts';

/** What is packed, laid out for real, up to the runtime, which is not fetched here: the window itself is not tried. */

const ROOT = resolve(import.meta.dirname, '..', '..');
const { platform, arch } = process;
let folder = '';
let staged = { app: '', host: '' };

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'everybolt-stage-'));
  const screens = join(folder, 'screens');
  mkdirSync(screens);
  writeFileSync(join(screens, 'index.html'), '<!doctype html><title>Everybolt</title>');
  staged = await stage({
    root: ROOT,
    screens,
    out: join(folder, 'stage'),
    platform,
    arch,
    // The real way installs them anew; linked, they are the same packages.
    packages: (host) => symlinkSync(join(ROOT, 'node_modules'), join(host, 'node_modules')),
  });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the packed program', () => {
  it('has a host of plain files that starts with its own Node', async () => {
    expect(await tryHost(staged.host, platform)).toMatch(/^http:\/\/eb-[0-9a-f]{20}\.localhost:\d+$/);
    expect(existsSync(join(staged.host, 'samples', 'jobs', 'half-back.json'))).toBe(true);
  });

  it('has a shell in one script, which needs nothing but the runtime and Node', () => {
    const shell = readFileSync(join(staged.app, 'shell.mjs'), 'utf8');
    const wanted = [...shell.matchAll(/^import .*? from "([^"]+)"/gm)].map(([, name]) => name);
    expect(wanted.every((name) => name === 'electron' || name?.startsWith('node:'))).toBe(true);
    expect(wanted).toContain('electron');
    const preload = readFileSync(join(staged.app, 'preload.cjs'), 'utf8');
    expect(preload).toContain('exposeInMainWorld');
    expect(() => new Function('require', preload)).not.toThrow();
    const manifest = JSON.parse(readFileSync(join(staged.app, 'package.json'), 'utf8')) as { main: string };
    expect(existsSync(join(staged.app, manifest.main))).toBe(true);
  });

  it('is refused where the screens were not built', async () => {
    const bare = { root: ROOT, screens: join(folder, 'none'), out: join(folder, 'bare') };
    await expect(stage({ ...bare, platform, arch, packages: () => undefined })).rejects.toThrow(
      /npm run build/,
    );
  });

  it('decides every fuse of the runtime: no Node by another name, nothing read past the archive', () => {
    const all = Object.values(FuseV1Options).filter((value) => typeof value === 'number');
    for (const fuse of all) expect([fuse, typeof FUSES[fuse]]).toEqual([fuse, 'boolean']);
    expect(FUSES[FuseV1Options.RunAsNode]).toBe(false);
    expect(FUSES[FuseV1Options.OnlyLoadAppFromAsar]).toBe(true);
  });

  it('finds its parts on each platform', () => {
    expect(packedPaths('/r', 'linux').node).toBe(join('/r', 'host', 'runtime', 'node'));
    expect(packedPaths('/r', 'win32').node).toBe(join('/r', 'host', 'runtime', 'node.exe'));
    expect(packedPaths('/r', 'darwin').main).toBe(join('/r', 'host', 'core', 'host', 'main.ts'));
  });
});
