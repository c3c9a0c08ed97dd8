import { spawn } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { ok, type Result, refuse } from '../model/result.ts';

/** What the screens are built from, below the project. */
const SOURCES = [
  'renderer',
  'core/contract',
  'core/model',
  'core/entry',
  'core/fastening',
  'vite.config.ts',
  'package-lock.json',
] as const;

/** Whether the built screens are missing or older than what they are built from. */
export function screensAreOld(root: string): boolean {
  const built = changedAt(join(root, 'dist', 'renderer', 'index.html'));
  return built === 0 || SOURCES.some((source) => newestBelow(join(root, source)) > built);
}

/** Builds the screens with Vite. What it has to say goes to standard error. */
export async function buildScreens(root: string): Promise<Result<null>> {
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  if (changedAt(vite) === 0)
    return refuse('not-found', 'Expected the parts that build the screens, got none: run "npm ci" first.');
  const child = spawn(process.execPath, [vite, 'build', '--logLevel', 'warn'], {
    cwd: root,
    stdio: ['ignore', 2, 2],
  });
  const code = await new Promise<number | null>((resolve) => {
    child.once('error', () => resolve(null));
    child.once('exit', resolve);
  });
  return code === 0
    ? ok(null)
    : refuse('damaged', `Expected the screens to be built, got an end with ${code ?? 'no'} code; see above.`);
}

/** Time of the newest change in a folder and below, in milliseconds; 0 when it is not there. */
function newestBelow(path: string): number {
  const facts = statSync(path, { throwIfNoEntry: false });
  if (!facts) return 0;
  if (!facts.isDirectory()) return facts.mtimeMs;
  let newest = facts.mtimeMs;
  for (const name of readdirSync(path)) newest = Math.max(newest, newestBelow(join(path, name)));
  return newest;
}

function changedAt(path: string): number {
  return statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0;
}
