import { describe, expect, it } from 'vitest';
import { beginLists } from '../../../renderer/model/begin.ts';
import { lineOf } from '../../../renderer/model/line.ts';
import { offGroups } from '../../../renderer/model/off.ts';
import {
  differencesOf,
  nextPlanned,
  patternData,
  plannedOf,
  withCounts,
} from '../../../renderer/model/pattern.ts';
import { removalData } from '../../../renderer/model/removal.ts';
import { stopGroups } from '../../../renderer/model/stopwork.ts';
import { clientOf, command, good, logJob } from '../../support/client.ts';
import { newWorkshop } from '../../support/workshop.ts';

async function followed() {
  const workshop = newWorkshop();
  const client = clientOf(workshop);
  const lines = ['mains locked out', 'drained oil 1 l', 'side cover, 8 M8x25', 'slackened 2 M12'];
  const fromJobId = await logJob(workshop, 'Winch 1', lines);
  const jobId = await logJob(workshop, 'Winch 2', []);
  good(await client.pattern.use({ ...command(), jobId, fromJobId }));
  const view = async () => good(await client.jobs.view({ jobId }));
  return { client, jobId, view };
}

const notches = (view: Parameters<typeof lineOf>[0], pending: Parameters<typeof lineOf>[2] = []) =>
  lineOf(view, { direction: 'apart', atId: null, now: 0 }, pending).items.flatMap((item) =>
    item.kind === 'removal' ? [[item.number, item.title, item.note]] : [],
  );

describe('a job that follows an earlier one', () => {
  it('shows nothing as off, open, loose or safe that is only planned', async () => {
    const { view } = await followed();
    const now = await view();
    expect(offGroups(now, 0)).toEqual([]);
    expect(stopGroups(now)).toEqual([]);
    expect(beginLists(now).safe).toEqual([]);
  });

  it('has its plan on the line, and what comes off beside it before the rest of the plan', async () => {
    const { view } = await followed();
    const now = await view();
    const removal = { id: 'next', text: 'coupling' };
    expect(
      notches(now, [{ command: 'c', jobId: 'j', removal, tick: null, seq: null }]).map(([number, title]) => [
        number,
        title,
      ]),
    ).toEqual([
      [1, 'coupling'],
      [2, 'Mains locked out'],
      [3, 'Oil'],
      [4, 'Side cover'],
      [5, expect.stringContaining('M12')],
    ]);
    expect(notches(now)[0]).toEqual([1, 'Mains locked out', 'planned']);
    expect(removalData(now, null, 0, 0).number).toBe(1);
  });

  it('says what is expected of a planned removal, what was counted, and afterwards what differs', async () => {
    const { client, jobId, view } = await followed();
    const first = await view();
    const cover = first.state.removal.find((one) => one.title === 'Side cover');
    const id = cover?.id ?? '';
    const planned = plannedOf(first, id);
    expect(planned).toMatchObject({
      parts: ['side cover'],
      sets: [{ name: 'M8 × 25 mm', expected: 8, found: 8 }],
    });
    const setId = planned?.sets[0]?.id ?? '';
    expect(withCounts(planned, new Map([[setId, 7]]))?.sets[0]).toMatchObject({ expected: 8, found: 7 });
    expect(nextPlanned(first)).toBe(first.state.removal.find((one) => one.title === 'Mains locked out')?.id);
    good(await client.pattern.begin({ ...command(), jobId, removalId: id, found: [{ setId, count: 7 }] }));
    const then = await view();
    expect(plannedOf(then, id)).toBeNull();
    expect(differencesOf(then, id).map(({ say }) => say)).toEqual(['8 expected, 7 found: M8 × 25 mm.']);
    expect(patternData(then)).toMatchObject({ begun: 1, all: 4, differs: [{ title: 'Side cover' }] });
    expect(removalData(then, null, 0, 0).number).toBe(2);
  });
});
