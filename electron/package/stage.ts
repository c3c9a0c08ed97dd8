import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { stripTypeScriptTypes } from 'node:module';
import { join } from 'node:path';
import { build } from 'vite';
import { HOST_FOLDER, nodeName } from './places.ts';

/** What a stage is made of: the project, and where it goes. */
export interface StageOptions {
  readonly root: string;
  /** The built screens. */
  readonly screens: string;
  readonly out: string;
  readonly platform: NodeJS.Platform;
  readonly arch: string;
  /** How the packages come into the host's folder; installing is the real way, a test may link what is there. */
  readonly packages: (host: string) => void;
}

/** Everything of the project that the host reads while it runs. */
const HOST_PARTS = ['core', 'migrations', 'samples/jobs', 'samples/photos', 'package.json'] as const;

/** Installs what the program needs to run, and nothing that only builds or tests it. */
export function installPackages(root: string): (host: string) => void {
  return (host) => {
    for (const name of ['package-lock.json', '.npmrc']) cpSync(join(root, name), join(host, name));
    const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
    execFileSync(npm, ['ci', '--omit=dev', '--no-audit', '--no-fund'], {
      cwd: host,
      stdio: ['ignore', 2, 2],
      shell: process.platform === 'win32',
    });
    // Node lies in a folder of its own; once is enough.
    const modules = join(host, 'node_modules');
    for (const name of readdirSync(modules))
      if (/^node-(linux|win|darwin)-/.test(name)) rmSync(join(modules, name), { recursive: true });
    rmSync(join(modules, '.bin'), { recursive: true, force: true });
  };
}

/**
 * Lays out what is packed: `app` is the shell in one file with its preload, `host` the whole host as plain files with
 * its own Node. Answers with both folders. The screens must have been built.
 */
export async function stage(options: StageOptions): Promise<{ app: string; host: string }> {
  const { root, out } = options;
  const [app, host] = [join(out, 'app'), join(out, HOST_FOLDER)];
  if (!existsSync(join(options.screens, 'index.html')))
    throw new Error('Expected the screens to be built, found none: run "npm run build" first.');
  rmSync(out, { recursive: true, force: true });
  await stageShell(root, app);
  mkdirSync(host, { recursive: true });
  for (const part of HOST_PARTS) cpSync(join(root, part), join(host, part), { recursive: true });
  cpSync(options.screens, join(host, 'dist', 'renderer'), { recursive: true });
  options.packages(host);
  stageNode(options, host);
  return { app, host };
}

async function stageShell(root: string, app: string): Promise<void> {
  await build({
    configFile: false,
    root,
    logLevel: 'warn',
    build: {
      ssr: join(root, 'electron', 'packaged.ts'),
      outDir: app,
      emptyOutDir: true,
      target: 'node24',
      minify: false,
      rolldownOptions: { external: ['electron'], output: { entryFileNames: 'shell.mjs' } },
    },
  });
  const preload = readFileSync(join(root, 'electron', 'preload.cts'), 'utf8');
  writeFileSync(join(app, 'preload.cjs'), stripTypeScriptTypes(preload));
  const { version, description, license } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
    version: string;
    description: string;
    license: string;
  };
  const manifest = {
    name: 'everybolt',
    productName: 'Everybolt',
    version,
    description,
    license,
    main: 'shell.mjs',
  };
  writeFileSync(join(app, 'package.json'), `${JSON.stringify(manifest, null, 2)}\n`);
}

/** The pinned Node of this platform where there is one, else the Node that runs this, which must be 24 or newer. */
function stageNode({ root, platform, arch }: StageOptions, host: string): void {
  const family = platform === 'win32' ? 'win' : platform;
  const name = nodeName(platform);
  const pinned = join(root, 'node_modules', `node-${family}-${arch}`, 'bin', name);
  const here = platform === process.platform && arch === process.arch ? process.execPath : null;
  const from = existsSync(pinned) ? pinned : here;
  if (from === null)
    throw new Error(`Expected a Node for ${platform} on ${arch}, found none: pack on that platform.`);
  if (from === here && Number(process.versions.node.split('.')[0]) < 24)
    throw new Error(`Expected Node 24 or newer to be packed, got ${process.versions.node}.`);
  const folder = join(host, 'runtime');
  mkdirSync(folder, { recursive: true });
  cpSync(from, join(folder, name), { dereference: true });
  chmodSync(join(folder, name), 0o755);
}
