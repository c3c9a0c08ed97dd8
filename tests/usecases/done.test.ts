import { describe, expect, it } from 'vitest';
import { runCommand } from '../../core/cli/main.ts';
import { doneOf, sayDone } from '../../core/model/done.ts';
import { places } from '../../core/store/workshop.ts';
import { clientOf, command, good, logJob, named, stateOf } from '../support/client.ts';
import { newWorkshop } from '../support/workshop.ts';

async function told() {
  const workshop = newWorkshop();
  const jobId = await logJob(workshop, 'Bench lathe', [
    'drained gear oil 1 l',
    'end cover, 3 M8x25, bag 1',
    '+ rag in the port',
  ]);
  const client = clientOf(workshop);
  const ana = good(await client.workshop.put({ ...command(), table: 'person', values: { name: 'Ana' } })).id;
  const hand = clientOf(workshop, ana);
  const state = () => stateOf(workshop, jobId);
  const holes = state().position.map((hole) => hole.id);
  const tick = async (
    ids: readonly string[],
    what: 'taken out' | 'started' | 'tightened' | 'filled' | 'done',
    value = '',
  ) =>
    good(
      await hand.tick.do({
        ...command(),
        jobId,
        thingIds: [...ids],
        what,
        ...(value === '' ? {} : { valueTyped: value, known: 'read' as const }),
      }),
    );
  await tick([state().temporary[0]?.id ?? ''], 'taken out');
  await tick(holes, 'started');
  await tick(holes, 'tightened');
  await tick(holes.slice(0, 1), 'tightened', '25 N·m');
  return { workshop, jobId, state, holes, hand, tick };
}

describe('what was done on the way back', () => {
  it('is told by person, time and reading, holes of one go together', async () => {
    const { state, holes } = await told();
    const lines = doneOf(state(), new Set(holes));
    expect(lines.map((line) => [line.by, sayDone(line)])).toEqual([
      ['Ana', 'started fastener M8 × 25 mm, all 3 holes'],
      ['Ana', 'tightened fastener M8 × 25 mm, all 3 holes'],
      ['Ana', 'tightened fastener M8 × 25 mm, hole 1, read 25 N·m'],
    ]);
    expect(lines.every((line) => line.at > 0)).toBe(true);
  });

  it('is told with what went in, and with the name of what was taken out', async () => {
    const { state, tick } = await told();
    const oil = named(state().fluid, 'gear oil').id;
    const rag = state().temporary[0]?.id ?? '';
    expect(doneOf(state(), new Set([rag])).map(sayDone)).toEqual(['taken out rag in the port']);
    const cover = named(
      state().removal.map((one) => ({ ...one, name: one.title })),
      'End cover',
    ).id;
    await tick([cover], 'done');
    expect(doneOf(state(), new Set([cover])).map(sayDone)).toEqual(['said to be back']);
    await tick([oil], 'filled', '1,2 l');
    expect(doneOf(state(), new Set([oil])).map(sayDone)).toEqual(['filled gear oil 1,2 l']);
  });

  it('names each size by its own holes, what was put on, and sets that are alike by their place', async () => {
    const workshop = newWorkshop();
    const jobId = await logJob(workshop, 'Grinder', [
      'gear cover, 4 bolts M8x25, hole 3 40 long, thread sealant',
      'lid, 1 nut M6',
      '+ 1 nut M6',
    ]);
    const hand = clientOf(workshop);
    const state = () => stateOf(workshop, jobId);
    const [cover, lid] = state().removal.map((one) => one.id);
    good(await hand.tick.do({ ...command(), jobId, thingIds: [lid ?? ''], what: 'done' }));
    good(await hand.tick.do({ ...command(), jobId, thingIds: [cover ?? ''], what: 'done' }));
    const all = new Set(state().deed.map((deed) => deed.thingId));
    const lines = doneOf(state(), all).flatMap((line) => sayDone(line).split('; '));
    expect(lines.join('\n')).toMatch(/bolt M8 × 25 mm, holes 1, 2 and 4/);
    expect(lines.join('\n')).toMatch(/bolt M8 × 40 mm, hole 3/);
    expect(lines.join('\n')).toMatch(/put on \S*sealant/i);
    expect(lines.join('\n')).toMatch(/nut M6 \(set 1\), hole 1\n.*nut M6 \(set 2\), hole 1/);
    expect(new Set(lines).size).toBe(lines.length);
    workshop.close();
  });

  it('a tick says what was ticked, of which removal and set, and how to take it back', async () => {
    const workshop = newWorkshop();
    await logJob(workshop, 'Grinder', ['end cover, 3 bolts M8x25 hex 13', 'gear cover, gasket']);
    const { dir } = workshop;
    workshop.close();
    const tick = async (...words: string[]) => runCommand(['tick', ...words, '--workshop', dir]);
    expect((await tick('1/1/2', '--what', 'started')).lines).toEqual([
      '1 ticked. Removal 1 End cover: started bolt M8 × 25 mm, hex 13 mm, hole 2. “undo” takes it back.',
    ]);
    const undone = await runCommand(['undo', '--workshop', dir]);
    expect(undone.code).toBe(0);
  });

  it('what must be new to reach a part is told by size, count and removal where it has no name', async () => {
    const workshop = newWorkshop();
    await logJob(workshop, 'Grinder', ['hub, gasket, 2 split pins']);
    const { dir } = workshop;
    workshop.close();
    const run = async (...words: string[]) => runCommand([...words, '--workshop', dir]);
    await run('receive', '1/1', '--qty', '2');
    await run('receive', 'gasket', '--qty', '1');
    expect((await run('tick', '1')).code).toBe(0);
    expect((await run('reach', '--part', '1')).lines).toContain(
      'New ones needed: gasket; 2 × split pin of Hub',
    );
  });

  it('is printed by a verb, with what was passed by name and why', async () => {
    const { workshop, jobId, hand } = await told();
    const { findings } = good(await hand.jobs.view({ jobId })).plan;
    const open = findings.find((one) => one.severity === 'warn') ?? findings[0];
    good(
      await hand.finding.accept({
        ...command(),
        jobId,
        finding: open?.key ?? '',
        why: 'Counted at the bench',
      }),
    );
    const dir = workshop.dir;
    workshop.close();
    expect(places(dir).db).toContain(dir);
    const { code, lines } = await runCommand(['done', '--workshop', dir]);
    expect(code).toBe(0);
    const out = lines.join('\n');
    expect(out).toMatch(/\d{4}-\d\d-\d\d \d\d:\d\d, Ana: tightened fastener M8 × 25 mm, hole 1, read 25 N·m/);
    expect(out).toMatch(/Passed by name\n {2}\S+ \S+, Ana: Counted at the bench \(.+\)/);
    expect(out).toContain('The job is open.');
  });
});
