import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';

/** What of the machine decides where a browser is and whether one can be installed. */
export interface Machine {
  readonly platform: string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly isRoot: boolean;
  readonly exists: (path: string) => boolean;
  /** The text of /etc/os-release, empty where there is none. */
  readonly osRelease: () => string;
  /** Runs a program to its end and tells its exit code; null when it did not start or was stopped. */
  readonly run: (program: string, args: readonly string[]) => number | null;
}

/** A browser for the tests, or one sentence that says what to install. */
export type Chromium = { readonly path: string } | { readonly missing: string };

const installMinutes = 10;

/** The machine this runs on. */
const thisMachine: Machine = {
  platform: process.platform,
  env: process.env,
  isRoot: process.getuid?.() === 0,
  exists: existsSync,
  osRelease: () => (existsSync('/etc/os-release') ? readFileSync('/etc/os-release', 'utf8') : ''),
  run: (program, args) =>
    spawnSync(program, args, {
      stdio: 'ignore',
      timeout: installMinutes * 60_000,
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    }).status,
};

function usualPaths({ platform, env }: Machine): string[] {
  if (platform === 'darwin') {
    const programs = ['Chromium', 'Google Chrome', 'Microsoft Edge'];
    const folders = ['/Applications', `${env['HOME'] ?? ''}/Applications`];
    return folders.flatMap((folder) =>
      programs.map((name) => `${folder}/${name}.app/Contents/MacOS/${name}`),
    );
  }
  if (platform === 'win32') {
    const programs = [
      'Chromium\\Application\\chrome.exe',
      'Google\\Chrome\\Application\\chrome.exe',
      'Microsoft\\Edge\\Application\\msedge.exe',
    ];
    const folders = [env['LOCALAPPDATA'], env['ProgramFiles'], env['ProgramFiles(x86)']];
    return folders
      .filter((folder) => folder !== undefined && folder !== '')
      .flatMap((folder) => programs.map((name) => `${folder}\\${name}`));
  }
  return ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge']
    .map((name) => `/usr/bin/${name}`)
    .concat('/snap/bin/chromium');
}

/** Debian itself: on distributions derived from it the package of this name may only point to another store. */
function isDebian(machine: Machine): boolean {
  return machine.platform === 'linux' && /^ID="?debian"?$/m.test(machine.osRelease());
}

/** Looks for a Chromium: EVERYBOLT_CHROMIUM first, then the places where systems usually put one. Installs nothing. */
export function findChromium(machine: Machine = thisMachine): Chromium {
  const named = machine.env['EVERYBOLT_CHROMIUM'];
  if (named !== undefined && named !== '') {
    // A wrong name is said, not passed over: another browser than the one asked for would answer.
    return machine.exists(named)
      ? { path: named }
      : { missing: `Expected a browser at ${named} (EVERYBOLT_CHROMIUM), got no such file.` };
  }
  const path = usualPaths(machine).find(machine.exists);
  if (path !== undefined) return { path };
  const how = isDebian(machine)
    ? 'run "apt-get install chromium" as root'
    : 'install Chromium or Chrome, or set EVERYBOLT_CHROMIUM to the path of one';
  return { missing: `Expected Chromium for the browser tests, got none: ${how}.` };
}

/** Like findChromium, and where there is none, installs it as root on Debian (some minutes). Never throws. */
export function ensureChromium(machine: Machine = thisMachine): Chromium {
  const found = findChromium(machine);
  const named = (machine.env['EVERYBOLT_CHROMIUM'] ?? '') !== '';
  if ('path' in found || named || !machine.isRoot || !isDebian(machine)) return found;
  const steps = [
    ['update', '-qq'],
    ['install', '-y', '-qq', '--no-install-recommends', 'chromium'],
  ];
  for (const args of steps) {
    const code = machine.run('apt-get', args);
    if (code !== 0) {
      const how = code === null ? 'it did not finish' : `it ended with code ${code}`;
      return {
        missing: `Expected "apt-get ${args.join(' ')}" to bring Chromium for the browser tests, got: ${how}.`,
      };
    }
  }
  return findChromium(machine);
}

/** Arguments for a Chromium that only serves tests: no sandbox where root has none, and no calls home. */
export function chromiumFlags(machine: Pick<Machine, 'isRoot'> = thisMachine): string[] {
  return [
    ...(machine.isRoot ? ['--no-sandbox'] : []),
    '--disable-gpu',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
  ];
}
