import type { Page } from '@playwright/test';
import { keyboard } from './support/hands.ts';
import { drop, picture } from './support/pictures.ts';
import { expect, startJob, test } from './support/program.ts';
import { loggedJob, saved } from './support/seed.ts';

/** What has the focus, in its own words; "nothing" where it went astray. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement;
    if (at === null || at === document.body) return 'nothing';
    return at.getAttribute('aria-label') ?? at.parentElement?.closest('label')?.textContent ?? at.textContent;
  });

test('a photo that is filed by a key leaves the focus on the next one, the last one on the key beside it', async ({
  open,
  program,
}) => {
  const page = await open();
  await startJob(page, 'Bench grinder');
  const hands = keyboard(page);
  const entry = page.getByRole('textbox', { name: 'What came off' });
  await hands.write(entry, 'guard, 2 M6x16');
  await page.keyboard.press('Enter');
  const row = page.getByRole('button', { name: /Removal 1 Guard/ });
  await hands.press(row);
  await drop(page, [
    await picture(program.folder, 'one.jpg', []),
    await picture(program.folder, 'two.jpg', []),
  ]);
  await expect(page.locator('.thumb')).toHaveCount(2);
  await hands.press(page.locator('.thumb').first());
  await expect(page.locator('.thumb')).toHaveCount(1);
  await expect(page.locator('.thumb')).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.locator('.thumb')).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Add photos' })).toBeFocused();
});

test('a line of the list to get that the arrows answered leaves the focus in the list', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(
    program,
    page,
    ['guard', 'end cover, gasket, 2 M8x25, oil seal, bag 2', '+rag in the port'],
    'F3',
  );
  const hands = keyboard(page);
  await hands.press(page.getByRole('button', { name: /^To get/ }));
  await hands.press(page.locator('.wants').getByRole('radio', { name: 'here' }).first());
  await expect(page.locator('.wants li')).toHaveCount(2);
  await saved(page);
  await expect.poll(() => focused(page)).toMatch(/needed|ordered|here|dropped/);
});

test('the large key keeps the focus from step to step, and a way to another screen keeps it there', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['guard', 'fan', 'belt'], 'F4');
  const hands = keyboard(page);
  const back = page.getByRole('button', { name: /^It is back/ });
  const heading = page.getByRole('heading', { level: 1 });
  await hands.press(back);
  await expect(heading).toHaveText('Fan');
  await expect(back).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(heading).toHaveText('Guard');
  await expect(back).toBeFocused();
  const off = page
    .getByRole('navigation', { name: 'Screens' })
    .getByRole('button', { name: 'Off the machine' });
  await hands.press(off);
  await expect(heading).toHaveText('Off the machine');
  await expect(off).toBeFocused();
});

test('a key right behind a touch that closed something is for the screen, not for what is nearest', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['guard, 2 M6x16'], 'F4');
  await page.getByRole('button', { name: /^hole 1/ }).click();
  await page.getByRole('button', { name: 'Close' }).waitFor();
  // Touch and key come within one frame, as on a machine that is busy.
  const onPage = await page.evaluate(async () => {
    const frames = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
    const close = [...document.querySelectorAll('button')].find((one) => one.textContent === 'Close');
    close?.focus();
    await frames();
    close?.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true }));
    close?.click();
    for (let i = 0; i < 5; i += 1) await Promise.resolve();
    document.body.dispatchEvent(new KeyboardEvent('keydown', { key: 'x', bubbles: true }));
    await frames();
    return document.activeElement === document.body && close?.isConnected === false;
  });
  expect(onPage).toBe(true);
});
