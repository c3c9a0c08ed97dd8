import type { Page } from '@playwright/test';

/** Holds every call of this name until it is let go: no reply comes before. */
export async function hold(page: Page, call: string): Promise<() => void> {
  const gone: { go: () => void } = { go: () => undefined };
  const until = new Promise<void>((done) => {
    gone.go = done;
  });
  await page.route(`**/rpc/${call}`, async (route) => {
    await until;
    await route.continue();
  });
  return () => gone.go();
}
