import type { Page } from '@playwright/test';
import { expect, openSample, startJob, test } from './support/program.ts';
import { byScript, saved } from './support/seed.ts';
import { inSight } from './support/view.ts';

/** Windows that the program must fit: a tablet held upright, a small screen, and that one at 200 % (half its pixels). */
const SIZES = [
  { name: 'a tablet held upright', width: 820, height: 1180 },
  { name: 'a small screen', width: 1280, height: 800 },
  { name: 'a small screen at 200 %', width: 640, height: 400 },
] as const;

const LINES = [
  'mains locked out',
  'belt guard, 4 M6x16',
  'side cover, gasket, 12 13, 4 of them 20 long, 8 of them 45, one stripped',
  '+ hose, lower, 2 ends, clamp 35 mm',
  'aside cable loom behind the control box of the second drive, hung on wire',
];

/** Each screen of taking apart, by how it is reached. */
const SCREENS: readonly (readonly [name: string, reach: (page: Page) => Promise<void>])[] = [
  ['removal, next', (page) => page.keyboard.press('F2')],
  [
    'removal, at hand',
    async (page) => {
      await page.keyboard.press('F2');
      await page.evaluate(() => {
        const rows = [...document.querySelectorAll<HTMLElement>('.dl-row button')];
        rows.find((row) => row.textContent.includes('Side cover'))?.click();
      });
      await expect(page.getByLabel('Title of this removal')).toHaveValue('Side cover');
      await page.getByRole('textbox', { name: 'What came off' }).fill('4 M10x1.5x30 hex 16 mm, side co');
    },
  ],
  ['the bench', (page) => page.keyboard.press('Alt+b')],
  ['before you start', (page) => page.keyboard.press('F6')],
  ['jobs', (page) => page.keyboard.press('F1')],
];

/** What would be cut off, pushed sideways, unreachable or too small for a thumb; empty = nothing. */
async function troubles(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const { scrollWidth, clientWidth } = document.documentElement;
    if (scrollWidth > clientWidth) found.push(`the page is ${scrollWidth - clientWidth} px too wide`);
    for (const one of document.querySelectorAll<HTMLElement>(
      'main button, main input, main textarea, main select',
    )) {
      const pressed = one.closest('label') ?? one;
      const box = pressed.getBoundingClientRect();
      if (box.width === 0 || one.closest('.heard-only')) continue;
      const name = (one.getAttribute('aria-label') ?? pressed.textContent ?? one.id).trim().slice(0, 40);
      if (box.left < -1 || box.right > clientWidth + 1) found.push(`“${name}” is cut off at the side`);
      if (box.height < 43.5 && !pressed.classList.contains('written'))
        found.push(`“${name}” is ${Math.round(box.height)} px high`);
    }
    return found;
  });
}

for (const { name, width, height } of SIZES)
  test(`nothing is cut off or too small on ${name}`, async ({ open, program }) => {
    const page = await open();
    await page.setViewportSize({ width, height });
    await startJob(page, 'Winch gearbox of the second hoist, left drum');
    await byScript(program, page, [['log', ...LINES]]);
    await expect(page.getByRole('textbox', { name: 'What came off' })).toBeVisible();
    for (const [screen, reach] of SCREENS) {
      await reach(page);
      await expect(page.locator('main')).toBeVisible();
      expect(await troubles(page), screen).toEqual([]);
    }
  });

/** Controls without a name, by their markup. */
async function nameless(page: Page): Promise<string[]> {
  const all = await page.locator('button, input:not([aria-hidden]), textarea, select').all();
  const faults: string[] = [];
  for (const one of all) {
    const named = await expect(one)
      .toHaveAccessibleName(/\S/, { timeout: 2000 })
      .then(
        () => true,
        () => false,
      );
    if (!named) faults.push(await one.evaluate((node) => node.outerHTML.slice(0, 120)));
  }
  return faults;
}

test('whoever hears the screen is told what everything is', async ({ open, program }) => {
  const page = await open();
  await startJob(page, 'Winch gearbox');
  await byScript(program, page, [['log', ...LINES]]);
  for (const [screen, reach] of SCREENS) {
    await reach(page);
    await expect(page.locator('main')).toBeVisible();
    expect(await nameless(page), screen).toEqual([]);
  }
  await page.getByRole('button', { name: /Carry on/ }).click();
  await page.getByRole('button', { name: /Removal 3 Side cover/ }).click();
  const pane = page.getByRole('complementary', { name: 'Depth line and screens' });
  await expect(pane.getByRole('list', { name: 'Removals of this job, the deepest last' })).toHaveCount(1);
  await expect(pane.getByRole('navigation', { name: 'Screens' })).toBeVisible();
  await expect(page.getByRole('group', { name: 'What was done' }).getByRole('radio')).toHaveCount(4);
  await expect(page.getByRole('group', { name: 'Place on the machine' })).toBeVisible();
  await expect(page.getByRole('group', { name: 'Side', exact: true }).getByRole('button')).toHaveCount(3);
  await expect(page.getByRole('group', { name: 'Number pad' }).getByRole('button')).toHaveCount(14);
  const entry = page.getByRole('textbox', { name: 'What came off' });
  await entry.fill('8 M10, grezed');
  await expect(entry).toHaveAccessibleDescription(/Not understood, kept as a note: grezed/);
  await expect(page.getByRole('list', { name: 'Understood' }).getByRole('listitem').first()).toContainText(
    '8',
  );
  await entry.fill('side co');
  await expect(entry).toHaveAccessibleDescription(/Tab takes “side cover”/);
  const keys = await page
    .locator('[aria-keyshortcuts]')
    .evaluateAll((all) => all.map((one) => one.getAttribute('aria-keyshortcuts') ?? ''));
  const real = keys.filter((one) => one !== 'Tab');
  expect([...new Set(real)].sort(), 'a key does one thing').toEqual([...real].sort());
});

test('a job is begun, taken apart and put right by the keyboard alone', async ({ open }) => {
  const page = await open();
  const focused = (name: string | RegExp) => page.getByRole('button', { name }).first();
  const tabTo = async (name: string | RegExp) => {
    for (let i = 0; i < 80; i += 1) {
      if (await focused(name).evaluate((node) => node === document.activeElement)) return;
      await page.keyboard.press('Tab');
    }
    throw new Error(`Expected Tab to come to ${String(name)}.`);
  };
  await expect(page.getByRole('button', { name: 'Start my own' })).toBeFocused();
  await page.keyboard.press('Enter');
  await page.keyboard.type('Bench grinder');
  await page.keyboard.press('Enter');
  const entry = page.getByRole('textbox', { name: 'What came off' });
  await expect(entry).toBeFocused();
  await page.keyboard.type('5 13');
  await page.keyboard.press('Enter');
  await page.keyboard.type('pul');
  await page.keyboard.press('Tab');
  await expect(entry).toHaveValue('pulley');
  await page.keyboard.press('Enter');
  await saved(page);
  await page.keyboard.press('Tab');
  await expect(entry).not.toBeFocused();
  await page.keyboard.press('Shift+Tab');
  await expect(entry).toBeFocused();
  await page.keyboard.press('Alt+b');
  await expect(page.getByRole('heading', { name: /At the bench/ })).toBeVisible();
  await page.keyboard.press('Alt+ArrowUp');
  await expect(page.locator('.dl-row .dl-title').first()).toHaveText(/Pulley/i);
  await tabTo(/^Removal 1/);
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await tabTo(/M8\?/);
  await page.keyboard.press('Enter');
  await expect(page.locator('#bench-at')).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(page.getByRole('button', { name: 'M8 × 1.25' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('Thread and pitch')).toHaveValue('M8 × 1.25');
  await page.keyboard.press('F6');
  await page.getByLabel('What you found').focus();
  await page.keyboard.type('Guard cracked');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Guard cracked')).toBeVisible();
  await page.keyboard.press('F1');
  await page.keyboard.press('/');
  await page.keyboard.type('pulley');
  await expect(page.getByRole('button', { name: /pulley/i }).first()).toBeVisible();
});

test('beside the photo what is said ends above the keys, says that more follows, and comes into sight', async ({
  open,
}) => {
  const page = await open();
  await page.setViewportSize({ width: 1280, height: 800 });
  await openSample(page);
  await page.getByRole('button', { name: /^Carry on/ }).click();
  await expect(page.getByRole('heading', { name: 'Gear cover', level: 1 })).toBeVisible();
  const body = page.locator('.hand-body');
  const more = page.getByText('More below');
  await expect(more).toBeVisible();
  expect(await overlap(page, '.hand-body', '.hand > .foot')).toBeLessThanOrEqual(0);
  await body.evaluate((one) => one.scrollTo(0, one.scrollHeight));
  await expect(more).toBeHidden();
  expect(await inSight(page.getByRole('button', { name: 'Print the sheet' }))).toBe(true);
  // Between a photo that cannot fill its place and the rounds there are its keys, and no empty strip.
  expect(await overlap(page, '.photo img', '.rounds')).toBeGreaterThan(-48);
  await page.keyboard.press('F3');
  await expect(page.getByRole('heading', { name: 'Off the machine' })).toBeVisible();
  expect(await page.evaluate(nearestToRule), 'words and the rules of their rows').toBeGreaterThanOrEqual(5);
  await page.keyboard.press('F2');
  await page.setViewportSize({ width: 390, height: 844 });
  const key = page.getByRole('group', { name: 'Named last' }).getByRole('button').first();
  await expect(key).toBeVisible();
  expect(await page.locator('main kbd:visible').count(), 'no keyboard at a phone').toBe(0);
  expect((await key.boundingBox())?.height, 'a word stays in one line').toBeLessThan(56);
});

/** How far the foot of one thing reaches below the head of the next, px. */
const overlap = (page: Page, upper: string, lower: string): Promise<number> =>
  page.evaluate(
    ([above = '', below = '']) => {
      const [first, second] = [document.querySelector(above), document.querySelector(below)];
      if (first === null || second === null) return Number.NaN;
      return first.getBoundingClientRect().bottom - second.getBoundingClientRect().top;
    },
    [upper, lower],
  );

/** The least room between the words of a row and the rules over and under it, px. */
function nearestToRule(): number {
  const room = [...document.querySelectorAll('.off-list .row')].flatMap((row) => {
    const words = row.querySelector('.said')?.getBoundingClientRect();
    const { top, bottom } = row.getBoundingClientRect();
    return words === undefined ? [] : [words.top - top, bottom - words.bottom];
  });
  return room.length === 0 ? Number.NaN : Math.min(...room);
}
