import type { Page } from '@playwright/test';
import { expect, test } from './support/program.ts';
import { loggedJob, saved } from './support/seed.ts';

const LINES = [
  'belt guard, 4 M6x16',
  'side cover, gasket, 6 13, one stripped',
  '+ hose, lower, 2 ends',
  'rotor',
];

/** The removal of this title at the bench. */
async function atBench(page: Page, title: RegExp): Promise<void> {
  await page.getByRole('button', { name: title }).first().click();
  await page.keyboard.press('Alt+b');
  await expect(page.getByRole('heading', { name: /At the bench/ })).toBeVisible();
}

const row = (page: Page, name: RegExp) => page.locator('.off-list').getByRole('button', { name });

test('a doubtful thread is confirmed by one touch, by another candidate, or typed', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, LINES, 'F2');
  await atBench(page, /Side cover/);
  await expect(row(page, /M8\?.*thread to confirm/)).toBeVisible();
  await row(page, /M8\?/).click();
  const group = page.getByRole('group', { name: /Which thread is it/ });
  await expect(group.getByRole('button')).toHaveText([
    'M8 × 1.25',
    'M8 × 1',
    'M10 × 1.5',
    'M10 × 1.25',
    'M10 × 1',
  ]);
  await group.getByRole('button', { name: 'M8 × 1.25' }).click();
  await expect(group).toHaveCount(0);
  await expect(row(page, /^M8 .*hex external 13 mm/)).not.toContainText('to confirm');
  await page.keyboard.press('Control+z');
  await group.getByRole('button', { name: 'M10 × 1.25' }).click();
  await expect(page.getByLabel('Thread and pitch')).toHaveValue('M10 × 1.25');
  await page.getByLabel('Thread and pitch').fill('soft');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Expected a thread, such as M8, M8 × 1 or 5/16-18, got “soft”.')).toBeVisible();
  await page.getByLabel('Thread and pitch').fill('5/16-18');
  await page.keyboard.press('Enter');
  await expect(row(page, /5\/16-18/)).toBeVisible();
});

test('lengths go on by hole: typed in one line, or holes touched and a length typed', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, LINES, 'F2');
  await atBench(page, /Side cover/);
  await row(page, /M8\?/).click();
  const lengths = page.getByLabel(/^Length, mm/);
  await lengths.fill('1,2,4: 30; 3: 40');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: /^Hole 3\b.*40 mm/ })).toBeVisible();
  await expect(page.getByRole('button', { name: /^Hole 4\b.*30 mm/ })).toBeVisible();
  for (const hole of [5, 6]) await page.getByRole('button', { name: new RegExp(`^Hole ${hole}`) }).click();
  await page.getByLabel('Length of hole 5, 6, mm').fill('30');
  await page.keyboard.press('Enter');
  await expect(lengths).toHaveValue('1,2,4,5,6: 30; 3: 40');
  await page.keyboard.press('Tab');
  await saved(page);
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(lengths).toHaveValue('1,2,4: 30; 3: 40');
  await lengths.fill('7: 30');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/Expected holes from 1 to 6.*got “7”/)).toBeVisible();
});

test('everything else is said by form, by keyboard alone, and undone', async ({ open, program }) => {
  const page = await open();
  await loggedJob(program, page, LINES, 'F2');
  await atBench(page, /Side cover/);
  const fill = async (label: string | RegExp, text: string) => {
    await page.getByLabel(label, { exact: true }).first().focus();
    await page.keyboard.press('Control+a');
    await page.keyboard.type(text);
    await page.keyboard.press('Tab');
    await saved(page);
  };
  await row(page, /M8\?/).focus();
  await page.keyboard.press('Enter');
  await fill('Torque with its unit, or by feel', '18 lbf·ft');
  await fill('Class or grade', '10.9');
  await fill('How many', '7');
  await fill('Bag, tin, tray or shelf', 'tin A');
  await expect(row(page, /M8\?.*10\.9/)).toContainText('7');
  await expect(page.getByRole('button', { name: /^Hole 7/ })).toBeVisible();
  await page.getByLabel('Threads are').selectOption('greased');
  await page.getByLabel('Own place: goes back exactly where it was').focus();
  await page.keyboard.press('Space');
  await row(page, /^side cover/).focus();
  await page.keyboard.press('Enter');
  await page.getByLabel('What happens to it').selectOption('clean and refit');
  await fill('Condition', 'scored at the port');
  await expect(row(page, /^side cover/)).toContainText('clean and refit, scored at the port');
  await row(page, /^Side cover/)
    .first()
    .click();
  await fill('Title', 'Cover of the gear side');
  await fill('For the way back', 'Prise only at the two lugs');
  await fill('Who took it off', 'M. Aldous');
  await page.getByLabel('One more thing that was done').focus();
  await page.keyboard.type('Prised at the left lug');
  await page.keyboard.press('Enter');
  await page.keyboard.type('Lifted straight out');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Earlier: Lifted straight out' }).click();
  await expect(page.locator('.bench-actions li .said')).toHaveText([
    'Lifted straight out',
    'Prised at the left lug',
  ]);
  await page.reload();
  await expect(page.getByLabel('Title')).toHaveValue('Cover of the gear side');
  await expect(page.getByLabel('Who took it off')).toHaveValue('M. Aldous');
  await page.keyboard.press('Alt+b');
  await expect(page.getByText('by M. Aldous')).toBeVisible();
  await expect(page.getByText(/Removal, .* to /)).toBeVisible();
});

const numbers = (page: Page) => page.locator('.dl-row .dl-title').allTextContents();

test('a removal is moved in the log by keys and by hand; a need that it breaks is said, and loosened by a yes', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, LINES, 'F2');
  await atBench(page, /Side cover/);
  await page.keyboard.press('Alt+ArrowUp');
  await expect.poll(() => numbers(page)).toEqual(['Side cover', 'Belt guard', 'Rotor']);
  await page.keyboard.press('Control+z');
  await expect.poll(() => numbers(page)).toEqual(['Belt guard', 'Side cover', 'Rotor']);
  const notch = page.locator('.dl-row.at button');
  const box = await notch.boundingBox();
  const rotor = await page.getByRole('button', { name: /Rotor/ }).first().boundingBox();
  if (!box || !rotor) throw new Error('Expected the notches on the line.');
  await page.mouse.move(box.x + 40, box.y + 20);
  await page.mouse.down();
  await page.mouse.move(box.x + 40, box.y + 50, { steps: 4 });
  await page.mouse.move(box.x + 40, rotor.y + rotor.height + 4, { steps: 4 });
  await page.mouse.up();
  await expect.poll(() => numbers(page)).toEqual(['Belt guard', 'Rotor', 'Side cover']);

  await page.evaluate(async () => {
    const { state } = JSON.parse(localStorage.getItem('everybolt-place') ?? '{}') as {
      state: { jobId: string };
    };
    const call = async (path: string, json: unknown) => {
      const headers = { 'content-type': 'application/json' };
      const reply = await fetch(`/rpc/${path}`, { method: 'POST', headers, body: JSON.stringify({ json }) });
      return (
        (await reply.json()) as { json: { value: { state: { removal: { id: string; title: string }[] } } } }
      ).json;
    };
    const { value } = await call('jobs/state', { jobId: state.jobId }).then((reply) => ({
      value: reply.value as unknown as { removal: { id: string; title: string }[] },
    }));
    const id = (title: string) => value.removal.find((one) => one.title === title)?.id;
    await call('record/make', {
      command: crypto.randomUUID(),
      jobId: state.jobId,
      table: 'need',
      values: { removalId: id('Side cover'), needsId: id('Rotor') },
    });
  });
  await page
    .getByRole('button', { name: /^Earlier/ })
    .first()
    .click();
  await expect(page.getByText('Side cover needs Rotor to be off first.')).toBeVisible();
  await page.getByRole('button', { name: 'Loosen it and move' }).click();
  await expect.poll(() => numbers(page)).toEqual(['Belt guard', 'Side cover', 'Rotor']);
});

test('removals are split, joined and made void, and each is undone', async ({ open, program }) => {
  const page = await open();
  await loggedJob(program, page, LINES, 'F2');
  await atBench(page, /Side cover/);
  await page.getByRole('button', { name: 'Split' }).click();
  await page.getByLabel('lower hose').check();
  await page.getByLabel('Title of the new removal').fill('Hose first');
  await page.keyboard.press('Enter');
  await expect.poll(() => numbers(page)).toEqual(['Belt guard', 'Side cover', 'Hose first', 'Rotor']);
  await expect(row(page, /lower hose/)).toHaveCount(0);
  await page.getByRole('button', { name: 'Join' }).click();
  await page.getByLabel('Which removal?').selectOption({ label: '3 Hose first' });
  await page.getByRole('button', { name: /^Join them/ }).click();
  await expect.poll(() => numbers(page)).toEqual(['Belt guard', 'Side cover', 'Rotor']);
  await expect(row(page, /lower hose/)).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect.poll(() => numbers(page)).toEqual(['Belt guard', 'Side cover', 'Hose first', 'Rotor']);
  await page.getByRole('button', { name: /Rotor/ }).first().click();
  await page.getByRole('button', { name: 'Void' }).click();
  await page.getByLabel('Why is it void?').fill('Logged twice');
  await page.keyboard.press('Enter');
  await expect.poll(() => numbers(page)).toEqual(['Belt guard', 'Side cover', 'Hose first']);
});

test('what was only slackened is corrected with one touch, and leaves its bag', async ({ open, program }) => {
  const page = await open();
  await loggedJob(program, page, LINES, 'F2');
  await page
    .getByRole('button', { name: /Side cover/ })
    .first()
    .click();
  await page.keyboard.press('F7');
  await expect(page.getByRole('radio', { name: /slackened/ })).toBeChecked();
  await expect(page.locator('.trio').filter({ hasText: 'loose' }).first()).toContainText('6');
  await page.getByRole('button', { name: 'under' }).click();
  await page.getByRole('button', { name: 'left', exact: true }).click();
  await expect(page.getByRole('button', { name: 'under' })).toHaveAttribute('aria-pressed', 'true');
  await saved(page);
  await page.reload();
  await expect(page.getByRole('button', { name: 'left', exact: true })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
});

test('search finds by thread, bag and the other trade’s word, and leads to the removal', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(
    program,
    page,
    ['belt guard, 4 M6x16', 'side cover, 12 M8x25, bag 4', 'hub, 1 snap ring'],
    'F2',
  );
  await page.keyboard.press('F1');
  await page.keyboard.press('/');
  await page.keyboard.type('M8 x 1.25');
  await expect(page.locator('.hit')).toHaveCount(1);
  const field = page.getByRole('searchbox');
  await field.fill('circlip');
  await expect(page.locator('.hit').filter({ hasText: 'snap ring' })).toHaveCount(1);
  await field.fill('bag 4');
  await page.locator('.hit').filter({ hasText: 'set in' }).click();
  await expect(page.getByLabel('Title of this removal')).toHaveValue('Side cover');
});
