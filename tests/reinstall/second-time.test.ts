import { describe, expect, test } from 'vitest';
import { type FindingCode, planJob } from '../../core/reinstall/index.ts';
import { build, type JobBuilder } from '../support/build.ts';

const of = (job: JobBuilder, code: FindingCode) =>
  planJob(job.state(), job.at).findings.filter((one) => one.code === code && one.severity !== 'note');

/** A mistake that can be made again: what makes it, and what undoes it in between. */
const MISTAKES: Readonly<
  Record<string, (job: JobBuilder) => readonly [FindingCode, () => unknown, () => unknown]>
> = {
  'a rag too few came out': (job) => {
    const rag = job.removal('Port').temporary('Rag', 'blocks', { qty: 3 });
    return [
      'item.unaccounted',
      () => job.deed(rag, 'taken out', { value: 2 }),
      () => job.deed(rag, 'put in'),
    ];
  },
  'a cage came out early': (job) => {
    const step = job.removal('Seat');
    step.set(1);
    const cage = step.temporary('Cage', 'cages');
    return ['temporary.hold', () => job.deed(cage, 'taken out'), () => job.deed(cage, 'put in')];
  },
  'a measure was outside its limits': (job) => {
    const play = job.removal('Gear').measure('Play', { limitHigh: 1 });
    return [
      'measure.off',
      () => job.deed(play, 'measured', { value: 2 }),
      () => job.deed(play, 'came off again'),
    ];
  },
  'an old seal went back': (job) => {
    const seal = job.removal('Pump').part('Seal', { renew: 'must' });
    return ['renew.not-in-hand', () => job.deed(seal, 'fitted'), () => job.deed(seal, 'came off again')];
  },
  'an old bolt went back': (job) => {
    const hole = job.removal('Head').set(1, { renew: 'must' }).holes[0] ?? '';
    return ['renew.not-in-hand', () => job.deed(hole, 'tightened'), () => job.deed(hole, 'came off again')];
  },
  'a piece went into another’s place': (job) => {
    const step = job.removal('Caps');
    const [one, two] = [step.part('1', { ownPlace: true }), step.part('2', { ownPlace: true })];
    return [
      'part.place',
      () => job.deed(one, 'fitted', { withThingId: two }),
      () => job.deed(one, 'came off again'),
    ];
  },
  'two hoses were swapped': (job) => {
    const step = job.removal('Pump');
    const [one, two] = [step.connection('In'), step.connection('Out')];
    return [
      'mate.swapped',
      () => job.deed(one, 'joined', { withThingId: two }),
      () => job.deed(one, 'came off again'),
    ];
  },
  'a joint was closed without an answer what seals it': (job) => {
    const face = job.removal('Pump').connection('Face', { joint: 'face', seal: 'unknown' });
    return ['joint.no-seal', () => job.deed(face, 'joined'), () => job.deed(face, 'came off again')];
  },
  'it was filled short': (job) => {
    const oil = job.fluid('Oil', [job.removal('Plug').set(1).id], { drainedMl: 4000 });
    return [
      'fluid.amount',
      () => job.deed(oil, 'filled', { value: 1001 }),
      () => job.deed(oil, 'came off again').deed(oil, 'filled', { value: 1 }),
    ];
  },
};

describe('what was passed by name is open again', () => {
  test.each(Object.entries(MISTAKES))('when it happens a second time: %s', (_name, make) => {
    const job = build();
    const [code, wrong, undo] = make(job);
    wrong();
    expect(of(job, code)).toHaveLength(1);
    for (const finding of of(job, code)) job.accept(finding);
    expect(of(job, code).map((one) => one.accepted === null)).toEqual([false]);
    undo();
    wrong();
    expect(of(job, code).map((one) => one.accepted === null)).toEqual([true]);
  });

  test('when less of what is looked for is missing than was passed, or another wrong bolt is in the hole', () => {
    const job = build();
    const bag = job.bag('4');
    const set = job.removal('Cover').set(5, { stowId: bag });
    const count = job.counting(5, 3, { stowId: bag });
    const own = { specId: set.specId, homeSetId: set.id, countId: count } as const;
    job.move({ ...own, src: 'stow', srcStowId: bag, dst: 'unknown', qty: 2, cause: 'counted' });
    for (const finding of of(job, 'count.differs')) job.accept(finding);
    job.move({ ...own, src: 'unknown', dst: 'stow', dstStowId: bag, cause: 'found' });
    expect(of(job, 'count.differs').map((one) => one.accepted)).toEqual([null]);
    const [one, two] = [
      job.spec({ lengthUm: 45_000 }),
      job.spec({ lengthUm: 45_000, hand: 'right', poolKey: 'x' }),
    ];
    const hole = set.holes[0] ?? '';
    job.deed(hole, 'started', { withSpecId: one });
    for (const finding of of(job, 'fastener.look-alike')) job.accept(finding);
    job.deed(hole, 'started', { withSpecId: two });
    expect(of(job, 'fastener.look-alike').map((found) => found.accepted)).toEqual([null]);
  });
});
