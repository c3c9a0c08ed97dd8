import { describe, expect, test } from 'vitest';
import type { Row } from '../../core/model/tables.ts';
import { type Finding, type FindingCode, planJob } from '../../core/reinstall/index.ts';
import { build, type JobBuilder } from '../support/build.ts';

const of = (job: JobBuilder, code: FindingCode): Finding[] =>
  planJob(job.state(), job.at).findings.filter((one) => one.code === code);
const told = (job: JobBuilder, code: FindingCode): string[] =>
  of(job, code).map((one) => `${one.severity}: ${one.sentence}`);

describe('torque', () => {
  const joint = (more: Partial<Row<'fset'>>, spec: Partial<Row<'spec'>> = {}) => {
    const job = build();
    const step = job.removal('Cover');
    const set = step.set(2, { name: 'cover bolts', ...more }, spec);
    return { job, step, set, hole: set.holes[0] ?? '' };
  };
  const read = (job: JobBuilder, hole: string, value: number) =>
    job.deed(hole, 'tightened', { value, valueTyped: `${value} Nm`, known: 'read' });

  test('a value reached too low or too high is a warning on its hole, a stop where the joint matters', () => {
    const { job, step, set, hole } = joint({ torqueMnm: 20_000, torqueTyped: '20 Nm' });
    read(job, hole, 10);
    expect(of(job, 'torque.off')).toMatchObject([
      {
        severity: 'warn',
        subjects: [hole],
        stepId: `S:${step.id}`,
        clears: 'Tighten it again to the wanted value, or say why it stands.',
      },
    ]);
    expect(told(job, 'torque.off')[0]).toContain('cover bolts: Reached 10 N·m, wanted 20 N·m: 50 % too low');
    job.set('fset', set.id, { critical: true });
    expect(of(job, 'torque.off')[0]?.severity).toBe('stop');
    read(job, hole, 20);
    expect(of(job, 'torque.off')).toEqual([]);
    read(job, hole, 24);
    expect(told(job, 'torque.off')[0]).toContain('20 % too high');
  });

  test('a ticked hole says no value, so there is nothing to compare', () => {
    const { job, hole } = joint({ torqueMnm: 20_000, torqueTyped: '20 Nm' });
    job.deed(hole, 'tightened');
    expect(of(job, 'torque.off')).toEqual([]);
  });

  // Proof load of M8 8.8 (ISO 898-1: 600 MPa on 36.6 mm²), greased K 0.12: proof is reached near 20 N·m.
  test('a wanted figure past what the bolt holds is judged once, for the set; the maker’s page makes it a note', () => {
    const { job, set } = joint({ torqueMnm: 60_000, torqueTyped: '60 Nm', lubrication: 'greased' });
    expect(of(job, 'torque.past-proof')).toMatchObject([
      {
        severity: 'stop',
        subjects: [set.id],
        clears: 'Check figure, unit and class against the maker’s manual, or say why it stands.',
      },
    ]);
    for (const hole of set.holes) read(job, hole, 60);
    expect(of(job, 'torque.past-proof'), 'reached as wanted').toHaveLength(1);
    job.set('fset', set.id, { torqueFrom: 'maker', torquePage: 'p. 12' });
    expect(of(job, 'torque.past-proof')).toMatchObject([{ severity: 'note' }]);
    expect(told(job, 'torque.past-proof')[0]).toContain('p. 12');
  });

  test('what the wrench reached beyond the wanted figure is judged by the bolt too', () => {
    const { job, hole } = joint({ torqueMnm: 20_000, torqueTyped: '20 Nm', lubrication: 'dry' });
    read(job, hole, 60);
    expect(of(job, 'torque.past-proof')).toMatchObject([{ severity: 'stop', subjects: [hole] }]);
    const bare = joint({ lubrication: 'dry' });
    read(bare.job, bare.hole, 60);
    expect(of(bare.job, 'torque.past-proof')).toMatchObject([{ subjects: [bare.hole] }]);
  });

  test('the lubrication that is stated counts: what a dry bolt takes is too much for a greased one', () => {
    expect(
      of(joint({ torqueMnm: 26_000, torqueTyped: '26 Nm', lubrication: 'dry' }).job, 'torque.past-proof'),
    ).toEqual([]);
    for (const lubrication of ['greased', 'anti-seize'] as const)
      expect(
        of(joint({ torqueMnm: 26_000, torqueTyped: '26 Nm', lubrication }).job, 'torque.past-proof'),
        lubrication,
      ).toHaveLength(1);
  });

  test('the class that is stated counts, and a slip of the unit is asked about', () => {
    expect(
      of(joint({ torqueMnm: 33_000, torqueTyped: '33 Nm', lubrication: 'dry' }).job, 'torque.past-proof'),
    ).toEqual([]);
    const soft = joint({ torqueMnm: 33_000, torqueTyped: '33 Nm', lubrication: 'dry' }, { grade: '4.6' });
    expect(of(soft.job, 'torque.past-proof')).toHaveLength(1);
    const slip = joint({ torqueMnm: 90_000, torqueTyped: '90 Nm', lubrication: 'greased' });
    expect(told(slip.job, 'torque.past-proof')[0]).toContain('90 lbf·in would be 10.2 N·m');
  });

  test('no torque is a finding only where it matters, a note until the step is done; snug by feel is an answer', () => {
    const { job, step, set } = joint({ critical: true });
    expect(of(job, 'torque.none')).toMatchObject([
      { severity: 'note', subjects: [set.id], clears: 'Look the value up, or say that it is snug by feel.' },
    ]);
    job.deed(step.id, 'done');
    expect(of(job, 'torque.none')[0]?.severity).toBe('stop');
    job.set('fset', set.id, { torqueFrom: 'by feel' });
    expect(of(job, 'torque.none')).toEqual([]);
    expect(of(joint({}).job, 'torque.none')).toEqual([]);
  });

  test('a figure that no thread under this head takes is a misfit', () => {
    const { job, set } = joint(
      { torqueMnm: 400_000, torqueTyped: '400 Nm' },
      { thread: null, pitchUm: null, driveSizeUm: 10_000, driveTyped: '10 mm' },
    );
    expect(of(job, 'torque.misfit')).toMatchObject([
      { severity: 'warn', subjects: [set.id], clears: 'Check thread and head size.' },
    ]);
  });

  test('a hole with a step of its own is judged there, by what was read on it', () => {
    const job = build();
    const bracket = job.removal('Bracket');
    const set = bracket.set(2, { torqueMnm: 20_000, torqueTyped: '20 Nm' });
    const clip = job.removal('Pipe').loose().part('Clip');
    job.holds(set.holes[1] ?? '', clip);
    job.deed(set.holes[1] ?? '', 'tightened', { value: 5, valueTyped: '5 Nm' });
    expect(of(job, 'torque.off').map((one) => one.subjects)).toEqual([[set.holes[1]]]);
  });
});

describe('measures', () => {
  const measured = (value: number, more: Partial<Row<'measure'>>) => {
    const job = build();
    const step = job.removal('Gear');
    const measure = step.measure('End float', { limitLow: 0.1, limitHigh: 0.2, ...more });
    job.deed(measure, 'measured', { value });
    return { job, step, measure };
  };

  test('outside its limits is a stop that says on which side', () => {
    const { job, step, measure } = measured(0.05, {});
    expect(of(job, 'measure.off')).toMatchObject([
      {
        severity: 'stop',
        subjects: [measure],
        stepId: `S:${step.id}`,
        sentence: 'End float: 0.05 mm is below 0.1 to 0.2 mm.',
        clears: 'Correct it and measure again, or say why it stands.',
      },
    ]);
    job.deed(measure, 'measured', { value: 0.15 });
    expect(of(job, 'measure.off')).toEqual([]);
    expect(told(measured(0.25, {}).job, 'measure.off')).toEqual([
      'stop: End float: 0.25 mm is above 0.1 to 0.2 mm.',
    ]);
  });

  test('the limits themselves are inside, and a limit that is not known limits nothing', () => {
    for (const [value, more] of [
      [0.1, {}],
      [0.2, {}],
      [9, { limitHigh: null }],
      [-9, { limitLow: null }],
    ] as const)
      expect(of(measured(value, more).job, 'measure.off')).toEqual([]);
    expect(told(measured(9, { limitLow: null, unit: '' }).job, 'measure.off')).toEqual([
      'stop: End float: 9 is above … to 0.2.',
    ]);
  });
});

describe('amounts of fluid', () => {
  const filled = (ml: readonly number[], more: Partial<Row<'fluid'>>) => {
    const job = build();
    const fluid = job.fluid('Oil', [job.removal('Plug').set(1).id], more);
    for (const value of ml) job.deed(fluid, 'filled', { value });
    return { job, fluid };
  };

  test('five in a hundred less than came out is inside what a jug can tell, more than that is a stop', () => {
    const { job, fluid } = filled([1880], { drainedMl: 2000 });
    expect(of(job, 'fluid.amount')).toMatchObject([
      {
        severity: 'stop',
        subjects: [fluid],
        stepId: `C1:${fluid}`,
        sentence: 'Oil: 1.88 l went in, 2 l came out.',
        clears: 'Top it up, look for an air lock, or say why less is right.',
      },
    ]);
    expect(of(filled([1900], { drainedMl: 2000 }).job, 'fluid.amount')).toEqual([]);
  });

  test('two fills are added up', () => {
    expect(of(filled([1000, 950], { drainedMl: 2000 }).job, 'fluid.amount')).toEqual([]);
    expect(told(filled([400, 500], { drainedMl: 2000 }).job, 'fluid.amount')).toEqual([
      'stop: Oil: 900 ml went in, 2 l came out.',
    ]);
  });

  test('where all was lost, what it holds is the measure; more than it holds is too much', () => {
    expect(
      told(filled([2000], { drainedMl: 2000, capacityMl: 3000, lost: 'all' }).job, 'fluid.amount'),
    ).toEqual(['stop: Oil: 2 l went in, 3 l is what it holds.']);
    const over = filled([3200], { drainedMl: 2000, capacityMl: 3000 });
    expect(of(over.job, 'fluid.amount')).toMatchObject([
      { sentence: 'Oil: 3.2 l went in, and it holds 3 l.', clears: 'Draw some off, or correct the amount.' },
    ]);
    expect(of(filled([3150], { drainedMl: 2000, capacityMl: 3000 }).job, 'fluid.amount')).toEqual([]);
    expect(told(filled([1000], { drainedMl: 2000, lost: 'all' }).job, 'fluid.amount')).toEqual([
      'stop: Oil: 1 l went in, 2 l came out.',
    ]);
  });

  test('nothing is said where the amount was not written down, or nothing is known to compare it with', () => {
    expect(of(filled([], { drainedMl: 2000 }).job, 'fluid.amount')).toEqual([]);
    expect(of(filled([0], { drainedMl: 2000 }).job, 'fluid.amount')).toEqual([]);
    expect(of(filled([500], {}).job, 'fluid.amount')).toEqual([]);
    expect(told(filled([0], { drainedMl: 2000, filledMl: 100 }).job, 'fluid.amount')).toEqual([
      'stop: Oil: 100 ml went in, 2 l came out.',
    ]);
  });
});
