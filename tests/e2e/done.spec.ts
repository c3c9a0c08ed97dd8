import { expect, test } from './support/program.ts';
import { byScript, loggedJob, saved } from './support/seed.ts';

test('a step that is done says by whom and with what reading, and leads on by key and touch', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['guard, 2 M6x16', 'end cover, 2 M8x25'], 'F4');
  await byScript(program, page, [
    ['people', '--add', 'Edda Mross'],
    ['tick', '2/1', '--what', 'started', '--who', 'Edda Mross'],
    ['tick', '2/1', '--what', 'tightened', '--who', 'Edda Mross'],
    ['tick', '2/1/1', '--what', 'tightened', '--value', '25 Nm', '--who', 'Edda Mross'],
    ['tick', '2', '--who', 'Edda Mross'],
  ]);
  await page.keyboard.press('F4');
  await page.getByRole('button', { name: /Removal 2 End cover/ }).click();
  const did = page.getByRole('region', { name: 'What was done' });
  await expect(did).toContainText(/Edda Mross: tightened fastener M8 .*, hole 1, read 25/);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Guard' })).toBeVisible();
  await page.getByRole('button', { name: /Removal 2 End cover/ }).click();
  await page.getByRole('button', { name: /^Next step/ }).click();
  await expect(page.getByRole('heading', { name: 'Guard' })).toBeVisible();
});

test('a check that was passed says who passed what, when and why, on the line and in the list', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['guard', 'end cover, 2 M8x25', '+rag in the port'], 'F4');
  await page.getByRole('checkbox', { name: /Start all/ }).click();
  await page.getByRole('checkbox', { name: /Tighten 2/ }).click();
  await page.getByRole('checkbox', { name: /Fit: end cover/ }).click();
  await saved(page);
  await page.getByRole('button', { name: /Removal 1 Guard/ }).click();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Accept it' }).click();
  await page.getByLabel('Why it may stay like this').fill('Rag is on the bench');
  await page.getByLabel('Your name').fill('Edda Mross');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: /Pass the check/ }).click();
  await saved(page);
  await page.getByRole('button', { name: /Check before closing Edda Mross, / }).click();
  await expect(page.getByText(/^Passed .* by Edda Mross: Rag is on the bench$/)).toBeVisible();
  await page.getByRole('button', { name: 'The whole list' }).click();
  const passed = page.locator('section', { has: page.getByRole('heading', { name: 'Passed by name' }) });
  await expect(passed).toContainText(/Edda Mross: Rag is on the bench/);
});

test('the check before closing is looked at from the line, and says what it counted', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['guard, 2 M6x16', 'fan'], 'F4');
  await page.getByRole('button', { name: /Check before closing/ }).click();
  await expect(page.getByText('Nothing holds this check so far. 2 steps come before it.')).toBeVisible();
  const looked = page.getByRole('region', { name: 'Looked at' });
  await expect(looked).toContainText('0 of 2 fasteners in and tight.');
  await byScript(program, page, [
    ['tick', '2', '--what', 'done'],
    ['tick', '1', '--what', 'done'],
  ]);
  await page.keyboard.press('F4');
  await page.getByRole('button', { name: /The whole list/ }).click();
  await expect(looked).toContainText('Nothing holds the check before closing.');
  await expect(looked).toContainText('2 fasteners in and tight.');
  await page.getByRole('button', { name: /Close the job/ }).click();
  await expect(page.getByRole('heading', { name: 'Together and closed' })).toBeVisible();
});
