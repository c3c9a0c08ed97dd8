import AxeBuilder from '@axe-core/playwright';
import { expect, test } from './support/program.ts';
import { byScript, loggedJob, saved } from './support/seed.ts';

test('a page says what can go ahead by which day and what one more item frees, the list says tools', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(
    program,
    page,
    [
      'belt guard, 4 M6x16 hex 10, front',
      'fan, 2 M8x20 hex 13, rear',
      'side cover, gasket, 3 M6x25 hex 10, front',
    ],
    'F4',
  );
  await byScript(program, page, [
    ['send', 'fan', '--to', 'Weber', '--due', '2090-01-02T12:00Z'],
    ['need', '3', '2', '--answer', 'loosened'],
    ['need', '2', '1', '--answer', 'confirmed'],
  ]);
  await page.keyboard.press('F4');
  await page.getByRole('button', { name: /step \d of/ }).click();
  const back = page.getByRole('button', { name: 'Back to Put back' });
  await page.getByRole('button', { name: 'Day by day' }).click();
  await expect(page.getByRole('heading', { name: 'What can go ahead today' })).toBeVisible();
  await expect(page.getByRole('button', { name: /^2 fan.*fan is away, with Weber/i })).toBeVisible();
  await page.keyboard.press('ArrowRight');
  await expect(page.getByRole('heading', { name: /^By Monday, .*2090$/ })).toBeVisible();
  await expect(page.getByRole('button', { name: /^2 fan.*from /i })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'What one more item would free' })).toBeVisible();
  await expect(page.getByText('step can go ahead', { exact: true })).toBeVisible();
  await expect(page.locator('.big .num')).toHaveText('1');
  await expect(page.getByRole('button', { name: /gasket must be new.*frees 2 steps/ })).toBeVisible();
  await page.getByLabel('Another day').fill('2090-01-01');
  await expect(page.getByRole('button', { name: /^2 fan.*fan is away, with Weber/i })).toBeVisible();
  await page.reload();
  await expect(page.getByLabel('Another day')).toHaveValue('2090-01-01');
  expect((await new AxeBuilder({ page }).analyze()).violations.map((one) => one.id)).toEqual([]);
  await back.click();
  await expect(page.getByText('10 mm spanner or socket')).toBeVisible();
  await expect(
    page.getByText(
      /^Time left: not known yet, too little is back to tell the pace\. 3 steps back are enough/,
    ),
  ).toBeVisible();
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map((one) => one.id)).toEqual([]);
});

test('a step that only the order of the log holds up asks whether it must, and is let go by one answer', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['belt guard, 4 M6x16, front', 'fan, 2 M8x20, rear'], 'F4');
  await page.getByRole('button', { name: /step \d of/ }).click();
  await expect(page.getByText(/Does 2 fan really have to go in before 1 belt guard/i)).toBeVisible();
  await page.getByRole('button', { name: 'No, loosen it' }).click();
  await saved(page);
  await expect(page.getByText(/really have to go in before/)).toHaveCount(0);
  await page
    .getByRole('button', { name: /belt guard/i })
    .first()
    .click();
  await expect(page.getByText(/step \d of 2, ready/)).toBeVisible();
});

test('Put back walks the order with the fewest changes of tool once that is chosen, also after a reload', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(
    program,
    page,
    ['guard, 2 M6x16 hex 10', 'fan, 2 M8x20 hex 13', 'bracket, 2 M6x16 hex 10', 'pump, 2 M8x20 hex 13'],
    'F4',
  );
  await byScript(program, page, [
    ['need', '4', '3', '--answer', 'loosened'],
    ['need', '4', '2', '--answer', 'loosened'],
    ['need', '3', '2', '--answer', 'loosened'],
    ['need', '3', '1', '--answer', 'loosened'],
  ]);
  await page.keyboard.press('F4');
  await page.getByRole('button', { name: /step 1 of 4/ }).click();
  await expect(page.getByText('1 change of tool instead of 3. There is no order with fewer.')).toBeVisible();
  await page.getByRole('button', { name: 'Walk it in this order' }).click();
  await expect(page.getByText('Put back goes in this order')).toBeVisible();
  await page.reload();
  await expect(page.getByText('Put back goes in this order')).toBeVisible();
  await page.keyboard.press('Enter');
  const order = [];
  for (let n = 1; n <= 4; n += 1) {
    await expect(page.getByText(`step ${n} of 4, ready, by tools`)).toBeVisible();
    order.push(await page.getByRole('heading', { level: 1 }).textContent());
    await page.keyboard.press('s');
    await expect(page.getByRole('button', { name: 'hole 2: started by hand' })).toBeVisible();
    await page.keyboard.press('t');
    await expect(page.getByRole('button', { name: 'It is back' })).toBeEnabled();
    await page.keyboard.press('Enter');
  }
  expect(order).toEqual(['Pump', 'Fan', 'Bracket', 'Guard']);
});

test('several things are chosen to be reached, what must come off is planned, and Enter takes it off one by one', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(
    program,
    page,
    [
      'mains locked out',
      'belt guard, 4 M6x16 hex 10',
      'side cover, 3 M8x25 hex 13',
      'shaft, 2 M10x40 hex 17',
    ],
    'F4',
  );
  await byScript(program, page, [
    ['tick', '4'],
    ['tick', '3'],
    ['tick', '2'],
    ['tick', 'mains locked out', '--what', 'given back'],
  ]);
  await page.keyboard.press('F4');
  await expect(page.getByRole('button', { name: 'What must come off' })).toBeVisible();
  await page.keyboard.press('r');
  await expect(page.getByRole('heading', { name: 'What must come off to reach something' })).toBeVisible();
  await page.getByLabel('What do you want to reach?').fill('flywheel');
  await expect(page.getByText('Nothing is called “flywheel” in the one job on this machine')).toBeVisible();
  await page.getByLabel('What do you want to reach?').fill('guard');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('group', { name: 'Chosen' })).toContainText('belt guard');
  await page.getByRole('checkbox', { name: /side cover/ }).check({ force: true });
  await expect(page.getByText('removals come off')).toBeVisible();
  await expect(page.getByText('Make safe again: mains locked out.')).toBeVisible();
  await expect(page.getByText('7 fasteners come out.')).toBeVisible();
  await page.reload();
  await expect(page.getByText('7 fasteners come out.')).toBeVisible();
  expect((await new AxeBuilder({ page }).analyze()).violations.map((one) => one.id)).toEqual([]);
  await page.getByRole('button', { name: 'Plan these' }).click();
  await expect(page.getByRole('heading', { name: 'The plan' })).toBeVisible();
  expect((await new AxeBuilder({ page }).analyze()).violations.map((one) => one.id)).toEqual([]);
  for (const name of ['Make safe again: mains locked out', 'Belt guard', 'Side cover']) {
    await expect(page.getByRole('button', { name: `It is off: ${name}` })).toBeVisible();
    await page.keyboard.press('Enter');
  }
  await expect(page.getByText('Choose one or more things.')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('button', { name: 'What must come off' })).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Side cover', level: 1 })).toBeVisible();
});
