import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';

/** The project's own folder. */
export const projectRoot = resolve(import.meta.dirname, '../..');

/** A folder that looks like a project: given files, and the installed packages by a link. */
export function scratchProject(files: Readonly<Record<string, string>>): string {
  const root = mkdtempSync(join(tmpdir(), 'everybolt-scratch-'));
  symlinkSync(join(projectRoot, 'node_modules'), join(root, 'node_modules'), 'junction');
  plant(root, files);
  return root;
}

/** Writes files into a folder, with the folders they need. */
export function plant(root: string, files: Readonly<Record<string, string>>): void {
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(root, name)), { recursive: true });
    writeFileSync(join(root, name), text);
  }
}

/** Removes a scratch folder; the link to the packages goes, the packages stay. */
export function removeScratch(root: string): void {
  rmSync(root, { recursive: true, force: true });
}
