import { describe, expect, test } from 'vitest';
import { planJob, type StepKind } from '../../core/reinstall/index.ts';
import type { Row } from '../../core/model/tables.ts';
import { build, type JobBuilder } from '../support/build.ts';

/** The actions of the first step of a kind, as people read them. */
const said = (job: JobBuilder, kind: StepKind = 'S'): string[] =>
  (planJob(job.state(), job.at).steps.find((step) => step.kind === kind)?.actions ?? []).map(
    (action) => action.sentence,
  );
/** The same with what is through: "x" before the sentence. */
const ticked = (job: JobBuilder, kind: StepKind = 'S'): string[] =>
  (planJob(job.state(), job.at).steps.find((step) => step.kind === kind)?.actions ?? []).map(
    (action) => `${action.done ? 'x' : '-'} ${action.code}`,
  );

describe('fluids, energies and own steps', () => {
  const drained = (more: Partial<Row<'fluid'>>): JobBuilder => {
    const job = build();
    job.fluid('Oil', [job.removal('Plug').set(1).id], more);
    return job;
  };

  test('filling says how much: what was drained, or what it holds where all of it was lost', () => {
    expect(said(drained({ drainedMl: 2540, type: '75W-90' }), 'C1')).toEqual([
      'Fill Oil (75W-90), 2.54 l.',
      'Look for leaks, cold: Oil.',
    ]);
    expect(said(drained({ drainedMl: 900, capacityMl: 1000, lost: 'all' }), 'C1')[0]).toBe('Fill Oil, 1 l.');
    expect(said(drained({ drainedMl: 900, lost: 'all' }), 'C1')[0]).toBe('Fill Oil, 900 ml.');
    expect(said(drained({ drainedMl: 999, capacityMl: 3000, lost: 'unknown' }), 'C1')[0]).toBe(
      'Fill Oil, 999 ml.',
    );
    expect(said(drained({}), 'C1')[0]).toBe('Fill Oil.');
  });

  test('where nothing was lost there is nothing to fill, but still to look for leaks', () => {
    expect(said(drained({ lost: 'none' }), 'C1')).toEqual(['Look for leaks, cold: Oil.']);
  });

  test('bleeding and the leak check with the machine running, each only where it is called for', () => {
    expect(said(drained({ bleed: true, liveEnergy: 'motion' }), 'C2')).toEqual([
      'Prime and bleed Oil.',
      'Look for leaks, running: Oil.',
    ]);
    expect(said(drained({ bleed: true }), 'C2')).toEqual(['Prime and bleed Oil.']);
    expect(said(drained({ liveEnergy: 'motion' }), 'C2')).toEqual(['Look for leaks, running: Oil.']);
  });

  test('each of them is ticked by its own deed', () => {
    const job = drained({ bleed: true, liveEnergy: 'motion' });
    const fluid = job.rows.fluid[0]?.id ?? '';
    job.deed(fluid, 'filled', { value: 500 });
    expect(ticked(job, 'C1')).toEqual(['x fill', '- leak check cold']);
    job.deed(fluid, 'cold leak checked').deed(fluid, 'bled');
    expect(ticked(job, 'C1')).toEqual(['x fill', 'x leak check cold']);
    expect(ticked(job, 'C2')).toEqual(['x prime and bleed', '- leak check hot']);
    job.deed(fluid, 'hot leak checked');
    expect(ticked(job, 'C2')).toEqual(['x prime and bleed', 'x leak check hot']);
  });

  test('a blanking plug of a test comes out with the fluid that it was put in for', () => {
    const job = drained({});
    job.temporary('Blanking plug', { stepThingId: job.rows.fluid[0]?.id ?? '' });
    expect(said(job, 'C1')[0]).toBe('Take out: Blanking plug, before the opening is closed.');
  });

  test('an energy is given back by who locked it out, else by who made it safe', () => {
    const locked = build();
    locked.removal('Off', { did: 'safe' }).isolation('electricity', { how: 'mains', lockOwner: 'Ana' });
    expect(said(locked, 'I')).toEqual(['Give back: mains. Ana takes the lock off.']);
    const made = build();
    const ben = made.person('Ben');
    const energy = made.removal('Off', { did: 'safe' }).isolation('pressure', { byPersonId: ben });
    expect(said(made, 'I')).toEqual(['Give back: pressure. By Ben, who made it safe.']);
    expect(ticked(made, 'I')).toEqual(['- give back']);
    made.deed(energy, 'given back');
    expect(ticked(made, 'I')).toEqual(['x give back']);
    const nobody = build();
    nobody.removal('Off', { did: 'safe' }).isolation('fuel', { how: 'tap shut' });
    expect(said(nobody, 'I')).toEqual(['Give back: tap shut.']);
  });

  test('what came off while it was made safe goes back before the energy does', () => {
    const job = build();
    const safe = job.removal('Caged', { did: 'safe' });
    safe.part('Guard');
    safe.isolation('spring', { how: 'spring caged' });
    expect(said(job, 'I')).toEqual(['Fit: Guard.', 'Give back: spring caged.']);
  });

  test('an own step says its title and its text; a re-check of a set asks for the torque once more', () => {
    const job = build();
    const own = job.ownStep('Grease', { body: 'both ends' });
    expect(said(job, 'U')).toEqual(['Grease: both ends']);
    expect(ticked(job, 'U')).toEqual(['- own step']);
    job.deed(own, 'done');
    expect(ticked(job, 'U')).toEqual(['x own step']);
    const wheel = build();
    const set = wheel.removal('Wheel').set(5, { recheck: true });
    expect(said(wheel, 'K')).toEqual(['Check the torque once more.']);
    expect(ticked(wheel, 'K')).toEqual(['- recheck']);
    wheel.deed(set.id, 'measured');
    expect(ticked(wheel, 'K')).toEqual(['x recheck']);
  });
});
