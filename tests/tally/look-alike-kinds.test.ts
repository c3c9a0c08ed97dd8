import { describe, expect, it } from 'vitest';
import type { Row } from '../../core/model/tables.ts';
import { alike, lookAlikes, lookAlikesIfPutInto } from '../../core/tally/index.ts';
import { TallyJob } from '../support/build-tally.ts';

type Values = Partial<Row<'spec'>>;
const pair = (a: Values, b: Values) => {
  const job = new TallyJob();
  job.spec(a);
  job.spec(b);
  const [first, second] = job.state.spec as [Row<'spec'>, Row<'spec'>];
  const found = alike(first, second);
  expect(alike(second, first)?.specIds, 'whichever is asked first').toEqual(found?.specIds);
  return found;
};
const LONG = { lengthUm: 35_000 };

describe('kinds that the hand takes for each other', () => {
  it.each(['bolt', 'screw', 'set screw', 'stud', 'wood screw', 'self-tapping screw', 'unknown'] as const)(
    'a %s and a bolt of another length',
    (kind) => {
      expect(pair({ kind }, LONG)?.differs).toEqual(['length']);
      expect(pair({ kind: 'banjo bolt' }, { kind, ...LONG })).toBeNull();
    },
  );

  it.each([
    'pin',
    'split pin',
    'roll pin',
    'dowel pin',
    'taper pin',
    'clevis pin',
    'spacer',
    'push rivet',
  ] as const)('two of the kind %s, by size and length only', (kind) => {
    const bare = { kind, thread: null, threadKnown: false, pitchUm: null, grade: null };
    expect(pair({ ...bare, more: '6 mm' }, { ...bare, more: '6 MM ', ...LONG })?.sentence).toBe(
      'Same size (6 mm), same head, 10 mm apart (25 and 35 mm).',
    );
    expect(pair({ ...bare, more: '6 mm' }, { ...bare, more: '8 mm', ...LONG })).toBeNull();
    expect(pair({ ...bare, more: '' }, { ...bare, more: '', ...LONG })).toBeNull();
    expect(pair({ ...bare, thread: 'M6' }, { ...bare, thread: 'M6', ...LONG })?.sentence).toContain('(M6)');
  });

  it('other kinds only among themselves, and washers never', () => {
    expect(pair({ kind: 'nut', grade: '8' }, { kind: 'nut', grade: '10' })?.differs).toEqual(['class']);
    expect(pair({ kind: 'nut', grade: '8' }, { kind: 'plug', grade: '10' })).toBeNull();
    expect(pair({ kind: 'pin' }, { kind: 'roll pin', ...LONG })).toBeNull();
    expect(pair({ kind: 'washer' }, { kind: 'washer', ...LONG })).toBeNull();
  });
});

describe('sizes', () => {
  const bare: Values = { head: null, drive: null, driveSizeUm: null, driveTyped: '', pitchUm: null };

  it.each([
    ['M8', 'm8x1', 'M8'],
    ['M 8', 'M8', 'M8'],
    ['#10-32', '# 10-24', '#10'],
    ['1-1/8-7 UNC', '1-1/8 - 12 UNF', '1-1/8'],
    ['1 1/8', '1 1/8-12', '11/8'],
    ['5/16-18 UNC', '5/16', '5/16'],
    ['G1/2', 'g 1/2', 'G1/2'],
    ['12 mm', '12', '12'],
    ['BA', 'ba', 'BA'],
  ])('%s and %s go into the same hole', (a, b, size) => {
    expect(pair({ ...bare, thread: a }, { ...bare, thread: b, ...LONG })?.sentence).toContain(
      `Same thread (${size})`,
    );
  });

  it.each([
    ['M8', 'M10'],
    ['M8', 'M80'],
    ['5/16', '5/8'],
    ['#10', '#12'],
    ['1-1/8', '1-1/4'],
    ['11/8', '1/8'],
    ['12', '16'],
    ['10-32', '10'],
    ['G1/2', 'G1/4'],
    ['BA', 'BSF'],
  ])('%s and %s do not', (a, b) => {
    if (a === '10-32') expect(pair({ ...bare, thread: a }, { ...bare, thread: b, ...LONG })).not.toBeNull();
    else expect(pair({ ...bare, thread: a }, { ...bare, thread: b, ...LONG })).toBeNull();
  });

  it('a thread that only one of two has tells them apart as far as anybody knows', () => {
    const tool = { thread: null, threadKnown: false };
    expect(pair(tool, LONG)).toBeNull();
    expect(pair(tool, { ...tool, ...LONG })?.sentence).toBe(
      'Thread not recorded, same head, 10 mm apart (25 and 35 mm).',
    );
    expect(pair({ ...tool, ...bare }, { ...tool, ...bare, ...LONG })).toBeNull();
    expect(pair({ ...tool, driveSizeUm: 12_000 }, { ...tool, ...LONG })).toBeNull();
  });
});

describe('what is said about a pair', () => {
  it('the head where both were recorded, else the tool, else that neither was', () => {
    expect(pair({ head: 'hex' }, { head: ' HEX', ...LONG })?.sentence).toContain('same head');
    expect(pair({ head: null }, { head: null, ...LONG })?.sentence).toContain('same drive');
    expect(pair({ head: null }, { ...LONG })?.sentence).toContain('same drive');
    const bare = { head: null, driveSizeUm: null, driveTyped: '' };
    expect(pair(bare, { ...bare, ...LONG })?.sentence).toContain('head not recorded');
    expect(pair(bare, { ...LONG })?.sentence).toContain('head not recorded');
  });

  it('everything in which they differ, in figures that stand in order', () => {
    expect(
      pair({ grade: '8.8', pitchUm: 1250, ...LONG }, { grade: '10.9', pitchUm: 1000, hand: 'left' }),
    ).toMatchObject({
      differs: ['length', 'pitch', 'class', 'hand'],
      lengthApartUm: 10_000,
      sentence:
        'Same thread (M8), same head, 10 mm apart (25 and 35 mm), pitch 1 and 1.25 mm, class 10.9 and 8.8, one has a left-hand thread.',
    });
    expect(pair({ grade: '8.8' }, { grade: '10.9' })?.lengthApartUm).toBeNull();
  });

  it('nothing of what was not recorded on one side', () => {
    expect(pair({ lengthUm: null }, { grade: '10.9' })?.differs).toEqual(['class']);
    expect(pair({ pitchUm: null }, LONG)?.differs).toEqual(['length']);
    expect(pair(LONG, { pitchUm: null })?.differs).toEqual(['length']);
    expect(pair({ grade: null }, LONG)?.differs).toEqual(['length']);
  });
});

describe('where look-alikes are looked for', () => {
  it('fifty sets of one kind beside another are one pair, not fifty', () => {
    const job = new TallyJob();
    const bag = job.bag('4');
    for (let i = 0; i < 5; i += 1) job.cameOff(job.set(1), 1, bag);
    job.cameOff(job.set(1, { specId: job.spec(LONG) }), 1, bag);
    expect(lookAlikes(job.state)).toHaveLength(1);
  });

  it('not in a bag that nobody named, nor among pieces of which no specification is known', () => {
    const job = new TallyJob();
    job.cameOff(job.set(1), 1);
    job.cameOff(job.set(1, { specId: job.spec(LONG) }), 1);
    const bag = job.bag('4');
    job.move({ src: 'hole', dst: 'stow', dstStowId: bag, partId: job.add('part', {}).id });
    expect(lookAlikes(job.state)).toEqual([]);
    expect(lookAlikesIfPutInto(job.state, job.state.spec[0]?.id ?? '', bag)).toEqual([]);
    expect(lookAlikesIfPutInto(job.state, job.id(), bag)).toEqual([]);
  });

  it('in that bag and no other', () => {
    const job = new TallyJob();
    const [one, two] = [job.bag('1'), job.bag('2')];
    const long = job.spec(LONG);
    job.cameOff(job.set(1), 1, one);
    expect(lookAlikesIfPutInto(job.state, long, two)).toEqual([]);
    expect(lookAlikesIfPutInto(job.state, long, one)).toMatchObject([{ stowId: one, removalId: null }]);
  });

  it('in a set that has no numbered holes yet, and among the pieces of a stack', () => {
    const job = new TallyJob();
    const removalId = job.removal();
    job.set(0, { removalId });
    const other = job.set(0, { removalId, specId: job.spec(LONG) });
    expect(lookAlikes(job.state)).toMatchObject([{ removalId, stowId: null }]);
    job.add('stackItem', {
      setId: other.id,
      ord: 'a0',
      what: 'nut',
      specId: job.spec({ kind: 'nut', grade: '8' }),
    });
    job.add('stackItem', {
      setId: other.id,
      ord: 'a1',
      what: 'nut',
      specId: job.spec({ kind: 'nut', grade: '10' }),
    });
    job.add('stackItem', { setId: other.id, ord: 'a2', what: 'shim' });
    expect(lookAlikes(job.state).map((found) => found.differs)).toEqual([['length'], ['class']]);
  });

  it('by the tool where no thread was recorded', () => {
    const job = new TallyJob();
    const removalId = job.removal();
    const bare = { thread: null, threadKnown: false } as const;
    job.set(1, { removalId, specId: job.spec(bare) });
    job.set(1, { removalId, specId: job.spec({ ...bare, ...LONG }) });
    job.set(1, { removalId, specId: job.spec({ ...bare, ...LONG, driveSizeUm: 10_000 }) });
    expect(lookAlikes(job.state)).toHaveLength(1);
  });
});
