import { expect, test } from './support/program.ts';
import { byScript, saved } from './support/seed.ts';

const EARLIER = [
  'mains locked out',
  'belt guard, 4 M6x16 hex 10',
  'side cover, gasket, 8 M8x25 hex 13, 25 Nm, bag 3',
  'bearing cap 1, own place, 2 M10x40',
];

test('an earlier job is the pattern: planned, counted off with Enter, differences said, taken back in one', async ({
  open,
  program,
}) => {
  const page = await open();
  await byScript(program, page, [
    ['job-add', 'Winch 1'],
    ['log', '--job', 'Winch 1', ...EARLIER],
    ['job-add', 'Winch 2'],
  ]);
  await page.getByRole('button', { name: 'Take the first thing off' }).click();
  await page.keyboard.press('F6');
  await page.getByLabel('Earlier job').selectOption({ label: 'Winch 1' });
  await page.getByRole('button', { name: 'Use it as pattern' }).click();
  await expect(page.getByText('Follows Winch 1, 0 of 4 begun')).toBeVisible();
  // Nothing is safe, off or open here because it was so on the other machine.
  await expect(page.getByText('Nothing differs so far.')).toBeVisible();
  await expect(
    page.getByRole('main').getByRole('listitem').filter({ hasText: 'ains locked out' }),
  ).toHaveCount(0);
  await page.keyboard.press('F3');
  await expect(page.getByText('Nothing is off yet.')).toBeVisible();

  await page.keyboard.press('F6');
  await page.getByRole('button', { name: 'Start taking apart' }).click();
  const title = page.getByRole('textbox', { name: 'Title of this removal' });
  await expect(title).toHaveValue('Mains locked out');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/Removal, since/)).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(title).toHaveValue('Belt guard');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/Removal, since/)).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(title).toHaveValue('Side cover');
  await expect(page.getByText('of 8 expected, 25 N·m')).toBeVisible();
  await page.getByRole('button', { name: /One less: M8/ }).click();
  await page.getByRole('button', { name: 'It is off' }).click();
  await expect(page.getByText('8 expected, 7 found: M8 × 25 mm, hex 13 mm.')).toBeVisible();

  await page.getByRole('textbox', { name: 'What came off' }).fill('coupling, 4 M8x20');
  await page.keyboard.press('F6');
  const differs = page.getByRole('list', { name: 'What differs' });
  await expect(differs).toContainText('Side cover');
  await expect(differs).toContainText('8 expected, 7 found');
  await expect(page.getByText('3 of 4 begun')).toBeVisible();

  await page.keyboard.press('F2');
  await page.getByRole('textbox', { name: 'What came off' }).fill('');
  for (let i = 0; i < 4; i += 1) {
    await saved(page);
    await page.keyboard.press('Control+z');
  }
  await page.keyboard.press('F6');
  await expect(page.getByLabel('Earlier job')).toBeVisible();
});
