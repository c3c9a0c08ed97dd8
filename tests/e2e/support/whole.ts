import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import sharp from 'sharp';
import { REMOVALS, type Told } from '../../../samples/job/removals.ts';
import type { Hands } from './hands.ts';
import { expect } from './program.ts';
import { saved } from './seed.ts';

const ROOT = join(import.meta.dirname, '..', '..', '..');
const PHOTOS = join(ROOT, 'samples', 'photos');
const JOB = 'Blower head of the dryer';

/** Who answers at a check, and why it may be passed. */
export const WHO = 'Edda Marlow';
export const WHY = 'Looked at and counted at the bench';
/** Read on the wrench at the first hole of the gear cover, N·m. */
export const TORQUE = 24.5;
/** Bolts of the gear cover, of which one is lost and bought new. */
export const SHORT = 14;

interface Hole {
  readonly set?: string;
  readonly n?: number;
  readonly x: number;
  readonly y: number;
  readonly visible: boolean;
}

const PLACES = JSON.parse(readFileSync(join(PHOTOS, 'places.json'), 'utf8')) as Readonly<
  Record<string, readonly Hole[]>
>;

/** The first holes of the gear cover that its first photo shows. */
export const holesOf = (count: number): Hole[] =>
  (PLACES['IMG_0414.jpg'] ?? []).filter((one) => one.set === 'gear-cover' && one.visible).slice(0, count);

/** Photos of the sample, smaller, so that a busy machine takes them quickly. */
async function smaller(folder: string, names: readonly string[]): Promise<string[]> {
  const made = names.map(async (name) => {
    const path = join(folder, name);
    await sharp(join(PHOTOS, name)).resize(1600).withMetadata().jpeg({ quality: 70 }).toFile(path);
    return path;
  });
  return Promise.all(made);
}

const entryOf = (page: Page) => page.getByRole('textbox', { name: 'What came off' });
const nextKey = (page: Page) => page.getByRole('button', { name: /^(Next removal|Add to)/ });

/** Types one line and writes it down. */
async function line(page: Page, hands: Hands, text: string): Promise<void> {
  const entry = entryOf(page);
  await hands.write(entry, text);
  await hands.enter(nextKey(page));
  await expect(entry).toHaveValue('');
}

/** One removal of the story: named first, then its lines; the first ends it, the others are added to it. */
async function log(page: Page, hands: Hands, told: Told, number: number): Promise<void> {
  const title = page.getByRole('textbox', { name: 'Title of this removal' });
  await hands.write(title, told.title);
  if (told.did !== undefined && !told.lines.some((one) => one.startsWith(told.did ?? '')))
    await hands.press(page.getByRole('radio', { name: told.did }));
  const [first = '', ...others] = told.lines;
  await line(page, hands, first);
  await expect(page.locator('.removal-number')).toContainText(new RegExp(`^${number + 1}\\D`));
  if (others.length === 0) return;
  await hands.press(page.locator('.dl-row button').filter({ hasText: told.title }).last());
  await expect(title).toHaveValue(told.title);
  for (const text of others) await line(page, hands, text);
  await hands.enter(nextKey(page));
  await expect(page.locator('.removal-number')).toContainText(new RegExp(`^${number + 1}\\D`));
}

/** Every removal of the story; in the middle the window is loaded again over a half-typed line. */
export async function takeApart(page: Page, hands: Hands, folder: string, marks: number): Promise<void> {
  const start = page.getByRole('button', { name: 'Start my own' });
  await hands.press(start);
  await hands.write(page.getByLabel('What machine, or what part of it?'), JOB);
  await hands.enter(page.getByRole('button', { name: /^Start\b/ }).last());
  await expect(entryOf(page)).toBeFocused();
  for (const [i, told] of REMOVALS.entries()) {
    await log(page, hands, told, i + 1);
    if (told.title === 'Gear cover') await photograph(page, hands, folder, marks);
    if (told.title === 'Relief valve') {
      await saved(page);
      await hands.write(entryOf(page), 'union at the c');
      await page.reload();
      await expect(entryOf(page)).toHaveValue('union at the c');
      await hands.write(entryOf(page), '');
    }
  }
  await saved(page);
}

const markKeys = (page: Page) => page.locator('.removal-photo .mark-key');

/** Photos come in, are filed into the gear cover, and its holes get their marks. */
async function photograph(page: Page, hands: Hands, folder: string, count: number): Promise<void> {
  await hands.photos(await smaller(folder, ['IMG_0414.jpg', 'IMG_0431.jpg', 'IMG_0438.jpg']));
  await expect(page.locator('.unfiled-count')).toContainText('3');
  await hands.press(page.locator('.dl-row button').filter({ hasText: 'Gear cover' }));
  await expect(page.getByRole('textbox', { name: 'Title of this removal' })).toHaveValue('Gear cover');
  await hands.press(page.getByRole('button', { name: /take into 14/ }).first());
  await expect(page.locator('.unfiled-count')).toContainText('2');
  await hands.press(page.getByRole('button', { name: /^Take all into 14/ }));
  await expect(page.getByRole('button', { name: /^Photo \d of 3/ })).toBeVisible();
  await hands.press(page.getByRole('button', { name: 'Mark the holes' }));
  for (const [i, hole] of holesOf(count).entries()) {
    await hands.mark(hole);
    await expect(markKeys(page)).toHaveCount(i + 1);
    await expect(page.getByRole('button', { name: new RegExp(`^hole ${i + 1}\\b.*: out`) })).toBeVisible();
  }
  await saved(page);
  await hands.unmark();
  await expect(markKeys(page)).toHaveCount(count - 1);
  await hands.press(page.getByRole('button', { name: 'Done marking' }));
  await hands.go(nextKey(page));
  await expect(page.locator('.removal-number')).toContainText(/^15\D/);
}

/** A tin is counted one short: the search opens, and ends with the piece written off by name and reason. */
export async function countShort(page: Page, hands: Hands): Promise<void> {
  await hands.screen('Off the machine');
  await hands.press(page.locator('.off-list').getByRole('button', { name: /^7\b.*M8/ }));
  await hands.press(page.getByRole('button', { name: 'One less' }));
  await hands.press(page.getByRole('button', { name: /^It is 13/ }));
  const missing = page.getByText('One is missing.');
  await expect(missing).toBeVisible();
  await hands.press(page.getByRole('button', { name: 'Searched, not found' }));
  await hands.write(page.getByLabel(/^Where did you look/), 'Bench and sump searched twice');
  await hands.enter(page.getByRole('dialog').getByRole('button', { name: /^Write it off/ }));
  await expect(missing).toHaveCount(0);
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await saved(page);
}

/** The first step back is done, taken back and done again; the next one stands there each time it is done. */
export async function firstStepBack(page: Page, hands: Hands): Promise<void> {
  const heading = page.getByRole('heading', { level: 1 });
  const back = page.getByRole('button', { name: /^It is back/ });
  await hands.screen('Put back');
  await expect(heading).toHaveText('Rotor, left');
  await hands.press(back);
  await expect(heading).toHaveText('Rotor, right');
  await saved(page);
  await hands.undo();
  await expect(heading).toHaveText('Rotor, left');
  await saved(page);
  await hands.redo();
  await expect(heading).toHaveText('Rotor, right');
  await saved(page);
}
