import { describe, expect, it } from 'vitest';
import { plannedAgain } from '../../core/model/off-again.ts';
import { planJob, reachOf } from '../../core/reinstall/index.ts';
import { balances } from '../../core/tally/index.ts';
import { command, good, named, refused } from '../support/client.ts';
import { gearbox } from '../support/gearbox.ts';

const LINES = [
  'mains locked out',
  'belt guard, 4 M6x16 hex 10',
  'side cover, gasket, 3 M8x25 hex 13',
  'shaft, 2 M10x40 hex 17',
];

/** Holes of the one set of a removal. */
function holesOf(box: Awaited<ReturnType<typeof gearbox>>, removalId: string): string[] {
  const { fset, position } = box.state();
  const set = fset.find((one) => one.removalId === removalId)?.id;
  return position.filter((hole) => hole.setId === set).map((hole) => hole.id);
}

/** A gearbox that is back up to a part of its way: every step that can be ticked is ticked, down the list. */
async function backUp(steps: number, holding: readonly string[] = []) {
  const box = await gearbox(LINES);
  const { client, base } = box;
  const gasket = named(box.state().part, 'gasket');
  for (const name of holding)
    good(
      await client.record.make({
        ...base(),
        table: 'holds',
        values: {
          positionId: holesOf(box, named(box.state().part, 'shaft').removalId ?? '')[0],
          partId: named(box.state().part, name).id,
        },
      }),
    );
  good(await client.piece.receive({ ...base(), thingId: gasket.id, qty: 1, stowId: null }));
  for (let i = 0; i < steps; i += 1) {
    const step = box.plan().steps.find((one) => one.state === 'ready');
    const what = step?.kind === 'I' ? 'given back' : step?.kind === 'F' ? 'tightened' : 'done';
    good(await client.tick.do({ ...base(), thingIds: [step?.thingId ?? ''], what }));
  }
  const removal = (title: string) => {
    const low = title.toLowerCase();
    const row = box.state().removal.find((one) => one.title.toLowerCase() === low && one.phase !== 'planned');
    if (!row) throw new Error(`Expected a removal “${title}”.`);
    return row;
  };
  const planned = () => plannedAgain(box.state()).map((one) => one.removal.title);
  const begin = async (n = 0) => {
    const removalId = plannedAgain(box.state())[n]?.removal.id ?? '';
    return client.pattern.begin({ ...base(), removalId, found: [] });
  };
  return { ...box, gasket, removal, planned, begin };
}

describe('what must come off, as a plan', () => {
  it('is the least set in the order of taking off, made safe first; one after the other comes off a second time', async () => {
    const box = await backUp(4);
    const { client, base, state, begin } = box;
    const shaft = named(state().part, 'shaft');
    const side = 'right' as const;
    const repeat = { removalId: box.removal('Shaft').id, side, mirrorThreads: false };
    const later = good(await client.removal.repeat({ ...base(), ...repeat })).id;
    const before = state();
    const first = before.removal.length;
    const reach = reachOf(before, [shaft.id], box.workshop.now());
    expect(reach.removals.map((one) => one.title)).toEqual(['Belt guard', 'Side cover', 'Shaft']);
    const done = good(await client.plan.comeOff({ ...base(), targetIds: [shaft.id] }));
    expect(done).toMatchObject({ removals: 4 });
    expect(box.planned()).toEqual(['Make safe again: mains locked out', 'Belt guard', 'Side cover', 'Shaft']);
    // Nothing is off by being planned: the list, what must come off and the books stay as they were.
    expect(box.plan().depth).toEqual(planJob(before, box.workshop.now()).depth);
    expect(reachOf(state(), [shaft.id], 0).removals).toEqual(reachOf(before, [shaft.id], 0).removals);
    // Another removal that is only planned so far has the same before it as ever.
    expect(reachOf(state(), [later], 0).removals).toEqual(reachOf(before, [later], 0).removals);
    expect([...balances(state(), 'all')]).toEqual([...balances(before, 'all')]);
    // Out of turn it is refused, and says what must come first.
    expect(refused(await begin(3))).toContain('First take off');
    const left = [];
    while (box.planned().length > 0) {
      good(await begin());
      left.push(box.plan().depth.left);
    }
    expect(left).toEqual([1, 2, 3, 4]);
    // One history: the same removals in their second round, none of the plan left beside them.
    expect(state().removal).toHaveLength(first);
    const cover = box.plan().steps.find((step) => step.title === 'Side cover' && step.kind === 'S');
    expect(cover).toMatchObject({ round: 2, state: 'behind' });
    expect(
      state()
        .deed.filter((deed) => deed.what === 'came off again')
        .map((deed) => deed.why),
    ).toContain('to reach shaft');
    // The seal of the first time is used up: a new one is to get.
    const seal = box.plan().steps.find((step) => step.lacks.some((lack) => lack.thingId === box.gasket.id));
    expect(seal?.title).toBe('Side cover');
    expect(reachOf(state(), [shaft.id], 0).removals).toEqual([]);
  });

  it('does not plan again what is planned, takes more targets in at their place, and one undo takes it all back', async () => {
    const box = await backUp(4);
    const { client, base, state } = box;
    const text = () => JSON.stringify(state());
    const guard = box.removal('Belt guard').id;
    const cover = box.removal('Side cover').id;
    const before = text();
    good(await client.plan.comeOff({ ...base(), targetIds: [guard] }));
    expect(box.planned()).toEqual(['Make safe again: mains locked out', 'Belt guard']);
    const once = text();
    expect(refused(await client.plan.comeOff({ ...base(), targetIds: [guard] }))).toContain(
      'planned already',
    );
    expect(good(await client.plan.comeOff({ ...base(), targetIds: [cover, guard] })).removals).toBe(1);
    expect(box.planned()).toEqual(['Make safe again: mains locked out', 'Belt guard', 'Side cover']);
    good(await client.history.undo({ ...command(), jobId: box.jobId }));
    expect(text()).toBe(once);
    good(await client.history.undo({ ...command(), jobId: box.jobId }));
    expect(text()).toBe(before);
  });

  it('an energy that was given back later is made safe before what was planned already', async () => {
    const box = await backUp(3);
    const { client, base } = box;
    good(await client.plan.comeOff({ ...base(), targetIds: [box.removal('Belt guard').id] }));
    expect(box.planned()).toEqual(['Belt guard']);
    const mains = box.state().isolation[0]?.id ?? '';
    good(await client.tick.do({ ...base(), thingIds: [mains], what: 'given back' }));
    good(await client.plan.comeOff({ ...base(), targetIds: [box.removal('Side cover').id] }));
    expect(box.planned()).toEqual(['Make safe again: mains locked out', 'Belt guard', 'Side cover']);
  });

  it('a shared hole comes out before the removal that it holds, though it came out with a later one', async () => {
    const box = await backUp(5, ['belt guard', 'shaft']);
    const { client, base, state } = box;
    const shared = named(state().part, 'shaft').removalId;
    const hole = holesOf(box, shared ?? '')[0];
    const guard = box.removal('Belt guard').id;
    expect(reachOf(state(), [guard], 0).shared).toEqual([hole]);
    good(await client.plan.comeOff({ ...base(), targetIds: [guard] }));
    expect(box.planned()).toEqual([
      'Make safe again: mains locked out',
      expect.stringMatching(/^Shaft, hole 1$/),
      'Belt guard',
    ]);
    while (box.planned().length > 0) good(await box.begin());
    expect(reachOf(state(), [guard], 0).removals).toEqual([]);
    expect(
      state()
        .deed.filter((deed) => deed.thingId === hole)
        .at(-1)?.what,
    ).toBe('came off again');
  });

  it('says when nothing is in the way, and when nobody can say', async () => {
    const box = await backUp(0);
    const { client, base } = box;
    const off = box.removal('Belt guard').id;
    expect(refused(await client.plan.comeOff({ ...base(), targetIds: [off] }))).toContain(
      'Nothing is in the way',
    );
    const own = good(
      await client.record.make({ ...base(), table: 'ownStep', values: { title: 'Look at it' } }),
    );
    expect(refused(await client.plan.comeOff({ ...base(), targetIds: [own.id] }))).toContain(
      'nobody can say what is in the way',
    );
  });

  it('goes also when the thing is taken off by its own key, and hands its photos and needs on', async () => {
    const box = await backUp(3);
    const { client, base, state } = box;
    const guard = box.removal('Belt guard').id;
    good(await client.plan.comeOff({ ...base(), targetIds: [guard] }));
    const plan = plannedAgain(state())[0]?.removal.id ?? '';
    good(
      await client.record.make({
        ...base(),
        table: 'temporary',
        values: { removalId: plan, name: 'rag', role: 'blocks', qty: 1 },
      }),
    );
    expect(refused(await client.log.add({ ...base(), text: '2 M6', removalId: plan }))).toContain(
      'only planned to come off again',
    );
    expect(
      refused(
        await client.record.change({ ...base(), table: 'removal', id: plan, values: { phase: 'off' } }),
      ),
    ).toContain('only plans for another');
    expect(refused(await client.removal.merge({ ...base(), intoId: guard, fromId: plan }))).toContain(
      'a plan for one to come off again',
    );
    good(await client.tick.again({ ...base(), thingId: guard, why: 'it rubs' }));
    expect(box.planned()).toEqual([]);
    expect(state().temporary.map((one) => one.removalId)).toEqual([guard]);
  });

  it('stays in the record as void while something else names it', async () => {
    const box = await backUp(3);
    const { client, base, state } = box;
    const guard = box.removal('Belt guard').id;
    good(await client.plan.comeOff({ ...base(), targetIds: [guard] }));
    const plan = plannedAgain(state())[0]?.removal.id ?? '';
    const values = { thingId: plan, what: 'paint', qty: 1 };
    good(await client.record.make({ ...base(), table: 'want', values }));
    good(await client.pattern.begin({ ...base(), removalId: plan, found: [] }));
    expect(state().removal.find((one) => one.id === plan)?.phase).toBe('void');
    expect(box.plan().depth).toEqual({ off: 4, back: 2, left: 2, pieces: expect.any(Number) });
  });
});
