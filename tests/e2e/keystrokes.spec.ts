import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import type { JobView } from '../../core/contract/views.ts';
import { countInputs, type Counted, inputsOf, listenToInput } from './support/klm.ts';
import { expect, test } from './support/program.ts';
import { loggedJob, saved } from './support/seed.ts';
import { viewOf } from './support/view.ts';

const ROOT = join(import.meta.dirname, '..', '..');

const last = (view: JobView) => [...view.state.removal].sort((a, b) => (a.ord < b.ord ? -1 : 1)).at(-1);

interface Action {
  readonly name: string;
  /** As a hand does it, for the table. */
  readonly how: string;
  /** Most seconds it may take; null where no promise was made. */
  readonly most: number | null;
  /** It always follows the action before, so that nobody has to think of it. */
  readonly anticipated?: boolean;
  readonly before?: (page: Page) => Promise<void>;
  readonly run: (page: Page) => Promise<void>;
  /** That the program did it. */
  readonly did: (page: Page) => Promise<void>;
}

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true }).click();
const key = (page: Page, name: string) => page.keyboard.press(name);

async function addPhoto(page: Page, name: string): Promise<void> {
  const photo = join(ROOT, 'samples', 'photos', name);
  await page.locator('input[type=file]').setInputFiles([photo]);
  await expect(page.locator('.thumb')).toHaveCount(1);
}

/** A line logged beforehand. */
async function logged(page: Page, line: string): Promise<void> {
  await page.getByRole('textbox', { name: 'What came off' }).fill(line);
  await key(page, 'Enter');
  await saved(page);
}

/** Five with a 13 mm head, in a bag of their own, with the photo that was taken before. */
async function bagAndPhoto(page: Page): Promise<void> {
  await saved(page);
  await expect(page.getByRole('textbox', { name: 'What came off' })).toHaveValue('');
  const { state } = await viewOf(page);
  const removal = last({ state } as JobView);
  const set = state.fset.find((one) => one.removalId === removal?.id);
  expect(state.position.filter((hole) => hole.setId === set?.id)).toHaveLength(5);
  expect(state.stow.find((stow) => stow.id === set?.stowId)?.label).toMatch(/^\d+$/);
  expect(state.photo.filter((photo) => photo.removalId === removal?.id)).toHaveLength(1);
}

const titled = (title: string | RegExp) => async (page: Page) => {
  await saved(page);
  await expect.poll(async () => last(await viewOf(page))?.title).toMatch(title);
};

const ACTIONS: readonly Action[] = [
  {
    name: 'Removal: five bolts, a bag, a photo',
    how: '`Alt T` `5 13` `Enter`',
    most: 10,
    before: (page) => addPhoto(page, 'IMG_0412.jpg'),
    run: async (page) => {
      await key(page, 'Alt+t');
      await page.keyboard.type('5 13');
      await key(page, 'Enter');
    },
    did: bagAndPhoto,
  },
  {
    name: 'Next removal',
    how: '`Enter`',
    most: 0.5,
    anticipated: true,
    before: async (page) => {
      await page
        .getByRole('button', { name: /Side cover/ })
        .first()
        .click();
      await expect(page.getByLabel('Title of this removal')).toHaveValue('Side cover');
    },
    run: (page) => key(page, 'Enter'),
    did: (page) => expect(page.getByLabel('Title of this removal')).toHaveValue(''),
  },
  {
    name: 'Same as last',
    how: '`↑` `Enter`',
    most: null,
    run: async (page) => {
      await key(page, 'ArrowUp');
      await key(page, 'Enter');
    },
    did: async (page) => {
      await saved(page);
      await expect.poll(async () => last(await viewOf(page))?.typed).toBe('5 13');
    },
  },
  {
    name: 'Bolts whose thread is known',
    how: '`4 m8x25` `Enter`',
    most: null,
    run: async (page) => {
      await page.keyboard.type('4 m8x25');
      await key(page, 'Enter');
    },
    did: async (page) => {
      await saved(page);
      await expect.poll(async () => last(await viewOf(page))?.typed).toBe('4 m8x25');
    },
  },
  {
    name: 'Plug off, among plugs',
    how: '`fan` `Enter`',
    most: 2.5,
    before: (page) => key(page, 'Alt+p'),
    run: async (page) => {
      await page.keyboard.type('fan');
      await key(page, 'Enter');
    },
    did: async (page) => {
      await titled('Plug at fan')(page);
      await key(page, 'Escape');
    },
  },
  {
    name: 'Hose end off, among hose ends',
    how: '`pump` `Enter`',
    most: null,
    before: (page) => key(page, 'Alt+h'),
    run: async (page) => {
      await page.keyboard.type('pump');
      await key(page, 'Enter');
    },
    did: async (page) => {
      await titled('Hose at pump')(page);
      await key(page, 'Escape');
    },
  },
  {
    name: 'Slackened',
    how: '`2 13` `F7`',
    most: 3,
    run: async (page) => {
      await page.keyboard.type('2 13');
      await key(page, 'F7');
    },
    did: async (page) => {
      await saved(page);
      await expect.poll(async () => last(await viewOf(page))?.did).toBe('slackened');
    },
  },
  {
    name: 'Moved aside, named before',
    how: '`ca` `Tab` `F10`',
    most: 3,
    run: async (page) => {
      await page.keyboard.type('ca');
      await key(page, 'Tab');
      await key(page, 'F10');
    },
    did: async (page) => {
      await titled('Caliper')(page);
      expect(last(await viewOf(page))?.did).toBe('aside');
    },
  },
  {
    name: 'Take back',
    how: '`Ctrl Z`',
    most: null,
    run: (page) => key(page, 'Control+z'),
    did: async (page) => {
      await saved(page);
      await expect.poll(async () => last(await viewOf(page))?.did).toBe('slackened');
    },
  },
  {
    name: 'The same on the other side',
    how: '`Alt R` `Enter`, and `Enter` when it came off',
    most: null,
    before: (page) => logged(page, 'end cover, 4 m8x25'),
    run: async (page) => {
      await key(page, 'Alt+r');
      await expect(page.getByRole('dialog')).toBeVisible();
      await key(page, 'Enter');
      await expect(page.getByRole('button', { name: /^It is off/ })).toBeVisible();
      await key(page, 'Enter');
    },
    did: async (page) => {
      await titled('End cover')(page);
      await expect.poll(async () => last(await viewOf(page))?.phase).toBe('under way');
    },
  },
  {
    name: 'Confirm a thread at the bench',
    how: 'touch `M8 × 1.25`',
    most: null,
    before: async (page) => {
      await key(page, 'Enter');
      await logged(page, '5 13');
      await key(page, 'Alt+b');
      await page.locator('.off-list').getByRole('button', { name: /M8\?/ }).click();
    },
    run: (page) => page.getByRole('button', { name: 'M8 × 1.25' }).click(),
    did: async (page) => {
      await expect(page.getByLabel('Thread and pitch')).toHaveValue('M8 × 1.25');
      await key(page, 'Alt+b');
      await key(page, 'Enter');
    },
  },
  {
    name: 'Removal: five bolts, a bag, a photo, all by touch',
    how: 'Take all, 5 × 1 3, Next removal',
    most: null,
    before: (page) => addPhoto(page, 'IMG_0414.jpg'),
    run: async (page) => {
      await press(page, /^Take all into/);
      for (const name of ['5', 'times, or by', '1', '3']) await press(page, name);
      await press(page, /^Next removal/);
    },
    did: bagAndPhoto,
  },
];

const HEAD = ['action', 'by hand', 'keys', 'touches', 'hand moves', 'seconds', 'promise'];

function tableOf(rows: readonly { readonly action: Action; readonly counted: Counted }[]): string {
  const lines = rows.map(({ action, counted }) => [
    action.name,
    action.how,
    String(counted.keys),
    String(counted.presses),
    String(counted.handMoves),
    counted.seconds.toFixed(2),
    action.most === null ? '' : `≤ ${action.most}`,
  ]);
  return [HEAD, HEAD.map(() => '---'), ...lines].map((cells) => `| ${cells.join(' | ')} |`).join('\n');
}

/** The table as the README has it. */
function readmeTable(): string {
  const lines = readFileSync(join(ROOT, 'README.md'), 'utf8').split('\n');
  const from = lines.findIndex((line) => line.startsWith(`| ${HEAD.join(' | ')}`));
  const rest = lines.slice(Math.max(0, from));
  return rest
    .slice(
      0,
      rest.findIndex((line) => !line.startsWith('|')),
    )
    .join('\n');
}

test('the commonest actions cost less than a bag and a felt pen, and the README says how much', async ({
  open,
  program,
}) => {
  const page = await open();
  await listenToInput(page);
  await page.setViewportSize({ width: 1280, height: 800 });
  await loggedJob(program, page, ['side cover, gasket, 2 M8x40', 'aside caliper, hung on wire'], 'F2');
  const entry = page.getByRole('textbox', { name: 'What came off' });
  const rows: { action: Action; counted: Counted }[] = [];
  for (const action of ACTIONS) {
    await action.before?.(page);
    await saved(page);
    await inputsOf(page);
    await action.run(page);
    const counted = countInputs(await inputsOf(page), action.anticipated ?? false);
    await action.did(page);
    rows.push({ action, counted });
    if ((await entry.inputValue()) !== '') throw new Error(`Expected an empty line after: ${action.name}`);
  }
  const table = tableOf(rows);
  console.log(table);
  for (const { action, counted } of rows)
    if (action.most !== null) expect(counted.seconds, action.name).toBeLessThanOrEqual(action.most);
  expect(readmeTable()).toBe(table);
});
