import { describe, expect, it } from 'vitest';
import type { Row } from '../../core/model/tables.ts';
import { openSearches } from '../../core/tally/index.ts';
import type { Search } from '../../core/tally/index.ts';
import { TallyJob } from '../support/build-tally.ts';

const last = (job: TallyJob): Search => openSearches(job.state).at(-1) as Search;

describe('what stood open', () => {
  /** One removal with one thing, a bag that was put away at its beginning, and a short count at the end. */
  const open = (fill: (job: TallyJob, removalId: string) => void, removal: Partial<Row<'removal'>> = {}) => {
    const job = new TallyJob();
    const bag = job.bag('4');
    job.cameOff(job.set(5, { removalId: job.removal({ did: 'safe' }) }), 5, bag);
    const removalId = job.removal({ title: 'sump', ...removal });
    fill(job, removalId);
    job.now += 5000;
    job.counted({ stowId: bag, expected: 5, counted: 4 });
    return { job, removalId, openings: last(job).openings };
  };

  it.each<[string, boolean, Partial<Row<'part'>>]>([
    ['a cover', true, {}],
    ['a gasket', true, { kind: 'gasket' }],
    ['a seal', true, { kind: 'seal' }],
    ['a filter', true, { kind: 'filter' }],
    ['a flap that was opened', true, { how: 'opened' }],
    ['a loom moved aside', false, { how: 'aside' }],
    ['a new part', false, { how: 'fitted new' }],
    ['a key', false, { kind: 'key' }],
    ['a shim', false, { kind: 'shim' }],
  ])('%s: %s', (_what, is, part) => {
    expect(
      open((job, removalId) => job.add('part', { name: 'x', removalId, ...part })).openings,
    ).toHaveLength(is ? 1 : 0);
  });

  it.each<[string, boolean, Partial<Row<'connection'>>]>([
    ['a hose', true, { kind: 'hose', joint: 'hose on stub' }],
    ['a union', true, { kind: 'union', joint: 'flare' }],
    ['a plug', false, { kind: 'plug', joint: 'plug' }],
    ['an earth', false, { kind: 'other', joint: 'earth' }],
    ['a linkage', false, { kind: 'linkage', joint: 'linkage' }],
    ['a cable', false, { kind: 'cable', joint: 'unknown' }],
    ['an earth lead', false, { kind: 'earth lead', joint: 'unknown' }],
    ['a hose left alone', false, { kind: 'hose', leaveAlone: true }],
  ])('%s: %s', (_what, is, connection) => {
    expect(
      open((job, removalId) => job.add('connection', { name: 'x', removalId, ...connection })).openings,
    ).toHaveLength(is ? 1 : 0);
  });

  it('says what was open, what was stuffed into it, and what to do', () => {
    const { openings } = open((job, removalId) => {
      job.add('part', { name: 'cover', removalId });
      job.add('part', { name: 'lid', removalId });
      job.add('temporary', { name: 'rag', role: 'blocks', removalId });
      job.add('temporary', { name: 'cap', role: 'blocks', removalId });
      job.add('temporary', { name: 'stand', role: 'supports', removalId });
    });
    expect(openings[0]).toMatchObject({
      coveredBy: ['rag', 'cap'],
      sentence:
        'cover, lid: stood open (rag, cap in it). Look inside with light and mirror before it is closed.',
    });
    const plain = open((job, removalId) => job.add('part', { name: 'cover', removalId }));
    expect(plain.openings[0]?.sentence).toBe(
      'cover: stood open. Look inside with light and mirror before it is closed.',
    );
    expect(last(plain.job).lookAt.at(-1)).toBe(plain.openings[0]?.sentence);
  });

  it('nothing where it was only slackened, and a removal without times was open from the start', () => {
    expect(
      open((job, removalId) => job.add('part', { name: 'x', removalId }), { did: 'slackened' }).openings,
    ).toEqual([]);
    expect(
      open((job, removalId) => job.add('part', { name: 'x', removalId }), { startedAt: null, endedAt: null })
        .openings,
    ).toMatchObject([{ openedAt: null, closedAt: null }]);
    expect(
      open((job, removalId) => job.add('part', { name: 'x', removalId }), { startedAt: 1, endedAt: null })
        .openings,
    ).toMatchObject([{ openedAt: 1 }]);
  });

  it('closes with its own deed or with its whole step, and the last thing to be closed closes it', () => {
    let [one, two] = ['', ''];
    const { job, openings } = open((made, removalId) => {
      one = made.add('part', { name: 'cover', removalId }).id;
      two = made.add('connection', { name: 'hose', removalId, joint: 'hose on stub' }).id;
      made.deed(one, 'started');
      made.deed(one, 'fitted');
      made.deed(two, 'joined');
    });
    const joined = job.state.deed.at(-1)?.at;
    expect(openings).toMatchObject([{ thingIds: [one, two], closedAt: joined }]);
    const whole = open((made, removalId) => {
      made.add('part', { name: 'cover', removalId });
      made.deed(removalId, 'done');
    });
    expect(whole.openings).toMatchObject([{ closedAt: whole.job.state.deed.at(-1)?.at }]);
  });

  it('stands open again since it came off again, and not because a shut one was measured', () => {
    const { openings } = open((job, removalId) => {
      const part = job.add('part', { name: 'cover', removalId }).id;
      job.deed(part, 'fitted');
      job.deed(part, 'came off again', { round: 2 });
      job.deed(part, 'put on', { round: 2 });
    });
    expect(openings).toMatchObject([{ closedAt: null }]);
    const shut = open((job, removalId) => {
      const part = job.add('part', { name: 'cover', removalId }).id;
      job.deed(part, 'fitted');
      job.deed(part, 'measured');
    });
    expect(shut.openings[0]?.closedAt).not.toBeNull();
  });

  it('comes in the order of the log', () => {
    const job = new TallyJob();
    const bag = job.bag('4');
    job.cameOff(job.set(5, { removalId: job.removal({ did: 'safe' }) }), 5, bag);
    const later = job.removal({ ord: 'z' });
    const sooner = job.removal({ ord: 'b' });
    for (const removalId of [later, sooner]) job.add('part', { name: 'x', removalId });
    job.now += 5000;
    job.counted({ stowId: bag, expected: 5, counted: 4 });
    expect(last(job).openings.map((opening) => opening.removalId)).toEqual([sooner, later]);
  });
});
