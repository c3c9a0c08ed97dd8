import { expect, startJob, test } from './support/program.ts';

test('a removal is typed, kept, shown in a second tab, undone and redone', async ({ open }) => {
  const page = await open();
  await startJob(page, 'Bench grinder');
  const entry = page.getByRole('textbox', { name: 'What came off' });
  await entry.fill('wheel guard, 4 M6x16');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: /Wheel guard/ })).toBeVisible();
  await expect(entry).toHaveValue('');

  const second = await open();
  await expect(second.getByRole('button', { name: /Wheel guard/ })).toBeVisible();

  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(page.getByRole('button', { name: /Wheel guard/ })).toHaveCount(0);
  await expect(second.getByRole('button', { name: /Wheel guard/ })).toHaveCount(0);

  await page.keyboard.press('Control+Shift+z');
  await expect(second.getByRole('button', { name: /Wheel guard/ })).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(second.getByRole('button', { name: /Wheel guard/ })).toHaveCount(0);
});

test('a removal is shown before the reply comes, marked as not saved', async ({ open }) => {
  const page = await open();
  await startJob(page, 'Bench grinder');
  let release = (): void => {};
  const held = new Promise<void>((done) => {
    release = done;
  });
  await page.route('**/rpc/log/add', async (route) => {
    await held;
    await route.continue();
  });
  await page.getByRole('textbox', { name: 'What came off' }).fill('belt');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: /belt.*not saved yet/i })).toBeVisible();
  await expect(page.getByText('1 change is not saved yet.')).toBeVisible();
  release();
  await expect(page.getByText('1 change is not saved yet.')).toHaveCount(0);
  await expect(page.getByRole('button', { name: /Belt/ })).toBeVisible();
});

test('a half-typed line survives a reload and a kill of the program', async ({ open, program, context }) => {
  const page = await open();
  await startJob(page, 'Bench grinder');
  const entry = page.getByRole('textbox', { name: 'What came off' });
  await entry.pressSequentially('5 13 ba');
  await page.reload();
  await expect(entry).toHaveValue('5 13 ba');
  await page.waitForTimeout(400);
  await program.kill();
  await page.close();
  await program.start();
  const after = await context.newPage();
  await after.goto(program.address);
  await expect(after.getByRole('textbox', { name: 'What came off' })).toHaveValue('5 13 ba');
});

test('what was acknowledged before a kill is there after it, and the window goes on by itself', async ({
  open,
  program,
}) => {
  const page = await open();
  await startJob(page, 'Bench grinder');
  await page.getByRole('textbox', { name: 'What came off' }).fill('belt');
  await page.keyboard.press('Enter');
  await expect(page.getByText('not saved')).toHaveCount(0);
  await expect(page.getByRole('button', { name: /Belt/ })).toBeVisible();
  await program.kill();
  await program.start();
  await page.getByRole('textbox', { name: 'What came off' }).fill('pulley');
  await page.keyboard.press('Enter');
  await expect(page.getByText('not saved')).toHaveCount(0, { timeout: 20_000 });
  await expect(page.getByRole('button', { name: /Pulley/ })).toBeVisible();
  await expect(page.getByRole('button', { name: /Belt/ })).toBeVisible();
});

test('what was not understood is underlined, kept as a note, and never swallowed', async ({ open }) => {
  const page = await open();
  await startJob(page, 'Bench grinder');
  await page.getByRole('textbox', { name: 'What came off' }).fill('8 M10x35 hex 16, grezed');
  await expect(page.locator('mark', { hasText: 'grezed' })).toBeVisible();
  await expect(page.getByText('is kept as a note')).toBeVisible();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: /M10x35/ }).click();
  await expect(page.getByText('8', { exact: true }).first()).toBeVisible();
});

test('a title and the first line, typed before any reply, are one removal', async ({ open }) => {
  const page = await open();
  await startJob(page, 'Bench grinder');
  let release = (): void => {};
  const held = new Promise<void>((done) => {
    release = done;
  });
  await page.route('**/rpc/record/make', async (route) => {
    await held;
    await route.continue();
  });
  await page.getByRole('radio', { name: 'aside' }).check({ force: true });
  await page.getByRole('textbox', { name: 'Title of this removal' }).fill('Guard of the wheel');
  const entry = page.getByRole('textbox', { name: 'What came off' });
  await entry.fill('wheel guard, 4 M6x16');
  await entry.press('Enter');
  release();
  await expect(page.getByText(/not saved yet/)).toHaveCount(0);
  await expect(page.locator('.removal-number')).toContainText(/^2\D/);
  await expect(page.getByRole('button', { name: /Guard of the wheel.*moved aside/ })).toBeVisible();
});
