import { renameSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { buildRenderer, isBuilt, rendererDigest } from '../support/run/renderer-build.ts';
import { plant, removeScratch, scratchProject } from './scratch.ts';

const made: string[] = [];
afterEach(() => made.splice(0).forEach(removeScratch));

function scratch(): string {
  const root = scratchProject({
    'package.json': '{"type":"module"}',
    'vite.config.ts': "export default { build: { outDir: 'dist/renderer' } };\n",
    'index.html': '<script type="module" src="/renderer/main.ts"></script>\n',
    'renderer/main.ts': "document.title = 'one';\n",
    'core/model/a.ts': 'export const a = 1;\n',
    'core/store/a.ts': 'export const a = 1;\n',
  });
  made.push(root);
  return root;
}

describe('the built window', () => {
  it('is built once, and again only when its sources have changed', async () => {
    const root = scratch();
    expect(isBuilt(root)).toBe(false);
    expect(await buildRenderer(root)).toBe('built');
    expect(await buildRenderer(root)).toBe('up to date');
    plant(root, { 'renderer/main.ts': "document.title = 'two';\n" });
    expect(await buildRenderer(root)).toBe('built');
  });

  it('goes stale by what it is made of, and by nothing else', () => {
    const root = scratch();
    const before = rendererDigest(root);
    plant(root, { 'core/store/a.ts': 'export const a = 2;\n' });
    utimesSync(join(root, 'renderer/main.ts'), 1, 1);
    expect(rendererDigest(root)).toBe(before);
    plant(root, { 'core/model/a.ts': 'export const a = 2;\n' });
    const changed = rendererDigest(root);
    expect(changed).not.toBe(before);
    renameSync(join(root, 'core/model/a.ts'), join(root, 'core/model/b.ts'));
    expect(rendererDigest(root)).not.toBe(changed);
  });

  it('says why it can not be built, and is not taken for built', async () => {
    const root = scratch();
    await buildRenderer(root);
    plant(root, { 'renderer/main.ts': "import './gone.ts';\n" });
    await expect(buildRenderer(root)).rejects.toThrow(
      /^Expected the window to build into dist\/renderer\/, got: vite ended/,
    );
    expect(isBuilt(root)).toBe(false);
  });
});
