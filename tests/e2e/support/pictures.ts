import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import sharp from 'sharp';

/** A place on a picture, as fractions of it. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

/** A made picture: bolt heads on a grey plate, at known places. */
export async function picture(
  folder: string,
  name: string,
  heads: readonly Place[],
  turn = 1,
): Promise<string> {
  const drawn = heads.map(
    ({ x, y }) =>
      `<circle cx="${x * 1600}" cy="${y * 1200}" r="60" fill="#333" stroke="#ddd" stroke-width="8"/>`,
  );
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="1600" height="1200"><rect width="1600" height="1200" fill="#889"/>${drawn.join('')}<text x="700" y="620" font-size="90">${name}</text></svg>`;
  const path = join(folder, name);
  writeFileSync(path, await sharp(Buffer.from(svg)).withMetadata({ orientation: turn }).jpeg().toBuffer());
  return path;
}

/** Drops files as a file manager does. */
export async function drop(page: Page, paths: readonly string[]): Promise<void> {
  const files = paths.map((path) => ({
    name: path.split('/').at(-1) ?? '',
    base64: readFileSync(path).toString('base64'),
  }));
  const data = await page.evaluateHandle((list) => {
    const transfer = new DataTransfer();
    for (const { name, base64 } of list)
      transfer.items.add(
        new File([Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0))], name, { type: 'image/jpeg' }),
      );
    return transfer;
  }, files);
  await page.dispatchEvent('main', 'dragover', { dataTransfer: data });
  await page.dispatchEvent('main', 'drop', { dataTransfer: data });
}

/** The photo on the screen Take apart. */
export const photoOf = (page: Page) => page.locator('.removal-photo .photo');

/** Touches a place on the photo. */
export async function touch(page: Page, at: Place): Promise<void> {
  const picture = page.locator('.removal-photo .photo img').first();
  const box = await picture.boundingBox();
  if (!box) throw new Error('Expected the photo on the screen.');
  await page.mouse.click(box.x + box.width * at.x, box.y + box.height * at.y);
}
