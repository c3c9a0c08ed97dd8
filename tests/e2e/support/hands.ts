import type { Locator, Page } from '@playwright/test';
import { drop, type Place } from './pictures.ts';

/** Screens, as the left edge names them. */
type Screen = 'Jobs' | 'Take apart' | 'Off the machine' | 'Put back';

/** How somebody works the window. */
export interface Hands {
  screen(name: Screen): Promise<void>;
  /** Presses a button, ticks a box, chooses a radio button. */
  press(target: Locator): Promise<void>;
  /** Writes into a field over what stands there. */
  write(field: Locator, text: string): Promise<void>;
  /** Ends what was typed into a line or a dialog: with the large key, or with Enter. */
  enter(key: Locator): Promise<void>;
  /** Brings photos in from the files of these paths. */
  photos(paths: readonly string[]): Promise<void>;
  /** Sets the next mark at a place of the photo. */
  mark(at: Place): Promise<void>;
  /** Takes back what was done last, and does it again. */
  undo(): Promise<void>;
  redo(again: Locator): Promise<void>;
}

/** A mouse; the keyboard only types text into fields. */
export function mouse(page: Page): Hands {
  return {
    screen: (name) => page.getByRole('navigation', { name: 'Screens' }).getByRole('button', { name }).click(),
    press: (target) => target.click(),
    write: async (field, text) => {
      await field.click();
      await field.fill(text);
    },
    enter: (key) => key.click(),
    photos: (paths) => drop(page, paths),
    mark: async (at) => {
      const box = await page.locator('.removal-photo .photo img').first().boundingBox();
      if (!box) throw new Error('Expected the photo on the screen.');
      await page.mouse.click(box.x + box.width * at.x, box.y + box.height * at.y);
    },
    undo: () => page.getByRole('button', { name: /^Undo/ }).click(),
    redo: (again) => again.click(),
  };
}
