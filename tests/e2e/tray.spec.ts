import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import { expect, test } from './support/program.ts';
import { loggedJob, saved } from './support/seed.ts';

const LINES = [
  'pump cover, 4 M8x25 hex 13, bag 1',
  'side cover, 6 M8x30 hex 13, bag 2',
  '2 rags in the port',
  'bearing cap 1, own place, 2 M10x1.5x40 hex 16, bag 3',
];

test('a spilled tray is read from a table, mended by hand, survives a reload, and is booked in one', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, LINES, 'F3');
  await page.getByRole('button', { name: 'Spilled tray' }).click();
  const file = join(program.folder, 'tray.csv');
  writeFileSync(file, 'count;diameter;pitch;length;head\n3;7,86;1,25;25,3;13\nfew;7,86;1,25;30;13\n');
  await page.getByLabel(/A table of loose fasteners/).setInputFiles(file);
  await expect(page.getByText('Expected a whole number from 1 to 2000')).toBeVisible();
  const goes = page.getByRole('heading', { name: 'On the table, and where it belongs' }).locator('..');
  await expect(goes.getByRole('listitem')).toHaveText([/^3 × .*→ 3 Pump cover.*bag 1 · 4 holes open/, /few/]);

  await page.getByRole('button', { name: /^Change few/ }).click();
  await expect(page.getByLabel('Thread, or diameter')).toHaveValue('7.86');
  await page.getByLabel('How many').fill('7');
  await page.keyboard.press('Enter');
  await expect(page.getByText('pieces on the table')).toBeVisible();
  await expect(page.getByText('All holes it fits are taken')).toBeVisible();
  await page.reload();
  await expect(goes.getByRole('listitem')).toHaveText([/→ 3 Pump cover/, /→ 6 Side cover.*1 left over/]);

  await page.getByLabel('Bag 1: 4').check();
  await expect(page.getByRole('button', { name: 'Book 3 as sorted' })).toBeVisible();
  await page.getByLabel('Bag 2: 6').check();
  await page.getByLabel('Where do the sorted ones lie now?').fill('tray 9');
  await expect(page.getByRole('heading', { name: 'Short' }).locator('..').getByRole('listitem')).toHaveText([
    /1.*Pump cover/,
  ]);
  await page.getByRole('button', { name: 'Book 9 as sorted' }).click();
  await expect(page.getByText('1 not on the table: looked for from now on.')).toBeVisible();
  await expect(page.getByRole('button', { name: /^9.*Pump cover.*Side cover/ })).toBeVisible();
  await expect(page.getByText('1 unaccounted')).toBeVisible();
  await page.getByRole('button', { name: 'Looked for, 1' }).click();
  await expect(page.getByRole('region', { name: /M8 × 25/ })).toContainText('one missing');
  await saved(page);
  await page.keyboard.press('Control+z');
  await expect(page.getByText('searches are open')).toBeVisible();
  await expect(page.getByText('1 unaccounted')).toHaveCount(0);
});

test('a line typed into the first field is spread over the fields, and a doubtful fit is booked only when ticked', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['pump cover, 4 M8x25 hex 13, bag 1', 'guard, 2 13, bag 2'], 'F3');
  await page.getByRole('button', { name: 'Spilled tray' }).click();
  await page.getByLabel('How many').fill('2 M8x40 hex 13');
  await page.keyboard.press('Enter');
  const row = page.getByRole('listitem').filter({ hasText: '2 × M8' });
  await expect(row).toHaveText(/40 ± 1 mm.*→ 2 Guard.*bag 2.*Doubtful: length not recorded there/);
  await expect(page.getByRole('button', { name: 'Book 0 as sorted' })).toBeDisabled();
  await page.getByLabel('Book the 2 doubtful ones too').check();
  expect((await new AxeBuilder({ page }).analyze()).violations.map((one) => one.id)).toEqual([]);
  await page.getByRole('button', { name: 'Book 2 as sorted' }).click();
  await expect(page.getByText('2 sorted.')).toBeVisible();
});

test('an unknown bolt is held against the open holes as it is measured, and leads to them', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, LINES, 'F3');
  await page.getByRole('button', { name: 'Unknown bolt' }).click();
  await page.getByLabel('Thread, or diameter').fill('7.86');
  await page.getByLabel('Length', { exact: true }).fill('30');
  await expect(page.getByText('It fits 6 open holes in 1 job.')).toBeVisible();
  await page.getByLabel('Length', { exact: true }).fill('34');
  await expect(
    page.getByText(/fits none of the open holes. Nearest: M8 .*Side cover.*length \+4 mm/),
  ).toBeVisible();
  await page.getByLabel('Thread, or diameter').fill('banana');
  await expect(page.getByRole('alert').filter({ hasText: 'Expected a thread such as M8' })).toBeVisible();
  await page.getByLabel('Thread, or diameter').fill('M8');
  await page.getByRole('button', { name: 'To its removal: Side cover' }).click();
  await expect(page.getByRole('textbox', { name: 'Title of this removal' })).toHaveValue('Side cover');
});

test('a lost socket holds the way back until it is found, and a rag can be missed too', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, LINES, 'F3');
  await page.getByRole('button', { name: 'Lost something' }).click();
  await page.getByLabel('What is missing?').fill('10 mm socket');
  await page.keyboard.press('Enter');
  const socket = page.getByRole('region', { name: '10 mm socket' });
  await expect(socket).toContainText('Used last, as far as is known, at Bearing cap 1.');
  await expect(socket.getByRole('listitem').last()).toContainText('bearing cap 1: stood open');
  await page.getByRole('button', { name: /One is missing: .*rag/ }).click();
  await expect(page.getByText('searches are open')).toBeVisible();
  await page.keyboard.press('F4');
  await expect(page.getByText(/10 mm socket: 1 not found/).first()).toBeVisible();
  await page.keyboard.press('F3');
  await page.getByRole('button', { name: /^Searched, not found: .*rag/ }).click();
  await page.getByLabel(/Where did you look/).fill('Port and sump, with a mirror');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Found it: 10 mm socket' }).click();
  await expect(page.getByRole('region')).toHaveCount(0);
  await page.keyboard.press('F4');
  await expect(page.getByText(/10 mm socket/)).toHaveCount(0);
});
