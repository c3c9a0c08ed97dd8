import { describe, expect, test } from 'vitest';
import type { Row } from '../../core/model/tables.ts';
import { planJob } from '../../core/reinstall/index.ts';
import { build, type JobBuilder } from '../support/build.ts';

const plan = (job: JobBuilder) => planJob(job.state(), job.at);
const list = (job: JobBuilder): string[] => plan(job).steps.map((step) => step.id);
const has = (job: JobBuilder, from: string, to: string): boolean =>
  plan(job).edges.some((edge) => edge.from === from && edge.to === to);
/** Whether one step comes before the other by the edges, directly or through others. */
const comesBefore = (job: JobBuilder, from: string, to: string): boolean => {
  const { edges } = plan(job);
  const seen = new Set([from]);
  const open = [from];
  for (let next = open.pop(); next !== undefined; next = open.pop())
    for (const edge of edges)
      if (edge.from === next && !seen.has(edge.to)) {
        seen.add(edge.to);
        open.push(edge.to);
      }
  return from !== to && seen.has(to);
};

describe('energies are given back after the work that they were made safe for', () => {
  test('dead work comes before the first that all of it was made safe for, and the line carries it on', () => {
    const job = build();
    const first = job.removal('Off', { did: 'safe' }).isolation('electricity');
    const second = job.removal('On stands', { did: 'safe' }).isolation('load', { scope: 'listed' });
    const third = job.removal('Caged', { did: 'safe' }).isolation('spring');
    const work = job.removal('Work');
    expect(list(job)).toEqual([`S:${work.id}`, `I:${third}`, `I:${second}`, `I:${first}`]);
    expect(has(job, `S:${work.id}`, `I:${third}`)).toBe(true);
    expect(has(job, `S:${work.id}`, `I:${second}`)).toBe(false);
    expect(has(job, `I:${third}`, `I:${second}`) && has(job, `I:${second}`, `I:${first}`)).toBe(true);
  });

  test('inside one removal the reverse of its actions', () => {
    const job = build();
    const safe = job.removal('Off', { did: 'safe' });
    const [tap, mains] = [safe.isolation('pressure'), safe.isolation('electricity')];
    safe.action('Pull the plug', mains).action('Shut the tap', tap);
    expect(list(job)).toEqual([`I:${tap}`, `I:${mains}`]);
  });

  test('an isolation of one fluid waits for what opens that fluid and its fill, and for nothing else', () => {
    const job = build();
    const pipe = job.removal('Pipe');
    const fluid = job.fluid('Air', [pipe.connection('Pipe')], { liveEnergy: 'pressure' });
    const other = job.removal('Other').loose();
    const vented = job
      .removal('Vented', { did: 'safe' })
      .isolation('pressure', { how: 'let off', scope: 'fluid', fluidId: fluid });
    expect(has(job, `S:${pipe.id}`, `I:${vented}`)).toBe(true);
    expect(has(job, `C1:${fluid}`, `I:${vented}`)).toBe(true);
    expect(comesBefore(job, `S:${other.id}`, `I:${vented}`)).toBe(false);
    expect(comesBefore(job, `I:${vented}`, `C2:${fluid}`)).toBe(true);
  });

  test('a fluid isolation of which nobody said the fluid is made safe for everything', () => {
    const job = build();
    const work = job.removal('Work');
    const vented = job.removal('Vented', { did: 'safe' }).isolation('pressure', { scope: 'fluid' });
    expect(has(job, `S:${work.id}`, `I:${vented}`)).toBe(true);
  });

  test.each(['main valve shut', 'stop-cock shut', 'tap shut', 'cock closed'])(
    'a valve feeds the fill: %s',
    (how) => {
      const job = build();
      const water = job.fluid('Water', [job.removal('Hose').connection('Hose')], { liveEnergy: 'pressure' });
      const valve = job
        .removal('Shut', { did: 'safe' })
        .isolation('pressure', { how, scope: 'fluid', fluidId: water });
      expect(comesBefore(job, `I:${valve}`, `C1:${water}`)).toBe(true);
    },
  );

  test('so does any other energy of that fluid but the one that the live work needs', () => {
    const job = build();
    const oil = job.fluid('Oil', [job.removal('Hose').connection('Hose')], {
      liveEnergy: 'pressure',
      bleed: true,
    });
    const heat = job.removal('Cold', { did: 'safe' }).isolation('heat', { scope: 'fluid', fluidId: oil });
    expect(comesBefore(job, `I:${heat}`, `C1:${oil}`)).toBe(true);
  });

  test('what opened a fluid by being made safe is closed with its isolation, so the fill comes after it', () => {
    const job = build();
    const safe = job.removal('Drained and vented', { did: 'safe' });
    const vent = safe.isolation('pressure');
    const oil = job.fluid('Oil', [safe.id], { drainedMl: 100 });
    expect(comesBefore(job, `I:${vent}`, `C1:${oil}`)).toBe(true);
  });

  test('bleeding without an energy is dead work; with one it comes after that energy, its own rather than the common one', () => {
    const job = build();
    const power = job.removal('Off', { did: 'safe' }).isolation('electricity');
    const end = job.removal('Hose').connection('Hose');
    const oil = job.fluid('Oil', [end], { bleed: true });
    expect(comesBefore(job, `C2:${oil}`, `I:${power}`)).toBe(true);
    job.set('fluid', oil, { liveEnergy: 'electricity' });
    expect(comesBefore(job, `I:${power}`, `C2:${oil}`)).toBe(true);
    expect(comesBefore(job, `C1:${oil}`, `I:${power}`)).toBe(true);
  });

  test('an own step that needs an energy comes after the last of it; a dead one before; a re-check has no part in it', () => {
    const job = build();
    const power = job.removal('Off', { did: 'safe' }).isolation('electricity');
    const tried = job.ownStep('Try it', { liveEnergy: 'electricity' });
    const dead = job.ownStep('Grease');
    const check = job.ownStep('Listen', { kind: 'recheck', liveEnergy: 'electricity' });
    expect(has(job, `I:${power}`, `U:${tried}`)).toBe(true);
    expect(has(job, `U:${dead}`, `I:${power}`)).toBe(true);
    expect(plan(job).edges.some((edge) => edge.from === `K:${check}` || edge.to === `K:${check}`)).toBe(
      false,
    );
  });

  test('a dead own step that was put behind one energy still comes before the next', () => {
    const job = build();
    const mains = job.removal('Off', { did: 'safe' }).isolation('electricity');
    const stands = job.removal('On stands', { did: 'safe' }).isolation('load');
    const own = job.ownStep('Wash');
    job.first(stands, own);
    expect(list(job)).toEqual([`I:${stands}`, `U:${own}`, `I:${mains}`]);
  });
});

describe('a leak check comes before what hides its joint', () => {
  const hidden = (thing: 'connection' | 'part' | 'position', more: Partial<Row<'fluid'>> = {}) => {
    const job = build();
    const shield = job.removal('Shield');
    const pipe = job.removal('Pipe');
    const ids = {
      connection: () => pipe.connection('Pipe', { hidden: true }),
      part: () => pipe.part('Pipe', { hidden: true }),
      position: () => {
        const hole = pipe.set(1).holes[0] ?? '';
        job.set('position', hole, { hidden: true });
        return hole;
      },
    };
    const fluid = job.fluid('Oil', [ids[thing]()], more);
    return { job, shield, pipe, fluid };
  };

  test.each(['connection', 'part', 'position'] as const)('a hidden %s', (thing) => {
    const { job, shield, fluid } = hidden(thing);
    expect(
      plan(job).edges.find((edge) => edge.from === `C1:${fluid}` && edge.to === `S:${shield.id}`)?.rule,
    ).toBe('hides a joint');
  });

  test('but not where a valve must be opened for the fill: then it comes last anyway', () => {
    const { job, shield, fluid } = hidden('connection');
    job
      .removal('Shut', { did: 'safe' })
      .isolation('pressure', { how: 'tap', scope: 'fluid', fluidId: fluid });
    expect(has(job, `C1:${fluid}`, `S:${shield.id}`)).toBe(false);
  });

  test('nor a step further down than another opening of the same fluid', () => {
    const { job, shield, fluid } = hidden('connection');
    job.opens(fluid, shield.connection('Other end'));
    expect(has(job, `C1:${fluid}`, `S:${shield.id}`)).toBe(false);
  });
});
