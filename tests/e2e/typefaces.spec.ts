import { expect, test } from './support/program.ts';

test('the first button shown stands in its final letters, so that none moves from under a press', async ({
  program,
  context,
}) => {
  await program.enter(context);
  const page = await context.newPage();
  await page.route('**/*.woff2', async (route) => {
    await new Promise((done) => setTimeout(done, 300));
    await route.continue();
  });
  await page.addInitScript(() => {
    const seen = new MutationObserver(() => {
      if (!document.querySelector('button')) return;
      seen.disconnect();
      const faces = ['16px "Archivo Variable"', '16px "Source Serif 4 Variable"'];
      document.documentElement.dataset['faces'] = faces.map((face) => document.fonts.check(face)).join(' ');
    });
    seen.observe(document, { childList: true, subtree: true });
  });
  await page.goto(program.address);
  await page.getByRole('button', { name: 'Start my own' }).waitFor();
  await expect(page.locator('html')).toHaveAttribute('data-faces', 'true true');
});
