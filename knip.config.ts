import type { KnipConfig } from 'knip';

/** Turns the imports of a style sheet into those of a module, so that fonts and sheets are followed too. */
function importsOfStyles(text: string): string {
  return [...text.matchAll(/@import\s+['"]([^'"]+)['"]/g)].map((found) => `import '${found[1]}';`).join('\n');
}

export default {
  entry: [
    // What is started as a process of its own: by a person, by the shell, or by another process through its path.
    'core/cli/{main,start}.ts',
    'core/host/main.ts',
    'core/photos/worker.ts',
    'electron/{main,packaged,preload}.{ts,cts}',
    'electron/package/package.ts',
    'renderer/main.tsx',
    'samples/**/*.ts',
    'tests/**/*-child.ts',
    'tests/bench/**/*.ts',
    'tests/mutants/*.ts',
    // Read by dependency-cruiser when it is used by hand.
    '.dependency-cruiser.mjs',
  ],
  project: [
    'core/**/*.{ts,tsx}',
    'electron/**/*.{ts,cts}',
    'renderer/**/*.{ts,tsx,css}',
    'samples/**/*.ts',
    'tests/**/*.{ts,tsx}',
  ],
  compilers: { css: importsOfStyles },
  // What an exported function is made of may be exported with it: it is how the function is read and tried.
  ignoreExportsUsedInFile: true,
  // Debian's, the outside reference for photo facts; .ci/run installs it.
  ignoreBinaries: ['exiftool'],
} satisfies KnipConfig;
