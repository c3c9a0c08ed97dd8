import { expect, startJob, test } from './support/program.ts';
import { byScript, loggedJob } from './support/seed.ts';

test('what is loose, open, inside, still off and not counted is listed before anyone leaves', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(
    program,
    page,
    [
      'mains locked out',
      'drained gear oil 1 l',
      'slackened 4 M12 hex 19',
      'side cover, 6 M8x25, bag 4',
      '+rag in the port',
    ],
    'F12',
  );
  const group = (title: string) =>
    page.locator('section', { has: page.getByRole('heading', { name: title, exact: true }) });
  await expect(group('Loose, not tightened').getByText('4', { exact: true })).toBeVisible();
  await expect(group('Stands open to air').getByText('gear oil')).toBeVisible();
  await expect(group('Inside the machine, must come out').getByText('rag in the port')).toBeVisible();
  await expect(group('Made safe, still off').getByText('mains locked out')).toBeVisible();
  await expect(page.getByText('Bags not counted')).toBeVisible();
  await byScript(program, page, [['count', 'bag 4', '6']]);
  await page.keyboard.press('F12');
  await expect(page.getByText('Bags not counted')).toHaveCount(0);
});

test('a note that is half written survives a reload; on paper stand the tag and the note, and no key', async ({
  open,
  program,
}) => {
  const page = await open();
  await startJob(page, 'Winch gearbox');
  await page.keyboard.press('F12');
  await expect(page.getByText(/has begun; nothing is off yet/)).toBeVisible();
  await byScript(program, page, [['log', 'side cover, 2 M8x25']]);
  await expect(page.getByText('This machine is apart.')).toBeVisible();
  await page.getByLabel('Note for whoever comes next').fill('Plate only hand tight');
  await page.reload();
  await expect(page.getByLabel('Note for whoever comes next')).toHaveValue('Plate only hand tight');
  let printed = 0;
  await page.exposeFunction('printed', () => {
    printed += 1;
  });
  await page.evaluate(() => {
    window.print = () => (window as unknown as { printed(): void }).printed();
  });
  await page.getByRole('button', { name: 'Print tag and note' }).click();
  await expect.poll(() => printed).toBe(1);
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByText('DO NOT RUN')).toBeVisible();
  await expect(page.locator('.handover-note')).toHaveText('Plate only hand tight');
  await expect(page.getByRole('button', { name: /Stop here/ })).toBeHidden();
  await expect(page.getByRole('navigation')).toBeHidden();
});

test('the next person reads the note before anything else, once, on whatever screen the job opens', async ({
  open,
  program,
  context,
}) => {
  const page = await open();
  await loggedJob(program, page, ['side cover, 2 M8x25'], 'F12');
  await page.getByLabel('Note for whoever comes next').fill('Plate only hand tight');
  await page.getByLabel('Your name').fill('Ana');
  await page.getByRole('heading', { name: 'Stop work' }).click();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: /^Carry on/ })).toBeVisible();
  await page.close();
  const next = await context.newPage();
  await next.goto(program.address);
  await expect(next.getByText('Plate only hand tight')).toBeVisible();
  await next.getByRole('button', { name: /^Carry on/ }).click();
  const note = next.getByRole('alertdialog', { name: 'Work was stopped here' });
  await expect(note).toContainText('Plate only hand tight');
  await expect(note).toContainText('Ana');
  await next.keyboard.press('F4');
  await expect(note).toBeVisible();
  await note.getByRole('button', { name: 'I have read it' }).click();
  await expect(note).toHaveCount(0);
  await next.reload();
  await expect(next.getByRole('navigation', { name: 'Screens' })).toBeVisible();
  await expect(note).toHaveCount(0);
});
