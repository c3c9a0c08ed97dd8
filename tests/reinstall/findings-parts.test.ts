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

  test('nobody wrote down where it lies: said until it is back, and not of what is away, aside, left out or renewed', () => {
    const job = build();
    const step = job.removal('Step');
    const lid = step.part('Lid');
    step.part('Bracket', { stowId: job.bag() });
    step.part('Loom', { how: 'aside' });
    step.part('Shield', { fate: 'leave out' });
    job.away(step.part('Head'));
    step.part('Gasket', { renew: 'must' });
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
