import { v7 } from 'uuid';
import { expect, it } from 'vitest';
import { blank } from '../../../core/model/blank.ts';
import { ok } from '../../../core/model/result.ts';
import type { Row } from '../../../core/model/tables.ts';
import { jobView } from '../../../core/usecases/views.ts';
import { markables } from '../../../renderer/model/marks.ts';
import { matesOf } from '../../../renderer/model/mates.ts';
import { clientOf, command, good, logJob } from '../../support/client.ts';
import { BLANK_ROWS } from '../../support/rows.ts';
import { commit, newWorkshop } from '../../support/workshop.ts';

it('what goes together is shown at the step of either, on the photo in sight and by the name of the other photo', async () => {
  const workshop = newWorkshop();
  const jobId = await logJob(workshop, 'Hand pump', ['cover', 'lever']);
  const [here, there] = [v7(), v7()];
  const done = commit(workshop, jobId, (writer) => {
    for (const [i, id] of [here, there].entries()) {
      const originalId = String(i + 1).repeat(64);
      writer.put('original', { ...(BLANK_ROWS['original'] as Row<'original'>), id: originalId });
      writer.put('photo', blank('photo', id, jobId, { originalId, fileName: `p${i + 1}.jpg` }));
    }
    return ok(null);
  });
  expect(done.ok).toBe(true);
  const client = clientOf(workshop);
  const view = () => {
    const seen = jobView({ workshop, actor: null }, jobId);
    if (!seen.ok) throw new Error(seen.fault.sentence);
    return seen.value;
  };
  const parts = view().state.part;
  const idOf = (name: string) => parts.find((part) => part.name.toLowerCase() === name)?.id ?? '';
  const mark = async (photoId: string, thingId: string | null) =>
    good(
      await client.record.make({
        ...command(),
        jobId,
        table: 'marker',
        values: { photoId, thingId, x: 0.5, y: 0.5 },
      }),
    ).id;
  const [cover, lever, slot] = [
    await mark(here, idOf('cover')),
    await mark(there, idOf('lever')),
    await mark(here, null),
  ];
  good(await client.marker.join({ ...command(), jobId, markerIds: [cover, lever, slot] }));
  const now = view();
  const step = now.plan.steps.find((one) => one.title.toLowerCase() === 'cover');
  if (!step) throw new Error('Expected a step for the cover.');
  const mates = matesOf(now, step, here, now.state.marker, markables(now));
  expect(mates.marks.map((one) => one.id)).toEqual([slot]);
  expect(mates.lines.map((line) => line.toLowerCase()).sort()).toEqual([
    'cover with lever, on p2.jpg',
    'cover with mark 2, stands for nothing yet',
  ]);
  good(await client.marker.part({ ...command(), jobId, markerIds: [slot] }));
  const after = view();
  expect(matesOf(after, step, here, after.state.marker, markables(after)).marks).toEqual([]);
});
