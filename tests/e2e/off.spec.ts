import { readFileSync } from 'node:fs';
import { expect, test } from './support/program.ts';
import { loggedJob, saved } from './support/seed.ts';

test('a bag is counted with the number keys, and the search ends only when it is written off with a reason', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['drained gear oil 1 l', 'side cover, 12 M8x25, bag 4'], 'F3');
  await expect(page.getByText('12 fasteners off: 12 in hand.')).toBeVisible();
  await page.getByRole('button', { name: /^4/ }).click();
  await page.keyboard.press('1');
  await page.keyboard.press('1');
  await expect(page.getByRole('img', { name: '11 of 12 are here' })).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByText('One is missing.')).toBeVisible();
  await expect(page.getByText('1 unaccounted')).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Look there before you buy one' })).toBeVisible();
  await expect(page.getByRole('listitem').filter({ hasText: 'gear oil' }).last()).toContainText('stood open');
  await page.getByRole('button', { name: 'Searched, not found' }).click();
  await page.getByLabel(/Where did you look/).fill('Bench and sump searched twice');
  await page.keyboard.press('Enter');
  await expect(page.getByText('One is missing.')).toHaveCount(0);
  await saved(page);
  await page.keyboard.press('Control+z');
  await expect(page.getByText('One is missing.')).toBeVisible();
});

test('a replacement that is bought clears the list to get, never the search', async ({ open, program }) => {
  const page = await open();
  await loggedJob(program, page, ['side cover, 8 M8x25, bag 4'], 'F3');
  await page.getByRole('button', { name: /^4/ }).click();
  await page.getByRole('button', { name: 'One less' }).click();
  await page.getByRole('button', { name: /It is 7/ }).click();
  await page.getByRole('button', { name: 'To get, 1' }).click();
  const state = page.getByRole('group', { name: /State of/ });
  await state.getByRole('radio', { name: 'ordered' }).click();
  await expect(state.getByRole('radio', { name: 'ordered' })).toBeChecked();
  await state.getByRole('radio', { name: 'here' }).click();
  await expect(page.getByRole('button', { name: 'To get', exact: true })).toBeVisible();
  await page.getByRole('button', { name: /^4/ }).click();
  await expect(page.getByText('One is missing.')).toBeVisible();
});

test('the list to get is saved as a table that other programs read', async ({ open, program }) => {
  const page = await open();
  await loggedJob(program, page, ['side cover, gasket, 8 M8x25, bag 4'], 'F3');
  await page.getByRole('button', { name: 'To get, 1' }).click();
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the list (CSV)' }).click();
  const file = await coming;
  expect(file.suggestedFilename()).toBe('to-get.csv');
  expect(readFileSync(await file.path(), 'utf8')).toBe(
    'what,pieces,why,state\r\ngasket,1,"must be new, for Side cover",needed\r\n',
  );
});

test('look-alikes that share a bag are drawn to scale under it', async ({ open, program }) => {
  const page = await open();
  await loggedJob(
    program,
    page,
    ['pump cover, 4 M8x25 hex 13, bag 4', 'side cover, 4 M8x35 hex 13, bag 4'],
    'F3',
  );
  await page.getByRole('button', { name: /^4/ }).click();
  await expect(page.getByRole('heading', { name: 'Look-alikes' })).toBeVisible();
  await expect(page.getByRole('img', { name: /Drawn to scale.*M8 × 25.*M8 × 35/ })).toBeVisible();
});

test('a part is sent out, is said to be away everywhere, and comes back', async ({ open, program }) => {
  const page = await open();
  await loggedJob(program, page, ['belt guard', 'pulley'], 'F3');
  await page.getByRole('button', { name: /^pulley/ }).click();
  await page.getByRole('button', { name: 'Send it out' }).click();
  await page.getByLabel('To whom, and what for?').fill('Machine shop, bore 24 mm');
  await page.getByLabel('Back by, if a day was promised').fill('2026-01-20');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Not in the workshop' })).toBeVisible();
  await expect(page.getByText(/with Machine shop, bore 24 mm, since/).first()).toBeVisible();
  await expect(page.getByText(/due (January 20|20 January)/).first()).toBeVisible();
  await page.keyboard.press('F4');
  await expect(page.getByText(/away/).first()).toBeVisible();
  await page.keyboard.press('F3');
  await page.getByRole('button', { name: 'It is back' }).click();
  await expect(page.getByRole('heading', { name: 'Not in the workshop' })).toHaveCount(0);
});

test('what is ordered gets the day on which it is promised, and what goes ahead by then counts on it', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['side cover, gasket, 8 M8x25, bag 4'], 'F3');
  await page.getByRole('button', { name: 'To get, 1' }).click();
  await expect(page.getByLabel('Here by, gasket')).toHaveCount(0);
  await page
    .getByRole('group', { name: /State of/ })
    .getByRole('radio', { name: 'ordered' })
    .click();
  await page.getByLabel('Here by, gasket').fill('2090-01-05');
  await saved(page);
  await page.keyboard.press('F4');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Side cover');
  await page.keyboard.press('d');
  await expect(page.getByRole('heading', { name: 'What can go ahead today' })).toBeVisible();
  await expect(page.getByLabel('Another day')).toBeVisible();
  await page.keyboard.press('ArrowRight');
  await expect(page.getByRole('heading', { name: /^By .*2090$/ })).toBeVisible();
  await expect(page.locator('.big .num')).toHaveText('1');
});
