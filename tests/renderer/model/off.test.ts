import { describe, expect, it } from 'vitest';
import {
  awayData,
  bagData,
  firstPanel,
  offGroups,
  offSummary,
  piecesHere,
  wantsCsv,
  wantsOf,
} from '../../../renderer/model/off.ts';
import { command, good, refused } from '../../support/client.ts';
import { type Seeded, seeded } from './seed.ts';

const bagId = (job: Seeded, label: string) =>
  job.view().state.stow.find((stow) => stow.label === label)?.id ?? '';
const groups = (job: Seeded) =>
  offGroups(job.view(), job.workshop.now()).map((group) => [
    group.title,
    group.rows.map((row) => `${row.mark} ${row.name}: ${row.count}, ${row.about}`.trim()),
  ]);

describe('what is off', () => {
  it('is listed by bag in the order of their numbers, then what nobody wrote down, then what is loose', async () => {
    const job = await seeded([
      'guard, 4 M6x16, bag 10',
      'end cover, 2 M8x25, bag 9',
      'slackened 3 M12 hex 19',
    ]);
    expect(groups(job)).toEqual([
      ['Bags', ['9 End cover, M8 × 25 mm: 2, not counted yet', '10 Guard, M6 × 16 mm: 4, not counted yet']],
      ['Nobody wrote down where', ['guard: 1, refit', 'end cover: 1, refit']],
      ['Still on the machine, loose', [expect.stringMatching(/M12.*: 3, slackened only/)]],
    ]);
  });

  it('puts what is looked for first and what is empty last, and opens at it before anything is touched', async () => {
    const job = await seeded(['end cover, 2 M8x25, bag 1', 'guard, 4 M6x16, bag 2', 'plate, 3 M5x10, bag 3']);
    const all = () => offGroups(job.view(), job.workshop.now());
    const labels = () => all()[0]?.rows.map((row) => row.mark);
    expect(firstPanel(all(), [])).toBeNull();
    expect(firstPanel(all(), wantsOf(job.view()).slice(0, 1))).toBeNull();
    const counted = { jobId: job.jobId, stowId: bagId(job, '3'), counted: 2 };
    good(await job.client.piece.count({ ...command(), ...counted }));
    expect(labels()).toEqual(['3', '1', '2']);
    expect(firstPanel(all(), [])).toBe(bagId(job, '3'));
  });

  it('shows a bag that nobody counted as unknown, never as empty; the first count says how many there are', async () => {
    const job = await seeded(['end cover, M8x25, bag 9']);
    const rows = () => groups(job)[0];
    expect(rows()).toEqual(['Bags', ['9 End cover, M8 × 25 mm: ?, nobody said how many']]);
    expect(bagData(job.view(), bagId(job, '9'), null)).toMatchObject({ unknown: true, searching: false });
    const counted = { jobId: job.jobId, stowId: bagId(job, '9'), counted: 5 };
    good(await job.client.piece.count({ ...command(), ...counted }));
    expect(rows()).toEqual(['Bags', [expect.stringMatching(/^9 End cover, M8 × 25 mm: 5, counted /)]]);
    expect(job.view().state.position).toHaveLength(5);
    expect(job.view().searches).toEqual([]);
    good(await job.client.history.undo({ ...command(), jobId: job.jobId }));
    expect(rows()?.[1]?.[0]).toContain('nobody said how many');
  });

  it('asks how many belong to each where two sets of one bag are unknown', async () => {
    const job = await seeded(['end cover, M8x25, bag 9', 'side cover, M8x30, bag 9']);
    const counted = { jobId: job.jobId, stowId: bagId(job, '9'), counted: 5 };
    expect(refused(await job.client.piece.count({ ...command(), ...counted }))).toMatch(
      /got 2\. Say at the bench/,
    );
  });

  it('is off no more once it is back, and off again once it came off again', async () => {
    const job = await seeded(['guard']);
    await job.tick('done', [job.removalId('guard')]);
    expect(groups(job)).toEqual([]);
    good(
      await job.client.tick.again({
        ...command(),
        jobId: job.jobId,
        thingId: job.removalId('guard'),
        why: 'rattles',
      }),
    );
    expect(groups(job)).toEqual([['Nobody wrote down where', ['guard: 1, refit']]]);
  });

  it('is summed in one sentence that closes: in hand, back in, unaccounted', async () => {
    const job = await seeded(['guard, 4 M6x16, bag 1', 'end cover, 6 M8x25, bag 2']);
    await job.tick('done', [job.removalId('end cover')]);
    good(
      await job.client.piece.count({ ...command(), jobId: job.jobId, stowId: bagId(job, '1'), counted: 3 }),
    );
    expect(offSummary(job.view())).toEqual([
      '10 fasteners off: 3 in hand, 6 back in',
      ', ',
      { strong: '1 unaccounted' },
      '.',
    ]);
  });

  it('says of a seal that must be new whether the new one is in hand', async () => {
    const job = await seeded(['end cover, gasket']);
    const gasket = job.view().state.part.find((part) => part.name === 'gasket');
    expect(groups(job)[0]?.[1]).toContain('gasket: 1, must be renewed');
    good(
      await job.client.piece.receive({
        ...command(),
        jobId: job.jobId,
        thingId: gasket?.id ?? '',
        qty: 1,
        stowId: null,
      }),
    );
    expect(groups(job).flat(2)).toContain('gasket: 1, renew, new one in hand');
  });

  it('says with whom a part is, since when, and how late it is', async () => {
    const job = await seeded(['pulley']);
    const pulley = job.view().state.part[0]?.id ?? '';
    expect(awayData(job.view(), pulley, 0)).toBeNull();
    const now = job.workshop.now();
    good(
      await job.client.away.send({
        ...command(),
        jobId: job.jobId,
        thingId: pulley,
        toWhom: 'Machine shop',
        due: now + 1,
        note: '',
      }),
    );
    const late = awayData(job.view(), pulley, now + 3 * 86_400_000 + 1);
    expect(late?.about).toContainEqual({ strong: '3 days late' });
  });
});

describe('a bag', () => {
  it('opens a search when it is counted short, with where to look, and says so when there are too many', async () => {
    const job = await seeded(['drained gear oil 1 l', 'end cover, 8 M8x25, bag 4']);
    const stowId = bagId(job, '4');
    expect(bagData(job.view(), stowId, null)).toMatchObject({ expected: 8, counted: null, lookAt: [] });
    const count = async (counted: number) => {
      good(await job.client.piece.count({ ...command(), jobId: job.jobId, stowId, counted }));
      return bagData(job.view(), stowId, null);
    };
    const short = await count(7);
    expect(short).toMatchObject({ expected: 8, counted: 7, searching: true });
    expect(short?.say[0]).toEqual({ strong: 'One is missing.' });
    expect(short?.lookAt.join(' ')).toContain('Gear oil: stood open');
    const other = await seeded(['end cover, 8 M8x25, bag 4']);
    good(
      await other.client.piece.count({
        ...command(),
        jobId: other.jobId,
        stowId: bagId(other, '4'),
        counted: 10,
      }),
    );
    const many = bagData(other.view(), bagId(other, '4'), null);
    expect(many?.say[0]).toEqual({ strong: '2 too many.' });
    expect(many?.lookAt).toEqual([]);
  });

  it('draws look-alikes to their true measures', async () => {
    const job = await seeded(['pump cover, 4 M8x25 hex 13, bag 4', 'side cover, 4 M8x35 hex 13, bag 4']);
    const bolts = bagData(job.view(), bagId(job, '4'), null)?.alike?.bolts ?? [];
    expect(bolts.map((bolt) => [bolt.shape.threadMm, bolt.shape.lengthMm, bolt.shape.acrossFlatsMm])).toEqual(
      [
        [8, 25, 13],
        [8, 35, 13],
      ],
    );
  });
});

describe('the list to get', () => {
  it('keeps commas, quotes and line breaks of a name inside their field (RFC 4180)', () => {
    const want = { id: 'a', quantity: 2, about: 'noted', state: 'needed' as const, by: '' };
    const csv = wantsCsv([
      { ...want, what: 'seal, 45 × 3' },
      { ...want, what: 'the "long" bolt' },
      { ...want, what: 'two\nlines' },
    ]);
    expect(csv).toBe(
      'what,pieces,why,state\r\n"seal, 45 × 3",2,noted,needed\r\n"the ""long"" bolt",2,noted,needed\r\n"two\nlines",2,noted,needed\r\n',
    );
  });

  it('holds what is short and what must be new, with its count', async () => {
    const job = await seeded(['end cover, gasket, 4 M8x25, bag 4']);
    good(
      await job.client.piece.count({ ...command(), jobId: job.jobId, stowId: bagId(job, '4'), counted: 2 }),
    );
    expect(wantsOf(job.view()).map((want) => [want.quantity, want.about, want.state])).toEqual(
      expect.arrayContaining([
        [2, 'short, for End cover', 'needed'],
        [1, 'must be new, for End cover', 'needed'],
      ]),
    );
  });

  it('books in what came: one where nobody said how many, and nothing for a repair', async () => {
    const job = await seeded(['drain plug, sealing washers', 'cover, 4 M8x25 bolts, hole 2 snapped']);
    const line = (pick: (one: ReturnType<Seeded['view']>['toGet'][number]) => boolean) =>
      job.view().toGet.find(pick);
    const washers = line((one) => one.needed === null);
    expect(washers).toBeDefined();
    expect(wantsOf(job.view()).find((want) => want.id === washers?.key)?.quantity).toBeNull();
    const repair = line((one) => one.cause === 'repair');
    if (!washers || !repair) throw new Error('Expected washers to get and a hole to repair.');
    expect([piecesHere(washers), piecesHere(repair)]).toEqual([1, null]);
    const [thingId = ''] = washers.thingIds;
    const came = { jobId: job.jobId, thingId, qty: 1, stowId: null, specId: washers.specId };
    good(await job.client.piece.receive({ ...command(), ...came }));
    expect(line((one) => one.key === washers.key)).toBeUndefined();
  });
});
