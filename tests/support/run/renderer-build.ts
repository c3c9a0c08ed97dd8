import { createHash } from 'node:crypto';
import { existsSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { endedText } from './outcome.ts';
import { runNode } from './process.ts';

/** All that the built window is made of. */
const inputs = [
  'renderer',
  'core/contract',
  'core/model',
  'core/entry',
  'core/fastening',
  'index.html',
  'vite.config.ts',
  'tsconfig.json',
  'package-lock.json',
];

const buildLimitMinutes = 5;

function filesBelow(path: string): string[] {
  if (!existsSync(path)) return [];
  if (statSync(path).isFile()) return [path];
  return readdirSync(path, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
}

/**
 * A digest of everything that the window is built from: names and bytes, not times, which a checkout changes.
 * @param root the project's folder
 */
export function rendererDigest(root: string): string {
  const hash = createHash('sha256');
  const files = inputs.flatMap((input) => filesBelow(join(root, input)));
  for (const file of files.toSorted()) {
    const bytes = readFileSync(file);
    hash.update(`${relative(root, file).split(sep).join('/')}\0${bytes.length}\0`).update(bytes);
  }
  return hash.digest('hex');
}

const built = 'dist/renderer';
const stamp = `${built}/.built-from`;

/** Whether dist/renderer/ is what the present sources build to. A build by hand removes the stamp, so it is built once more. */
export function isBuilt(root: string): boolean {
  const file = join(root, stamp);
  return existsSync(file) && readFileSync(file, 'utf8') === rendererDigest(root);
}

/** Builds the window into dist/renderer/ unless it is up to date. Throws with a sentence when it cannot be built. */
export async function buildRenderer(root: string): Promise<'built' | 'up to date'> {
  if (isBuilt(root)) return 'up to date';
  const digest = rendererDigest(root);
  const vite = join(root, 'node_modules/vite/bin/vite.js');
  const ended = await runNode({ args: [vite, 'build'], cwd: root, limitMinutes: buildLimitMinutes });
  if (ended.code !== 0 || !existsSync(join(root, built))) {
    const tail = ended.output.trimEnd().split('\n').slice(-15).join('\n');
    throw new Error(`Expected the window to build into ${built}/, got: vite ${endedText(ended)}.\n${tail}`);
  }
  writeFileSync(join(root, stamp), digest);
  return 'built';
}
