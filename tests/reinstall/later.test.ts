import { describe, expect, test } from 'vitest';
import { planJob } from '../../core/reinstall/index.ts';
import { build, type JobBuilder } from '../support/build.ts';

const plan = (job: JobBuilder) => planJob(job.state(), job.at);
const has = (job: JobBuilder, from: string, to: string): boolean =>
  plan(job).edges.some((edge) => edge.from === from && edge.to === to);

describe('a final tightening comes after what makes its condition true', () => {
  const later = (when: string) => {
    const job = build();
    const mains = job.removal('Off', { did: 'safe' }).isolation('electricity');
    const stands = job.removal('On stands', { did: 'safe' }).isolation('load');
    const oil = job.fluid('Oil', [job.removal('Hose').connection('Hose')], {
      liveEnergy: 'motion',
      bleed: true,
    });
    const run = job.ownStep('Run it', { liveEnergy: 'electricity' });
    const align = job.ownStep('Wheel alignment');
    const set = job.removal('Arm').set(2, { laterWhen: when });
    const after = () =>
      plan(job)
        .edges.filter((edge) => edge.to === `T:${set.id}` && edge.why === when)
        .map((edge) => edge.from)
        .sort();
    return { job, after, mains, stands, oil, run, align };
  };

  test.each([
    'on the ground',
    'at ride height',
    'lowered',
    'on its wheels',
    'under load',
    'loaded',
    'with its weight on',
  ])('%s: after lowering', (when) => {
    const { after, stands } = later(when);
    expect(after()).toEqual([`I:${stands}`]);
  });

  test.each(['warm', 'hot', 'after a run', 'when running', 'after heat'])(
    '%s: after all that runs',
    (when) => {
      const { after, oil, run } = later(when);
      expect(after()).toEqual([`C2:${oil}`, `U:${run}`].sort());
    },
  );

  test('warm, where nothing runs: after the last energy', () => {
    const job = build();
    const mains = job.removal('Off', { did: 'safe' }).isolation('electricity');
    job.removal('On stands', { did: 'safe' }).isolation('load');
    const set = job.removal('Arm').set(1, { laterWhen: 'warm' });
    expect(has(job, `I:${mains}`, `T:${set.id}`)).toBe(true);
    const bare = build();
    const alone = bare.removal('Arm').set(1, { laterWhen: 'warm' });
    expect(plan(bare).edges.filter((edge) => edge.to === `T:${alone.id}`)).toHaveLength(1);
  });

  test('after an own step that is called so, and after no other word that happens to be there', () => {
    const { after, align } = later('after ALIGNMENT');
    expect(after()).toEqual([`U:${align}`]);
    expect(later('after a week').after()).toEqual([]);
  });

  test('and after every hole of its set, the shared ones too', () => {
    const job = build();
    const arm = job.removal('Arm');
    const set = arm.set(2, { laterWhen: 'later' });
    const home = job.removal('Pipe').loose().part('Clip');
    job.holds(set.holes[1] ?? '', home);
    expect(has(job, `S:${arm.id}`, `T:${set.id}`) && has(job, `F:${set.holes[1]}`, `T:${set.id}`)).toBe(true);
  });

  test('a re-check comes after the final tightening where there is one', () => {
    const job = build();
    const arm = job.removal('Arm');
    const set = arm.set(2, { laterWhen: 'warm', recheck: true });
    const plain = arm.set(2, { recheck: true });
    expect(
      plan(job)
        .edges.filter((edge) => edge.to.startsWith('K:'))
        .map((edge) => [edge.from, edge.to, edge.rule]),
    ).toEqual([
      [`T:${set.id}`, `K:${set.id}`, 'recheck'],
      [`S:${arm.id}`, `K:${plain.id}`, 'recheck'],
    ]);
  });

  test('what came off beside a support may go back later: the tightening on the ground still counts', () => {
    const job = build();
    const cover = job.removal('Cover');
    const panel = cover.part('Panel');
    const load = cover.isolation('load', { scope: 'listed' });
    const set = job.removal('Arm').loose().set(1, { laterWhen: 'on the ground' });
    job
      .deed(set.holes[0] ?? '', 'started')
      .deed(load, 'given back')
      .deed(set.holes[0] ?? '', 'tightened');
    job.deed(panel, 'fitted').deed(cover.id, 'done');
    const state = (kind: string) => plan(job).steps.find((step) => step.kind === kind)?.state;
    expect([state('I'), state('T')]).toEqual(['done', 'done']);
  });

  test('a tightening before the giving back does not count as the final one', () => {
    const job = build();
    const load = job.removal('On stands', { did: 'safe' }).isolation('load');
    const set = job.removal('Arm').set(1, { laterWhen: 'on the ground' });
    job.deed(set.holes[0] ?? '', 'tightened').deed(load, 'given back');
    expect(plan(job).steps.find((step) => step.kind === 'T')?.state).not.toBe('done');
  });
});
