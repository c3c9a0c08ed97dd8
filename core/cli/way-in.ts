import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { isTicketWaiting, leaveCode, leaveTicket, LIFE_MS } from '../host/desk.ts';
import { ticketFile } from '../host/pages.ts';
import { makePrivate } from '../host/private-folder.ts';
import type { Opener } from './window-choice.ts';

/** A host that answers, whoever started it. */
export interface Answering {
  readonly address: string;
  readonly desk: string;
}

const DIGITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'] as const;

/** `4719 0238 (four seven one nine, zero two three eight)`: to be read out across a shop. */
export function codeInWords(code: string): string {
  const groups = code.match(/\d{1,4}/g) ?? [];
  const words = groups.map((group) => [...group].map((digit) => DIGITS[Number(digit)]).join(' '));
  return `${groups.join(' ')} (${words.join(', ')})`;
}

/** Leaves a code for a host and says how to use it. */
export function newCodeLine({ address, desk }: Answering): string {
  const code = codeInWords(leaveCode(desk));
  return `Open ${address} in a browser on this computer and type the code ${code}. Good once, for ten minutes.`;
}

/**
 * Opens the browser on a host by a file that only this user can read, and waits until the ticket in it was used.
 * False when it was not used in its time, or no browser could be started: then a code is the way in.
 */
export async function openBrowser(host: Answering, opener: Opener, privateFolder: string): Promise<boolean> {
  const folder = mkdtempSync(join(makePrivate(privateFolder), 'open-'));
  try {
    const ticket = leaveTicket(host.desk);
    const file = join(folder, 'everybolt.html');
    writeFileSync(file, ticketFile(host.address, ticket), { mode: 0o600, flag: 'wx' });
    const failed = launch(opener, file);
    const deadline = Date.now() + LIFE_MS.ticket;
    while (Date.now() < deadline && !failed()) {
      if (!isTicketWaiting(host.desk, ticket)) return true;
      await new Promise((resolve) => setTimeout(resolve, 200));
    }
    return false;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Starts the opener and lets it go; what is given back tells whether it has failed. */
function launch(opener: Opener, file: string): () => boolean {
  let failed = false;
  const child = spawn(opener.program, [...opener.arguments, file], { stdio: 'ignore', detached: true });
  child.once('error', () => {
    failed = true;
  });
  child.once('exit', (code) => {
    // Explorer ends with 1 when all is well.
    if (code !== 0 && process.platform !== 'win32') failed = true;
  });
  child.unref();
  return () => failed;
}
