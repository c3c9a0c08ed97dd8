import type { Page } from '@playwright/test';
import { addPhotoRows, type PhotoRow } from './support/photo-rows.ts';
import { expect, type Program, startJob, test } from './support/program.ts';
import { byScript, saved } from './support/seed.ts';

const START = Date.UTC(2026, 8, 1, 9);
const MINUTE = 60_000;

/** A job with two removals and these photos, none filed, open at its photos. */
async function galleryOf(program: Program, page: Page, rows: readonly PhotoRow[]): Promise<string[]> {
  await startJob(page, 'Bench grinder');
  await byScript(program, page, [['log', 'wheel guard, 4 M6x16', 'belt']]);
  await program.kill();
  const ids = await addPhotoRows(program, rows, { pictures: rows.length < 100 });
  await program.start();
  await page.reload();
  await expect(page.getByRole('textbox', { name: 'What came off' })).toBeVisible();
  await page.keyboard.press('F9');
  await expect(page.locator('[data-photo]').first()).toBeVisible();
  return ids;
}

const shots = (count: number, minutes = 1): PhotoRow[] =>
  Array.from({ length: count }, (_, i) => ({ name: `p${i + 1}.jpg`, taken: START + i * minutes * MINUTE }));

const tile = (page: Page, name: string) =>
  page.locator('[data-photo]').and(page.getByRole('button', { name: new RegExp(`^${name}[.,]`) }));
const section = (page: Page, head: RegExp) => page.locator('.gallery-head', { hasText: head });
const filterRow = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Show' }).getByRole('button', { name });

test('thousands of photos stand in one list of which only what is in sight is on the page', async ({
  open,
  program,
}) => {
  const page = await open();
  await galleryOf(program, page, shots(2500));
  await expect(filterRow(page, 'All')).toContainText('2500');
  expect(await page.locator('[data-photo]').count()).toBeLessThan(60);
  await tile(page, 'p1').focus();
  await page.keyboard.press('End');
  await expect(tile(page, 'p2500')).toBeFocused();
  expect(await page.locator('[data-photo]').count()).toBeLessThan(60);
  await page.keyboard.press('ArrowUp');
  await expect(tile(page, 'p2500')).not.toBeFocused();
  await page.keyboard.press('Home');
  await expect(tile(page, 'p1')).toBeFocused();
  await page.keyboard.press('Control+a');
  await expect(page.locator('.gallery-hand .big')).toContainText('2500');
});

test('photos are selected by mouse and keys, filed many at once by number and by drag, and undone', async ({
  open,
  program,
}) => {
  const page = await open();
  await galleryOf(program, page, shots(6));
  await tile(page, 'p2').click();
  await tile(page, 'p4').click({ modifiers: ['Shift'] });
  await tile(page, 'p3').click({ modifiers: ['Control'] });
  await expect(page.locator('[data-photo][aria-pressed=true]')).toHaveCount(2);
  await page.keyboard.press('2');
  await expect(page.getByRole('button', { name: 'File into 2' })).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(section(page, /^2 Belt/)).toContainText('2');
  await saved(page);
  await expect(tile(page, 'p2')).toHaveAttribute('title', 'Put there by hand.');
  await page.keyboard.press('Escape');
  await page.keyboard.press('Control+z');
  await expect(section(page, /^2 Belt/)).toHaveCount(0);

  await tile(page, 'p5').focus();
  await page.keyboard.press('Shift+ArrowRight');
  await expect(page.locator('[data-photo][aria-pressed=true]')).toHaveCount(2);
  await tile(page, 'p5').dragTo(page.getByRole('button', { name: /Wheel guard/ }));
  await expect(section(page, /^1 Wheel guard/)).toContainText('2');
  await page.keyboard.press('u');
  await expect(section(page, /^1 Wheel guard/)).toHaveCount(0);
  await page.keyboard.press('7');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('alert')).toContainText('Expected the number of a removal, 1 to 2, got 7.');
});

test('alike photos are grouped, the best first; the others go only when asked, and come back', async ({
  open,
  program,
}) => {
  const page = await open();
  await galleryOf(program, page, [
    { name: 'soft.jpg', taken: START, phash: '00000000000000ff', sharpness: 40 },
    { name: 'sharp.jpg', taken: START + 1000, phash: '00000000000000fe', sharpness: 90 },
    { name: 'other.jpg', taken: START + 2000, phash: 'ffffffff00000000' },
  ]);
  await filterRow(page, 'Taken more than once').click();
  await expect(section(page, /2 alike, the best first/)).toBeVisible();
  await expect(page.locator('[data-photo]').first()).toHaveAccessibleName(/^sharp\.jpg.*best/);
  await page.getByRole('button', { name: 'Keep the best, take 1 away' }).click();
  await expect(page.getByText('None of the photos is here')).toBeVisible();
  await filterRow(page, 'All').click();
  await expect(tile(page, 'soft')).toHaveCount(0);
  await page.keyboard.press('Control+z');
  await expect(tile(page, 'soft')).toBeVisible();
});

test('blurred photos are found by their filter, with a word on them', async ({ open, program }) => {
  const page = await open();
  await galleryOf(program, page, [
    ...shots(6),
    { name: 'shaken.jpg', taken: START + 9 * MINUTE, sharpness: 5 },
  ]);
  await filterRow(page, 'Blurred or very dark').click();
  await expect(page.locator('[data-photo]')).toHaveCount(1);
  await expect(tile(page, 'shaken')).toContainText('Blurred');
  await page.keyboard.press('F2');
  await expect(page.locator('.thumb', { hasText: 'Blurred' })).toHaveCount(1);
});

test('removals are made from photos: laid at the pauses, joined and split before, one undo takes all back', async ({
  open,
  program,
}) => {
  const page = await open();
  await galleryOf(program, page, [
    ...shots(3),
    { name: 'p4.jpg', taken: START + 30 * MINUTE },
    { name: 'p5.jpg', taken: START + 31 * MINUTE },
    { name: 'p6.jpg', taken: START + 70 * MINUTE },
  ]);
  await page.keyboard.press('m');
  await expect(page.locator('.roll')).toHaveCount(3);
  await page.getByRole('radio', { name: '1 h' }).check();
  await expect(page.locator('.roll')).toHaveCount(1);
  await page.getByRole('radio', { name: '5 min', exact: true }).check();
  await expect(page.locator('.roll')).toHaveCount(3);
  await page.getByRole('button', { name: 'Begin another removal at p3.jpg' }).click();
  await expect(page.locator('.roll')).toHaveCount(4);
  await page.locator('.roll').nth(2).getByRole('button', { name: 'Join with the next' }).click();
  await expect(page.locator('.roll')).toHaveCount(3);
  await page.getByRole('button', { name: 'Make 3 removals' }).click();
  await expect(page.locator('.gallery-head')).toHaveCount(3);
  await expect(filterRow(page, 'Not filed')).toContainText('0');
  await page.keyboard.press('Control+z');
  await expect(filterRow(page, 'Not filed')).toContainText('6');
});

test('a photo is looked at closely by keys, with its facts; marks on two photos go together', async ({
  open,
  program,
}) => {
  const page = await open();
  await galleryOf(program, page, shots(3));
  await tile(page, 'p1').focus();
  await page.keyboard.press('Enter');
  const viewer = page.getByRole('dialog');
  await expect(viewer).toHaveAccessibleName('Photo 1 of 3');
  await expect(viewer).toContainText('2026-09-01 09:00:00, UTC+00:00');
  await expect(viewer).toContainText('none in the file');
  const picture = viewer.locator('.photo img').first();
  const before = await picture.boundingBox();
  await page.keyboard.press('+');
  await expect
    .poll(async () => (await picture.boundingBox())?.width)
    .toBeGreaterThan((before?.width ?? 0) * 1.5);
  await page.keyboard.press('ArrowRight');
  await expect(viewer).toHaveAccessibleName('Photo 1 of 3');
  await page.keyboard.press('0');
  await viewer.getByRole('button', { name: 'Put marks' }).click();
  await viewer.getByRole('button', { name: 'Put it in the middle' }).click();
  await viewer.getByRole('button', { name: 'Done marking' }).click();
  await viewer.getByRole('button', { name: /^mark 1, stands for nothing/ }).click();
  await viewer.getByRole('button', { name: 'Goes together with …' }).click();
  await expect(viewer.getByText('Touch the mark that goes together with mark 1')).toBeVisible();
  await page.keyboard.press('PageDown');
  await expect(viewer).toHaveAccessibleName('Photo 2 of 3');
  await viewer.getByRole('button', { name: 'Put marks' }).click();
  await viewer.getByRole('button', { name: 'Put it in the middle' }).click();
  await viewer.getByRole('button', { name: 'Done marking' }).click();
  const mark = viewer.getByRole('button', { name: /^mark 1, stands for nothing/ });
  await saved(page);
  await mark.focus();
  await page.keyboard.press('Enter');
  await expect(viewer.getByRole('button', { name: /, on p1\.jpg/ })).toBeVisible();
  await viewer.getByRole('button', { name: /, on p1\.jpg/ }).click();
  await expect(viewer).toHaveAccessibleName('Photo 1 of 3');
  // Also in the moment in which what was touched is gone and nothing has the focus.
  await page.evaluate(() => {
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    document.body.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true }));
  });
  await expect(viewer).toHaveCount(0);
});
