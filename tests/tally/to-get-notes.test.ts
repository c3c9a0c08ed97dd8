import { describe, expect, it } from 'vitest';
import type { Row } from '../../core/model/tables.ts';
import { newParts, toGet } from '../../core/tally/index.ts';
import type { GetLine } from '../../core/tally/index.ts';
import { TallyJob } from '../support/build-tally.ts';

const keys = (job: TallyJob): string[] => toGet(job.state).map((line) => line.key);
const only = (job: TallyJob): GetLine => {
  expect(toGet(job.state)).toHaveLength(1);
  return toGet(job.state)[0] as GetLine;
};

describe('what was noted by hand', () => {
  it('is a line of its own where no need is about it, with the thing and the size that it names', () => {
    const job = new TallyJob();
    const tool = job.id();
    const spec = job.spec();
    const want = job.add('want', { what: 'puller', qty: 2, thingId: tool, specId: spec });
    expect(only(job)).toEqual({
      key: `want/${want.id}`,
      what: 'puller',
      cause: 'noted',
      needed: 2,
      ordered: 0,
      noted: 2,
      state: 'needed',
      promisedAt: null,
      thingIds: [tool],
      specId: spec,
      wantIds: [want.id],
    });
    const bare = job.add('want', { what: 'grease', state: 'ordered', qty: 3 });
    expect(toGet(job.state)[1]).toMatchObject({
      key: `want/${bare.id}`,
      needed: 3,
      ordered: 3,
      thingIds: [],
      specId: null,
      state: 'ordered',
    });
  });

  it.each(['here', 'dropped'] as const)('is needed no more once it is %s, and stays listed', (state) => {
    const job = new TallyJob();
    job.add('want', { what: 'grease', qty: 3, state });
    expect(only(job)).toMatchObject({ needed: 0, noted: 3, state });
  });

  it('names the earliest promised day, and is dropped only when all of it was', () => {
    const job = new TallyJob();
    const set = job.set(4, { renew: 'must' });
    job.cameOff(set, 4);
    const note = (promisedAt: number | null, state: 'ordered' | 'dropped') =>
      job.add('want', { thingId: set.id, what: 'bolts', qty: 1, promisedAt, state });
    note(90, 'ordered');
    note(70, 'ordered');
    note(null, 'dropped');
    expect(only(job)).toMatchObject({ promisedAt: 70, ordered: 2, noted: 3, state: 'needed' });
    const other = new TallyJob();
    const part = other.add('part', { name: 'seal', removalId: other.removal(), renew: 'must' });
    other.add('want', { thingId: part.id, what: 'seal', state: 'dropped' });
    expect(only(other)).toMatchObject({ state: 'dropped', promisedAt: null, noted: 1 });
    other.add('want', { thingId: part.id, what: 'seal', state: 'needed' });
    expect(only(other).state).toBe('needed');
  });

  it('about one hole goes to that hole’s repair, else to the set, and never to another size of it', () => {
    const job = new TallyJob();
    const set = job.set(3, { renew: 'must' });
    job.cameOff(set, 3);
    const [blocked, plain] = set.holes as [string, string];
    job.change('position', blocked, { fate: 'blocked', fateWhy: 'broken stud' });
    const insert = job.add('want', { thingId: blocked, what: 'insert', state: 'here' }).id;
    const bolt = job.add('want', { thingId: plain, what: 'bolt', specId: set.specId }).id;
    const longer = job.add('want', {
      thingId: plain,
      what: 'longer bolt',
      specId: job.spec({ lengthUm: 50_000 }),
    }).id;
    expect(toGet(job.state).map((line) => [line.cause, line.state, line.wantIds])).toEqual([
      ['must renew', 'needed', [bolt]],
      ['repair', 'here', [insert]],
      ['noted', 'needed', [longer]],
    ]);
  });

  it('with a size goes to the need for that size, and a part’s need takes any', () => {
    const job = new TallyJob();
    const set = job.set(1, { renew: 'must' });
    job.cameOff(set, 1);
    const part = job.add('part', { name: 'seal', removalId: job.removal(), renew: 'must' });
    const bySize = job.add('want', { specId: set.specId, what: 'bolt' }).id;
    const byPart = job.add('want', { thingId: part.id, specId: set.specId, what: 'seal' }).id;
    const neither = job.add('want', { what: 'rag' }).id;
    expect(toGet(job.state).map((line) => line.wantIds)).toEqual([[bySize], [byPart], [neither]]);
  });
});

describe('what is needed', () => {
  it('keeps its key whatever its quantity: by pool, by set and size, by part, by hole', () => {
    const job = new TallyJob();
    const pooled = job.set(2, { renew: 'must' });
    const own = job.set(2, { renew: 'must', ownPlace: true });
    for (const set of [pooled, own]) job.cameOff(set, 2);
    const part = job.add('part', { name: 'seal', removalId: job.removal(), renew: 'must' });
    job.change('position', own.holes[1] ?? '', { fate: 'blocked' });
    const before = keys(job);
    expect(before[0]).toMatch(/^pool\/bolt\|right\|m8\|/);
    expect(before.slice(1)).toEqual([
      `pool/${own.id}/${own.specId}`,
      `part/${part.id}`,
      `hole/${own.holes[1]}`,
    ]);
    job.buy(pooled, 1);
    expect(keys(job)).toEqual(before);
    expect(new Set(before).size).toBe(4);
  });

  it('names washers of unknown size by what they are', () => {
    const job = new TallyJob();
    const set = job.set(2);
    const washer = job.spec({
      kind: 'unknown',
      thread: null,
      threadKnown: false,
      pitchUm: null,
      lengthUm: null,
      head: null,
      drive: null,
      driveSizeUm: null,
      driveTyped: '',
      grade: null,
    });
    job.add('stackItem', { setId: set.id, ord: 'a0', what: 'bolt', specId: set.specId });
    job.add('stackItem', { setId: set.id, ord: 'a1', what: 'wave washer', specId: washer });
    job.cameOff(set, 2);
    job.cameOff({ id: set.id, specId: washer }, 2);
    job.move({ homeSetId: set.id, specId: washer, src: 'stow', dst: 'scrap', cause: 'scrapped' });
    job.move({ homeSetId: set.id, specId: set.specId, src: 'stow', dst: 'scrap', cause: 'scrapped' });
    expect(toGet(job.state).map((line) => line.what)).toEqual([
      'bolt M8 × 1.25 × 25 mm, hex 13 mm, class 8.8',
      'wave washer, fastener',
    ]);
  });

  it('a hole that is blocked says why, by its reason or by its condition, or says nothing', () => {
    const job = new TallyJob();
    const set = job.set(2, { name: 'pump bolts' });
    job.cameOff(set, 2);
    const hole = set.holes[0] ?? '';
    job.change('position', hole, { fate: 'blocked' });
    expect(only(job)).toMatchObject({
      what: 'repair: hole 1 of pump bolts',
      needed: 1,
      thingIds: [hole],
      specId: null,
    });
    job.change('position', hole, { condition: 'stripped thread' });
    expect(only(job).what).toBe('repair: hole 1 of pump bolts, stripped thread');
    job.change('position', hole, { fateWhy: 'insert needed' });
    expect(only(job).what).toBe('repair: hole 1 of pump bolts, insert needed');
  });

  it('a hole of a removal that is only planned needs no repair yet', () => {
    const job = new TallyJob();
    const set = job.set(1, { removalId: job.removal({ phase: 'planned' }) });
    job.change('position', set.holes[0] ?? '', { fate: 'blocked' });
    expect(toGet(job.state)).toEqual([]);
  });

  it('an uncounted set that must be new is needed until new ones are in hand or in', () => {
    const job = new TallyJob();
    const set = job.set(0, { countKnown: false, renew: 'must' });
    expect(only(job)).toMatchObject({ cause: 'must renew', needed: null });
    job.buy(set, 1);
    expect(toGet(job.state)).toEqual([]);
    job.refit(set, 1, null, true);
    expect(toGet(job.state)).toEqual([]);
    const other = new TallyJob();
    other.set(0, { countKnown: false });
    expect(toGet(other.state)).toEqual([]);
  });
});

describe('a new part', () => {
  const exchange = (values: Partial<Row<'part'>> = {}) => {
    const job = new TallyJob();
    const part = job.add('part', {
      name: 'pump',
      qty: 2,
      removalId: job.removal(),
      fate: 'renew',
      ...values,
    });
    return { job, part, row: () => newParts(job.state)[0] };
  };

  it('lacks what is neither in hand nor in, and is in hand until it is fitted', () => {
    const { job, part, row } = exchange();
    expect(row()).toMatchObject({ cause: 'must renew', inHand: 0, fitted: 0, lacking: 2 });
    job.move({ partId: part.id, src: 'supply', dst: 'stow', cause: 'received' });
    expect(row()).toMatchObject({ inHand: 1, fitted: 0, lacking: 1 });
    job.move({ partId: part.id, src: 'stow', dst: 'hole', fresh: true, cause: 'renewed' });
    expect(row()).toMatchObject({ inHand: 0, fitted: 1, lacking: 1 });
    job.move({ partId: part.id, src: 'supply', dst: 'hole', cause: 'renewed' });
    expect(row()).toMatchObject({ inHand: 0, fitted: 2, lacking: 0 });
    job.move({ partId: part.id, src: 'hole', dst: 'stow', cause: 'came off again', fresh: true });
    expect(row(), 'one that came off again is no longer new').toMatchObject({
      inHand: 0,
      fitted: 1,
      lacking: 1,
    });
    job.move({ partId: part.id, src: 'stow', dst: 'hole', cause: 'refitted' });
    expect(row(), 'an old one is no new one').toMatchObject({ fitted: 1, lacking: 1 });
  });

  it.each(['fitted', 'done', 'left out'] as const)('is wanted no more once its place is %s', (what) => {
    const { job, part, row } = exchange();
    job.deed(part.id, what);
    expect(row()?.lacking).toBe(0);
    job.deed(part.id, 'came off again', { round: 2 });
    expect(row()?.lacking).toBe(2);
  });

  it('is in as well when its whole removal was ticked', () => {
    const { job, part, row } = exchange();
    job.deed(part.removalId ?? '', 'done');
    expect(row()?.lacking).toBe(0);
  });

  it.each([{ kind: 'kit' }, { how: 'opened' }, { how: 'fitted new' }, { fate: 'refit' }] as const)(
    'is none with %o',
    (values) => {
      expect(exchange(values).row()).toBeUndefined();
    },
  );

  it('is none of a removal that is only planned, and one of no removal is one', () => {
    const { job, part, row } = exchange();
    job.change('part', part.id, { removalId: job.removal({ phase: 'planned' }) });
    expect(row()).toBeUndefined();
    job.change('part', part.id, { removalId: null });
    expect(row()?.lacking).toBe(2);
  });
});
