import { describe, expect, test } from 'vitest';
import { type Finding, type FindingCode, planJob } from '../../core/reinstall/index.ts';
import { build, type JobBuilder } from '../support/build.ts';

const all = (job: JobBuilder): readonly Finding[] => planJob(job.state(), job.at).findings;
const of = (job: JobBuilder, code: FindingCode): Finding[] => all(job).filter((one) => one.code === code);
/** Severity and sentence of the findings of a code: what people see of them. */
const told = (job: JobBuilder, code: FindingCode): string[] =>
  of(job, code).map((one) => `${one.severity}: ${one.sentence}`);

describe('what was left open under a step that was passed', () => {
  /** A housing with everything that can stay open, and a cover over it that is ticked. */
  const passed = (
    fill: (step: ReturnType<JobBuilder['removal']>) => string,
  ): { job: JobBuilder; id: string } => {
    const job = build();
    const cover = job.removal('Cover');
    const id = fill(job.removal('Housing').needs(cover));
    job.deed(cover.id, 'done');
    return { job, id };
  };

  test.each<[string, FindingCode, string, string, (step: ReturnType<JobBuilder['removal']>) => string]>([
    [
      'an empty hole',
      'fastener.short',
      'bolts: hole 1 of 1 is empty.',
      'Put one in, leave it out with a reason, or put one on the list to get.',
      (step) => step.set(1).holes[0] ?? '',
    ],
    [
      'a part',
      'part.missing',
      'Shim is not back.',
      'Fit it, or leave it out with a reason.',
      (step) => step.part('Shim'),
    ],
    [
      'a connection',
      'connection.open',
      'Plug is not joined.',
      'Join it and tick it.',
      (step) => step.connection('Plug'),
    ],
    [
      'a connection without a name',
      'connection.open',
      'The connection is not joined.',
      'Join it and tick it.',
      (step) => step.connection(''),
    ],
    [
      'a rag',
      'temporary.in-place',
      'Rag is still in place.',
      'Take it out and tick it.',
      (step) => step.temporary('Rag', 'blocks'),
    ],
    [
      'a measure',
      'measure.missing',
      'End float is not measured.',
      'Measure it and write the value down.',
      (step) => step.measure('End float'),
    ],
    [
      'a slackened set',
      'fastener.loose',
      'bolts, hole 1: slackened, not tight.',
      'Tighten it and tick it.',
      (step) => step.set(1, { how: 'slackened' }).holes[0] ?? '',
    ],
  ])('%s is a stop of its own, with what clears it', (_what, code, sentence, clears, fill) => {
    const { job, id } = passed(fill);
    const [one, ...more] = of(job, code).filter((found) => found.severity === 'stop');
    expect(one).toMatchObject({ severity: 'stop', sentence, clears, subjects: [id] });
    expect(one?.stepId).toBe(`S:${job.rows.removal[1]?.id}`);
    expect(one?.latestStep).toBe(`S:${job.rows.removal[0]?.id}`);
    expect(more).toEqual([]);
  });

  test('none of it is said before something was passed', () => {
    const job = build();
    job.removal('Cover');
    const step = job.removal('Housing');
    step.set(1);
    step.connection('Plug');
    step.temporary('Rag', 'blocks');
    expect(all(job).filter((one) => one.severity !== 'note')).toEqual([]);
  });

  test('a hole that was started and never tightened is loose; final tightening is due where it was put off', () => {
    const { job, id } = passed((step) => step.set(1).holes[0] ?? '');
    job.deed(id, 'started');
    expect(told(job, 'fastener.loose')).toEqual(['stop: bolts, hole 1: started, not tight.']);
    job.deed(id, 'tightened');
    expect(told(job, 'fastener.loose')).toEqual([]);
  });

  test('an empty hole says the bag that its bolt lies in', () => {
    const { job } = passed((step) => step.set(2, { stowId: step.job.bag('7'), name: '' }).holes[0] ?? '');
    expect(told(job, 'fastener.short')).toContain('stop: Housing: hole 1 of 2 is empty. Bag 7.');
  });

  test('an energy that was never given back is said when the job is closed, and so is a fluid', () => {
    const job = build();
    const energy = job.removal('Off', { did: 'safe' }).isolation('electricity', { how: 'mains off' });
    const end = job.removal('Hose').connection('Hose');
    const fluid = job.fluid('Oil', [end], { bleed: true, liveEnergy: 'motion' });
    expect(all(job).filter((one) => one.severity === 'stop')).toEqual([]);
    job.rows.job = { ...job.rows.job, phase: 'closed' };
    expect(of(job, 'gate.open')).toMatchObject([
      {
        severity: 'stop',
        subjects: [energy],
        sentence: 'It is not given back.',
        clears: 'Give it back and tick it.',
      },
    ]);
    expect(of(job, 'fluid.open').map((one) => one.sentence)).toEqual([
      'Oil is not checked for leaks, cold.',
      'Oil is not filled.',
      'Oil is not bled.',
      'Oil is not checked for leaks, hot.',
    ]);
    expect(of(job, 'fluid.open')[1]).toMatchObject({
      severity: 'stop',
      subjects: [fluid, 'filled'],
      clears: 'Fill it and write the amount down.',
    });
    // Passing by name that it was not filled passes no leak check with it.
    job.accept(of(job, 'fluid.open')[1] as Finding);
    expect(of(job, 'fluid.open').filter((one) => one.accepted === null)).toHaveLength(3);
    job.deed(fluid, 'filled', { value: 100 });
    expect(of(job, 'fluid.open')).toMatchObject([
      { sentence: 'Oil is not checked for leaks, cold.', clears: 'Look for leaks and tick it.' },
      { sentence: 'Oil is not bled.', clears: 'Bleed it and tick it.' },
      { sentence: 'Oil is not checked for leaks, hot.' },
    ]);
    job.deed(fluid, 'cold leak checked').deed(fluid, 'bled');
    expect(of(job, 'fluid.open')).toMatchObject([
      {
        sentence: 'Oil is not checked for leaks, hot.',
        clears: 'Look for leaks under pressure and tick it.',
      },
    ]);
    job.deed(fluid, 'hot leak checked');
    expect(of(job, 'fluid.open')).toEqual([]);
  });

  test('a final tightening is a note while it is due, and a stop once the job was closed over it', () => {
    const job = build();
    const set = job.removal('Arm').set(2, { name: 'arm bolts', laterWhen: 'on the ground' });
    for (const hole of set.holes) job.deed(hole, 'started');
    expect(of(job, 'torque.later')).toMatchObject([
      {
        severity: 'note',
        subjects: [set.id],
        sentence: 'Final tightening on the ground: arm bolts is still due.',
        clears: 'Tighten it finally on the ground.',
      },
    ]);
    job.rows.job = { ...job.rows.job, phase: 'closed' };
    expect(told(job, 'torque.later')).toEqual([
      'stop: arm bolts, hole 1: final tightening is due on the ground.',
      'stop: arm bolts, hole 2: final tightening is due on the ground.',
    ]);
    expect(of(job, 'torque.later')[0]?.clears).toBe('Tighten it finally and tick it.');
    for (const hole of set.holes) job.deed(hole, 'tightened');
    expect(of(job, 'torque.later')).toEqual([]);
  });
});

describe('acceptance', () => {
  const open = () => {
    const job = build();
    const cover = job.removal('Cover');
    const plug = job.removal('Housing').needs(cover).connection('Plug');
    job.deed(cover.id, 'done');
    return { job, plug, cover };
  };

  test('a stop is passed by name and reason, and the reason stays with it', () => {
    const { job } = open();
    const finding = of(job, 'connection.open')[0] as Finding;
    expect(finding.accepted).toBeNull();
    job.accept(finding, 'It is capped.');
    expect(of(job, 'connection.open')[0]?.accepted).toMatchObject({ why: 'It is capped.', at: job.at });
    const closing = planJob(job.state(), job.at).gates.find((gate) => gate.kind === 'closing');
    expect(closing?.holding).not.toContain(finding.key);
    expect(closing?.passedBy.map((one) => [one.finding, one.why])).toEqual([[finding.key, 'It is capped.']]);
  });

  test('it is open again when the facts change, and for another thing it never was passed', () => {
    const { job, plug } = open();
    job.accept(of(job, 'connection.open')[0] as Finding);
    job.set('connection', plug, { name: 'Sensor plug' });
    expect(of(job, 'connection.open')).toMatchObject([
      { accepted: null, sentence: 'Sensor plug is not joined.' },
    ]);
  });

  test('the same trouble keeps its key whatever its facts are, and another has another', () => {
    const { job, plug } = open();
    const before = of(job, 'connection.open')[0];
    job.set('connection', plug, { name: 'Sensor plug' });
    const after = of(job, 'connection.open')[0];
    expect(after?.key).toBe(before?.key);
    expect(after?.digest).not.toBe(before?.digest);
    expect(after?.digest).toMatch(/^[0-9a-f]{14}$/);
    expect(new Set(all(job).map((one) => one.key)).size).toBe(all(job).length);
  });

  test('stops come before warnings, warnings before notes, and among equals what lies first in the list', () => {
    const job = build();
    const cover = job.removal('Cover');
    const mid = job.removal('Middle').needs(cover);
    const low = job.removal('Low').needs(mid);
    const [one, two] = [mid.connection('Upper'), low.connection('Lower')];
    low.part('Cap', { ownPlace: true });
    job.deed(cover.id, 'done');
    const order = all(job).map((finding) => finding.severity);
    expect(order).toEqual(
      [...order].sort((a, b) => 'stop warn note'.indexOf(a) - 'stop warn note'.indexOf(b)),
    );
    expect(of(job, 'connection.open').map((finding) => finding.subjects[0])).toEqual([two, one]);
  });
});
