import { describe, expect, it } from 'vitest';
import { type Markable, type MarkerAt, markables, marksOn, nextToMark } from '../../renderer/model/marks.ts';
import { jobView } from '../../core/usecases/views.ts';
import { clientOf, command, good, logJob, stateOf } from '../support/client.ts';
import { newWorkshop } from '../support/workshop.ts';

/** What marks on photos stand for, and how they are drawn. */

const hole = (n: number, removalId = 'r1', group = 'a'): Markable => ({
  thingId: `${group}${n}`,
  kind: 'position',
  state: 'out',
  text: String(n),
  name: `hole ${n}`,
  group,
  removalId,
});
const things = (...all: Markable[]) => new Map(all.map((one) => [one.thingId, one]));
const marker = (photoId: string, n: number, thingId: string | null): MarkerAt => ({
  id: `${photoId}-${n}`,
  photoId,
  n,
  x: 0.5,
  y: 0.5,
  thingId,
  togetherId: null,
});

describe('the next mark', () => {
  const cover = things(hole(3), hole(1), hole(2), hole(1, 'r2', 'b'));

  it('is the first hole of this removal that no photo shows yet, whichever photo showed the others', () => {
    expect(nextToMark('r1', 'p1', [], cover)?.thingId).toBe('a1');
    expect(nextToMark('r1', 'p2', [marker('p1', 1, 'a1'), marker('p1', 2, 'a2')], cover)?.thingId).toBe('a3');
  });

  it('is the first one that this photo does not show once all are shown somewhere', () => {
    const all = [1, 2, 3].map((n) => marker('p1', n, `a${n}`));
    expect(nextToMark('r1', 'p2', [...all, marker('p2', 1, 'a1')], cover)?.thingId).toBe('a2');
    expect(nextToMark('r1', 'p1', all, cover)).toBeNull();
  });

  it('is a part or connection once no hole is left', () => {
    const plug: Markable = { ...hole(1), thingId: 'plug', kind: 'connection', text: '', name: 'plug' };
    const all = things(hole(1), plug);
    expect(nextToMark('r1', 'p1', [marker('p1', 1, 'a1')], all)?.thingId).toBe('plug');
  });
});

describe('a mark', () => {
  it('shows the state of its hole: out, slackened, blocked, empty as found, tightened on the way back', async () => {
    const workshop = newWorkshop();
    const jobId = await logJob(workshop, 'Bench grinder', ['cover, 4 M6x16', 'slackened 2 M10 tensioner']);
    const client = clientOf(workshop);
    const holes = stateOf(workshop, jobId).position.toSorted((a, b) => a.n - b.n);
    const cover = stateOf(workshop, jobId).fset.find((set) => set.how === 'out');
    const [first, second, third, fourth] = holes.filter((one) => one.setId === cover?.id);
    const loose = holes.find((one) => one.setId !== cover?.id);
    const change = async (id: string | undefined, values: Record<string, unknown>) =>
      good(await client.record.change({ ...command(), jobId, table: 'position', id: id ?? '', values }));
    await change(second?.id, { fate: 'blocked' });
    await change(third?.id, { found: 'empty' });
    good(await client.tick.do({ ...command(), jobId, thingIds: [fourth?.id ?? ''], what: 'tightened' }));
    const view = jobView({ workshop, actor: null }, jobId);
    if (!view.ok) throw new Error(view.fault.sentence);
    const states = markables(view.value);
    const marked = [first, second, third, fourth, loose].map((one) => states.get(one?.id ?? '')?.state);
    expect(marked).toEqual(['out', 'blocked', 'missing', 'tightened', 'slackened']);
  });

  it('carries the number of its hole, and its own number while it stands for nothing', () => {
    const marks = marksOn(
      'p1',
      [marker('p1', 1, 'a7'), marker('p1', 2, null), marker('p2', 1, 'a7')],
      things(hole(7)),
    );
    expect(marks.map((mark) => [mark.text, mark.kind, mark.state])).toEqual([
      ['7', 'position', 'out'],
      ['2', 'match', 'missing'],
    ]);
  });
});
