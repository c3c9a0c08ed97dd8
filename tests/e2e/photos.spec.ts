import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import sharp from 'sharp';
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

test('all that is said of many photos at once stands under Photos until it is read', async ({
  open,
  program,
}) => {
  const page = await open();
  await startJob(page, 'Bench grinder');
  const good = await picture(program.folder, 'one.jpg', HEADS);
  const note = join(program.folder, 'note.jpg');
  writeFileSync(note, 'milk, bread');
  const cut = join(program.folder, 'cut.jpg');
  writeFileSync(cut, readFileSync(good).subarray(0, 9000));
  const dark = join(program.folder, 'dark.jpg');
  writeFileSync(dark, await sharp(good).linear(0.03, 0).jpeg().toBuffer());
  await page.locator('input[type=file]').setInputFiles([good, note, cut, dark]);
  await expect(page.getByRole('alert')).toContainText('And 2 more: all of them stand under Photos, F9.');
  await expect(page.locator('.thumb', { hasText: 'Very dark' })).toHaveCount(1);
  await page.getByRole('button', { name: 'Close' }).click();
  await page.keyboard.press('F9');
  const said = page.locator('.gallery-said li');
  await expect(said).toHaveCount(3);
  await expect(said.filter({ hasText: 'note.jpg: Expected a picture' })).toHaveCount(1);
  await expect(said.filter({ hasText: 'dark.jpg: Very dark. Take it again' })).toHaveCount(1);
  await page.getByRole('button', { name: 'Read', exact: true }).click();
  await expect(said).toHaveCount(0);
});

test('many photos come in with their count, the window stays at work meanwhile, and the rest can be called off', async ({
  open,
  program,
}) => {
  const page = await open();
  await startJob(page, 'Bench grinder');
  const first = readFileSync(await picture(program.folder, 'one.jpg', HEADS));
  // No two alike: a comment of its own in each (JPEG, B.2.4.5).
  const files = Array.from({ length: 120 }, (_, i) => ({
    name: `p${i}.jpg`,
    mimeType: 'image/jpeg',
    buffer: Buffer.concat([
      first.subarray(0, 2),
      Buffer.from([0xff, 0xfe, 0, 6]),
      Buffer.from(String(i).padStart(4)),
      first.subarray(2),
    ]),
  }));
  await page.locator('input[type=file]').setInputFiles(files);
  await expect(page.getByRole('status')).toContainText(/Adding photos: \d+ of 120/);
  const entry = page.getByRole('textbox', { name: 'What came off' });
  await entry.fill('belt');
  await entry.press('Enter');
  await expect(page.getByRole('button', { name: /Removal 1 Belt/ })).toBeVisible();
  await page.getByRole('button', { name: 'Cancel' }).click();
  await expect(page.getByRole('status')).toContainText(/\d+ not added/);
});

test('while marks are set, a touch on the disc of an earlier mark sets the next one, and a mark is moved by its point', async ({
  open,
  program,
}) => {
  const page = await open();
  await withPhoto(page, program.folder);
  await page.getByRole('button', { name: 'Mark the holes' }).click();
  await touch(page, HEADS[0] as (typeof HEADS)[0]);
  const first = page.getByRole('button', { name: /^hole 1.*: out/ });
  const disc = await first.boundingBox();
  if (!disc) throw new Error('Expected a mark.');
  await page.mouse.click(disc.x + disc.width / 2, disc.y + disc.height / 2);
  await expect(page.getByRole('button', { name: /^hole 2.*: out/ })).toBeVisible();
  await expect(first).toBeVisible();
  await touch(page, { x: (HEADS[0]?.x ?? 0) + 0.004, y: HEADS[0]?.y ?? 0 });
  await expect(page.getByLabel('This mark stands for')).toHaveValue(await valueOf(page, 'hole 1'));
  await expect(page.getByRole('button', { name: /^hole 3/ })).toHaveCount(0);
});

/** The value of a choice by the words it begins with. */
async function valueOf(page: Page, name: string): Promise<string> {
  const all = page.getByLabel('This mark stands for').locator('option', { hasText: name });
  return (await all.first().getAttribute('value')) ?? '';
}

test('on a phone what was understood and Add photos stand in sight', async ({ open }) => {
  const page = await open();
  await page.setViewportSize({ width: 390, height: 844 });
  await startJob(page, 'Coffee grinder');
  await page.keyboard.type('hopper, 3 M4x10, bag 1');
  const pad = await page.getByRole('group', { name: 'Number pad' }).boundingBox();
  const chips = await page.getByRole('list', { name: 'Understood' }).boundingBox();
  if (!pad || !chips) throw new Error('Expected the number pad and the chips.');
  expect(chips.y + chips.height).toBeLessThanOrEqual(pad.y);
  await expect(page.getByRole('button', { name: 'Add photos' })).toBeInViewport({ ratio: 1 });
});
