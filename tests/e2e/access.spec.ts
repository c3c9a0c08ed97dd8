import AxeBuilder from '@axe-core/playwright';
import { expect, startJob, test } from './support/program.ts';

const SCREENS = {
  F1: 'jobs',
  F2: 'removal',
  F3: 'off',
  F4: 'putback',
  F6: 'begin',
  F8: 'handbook',
  F9: 'photos',
  F12: 'stop work',
} as const;

for (const scheme of ['light', 'dark'] as const)
  test(`no screen has an accessibility fault that axe can see, in the ${scheme} theme`, async ({ open }) => {
    // Every screen and many states of it, one after the other.
    test.setTimeout(180_000);
    const page = await open();
    await page.emulateMedia({ colorScheme: scheme });
    const faultsOf = async () => {
      const { violations } = await new AxeBuilder({ page }).analyze();
      return violations.map((one) => `${one.id}: ${one.nodes[0]?.html ?? ''}`);
    };
    expect(await faultsOf(), 'empty').toEqual([]);
    await startJob(page, 'Winch gearbox');
    const entry = page.getByRole('textbox', { name: 'What came off' });
    await page.keyboard.press('F4');
    await expect(page.getByText('steps can go ahead today')).toBeVisible();
    // Beside a list that is empty nothing follows.
    await expect(page.locator('.hand-more')).toHaveCount(0);
    await page.keyboard.press('F2');
    for (const line of [
      'mains locked out',
      'belt guard, 4 M6x16',
      'side cover, gasket, 3 M8x25, hole 2 snapped',
    ]) {
      await entry.fill(line);
      await entry.press('Enter');
      await expect(entry).toHaveValue('');
    }
    await entry.fill('8 M10x35, grezed');
    for (const [key, name] of Object.entries(SCREENS)) {
      if (key === 'F1') continue;
      await page.keyboard.press(key);
      await expect(page.locator('main')).toBeVisible();
      await page.waitForTimeout(150);
      expect(await faultsOf(), name).toEqual([]);
    }
    await page.keyboard.press('F4');
    await page.keyboard.press('d');
    await expect(page.getByRole('heading', { name: 'What can go ahead today' })).toBeVisible();
    expect(await faultsOf(), 'day by day').toEqual([]);
    await page.keyboard.press('F4');
    await page.keyboard.press('r');
    await expect(page.getByLabel('What do you want to reach?')).toBeVisible();
    expect(await faultsOf(), 'what must come off').toEqual([]);
    await page.keyboard.press('F3');
    await page.getByRole('button', { name: 'Spilled tray' }).click();
    for (const thread of ['M6', 'banana']) {
      await page.getByLabel('Thread, or diameter').fill(thread);
      await page.keyboard.press('Enter');
      await expect(page.getByLabel('Thread, or diameter')).toHaveValue('');
    }
    await expect(page.getByText('Expected a thread such as M8')).toBeVisible();
    expect(await faultsOf(), 'spilled tray').toEqual([]);
    await page.getByRole('button', { name: 'Unknown bolt' }).click();
    await page.getByLabel('Thread, or diameter').fill('M6');
    await expect(page.getByText('It fits 4 open holes')).toBeVisible();
    expect(await faultsOf(), 'unknown bolt').toEqual([]);
    await page.getByRole('button', { name: 'Lost something' }).click();
    await page.getByLabel('What is missing?').fill('10 mm socket');
    await page.keyboard.press('Enter');
    await expect(page.getByRole('region', { name: '10 mm socket' })).toBeVisible();
    expect(await faultsOf(), 'looked for').toEqual([]);
    await page.keyboard.press('F8');
    await page.getByLabel('Diameter over the crests').fill('7.88');
    await page.getByLabel('Across flats').fill('wide');
    expect(await faultsOf(), 'handbook, refused').toEqual([]);
    await page.getByLabel('Across flats').fill('13');
    await expect(page.getByText('It can be')).toBeVisible();
    expect(await faultsOf(), 'handbook, answered').toEqual([]);
    await page.keyboard.press('F2');
    await page
      .getByRole('button', { name: /Side cover/ })
      .first()
      .click();
    await page.keyboard.press('Alt+b');
    await expect(page.getByRole('heading', { name: /At the bench/ })).toBeVisible();
    expect(await faultsOf(), 'the bench').toEqual([]);
    await page.locator('.off-list').getByRole('button', { name: /M8/ }).click();
    await page.getByRole('button', { name: /^Hole 1/ }).click();
    expect(await faultsOf(), 'a set at the bench').toEqual([]);
    await page.getByRole('button', { name: 'Split' }).click();
    await expect(page.getByRole('dialog')).toBeVisible();
    expect(await faultsOf(), 'a question at the bench').toEqual([]);
    await page.keyboard.press('Escape');
    await page.keyboard.press('F1');
    await expect(page.getByRole('button', { name: /Carry on/ })).toBeVisible();
    expect(await faultsOf(), 'jobs').toEqual([]);
    await page.keyboard.press('/');
    await page.keyboard.type('side covr');
    await expect(page.getByRole('group', { name: 'Nearest in this workshop' })).toBeVisible();
    expect(await faultsOf(), 'a search without a hit').toEqual([]);
    await page.getByRole('searchbox').fill('side cover');
    await page.locator('.hit').filter({ hasText: 'Winch gearbox' }).first().click();
    await expect(page.getByRole('note')).toContainText('Found here');
    expect(await faultsOf(), 'opened where it was found').toEqual([]);
    await page.keyboard.press('F1');
    await page.getByRole('searchbox').fill('');
    await expect(page.getByRole('button', { name: /Carry on/ })).toBeVisible();
    await page.getByRole('heading', { name: 'Jobs' }).click();
    await page.keyboard.press('n');
    await page.getByLabel('What machine, or what part of it?').fill('Winch gearbox, the other');
    await page.keyboard.press('Enter');
    await expect(entry).toBeFocused();
    await page.keyboard.press('F6');
    await page.getByLabel('Earlier job').selectOption({ label: 'Winch gearbox' });
    expect(await faultsOf(), 'an earlier job is offered').toEqual([]);
    await page.getByRole('button', { name: 'Use it as pattern' }).click();
    await expect(page.getByText('Nothing differs so far.')).toBeVisible();
    expect(await faultsOf(), 'an earlier job is followed').toEqual([]);
    await page
      .getByRole('list', { name: /Removals of this job/ })
      .getByText('Belt guard')
      .click();
    await expect(page.getByRole('button', { name: 'It is off' })).toBeVisible();
    expect(await faultsOf(), 'a planned removal').toEqual([]);
  });
