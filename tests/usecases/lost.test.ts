import { describe, expect, it } from 'vitest';
import { planJob } from '../../core/reinstall/index.ts';
import { openSearches } from '../../core/tally/index.ts';
import { clientOf, command, good, logJob, named, refused, stateOf } from '../support/client.ts';
import { newWorkshop } from '../support/workshop.ts';

async function lathe() {
  const workshop = newWorkshop();
  const jobId = await logJob(workshop, 'Lathe headstock', [
    'belt guard, 4 M6x16',
    'headstock cover, gasket, 8 M8x25',
    '2 rags in the sump',
    'bearing cap 1, own place, 2 M10x40',
  ]);
  const client = clientOf(workshop);
  const state = () => stateOf(workshop, jobId);
  const plan = () => planJob(state(), workshop.now());
  const step = (title: string) => plan().steps.find((one) => one.title === title);
  const lose = async (what: string, thingId: string | null = null, note = '') =>
    good(await client.item.lost({ ...command(), jobId, what, qty: 1, thingId, note }));
  return { workshop, jobId, client, state, plan, step, lose };
}

describe('a search for what is no fastener', () => {
  it('names it, says where it was used last and what stood open since', async () => {
    const { lose, state } = await lathe();
    await lose(' 10 mm  socket ', null, 'was on the tray at noon');
    const [search] = openSearches(state());
    expect(search).toMatchObject({ name: '10 mm socket', missing: 1, expected: 1, counted: 0 });
    expect(search?.lastSeen.sentence).toBe('Used last, as far as is known, at Bearing cap 1.');
    expect(search?.openings.map(({ sentence }) => sentence.split(':')[0])).toEqual([
      'belt guard',
      'headstock cover, gasket',
      'bearing cap 1',
    ]);
    expect(search?.lookAt[0]).toContain('bench');
  });

  it('holds every way in that still stands open, and the gates above, until it is found', async () => {
    const { lose, plan, step, client, jobId } = await lathe();
    const { countingId } = await lose('10 mm socket');
    const [finding] = plan().findings.filter(({ code }) => code === 'item.unaccounted');
    expect(finding).toMatchObject({ severity: 'stop' });
    expect(finding?.sentence).toMatch(/^10 mm socket: 1 not found\./);
    for (const title of ['Bearing cap 1', 'Headstock cover', 'Belt guard'])
      expect(step(title)?.stoppedBy, title).toContain(finding?.key);
    expect(step('Bearing cap 1')?.state).toBe('held');
    expect(plan().gates.find(({ kind }) => kind === 'closing')?.holding).toContain(finding?.key);
    const cap = step('Bearing cap 1');
    const tick = { jobId, thingIds: [cap?.thingId ?? ''], what: 'done' as const };
    expect(refused(await client.tick.do({ ...command(), ...tick }))).toContain('10 mm socket');
    good(await client.piece.found({ ...command(), jobId, countingId, where: 'under the trolley' }));
    expect(step('Bearing cap 1')?.state).toBe('ready');
    expect(plan().findings.some(({ code }) => code === 'item.unaccounted')).toBe(false);
  });

  it('is passed only by name and reason, and undo opens it again', async () => {
    const { lose, plan, step, client, jobId } = await lathe();
    const { countingId } = await lose('broken tap');
    good(await client.piece.gone({ ...command(), jobId, countingId, why: 'Magnet and borescope, twice' }));
    expect(step('Bearing cap 1')?.state).toBe('ready');
    good(await client.history.undo({ ...command(), jobId }));
    expect(step('Bearing cap 1')?.state).toBe('held');
    good(await client.history.undo({ ...command(), jobId }));
    expect(plan().findings.some(({ code }) => code === 'item.unaccounted')).toBe(false);
  });

  it('does not hold what was closed before it was used, nor what a later search has nothing to do with', async () => {
    const { lose, step, client, jobId, state } = await lathe();
    const cap = named(state().removal, 'Bearing cap 1');
    const holes = state().fset.filter((set) => set.removalId === cap.id);
    good(await client.tick.do({ ...command(), jobId, thingIds: [cap.id], what: 'fitted' }));
    good(
      await client.tick.do({ ...command(), jobId, thingIds: holes.map(({ id }) => id), what: 'tightened' }),
    );
    good(await client.tick.do({ ...command(), jobId, thingIds: [cap.id], what: 'done' }));
    await lose('scraper', named(state().removal, 'Belt guard').id);
    expect(step('Headstock cover')?.stoppedBy).toHaveLength(1);
    expect(step('Bearing cap 1')?.state).toBe('done');
    expect(step('Bearing cap 1')?.stoppedBy).toEqual([]);
  });

  it('is found among the rags that were put in, too', async () => {
    const { client, jobId, state, step } = await lathe();
    const rags = state().temporary[0];
    good(await client.piece.miss({ ...command(), jobId, thingId: rags?.id ?? '', qty: 1, note: '' }));
    expect(openSearches(state())[0]?.name).toContain('rag');
    expect(step('Headstock cover')?.stoppedBy.some((key) => key.startsWith('item.unaccounted'))).toBe(true);
  });

  it('has to be named, and lies nowhere while nothing came off', async () => {
    const workshop = newWorkshop();
    const jobId = await logJob(workshop, 'Empty', []);
    const client = clientOf(workshop);
    expect(
      refused(await client.item.lost({ ...command(), jobId, what: '  ', qty: 1, thingId: null, note: '' })),
    ).toContain('Expected the name');
    good(await client.item.lost({ ...command(), jobId, what: 'key', qty: 1, thingId: null, note: '' }));
    const [search] = openSearches(stateOf(workshop, jobId));
    expect(search).toMatchObject({ name: 'key', thingId: null, openings: [] });
  });
});
