import { randomBytes } from 'node:crypto';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import * as electron from 'electron';
import { hostProcess } from './host-process.ts';
import { runShell } from './shell.ts';

/** Started by `npm start` inside the runtime, with everything it needs named. */
const { values } = parseArgs({
  args: process.argv.slice(2),
  options: { workshop: { type: 'string' }, screens: { type: 'string' }, preload: { type: 'string' } },
  strict: false,
  allowPositionals: true,
});
const named = (value: string | boolean | undefined, name: string): string => {
  if (typeof value === 'string' && value !== '') return resolve(value);
  throw new Error(`Expected --${name}, got nothing. Start the program with "npm start".`);
};
const root = resolve(import.meta.dirname, '..');
const workshop = named(values['workshop'], 'workshop');

process.once('SIGTERM', () => electron.app.quit());
// Not awaited: the runtime says that it is ready only after this module has been read to its end.
runShell(electron, {
  workshop,
  preload: named(values['preload'], 'preload'),
  platform: process.platform,
  secret: randomBytes(32).toString('hex'),
  start: hostProcess({
    node: named(process.env['EVERYBOLT_NODE'] ?? join(root, 'node_modules', '.bin', 'node'), 'node'),
    main: join(root, 'core', 'host', 'main.ts'),
    workshop,
    screens: named(values['screens'], 'screens'),
  }),
}).catch((error: unknown) => {
  console.error(error);
  electron.app.exit(1);
});
