import { describe, expect, it } from 'vitest';
import { good } from '../support/client.ts';
import { gearbox } from '../support/gearbox.ts';
import { removalData } from '../../renderer/model/removal.ts';

type Box = Awaited<ReturnType<typeof gearbox>>;

const log = async (job: Box, text: string, removalId: string | null = null) =>
  good(await job.client.log.add({ ...job.base(), text, removalId }));

describe('look-alikes, as they go into the bag', () => {
  it('are said with what is alike, where, by how much, and what helps', async () => {
    const job = await gearbox(['cover, 4 M8x25 hex 13, bag 4']);
    const { said, removalId } = await log(job, 'guard, 2 M8x35 hex 13, bag 4');
    expect(said).toContain(
      'Look-alikes in bag 4: Same thread (M8), same head, 10 mm apart (25 and 35 mm). Give each its own bag',
    );
    // Said once for the bag, not again for each pair of sets.
    expect(said.match(/Look-alikes/g)).toHaveLength(1);
    const view = good(await job.client.jobs.view({ jobId: job.jobId }));
    const { points } = removalData(view, removalId, 0, job.workshop.now());
    expect(points.filter((one) => JSON.stringify(one.say).includes('Look-alikes in bag 4'))).toMatchObject([
      { grave: 'warn' },
    ]);
  });

  it('are said of one joint too, whatever bags they are in', async () => {
    const job = await gearbox(['cover']);
    const [cover] = job.state().removal;
    await log(job, '4 M8x25 hex 13, bag 4', cover?.id);
    expect((await log(job, '2 M8x35 hex 13, bag 5', cover?.id)).said).toMatch(/Look-alikes in this removal/);
  });

  it('are said when a set goes into another bag, and when its lengths are told apart', async () => {
    const job = await gearbox(['cover, 4 M8x25 hex 13, bag 4', 'guard, 2 M8x35 hex 13, bag 5']);
    const [cover, guard] = job.state().fset;
    const moved = await job.client.set.stow({
      ...job.base(),
      setId: guard?.id ?? '',
      positionIds: [],
      kind: 'bag',
      label: '4',
    });
    expect(good(moved).said).toMatch(/^In bag 4\. Look-alikes in bag 4: .*10 mm apart/);
    const told = await job.client.set.lengths({
      ...job.base(),
      setId: cover?.id ?? '',
      holes: [{ n: 1, lengthUm: 30_000 }],
    });
    expect(good(told).said).toMatch(/^Kept\. Look-alikes .*5 mm apart \(25 and 30 mm\)/);
  });

  it.each([
    ['the same kind', 'guard, 2 M8x25 hex 13, bag 4'],
    ['a length that nobody said', 'guard, 2 M8 hex 13, bag 4'],
    ['another thread', 'guard, 2 M6x25 hex 10, bag 4'],
    ['a head that the hand tells apart', 'guard, 2 M8x35 socket cap 6 mm hex key, bag 4'],
    ['a bag of its own', 'guard, 2 M8x35 hex 13, bag 5'],
  ])('are not said of %s', async (_what, line) => {
    const job = await gearbox(['cover, 4 M8x25 hex 13, bag 4']);
    expect((await log(job, line)).said).not.toContain('Look-alikes');
  });

  it('are said once: a third set of a kind that lies there already says nothing new', async () => {
    const job = await gearbox(['cover, 4 M8x25 hex 13, bag 4', 'guard, 2 M8x35 hex 13, bag 4']);
    expect((await log(job, 'plate, 2 M8x35 hex 13, bag 4')).said).not.toContain('Look-alikes');
  });
});
