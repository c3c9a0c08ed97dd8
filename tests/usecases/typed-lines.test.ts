import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { planJob } from '../../core/reinstall/index.ts';
import { jobExport } from '../../core/usecases/job-file.ts';
import { clientOf, command, good, holes, logJob, named, stateOf } from '../support/client.ts';
import { newWorkshop } from '../support/workshop.ts';

const FOLDER = new URL('../entry/data/', import.meta.url);
const LINES = readdirSync(FOLDER)
  .filter((name) => /^lines-\d+\.json$/.test(name))
  .flatMap((name) => {
    const file = JSON.parse(readFileSync(new URL(name, FOLDER), 'utf8')) as { lines: [string][] };
    return file.lines.map(([line]) => line);
  });

/** The first set of a line logged into a job of its own. */
async function logged(line: string) {
  const workshop = newWorkshop();
  const jobId = await logJob(workshop, 'Bench lathe', [line]);
  const state = stateOf(workshop, jobId);
  const lengthOf = (id: string | null | undefined) =>
    (state.spec.find((spec) => spec.id === id)?.lengthUm ?? 0) / 1000;
  const set = state.fset[0];
  const lengths = set
    ? holes(workshop, jobId, set.id).map((hole) => lengthOf(hole.specId ?? set.specId))
    : [];
  return { state, set, lengths };
}

describe('what is typed, stored', () => {
  it('says of a line that takes nothing off into which removal it went, and of the others that they begin one', async () => {
    const workshop = newWorkshop();
    const jobId = await logJob(workshop, 'Bench lathe', ['end cover, 2 M8x25']);
    const client = clientOf(workshop);
    const said = async (text: string) =>
      good(await client.log.add({ ...command(), jobId, text, removalId: null })).said;
    expect(await said('rag in the port')).toBe('Removal 1, End cover, has it too: “rag in the port”.');
    expect(await said('guard')).toBe('Removal 2, Guard, is written down.');
    expect(stateOf(workshop, jobId).temporary.map((one) => one.removalId)).toEqual([
      stateOf(workshop, jobId).removal[0]?.id,
    ]);
  });

  it('keeps every line of a whole log word for word, and all that was not understood as a note', async () => {
    const workshop = newWorkshop();
    const jobId = await logJob(workshop, 'Everything at once', []);
    const client = clientOf(workshop);
    const unknown: { removalId: string; words: readonly string[] }[] = [];
    for (const text of LINES) {
      const reply = good(await client.log.add({ ...command(), jobId, text, removalId: null }));
      unknown.push({ removalId: reply.removalId, words: reply.notUnderstood });
    }
    const left = jobExport({ workshop, actor: null }, jobId, { withoutContact: false });
    if (!left.ok) throw new Error(left.fault.sentence);
    const typed = stateOf(workshop, jobId).removal.flatMap((removal) => removal.typed.split('\n'));
    for (const line of LINES) {
      expect(typed).toContain(line);
      expect(left.value.text).toContain(JSON.stringify(line).slice(1, -1));
    }
    const notes = new Map(stateOf(workshop, jobId).removal.map((removal) => [removal.id, removal.note]));
    for (const { removalId, words } of unknown)
      for (const word of words) expect(notes.get(removalId)).toContain(word);
  });

  it.each([
    ['5 M8x25, hole 3 40 long', [25, 25, 40, 25, 25]],
    ['6 M6x20, holes 2 and 5 30 long', [20, 30, 20, 20, 30, 20]],
    ['4 M8, 3 of them 20 long, the rest 35', [20, 20, 20, 35]],
    ['5 M8x20, 2 of them 35 long', [35, 35, 20, 20, 20]],
  ])('gives each hole its length: %s', async (line, expected) => {
    expect((await logged(line)).lengths).toEqual(expected);
  });

  it('keeps the stages of a tightening in order', async () => {
    const { set } = await logged('10 head bolts M11, 20 Nm then 40 Nm then 90°');
    expect(set?.stages).toEqual(['20 N·m', '40 N·m', '90°']);
    expect(set).toMatchObject({ torqueMnm: 40_000, angleDeg: 90, name: 'head' });
  });

  it('puts all of a line on the shelf at its end, but a cover not into the bag of its bolts', async () => {
    const shelf = await logged('side cover, gasket, 4 M6x20, shelf 3');
    const onShelf = shelf.state.stow.find((stow) => stow.kind === 'shelf')?.id;
    expect([...shelf.state.part, ...shelf.state.fset].map((one) => one.stowId)).toEqual([
      onShelf,
      onShelf,
      onShelf,
    ]);
    const bag = await logged('side cover, 4 M6x20, 2 M6x45, bag 3');
    const inBag = bag.state.stow.find((stow) => stow.label === '3')?.id;
    expect(bag.state.fset.map((one) => one.stowId)).toEqual([inBag, inBag]);
    expect(named(bag.state.part, 'side cover').stowId).toBeNull();
  });

  it('puts the clamp of a hose into the bag that was said, and keeps a shelf in the words of what has no place', async () => {
    const { state, set } = await logged('hose, suction, 2 ends, clamp 25 mm, bag 2');
    const bag = state.stow.find((stow) => stow.label === '2')?.id;
    expect(set).toMatchObject({ stowId: bag });
    expect(state.spec.find((spec) => spec.id === set?.specId)).toMatchObject({ kind: 'clamp' });
    expect(state.move.map(({ qty, dstStowId }) => ({ qty, dstStowId }))).toEqual([
      { qty: 1, dstStowId: bag },
    ]);
    expect(state.connection.map((one) => one.name)).toEqual(['suction hose']);
    const lead = await logged('earth lead, shelf 2');
    expect(lead.state.connection.map((one) => one.name)).toEqual(['earth lead, shelf 2']);
  });

  it('keeps what a thing hangs on with its removal, also where that was begun before', async () => {
    const workshop = newWorkshop();
    const client = clientOf(workshop);
    const jobId = await logJob(workshop, 'Bench lathe', []);
    const { id } = good(
      await client.record.make({ ...command(), jobId, table: 'removal', values: { title: 'Motor' } }),
    );
    const text = 'motor, 3 M6x16, hung on wire';
    good(await client.log.add({ ...command(), jobId, text, removalId: id, did: 'aside' }));
    const state = stateOf(workshop, jobId);
    expect(state.removal).toMatchObject([{ heldBy: 'hung on wire', did: 'aside' }]);
    expect(state.connection).toEqual([]);
  });

  it('keeps every place that was said, in one line or in two', async () => {
    const { state, set } = await logged('front, cover, 4 M8x16 at drive end');
    expect(state.removal[0]).toMatchObject({ title: 'Cover', place: 'front, drive end', side: null });
    expect(set?.name).toBe('');
    const workshop = newWorkshop();
    const jobId = await logJob(workshop, 'Bench lathe', ['guard, 4 M8x16, gear end']);
    good(await clientOf(workshop).log.add({ ...command(), jobId, text: 'left, under', removalId: null }));
    expect(stateOf(workshop, jobId).removal).toMatchObject([
      { place: 'gear end, left, under', side: 'left' },
    ]);
  });

  it('doubts a thread that no table has, says so, and names what comes near', async () => {
    const workshop = newWorkshop();
    const jobId = await logJob(workshop, 'Bench lathe', []);
    const say = async (text: string) =>
      good(await clientOf(workshop).log.add({ ...command(), jobId, text, removalId: null })).said;
    expect(await say('guard, 5 M80x16')).toBe(
      'Removal 1, Guard, is written down. M80 is in no table of threads here; M8 is. Confirm it at the bench.',
    );
    expect(await say('lid, 2 M8x2x30')).toBe(
      'Removal 2, Lid, is written down. M8 × 2 is in no table of threads here. Confirm it at the bench.',
    );
    expect(await say('cover, 5 M8x16')).toBe('Removal 3, Cover, is written down.');
    const threads = stateOf(workshop, jobId).spec.map((spec) => [spec.thread, spec.threadKnown]);
    expect(threads[0]).toEqual(['M80', false]);
  });

  it.each([
    ['gearbox cover, gasket, sealant, 12 M8x25 hex 13', 'sealant', 'gasket'],
    ['cover, sealant, 4 M8x25', 'sealant', 'cover'],
    ['cover, thread locker, 4 M8x25', 'thread locker', 'cover'],
    ['cover, anti-seize, 4 M8x25', 'anti-seize', 'cover'],
    ['greased bearing', 'grease', 'bearing'],
    ['pipe, PTFE tape', 'PTFE tape', 'pipe'],
    ['4 M8x25, grease', 'grease', ''],
    ['4 M8x25, threadlock', 'threadlock', ''],
    ['sealant', 'sealant', null],
  ])('puts on again on the way back what was seen on a thing: %s', async (line, name, on) => {
    const { state } = await logged(line);
    const [one, ...more] = state.consumable;
    expect(more).toEqual([]);
    const things = [...state.part, ...state.connection, ...state.fset];
    expect([one?.name, things.find((thing) => thing.id === one?.thingId)?.name ?? null]).toEqual([name, on]);
    const put = planJob(state, 0)
      .steps.flatMap((step) => step.actions)
      .filter((action) => action.code === 'put on');
    expect(put.map((action) => action.sentence)).toEqual([`Put on: ${name}.`]);
  });

  it('puts a sealant that is typed by itself on the removal under way', async () => {
    const workshop = newWorkshop();
    const jobId = await logJob(workshop, 'Bench lathe', ['end cover, 2 M8x25']);
    good(await clientOf(workshop).log.add({ ...command(), jobId, text: 'sealant', removalId: null }));
    const { consumable, removal } = stateOf(workshop, jobId);
    expect(consumable.map((one) => one.thingId)).toEqual(removal.map((one) => one.id));
  });

  it('takes the side from the words for the place', async () => {
    const { state } = await logged('right hand side, guard, 4 M8x16');
    expect(state.removal[0]?.side).toBe('right');
  });
});
