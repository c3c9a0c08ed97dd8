import type { Page } from '@playwright/test';
import type { Hands } from './hands.ts';
import { expect } from './program.ts';
import { saved } from './seed.ts';
import { viewOf } from './view.ts';
import { TORQUE, WHO, WHY } from './whole.ts';

const heading = (page: Page) => page.getByRole('heading', { level: 1 });
const largeKey = (page: Page) => page.locator('.foot button.go').last();

/** What the screen shows at one moment. */
interface Shown {
  /** The step, the check, or the whole list. */
  readonly title: string;
  /** "step 3 of 27, waiting"; "" where no step is at hand. */
  readonly state: string;
  /** What the large key does. */
  readonly key: string;
  /** What is asked over the screen; "" for nothing. */
  readonly asks: string;
  /** Boxes ticked in the order of the step. */
  readonly ticked: number;
}

function shown(page: Page): Promise<Shown> {
  return page.evaluate(() => {
    const text = (query: string) => [...document.querySelectorAll(query)].at(-1)?.textContent ?? '';
    return {
      title: text('h1'),
      state: text('.step-place'),
      key: text('.foot button.go'),
      asks: text('[role=dialog]'),
      ticked: document.querySelectorAll('.putback-hand input[type=checkbox]:checked').length,
    };
  });
}

/** Everything on the list to get that has not come in yet comes in; a line goes away once it is answered. */
async function fetchAll(page: Page, hands: Hands): Promise<void> {
  await hands.screen('Off the machine');
  await hands.press(page.getByRole('button', { name: /^To get/ }));
  const wanted = page.getByRole('radio', { name: /^(needed|ordered)$/, checked: true });
  await expect(wanted).not.toHaveCount(0);
  for (let left = await wanted.count(); left > 0; left -= 1) {
    const line = page.locator('.wants fieldset').filter({ has: wanted }).first();
    await hands.press(line.getByRole('radio', { name: 'here' }));
    await expect(wanted).toHaveCount(left - 1);
    await saved(page);
  }
  await hands.screen('Put back');
  await expect(page.locator('.step-place')).toContainText('ready');
}

/** Each point of a check is passed by name and reason. */
async function passGate(page: Page, hands: Hands): Promise<void> {
  const accept = page.locator('.gate-points .keys').getByRole('button', { name: 'Accept it' });
  const pass = page.getByRole('button', { name: /^Pass the check/ });
  await expect(pass).toBeDisabled();
  for (let left = await accept.count(); left > 0; left -= 1) {
    await hands.press(accept.first());
    await hands.write(page.getByLabel('Why it may stay like this'), WHY);
    await hands.write(page.getByLabel('Your name'), WHO);
    await hands.enter(page.locator('.gate-answer').getByRole('button', { name: 'Accept it' }));
    await expect(accept).toHaveCount(left - 1);
  }
  await expect(page.getByText(`Passed by ${WHO}: ${WHY}`).first()).toBeVisible();
  await hands.go(pass);
}

/** What the question over the screen wants to hear. */
function answerTo(asks: string): string {
  if (asks.startsWith('How much went into gear oil')) return '0.7 l';
  if (asks.startsWith('How much')) return '0.25 l';
  return '0.14 mm';
}

/** The question over the screen is answered; the step then has what it lacked. */
async function answer(page: Page, hands: Hands, before: Shown): Promise<void> {
  const dialog = page.getByRole('dialog');
  const yes = dialog.locator('button.go');
  if (before.asks.startsWith('First take out')) await hands.press(yes);
  else {
    await hands.write(dialog.getByRole('textbox'), answerTo(before.asks));
    await hands.enter(yes);
  }
  await expect.poll(() => shown(page)).toMatchObject({ asks: '', ticked: before.ticked + 1 });
}

/** One hole is opened by its mark on the photo; what was read on the wrench stays beside it. */
async function readTorque(page: Page, hands: Hands): Promise<void> {
  const hole = page.locator('.putback-photo').getByRole('button', { name: /^hole 1\b.*: tightened$/ });
  const close = page.getByRole('button', { name: 'Close', exact: true });
  await hands.press(hole);
  await expect(page.getByText('Read: ')).toHaveCount(0);
  await hands.write(page.getByLabel('Read on the wrench, N·m'), String(TORQUE));
  await hands.enter(page.getByRole('button', { name: 'Keep the reading' }));
  await expect(page.getByText(`Read: ${TORQUE}`)).toBeVisible();
  await hands.press(close);
  await expect(close).toHaveCount(0);
  await hands.press(hole);
  await expect(page.getByText(`Read: ${TORQUE}`)).toBeVisible();
  await hands.press(close);
  await expect(close).toHaveCount(0);
}

/**
 * Until the screen has read back what was done: it shows a touch before that, and a press too early would fall on the
 * step that comes. Told by what the program answers: no step stays on the screen that is done.
 */
async function settled(page: Page): Promise<void> {
  await saved(page);
  const stateShown = async () => {
    const { plan } = await viewOf(page);
    const { title } = await shown(page);
    return plan.steps.find((step) => step.title === title)?.state;
  };
  await expect.poll(stateShown).not.toBe('done');
}

/** One move on the way back, as the screen asks for it; done once the screen shows something else. */
async function move(page: Page, hands: Hands, now: Shown): Promise<void> {
  if (now.asks !== '') await answer(page, hands, now);
  else if (now.title.startsWith('Check before')) await passGate(page, hands);
  else if (now.state.endsWith('waiting')) await fetchAll(page, hands);
  else await hands.go(largeKey(page));
  await expect.poll(() => shown(page)).not.toEqual(now);
  await settled(page);
}

/** Everything goes back, and the job is closed. Gives the titles of steps and checks in the order they came. */
export async function allBack(page: Page, hands: Hands): Promise<string[]> {
  const walked: string[] = [];
  for (let moves = 0; moves < 120; moves += 1) {
    const now = await shown(page);
    if (now.key.startsWith('Close the job')) return walked;
    if (now.title !== walked.at(-1)) walked.push(now.title);
    if (now.title === 'Gear cover' && now.key.startsWith('It is back')) await readTorque(page, hands);
    await move(page, hands, now);
  }
  throw new Error(`Expected the way back to end within 120 moves; walked ${walked.join(', ')}`);
}

/** The job is closed, and the screen says so. */
export async function close(page: Page, hands: Hands): Promise<void> {
  await hands.go(largeKey(page));
  await expect(page.getByText('This job is closed.')).toBeVisible();
  await expect(heading(page)).toHaveText('Together and closed');
  await saved(page);
}
