import { describe, expect, it } from 'vitest';
import { v7 } from 'uuid';
import { clientOf, command, good, logJob, named, refused, stateOf } from '../support/client.ts';
import { newWorkshop } from '../support/workshop.ts';

describe('needs, promises and machines', () => {
  it('loosens one need and hands on what it stood for; undo brings it back; a settled one is not asked again', async () => {
    const workshop = newWorkshop();
    const client = clientOf(workshop);
    const jobId = await logJob(workshop, 'Winch', ['belt guard', 'fan', 'pump']);
    const at = (title: string) => named(stateOf(workshop, jobId).removal, title);
    for (const [title, place] of [
      ['belt guard', 'front'],
      ['fan', 'left end'],
      ['pump', 'rear'],
    ] as const)
      good(
        await client.record.change({
          ...command(),
          jobId,
          table: 'removal',
          id: at(title).id,
          values: { place },
        }),
      );
    const view = async () => good(await client.jobs.view({ jobId }));
    const pairs = async () =>
      (await view()).suggestions.map((one) => `${one.removalId}>${one.needsId}`).sort();
    const [guard, fan, pump] = [at('belt guard').id, at('fan').id, at('pump').id];
    expect(await pairs()).toEqual([`${fan}>${guard}`, `${pump}>${fan}`].sort());
    const loosen = { jobId, removalId: pump, needsId: fan, answer: 'loosened', why: 'other end' } as const;
    good(await client.need.settle({ ...command(), ...loosen }));
    const waits = async () => {
      const { edges } = (await view()).plan;
      return edges
        .filter((edge) => edge.rule === 'need')
        .map((edge) => `${edge.from}>${edge.to}`)
        .sort();
    };
    expect(await waits()).toEqual([`S:${fan}>S:${guard}`, `S:${pump}>S:${guard}`].sort());
    expect(refused(await client.need.settle({ ...command(), ...loosen }))).toContain(
      'Expected a need that may be loosened',
    );
    good(
      await client.need.settle({
        ...command(),
        jobId,
        removalId: fan,
        needsId: guard,
        answer: 'confirmed',
        why: '',
      }),
    );
    expect(await pairs()).toEqual([`${pump}>${guard}`]);
    good(await client.history.undo({ ...command(), jobId }));
    good(await client.history.undo({ ...command(), jobId }));
    expect(await pairs()).toEqual([`${fan}>${guard}`, `${pump}>${fan}`].sort());
  });

  it('promises alike pieces to a set, is no line of the list to get, and is taken back like any line', async () => {
    const workshop = newWorkshop();
    const client = clientOf(workshop);
    const bolts = '4 hex bolts M8x1.25x25 13 mm, class 8.8';
    const jobId = await logJob(workshop, 'Winch', [bolts, bolts.replace('4', '2'), '3 clips']);
    const [one, , clips] = stateOf(workshop, jobId).fset;
    const made = good(await client.piece.promise({ ...command(), jobId, setId: one?.id ?? '', qty: 2 }));
    const view = good(await client.jobs.view({ jobId }));
    expect(view.outlook.promises).toEqual([{ wantId: made.id, setId: one?.id, qty: 2 }]);
    expect(view.toGet).toEqual([]);
    expect(
      refused(await client.piece.promise({ ...command(), jobId, setId: clips?.id ?? '', qty: 1 })),
    ).toContain('known well enough');
    good(await client.record.remove({ ...command(), jobId, table: 'want', id: made.id }));
    expect(good(await client.jobs.view({ jobId })).outlook.promises).toEqual([]);
  });

  it('looks for a joint in the jobs of the same machine, by name or as the earlier job, and in no others', async () => {
    const workshop = newWorkshop();
    const client = clientOf(workshop);
    const job = async (title: string, line: string, values: object) => {
      const id = await logJob(workshop, title, [line]);
      good(await client.jobs.change({ ...command(), jobId: id, values }));
      return id;
    };
    const first = await job('Leak, spring', 'side cover, 4 M8', { machine: 'Hand winch' });
    const second = await job('Leak, autumn', 'belt guard', { machine: 'hand winch ' });
    const third = await job('Noise', 'side cover', { earlierJobId: second });
    await job('Other', 'side cover', { machine: 'Lathe' });
    const found = good(await client.jobs.touched({ text: 'Side Cover', machine: 'Hand Winch' }));
    expect(found.jobs.map((one) => [one.jobId, one.hits.length])).toEqual([
      [first, 1],
      [second, 0],
      [third, 1],
    ]);
    const none = good(await client.jobs.touched({ text: 'beltguard', jobId: third }));
    expect(none.known).toBe(false);
    expect(none.sentence).toBe(
      'Nothing is called “beltguard” in any of the 3 jobs on this machine, so nothing is known of it. Nearest: “belt guard”.',
    );
    const fluid = { jobId: third, table: 'fluid' as const, values: { name: 'gear oil' } };
    good(await client.record.make({ ...command(), ...fluid }));
    expect(good(await client.jobs.touched({ text: 'gear oil', jobId: third })).sentence).toBe(
      '“gear oil” was touched in none of 3 jobs on this machine, as far as it was logged.',
    );
    expect(refused(await client.jobs.touched({ text: 'x', jobId: v7() }))).toContain(
      'Expected a machine or a job',
    );
    const target = stateOf(workshop, first).part[0]?.id ?? '';
    expect(good(await client.plan.reach({ jobId: first, targetIds: [target] })).removals).toEqual([]);
    expect(refused(await client.plan.reach({ jobId: second, targetIds: [target] }))).toContain(
      'Expected things of this job',
    );
    expect(good(await client.plan.tools({ jobId: first })).tools).toMatchObject([{ fasteners: 4 }]);
  });
});
