import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect, type Program, startJob } from './program.ts';

const CLI = join(import.meta.dirname, '..', '..', '..', 'core', 'cli', 'main.ts');

/** Runs verbs of the command line on the workshop while the host is away, as a script would; the host is back afterwards. */
export async function byScript(
  program: Program,
  page: Page,
  verbs: readonly (readonly [verb: string, ...words: string[]])[],
): Promise<void> {
  await program.kill();
  for (const [verb, ...words] of verbs)
    execFileSync(process.execPath, [CLI, verb, '--workshop', program.workshop, ...words], {
      encoding: 'utf8',
    });
  await program.start();
  await page.reload();
}

/** A job with its entry lines logged by a script, open in the window at the screen of this key. */
export async function loggedJob(
  program: Program,
  page: Page,
  lines: readonly string[],
  key: 'F2' | 'F3' | 'F4' | 'F6' | 'F12',
): Promise<void> {
  await startJob(page, 'Winch gearbox');
  await byScript(program, page, [['log', ...lines]]);
  await expect(page.getByRole('textbox', { name: 'What came off' })).toBeVisible();
  await page.keyboard.press(key);
}

/** Until everything that was done is kept. */
export async function saved(page: Page): Promise<void> {
  await expect(page.getByText(/not saved yet/)).toHaveCount(0);
}
