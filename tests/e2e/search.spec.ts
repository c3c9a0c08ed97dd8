import { expect, openSample, test } from './support/program.ts';

test('a search without a hit says where it looked and offers near names; Enter takes the first, then opens its step lit', async ({
  open,
}) => {
  const page = await open();
  await openSample(page);
  await page.keyboard.press('/');
  await page.keyboard.type('zzzz');
  await expect(page.getByRole('heading', { name: 'Nothing found for “zzzz”.' })).toBeVisible();
  await expect(page.getByText(/^Looked in every job: .*parts/)).toBeVisible();
  const field = page.getByRole('searchbox');
  await field.fill('end plte');
  const near = page.getByRole('group', { name: 'Nearest in this workshop' });
  await expect(near.getByRole('button').first()).toHaveText(/^end plate/i);
  await field.press('Enter');
  await expect(field).toHaveValue(/^end plate/i);
  await page.locator('.hit').filter({ hasText: 'set in Sample: blower head, finished' }).first().click();
  await expect(page.getByRole('heading', { name: 'End plate', level: 1 })).toBeVisible();
  const lit = page.getByRole('note');
  await expect(lit).toContainText(/Found here.*end plate/i);
  await expect(lit).toBeFocused();
  await expect(page.locator('.list .lit').first()).toContainText(/bolt M10/);
  // The next step from here leaves the search behind.
  await page.keyboard.press('Enter');
  await expect(lit).toHaveCount(0);
});
