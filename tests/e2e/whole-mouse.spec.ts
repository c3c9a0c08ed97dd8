import { mouse } from './support/hands.ts';
import { test } from './support/program.ts';
import { wholeJob } from './support/whole-job.ts';

test('by mouse an empty workshop comes to a closed job, with photos, marks, a reload, a shortage, new seals, a read torque, a passed check, a step undone and done again', async ({
  open,
  program,
}) => {
  test.setTimeout(4 * 60_000);
  const page = await open();
  await wholeJob(page, mouse(page), program);
});
