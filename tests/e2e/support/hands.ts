import type { Locator, Page } from '@playwright/test';
import { drop, type Place } from './pictures.ts';
import { expect } from './program.ts';
import { choose, reach } from './reach.ts';

const FUNCTION_KEYS = { Jobs: 'F1', 'Take apart': 'F2', 'Off the machine': 'F3', 'Put back': 'F4' } as const;

/** Screens, as the left edge names them. */
type Screen = keyof typeof FUNCTION_KEYS;

/** How somebody works the window. */
export interface Hands {
  screen(name: Screen): Promise<void>;
  /** Presses a button, ticks a box, chooses a radio button. */
  press(target: Locator): Promise<void>;
  /** Presses the large key of a screen: itself, or the key of the keyboard that it shows. */
  go(key: Locator): Promise<void>;
  /** Writes into a field over what stands there. */
  write(field: Locator, text: string): Promise<void>;
  /** Ends what was typed into a line or a dialog: with the large key, or with Enter. */
  enter(key: Locator): Promise<void>;
  /** Brings photos in from the files of these paths. */
  photos(paths: readonly string[]): Promise<void>;
  /** Sets the next mark at a place of the photo. */
  mark(at: Place): Promise<void>;
  /** Takes back the mark that was set last; by keyboard setting and moving it are two deeds. */
  unmark(): Promise<void>;
  /** Takes back what was done last, and does it again. */
  undo(): Promise<void>;
  redo(): Promise<void>;
}

const picture = (page: Page) => page.locator('.removal-photo .photo img').first();

/** Where a place of the photo is in the window, px. */
async function inWindow(page: Page, at: Place): Promise<Place> {
  const box = await picture(page).boundingBox();
  if (!box) throw new Error('Expected the photo on the screen.');
  return { x: box.x + box.width * at.x, y: box.y + box.height * at.y };
}

/** A mouse; the keyboard only types text into fields. */
export function mouse(page: Page): Hands {
  const undo = () => page.getByRole('button', { name: /^Undo/ }).click();
  return {
    screen: (name) => page.getByRole('navigation', { name: 'Screens' }).getByRole('button', { name }).click(),
    press: (target) => target.click(),
    go: (key) => key.click(),
    write: async (field, text) => {
      await field.click();
      await field.fill(text);
    },
    enter: (key) => key.click(),
    photos: (paths) => drop(page, paths),
    mark: async (at) => {
      const { x, y } = await inWindow(page, at);
      await page.mouse.click(x, y);
    },
    unmark: undo,
    undo,
    redo: () => page.getByRole('button', { name: 'Do again' }).click(),
  };
}

/** What Enter would press by itself, or would type into. */
const takesEnter = (page: Page): Promise<boolean> =>
  page.evaluate(
    () => document.activeElement?.closest('button, a, summary, select, input, textarea') !== null,
  );

/** A keyboard alone: Tab, arrows, letters, Enter, Space and the function keys. No pointer, and no focus set by a script. */
export function keyboard(page: Page): Hands {
  const { keyboard: keys } = page;
  const press = async (target: Locator) => {
    const type = await target.evaluate((one) => (one instanceof HTMLInputElement ? one.type : 'button'));
    if (type === 'radio') return choose(page, target);
    await reach(page, target);
    await keys.press(type === 'checkbox' ? 'Space' : 'Enter');
  };
  return {
    screen: (name) => keys.press(FUNCTION_KEYS[name]),
    press,
    go: async (key) => {
      await expect(key).toBeEnabled();
      const hint = (await key.locator('kbd').textContent()) ?? '';
      if (hint === 'Enter' && (await takesEnter(page))) await press(key);
      else await keys.press(hint.length === 1 ? hint.toLowerCase() : hint);
    },
    write: async (field, text) => {
      await reach(page, field);
      await keys.press('Control+a');
      if (text === '') await keys.press('Delete');
      else await keys.type(text);
      await expect(field).toHaveValue(text);
    },
    enter: () => keys.press('Enter'),
    photos: async (paths) => {
      const chooser = page.waitForEvent('filechooser');
      await press(page.getByRole('button', { name: 'Add photos' }));
      await (await chooser).setFiles([...paths]);
    },
    mark: async (at) => {
      await press(page.getByRole('button', { name: 'Put it in the middle' }));
      const own = page.locator('.removal-photo .mark-key[aria-current=step]');
      await expect(own).toBeFocused();
      await draw(page, own, at);
    },
    unmark: async () => {
      await keys.press('Control+z');
      await keys.press('Control+z');
    },
    undo: () => keys.press('Control+z'),
    redo: () => keys.press('Control+Shift+z'),
  };
}

/** So far a press of an arrow moves a mark, and so far each repeat of one that is held down, px. */
const FINE = 2;
const HELD = 12;

/** Moves a mark from the middle of what is shown to a place of the photo: Shift and arrows, held down for the long way. */
async function draw(page: Page, mark: Locator, at: Place): Promise<void> {
  const { keyboard: keys } = page;
  const box = await page.locator('.removal-photo .photo').boundingBox();
  const to = await inWindow(page, at);
  if (!box) throw new Error('Expected the photo on the screen.');
  const ways = [
    { far: to.x - (box.x + box.width / 2), less: 'ArrowLeft', more: 'ArrowRight' },
    { far: to.y - (box.y + box.height / 2), less: 'ArrowUp', more: 'ArrowDown' },
  ];
  await keys.down('Shift');
  for (const { far, less, more } of ways) {
    const arrow = far < 0 ? less : more;
    const left = Math.abs(far);
    // The first stroke of a held key is no repeat.
    const held = Math.floor(Math.max(0, left - FINE) / HELD);
    for (let i = 0; i <= held && held > 0; i += 1) await keys.down(arrow);
    if (held > 0) await keys.up(arrow);
    const fine = Math.round((left - (held > 0 ? FINE + held * HELD : 0)) / FINE);
    for (let i = 0; i < fine; i += 1) await keys.press(arrow);
  }
  await keys.up('Shift');
  await expect(mark).toBeFocused();
}
