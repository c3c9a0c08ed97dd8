import { describe, expect, test } from 'vitest';
import type { Row } from '../../core/model/tables.ts';
import { type Finding, type FindingCode, planJob } from '../../core/reinstall/index.ts';
import { build, type JobBuilder } from '../support/build.ts';

const of = (job: JobBuilder, code: FindingCode): Finding[] =>
  planJob(job.state(), job.at).findings.filter((one) => one.code === code);
const told = (job: JobBuilder, code: FindingCode): string[] =>
  of(job, code).map((one) => `${one.severity}: ${one.sentence}`);

describe('a sealant that had not cured', () => {
  const sealed = (before: 'fill' | 'run') => {
    const job = build();
    const power = job.removal('Off', { did: 'safe' }).isolation('electricity');
    const step = job.removal('Sump');
    const fluid = job.fluid('Oil', [step.part('Sump')], { bleed: true });
    job.consumable(step.id, { name: 'Sealant', cureMinutes: 60, cureBefore: before, putAt: job.at });
    return { job, step, fluid, power };
  };

  test('is a stop where it was filled too soon, with the minutes it had', () => {
    const { job, step, fluid } = sealed('fill');
    job.tickTock(39);
    job.deed(fluid, 'filled', { value: 100 });
    expect(of(job, 'cure.wait')).toMatchObject([
      {
        severity: 'stop',
        subjects: [step.id, fluid],
        stepId: `C1:${fluid}`,
        sentence: 'Sealant had 20 minutes to cure when Fill Oil, leak check cold began.',
        clears: 'Let it out, renew the sealant and wait, or say why it holds.',
      },
    ]);
  });

  test('is none where the time was kept', () => {
    const { job, fluid } = sealed('fill');
    job.tickTock(59);
    job.deed(fluid, 'filled', { value: 100 });
    expect(of(job, 'cure.wait')).toEqual([]);
  });

  test('what must be cured before it runs may be filled, but not switched on', () => {
    const { job, fluid, power } = sealed('run');
    job.deed(fluid, 'filled', { value: 100 });
    expect(of(job, 'cure.wait')).toEqual([]);
    job.deed(power, 'given back');
    expect(of(job, 'cure.wait').map((one) => one.stepId)).toEqual([`I:${power}`]);
  });

  test('what was done before it was put on does not count', () => {
    const { job, fluid } = sealed('fill');
    job.deed(fluid, 'filled', { value: 100 });
    job.set('consumable', job.rows.consumable[0]?.id ?? '', { putAt: job.tickTock(5) });
    expect(of(job, 'cure.wait')).toEqual([]);
  });
});

describe('made safe too late', () => {
  test('electricity after a plug was pulled, with the two removals', () => {
    const job = build();
    job.removal('Sensor').connection('Sensor plug', { kind: 'plug' });
    const power = job
      .removal('Earth off', { did: 'safe' })
      .isolation('electricity', { how: 'battery earth off' });
    expect(of(job, 'isolation.late')).toMatchObject([
      {
        severity: 'warn',
        subjects: [power],
        stepId: `I:${power}`,
        sentence: 'battery earth off: made safe at removal 2, after Sensor had opened it.',
        clears: 'Say by name that nothing was harmed.',
      },
    ]);
  });

  test.each<[string, Partial<Row<'connection'>>, Row<'isolation'>['energy'], boolean]>([
    ['a cable', { kind: 'cable' }, 'electricity', true],
    ['an earth lead', { kind: 'earth lead' }, 'electricity', true],
    ['a hose', { kind: 'hose' }, 'electricity', false],
    ['a plug left alone', { kind: 'plug', leaveAlone: true }, 'electricity', false],
    ['a plug, and a spring', { kind: 'plug' }, 'spring', false],
  ])('%s', (_what, connection, energy, late) => {
    const job = build();
    job.removal('').connection('Joint', connection);
    job.removal('Off', { did: 'safe' }).isolation(energy);
    expect(told(job, 'isolation.late')).toEqual(
      late ? [`warn: ${energy}: made safe at removal 2, after removal 1 had opened it.`] : [],
    );
  });

  test('in the right order there is nothing to say', () => {
    const job = build();
    job.removal('Off', { did: 'safe' }).isolation('electricity');
    job.removal('Sensor').connection('Plug', { kind: 'plug' });
    expect(of(job, 'isolation.late')).toEqual([]);
  });

  test('pressure and fuel by the fluid they are about', () => {
    const late = (
      energy: 'pressure' | 'fuel',
      more: (fluid: string, other: string) => Partial<Row<'isolation'>>,
    ) => {
      const job = build();
      const end = job.removal('Pipe').connection('Pipe', { kind: 'pipe' });
      const fluid = job.fluid('Fuel', [end], { liveEnergy: energy });
      const other = job.fluid('Water', []);
      job.removal('Off', { did: 'safe' }).isolation(energy, more(fluid, other));
      return of(job, 'isolation.late').length > 0;
    };
    for (const energy of ['pressure', 'fuel'] as const) {
      expect(late(energy, () => ({}))).toBe(true);
      expect(late(energy, (fluid) => ({ scope: 'fluid', fluidId: fluid }))).toBe(true);
      expect(late(energy, (_fluid, other) => ({ scope: 'fluid', fluidId: other }))).toBe(false);
    }
  });
});

describe('notes of the job', () => {
  test('as found is open until somebody says what became of it; a reading needs no answer', () => {
    const job = build();
    const add = (id: string, more: Partial<Row<'asFound'>>) => job.add('asFound', id, more);
    const dent = add(job.id('asFound'), { kind: 'damage', text: 'Dent in the lid' }).id;
    add(job.id('asFound'), { kind: 'reading', text: '1200 h' });
    add(job.id('asFound'), { kind: 'damage', text: 'Scratch', closedWhy: 'polished' });
    expect(of(job, 'as-found.open')).toMatchObject([
      {
        severity: 'note',
        subjects: [dent],
        stepId: null,
        sentence: 'As found: Dent in the lid',
        clears: 'Say what became of it.',
      },
    ]);
  });

  test('work that was stopped is said first to the next person, until it was read', () => {
    const job = build();
    const halt = job.add('halt', job.id('halt'), { note: 'Left nut only by hand' }).id;
    expect(of(job, 'handover')).toMatchObject([
      {
        severity: 'note',
        subjects: [halt],
        sentence: 'Work was stopped: Left nut only by hand',
        clears: 'Read it before going on.',
      },
    ]);
    job.set('halt', halt, { note: '' });
    expect(told(job, 'handover')).toEqual(['note: Work was stopped: no note was left']);
    job.set('halt', halt, { seenAt: job.at });
    expect(of(job, 'handover')).toEqual([]);
  });

  test('marks that stand for nothing are counted by photo', () => {
    const job = build();
    const mark = (photoId: string, more: Partial<Row<'marker'>>) =>
      job.add('marker', job.id('marker'), { photoId, ...more });
    const [one, two] = [job.id('photo'), job.id('photo')];
    mark(one, {});
    mark(one, {});
    mark(one, { thingId: job.removal('Cover').id });
    mark(two, {});
    mark(two, { togetherId: job.id('together') });
    expect(
      of(job, 'marker.unbound').map((found) => [
        found.severity,
        found.subjects,
        found.sentence,
        found.clears,
      ]),
    ).toEqual([
      [
        'note',
        [one],
        '2 marks stand for nothing on a photo.',
        'Say which hole, part or connection each stands for.',
      ],
      [
        'note',
        [two],
        '1 mark stands for nothing on a photo.',
        'Say which hole, part or connection each stands for.',
      ],
    ]);
  });

  test('a photo is asked for only where it is worth most, and not where there is one', () => {
    const asked = (fill: (step: ReturnType<JobBuilder['removal']>) => void): string[] => {
      const job = build();
      fill(job.removal('Step'));
      return told(job, 'photo.none');
    };
    const says = (why: string) => [`note: Step: no photo, and ${why}.`];
    expect(asked((step) => step.part('Cap', { ownPlace: true }))).toEqual(
      says('parts of it have their own place'),
    );
    expect(asked((step) => step.part('Clip', { hidden: true }))).toEqual(
      says('a part of it cannot be seen later'),
    );
    expect(asked((step) => step.mark('Loom', { kind: 'routing' }))).toEqual(
      says('something is routed there'),
    );
    expect(asked((step) => ['a', 'b', 'c'].forEach((name) => step.connection(name)))).toEqual(
      says('3 connections came off'),
    );
    expect(asked((step) => step.job.set('position', step.set(1).holes[0] ?? '', { hidden: true }))).toEqual(
      says('a hole of it cannot be seen'),
    );
    expect(asked((step) => ['a', 'b'].forEach((name) => step.connection(name)))).toEqual([]);
    expect(asked((step) => step.mark('Paint'))).toEqual([]);
    expect(asked((step) => step.part('Plain'))).toEqual([]);
    expect(
      asked((step) => {
        step.part('Cap', { ownPlace: true });
        step.job.add('photo', step.job.id('photo'), { removalId: step.id });
      }),
    ).toEqual([]);
  });

  test('a photo far softer than the others of its camera is said while it can be repeated', () => {
    const job = build();
    const step = job.removal('Step');
    const shot = (n: number, sharpness: number | null, camera: string) => {
      const originalId = n.toString(16).padStart(64, '0');
      job.rows.original.push({
        id: originalId,
        bytes: 1,
        type: 'image/jpeg',
        width: 1,
        height: 1,
        turn: 1,
        takenLocal: null,
        takenZone: null,
        takenUtc: null,
        camera,
        sharpness,
        phash: null,
        hasLocation: false,
        gone: false,
        goneWhy: '',
      });
      return job.add('photo', job.id('photo'), { originalId, fileName: `${n}.jpg`, removalId: step.id }).id;
    };
    const soft = shot(1, 10, 'A');
    for (const n of [2, 3, 9]) shot(n, 100, 'A');
    expect(of(job, 'photo.blurred'), 'too few to compare with').toEqual([]);
    shot(4, 100, 'A');
    shot(5, null, 'A');
    for (const n of [6, 7, 8]) shot(n, 1, 'B');
    expect(of(job, 'photo.blurred')).toMatchObject([
      {
        severity: 'note',
        subjects: [soft],
        stepId: `S:${step.id}`,
        sentence: '1.jpg is blurred against the others of this camera.',
        clears: 'Take it again while it can be repeated.',
      },
    ]);
  });
});
