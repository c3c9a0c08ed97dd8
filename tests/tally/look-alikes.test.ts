import { describe, expect, it } from 'vitest';
import type { Row } from '../../core/model/tables.ts';
import { alike, lookAlikes, lookAlikesIfPutInto } from '../../core/tally/index.ts';
import { TallyJob } from '../support/build-tally.ts';

type Values = Partial<Row<'spec'>>;
const pair = (a: Values, b: Values) => {
  const job = new TallyJob();
  job.spec(a);
  job.spec(b);
  const [first, second] = job.state.spec;
  return alike(first as Row<'spec'>, second as Row<'spec'>);
};

describe('two specifications', () => {
  it('are look-alikes when only the length differs, and the sentence says by how much', () => {
    expect(pair({ lengthUm: 25_000 }, { lengthUm: 35_000 })).toMatchObject({
      differs: ['length'],
      lengthApartUm: 10_000,
      sentence: 'Same thread (M8), same head, 10 mm apart (25 and 35 mm).',
    });
  });

  it.each([
    ['pitch', { pitchUm: 1000 }, 'Same thread (M8), same head, pitch 1 and 1.25 mm.'],
    ['class', { grade: '10.9' }, 'Same thread (M8), same head, class 10.9 and 8.8.'],
    ['hand', { hand: 'left' as const }, 'Same thread (M8), same head, one has a left-hand thread.'],
  ])('are look-alikes when only the %s differs', (what, values, sentence) => {
    expect(pair({}, values)).toMatchObject({ differs: [what], sentence });
  });

  it('are look-alikes coarse against fine in inches, though the names differ', () => {
    const coarse = { thread: '5/16-18 UNC', pitchUm: 1411, driveSizeUm: 12_700 };
    expect(pair(coarse, { ...coarse, thread: '5/16-24 UNF', pitchUm: 1058 })?.differs).toEqual(['pitch']);
  });

  it('are look-alikes while the head of either was not recorded: that tells nobody apart', () => {
    const bare = { head: null, drive: null, driveSizeUm: null, driveTyped: '' };
    expect(pair(bare, { lengthUm: 35_000 })?.sentence).toContain('head not recorded');
  });

  it('are look-alikes by the tool alone where no thread was recorded', () => {
    const bare = { kind: 'unknown' as const, thread: null, threadKnown: false };
    expect(pair({ ...bare, lengthUm: 20_000 }, { ...bare, lengthUm: 30_000 })?.differs).toEqual(['length']);
  });

  it.each([
    ['equal in everything', {}, {}],
    ['another thread', {}, { thread: 'M6', lengthUm: 35_000 }],
    ['M8 against M80', {}, { thread: 'M80', lengthUm: 35_000 }],
    ['another head', {}, { head: 'flange', lengthUm: 35_000 }],
    ['another spanner', {}, { driveSizeUm: 12_000, lengthUm: 35_000 }],
    ['a nut against a bolt', { kind: 'nut' as const }, { lengthUm: 35_000 }],
    ['two washers', { kind: 'washer' as const, lengthUm: 1600 }, { kind: 'washer' as const, lengthUm: 2000 }],
    ['length not recorded', {}, { lengthUm: null }],
    ['pitch only assumed', {}, { threadKnown: false, pitchUm: 1000 }],
  ])('are none: %s', (_why, a, b) => {
    expect(pair(a, b)).toBeNull();
  });

  it('takes T30 and T40 for different tools though neither has a size in millimetres', () => {
    const star = { driveSizeUm: null, drive: 'hexalobular' };
    expect(pair({ ...star, driveTyped: 'T30' }, { ...star, driveTyped: 'T40', lengthUm: 35_000 })).toBeNull();
    expect(
      pair({ ...star, driveTyped: 'T30' }, { ...star, driveTyped: 'T30', lengthUm: 35_000 }),
    ).not.toBeNull();
  });
});

describe('where they meet', () => {
  const twoSets = () => {
    const job = new TallyJob();
    const bag = job.bag('4');
    const a = job.set(2);
    const b = job.set(2, { specId: job.spec({ lengthUm: 35_000 }) });
    job.cameOff(a, 2, bag);
    return { job, bag, a, b };
  };

  it('says it before they go into the same bag, and once they lie there', () => {
    const { job, bag, b } = twoSets();
    expect(lookAlikes(job.state)).toEqual([]);
    expect(lookAlikesIfPutInto(job.state, b.specId, bag)).toMatchObject([
      { stowId: bag, differs: ['length'] },
    ]);
    job.cameOff(b, 2, bag);
    expect(lookAlikes(job.state)).toMatchObject([{ stowId: bag, removalId: null }]);
  });

  it('is over for the bag when one kind has gone back', () => {
    const { job, bag, b } = twoSets();
    job.cameOff(b, 2, bag);
    job.refit(b, 2, bag);
    expect(lookAlikes(job.state)).toEqual([]);
  });

  it('finds mixed lengths in one joint, whatever bags they lie in', () => {
    const job = new TallyJob();
    const set = job.set(3);
    job.change('position', set.holes[2] as string, { specId: job.spec({ lengthUm: 45_000 }) });
    expect(lookAlikes(job.state)).toMatchObject([
      { removalId: job.state.removal[0]?.id, lengthApartUm: 20_000 },
    ]);
  });

  it('leaves alone what was only slackened, or is only planned', () => {
    for (const [how, phase] of [
      ['slackened', 'off'],
      ['out', 'planned'],
    ] as const) {
      const job = new TallyJob();
      const removalId = job.removal({ phase });
      job.set(2, { removalId, how });
      job.set(2, { removalId, how, specId: job.spec({ lengthUm: 35_000 }) });
      expect(lookAlikes(job.state)).toEqual([]);
    }
  });
});
