import { existsSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** What of this computer decides how the workshop is shown. */
export interface Computer {
  readonly platform: NodeJS.Platform;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Path of the desktop runtime's program, null when it is not there. */
  readonly runtime: string | null;
  /** Whether a program of this name can be started. */
  readonly hasProgram: (name: string) => boolean;
}

/** How the workshop is shown, and why that way, as the end of a sentence. */
export type WindowChoice =
  | { readonly kind: 'desktop'; readonly runtime: string; readonly why: string }
  | { readonly kind: 'browser'; readonly opener: Opener; readonly why: string }
  | { readonly kind: 'code'; readonly why: string };

/** The program that opens a file with what the user has chosen for it; the file's path comes last. */
export interface Opener {
  readonly program: string;
  readonly arguments: readonly string[];
}

/** A window of its own where its runtime is there; else the browser; else, with no display, a code to type. */
export function chooseWindow(computer: Computer): WindowChoice {
  const blind = whyBlind(computer);
  if (blind !== null) return { kind: 'code', why: blind };
  if (computer.runtime !== null)
    return { kind: 'desktop', runtime: computer.runtime, why: 'the runtime for a window of its own is here' };
  const opener = OPENERS[computer.platform] ?? { program: 'xdg-open', arguments: [] };
  if (!computer.hasProgram(opener.program))
    return { kind: 'code', why: `there is no ${opener.program} here to open a browser with` };
  return { kind: 'browser', opener, why: 'the runtime for a window of its own is not here' };
}

const OPENERS: Partial<Record<NodeJS.Platform, Opener>> = {
  darwin: { program: 'open', arguments: [] },
  // The shell's own "start" would read the path as a command line; this takes it as one argument.
  win32: { program: 'explorer.exe', arguments: [] },
};

/** Why nobody would see a window here, or null. */
function whyBlind({ platform, env }: Computer): string | null {
  const set = (name: string) => (env[name] ?? '') !== '';
  if (set('CI')) return 'this runs without anybody watching (CI is set)';
  if (platform === 'darwin' || platform === 'win32')
    return set('SSH_CONNECTION') ? 'this is a remote login' : null;
  return set('DISPLAY') || set('WAYLAND_DISPLAY') ? null : 'there is no display here';
}

/**
 * The desktop runtime's program, or null. Only looks: the package itself would fetch a missing runtime from the
 * network when it is loaded.
 */
export function findRuntime(
  root: string,
  env: Readonly<Record<string, string | undefined>>,
  exists: (path: string) => boolean = existsSync,
): string | null {
  const folder = join(root, 'node_modules', 'electron');
  const name = join(folder, 'path.txt');
  if (!exists(name)) return null;
  const program = join(
    env['ELECTRON_OVERRIDE_DIST_PATH'] ?? join(folder, 'dist'),
    readFileSync(name, 'utf8').trim(),
  );
  return exists(program) ? program : null;
}

/** Whether a program of this name lies on the path. */
export function onPath(name: string, env: Readonly<Record<string, string | undefined>>): boolean {
  const folders = (env['PATH'] ?? env['Path'] ?? '').split(delimiter);
  return folders.some((folder) => folder !== '' && existsSync(join(folder, name)));
}
