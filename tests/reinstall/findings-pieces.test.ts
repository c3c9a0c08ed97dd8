import { describe, expect, test } from 'vitest';
import { type Finding, type FindingCode, planJob } from '../../core/reinstall/index.ts';
import { build, type JobBuilder } from '../support/build.ts';

const BOLT = 'bolt M8 × 1.25 × 30 mm, hex 13 mm, class 8.8';
const of = (job: JobBuilder, code: FindingCode): Finding[] =>
  planJob(job.state(), job.at).findings.filter((one) => one.code === code);
const told = (job: JobBuilder, code: FindingCode): string[] =>
  of(job, code).map((one) => `${one.severity}: ${one.sentence}`);

describe('short and left over', () => {
  test('a bolt that nobody can explain is a stop on the step of its set', () => {
    const job = build();
    const step = job.removal('Cover');
    const set = step.set(3);
    job.rows.move = job.rows.move.filter((move) => move.positionId !== set.holes[2]);
    job.move({ specId: set.specId, homeSetId: set.id, src: 'hole', dst: 'stow', cause: 'came off' });
    job.move({ specId: set.specId, homeSetId: set.id, src: 'stow', dst: 'stock', cause: 'to stock' });
    expect(of(job, 'fastener.short')).toMatchObject([
      {
        severity: 'stop',
        subjects: [set.id],
        stepId: `S:${step.id}`,
        sentence: `bolts, ${BOLT}: 3 to fill, 2 usable in hand, 1 short.`,
        clears: 'Find it, or put one on the list to get.',
      },
    ]);
  });

  test.each([
    ['scrapped', { dst: 'scrap', cause: 'scrapped' }],
    ['looked for', { dst: 'unknown', cause: 'counted' }],
    ['sent out', { dst: 'away', cause: 'sent out' }],
  ] as const)('one that is %s is only to be got: it has been explained', (_why, where) => {
    const job = build();
    const set = job.removal('Cover').set(2);
    job.move({ specId: set.specId, homeSetId: set.id, src: 'stow', ...where });
    expect(told(job, 'fastener.short')).toEqual([
      `note: bolts, ${BOLT}: 2 to fill, 1 usable in hand, 1 short.`,
    ]);
  });

  test('where only new ones will do, it says how many to get', () => {
    const job = build();
    const set = job.removal('Cover').set(2, { renew: 'must' });
    expect(of(job, 'renew.not-in-hand')).toMatchObject([
      {
        severity: 'note',
        subjects: [set.id],
        sentence: `bolts, ${BOLT} must be new: 2 to get.`,
        clears: 'Put them on the list to get.',
      },
    ]);
    expect(of(job, 'fastener.short')).toEqual([]);
  });

  test('an old one left over is a warning once every hole of its set is filled, not before', () => {
    const job = build();
    const step = job.removal('Cover');
    const set = step.set(2);
    const own = { specId: set.specId, homeSetId: set.id } as const;
    job.move({ ...own, src: 'supply', dst: 'stow', qty: 1, fresh: true, cause: 'received' });
    job.move({ ...own, src: 'stow', dst: 'hole', qty: 1, fresh: true, cause: 'renewed' });
    job.move({ ...own, src: 'stow', dst: 'hole', qty: 1, cause: 'refitted' });
    expect(of(job, 'fastener.left-over')).toEqual([]);
    for (const hole of set.holes) job.deed(hole, 'tightened');
    expect(of(job, 'fastener.left-over')).toMatchObject([
      {
        severity: 'warn',
        subjects: [set.id],
        stepId: `S:${step.id}`,
        sentence: `bolts, ${BOLT}: all holes are filled, and 1 old one is left over.`,
        clears: 'Look for an empty hole, scrap it, or put it to stock.',
      },
    ]);
    job.move({ ...own, src: 'stow', dst: 'scrap', cause: 'scrapped' });
    expect(of(job, 'fastener.left-over')).toEqual([]);
  });
});

describe('searches', () => {
  const counted = (found: number) => {
    const job = build();
    const bag = job.bag('4');
    const cover = job.removal('Cover');
    const set = cover.set(3, { stowId: bag });
    const count = job.counting(3, found, { stowId: bag });
    return { job, bag, set, cover, count };
  };

  test('a bag that was counted short stops the step of what lay in it, with where it was seen and where to look', () => {
    const { job, bag, set, cover, count } = counted(2);
    job.move({
      specId: set.specId,
      homeSetId: set.id,
      src: 'stow',
      srcStowId: bag,
      dst: 'unknown',
      cause: 'counted',
      countId: count,
    });
    const [one] = of(job, 'count.differs');
    expect(one).toMatchObject({
      severity: 'stop',
      subjects: [bag, count],
      stepId: `S:${cover.id}`,
      clears: 'Find it, or search and write it off by name. Buying another does not end the search.',
    });
    expect(one?.sentence).toBe(
      'Bag 4 was counted at 2, 3 by the books. Never counted since it was noted at bag 4. Bag 4: empty it, its seams and what it stood on.',
    );
    job.set('counting', count, { ended: 'accepted' });
    expect(of(job, 'count.differs')).toEqual([]);
  });

  test('one too many is a warning, and nothing to search for', () => {
    const { job } = counted(4);
    expect(of(job, 'count.differs')).toMatchObject([
      {
        severity: 'warn',
        sentence: 'Bag 4 was counted at 4, 3 by the books.',
        clears: 'Count again, or correct what came off.',
      },
    ]);
  });

  test('a lost rag is looked for by its name, and holds every way in that still stands open', () => {
    const job = build();
    const open = job.removal('Port cover');
    open.part('Port cover');
    const shut = job.removal('Sump').loose();
    shut.part('Sump');
    const rag = open.temporary('Rag', 'blocks', { qty: 2 });
    job.deed(shut.id, 'done');
    job.tickTock(30);
    job.counting(2, 1, { thingId: rag });
    const [one] = of(job, 'item.unaccounted');
    expect(one).toMatchObject({ severity: 'stop', holds: [`S:${open.id}`] });
    expect(one?.sentence).toMatch(/^Rag: 1 not found\./);
  });
});
