import { type Browser, chromium } from '@playwright/test';
import { chromiumFlags, findChromium } from '../support/chromium.ts';

/** A real browser, or a failure that says what to install: a test that cannot run has not passed. */
export async function launchChromium(extra: readonly string[] = []): Promise<Browser> {
  const found = findChromium();
  if ('missing' in found) throw new Error(found.missing);
  return chromium.launch({ executablePath: found.path, args: [...chromiumFlags(), ...extra] });
}
