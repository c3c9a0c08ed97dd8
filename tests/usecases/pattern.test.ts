import { describe, expect, it } from 'vitest';
import { planJob } from '../../core/reinstall/index.ts';
import { bookDifference, countLines, moveProblems } from '../../core/tally/index.ts';
import { clientOf, command, good, holes, logJob, named, refused, stateOf } from '../support/client.ts';
import { READY_JOBS } from '../support/jobs.ts';
import { newWorkshop } from '../support/workshop.ts';

const EARLIER = [
  'belt guard, 4 M6x16 hex 10',
  'drained gear oil 2,5 l',
  'side cover, gasket, 8 M8x25 hex 13, class 8.8, bag 3, 25 Nm, one stripped',
  '2 rags in the port',
  'hose, lower, 1 end, clamp 35 mm',
  'bearing cap 1, own place, stamped 1, 2 M10x40',
  'end float 0.15 mm',
];

async function twoJobs(lines: readonly string[] = EARLIER) {
  const workshop = newWorkshop();
  const client = clientOf(workshop);
  const fromJobId = await logJob(workshop, 'Winch 1', lines);
  const jobId = await logJob(workshop, 'Winch 2', []);
  const state = () => stateOf(workshop, jobId);
  const view = async () => good(await client.jobs.view({ jobId }));
  const use = async () => client.pattern.use({ ...command(), jobId, fromJobId });
  const removal = (title: string) => named(state().removal, title);
  const begin = async (title: string, found: { setId: string; count: number }[] = []) =>
    client.pattern.begin({ ...command(), jobId, removalId: removal(title).id, found });
  const log = async (title: string | null, text: string) =>
    good(
      await client.log.add({
        ...command(),
        jobId,
        text,
        removalId: title === null ? null : removal(title).id,
      }),
    );
  const setOf = (title: string) => state().fset.find((set) => set.removalId === removal(title).id);
  return { workshop, client, fromJobId, jobId, state, view, use, removal, begin, log, setOf };
}

describe('an earlier job as pattern', () => {
  it('brings its removals as a plan in which nothing is off, and one undo takes all of it back', async () => {
    const { use, state, view, workshop, jobId, client } = await twoJobs();
    const before = JSON.stringify(workshop.job(jobId));
    expect(good(await use()).removals).toBe(5);
    expect(state().removal.every(({ phase }) => phase === 'planned')).toBe(true);
    expect(state().move).toEqual([]);
    const { plan } = await view();
    expect(plan.depth).toMatchObject({ off: 0, back: 0, left: 0 });
    expect(plan.findings).toEqual([]);
    expect(plan.steps).toEqual([]);
    for (const card of good(await client.jobs.list({})).filter(({ job }) => job.id === jobId))
      expect([card.openToAir, card.inside, card.loose, card.notCounted]).toEqual([[], [], [], []]);
    expect(refused(await use())).toContain('follows a pattern already');
    good(await client.history.undo({ ...command(), jobId }));
    expect(JSON.stringify(workshop.job(jobId))).toBe(before);
    good(await use());
  });

  it('copies counts, torques and order, never photos, bag, condition, words, persons, times or values reached', async () => {
    const { use, state, setOf, fromJobId, workshop } = await twoJobs();
    good(await use());
    const set = setOf('Side cover');
    expect(set).toMatchObject({ torqueTyped: '25 N·m', torqueMnm: 25_000, stowId: null, typed: '' });
    const cover = holes(workshop, state().job.id, set?.id ?? '');
    expect(cover).toHaveLength(8);
    expect(
      cover.every(({ condition, found, fate }) => condition === '' && found === 'unknown' && fate === 'fill'),
    ).toBe(true);
    expect(state().job.patternJobId).toBe(fromJobId);
    expect([state().photo, state().mark, state().temporary, state().deed, state().move].flat()).toEqual([]);
    for (const one of state().removal)
      expect(one).toMatchObject({ typed: '', note: '', startedAt: null, endedAt: null, personId: null });
    expect(state().measure[0]).toMatchObject({ what: 'end float', asFound: null, asFoundTyped: '' });
    expect(state().fluid[0]).toMatchObject({ name: 'gear oil', drainedMl: null, lost: 'unknown', batch: '' });
    expect(
      state().part.every(
        ({ stowId, condition, stamped }) => stowId === null && condition === '' && stamped === '',
      ),
    ).toBe(true);
    expect(state().part.find(({ name }) => name === 'bearing cap 1')?.ownPlace).toBe(true);
    expect(state().ready.map(({ text }) => text)).toEqual([expect.stringContaining('rag')]);
  });

  it('says “8 expected, 7 found” when a removal is begun with what was found, and in the list', async () => {
    const { use, begin, setOf, view, state, workshop } = await twoJobs();
    good(await use());
    const setId = setOf('Side cover')?.id ?? '';
    const done = good(await begin('Side cover', [{ setId, count: 7 }]));
    expect(done.differences).toEqual(['8 expected, 7 found: M8 × 25 mm, hex 13 mm, class 8.8.']);
    expect(done.said).toContain('8 expected, 7 found');
    const { pattern, counts } = await view();
    expect(pattern?.removals.find(({ title }) => title === 'Side cover')?.differences).toEqual(
      done.differences,
    );
    expect(counts.find((line) => line.setId === setId)).toMatchObject({
      out: 7,
      inBag: 7,
      toFill: 7,
      foundEmpty: 1,
      short: 0,
    });
    expect(holes(workshop, state().job.id, setId).at(-1)?.found).toBe('empty');
    expect(moveProblems(state())).toEqual([]);
    expect(refused(await begin('Side cover'))).toContain('only planned');
  });

  it('says more than expected, and none at all', async () => {
    const { use, begin, setOf, state } = await twoJobs();
    good(await use());
    const guard = setOf('Belt guard')?.id ?? '';
    expect(good(await begin('Belt guard', [{ setId: guard, count: 6 }])).differences).toEqual([
      '4 expected, 6 found: M6 × 16 mm, hex 10 mm.',
    ]);
    const cap = setOf('Bearing cap 1')?.id ?? '';
    expect(good(await begin('Bearing cap 1', [{ setId: cap, count: 0 }])).differences).toEqual([
      '2 expected, none found: M10 × 40 mm.',
    ]);
    expect(state().fset.some(({ id }) => id === cap)).toBe(false);
    expect(countLines(state()).every((line) => bookDifference(line) === 0)).toBe(true);
  });

  it('as expected differs in nothing, takes a bag of its own, and starts no alarm', async () => {
    const { use, begin, state, view } = await twoJobs();
    good(await use());
    for (const title of ['Belt guard', 'Gear oil', 'Side cover'])
      expect(good(await begin(title)).differences, title).toEqual([]);
    const { plan } = await view();
    expect(plan.depth).toMatchObject({ off: 3, left: 3 });
    expect(plan.findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
    expect(new Set(state().fset.flatMap(({ stowId }) => stowId ?? [])).size).toBe(2);
  });

  it('takes an entry line typed into it: what was typed stands for what was expected', async () => {
    const { use, log, setOf, state, view } = await twoJobs();
    good(await use());
    const expected = setOf('Side cover')?.id;
    const logged = await log('Side cover', '7 M8x30, bag 12');
    expect(logged.differences).toContain('8 expected, 7 found: M8 × 30 mm, hex 13 mm, class 8.8.');
    expect(logged.differences.join(' ')).toMatch(/× 25 mm.* expected, .*× 30 mm.* found/);
    expect(logged.said).toContain('8 expected, 7 found');
    const set = setOf('Side cover');
    expect(set).toMatchObject({ id: expected, torqueTyped: '25 N·m', typed: '7 M8x30, bag 12' });
    expect(state().removal.find(({ title }) => title === 'Side cover')).toMatchObject({ phase: 'under way' });
    await log('Side cover', 'side cover, gasket');
    expect(state().part.filter(({ name }) => name === 'side cover')).toHaveLength(1);
    await log(null, 'coupling, 4 M8x20');
    const { pattern, plan } = await view();
    expect(pattern?.removals.find(({ title }) => title === 'Side cover')?.differences).toHaveLength(2);
    expect(pattern?.beyond.map(({ title }) => title)).toEqual(['Coupling']);
    expect(plan.findings.filter(({ severity }) => severity === 'stop')).toEqual([]);
  });

  it('drops what was expected and not typed once the removal ends, and says so', async () => {
    const { use, log, state, view, client, jobId, removal } = await twoJobs([
      'side cover, gasket, 8 M8x25',
      '+ 4 M6x16',
      'gear',
    ]);
    good(await use());
    await log('Side cover', '8 M8x25');
    good(await client.removal.end({ ...command(), jobId, removalId: removal('Side cover').id }));
    expect(state().fset).toHaveLength(1);
    expect(state().part.map(({ name }) => name)).toEqual(['gear']);
    const { pattern } = await view();
    expect(pattern?.removals[0]?.differences).toEqual([
      '4 expected, none found: M6 × 16 mm.',
      'Expected, not found: side cover.',
      'Expected, not found: gasket.',
    ]);
  });

  it('takes nothing typed for a set of another thread, and drops that set when the next removal begins', async () => {
    const { use, log, state, view } = await twoJobs();
    good(await use());
    await log('Belt guard', '4 M12x40');
    expect(state().fset).toHaveLength(4);
    await log(null, 'coupling');
    expect(state().fset).toHaveLength(3);
    const { pattern } = await view();
    const guard = pattern?.removals.find(({ title }) => title === 'Belt guard');
    expect(guard?.differences).toEqual([
      '4 expected, none found: M6 × 16 mm, hex 10 mm.',
      'Not in the earlier job: 4 × M12 × 40 mm.',
      'Expected, not found: belt guard.',
    ]);
  });

  it('keeps the log in the order in which things come off, whatever the plan said', async () => {
    const { use, begin, log, state, removal } = await twoJobs();
    good(await use());
    good(await begin('Bearing cap 1'));
    await log(null, 'coupling');
    good(await begin('Belt guard'));
    const order = [...state().removal].sort((a, b) => (a.ord < b.ord ? -1 : 1)).map(({ title }) => title);
    expect(order).toEqual([
      'Bearing cap 1',
      'Coupling',
      'Belt guard',
      'Gear oil',
      'Side cover',
      'Lower hose',
    ]);
    expect(removal('Coupling').phase).toBe('off');
  });

  it('refuses itself, a job that is not there, and one in which nothing came off', async () => {
    const { client, jobId } = await twoJobs();
    const empty = await logJob(newWorkshop(), 'Elsewhere', []);
    const use = (fromJobId: string) => client.pattern.use({ ...command(), jobId, fromJobId });
    expect(refused(await use(jobId))).toContain('another job');
    expect(refused(await use(empty))).toContain('Expected a job of this workshop');
  });

  it.each(READY_JOBS.map(({ name, lines }) => [name, lines] as const))(
    'follows any job to its end without a difference: %s',
    async (_name, lines) => {
      const { use, state, client, jobId, view } = await twoJobs(lines);
      good(await use());
      for (const one of [...state().removal].sort((a, b) => (a.ord < b.ord ? -1 : 1)))
        expect(
          good(await client.pattern.begin({ ...command(), jobId, removalId: one.id, found: [] })).differences,
        ).toEqual([]);
      expect(moveProblems(state())).toEqual([]);
      const { plan } = await view();
      const stops = plan.findings.filter(({ severity }) => severity === 'stop');
      expect(stops).toEqual([]);
      planJob(state(), 0);
    },
  );
});
