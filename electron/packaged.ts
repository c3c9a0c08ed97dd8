import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import * as electron from 'electron';
import { defaultWorkshop, here } from '../core/host/private-folder.ts';
import { hostProcess } from './host-process.ts';
import { packedPaths } from './package/places.ts';
import { runShell } from './shell.ts';

/** Start of the packed program: the host lies beside the shell as plain files, with a Node of its own. */
const { values } = parseArgs({
  args: process.argv.slice(1),
  options: { workshop: { type: 'string' }, smoke: { type: 'boolean' } },
  strict: false,
  allowPositionals: true,
});
const workshop = typeof values['workshop'] === 'string' ? values['workshop'] : defaultWorkshop(here());
const paths = packedPaths(process.resourcesPath, process.platform);

process.once('SIGTERM', () => electron.app.quit());
// Not awaited: the runtime says that it is ready only after this module has been read to its end.
runShell(electron, {
  workshop,
  preload: join(import.meta.dirname, 'preload.cjs'),
  platform: process.platform,
  secret: randomBytes(32).toString('hex'),
  start: hostProcess({ node: paths.node, main: paths.main, workshop, screens: paths.screens }),
  // For a build machine: the window has shown the page, and that is all that was asked.
  ...(values['smoke'] === true
    ? {
        onShown: () => {
          process.stdout.write('everybolt: shown\n');
          electron.app.quit();
        },
      }
    : {}),
}).catch((error: unknown) => {
  console.error(error);
  electron.app.exit(1);
});
