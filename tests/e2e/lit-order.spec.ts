import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, startJob, test } from './support/program.ts';
import { drop, photoOf, picture, touch } from './support/pictures.ts';
import { saved } from './support/seed.ts';

/** Six bolts of a round cover. */
const HEADS = Array.from({ length: 6 }, (_, i) => ({
  x: 0.5 + 0.24 * Math.cos((Math.PI * i) / 3),
  y: 0.5 + 0.32 * Math.sin((Math.PI * i) / 3),
}));

/** A cover with its bolts, `marked` of them on its photo, at Put back. */
async function coverOnPhoto(page: Page, folder: string, marked = 6): Promise<void> {
  await markedPhoto(page, folder, 'end cover, 6 M8x25, 25 Nm', marked);
  await page.keyboard.press('F4');
  await expect(page.getByRole('heading', { name: 'End cover' })).toBeVisible();
}

/** A logged line with its photo, `marked` of the heads on it marked, at Take apart. */
async function markedPhoto(page: Page, folder: string, line: string, marked = 6): Promise<void> {
  await startJob(page, 'Winch gearbox');
  await page.getByRole('textbox', { name: 'What came off' }).fill(line);
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: /^Removal 1/ }).click();
  await drop(page, [await picture(folder, 'cover.jpg', HEADS)]);
  await page.getByRole('button', { name: /take into 1/ }).click();
  await expect(photoOf(page).locator('img').first()).toBeVisible();
  await page.getByRole('button', { name: 'Mark the holes' }).click();
  for (const [i, head] of HEADS.slice(0, marked).entries()) {
    await touch(page, head);
    await expect(page.getByRole('button', { name: new RegExp(`^hole ${i + 1}\\b`) })).toBeVisible();
  }
  await saved(page);
}

/** What axe finds wrong on the screen. */
const faultsOf = async (page: Page) =>
  (await new AxeBuilder({ page }).analyze()).violations.map(
    (one) => `${one.id}: ${one.nodes[0]?.html ?? ''}`,
  );

/** What the key for the lit hole says: "Hole 4: 30 %". */
const lit = (page: Page) => page.locator('.order-next');

const orderOf = (page: Page) => page.getByRole('list', { name: 'Order of tightening' }).getByRole('button');

test('one hole is lit after the other, round by round; a reload and another window go on at the same hole', async ({
  open,
  program,
  context,
}) => {
  test.setTimeout(120_000);
  const page = await open();
  await coverOnPhoto(page, program.folder);
  // Asked first: an order over some of the holes is none.
  await expect(page.getByText('Are all holes of this joint on the photo?')).toBeVisible();
  await expect(lit(page)).toHaveCount(0);
  await page.getByRole('button', { name: 'Yes, all' }).click();
  await expect(orderOf(page)).toHaveCount(6);
  await expect(lit(page)).toContainText('Hole 1: By hand');
  for (const hole of [4, 2, 5, 3, 6]) {
    await page.keyboard.press('Space');
    await expect(lit(page)).toContainText(`Hole ${hole}: By hand`);
  }
  await page.keyboard.press('Space');
  await expect(lit(page)).toContainText('Hole 1: 30 %');
  await expect(page.getByText('Hole 1 is next.')).toBeVisible();

  // By key, by Enter and by a touch on the lit mark.
  await page.keyboard.press('Space');
  await expect(lit(page)).toContainText('Hole 4: 30 %');
  await page.keyboard.press('Enter');
  await expect(lit(page)).toContainText('Hole 2: 30 %');
  await photoMark(page, 2).click();
  await expect(lit(page)).toContainText('Hole 5: 30 %');
  await expect(page.getByRole('listitem').filter({ hasText: '30 %' })).toContainText('round 1, 3 of 6');

  await saved(page);
  await page.reload();
  await expect(lit(page)).toContainText('Hole 5: 30 %');
  const other = await context.newPage();
  await other.goto(program.address);
  await expect(lit(other)).toContainText('Hole 5: 30 %');
  await other.close();

  // One press of undo takes back one hole.
  await page.keyboard.press('Control+z');
  await expect(lit(page)).toContainText('Hole 2: 30 %');
  // A round that was touched: all are through what lies before it.
  await page.getByRole('button', { name: /100 %/ }).click();
  await expect(lit(page)).toContainText('Hole 1: 100 %');
  await page.keyboard.press('t');
  await expect(lit(page)).toContainText('Hole 1: Once around');
  await page.keyboard.press('Space');
  await expect(lit(page)).toContainText('Hole 2: Once around');
  // Enter ends the step; nobody is held by the last look.
  await page.getByRole('checkbox', { name: /Fit: end cover/ }).click();
  await saved(page);
  await page.keyboard.press('Enter');
  await expect(page.getByText('Everything is back.')).toBeVisible();
});

/** The mark of a hole on the photo, not its disc in the row. */
const photoMark = (page: Page, n: number) =>
  page.locator('.putback-photo').getByRole('button', { name: new RegExp(`^hole ${n}\\b`) });

test('what is on no photo comes after the marks and counts; any other hole is opened by a touch', async ({
  open,
  program,
}) => {
  const page = await open();
  await coverOnPhoto(page, program.folder, 5);
  await expect(page.getByText('5 of 6 shown. On no photo:')).toBeVisible();
  // The gap says that one is missing.
  await expect(page.getByText(/Between holes (5 and 1|1 and 5) there is room for one more/)).toBeVisible();
  expect(await faultsOf(page), 'the question').toEqual([]);
  await page.getByRole('button', { name: 'No, some are not' }).click();
  await expect(lit(page)).toBeVisible();
  expect(await faultsOf(page), 'the lit order').toEqual([]);
  await expect(orderOf(page)).toHaveCount(6);
  await expect(orderOf(page).last()).toHaveAccessibleName(/^hole 6/);
  for (let i = 0; i < 5; i += 1) {
    const before = await lit(page).textContent();
    await page.keyboard.press('Space');
    await expect(lit(page)).not.toHaveText(before ?? '');
  }
  await expect(lit(page)).toContainText('Hole 6: By hand');
  await page.keyboard.press('Space');
  await expect(lit(page)).toContainText('30 %');
  await photoMark(page, 3).click();
  await expect(page.getByLabel('Read on the wrench, N·m')).toBeVisible();
});

test('how a casting is undone is shown while its bolts are still in', async ({ open, program }) => {
  const page = await open();
  await markedPhoto(page, program.folder, 'slackened 6 M8x25 hex 13');
  await page.getByRole('button', { name: 'Done marking' }).click();
  const order = page.getByRole('list', { name: 'Order of undoing' }).getByRole('listitem');
  await expect(order).toHaveText(['1', '4', '2', '5', '3', '6']);
  await expect(page.getByText(/a quarter to half a turn at a time/)).toBeVisible();
  await expect(page.locator('.removal-photo .wedge')).toHaveCount(5);
});
