import { expect, startJob, test } from './support/program.ts';
import { loggedJob, saved } from './support/seed.ts';

test('what is typed goes into the line wherever the focus is, and the screen says where it will be added', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['hose', 'cover, 4 M8x25'], 'F2');
  const line = page.getByRole('textbox', { name: 'What came off' });
  const notch = page.locator('[data-removal]').first();
  await notch.click();
  // The second touch on the same notch leaves the focus there.
  await notch.click();
  await page.keyboard.type('2 clamps 25 mm');
  await expect(line).toHaveValue('2 clamps 25 mm');
  await expect(page.getByText('is added to removal 1, which stays at hand')).toBeVisible();
  await page.getByRole('button', { name: 'Add to 1' }).click();
  await expect(line).toHaveValue('');
  await saved(page);
  await page.getByRole('textbox', { name: 'Title of this removal' }).fill('Suction hose');
  await page.keyboard.press('Enter');
  await page.keyboard.type('rag in the port');
  await expect(line).toHaveValue('rag in the port');
  await page.getByRole('radio', { name: 'opened' }).focus();
  await page.keyboard.type(', 3');
  await expect(line).toHaveValue('rag in the port, 3');
});

test('a line that takes nothing off says into which removal it goes before it is written down', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['hose', 'cover, 4 M8x25'], 'F2');
  const line = page.getByRole('textbox', { name: 'What came off' });
  const goesWith = page.getByText('goes with this removal');
  await line.fill('rag');
  await expect(page.getByRole('listitem').filter({ has: goesWith })).toContainText('2 Cover');
  await page.getByRole('button', { name: 'Add to 2' }).click();
  await expect(line).toHaveValue('');
  await saved(page);
  await line.fill('rag, pump');
  await expect(page.getByRole('button', { name: /^Next removal/ })).toBeVisible();
  await expect(goesWith).toHaveCount(0);
  await page.keyboard.press('F12');
  await expect(page.getByText(/rag/).first()).toBeVisible();
});

test('a line that the record refuses comes back before what was typed meanwhile', async ({ open }) => {
  const page = await open();
  await startJob(page, 'Winch gearbox');
  let answer = () => {};
  await page.route('**/rpc/log/add', async (route) => {
    await new Promise<void>((go) => {
      answer = go;
    });
    await route.fulfill({ status: 500, body: '{}' });
  });
  const line = page.getByRole('textbox', { name: 'What came off' });
  await line.fill('lower cover');
  await page.keyboard.press('Enter');
  await page.keyboard.type('gasket');
  answer();
  await expect(line).toHaveValue('lower cover, gasket');
});

test('a search emptied with Backspace keeps the focus, and the sample is offered beside an own job', async ({
  open,
}) => {
  const page = await open();
  await startJob(page, 'Winch gearbox');
  await page.keyboard.press('F1');
  await page.getByRole('button', { name: 'Take the first thing off' }).waitFor();
  const sample = page.getByRole('button', { name: 'Open the sample job' });
  await expect(sample).toBeVisible();
  await page.keyboard.press('/');
  await page.keyboard.type('ab');
  await expect(page.getByRole('heading', { name: /Nothing found/ })).toBeVisible();
  await page.keyboard.press('Backspace');
  await page.keyboard.press('Backspace');
  await expect(page.getByRole('button', { name: 'Take the first thing off' })).toBeVisible();
  await expect(page.getByRole('searchbox')).toBeFocused();
  await page.getByRole('searchbox').blur();
  await page.keyboard.press('s');
  await expect(page.getByText('Sample: blower head, half apart')).toBeVisible();
  await expect(sample).toHaveCount(0);
});

test('Ctrl+Z takes back also while a radio or a tick box has the focus', async ({ open, program }) => {
  const page = await open();
  await loggedJob(program, page, ['end cover, 2 M8x25'], 'F2');
  await page.locator('[data-removal]').first().click();
  await page.getByRole('button', { name: 'front' }).click();
  await saved(page);
  await page.getByRole('radio', { name: 'opened' }).focus();
  await page.keyboard.press('Control+z');
  await expect(page.getByRole('button', { name: 'front' })).toHaveAttribute('aria-pressed', 'false');
});
