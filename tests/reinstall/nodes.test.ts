import { describe, expect, test } from 'vitest';
import type { Row } from '../../core/model/tables.ts';
import { planJob } from '../../core/reinstall/index.ts';
import { build, type JobBuilder } from '../support/build.ts';

const plan = (job: JobBuilder) => planJob(job.state(), job.at);
const list = (job: JobBuilder): string[] => plan(job).steps.map((step) => step.id);
const has = (job: JobBuilder, from: string, to: string): boolean =>
  plan(job).edges.some((edge) => edge.from === from && edge.to === to);

describe('which steps there are', () => {
  test('a fluid is filled where it was opened or drained, and bled where there is something to do when it is full', () => {
    const kinds = (more: Partial<Row<'fluid'>>, opened: boolean, deed = false): string[] => {
      const job = build();
      const hose = job.removal('Hose').connection('Hose');
      const fluid = job.fluid('Oil', opened ? [hose] : [], more);
      if (deed) job.deed(fluid, 'drained', { value: 100 });
      return plan(job)
        .steps.map((step) => step.kind)
        .filter((kind) => kind.startsWith('C'));
    };
    expect(kinds({}, false)).toEqual([]);
    expect(kinds({ drainedMl: 0 }, false)).toEqual([]);
    expect(kinds({ drainedMl: 5 }, false)).toEqual(['C1']);
    expect(kinds({}, false, true)).toEqual(['C1']);
    expect(kinds({ bleed: true }, true)).toEqual(['C1', 'C2']);
    expect(kinds({ liveEnergy: 'motion' }, true)).toEqual(['C1', 'C2']);
    expect(kinds({ bleed: true }, false)).toEqual([]);
  });

  test('nothing of a removal that is only planned has a step', () => {
    const job = build();
    const planned = job.removal('Planned', { phase: 'planned' });
    planned.set(2, { laterWhen: 'warm', recheck: true });
    planned.isolation('load');
    job.fluid('Oil', [planned.connection('Hose')]);
    expect(plan(job).steps).toEqual([]);
  });

  test('what only made something safe has a step of its own where it took something off and isolated nothing', () => {
    const job = build();
    job.removal('Looked', { did: 'safe' });
    const guard = job.removal('Guard off', { did: 'safe' });
    guard.part('Guard');
    const cap = job.removal('Cap off', { did: 'safe' });
    cap.set(1);
    const plug = job.removal('Plug off', { did: 'safe' });
    plug.connection('Plug');
    expect(list(job)).toEqual([`S:${plug.id}`, `S:${cap.id}`, `S:${guard.id}`]);
  });

  test('a part that is carried over goes with the parts that it sits on', () => {
    const job = build();
    const off = job.removal('Engine');
    const engine = off.part('Engine');
    const head = job.part('Head', { parentId: engine });
    const sensor = job.removal('Sensor').loose().part('Sensor', { fate: 'carry over', carryToId: head });
    expect(has(job, `B:${sensor}`, `S:${off.id}`)).toBe(true);
    const nowhere = job
      .removal('Lamp')
      .loose()
      .part('Lamp', { fate: 'carry over', carryToId: job.part('Free') });
    expect(plan(job).steps.some((step) => step.id === `B:${nowhere}`)).toBe(true);
    const round = job.part('Round');
    job.set('part', round, { parentId: round });
    job.removal('Knob').loose().part('Knob', { fate: 'carry over', carryToId: round });
    expect(plan(job).undecided).toEqual([]);
  });

  test('a part that is left out holds no bolt', () => {
    const job = build();
    const set = job.removal('Bracket').set(1);
    const clip = job.removal('Pipe').loose().part('Clip');
    job.holds(set.holes[0] ?? '', clip);
    expect(plan(job).steps.map((step) => step.kind)).toContain('F');
    job.set('part', clip, { fate: 'leave out' });
    expect(plan(job).steps.map((step) => step.kind)).not.toContain('F');
  });

  test('nor is a hole that was found empty waited for, until somebody wants it filled', () => {
    const job = build();
    const set = job.removal('Bracket').set(1);
    const hole = set.holes[0] ?? '';
    job.holds(hole, job.removal('Pipe').loose().part('Clip'));
    job.set('position', hole, { found: 'empty' });
    expect(plan(job).steps.map((step) => step.kind)).toEqual(['S', 'S']);
    job.want(hole, 'needed');
    expect(plan(job).steps.map((step) => step.kind)).toContain('F');
    job.set('want', job.rows.want[0]?.id ?? '', { state: 'dropped' });
    job.set('position', hole, { fateWhy: 'fill it' });
    expect(plan(job).steps.map((step) => step.kind)).toContain('F');
    job.set('position', hole, { fate: 'leave out' });
    expect(plan(job).steps.map((step) => step.kind)).not.toContain('F');
    job.set('position', hole, { fate: 'blocked' });
    expect(plan(job).steps.map((step) => step.kind)).toContain('F');
  });
});

describe('what covers what', () => {
  const covers = (a: Partial<Row<'removal'>>, b: Partial<Row<'removal'>>): boolean | undefined => {
    const job = build();
    job.removal('A', a);
    job.removal('B', b);
    return plan(job).edges[0]?.covers;
  };

  test('an assumed need covers where the two may lie in each other’s way: the same place or side, or none said', () => {
    expect(covers({}, {})).toBe(true);
    expect(covers({ place: 'front' }, { place: ' Front' })).toBe(true);
    expect(covers({ place: 'front' }, {})).toBe(true);
    expect(covers({ place: 'front' }, { place: 'rear' })).toBe(false);
    expect(covers({ side: 'left' }, { side: 'right' })).toBe(false);
    expect(covers({ side: 'left' }, { side: 'both' })).toBe(true);
    expect(covers({ side: 'both' }, { side: 'right' })).toBe(true);
    expect(covers({ side: 'left' }, {})).toBe(true);
    expect(covers({ side: 'left', place: 'front' }, { side: 'left', place: 'rear' })).toBe(false);
  });

  test('a confirmed one covers wherever they are', () => {
    expect(covers({ place: 'front' }, { place: 'rear', defaultNeed: 'confirmed' })).toBe(true);
  });
});
