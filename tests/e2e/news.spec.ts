import type { Page } from '@playwright/test';
import { expect, test } from './support/program.ts';
import { loggedJob } from './support/seed.ts';
import { inSight } from './support/view.ts';

const twenty = Array.from({ length: 20 }, (_, i) => `cover ${i + 1}, 2 M8x25, bag ${i + 1}`);

async function counted(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^1 / }).first().click();
  await page.getByRole('button', { name: 'One less' }).click();
  await page.getByRole('button', { name: /^It is 1/ }).click();
  await expect(page.getByRole('status').getByRole('button', { name: 'Undo' })).toBeVisible();
}

for (const [width, height] of [
  [1280, 800],
  [1024, 768],
  [820, 1180],
  [390, 844],
] as const)
  test(`what was done last is said beside the page and never on it, ${width} wide`, async ({
    open,
    program,
  }) => {
    const page = await open();
    await loggedJob(program, page, twenty, 'F3');
    await page.setViewportSize({ width, height });
    await counted(page);
    const news = page.getByRole('status').locator('.status');
    await page.evaluate(() => window.scrollTo(0, 0));
    expect(await inSight(news)).toBe(true);
    const heading = page.getByRole('heading', { level: 1 });
    await heading.scrollIntoViewIfNeeded();
    expect(await inSight(heading)).toBe(true);
    const key = page.getByRole('group', { name: 'Help with pieces' }).getByRole('button').last();
    await key.focus();
    expect(await inSight(key)).toBe(true);
    // Back up the list by the keyboard: each row that the focus comes to lies clear of the news.
    for (let i = 0; i < 24; i += 1) {
      await page.keyboard.press('Shift+Tab');
      const at = page.locator(':focus');
      if ((await at.count()) > 0) expect(await inSight(at), await at.innerText()).toBe(true);
    }
  });
