import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { stripTypeScriptTypes } from 'node:module';
import { join } from 'node:path';

/**
 * The shell's preload, as plain script: a sandboxed preload is read by the window's own loader, which knows neither
 * types nor modules. Returns the path of the file written.
 */
export function preparePreload(root: string): string {
  const script = stripTypeScriptTypes(readFileSync(join(root, 'electron', 'preload.cts'), 'utf8'));
  const folder = join(root, 'dist', 'electron');
  mkdirSync(folder, { recursive: true });
  const file = join(folder, 'preload.cjs');
  writeFileSync(file, script);
  return file;
}
