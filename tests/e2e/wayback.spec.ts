import { expect, startJob, test } from './support/program.ts';
import type { Page } from '@playwright/test';

/** Types entry lines, one after the other, as somebody at the machine does. */
async function type(page: Page, ...lines: string[]): Promise<void> {
  const entry = page.getByRole('textbox', { name: 'What came off' });
  for (const line of lines) {
    await entry.fill(line);
    await entry.press('Enter');
    await expect(entry).toHaveValue('');
  }
  await expect(page.getByText('not saved yet')).toHaveCount(0);
}

test('a job is taken apart and put back by keys, with a seal that had to come new, to the end', async ({
  open,
}) => {
  const page = await open();
  await startJob(page, 'Winch gearbox');
  await type(page, 'belt guard, 4 M6x16', 'side cover, gasket, 3 M8x25, 25 Nm');
  await page.keyboard.press('F4');
  await expect(page.getByRole('heading', { name: 'Side cover' })).toBeVisible();
  await expect(page.getByText('gasket must be new: 1 to get.').first()).toBeVisible();
  await page.keyboard.press('F3');
  await page.getByRole('button', { name: /To get/ }).click();
  await page
    .getByRole('group', { name: /State of gasket/ })
    .getByRole('radio', { name: 'here' })
    .click();
  await expect(page.getByText('not saved yet')).toHaveCount(0);
  await page.keyboard.press('F4');
  await expect(page.getByText(/ready/).first()).toBeVisible();
  await expect(page.getByText('25', { exact: true }).first()).toBeVisible();
  await page.keyboard.press('s');
  await expect(page.getByRole('button', { name: 'hole 1: started by hand' })).toBeVisible();
  await page.keyboard.press('t');
  await expect(page.getByRole('button', { name: 'hole 3: tightened' })).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Belt guard' })).toBeVisible();
  await page.getByRole('button', { name: /All started/ }).click();
  await page.getByRole('button', { name: /All tight/ }).click();
  await page.getByRole('button', { name: /It is back/ }).click();
  await expect(page.getByText('Everything is back.')).toBeVisible();
});

test('a rag left in stops the step that would cover it, until it is out or passed by name and reason', async ({
  open,
}) => {
  const page = await open();
  await startJob(page, 'Winch gearbox');
  await type(page, 'belt guard', 'side cover, 2 M8x25', 'rag in the port');
  await page.keyboard.press('F4');
  // The large key would ask for the rag first; tick by tick nobody does.
  await page.getByRole('checkbox', { name: /Start all/ }).click();
  await page.getByRole('checkbox', { name: /Tighten 2/ }).click();
  await page.getByRole('checkbox', { name: /Fit: side cover/ }).click();
  await page
    .getByRole('button', { name: /belt guard/i })
    .first()
    .click();
  await page.getByRole('button', { name: /It is back/ }).click();
  await expect(page.getByText(/rag.*still in place/i).first()).toBeVisible();
});

test('a bag is counted short, the search says where to look, and found ends it', async ({ open }) => {
  const page = await open();
  await startJob(page, 'Winch gearbox');
  await type(page, 'drained gear oil 1 l', 'side cover, 8 M8x25, bag 4');
  await page.keyboard.press('F3');
  await page
    .getByRole('button', { name: /Bag 4|4 .*M8/ })
    .first()
    .click();
  await page.getByRole('button', { name: 'One less' }).click();
  await page.getByRole('button', { name: /It is 7/ }).click();
  await expect(page.getByText('One is missing.')).toBeVisible();
  await page.reload();
  await expect(page.getByText('One is missing.')).toBeVisible();
  await page.getByRole('button', { name: 'Found it' }).click();
  await expect(page.getByText('One is missing.')).toHaveCount(0);
});

test('work is stopped with a note, and whoever opens the job next reads it first', async ({ open }) => {
  const page = await open();
  await startJob(page, 'Winch gearbox');
  await type(page, 'slackened 4 M12 hex 19', 'mains locked out');
  await page.keyboard.press('F12');
  await expect(page.getByText('DO NOT RUN')).toBeVisible();
  await page.getByLabel('Note for whoever comes next').fill('Plate only hand tight');
  await page.getByLabel('Your name').fill('Ana');
  await page.getByRole('button', { name: /Stop here/ }).click();
  await page.getByRole('button', { name: /Carry on/ }).click();
  await expect(page.getByRole('alertdialog')).toContainText('Plate only hand tight');
  await page.getByRole('button', { name: 'I have read it' }).click();
  await expect(page.getByRole('alertdialog')).toHaveCount(0);
});

test('before you start: what is found, what must be ready and what was made safe are kept', async ({
  open,
}) => {
  const page = await open();
  await startJob(page, 'Winch gearbox');
  await page.keyboard.press('F6');
  await page.getByLabel('Machine', { exact: true }).fill('Hand winch, 2 t');
  await page.getByLabel('What you found').fill('crack in the drum');
  await page.getByRole('button', { name: 'Note it' }).first().click();
  await page.getByLabel('Tool or part').fill('19 mm spanner');
  await page.getByRole('button', { name: 'List it' }).click();
  await page.getByLabel('What was made safe, and how').fill('load on stands');
  await page.getByRole('button', { name: 'Note it' }).last().click();
  await expect(page.getByText('load on stands').first()).toBeVisible();
  await page.reload();
  await expect(page.getByLabel('Machine', { exact: true })).toHaveValue('Hand winch, 2 t');
  await expect(page.getByText('crack in the drum')).toBeVisible();
  await expect(page.getByText('19 mm spanner')).toBeVisible();
});
