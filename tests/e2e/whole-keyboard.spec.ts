import { keyboard } from './support/hands.ts';
import { expect, test } from './support/program.ts';
import { wholeJob } from './support/whole-job.ts';

test('by keyboard alone an empty workshop comes to a closed job, with all that the mouse does', async ({
  open,
  program,
  context,
}) => {
  test.setTimeout(4 * 60_000);
  const touched: string[] = [];
  await context.exposeFunction('pointerWasUsed', (what: string) => touched.push(what));
  await context.addInitScript(() => {
    const tell = (event: Event) =>
      (window as unknown as { pointerWasUsed: (what: string) => void }).pointerWasUsed(event.type);
    for (const kind of ['pointerdown', 'pointermove', 'wheel']) window.addEventListener(kind, tell, true);
  });
  const page = await open();
  await wholeJob(page, keyboard(page), program);
  expect(touched).toEqual([]);
});
