import type { Page } from '@playwright/test';
import { drop, photoOf, picture, touch } from './support/pictures.ts';
import { expect, startJob, test } from './support/program.ts';
import { hold } from './support/hold.ts';
import { byScript, loggedJob, saved } from './support/seed.ts';
import { viewOf } from './support/view.ts';

const marks = (page: Page) => page.locator('.removal-photo .mark-key');

/** A logged removal with one photo filed into it, on which marks are being set. */
async function marking(page: Page, folder: string): Promise<void> {
  await startJob(page, 'Bench grinder');
  await page.getByRole('textbox', { name: 'What came off' }).fill('wheel guard, 4 M6x16');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: /Wheel guard/ }).click();
  await drop(page, [await picture(folder, 'guard.jpg', [])]);
  await page.getByRole('button', { name: /take into 1/ }).click();
  await expect(photoOf(page).locator('img').first()).toBeVisible();
  await page.getByRole('button', { name: 'Mark the holes' }).click();
}

test('a mark that a key set has the focus, goes far while an arrow is held, and one undo takes the whole way back', async ({
  open,
  program,
}) => {
  const page = await open();
  await marking(page, program.folder);
  await page.getByRole('button', { name: 'Put it in the middle' }).focus();
  await page.keyboard.press('Enter');
  const mark = marks(page).first();
  await expect(mark).toBeFocused();
  await saved(page);
  const width = (await photoOf(page).locator('img').first().boundingBox())?.width ?? 0;
  const at = async () => Math.round(((await viewOf(page)).state.marker[0]?.x ?? 0) * width);
  const before = await at();
  await page.keyboard.press('Shift+ArrowRight');
  await expect.poll(at).toBe(before + 2);
  await page.keyboard.down('Shift');
  for (let i = 0; i < 6; i += 1) await page.keyboard.down('ArrowRight');
  await page.keyboard.up('ArrowRight');
  await page.keyboard.up('Shift');
  await expect.poll(at).toBe(before + 4 + 5 * 12);
  await page.keyboard.press('Control+z');
  await expect.poll(at).toBe(before + 2);
  await page.keyboard.press('Control+z');
  await expect.poll(at).toBe(before);
});

test('while marks are set a touch sets one, also where the disc of the mark before lies over the next bolt', async ({
  open,
  program,
}) => {
  const page = await open();
  await marking(page, program.folder);
  await touch(page, { x: 0.4, y: 0.4 });
  await expect(marks(page)).toHaveCount(1);
  const disc = await marks(page).first().boundingBox();
  if (!disc) throw new Error('Expected a mark.');
  await page.mouse.click(disc.x + disc.width / 2, disc.y + disc.height / 2);
  await expect(marks(page)).toHaveCount(2);
  await expect(page.getByRole('button', { name: /^hole 2.*: out/ })).toBeVisible();
});

test('from needed over ordered to here in one go: the piece is in hand, and nothing is on order any more', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['end cover, gasket, 2 M8x25'], 'F3');
  await page.getByRole('button', { name: /^To get/ }).click();
  await page.getByRole('radio', { name: 'needed' }).focus();
  const letGo = await hold(page, 'record/make');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  letGo();
  await saved(page);
  await expect(page.locator('.wants').getByRole('radio', { name: 'here' })).toBeChecked();
  await byScript(program, page, []);
  await page.getByRole('button', { name: /^To get$/ }).click();
  await expect(page.getByRole('radio', { name: 'here', checked: true })).toHaveCount(1);
});

test('a check may be passed in the moment after its last answer, before the job has been read again', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['mains locked out', 'drained gear oil 0.9 l'], 'F4');
  await byScript(program, page, [
    ['tick', '2', '1', '--what', 'done'],
    ['tick', 'gear oil', '--what', 'filled', '--value', '0.7 l'],
    ['tick', 'gear oil', '--what', 'cold leak checked'],
  ]);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/^Check before/);
  await page.getByRole('button', { name: 'Accept it' }).click();
  await page.getByLabel('Why it may stay like this').fill('Sight glass is full');
  await page.getByLabel('Your name').fill('Ana');
  const letGo = await hold(page, 'jobs/view');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Passed by Ana')).toBeVisible();
  await page.getByRole('button', { name: /^Pass the check/ }).click();
  const step = page.getByRole('heading', { name: 'Give back: mains locked out' });
  await expect(step).toBeVisible();
  letGo();
  await expect(page.getByText(/step 3 of 3, ready/)).toBeVisible();
  await page.getByRole('button', { name: /^It is given back/ }).click();
  await expect(page.getByText('Everything is back.')).toBeVisible();
});
