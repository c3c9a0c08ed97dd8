import type { Page } from '@playwright/test';
import { expect, type Program, test } from './support/program.ts';
import { loggedJob, saved } from './support/seed.ts';

/** The host heard of the last letters: asked as the window asks, so that nothing is left to a pause. */
async function keptAtHost(page: Page, key: RegExp, text: string): Promise<void> {
  await page.waitForResponse(async (response) => {
    const sent = response.request().postData() ?? '';
    return response.url().endsWith('/workshop/keepDraft') && key.test(sent) && sent.includes(text);
  });
}

/** As after a crash: the host is killed, the tab is gone, a new tab opens. */
async function crashed(program: Program, page: Page): Promise<Page> {
  const context = page.context();
  await program.kill();
  await page.close();
  await program.start();
  const after = await context.newPage();
  await after.goto(program.address);
  return after;
}

async function type(page: Page, label: string | RegExp, text: string, key: RegExp): Promise<void> {
  const kept = keptAtHost(page, key, text);
  await page.getByLabel(label).pressSequentially(text);
  await kept;
}

test('half-typed answers come back: a question in a dialog, what is found, who owns it', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['belt guard', 'pulley'], 'F6');
  await type(page, 'What you found', 'scratch on the fla', /add\//);
  await type(page, 'Owner', 'M. Ald', /owner/);
  await page.reload();
  await expect(page.getByLabel('What you found')).toHaveValue('scratch on the fla');
  await expect(page.getByLabel('Owner')).toHaveValue('M. Ald');
  await page.keyboard.press('F3');
  await page.getByRole('button', { name: /^pulley/ }).click();
  await page.getByRole('button', { name: 'Send it out' }).click();
  await type(page, 'To whom, and what for?', 'Machine sh', /whom/);

  const after = await crashed(program, page);
  await after.getByRole('button', { name: 'Send it out' }).click();
  await expect(after.getByLabel('To whom, and what for?')).toHaveValue('Machine sh');
  await after.keyboard.press('Escape');
  await after.keyboard.press('F6');
  await expect(after.getByLabel('What you found')).toHaveValue('scratch on the fla');
  await expect(after.getByLabel('Owner')).toHaveValue('M. Ald');
  await after.getByLabel('Owner').focus();
  await after.keyboard.press('Tab');
  await after.keyboard.press('F2');
  await after.keyboard.press('F6');
  await expect(after.getByLabel('Owner')).toHaveValue('M. Ald');
});

test('a reason half written at a gate comes back with its field', async ({ open, program }) => {
  const page = await open();
  await loggedJob(program, page, ['guard', 'end cover, 2 M8x25', '+rag in the port'], 'F4');
  await page.getByRole('checkbox', { name: /Start all/ }).click();
  await page.getByRole('checkbox', { name: /Tighten 2/ }).click();
  await page.getByRole('checkbox', { name: /Fit: end cover/ }).click();
  await saved(page);
  await page.getByRole('button', { name: /Removal 1 Guard/ }).click();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Accept it' }).click();
  await type(page, 'Why it may stay like this', 'stud goes in on Mon', /why/);
  const after = await crashed(program, page);
  await expect(after.getByRole('button', { name: /It is back/ })).toBeVisible();
  await after.keyboard.press('Enter');
  await expect(after.getByLabel('Why it may stay like this')).toHaveValue('stud goes in on Mon');
});

test('a title and a note for the way back survive a crash before they are kept', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['belt guard'], 'F2');
  await page.route('**/rpc/record/**', () => {
    // Never answered: the record does not get it before the crash.
  });
  await type(page, 'Title of this removal', 'Pulley on the feed sha', /title/);
  const after = await crashed(program, page);
  await expect(after.getByLabel('Title of this removal')).toHaveValue('Pulley on the feed sha');
});
