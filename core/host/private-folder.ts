import { chmodSync, lstatSync, mkdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';

/** What decides where a user's folders are. */
export interface Surroundings {
  readonly platform: NodeJS.Platform;
  readonly home: string;
  readonly env: Readonly<Record<string, string | undefined>>;
}

export const here = (): Surroundings => ({ platform: process.platform, home: homedir(), env: process.env });

/**
 * Folder for what only this user's programs may read: tickets and the page that posts one.
 * The cache folder, not the run-time folder: that one is missing after `su`, in cron and over some logins, and
 * both sides must find the same place.
 */
export function privateFolder({ platform, home, env }: Surroundings): string {
  if (platform === 'win32') return join(env['LOCALAPPDATA'] ?? join(home, 'AppData', 'Local'), 'Everybolt');
  if (platform === 'darwin') return join(home, 'Library', 'Caches', 'Everybolt');
  return join(absolute(env['XDG_CACHE_HOME']) ?? join(home, '.cache'), 'everybolt');
}

/**
 * Where the workshop is kept unless told otherwise. On Linux the XDG data folder; elsewhere Documents, where
 * people look for their own work and where their backups already reach.
 */
export function defaultWorkshop({ platform, home, env }: Surroundings): string {
  if (platform === 'win32') return join(env['USERPROFILE'] ?? home, 'Documents', 'Everybolt');
  if (platform === 'darwin') return join(home, 'Documents', 'Everybolt');
  return join(absolute(env['XDG_DATA_HOME']) ?? join(home, '.local', 'share'), 'everybolt');
}

/** The XDG rules say that a relative path there is to be ignored. */
function absolute(path: string | undefined): string | null {
  return path !== undefined && path.charAt(0) === '/' ? path : null;
}

/** Makes a folder that only this user can enter. Throws where somebody else owns it or it is a link. */
export function makePrivate(dir: string): string {
  mkdirSync(dir, { recursive: true, mode: 0o700 });
  const facts = lstatSync(dir);
  if (!facts.isDirectory()) throw new Error(`Expected a folder at ${dir}, got something else.`);
  if (process.getuid === undefined) return dir;
  if (facts.uid !== process.getuid())
    throw new Error(`Expected a folder of this user at ${dir}, got another's.`);
  if ((facts.mode & 0o077) !== 0) chmodSync(dir, 0o700);
  return dir;
}
