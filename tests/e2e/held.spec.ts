import { hold } from './support/hold.ts';
import { expect, test } from './support/program.ts';
import { drop, photoOf, picture, touch } from './support/pictures.ts';
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
  await loggedJob(program, page, ['side cover, 4 M8x25, 25 Nm'], 'F4');
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

test('what is taken back before any reading has come is gone: a mark, and a line', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['guard, 4 M6x16'], 'F2');
  await page.getByRole('button', { name: /Guard/ }).click();
  const head = { x: 0.25, y: 0.3 };
  await drop(page, [await picture(program.folder, 'guard.jpg', [head])]);
  await page.getByRole('button', { name: /take into 1/ }).click();
  await expect(photoOf(page).locator('img').first()).toBeVisible();
  await saved(page);
  await page.getByRole('button', { name: 'Mark the holes' }).click();
  let letGo = await hold(page, 'jobs/view');
  await touch(page, head);
  const mark = page.getByRole('button', { name: /^hole 1.*: out/ });
  await expect(mark).toBeVisible();
  await saved(page);
  await page.keyboard.press('Control+z');
  await saved(page);
  letGo();
  await expect(mark).toHaveCount(0);

  await page.getByRole('button', { name: 'Done marking' }).click();
  await page.getByRole('button', { name: /^Next removal/ }).click();
  await page.unroute('**/rpc/jobs/view');
  letGo = await hold(page, 'jobs/view');
  const entry = page.getByRole('textbox', { name: 'What came off' });
  const answered = page.waitForResponse('**/rpc/log/add');
  await entry.fill('side cover');
  await entry.press('Enter');
  await answered;
  const undone = page.waitForResponse('**/rpc/history/undo');
  await page.keyboard.press('Control+z');
  await undone;
  letGo();
  await saved(page);
  await expect(page.locator('.dl-row').filter({ hasText: /side cover/i })).toHaveCount(0);
});
