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

describe('inside a step', () => {
  test('the order is the trade’s: openings free and clean, what sits inside, seals and sealant, the part to its marks, by hand, tight, supports, measures', () => {
    const job = build();
    const step = job.removal('Housing', { noteBack: 'Mind the dowel.' });
    const rag = step.temporary('Rag', 'blocks', { qty: 2 });
    const stand = step.temporary('Stand', 'supports');
    const cage = step.temporary('Caging bolt', 'cages');
    const lock = step.temporary('Timing lock', 'locks');
    const housing = step.part('Housing');
    const shim = step.part('Shim', { kind: 'shim', qty: 3 });
    const cap = step.part('Cap', { ownPlace: true, stamped: '2', ownPlaceText: 'arrow to the front' });
    const ring = step.part('O-ring', { kind: 'o-ring', renew: 'must' });
    job.consumable(housing, { name: 'Sealant', skinMinutes: 10, cureMinutes: 90, cureBefore: 'fill' });
    const inner = step.connection('Inner pipe', { kind: 'pipe', joint: 'flare', hidden: true });
    const union = step.connection('Delivery', { kind: 'union', joint: 'face', goesTo: 'the pump' });
    const plug = step.connection('Sensor', { ends: 2 });
    step.mark('Paint on both');
    step.mark('Loom under the bracket', { kind: 'routing' });
    step.action('Pulled the plug', plug).action('Turned it to the stop');
    const set = step.set(3, { name: 'cover bolts', torqueMnm: 25_000, torqueTyped: '25 Nm' });
    const play = step.measure('End float', { limitLow: 0.1, limitHigh: 0.2, asFoundTyped: '0.15 mm' });
    expect(planJob(job.state(), job.at).steps[0]?.notes).toEqual(['Mind the dowel.']);
    expect(said(job)).toEqual([
      'Take out: 2 × Rag, before the opening is closed.',
      'Clean the faces and look at them.',
      'Fit: 3 × Shim.',
      'Back exactly where it was: Cap (2, arrow to the front).',
      'Fit new: O-ring.',
      'Put on: Sealant; skins in 10 minutes; it cures 90 minutes before you fill.',
      'Join: Inner pipe, before the part goes home.',
      'Fit: Housing.',
      'To its marks: Paint on both',
      'Route as it was: Loom under the bracket',
      'Undo: Turned it to the stop.',
      'Start all by hand: 3 × bolt M8 × 1.25 × 30 mm, hex 13 mm, class 8.8.',
      'Start by hand: Delivery.',
      'Tighten cover bolts to 25 Nm, in order and in rounds.',
      'Join: Delivery to the pump.',
      'Join: Sensor, 2 ends.',
      'Take out: Stand, now that what it holds is fast.',
      'Take out: Caging bolt, now that everything round it is tight.',
      'Take out: Timing lock, before the first turn.',
      'Measure: End float (0.1 to 0.2 mm); as found 0.15 mm.',
    ]);
    expect(ticked(job).some((line) => line.startsWith('x'))).toBe(false);
    for (const id of [rag, stand, cage, lock]) job.deed(id, 'taken out');
    for (const id of [housing, shim, cap, ring]) job.deed(id, 'fitted', { fresh: id === ring });
    for (const id of [inner, union, plug]) job.deed(id, 'joined');
    for (const id of set.holes) job.deed(id, 'started');
    job.deed(play, 'measured', { value: 0.15 });
    job.deed(housing, 'put on');
    expect(ticked(job).filter((line) => line.startsWith('-'))).toEqual([
      '- match',
      '- route',
      '- as logged',
      '- tighten',
    ]);
    for (const id of set.holes) job.deed(id, 'tightened');
    expect(ticked(job).filter((line) => line.startsWith('-'))).toEqual([]);
  });

  test('an action names the things it is about, so that one touch ticks them', () => {
    const job = build();
    const step = job.removal('Cover');
    const cover = step.part('Cover');
    const union = step.connection('', { kind: 'union' });
    const pipe = step.connection('Return', { kind: 'other', joint: 'port' });
    const set = step.set(2, { name: '' });
    const actions = planJob(job.state(), job.at).steps[0]?.actions ?? [];
    expect(actions.map((one) => [one.code, one.thingIds])).toEqual([
      ['fit', [cover]],
      ['start', set.holes],
      ['start', [union, pipe]],
      ['tighten', set.holes],
      ['join', [union]],
      ['join', [pipe]],
    ]);
    expect(actions[2]?.sentence).toBe('Start by hand: union, Return.');
    expect(actions[3]?.sentence).toBe('Tighten 2 fasteners.');
    expect(actions[4]?.sentence).toBe('Join: union.');
  });

  test('unions are started by hand only where there are threads to wait for; a started or joined one is started', () => {
    const job = build();
    const step = job.removal('Pipe');
    const union = step.connection('Union', { kind: 'union' });
    expect(ticked(job)).toEqual(['- join']);
    const set = step.set(1);
    expect(ticked(job)).toEqual(['- start', '- start', '- tighten', '- join']);
    job.deed(union, 'started');
    expect(ticked(job)).toEqual(['- start', 'x start', '- tighten', '- join']);
    job.deed(set.holes[0] ?? '', 'tightened').deed(union, 'joined');
    expect(ticked(job)).toEqual(['x start', 'x start', 'x tighten', 'x join']);
  });

  test('mixed lengths are said hole by hole, from the bag they lie in, and all heads must stand out alike', () => {
    const job = build();
    const bag = job.bag('4');
    const set = job
      .removal('Cover')
      .set(3, { name: 'bolts', stowId: bag, renew: 'must', torqueFrom: 'by feel' });
    job.set('position', set.holes[2] ?? '', { specId: job.spec({ lengthUm: 45_000 }) });
    expect(said(job)).toEqual([
      'Start all by hand: new bolt M8 × 1.25 × 30 mm, hex 13 mm, class 8.8 in holes 1, 2; bolt M8 × 1.25 × 45 mm, hex 13 mm, class 8.8 in hole 3, from bag 4. All heads must stand out alike.',
      'Tighten bolts, snug by feel, in order and in rounds.',
    ]);
  });

  test('two bolts need no order of tightening; threadlock is said where the hand goes', () => {
    const job = build();
    job.removal('Cover').set(2, { name: 'bolts', lubrication: 'threadlock' });
    expect(said(job)[1]).toBe('Tighten bolts, with threadlock.');
  });

  test('what is tightened finally later is only snugged now, and says when', () => {
    const job = build();
    const set = job
      .removal('Arm')
      .set(2, { name: 'arm bolts', laterWhen: 'on the ground', torqueTyped: '90 Nm' });
    expect(said(job)[1]).toBe('Snug only; final tightening on the ground.');
    expect(said(job, 'T')).toEqual(['Final tightening to 90 Nm, on the ground.']);
    expect(ticked(job, 'T')).toEqual(['- final tighten']);
    for (const hole of set.holes) job.deed(hole, 'started');
    expect(ticked(job)).toEqual(['x start', 'x snug']);
    expect(ticked(job, 'T')).toEqual(['- final tighten']);
    job.deed(set.holes[0] ?? '', 'tightened').deed(set.holes[1] ?? '', 'left out');
    expect(ticked(job, 'T')).toEqual(['x final tighten']);
  });

  test('a repaired hole is tried by hand first: it may take another size', () => {
    const job = build();
    const set = job.removal('Cover').set(2);
    const hole = set.holes[1] ?? '';
    job.set('position', hole, { fate: 'blocked', fateWhy: 'broken stud' });
    expect(ticked(job)).toEqual(['- start', '- tighten']);
    job.deed(hole, 'repaired');
    expect(said(job)[0]).toBe('Try hole 2 by hand: it was repaired, and may take another size or torque.');
    job.deed(hole, 'started');
    expect(ticked(job)).toEqual(['x check hole', '- start', '- tighten']);
    job.deed(set.holes[0] ?? '', 'tightened').deed(hole, 'tightened');
    expect(ticked(job)).toEqual(['x check hole', 'x start', 'x tighten']);
  });

  test('faces are cleaned under a gasket, a seal or a part that is to be cleaned, and not elsewhere', () => {
    const clean = (more: Partial<Row<'part'>>): boolean => {
      const job = build();
      job.removal('Step').part('Thing', more);
      return ticked(job).includes('- clean');
    };
    expect(clean({ kind: 'gasket' })).toBe(true);
    expect(clean({ kind: 'seal' })).toBe(true);
    expect(clean({ kind: 'o-ring' })).toBe(true);
    expect(clean({ fate: 'clean and refit' })).toBe(true);
    expect(clean({ kind: 'filter' })).toBe(false);
    expect(clean({})).toBe(false);
  });

  test('sleeves, keys and own-place pieces go in before seals, seals and filters before the part', () => {
    const job = build();
    const step = job.removal('Step');
    step.part('Housing');
    step.part('Filter', { kind: 'filter' });
    step.part('Gasket', { kind: 'gasket', fate: 'renew' });
    step.part('Seal', { kind: 'seal' });
    step.part('Key', { kind: 'key' });
    step.part('Sleeve', { kind: 'sleeve' });
    step.part('Bearing', { ownPlace: true });
    expect(said(job).filter((line) => !line.startsWith('Clean'))).toEqual([
      'Fit: Key.',
      'Fit: Sleeve.',
      'Back exactly where it was: Bearing.',
      'Fit: Filter.',
      'Fit new: Gasket.',
      'Fit: Seal.',
      'Fit: Housing.',
    ]);
  });

  test('what was moved aside is brought back, what was opened is closed, what is left out is said with its reason', () => {
    const job = build();
    const step = job.removal('Step');
    step.part('Loom', { how: 'aside' });
    step.part('Flap', { how: 'opened' });
    step.part('', {});
    step.part('Shield', { fate: 'leave out', fateWhy: 'rusted through' });
    step.part('Clip', { fate: 'leave out', qty: 2 });
    expect(said(job)).toEqual([
      'Bring back: Loom.',
      'Close: Flap.',
      'Fit: the part.',
      'Leave out: Shield, rusted through.',
      'Leave out: 2 × Clip.',
    ]);
    expect(ticked(job).slice(-2)).toEqual(['x fit', 'x fit']);
  });

  test('a measure says the limits that are known, and none where there are none', () => {
    const job = build();
    const step = job.removal('Step');
    step.measure('Play', { limitHigh: 2, unit: 'mm' });
    step.measure('Sag', { limitLow: 1, unit: 'mm' });
    step.measure('Threads showing', { unit: '' });
    expect(said(job)).toEqual([
      'Measure: Play (… to 2 mm).',
      'Measure: Sag (1 to … mm).',
      'Measure: Threads showing.',
    ]);
  });

  test('a sealant names itself or its kind, and says a cure only where something waits for it', () => {
    const job = build();
    const step = job.removal('Step');
    const set = step.set(1, { name: 'bolts' });
    const hose = step.connection('Hose');
    job.consumable(step.id, { name: '', kind: 'grease' });
    const lock = job.consumable(set.id, { name: 'Threadlock', cureMinutes: 30 });
    job.consumable(hose, { name: 'Paste', skinMinutes: 5 });
    expect(said(job).filter((line) => line.startsWith('Put on'))).toEqual([
      'Put on: grease.',
      'Put on: Paste; skins in 5 minutes.',
      'Put on: Threadlock.',
    ]);
    job.set('consumable', lock, { putAt: job.at });
    expect(ticked(job).filter((line) => line.endsWith('put on'))).toEqual([
      '- put on',
      '- put on',
      'x put on',
    ]);
  });

  test('an aid is put in with its step and comes out when its work is done', () => {
    const job = build();
    const step = job.removal('Piston');
    step.part('Piston');
    const pin = job.temporary('Slave pin', { role: 'aid', stepThingId: step.id, qty: 2 });
    expect(said(job)).toEqual([
      'Put in: 2 × Slave pin.',
      'Fit: Piston.',
      'Take out: 2 × Slave pin, now that its work is done.',
    ]);
    expect(ticked(job)).toEqual(['- put in', '- fit', 'x take out']);
    job.deed(pin, 'put in');
    expect(ticked(job)).toEqual(['x put in', '- fit', '- take out']);
    job.deed(pin, 'taken out');
    expect(ticked(job)).toEqual(['x put in', '- fit', 'x take out']);
  });
});
