import type { Locator, Page } from '@playwright/test';
import { expect } from './program.ts';

/** Keys that bring the focus nearer to an element. */
interface Way {
  readonly key: 'Tab' | 'Shift+Tab' | 'ArrowDown' | 'ArrowUp';
  /** How often, as far as can be seen from here; 0 = the focus is there. */
  readonly times: number;
}

/** Runs in the window: what has one stop for many is entered at its stop and walked by arrows. */
function wayTo(target: Element): Way {
  const active = document.activeElement ?? document.body;
  if (active === target) return { key: 'Tab', times: 0 };
  const isBefore = (target.compareDocumentPosition(active) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0;
  const group =
    target instanceof HTMLElement && target.tabIndex < 0 ? target.closest('[role=group], ol, ul') : null;
  if (group?.contains(active)) return { key: isBefore ? 'ArrowUp' : 'ArrowDown', times: 1 };
  if (active === document.body) return { key: 'Tab', times: 1 };
  const stops = [
    ...document.querySelectorAll<HTMLElement>('a, button, input, select, summary, textarea, [tabindex]'),
  ].filter((one) => {
    const isOn = one.tabIndex >= 0 && !one.matches(':disabled') && one.getClientRects().length > 0;
    return isOn && !(one instanceof HTMLInputElement && one.type === 'radio' && !one.checked);
  });
  const goal = group === null ? target : stops.find((one) => group.contains(one));
  const far = Math.abs(stops.findIndex((one) => one === goal) - stops.findIndex((one) => one === active));
  return { key: isBefore ? 'Shift+Tab' : 'Tab', times: Math.max(1, far) };
}

/** Brings the focus to an element with Tab and the arrows only; throws where that does not lead there. */
export async function reach(page: Page, target: Locator): Promise<void> {
  await expect(target).toBeVisible();
  await expect(target).toBeEnabled();
  const walked: string[] = [];
  while (walked.length < 200) {
    const { key, times } = await target.evaluate(wayTo);
    if (times === 0) return;
    for (let i = 0; i < times; i += 1) await page.keyboard.press(key);
    walked.push(...Array<string>(times).fill(key));
  }
  throw new Error(`Expected Tab and the arrows to reach ${target.toString()}; walked ${walked.join(' ')}`);
}

/** Chooses a radio button: Tab to the one that is chosen, arrows from there. What is chosen may leave the screen at once. */
export async function choose(page: Page, radio: Locator): Promise<void> {
  const { name, from, to } = await radio.evaluate((one: HTMLInputElement) => {
    const all = [...document.querySelectorAll<HTMLInputElement>('input[type=radio]')].filter(
      (other) => other.name === one.name,
    );
    return { name: one.name, from: all.findIndex((other) => other.checked), to: all.indexOf(one) };
  });
  if (from < 0) throw new Error(`Expected one of "${name}" to be chosen already.`);
  await reach(page, page.locator(`input[name="${name}"]`).nth(from));
  for (let at = from; at !== to; at += Math.sign(to - at))
    await page.keyboard.press(at < to ? 'ArrowDown' : 'ArrowUp');
}
