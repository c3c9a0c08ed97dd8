import { expect, test } from './support/program.ts';
import { loggedJob, saved } from './support/seed.ts';

test('what was done on a screen without an Undo of its own is taken back and done again by what the screen says', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['side cover, 12 M8x25, bag 4'], 'F3');
  await expect(page.getByRole('button', { name: 'Undo' })).toHaveCount(0);
  await page.getByRole('button', { name: /^4/ }).click();
  await page.getByRole('button', { name: 'One less' }).click();
  await page.getByRole('button', { name: /^It is 11/ }).click();
  await expect(page.getByText('One is missing.')).toBeVisible();
  await page.getByRole('status').getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText('One is missing.')).toHaveCount(0);
  await page.getByRole('status').getByRole('button', { name: 'Do again' }).click();
  await expect(page.getByText('One is missing.')).toBeVisible();
});

test('a step back that was taken back is done again by a touch', async ({ open, program }) => {
  const page = await open();
  await loggedJob(program, page, ['guard', 'fan'], 'F4');
  const heading = page.getByRole('heading', { level: 1 });
  await expect(heading).toHaveText('Fan');
  await page.getByRole('button', { name: /^It is back/ }).click();
  await expect(heading).toHaveText('Guard');
  await saved(page);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(heading).toHaveText('Fan');
  await page.getByRole('button', { name: 'Do again' }).click();
  await expect(heading).toHaveText('Guard');
});
