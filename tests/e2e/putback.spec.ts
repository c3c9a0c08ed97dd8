import { readFileSync } from 'node:fs';
import { readPdf } from '../record/read-pdf.ts';
import { expect, test } from './support/program.ts';
import { byScript, loggedJob, saved } from './support/seed.ts';

test('one key for all holes, one touch for the exception, and the reading stays beside its hole', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['guard, 4 M6x16', 'end cover, 6 M8x25 hex 13, bag 3, 25 Nm'], 'F4');
  await expect(page.getByRole('heading', { name: 'End cover' })).toBeVisible();
  await expect(page.getByText('18.4 lbf·ft')).toBeVisible();
  await expect(page.getByText('From bag 3.', { exact: true })).toBeVisible();
  await page.keyboard.press('s');
  await expect(page.getByRole('button', { name: /^hole \d: started by hand$/ })).toHaveCount(6);
  await expect(page.getByRole('list', { name: 'Rounds' }).getByRole('listitem')).toHaveCount(5);
  // A round that was touched is the one at hand.
  await page.getByRole('button', { name: /70 %/ }).click();
  await expect(page.getByRole('listitem').filter({ hasText: '70 %' })).toHaveAttribute(
    'aria-current',
    'step',
  );
  await page.getByRole('button', { name: 'hole 2: started by hand' }).click();
  await page.getByLabel('Read on the wrench, N·m').fill('24');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'hole 2: tightened' })).toBeVisible();
  await expect(page.getByText('Read: 24')).toBeVisible();
  await page.getByRole('button', { name: 'Close' }).click();
  await page.keyboard.press('t');
  await expect(page.getByRole('button', { name: /^hole \d: tightened$/ })).toHaveCount(6);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Guard' })).toBeVisible();
  await page.reload();
  await expect(page.getByRole('heading', { name: 'Guard' })).toBeVisible();
});

test('a key typed into a field is a letter and no tick', async ({ open, program }) => {
  const page = await open();
  await loggedJob(program, page, ['end cover, 2 M8x25'], 'F4');
  await page.getByRole('button', { name: 'hole 1: out' }).click();
  await page.getByLabel('Read on the wrench, N·m').pressSequentially('st');
  await saved(page);
  await expect(page.getByRole('button', { name: 'hole 1: out' })).toBeVisible();
  await expect(page.getByLabel('Read on the wrench, N·m')).toHaveValue('st');
});

test('a hole without a piece in hand stays open and says so; a reason leaves it out', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['end cover, 4 M8x25, bag 3'], 'F3');
  await page
    .getByRole('button', { name: /End cover/ })
    .last()
    .click();
  await page.keyboard.press('3');
  await page.keyboard.press('Enter');
  await expect(page.getByText('One is missing.')).toBeVisible();
  await page.keyboard.press('F4');
  await page
    .getByRole('button', { name: /End cover/ })
    .first()
    .click();
  await page.keyboard.press('s');
  await expect(page.getByRole('button', { name: /^hole \d: started by hand$/ })).toHaveCount(3);
  await page.getByRole('button', { name: 'hole 4: out' }).click();
  await page.getByRole('radio', { name: 'left out' }).click();
  await page.getByLabel('Why does it stay out?').fill('Thread insert is on its way');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'hole 4: left out' })).toBeVisible();
});

test('what a tick would bury stops it: the point is answered by name and reason, then the tick goes through', async ({
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
  await expect(page.getByRole('heading', { name: 'Check before covering' })).toBeVisible();
  await expect(page.getByText('rag in the port is still in place.')).toBeVisible();
  const pass = page.getByRole('button', { name: /Pass the check/ });
  await expect(pass).toBeDisabled();
  await page.getByRole('button', { name: 'Accept it' }).click();
  const accept = page.getByRole('button', { name: 'Accept it' });
  await page.getByLabel('Why it may stay like this').fill('Counted at the bench');
  await expect(accept).toBeDisabled();
  await page.getByLabel('Your name').fill('Ana');
  await accept.click();
  await expect(page.getByText('Passed by Ana: Counted at the bench')).toBeVisible();
  await pass.click();
  await saved(page);
  await page.getByRole('button', { name: /Removal 1 Guard/ }).click();
  await expect(page.getByText(/step \d of \d, done/)).toBeVisible();
});

test('a point at a gate leads to where it is cleared', async ({ open, program }) => {
  const page = await open();
  await loggedJob(program, page, ['guard', 'end cover, 2 M8x25', '+rag in the port'], 'F4');
  // The rag is asked for before its opening is closed, and Enter upon Enter says no yes to it.
  const question = page.getByRole('dialog', { name: 'First take out' });
  for (const key of ['s', 't']) {
    await page.keyboard.press(key);
    await expect(question).toContainText('rag in the port');
    await page.keyboard.press('Enter');
    await expect(question).toHaveCount(0);
  }
  // Whoever goes on tick by tick is stopped where it would be buried.
  await page.getByRole('checkbox', { name: /Tighten 2/ }).click();
  await page.getByRole('checkbox', { name: /Fit: end cover/ }).click();
  await saved(page);
  await page.getByRole('button', { name: /Removal 1 Guard/ }).click();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: /Go to End cover/i }).click();
  await expect(page.getByRole('heading', { name: 'End cover' })).toBeVisible();
  // What must come out is looked at first; nobody is taken to have done it.
  await page.keyboard.press('Enter');
  await expect(question).toContainText('rag in the port');
  await page.keyboard.press('y');
  await expect(question).toHaveCount(0);
  await saved(page);
  await page.getByRole('button', { name: /Removal 1 Guard/ }).click();
  await page.keyboard.press('Enter');
  await expect(page.getByText('Everything is back.')).toBeVisible();
});

test('what came off again is open once more, and its first tightening is not undone', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['guard, 2 M6x16', 'end cover, 2 M8x25'], 'F4');
  await page.keyboard.press('s');
  await page.keyboard.press('t');
  await expect(page.getByRole('button', { name: /^hole \d: tightened$/ })).toHaveCount(2);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Guard' })).toBeVisible();
  await page.getByRole('button', { name: /Removal 2 End cover/ }).click();
  await page.getByRole('button', { name: 'Came off again' }).click();
  await page.getByLabel('Why did it come off again?').fill('It leaked');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: /^hole \d: out$/ })).toHaveCount(2);
  await expect(page.getByText(/step \d of \d, ready/)).toBeVisible();
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(page.getByRole('button', { name: /^hole \d: tightened$/ })).toHaveCount(2);
});

test('the list takes a step of your own and something that was never logged', async ({ open, program }) => {
  const page = await open();
  await loggedJob(program, page, ['guard', 'end cover'], 'F4');
  await page.getByRole('button', { name: /step 1 of 2/ }).click();
  await page.getByRole('button', { name: 'Add a step of your own' }).click();
  await page.getByLabel('What is to be done?').fill('Turn the drum by hand');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: /Turn the drum by hand/ })).toBeVisible();
  await page.getByRole('button', { name: 'This was never logged' }).click();
  await page.getByLabel(/Type it as if it came off now/).fill('bracket, 2 M6x16');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: /Bracket/ }).first()).toBeVisible();
});

test('a job that is back is closed at its end, and may be opened again', async ({ open, program }) => {
  const page = await open();
  await loggedJob(program, page, ['mains locked out', 'guard, 2 M6x16'], 'F4');
  await byScript(program, page, [['tick', '2']]);
  await page.keyboard.press('F4');
  await expect(page.getByText('Check before power or pressure')).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByText('Everything is back.')).toBeVisible();
  await page.getByRole('button', { name: /Close the job/ }).click();
  await expect(page.getByText('This job is closed.')).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Together and closed' })).toBeVisible();
  await page.keyboard.press('F12');
  await expect(page.getByText('This machine is together and its job closed.')).toBeVisible();
  await expect(page.getByText('DO NOT RUN')).toHaveCount(0);
  await page.keyboard.press('F4');
  await page.getByRole('button', { name: 'Open it again' }).click();
  await expect(page.getByRole('button', { name: /Close the job/ })).toBeVisible();
});

test('the sheet of this step, or of all that is left, is printed as a PDF', async ({ open, program }) => {
  const page = await open();
  await loggedJob(program, page, ['guard, 4 M6x16', 'end cover, 6 M8x25 hex 13, bag 3, 25 Nm'], 'F4');
  const sheetOf = async (which: string | null) => {
    await page.getByRole('button', { name: 'Print the sheet' }).click();
    if (which !== null) await page.getByRole('radio', { name: which }).check();
    const coming = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Make the PDF' }).click();
    const file = await coming;
    expect(file.suggestedFilename()).toBe('Winch gearbox put back.pdf');
    await expect(page.getByRole('dialog')).toHaveCount(0);
    const pages = await readPdf(readFileSync(await file.path()));
    return pages.map((one) => one.text).join(' ');
  };
  const one = await sheetOf(null);
  expect(one).toContain('End cover');
  expect(one).not.toContain('Guard');
  expect(await sheetOf('All that is left')).toMatch(/End cover.*Guard/);
  await page.getByRole('button', { name: /^step 1 of 2/ }).click();
  expect(await sheetOf(null)).toMatch(/End cover.*Guard/);
});

test('a hole whose own piece is damaged stays open; a new one that came goes into it, or in place of an old one', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['lid, 4 M8x25, hole 2 stripped, hole 3 stripped'], 'F4');
  const hole = (n: number) => page.getByRole('button', { name: new RegExp(`^hole ${n}\\b`) });
  const state = page.getByRole('group', { name: /State of/ });
  await expect(hole(1)).toHaveAccessibleName(/: out/);
  // Enter does not start what waits for something: the key has a letter.
  await page.keyboard.press('Enter');
  await page.keyboard.press('s');
  await expect(page.getByRole('button', { name: /^hole \d.*: started by hand/ })).toHaveCount(2);
  await saved(page);
  await hole(2).click();
  await expect(state.getByRole('radio', { name: 'started' })).toBeVisible();
  await expect(state.getByRole('radio', { name: 'a new one is in' })).toHaveCount(0);
  await page.keyboard.press('F3');
  await page.getByRole('button', { name: /^To get, 1/ }).click();
  await state.getByRole('radio', { name: 'here' }).click();
  await saved(page);
  // Never noted as ordered, it leaves the list at once: what came is still to be seen.
  await expect(page.getByRole('region', { name: 'Came in' })).toContainText(/2.*M8 × 25 mm.*for Lid, came/);
  await page.keyboard.press('F4');
  for (const n of [2, 1]) {
    await hole(n).click();
    await state.getByRole('radio', { name: 'a new one is in' }).click();
    await saved(page);
    await expect(hole(n)).toHaveAccessibleName(/: started by hand/);
  }
  // Both new ones are in by the books; the old one of hole 1 is in hand again, and good for nothing here.
  await expect(state.getByRole('radio', { name: 'a new one is in' })).toHaveCount(0);
});

test('a hole that was found empty is answered on the spot: filled, or left as it was', async ({
  open,
  program,
}) => {
  const page = await open();
  await loggedJob(program, page, ['lid, 4 M8x25, hole 3 missing as found, hole 4 missing as found'], 'F4');
  const point = (n: number) => page.getByRole('listitem').filter({ hasText: `hole ${n} was empty as found` });
  await point(3).getByRole('button', { name: 'Leave it empty' }).click();
  await expect(point(3)).toHaveCount(0);
  // Nothing goes into it: it is no hole of this step any more.
  await expect(page.getByRole('button', { name: /^hole 3/ })).toHaveCount(0);
  await point(4).getByRole('button', { name: 'Fill it' }).click();
  await expect(point(4)).toHaveCount(0);
  await saved(page);
  await page.keyboard.press('F3');
  await expect(page.getByRole('button', { name: /^To get, 1/ })).toBeVisible();
});

test('what was filled short is topped up, also once its step is done', async ({ open, program }) => {
  const page = await open();
  await loggedJob(program, page, ['drained gear oil 1,2 l'], 'F4');
  await page.getByRole('button', { name: /^It is back|^Filled/ }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(/^Fill gear oil/);
  const box = page.getByRole('checkbox', { name: /^Fill gear oil/ });
  await box.click();
  await page.getByRole('dialog').getByRole('textbox').fill('1,1 l');
  await page.keyboard.press('Enter');
  await expect(box).toBeChecked();
  const more = page.getByRole('button', { name: 'More went in' });
  await more.click();
  await page.getByRole('dialog').getByRole('textbox').fill('0,1 l');
  await page.keyboard.press('Enter');
  await saved(page);
  await page.getByRole('button', { name: /^Filled and checked/ }).click();
  // 1,1 l alone would stop it here: 1,2 l had come out.
  await expect(page.getByText('Everything is back.')).toBeVisible();
  await expect(page.getByText(/1\.1 l|Top it up/)).toHaveCount(0);
});

test('a bolt that broke off in its hole is said there, blocks it, and another is short', async ({
  open,
  program,
}) => {
  const page = await open();
  await page.setViewportSize({ width: 390, height: 844 });
  await loggedJob(program, page, ['lid, 4 M8x25'], 'F4');
  await page.getByRole('button', { name: /^hole 2/ }).click();
  const state = page.getByRole('group', { name: /State of/ });
  // On a phone the choice opens within sight.
  await expect(state.getByText('broke off')).toBeInViewport();
  await state.getByRole('radio', { name: 'broke off' }).click();
  const ask = page.getByRole('dialog', { name: 'It broke off in its hole' });
  await ask.getByRole('textbox').fill('sheared');
  await ask.getByRole('button', { name: /Scrap it/ }).click();
  await saved(page);
  await expect(page.getByRole('button', { name: /^hole 2.*: blocked/ })).toBeVisible();
  await page.keyboard.press('F3');
  await page.getByRole('button', { name: /^To get/ }).click();
  await expect(page.getByText(/repair: .*sheared/)).toBeVisible();
});
