import { existsSync, readdirSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { cruise } from 'dependency-cruiser';
import type { ICruiseResult } from 'dependency-cruiser';
import { layerRules, layers } from './run/layer-rules.ts';

/** What the layer check saw, and every reason to fail it, as sentences. Empty `faults` is a pass. */
export interface LayerReport {
  readonly modules: number;
  readonly arrows: number;
  readonly faults: readonly string[];
}

const scannedFolders = ['core', 'electron', 'renderer', 'samples', 'tests'];

/** Folders that may hold no code yet; the core without its model is not a core. */
const indispensable = 'core/model';

function sourceFiles(root: string): string[] {
  return scannedFolders
    .map((folder) => join(root, folder))
    .filter((folder) => existsSync(folder))
    .flatMap((folder) => readdirSync(folder, { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).split(sep).join('/'));
}

function layerOf(file: string): string | undefined {
  return Object.keys(layers).find((layer) => file.startsWith(`${layer}/`));
}

/** The check is worth nothing for a file it did not see: a parser that is missing sees none and reports no fault. */
function unseen(onDisk: readonly string[], seen: ReadonlySet<string>): string[] {
  const faults: string[] = [];
  if (!onDisk.some((file) => file.startsWith(`${indispensable}/`))) {
    faults.push(`Expected code in ${indispensable}, got none.`);
  }
  for (const place of [...Object.keys(layers), 'tests']) {
    const files = onDisk.filter((file) => file.startsWith(`${place}/`));
    const missed = files.filter((file) => !seen.has(file));
    if (missed.length > 0) {
      faults.push(
        `Expected the layer check to see all ${files.length} files of ${place}, got ${files.length - missed.length}; ` +
          `not seen: ${missed.slice(0, 3).join(', ')}.`,
      );
    }
  }
  return faults;
}

function homeless(onDisk: readonly string[]): string[] {
  return onDisk
    .filter((file) => !file.startsWith('tests/') && layerOf(file) === undefined)
    .map((file) => `Expected every file to belong to a layer, got ${file}, which belongs to none.`);
}

function wrongArrows(result: ICruiseResult): string[] {
  return result.summary.violations.map(
    (violation) =>
      `${violation.from} → ${violation.to}${viaText(violation.via)}: "${violation.rule.name}" does not allow it.`,
  );
}

function viaText(via: readonly { readonly name: string }[] | undefined): string {
  return via === undefined || via.length < 2
    ? ''
    : ` (by way of ${via.map((step) => step.name).join(' → ')})`;
}

/**
 * Checks the imports of a checkout against the arrows of the layout.
 * @param root folder that holds core/, renderer/ and the others
 * @param look what reads the imports; another one only to try what happens when it sees too little
 */
export async function checkLayers(root: string, look: typeof cruise = cruise): Promise<LayerReport> {
  const onDisk = sourceFiles(root);
  const folders = scannedFolders.filter((folder) => onDisk.some((file) => file.startsWith(`${folder}/`)));
  if (folders.length === 0) {
    return { modules: 0, arrows: 0, faults: [`Expected code in ${indispensable}, got none.`] };
  }
  const { output } = await look(
    folders,
    {
      baseDir: root,
      ruleSet: layerRules,
      validate: true,
      tsPreCompilationDeps: true,
      doNotFollow: { path: 'node_modules' },
    },
    { exportsFields: ['exports'], conditionNames: ['import', 'require', 'node', 'default', 'types'] },
  );
  if (typeof output === 'string') throw new Error('the layer check answered in text, not in data');
  const own = output.modules.filter((module) => onDisk.includes(module.source));
  const arrows = own.reduce((sum, module) => sum + module.dependencies.length, 0);
  const faults = [...unseen(onDisk, new Set(own.map((module) => module.source))), ...homeless(onDisk)];
  if (arrows === 0) faults.push(`Expected imports between ${onDisk.length} files, got none seen.`);
  return { modules: own.length, arrows, faults: [...faults, ...wrongArrows(output)] };
}

if (import.meta.main) {
  const report = await checkLayers(resolve(import.meta.dirname, '../..'));
  for (const fault of report.faults) console.log(fault);
  console.log(`${report.modules} files, ${report.arrows} imports, ${report.faults.length} faults`);
  process.exitCode = report.faults.length === 0 ? 0 : 1;
}
