import { describe, expect, test } from 'vitest';
import type { Row } from '../../core/model/tables.ts';
import { type Finding, type FindingCode, planJob } from '../../core/reinstall/index.ts';
import { build, type JobBuilder } from '../support/build.ts';

const DAY = 86_400_000;
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

describe('parts', () => {
  test('an own-place piece in another’s place is named with the piece that is there', () => {
    const job = build();
    const step = job.removal('Caps');
    const one = step.part('Cap', { ownPlace: true, stamped: '1' });
    const two = step.part('Cap', { ownPlace: true, stamped: '2' });
    job.deed(one, 'fitted', { withThingId: two });
    expect(of(job, 'part.place')).toMatchObject([
      {
        severity: 'stop',
        subjects: [one],
        sentence: 'Cap 1 must go back exactly where it was, and 2 is in its place.',
        clears: 'Take both off and change them over.',
      },
    ]);
    job.deed(one, 'came off again').deed(one, 'fitted', { withThingId: one });
    expect(of(job, 'part.place')).toEqual([]);
  });

  test('a number read off the piece is compared with the number it should have', () => {
    const job = build();
    const step = job.removal('Shims');
    const shim = step.part('Shim', { ownPlace: true, stamped: '2.40' });
    const plain = step.part('Pad', { ownPlace: true });
    job.deed(shim, 'fitted', { valueTyped: ' 2.40 ' }).deed(plain, 'fitted', { valueTyped: 'left' });
    expect(of(job, 'part.place')).toEqual([]);
    job.deed(shim, 'fitted', { valueTyped: '2.45' });
    expect(told(job, 'part.place')).toEqual([
      'stop: Shim 2.40 must go back exactly where it was, and 2.45 is in its place.',
    ]);
  });

  test('what has no place of its own may be any of its kind', () => {
    const job = build();
    const step = job.removal('Clips');
    const [one, two] = [step.part('Clip'), step.part('Clip')];
    job.deed(one, 'fitted', { withThingId: two });
    expect(of(job, 'part.place')).toEqual([]);
  });

  test('a seal that must be new is asked for on the day it comes off, and an old one that went back is a stop', () => {
    const job = build();
    const seal = job.removal('Pump').part('Seal', { renew: 'must', renewWhy: 'The lip has a set.' });
    expect(of(job, 'renew.not-in-hand')).toMatchObject([
      {
        severity: 'note',
        subjects: [seal],
        sentence: 'Seal must be renewed. The lip has a set.',
        clears: 'Put it on the list to get.',
      },
    ]);
    job.deed(seal, 'fitted');
    expect(of(job, 'renew.not-in-hand')).toMatchObject([
      {
        severity: 'stop',
        sentence: 'Seal must be renewed, and the old one went back. The lip has a set.',
        clears: 'Fit a new one, or say why the old one may stay.',
      },
    ]);
    job.deed(seal, 'came off again').deed(seal, 'fitted', { fresh: true });
    expect(of(job, 'renew.not-in-hand')).toEqual([]);
  });

  test('one that is in hand need not be got, and one under a passed step is a stop', () => {
    const job = build();
    const cover = job.removal('Cover');
    const seal = job.removal('Pump').needs(cover).part('Seal', { renew: 'must' });
    job.deed(cover.id, 'done');
    expect(of(job, 'renew.not-in-hand')).toMatchObject([
      { severity: 'stop', sentence: 'Seal must be renewed.', clears: 'Fit a new one and tick it.' },
    ]);
    job.move({ partId: seal, src: 'supply', dst: 'stow', fresh: true, cause: 'received' });
    expect(of(job, 'renew.not-in-hand')).toEqual([]);
  });

  test.each<Partial<Row<'part'>>>([
    { how: 'aside' },
    { how: 'opened' },
    { how: 'fitted new' },
    { renew: 'if worn' },
  ])('nothing new is asked for with %o', (more) => {
    const job = build();
    job.removal('Pump').part('Seal', { renew: 'must', ...more });
    expect(of(job, 'renew.not-in-hand')).toEqual([]);
  });

  test('what is away is said with whom, and how many days late', () => {
    const job = build();
    const head = job.removal('Head').part('Head', { stowId: job.bag() });
    const away = job.away(head, { toWhom: 'the machinist', due: job.at + DAY });
    const later = (days: number) =>
      planJob(job.state(), job.at + days * DAY)
        .findings.filter((one) => one.code === 'part.away')
        .map((one) => one.sentence);
    expect(of(job, 'part.away')).toMatchObject([
      { severity: 'note', subjects: [head], clears: 'Write it down when it is back.' },
    ]);
    expect(later(0)).toEqual(['Head is away, with the machinist.']);
    expect(later(1.5)).toEqual(['Head is away, with the machinist.']);
    expect(later(2.5)).toEqual(['Head is away, with the machinist, 1 day late.']);
    expect(later(4.2)).toEqual(['Head is away, with the machinist, 3 days late.']);
    job.set('away', away, { due: null, toWhom: '' });
    expect(later(9)).toEqual(['Head is away.']);
    job.set('away', away, { backAt: job.at });
    expect(later(9)).toEqual([]);
  });

  test('nobody wrote down where it lies: said until it is back, and not of what is away, aside or left out', () => {
    const job = build();
    const step = job.removal('Step');
    const lid = step.part('Lid');
    step.part('Bracket', { stowId: job.bag() });
    step.part('Loom', { how: 'aside' });
    step.part('Shield', { fate: 'leave out' });
    job.away(step.part('Head'));
    expect(of(job, 'part.no-stow')).toMatchObject([
      {
        severity: 'note',
        subjects: [lid],
        sentence: 'Nobody wrote down where Lid lies.',
        clears: 'Say which shelf, tray or bag.',
      },
    ]);
    job.deed(step.id, 'done');
    expect(of(job, 'part.no-stow')).toEqual([]);
  });

  test('a part that no step took back is left over at the end, and only then', () => {
    const job = build();
    const ghost = job.part('Ghost', { how: 'off' });
    job.part('New belt', { how: 'fitted new' });
    job.part('Kit', { how: 'off', kind: 'kit' });
    job.part('Old seal', { how: 'off', fate: 'renew' });
    job.part('Old shield', { how: 'off', fate: 'leave out' });
    expect(of(job, 'part.left-over')).toEqual([]);
    job.rows.job = { ...job.rows.job, phase: 'closed' };
    expect(of(job, 'part.left-over')).toMatchObject([
      {
        severity: 'stop',
        subjects: [ghost],
        stepId: null,
        sentence: 'Ghost is left over: no step took it back.',
        clears: 'Fit it, or leave it out with a reason.',
      },
    ]);
    job.deed(ghost, 'fitted');
    expect(of(job, 'part.left-over')).toEqual([]);
  });

  test.each(['void', 'planned', 'given up'] as const)(
    'a part of a removal that is %s never came off',
    (phase) => {
      const job = build();
      job.removal('Cover', { phase }).part('Cover');
      job.rows.job = { ...job.rows.job, phase: 'closed' };
      expect(of(job, 'part.left-over')).toEqual([]);
    },
  );
});

describe('connections', () => {
  test('two that were swapped are told apart by where they go', () => {
    const job = build();
    const step = job.removal('Pump');
    const inlet = step.connection('Inlet', { goesTo: 'the tank' });
    const outlet = step.connection('Outlet');
    const stub = step.part('Stub');
    job.deed(inlet, 'joined', { withThingId: inlet });
    expect(of(job, 'mate.swapped')).toEqual([]);
    job.deed(inlet, 'joined', { withThingId: outlet }).deed(outlet, 'joined', { withThingId: stub });
    expect(of(job, 'mate.swapped')).toMatchObject([
      {
        severity: 'stop',
        subjects: [inlet],
        sentence: 'Inlet was joined to what belongs to Outlet; it goes to the tank.',
        clears: 'Change them over.',
      },
      { subjects: [outlet], sentence: 'Outlet was joined to what belongs to Stub.' },
    ]);
  });

  test('what seals it is asked only where that kind of joint has a seal; a warning once it is joined', () => {
    const job = build();
    const step = job.removal('Pump');
    const face = step.connection('Flange', { joint: 'face', seal: 'unknown' });
    step.connection('Hose', { joint: 'hose on stub', seal: 'unknown' });
    step.connection('Port', { joint: 'port', seal: 'none' });
    step.connection('Old port', { joint: 'port', seal: 'unknown', leaveAlone: true });
    expect(of(job, 'joint.no-seal')).toMatchObject([
      {
        severity: 'note',
        subjects: [face],
        sentence:
          'Flange: nobody wrote down what seals it. A gasket, seal or washer belongs between the faces.',
        clears: 'Say which seal or washer it takes, or that it takes none.',
      },
    ]);
    job.deed(face, 'joined');
    expect(of(job, 'joint.no-seal')[0]?.severity).toBe('warn');
    job.set('connection', face, { seal: 'part' });
    expect(of(job, 'joint.no-seal')).toEqual([]);
  });
});
