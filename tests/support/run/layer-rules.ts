import type { IFlattenedRuleSet } from 'dependency-cruiser';

/**
 * Which layer may import which: the arrows of the layout, A → B means A imports B.
 * What is not listed is forbidden. An entry that ends in `.ts` is one file, every other is a folder.
 * The type `import type` counts like any other import: a type that points the wrong way is a wrong arrow too.
 */
export const layers: Readonly<Record<string, readonly string[]>> = {
  'core/model': [],
  'core/entry': ['core/fastening', 'core/model'],
  'core/fastening': ['core/model'],
  'core/tally': ['core/model'],
  // Where things stand on a photo or on the depth line: drawn by the window and on paper alike.
  'core/drawing': ['core/fastening', 'core/reinstall', 'core/model'],
  'core/reinstall': ['core/tally', 'core/fastening', 'core/model'],
  // Only the types of what is computed travel to the window; the rule for types below holds that.
  'core/contract': ['core/model', 'core/reinstall', 'core/tally'],
  'core/store': ['core/model'],
  'core/photos': ['core/model'],
  'core/record': ['core/drawing', 'core/model'],
  'core/usecases': [
    'core/store',
    'core/photos',
    'core/record',
    'core/drawing',
    'core/reinstall',
    'core/tally',
    'core/entry',
    'core/fastening',
    'core/contract',
    'core/model',
  ],
  // Host and command line open the workshop that the use cases then work on.
  'core/host': ['core/usecases', 'core/store', 'core/photos', 'core/contract', 'core/model'],
  // The start command is what starts the host where there is no shell, so it knows the same launch contract.
  'core/cli': [
    'core/usecases',
    'core/store',
    'core/photos',
    'core/host',
    'core/reinstall',
    'core/tally',
    'core/fastening',
    'core/contract',
    'core/model',
  ],
  // The packed program starts without arguments, so it must find the same workshop as everybody else.
  electron: ['core/host/launch.ts', 'core/host/private-folder.ts'],
  renderer: ['core/contract', 'core/model', 'core/entry', 'core/fastening', 'core/drawing'],
  // The sample is made by the same operations as every job, and read with the same planner.
  samples: ['core/usecases', 'core/store', 'core/photos', 'core/reinstall', 'core/cli', 'core/model'],
};

/** Layers that compute and do nothing else: no clock, no files, no Node, so that the window can run them too. */
const pureLayers = [
  'core/model',
  'core/entry',
  'core/fastening',
  'core/tally',
  'core/reinstall',
  'core/drawing',
];

/** Layers whose code ends up in a browser window. */
const windowLayers = ['renderer', 'core/contract'];

/** Packages with native code or a server inside: nothing for a window, nor for the pure layers. */
const serverPackages = '(^|/)node_modules/(@types/)?(better-sqlite3|sharp|hono|@hono)/';

const anyLayer = '^(core|electron|renderer|samples)/';

function pattern(path: string): string {
  const escaped = path.replaceAll('.', '\\.');
  return path.endsWith('.ts') ? `^${escaped}$` : `^${escaped}/`;
}

function arrow(
  layer: string,
  allowed: readonly string[],
): NonNullable<IFlattenedRuleSet['forbidden']>[number] {
  const list = allowed.length === 0 ? 'nothing else of the project' : allowed.join(', ');
  return {
    name: `${layer} imports only ${list}`,
    severity: 'error',
    from: { path: pattern(layer) },
    to: { path: anyLayer, pathNot: [pattern(layer), ...allowed.map(pattern)] },
  };
}

/** The rules in the form that dependency-cruiser reads. */
export const layerRules: IFlattenedRuleSet = {
  forbidden: [
    ...Object.entries(layers).map(([layer, allowed]) => arrow(layer, allowed)),
    {
      name: 'the contract takes only types from what is computed',
      severity: 'error',
      from: { path: pattern('core/contract') },
      to: { path: ['core/reinstall', 'core/tally'].map(pattern), dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'nothing imports tests',
      severity: 'error',
      // Settings of the test runners at the top of the project are part of the tests.
      from: { pathNot: ['^tests/', '^[^/]+\\.config\\.ts$'] },
      to: { path: '^tests/' },
    },
    {
      name: 'pure layers import no Node module',
      severity: 'error',
      from: { path: pureLayers.map(pattern) },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'pure layers import no package but zod',
      severity: 'error',
      from: { path: pureLayers.map(pattern) },
      to: { path: '(^|/)node_modules/', pathNot: '(^|/)node_modules/zod/' },
    },
    {
      name: 'what runs in a window imports no Node module',
      severity: 'error',
      from: { path: windowLayers.map(pattern) },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'what runs in a window imports no database, picture or server package',
      severity: 'error',
      from: { path: windowLayers.map(pattern) },
      to: { path: serverPackages },
    },
    {
      // Even by a detour: the shell's launch contract must not pull native code into its process.
      name: 'native code never loads inside the shell',
      severity: 'error',
      from: { path: '^electron/' },
      to: { path: '(^|/)node_modules/(better-sqlite3|sharp)/', reachable: true },
    },
    {
      // An import that leads nowhere is an arrow that nobody checks.
      name: 'every import leads somewhere',
      severity: 'error',
      from: { path: '^(core|electron|renderer|samples|tests)/' },
      to: { couldNotResolve: true },
    },
  ],
};
