import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { flipFuses } from '@electron/fuses';
import { packager } from '@electron/packager';
import { FUSES } from './fuses.ts';
import { installPackages, stage } from './stage.ts';
import { tryHost } from './try-host.ts';

/**
 * `npm run package`: packs the desktop program for this platform into `dist/packed`. Lays out shell and host, starts
 * the laid-out host, then fetches the runtime and puts all of it together. `--stage-only` ends before the runtime.
 */
const ROOT = resolve(import.meta.dirname, '..', '..');
const { values } = parseArgs({ options: { 'stage-only': { type: 'boolean', default: false } } });
const { platform, arch } = process;
const say = (line: string) => process.stdout.write(`${line}\n`);

const staged = await stage({
  root: ROOT,
  screens: join(ROOT, 'dist', 'renderer'),
  out: join(ROOT, 'dist', 'stage'),
  platform,
  arch,
  packages: installPackages(ROOT),
});
say(`Laid out: ${staged.app}, ${staged.host}`);
say(`The laid-out host starts with its own Node and answered at ${await tryHost(staged.host, platform)}.`);
if (values['stage-only']) say('The runtime was not fetched and nothing was packed, as asked.');
else await pack();

/** The program file whose fuses are set, in the folder that the packer gave. */
function programIn(folder: string): string {
  if (platform === 'darwin') return join(folder, 'Everybolt.app');
  const wanted = platform === 'win32' ? 'Everybolt.exe' : 'Everybolt';
  if (!readdirSync(folder).includes(wanted)) throw new Error(`Expected ${wanted} in ${folder}.`);
  return join(folder, wanted);
}

async function pack(): Promise<void> {
  const manifest = join(ROOT, 'node_modules', 'electron', 'package.json');
  const { version } = JSON.parse(readFileSync(manifest, 'utf8')) as { version: string };
  let folders: string[];
  try {
    folders = await packager({
      dir: staged.app,
      out: join(ROOT, 'dist', 'packed'),
      name: 'Everybolt',
      executableName: 'Everybolt',
      electronVersion: version,
      asar: true,
      overwrite: true,
      prune: false,
      extraResource: [staged.host],
      quiet: true,
    });
  } catch (error) {
    say(`Expected Electron's runtime ${version} to be fetched and packed, got: ${String(error)}`);
    say('Everything before it was done: see the laid-out folders above. Nothing was packed.');
    process.exitCode = 1;
    return;
  }
  for (const folder of folders) {
    await flipFuses(programIn(folder), FUSES);
    say(`Packed: ${folder}`);
  }
}
