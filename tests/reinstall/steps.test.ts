import { describe, expect, test } from 'vitest';
import { planJob, type Step } from '../../core/reinstall/index.ts';
import type { Row } from '../../core/model/tables.ts';
import { build, type JobBuilder } from '../support/build.ts';

const plan = (job: JobBuilder) => planJob(job.state(), job.at);
const stepOf = (job: JobBuilder, kind: Step['kind']): Step =>
  plan(job).steps.find((step) => step.kind === kind) as Step;

describe('what a step is called', () => {
  test.each<[string, Step['kind'], (job: JobBuilder) => unknown]>([
    ['Cover', 'S', (job) => job.removal('Cover')],
    ['cover, 3 bolts', 'S', (job) => job.removal('', { typed: 'cover, 3 bolts\n+ gasket' })],
    ['Fill Oil, leak check cold', 'C1', (job) => job.fluid('Oil', [job.removal('Plug').set(1).id])],
    ['Bleed Oil', 'C2', (job) => job.fluid('Oil', [job.removal('Plug').set(1).id], { bleed: true })],
    [
      'Bleed Oil, leak check hot',
      'C2',
      (job) => job.fluid('Oil', [job.removal('Plug').set(1).id], { bleed: true, liveEnergy: 'electricity' }),
    ],
    [
      'Leak check hot: Oil',
      'C2',
      (job) => job.fluid('Oil', [job.removal('Plug').set(1).id], { bleed: false, liveEnergy: 'electricity' }),
    ],
    [
      'Give back: mains off',
      'I',
      (job) => job.removal('', { did: 'safe' }).isolation('electricity', { how: 'mains off' }),
    ],
    ['Give back: fuel', 'I', (job) => job.removal('', { did: 'safe' }).isolation('fuel')],
    ['Final tightening warm: bolts', 'T', (job) => job.removal('Arm').set(1, { laterWhen: 'warm' })],
    ['Final tightening warm: Arm', 'T', (job) => job.removal('Arm').set(1, { laterWhen: 'warm', name: '' })],
    [
      'Final tightening warm: fasteners',
      'T',
      (job) => job.removal('').set(1, { laterWhen: 'warm', name: '' }),
    ],
    ['Re-check: bolts', 'K', (job) => job.removal('Wheel').set(1, { recheck: true })],
    ['Re-check: Wheel', 'K', (job) => job.removal('Wheel').set(1, { recheck: true, name: '' })],
    ['Check the belt', 'K', (job) => job.ownStep('Check the belt', { kind: 'recheck' })],
    ['Grease', 'U', (job) => job.ownStep('Grease')],
  ])('%s', (title, kind, fill) => {
    const job = build();
    fill(job);
    expect(stepOf(job, kind).title).toBe(title);
  });

  test('a hole that holds more than one part by its set, else by its removal', () => {
    const shared = (name: string, title: string) => {
      const job = build();
      const set = job.removal(title).set(2, { name });
      job.holds(set.holes[1] ?? '', job.removal('Pipe').loose().part('Clip'));
      return stepOf(job, 'F').title;
    };
    expect(shared('bracket bolts', 'Bracket')).toBe('bracket bolts, hole 2 (holds more than one part)');
    expect(shared('', 'Bracket')).toBe('Bracket, hole 2 (holds more than one part)');
    expect(shared('', '')).toBe('fasteners, hole 2 (holds more than one part)');
  });
});

describe('what a step shows', () => {
  test('its number as people count: void entries are not counted', () => {
    const job = build();
    job.removal('A');
    job.removal('Void', { phase: 'void' });
    const b = job.removal('B');
    job.ownStep('Own');
    expect(plan(job).steps.map((step) => [step.title, step.number, step.removalId])).toEqual([
      ['B', 2, b.id],
      ['A', 1, job.rows.removal[0]?.id],
      ['Own', null, null],
    ]);
  });

  test('its holes with wanted and reached, size and bag, each its own where it has one', () => {
    const job = build();
    const [bag, other] = [job.bag('4'), job.bag('7')];
    const set = job.removal('Cover').set(2, {
      stowId: bag,
      torqueMnm: 25_500,
      torqueTyped: '25.5 Nm',
      angleDeg: 90,
      stages: ['30 %'],
      renew: 'must',
    });
    const long = job.spec({ lengthUm: 45_000 });
    job.set('position', set.holes[1] ?? '', { specId: long, stowId: other, hidden: true });
    job.deed(set.holes[0] ?? '', 'tightened', { value: 24, valueTyped: '24 Nm' });
    expect(stepOf(job, 'S').fasteners).toMatchObject([
      {
        setId: set.id,
        name: 'bolts',
        torqueNm: 25.5,
        torqueTyped: '25.5 Nm',
        angleDeg: 90,
        stages: ['30 %'],
        laterWhen: null,
        mustBeNew: true,
        holes: [
          {
            positionId: set.holes[0],
            n: 1,
            mark: 'tightened',
            specId: set.specId,
            stowId: bag,
            hidden: false,
            reachedNm: 24,
          },
          {
            positionId: set.holes[1],
            n: 2,
            mark: 'out',
            specId: long,
            stowId: other,
            hidden: true,
            reachedNm: null,
          },
        ],
      },
    ]);
    job.set('fset', set.id, { torqueMnm: null, renew: 'no' });
    expect(stepOf(job, 'S').fasteners[0]).toMatchObject({ torqueNm: null, mustBeNew: false });
    job.deed(set.holes[0] ?? '', 'came off again').deed(set.holes[0] ?? '', 'tightened');
    expect(
      stepOf(job, 'S').fasteners[0]?.holes[0]?.reachedNm,
      'what was read before it came off again',
    ).toBeNull();
  });

  test('what is to be renewed in it, its notes for the way back, and what is still missing', () => {
    const job = build();
    const cover = job.removal('Cover', { noteBack: 'Mind the dowel.' });
    const seal = cover.part('Seal', { renew: 'must' });
    const belt = cover.part('Belt', { fate: 'renew' });
    const lid = cover.part('Lid');
    expect(stepOf(job, 'S')).toMatchObject({ renew: [seal, belt], notes: ['Mind the dowel.'] });
    expect(stepOf(job, 'S').missing.map((one) => one.thingId)).toEqual([seal, belt, lid]);
    job.deed(cover.id, 'done');
    expect(stepOf(job, 'S').missing).toEqual([]);
    job.removal('Off', { did: 'safe', noteBack: 'Slowly.' }).isolation('load');
    expect(stepOf(job, 'I').notes).toEqual([]);
  });

  test('why it is behind: the step to do first, and how many more', () => {
    const job = build();
    const top = job.removal('Top');
    const a = job.removal('A').needs(top).loose();
    const b = job.removal('').needs(top).loose();
    const behind = () => plan(job).steps.find((step) => step.id === `S:${top.id}`);
    expect(behind()).toMatchObject({ state: 'behind', firstDo: [`S:${a.id}`, `S:${b.id}`] });
    expect(behind()?.why).toBe('First do A and 1 more.');
    job.deed(a.id, 'done');
    expect(behind()?.why).toBe('First do removal 3.');
    job.deed(b.id, 'done');
    expect(behind()).toMatchObject({ state: 'ready', why: '', firstDo: [] });
  });

  test('a step far above one that is not done is behind as well, though what it needs itself is done', () => {
    const job = build();
    const a = job.removal('A');
    const b = job.removal('B').needs(a);
    job.removal('C').needs(b);
    job.deed(b.id, 'done');
    expect(plan(job).steps.at(-1)).toMatchObject({
      title: 'A',
      state: 'behind',
      why: 'Something further down is not done.',
    });
  });

  test('assumed needs are asked about when a step waits for them, with the places that make them doubtful', () => {
    const job = build();
    const a = job.removal('Lamp', { place: 'front' });
    const b = job.removal('', { place: 'rear' });
    const ask = () => plan(job).steps.find((step) => step.id === `S:${a.id}`)?.ask;
    expect(ask()).toEqual([
      {
        removalId: b.id,
        needsId: a.id,
        question: 'Does 2 really have to go in before 1 (Lamp)? They are in different places: rear, front.',
      },
    ]);
    b.with({ place: 'front' });
    expect(ask()?.[0]?.question).toBe('Does 2 really have to go in before 1 (Lamp)?');
    b.with({ place: '' });
    expect(ask()?.[0]?.question).not.toContain('different places');
    b.with({ defaultNeed: 'confirmed' });
    expect(ask()).toEqual([]);
    b.with({ defaultNeed: 'assumed' });
    job.deed(b.id, 'done');
    expect(ask()).toEqual([]);
  });

  test('a ring holds its steps, and says so', () => {
    const job = build();
    const [a, b] = [job.removal('A').loose(), job.removal('B').loose()];
    job.first(a.id, b.id);
    job.first(b.id, a.id);
    expect(plan(job).steps.map((step) => step.state)).toContain('behind');
    expect(plan(job).undecided).toMatchObject([
      { stepIds: expect.arrayContaining([`S:${a.id}`, `S:${b.id}`]) },
    ]);
    const found = plan(job).findings.find((one) => one.code === 'order.cycle');
    expect(found?.sentence).toMatch(/^These steps wait for each other in a ring: (A, B|B, A)\.$/);
    expect(found?.clears).toBe('Loosen one of the needs or orders between them.');
  });

  test('the depth line: off, back, left, and the pieces that came off', () => {
    const job = build();
    job.removal('Planned', { phase: 'planned' });
    const a = job.removal('A');
    a.set(3);
    a.part('Lid');
    const safe = job.removal('Off', { did: 'safe' });
    const [one, two] = [safe.isolation('electricity'), safe.isolation('load')];
    expect(plan(job).depth).toEqual({ off: 2, back: 0, left: 2, pieces: 4 });
    job.deed(a.id, 'done').deed(one, 'given back');
    expect(plan(job).depth).toMatchObject({ back: 1, left: 1 });
    job.deed(two, 'given back');
    expect(plan(job).depth).toMatchObject({ back: 2, left: 0 });
  });

  test('final tightenings that are still due, with the holes that are left, due once their condition is true', () => {
    const job = build();
    const stands = job.removal('On stands', { did: 'safe' }).isolation('load');
    const arm = job.removal('Arm');
    const set = arm.set(2, { laterWhen: 'on the ground' });
    const later = () => plan(job).later;
    expect(later()).toEqual([
      { stepId: `T:${set.id}`, setId: set.id, when: 'on the ground', holesLeft: 2, due: false },
    ]);
    for (const hole of set.holes) job.deed(hole, 'tightened');
    job.deed(stands, 'given back');
    expect(later(), 'tight in the air is not tight on the ground').toMatchObject([
      { holesLeft: 2, due: true },
    ]);
    job.deed(set.holes[0] ?? '', 'tightened');
    expect(later()).toMatchObject([{ holesLeft: 1 }]);
    job.deed(set.holes[1] ?? '', 'tightened');
    expect(later()).toEqual([]);
  });
});

describe('cautions stand where the hand goes', () => {
  const said = (title: string, more: Partial<Row<'removal'>> = {}, part = ''): readonly string[] => {
    const job = build();
    const step = job.removal(title, more);
    if (part !== '') step.part(part);
    return stepOf(job, 'S').cautions;
  };

  test.each([
    ['Brake caliper', 'Brake dust harms the lungs'],
    ['Airbag unit', 'Airbags and belts'],
    ['Belt restraint', 'Airbags and belts'],
    ['Refrigerant hose', 'licensed technicians'],
    ['Spring seat', 'proper compressor'],
    ['Strut', 'proper compressor'],
    ['Boiler lid', 'scalds'],
    ['Steam pipe', 'scalds'],
  ])('%s', (title, caution) => {
    expect(said(title)).toEqual([expect.stringContaining(caution)]);
    expect(said('', { typed: title })).toEqual([expect.stringContaining(caution)]);
    expect(said('Step', {}, title)).toEqual([expect.stringContaining(caution)]);
  });

  test('what was written comes first, and a plain cover has none', () => {
    expect(said('Brake drum', { caution: 'Heavy.' })).toEqual([
      'Heavy.',
      expect.stringContaining('Brake dust'),
    ]);
    expect(said('Cover')).toEqual([]);
    expect(said('Springboard, photograph')).toEqual([]);
  });

  test.each([
    ['electricity', 'lock out the supply'],
    ['pressure', 'Let all pressure off'],
    ['spring', 'stored spring'],
    ['load', 'Never go under a load'],
    ['motion', 'Keep clear of everything that can turn'],
    ['ignition', 'cannot start by itself'],
    ['fuel', 'Fuel vapour burns'],
    ['heat', 'hot fluids scald'],
    ['other', 'really safe'],
  ] as const)('giving %s back', (energy, caution) => {
    const job = build();
    job.removal('Boiler off', { did: 'safe', caution: 'Heavy.' }).isolation(energy);
    expect(stepOf(job, 'I').cautions).toEqual([expect.stringContaining(caution)]);
  });

  test('bleeding is done on a machine that runs', () => {
    const job = build();
    job.fluid('Oil', [job.removal('Plug').set(1).id], { bleed: true });
    expect(stepOf(job, 'C2').cautions).toEqual([expect.stringContaining('Running machine')]);
    expect(stepOf(job, 'C1').cautions).toEqual([]);
  });
});
