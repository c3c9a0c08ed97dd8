import { describe, expect, test } from 'vitest';
import { type Finding, type FindingCode, planJob } from '../../core/reinstall/index.ts';
import { build, type JobBuilder } from '../support/build.ts';

const BOLT = 'bolt M8 × 1.25 × 30 mm, hex 13 mm, class 8.8';
const of = (job: JobBuilder, code: FindingCode): Finding[] =>
  planJob(job.state(), job.at).findings.filter((one) => one.code === code);
const told = (job: JobBuilder, code: FindingCode): string[] =>
  of(job, code).map((one) => `${one.severity}: ${one.sentence}`);

describe('the wrong piece in a hole', () => {
  test('another length is a stop that names both, and one of the same pool is none', () => {
    const job = build();
    const step = job.removal('Cover');
    const set = step.set(2);
    const long = job.spec({ lengthUm: 45_000 });
    job.deed(set.holes[0] ?? '', 'started', { withSpecId: long });
    expect(of(job, 'fastener.look-alike').filter((one) => one.severity === 'stop')).toMatchObject([
      {
        subjects: [set.holes[0]],
        stepId: `S:${step.id}`,
        sentence: `bolts: hole 1 takes ${BOLT}, and bolt M8 × 1.25 × 45 mm, hex 13 mm, class 8.8 is in it. Too long bottoms out, too short strips.`,
        clears: 'Change them over.',
      },
    ]);
    job.set('position', set.holes[0] ?? '', { specId: long });
    expect(of(job, 'fastener.look-alike').filter((one) => one.severity === 'stop')).toEqual([]);
  });

  test('it stays wrong when it is tightened without saying again what it is', () => {
    const job = build();
    const set = job.removal('Cover').set(1);
    const hole = set.holes[0] ?? '';
    job.deed(hole, 'started', { withSpecId: job.spec({ grade: '10.9' }) }).deed(hole, 'tightened');
    expect(of(job, 'fastener.look-alike').some((one) => one.severity === 'stop')).toBe(true);
    job.deed(hole, 'came off again').deed(hole, 'tightened');
    expect(of(job, 'fastener.look-alike').some((one) => one.severity === 'stop')).toBe(false);
  });

  test('the same bolt of another row is the same bolt', () => {
    const job = build();
    const set = job.removal('Cover').set(1);
    job.deed(set.holes[0] ?? '', 'started', { withSpecId: job.spec() });
    expect(of(job, 'fastener.look-alike').filter((one) => one.severity === 'stop')).toEqual([]);
    const keyed = build();
    const a = keyed.spec({ poolKey: 'k', head: 'hex' });
    const b = keyed.spec({ poolKey: 'k', lengthUm: 31_000 });
    const other = keyed.removal('Cover').set(1, { specId: a });
    keyed.deed(other.holes[0] ?? '', 'started', { withSpecId: b });
    expect(of(keyed, 'fastener.look-alike').filter((one) => one.severity === 'stop')).toEqual([]);
  });

  test('look-alikes that lie together are a note that says what to do', () => {
    const job = build();
    const set = job.removal('Cover').set(2);
    job.set('position', set.holes[1] ?? '', { specId: job.spec({ lengthUm: 45_000 }) });
    expect(of(job, 'fastener.look-alike')).toMatchObject([
      {
        severity: 'note',
        stepId: null,
        sentence: 'Same thread (M8), same head, 15 mm apart (30 and 45 mm).',
        clears: 'Start all by hand first; all heads must stand out alike.',
      },
    ]);
  });

  test('an old one where a new one must go is a stop; a new one, said when it was started, is none', () => {
    const job = build();
    const set = job.removal('Head').set(2, { renew: 'must', renewWhy: 'Tightened by angle.' });
    const [one, two] = set.holes as [string, string];
    job.deed(one, 'tightened').deed(two, 'started', { fresh: true }).deed(two, 'tightened');
    expect(of(job, 'renew.not-in-hand').filter((found) => found.severity === 'stop')).toMatchObject([
      {
        subjects: [one],
        sentence: 'bolts: hole 1 must have a new one, and an old one went back. Tightened by angle.',
        clears: 'Fit a new one, or say why the old one may stay.',
      },
    ]);
  });

  test('a new one that came off again is a new one no more', () => {
    const job = build();
    const set = job.removal('Head').set(1, { renew: 'must' });
    const hole = set.holes[0] ?? '';
    job.deed(hole, 'tightened', { fresh: true });
    expect(of(job, 'renew.not-in-hand').filter((found) => found.severity === 'stop')).toEqual([]);
    job.deed(hole, 'came off again').deed(hole, 'tightened');
    expect(of(job, 'renew.not-in-hand').filter((found) => found.severity === 'stop')).toHaveLength(1);
  });

  test('what was only slackened never came out, so nothing old went back', () => {
    const job = build();
    const set = job.removal('Head').set(1, { renew: 'must', how: 'slackened' });
    job.deed(set.holes[0] ?? '', 'tightened');
    expect(of(job, 'renew.not-in-hand').filter((found) => found.severity === 'stop')).toEqual([]);
  });

  test('a damaged one is said on the day it comes off, and again if it goes back', () => {
    const job = build();
    const step = job.removal('Cover');
    const set = step.set(2);
    const hole = set.holes[0] ?? '';
    job.set('position', hole, { condition: 'stretched' });
    expect(of(job, 'fastener.damaged')).toMatchObject([
      {
        severity: 'warn',
        subjects: [set.id, 'damaged'],
        stepId: `S:${step.id}`,
        sentence: `${BOLT}: 1 damaged at removal.`,
        clears: 'Put one on the list to get, and scrap it.',
      },
    ]);
    job.move({
      specId: set.specId,
      homeSetId: set.id,
      src: 'supply',
      dst: 'stow',
      fresh: true,
      cause: 'received',
    });
    expect(of(job, 'fastener.damaged')).toMatchObject([
      { severity: 'note', clears: 'Scrap it, so that it does not go back by mistake.' },
    ]);
    job.deed(hole, 'started');
    expect(of(job, 'fastener.damaged')[0]).toMatchObject({
      severity: 'stop',
      subjects: [hole],
      sentence: 'bolts: hole 1 had a stretched one, and an old one went back.',
    });
  });

  test.each(['rusty', 'thread of the casting stripped', 'bent (one of the set)'])(
    'a hole marked “%s” condemns no piece that is put into it',
    (condition) => {
      const job = build();
      const set = job.removal('Cover').set(2);
      job.set('position', set.holes[0] ?? '', { condition });
      job.deed(set.holes[0] ?? '', 'started');
      expect(of(job, 'fastener.damaged').filter((one) => one.severity === 'stop')).toEqual([]);
    },
  );

  test('a hole that was left out has nothing wrong in it', () => {
    const job = build();
    const set = job.removal('Cover').set(1, { renew: 'must' });
    job.deed(set.holes[0] ?? '', 'tightened').deed(set.holes[0] ?? '', 'left out');
    expect(of(job, 'renew.not-in-hand').filter((found) => found.severity === 'stop')).toEqual([]);
  });
});

describe('blocked holes', () => {
  test('are a stop from the day they are logged until a repair is written down', () => {
    const job = build();
    const step = job.removal('Cover');
    const set = step.set(2);
    const hole = set.holes[1] ?? '';
    job.set('position', hole, { fate: 'blocked', fateWhy: 'broken stud' });
    expect(of(job, 'hole.blocked')).toMatchObject([
      {
        severity: 'stop',
        subjects: [hole],
        stepId: `S:${step.id}`,
        sentence: 'bolts: hole 2 is blocked, broken stud.',
        clears: 'On the way back it waits until a repair is written down.',
      },
    ]);
    job.deed(step.id, 'done');
    expect(told(job, 'fastener.short').filter((line) => line.startsWith('stop'))).toHaveLength(1);
    job.set('position', hole, { fateWhy: '', condition: 'bad thread' });
    expect(told(job, 'hole.blocked')).toEqual(['stop: bolts: hole 2 is blocked, bad thread.']);
    job.set('position', hole, { condition: '' });
    expect(told(job, 'hole.blocked')).toEqual(['stop: bolts: hole 2 is blocked, no reason given.']);
    job.deed(hole, 'repaired');
    expect(of(job, 'hole.blocked')).toEqual([]);
  });

  test('one that is left out by name, or holds after all, blocks nothing', () => {
    for (const deed of ['left out', 'tightened'] as const) {
      const job = build();
      const set = job.removal('Cover').set(1);
      job.set('position', set.holes[0] ?? '', { fate: 'blocked', fateWhy: 'bad thread' });
      job.deed(set.holes[0] ?? '', deed);
      expect(of(job, 'hole.blocked'), deed).toEqual([]);
    }
  });
});

describe('temporaries', () => {
  const held = (role: 'supports' | 'cages' | 'locks') => {
    const job = build();
    const step = job.removal('Spring seat');
    const set = step.set(2);
    const seat = step.part('Seat');
    const cage = step.temporary('Caging bolt', role);
    return { job, step, holes: set.holes as [string, string], seat, cage };
  };

  test.each(['supports', 'cages'] as const)(
    'what %s must stay until everything of its step is fast',
    (role) => {
      const { job, step, holes, seat, cage } = held(role);
      job.deed(holes[0], 'tightened').deed(cage, 'taken out');
      expect(of(job, 'temporary.hold')).toMatchObject([
        {
          severity: 'stop',
          subjects: [cage],
          stepId: `S:${step.id}`,
          sentence: 'Caging bolt was taken out before Spring seat was fast.',
          clears: 'Put it back until everything of this step is tight, or say why it may stay out.',
        },
      ]);
      job.deed(holes[1], 'tightened').deed(seat, 'fitted');
      expect(of(job, 'temporary.hold'), 'it came out too early all the same').toHaveLength(1);
      job.deed(cage, 'put in').deed(cage, 'taken out');
      expect(of(job, 'temporary.hold')).toEqual([]);
    },
  );

  test('a lock may come out before, and a step ticked as a whole is fast', () => {
    const lock = held('locks');
    lock.job.deed(lock.cage, 'taken out');
    expect(of(lock.job, 'temporary.hold')).toEqual([]);
    const whole = held('cages');
    whole.job.deed(whole.step.id, 'done').deed(whole.cage, 'taken out');
    expect(of(whole.job, 'temporary.hold')).toEqual([]);
  });

  test('snug is fast where the final tightening comes later, and what is left out need not be', () => {
    const job = build();
    const step = job.removal('Arm');
    const set = step.set(2, { laterWhen: 'on the ground' });
    const stand = step.temporary('Stand', 'supports');
    step.part('Shield', { fate: 'leave out' });
    job
      .deed(set.holes[0] ?? '', 'started')
      .deed(set.holes[1] ?? '', 'left out')
      .deed(stand, 'taken out');
    expect(of(job, 'temporary.hold')).toEqual([]);
  });

  test('a part that is fitted after its support came out was not held', () => {
    const { job, holes, seat, cage } = held('supports');
    job
      .deed(holes[0], 'tightened')
      .deed(holes[1], 'paint-checked')
      .deed(cage, 'taken out')
      .deed(seat, 'fitted');
    expect(of(job, 'temporary.hold')).toHaveLength(1);
  });

  test('three rags went in and two came out: the third is looked for', () => {
    const job = build();
    const step = job.removal('Port');
    const rag = step.temporary('Rag', 'blocks', { qty: 3 });
    job.deed(rag, 'taken out', { value: 2 });
    expect(of(job, 'item.unaccounted')).toMatchObject([
      {
        severity: 'stop',
        subjects: [rag],
        stepId: `S:${step.id}`,
        sentence: 'Rag: 3 went in, 2 came out.',
        clears: 'Find the rest, or search and write it off by name.',
      },
    ]);
    job.deed(rag, 'taken out', { value: 3 });
    expect(of(job, 'item.unaccounted')).toEqual([]);
  });
});
