import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect, startJob, test } from './support/program.ts';
import { drop, photoOf, picture, touch } from './support/pictures.ts';

/** Four bolt heads. */
const HEADS = [
  { x: 0.25, y: 0.3 },
  { x: 0.75, y: 0.3 },
  { x: 0.75, y: 0.7 },
  { x: 0.25, y: 0.7 },
];

/** A logged removal with one photo filed into it. */
async function withPhoto(page: Page, folder: string): Promise<void> {
  await startJob(page, 'Bench grinder');
  await page.getByRole('textbox', { name: 'What came off' }).fill('wheel guard, 4 M6x16');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: /Wheel guard/ }).click();
  await drop(page, [await picture(folder, 'guard.jpg', HEADS)]);
  await page.getByRole('button', { name: /take into 1/ }).click();
  await expect(photoOf(page).locator('img').first()).toBeVisible();
}

test('a dropped photo is offered, taken, marked; the marks survive a reload and are undone', async ({
  open,
  program,
}) => {
  const page = await open();
  await withPhoto(page, program.folder);
  await page.getByRole('button', { name: 'Mark the holes' }).click();
  await touch(page, HEADS[0] as (typeof HEADS)[0]);
  await expect(page.getByRole('button', { name: /^hole 1.*: out/ })).toBeVisible();
  await touch(page, HEADS[1] as (typeof HEADS)[0]);
  await expect(page.getByRole('button', { name: /^hole 2.*: out/ })).toBeVisible();
  await expect(page.getByText('of 4 shown')).toBeVisible();
  await page.getByRole('button', { name: 'Done marking' }).click();
  await page.reload();
  await expect(page.getByRole('button', { name: /^hole 2.*: out/ })).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(page.getByRole('button', { name: /^hole 2/ })).toHaveCount(0);
  await expect(page.getByRole('button', { name: /^hole 1/ })).toBeVisible();
});

test('a mark is moved by a drag, bound to another hole, and taken away with Delete', async ({
  open,
  program,
}) => {
  const page = await open();
  await withPhoto(page, program.folder);
  await page.getByRole('button', { name: 'Mark the holes' }).click();
  await touch(page, HEADS[0] as (typeof HEADS)[0]);
  await page.getByRole('button', { name: 'Done marking' }).click();
  const mark = page.getByRole('button', { name: /^hole 1.*: out/ });
  const before = await mark.boundingBox();
  if (!before) throw new Error('Expected a mark.');
  await page.mouse.move(before.x + 20, before.y + 20);
  await page.mouse.down();
  await page.mouse.move(before.x + 60, before.y + 30, { steps: 4 });
  await page.mouse.move(before.x + 140, before.y + 60, { steps: 4 });
  await page.mouse.up();
  await expect(page.getByText('not saved')).toHaveCount(0);
  await page.reload();
  const after = await mark.boundingBox();
  expect(Math.abs((after?.x ?? 0) - before.x)).toBeGreaterThan(40);
  await mark.focus();
  await page.keyboard.press('Enter');
  await page.getByLabel('This mark stands for').selectOption(await optionOf(page, 'hole 3'));
  await expect(page.getByRole('button', { name: /^hole 3.*: out/ })).toBeVisible();
  await page.getByRole('button', { name: /^hole 3/ }).focus();
  await page.keyboard.press('Delete');
  await expect(page.getByRole('button', { name: /^hole 3/ })).toHaveCount(0);
  await expect(page.getByText('not saved')).toHaveCount(0);
  await page.reload();
  await expect(photoOf(page).locator('img').first()).toBeVisible();
  await expect(page.getByRole('button', { name: /^hole 3/ })).toHaveCount(0);
});

async function optionOf(page: Page, name: string): Promise<string> {
  const all = await page.getByLabel('This mark stands for').locator('option').allTextContents();
  return all.find((text) => text.slice(0, name.length) === name) ?? '';
}

test('photos are chosen, a broken one is said by its name, the same one again is no second one', async ({
  open,
  program,
}) => {
  const page = await open();
  await startJob(page, 'Bench grinder');
  const good = await picture(program.folder, 'one.jpg', HEADS);
  const broken = join(program.folder, 'broken.jpg');
  writeFileSync(broken, readFileSync(good).subarray(0, 9000));
  await page.locator('input[type=file]').setInputFiles([good, broken]);
  await expect(page.getByRole('alert')).toContainText('broken.jpg: Expected');
  await expect(page.locator('.thumb')).toHaveCount(1);
  await page.getByRole('button', { name: 'Close' }).click();
  await page.locator('input[type=file]').setInputFiles([good]);
  await expect(page.getByRole('status')).toContainText('1 was here already');
  await expect(page.locator('.thumb')).toHaveCount(1);
  await page.keyboard.press('F1');
  await expect(page.locator('.jobs-photo img').first()).toBeVisible();
});
