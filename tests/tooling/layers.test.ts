import { cpSync, existsSync } from 'node:fs';
import { join } from 'node:path';
import { cruise } from 'dependency-cruiser';
import { afterEach, describe, expect, it } from 'vitest';
import { checkLayers } from '../support/layers.ts';
import { layers } from '../support/run/layer-rules.ts';
import { plant, projectRoot, removeScratch, scratchProject } from './scratch.ts';

const made: string[] = [];
afterEach(() => made.splice(0).forEach(removeScratch));

function scratch(files: Readonly<Record<string, string>>): string {
  const root = scratchProject(files);
  made.push(root);
  return root;
}

const value = 'export const value = 1;\n';
const type = 'export interface Kind { readonly name: string }\n';
const take = (from: string): string => `import { value } from '${from}';\nexport const taken = value;\n`;

/** Single files that an arrow points at. */
const singles = new Set(
  Object.values(layers)
    .flat()
    .filter((to) => to.endsWith('.ts')),
);

/** One file in each layer, and imports along every arrow that the layout draws. */
function cleanTree(): Record<string, string> {
  const tree: Record<string, string> = { 'tests/a.test.ts': take('../core/usecases/a.ts') };
  for (const [layer, allowed] of Object.entries(layers)) {
    const up = layer.includes('/') ? '../../' : '../';
    const imports = allowed.map((to, n) => {
      const file = to.endsWith('.ts') ? to : `${to}/a.ts`;
      // The contract takes only types from what is computed.
      if (layer === 'core/contract' && to !== 'core/model')
        return `import type { Kind as K${n} } from '${up}${file}';\nexport type T${n} = K${n};\n`;
      return `import { value as v${n} } from '${up}${file}';\nexport const t${n} = v${n};\n`;
    });
    tree[`${layer}/a.ts`] = imports.join('') + value + type;
  }
  for (const file of singles) tree[file] = value;
  return tree;
}

/** File, its text, and the file that it must not import. */
const planted: [string, string, string][] = [
  ['core/model/bad.ts', take('../store/a.ts'), 'core/store/a.ts'],
  ['core/model/bad.ts', take('../entry/a.ts'), 'core/entry/a.ts'],
  ['core/fastening/bad.ts', take('../entry/a.ts'), 'core/entry/a.ts'],
  ['core/tally/bad.ts', take('../reinstall/a.ts'), 'core/reinstall/a.ts'],
  ['core/reinstall/bad.ts', take('../entry/a.ts'), 'core/entry/a.ts'],
  ['core/contract/bad.ts', take('../usecases/a.ts'), 'core/usecases/a.ts'],
  ['core/store/bad.ts', take('../usecases/a.ts'), 'core/usecases/a.ts'],
  ['core/store/bad.ts', take('../photos/a.ts'), 'core/photos/a.ts'],
  ['core/usecases/bad.ts', take('../host/a.ts'), 'core/host/a.ts'],
  ['core/contract/bad.ts', take('../reinstall/a.ts'), 'core/reinstall/a.ts'],
  ['core/host/bad.ts', take('../cli/a.ts'), 'core/cli/a.ts'],
  ['core/host/bad.ts', take('../reinstall/a.ts'), 'core/reinstall/a.ts'],
  ['core/cli/bad.ts', take('../../renderer/a.ts'), 'renderer/a.ts'],
  ['renderer/bad.tsx', take('../core/usecases/a.ts'), 'core/usecases/a.ts'],
  ['electron/bad.ts', take('../core/host/a.ts'), 'core/host/a.ts'],
  ['electron/bad.ts', take('../renderer/a.ts'), 'renderer/a.ts'],
  ['samples/bad.ts', take('../core/host/a.ts'), 'core/host/a.ts'],
  ['core/usecases/bad.ts', take('../../tests/help.ts'), 'tests/help.ts'],
  ['core/usecases/bad.ts', take('../../samples/a.ts'), 'samples/a.ts'],
  ['core/entry/bad.ts', "import { sep } from 'node:path';\nexport const s = sep;\n", 'path'],
  ['core/model/bad.ts', "export const load = () => import('node:fs');\n", 'fs'],
  [
    'core/tally/bad.ts',
    "import Database from 'better-sqlite3';\nexport const d = Database;\n",
    'better-sqlite3',
  ],
  ['core/fastening/bad.ts', "import { Hono } from 'hono';\nexport const h = Hono;\n", 'hono'],
  ['core/reinstall/bad.ts', "import sharp from 'sharp';\nexport const s = sharp;\n", 'sharp'],
  ['renderer/bad.ts', "import { sep } from 'node:path';\nexport const s = sep;\n", 'path'],
  ['renderer/bad.ts', "import sharp from 'sharp';\nexport const s = sharp;\n", 'sharp'],
  ['core/cli/bad.ts', take('./gone.ts'), 'gone'],
  [
    'core/model/bad.ts',
    "import type { Kind } from '../store/kind.ts';\nexport type K = Kind;\n",
    'core/store/kind.ts',
  ],
];

describe('the layer rule', () => {
  it('lets every arrow of the layout pass', async () => {
    const report = await checkLayers(scratch(cleanTree()));
    expect(report.faults).toEqual([]);
    expect(report.modules).toBe(Object.keys(layers).length + singles.size + 1);
  });

  it.each(planted)('sees that %s, with %j, imports %s', async (file, text, target) => {
    const root = scratch({
      ...cleanTree(),
      'core/store/kind.ts': type,
      'tests/help.ts': value,
      [file]: text,
    });
    const { faults } = await checkLayers(root);
    expect(faults.length).toBeGreaterThan(0);
    for (const fault of faults) expect(fault).toMatch(new RegExp(`^${file} → .*${target}`));
  });

  it('sees native code that reaches the shell by a detour', async () => {
    const root = scratch({
      ...cleanTree(),
      'core/host/launch.ts': `import { inner } from './inner.ts';\nexport const value = inner;\n`,
      'core/host/inner.ts': "import Database from 'better-sqlite3';\nexport const inner = Database;\n",
    });
    const { faults } = await checkLayers(root);
    expect(faults.join('\n')).toContain('native code never loads inside the shell');
    expect(faults.join('\n')).toContain('core/host/inner.ts');
  });

  it('fails when there is nothing to check', async () => {
    expect((await checkLayers(scratch({}))).faults).toEqual(['Expected code in core/model, got none.']);
    const noModel = await checkLayers(
      scratch({ 'core/store/a.ts': value, 'core/store/b.ts': take('./a.ts') }),
    );
    expect(noModel.faults).toEqual(['Expected code in core/model, got none.']);
  });

  it('fails when the parser sees no file at all, as one without a fitting compiler does', async () => {
    const blind: typeof cruise = async (...given) => {
      const { output, exitCode } = await cruise(...given);
      if (typeof output === 'string') throw new Error(output);
      return { exitCode, output: { ...output, modules: [] } };
    };
    const { faults, modules } = await checkLayers(scratch(cleanTree()), blind);
    expect(modules).toBe(0);
    for (const layer of Object.keys(layers)) {
      expect(faults.join('\n')).toMatch(new RegExp(`to see all \\d files of ${layer}, got 0`));
    }
  });

  it('fails when the parser passes over one file of one layer', async () => {
    const squinting: typeof cruise = async (...given) => {
      const { output, exitCode } = await cruise(...given);
      if (typeof output === 'string') throw new Error(output);
      const modules = output.modules.filter((module) => module.source !== 'core/host/launch.ts');
      return { exitCode, output: { ...output, modules } };
    };
    expect((await checkLayers(scratch(cleanTree()), squinting)).faults).toEqual([
      'Expected the layer check to see all 3 files of core/host, got 2; not seen: core/host/launch.ts.',
    ]);
  });

  it('fails when it sees files but no import', async () => {
    const { faults } = await checkLayers(scratch({ 'core/model/a.ts': value, 'core/store/a.ts': value }));
    expect(faults).toEqual(['Expected imports between 2 files, got none seen.']);
  });

  it('fails on a file that belongs to no layer', async () => {
    const root = scratch({ ...cleanTree(), 'core/misc/a.ts': value, 'core/loose.ts': value });
    const { faults } = await checkLayers(root);
    expect(faults.join('\n')).toMatch(/core\/misc\/a\.ts/);
    expect(faults.join('\n')).toMatch(/core\/loose\.ts/);
    expect(faults).toHaveLength(2);
  });

  it('fails in a copy of this project once a wrong import is planted in it, and says where', async () => {
    const root = scratch({});
    for (const folder of ['core', 'electron', 'renderer', 'samples']) {
      const from = join(projectRoot, folder);
      if (existsSync(from)) cpSync(from, join(root, folder), { recursive: true });
    }
    plant(root, { 'core/model/planted.ts': take('../store/planted.ts'), 'core/store/planted.ts': value });
    const { faults, modules } = await checkLayers(root);
    expect(modules).toBeGreaterThan(20);
    expect(faults.filter((fault) => fault.includes('planted'))).toEqual([
      'core/model/planted.ts → core/store/planted.ts: ' +
        '"core/model imports only nothing else of the project" does not allow it.',
    ]);
  });
});
