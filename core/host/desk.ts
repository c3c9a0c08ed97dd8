import { createHash, randomBytes, randomInt } from 'node:crypto';
import { existsSync, readdirSync, rmdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { makePrivate } from './private-folder.ts';

/**
 * Where tickets are left for a host: a folder that only this user can enter. Whoever can write there is a program
 * of this user, so nothing else has to be agreed between a host and whoever opens a window on it, and a second
 * `npm start` can open the first one's host. A ticket is an empty file named by the hash of its secret; taking the
 * file away is what spends it, so it can be spent once.
 */

/** How long each kind may be used, in milliseconds. */
export const LIFE_MS = { ticket: 30_000, code: 600_000 } as const;
type TicketKind = keyof typeof LIFE_MS;

/** Wrong codes taken before the code is withdrawn; one in ten million guesses is right. */
export const WRONG_CODES = 5;

/** Digits of a typed code. */
const CODE_DIGITS = 8;

/** Leaves a ticket and returns its secret: 64 hex digits that nobody can guess. */
export function leaveTicket(desk: string): string {
  return leave(desk, 'ticket', randomBytes(32).toString('hex'));
}

/** Leaves a code short enough to be typed, and returns its digits. The one before it is withdrawn. */
export function leaveCode(desk: string): string {
  withdraw(desk, 'code');
  const digits = Array.from({ length: CODE_DIGITS }, () => randomInt(10)).join('');
  return leave(desk, 'code', digits);
}

/** Whether a ticket still lies there: once it is gone, its window is open. */
export function isTicketWaiting(desk: string, ticket: string): boolean {
  return existsSync(join(desk, nameOf('ticket', ticket)));
}

function leave(desk: string, kind: TicketKind, secret: string): string {
  makePrivate(desk);
  writeFileSync(join(desk, nameOf(kind, secret)), '', { mode: 0o600, flag: 'wx' });
  return secret;
}

/** The host's side of the desk. */
export interface Desk {
  /** Spends a ticket: true once, within its life. */
  redeemTicket(secret: string): boolean;
  /** Spends a typed code. After a few wrong ones the code is withdrawn: a new one has to be asked for. */
  redeemCode(typed: string): 'right' | 'wrong' | 'withdrawn';
  close(): void;
}

export function openDesk(desk: string, now: () => number): Desk {
  makePrivate(desk);
  /** How often the code that lies there now was missed; a new code starts anew. */
  let missed = { code: '', times: 0 };
  return {
    redeemTicket: (secret) => /^[0-9a-f]{64}$/.test(secret) && redeem(desk, 'ticket', secret, now()),
    redeemCode: (typed) => {
      const code = standing(desk, 'code', now());
      if (code === null) return 'withdrawn';
      const digits = typed.replace(/[\s-]/g, '');
      if (new RegExp(`^\\d{${CODE_DIGITS}}$`).test(digits) && redeem(desk, 'code', digits, now()))
        return 'right';
      missed = { code, times: missed.code === code ? missed.times + 1 : 1 };
      if (missed.times < WRONG_CODES) return 'wrong';
      withdraw(desk, 'code');
      return 'withdrawn';
    },
    close: () => {
      withdraw(desk, 'ticket');
      withdraw(desk, 'code');
      removeIfEmpty(desk);
    },
  };
}

/** Removes the empty desks of hosts that were killed, older than a day. A desk in use is simply made again. */
export function sweepDesks(parent: string, now: number): void {
  for (const name of list(parent)) {
    const age = now - (statSync(join(parent, name), { throwIfNoEntry: false })?.mtimeMs ?? now);
    if (age > 86_400_000) removeIfEmpty(join(parent, name));
  }
}

function redeem(desk: string, kind: TicketKind, secret: string, now: number): boolean {
  const file = join(desk, nameOf(kind, secret));
  const fresh = isFresh(file, kind, now);
  try {
    rmSync(file);
  } catch {
    return false;
  }
  return fresh;
}

function standing(desk: string, kind: TicketKind, now: number): string | null {
  return (
    list(desk).find((name) => name.split('-')[0] === kind && isFresh(join(desk, name), kind, now)) ?? null
  );
}

/** A ticket from the future means that the clock was put back: it is not trusted either, but for two seconds. */
function isFresh(file: string, kind: TicketKind, now: number): boolean {
  const left = statSync(file, { throwIfNoEntry: false })?.mtimeMs;
  if (left === undefined) return false;
  const age = now - left;
  return age >= -2000 && age <= LIFE_MS[kind];
}

function withdraw(desk: string, kind: TicketKind): void {
  for (const name of list(desk)) if (name.split('-')[0] === kind) rmSync(join(desk, name), { force: true });
}

function list(dir: string): string[] {
  try {
    return readdirSync(dir);
  } catch {
    return [];
  }
}

function removeIfEmpty(dir: string): void {
  try {
    rmdirSync(dir);
  } catch {
    // Not empty, or gone already: either is fine.
  }
}

/** The hash, not the secret: who lists the folder learns nothing that opens the door. */
function nameOf(kind: TicketKind, secret: string): string {
  return `${kind}-${createHash('sha256').update(`${kind}:${secret}`, 'utf8').digest('hex')}`;
}
