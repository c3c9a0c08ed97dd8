import { mouse } from './support/hands.ts';
import { test } from './support/program.ts';
import { countShort, firstStepBack, takeApart } from './support/whole.ts';

test('the whole story of the sample is taken apart by mouse, with photos, marks, a reload, a shortage; the first step back is undone and done again', async ({
  open,
  program,
}) => {
  test.setTimeout(8 * 60_000);
  const page = await open();
  page.setDefaultTimeout(20_000);
  const hands = mouse(page);
  await takeApart(page, hands, program.folder, 2);
  await countShort(page, hands);
  await firstStepBack(page, hands);
});
