import { expect, openSample, test } from './support/program.ts';

test('the first screen offers the sample job, which opens at the work with its photos', async ({ open }) => {
  const page = await open();
  await openSample(page);
  await expect(page.getByRole('heading', { name: 'Sample: blower head, half back' })).toBeVisible();
  // The one that is closed is not the one to carry on with.
  await expect(page.getByText('Sample: blower head, finished')).toBeVisible();
  await page.getByRole('button', { name: /Carry on putting back/ }).click();
  await expect(page.getByText('Long ones in 6 and 7')).toBeVisible();
  const picture = page.locator('img').first();
  await expect
    .poll(async () => picture.evaluate((img: HTMLImageElement) => img.naturalWidth))
    .toBeGreaterThan(1000);
});
