import { hold } from './support/hold.ts';
import { expect, test } from './support/program.ts';
import { loggedJob, saved } from './support/seed.ts';

test('on the way back a touch shows at once while its reply is held, and stays when it comes', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['guard', 'side cover, 4 M8x25, 25 Nm'], 'F4');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Side cover');
  const letGo = await hold(page, 'tick/**');
  await page.getByRole('button', { name: /^All started/ }).click();
  // Nothing has been answered: what is seen now is the touch itself.
  await expect(page.getByRole('button', { name: /^hole \d.*: started by hand/ })).toHaveCount(4);
  await expect(page.getByRole('button', { name: /^All tight/ })).toBeVisible();
  await expect(page.getByText('1 change is not saved yet.')).toBeVisible();
  letGo();
  await saved(page);
  await expect(page.getByRole('button', { name: /^hole \d.*: started by hand/ })).toHaveCount(4);
  await page.reload();
  await expect(page.getByRole('button', { name: /^hole \d.*: started by hand/ })).toHaveCount(4);
});

test('a touch whose held reply is a refusal is taken back, and the reason is said', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['side cover, 4 M8x25, 2 rags in the port, 25 Nm'], 'F4');
  await page.route('**/rpc/tick/**', (route) => route.fulfill({ status: 500, body: '{}' }));
  const started = page.getByRole('button', { name: /^hole \d.*: started by hand/ });
  await page.getByRole('button', { name: /^All started/ }).click();
  await expect(page.getByRole('alert')).toContainText('Not saved');
  await expect(started).toHaveCount(0);
});

test('taking apart, a line shows as a removal at once while its reply is held', async ({ open, program }) => {
  const page = await open();
  await loggedJob(program, page, ['guard'], 'F2');
  const letGo = await hold(page, 'log/**');
  const entry = page.getByRole('textbox', { name: 'What came off' });
  await entry.fill('side cover, 4 M8x25');
  await entry.press('Enter');
  await expect(entry).toHaveValue('');
  await expect(page.locator('.dl-row').filter({ hasText: /side cover/i })).toBeVisible();
  await entry.fill('5 13');
  letGo();
  await saved(page);
  await expect(entry).toHaveValue('5 13');
});
