import AxeBuilder from '@axe-core/playwright';
import { expect, openSample, test } from './support/program.ts';

test('one key shows every key of the program, and light or dark stays as it was chosen', async ({ open }) => {
  const page = await open();
  await openSample(page);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: 'Gear cover' }).waitFor();
  await page.keyboard.press('?');
  const map = page.getByRole('dialog', { name: 'Keys' });
  await expect(map.getByText('Ctrl Shift Z')).toBeVisible();
  expect((await new AxeBuilder({ page }).analyze()).violations).toEqual([]);
  await map.getByRole('radio', { name: 'Dark' }).check({ force: true });
  await page.keyboard.press('Escape');
  await expect(map).toBeHidden();
  await page.reload();
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
});

test('on a phone each screen begins at its top', async ({ open }) => {
  const page = await open();
  await page.setViewportSize({ width: 390, height: 700 });
  await openSample(page);
  const go = page.getByRole('button', { name: /^Carry on/ });
  await go.scrollIntoViewIfNeeded();
  await page.evaluate(() => window.scrollTo(0, 400));
  await go.click();
  await page.getByRole('heading', { name: 'Gear cover' }).waitFor();
  expect(await page.evaluate(() => window.scrollY)).toBe(0);
});
