import { expect, test } from './support/program.ts';
import { loggedJob, saved } from './support/seed.ts';

test('the handbook answers each topic with its basis, refuses at the field, and keeps what is typed over a reload', async ({
  open,
}) => {
  const page = await open();
  // It needs no job.
  await expect(page.getByRole('button', { name: 'Start my own' })).toBeVisible();
  await page.keyboard.press('F8');
  await expect(page.getByRole('heading', { name: 'Handbook' })).toBeVisible();
  const answer = page.getByRole('region', { name: 'Answer' });
  const topic = (name: string) => page.getByRole('radio', { name, exact: true }).check();
  await page.getByLabel('Diameter over the crests').fill('7.88');
  await page.getByLabel('Pitch, or threads per inch').fill('1.25');
  await expect(answer).toContainText('M8x1.25 and 5/16-18 are 0.06 mm apart');
  await page.getByLabel('Diameter over the crests').fill('80');
  await expect(page.getByText('Expected a measured diameter from 1 to 60 mm, got "80 mm".')).toBeVisible();
  await expect(page.getByLabel('Diameter over the crests')).toHaveAttribute('aria-invalid', 'true');

  await topic('Torque');
  await page.getByLabel('Thread', { exact: true }).fill('M8');
  await page.getByLabel('Class or grade').fill('8.8');
  await expect(answer.getByText('25.4', { exact: true })).toBeVisible();
  await expect(answer).toContainText('Reference, not an instruction');
  await page.getByLabel('The maker’s value, with its stages').fill('22 N·m');
  await page.getByLabel('Where it stands in the manual').fill('page 12-4');
  // The maker's figure is the large one, the reference stands beside it.
  await expect(answer.getByText('22', { exact: true })).toBeVisible();
  await expect(answer).toContainText('The maker’s value, page 12-4: it wins');
  await expect(answer).toContainText('Reference beside it: 25.4 N·m (18.8 lbf·ft)');
  for (const word of ['Formula', 'Inputs', 'Source', 'Limits', 'Cautions'])
    await expect(answer.getByText(word, { exact: true })).toBeVisible();

  await page.reload();
  await expect(page.getByLabel('Where it stands in the manual')).toHaveValue('page 12-4');
  await topic('Tightening order');
  await page.getByLabel('Holes').fill('8');
  await expect(answer.getByRole('img', { name: /hole 1, hole 5, hole 3, hole 7/ })).toBeVisible();
  await topic('Units');
  await page.getByLabel('Figure with its unit').fill('18ft-lb');
  await expect(answer.getByText('24.4 N·m', { exact: true })).toBeVisible();
  await topic('Torque');
  await expect(page.getByLabel('Where it stands in the manual')).toHaveValue('page 12-4');
  await page.getByRole('button', { name: 'Clear the fields' }).click();
  await expect(page.getByLabel('Where it stands in the manual')).toHaveValue('');
});

test('opened from a step or a removal it is filled in with the fastener at hand, and leads back', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(
    program,
    page,
    ['guard, 4 10', 'end cover, 6 M8x25 hex 13, class 8.8, bag 3, 90 Nm, greased'],
    'F4',
  );
  await page.getByRole('button', { name: 'Why this torque?' }).click();
  await expect(page.getByText('Filled in from End cover')).toBeVisible();
  await expect(page.getByLabel('The maker’s value, with its stages')).toHaveValue(/^90/);
  await expect(page.getByLabel('Class or grade')).toHaveValue('8.8');
  const answer = page.getByRole('region', { name: 'Answer' });
  await expect(answer).toContainText(/90 N·m is past the proof load of an M8 of class 8.8/);
  await page.getByRole('button', { name: 'Back to Put back' }).click();
  await expect(page.getByRole('heading', { name: 'End cover' })).toBeVisible();

  await page.keyboard.press('F2');
  await page.getByRole('button', { name: /Removal 2 End cover/ }).click();
  await expect(page.getByRole('textbox', { name: 'Title of this removal' })).toHaveValue('End cover');
  await expect(page.getByRole('button', { name: 'Which thread?' })).toHaveCount(0);
  await page.getByRole('button', { name: /Removal 1 Guard/ }).click();
  await page.getByRole('button', { name: 'Which thread?' }).click();
  await expect(page.getByLabel('Across flats')).toHaveValue('10 mm');
  await expect(answer).toContainText('A head of 10 mm (0.394 in) can be');
  await page.getByRole('button', { name: 'Back to Take apart' }).click();
  await expect(page.getByRole('textbox', { name: 'What came off' })).toBeVisible();
});

test('a ring that was found goes to the list to get', async ({ open, program }) => {
  const page = await open();
  await loggedJob(program, page, ['end cover, 6 M8x25'], 'F3');
  await page.keyboard.press('F8');
  await page.getByRole('radio', { name: 'O-ring' }).check();
  await page.getByLabel('Inside diameter').fill('25');
  await page.getByLabel('Section').fill('3.53');
  await page.getByLabel('How many').fill('none');
  await page.getByRole('button', { name: 'Put it on the list to get' }).click();
  await expect(page.getByText('Expected a whole number from 1 to 1000, got "none".')).toBeVisible();
  await page.getByLabel('How many').fill('2');
  await page.getByRole('button', { name: 'Put it on the list to get' }).click();
  await expect(page.getByText(/On the list to get: 2 × O-ring AS568-214/)).toBeVisible();
  await saved(page);
  await page.keyboard.press('F3');
  await page.getByRole('button', { name: 'To get, 1' }).click();
  await expect(page.getByText('O-ring AS568-214, 24.99 × 3.53 mm')).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(page.getByText('O-ring AS568-214, 24.99 × 3.53 mm')).toHaveCount(0);
});
