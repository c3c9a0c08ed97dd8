import { describe, expect, test } from 'vitest';
import { planJob } from '../../core/reinstall/index.ts';
import { build, type JobBuilder } from '../support/build.ts';

const list = (job: JobBuilder): string[] => planJob(job.state(), job.at).steps.map((step) => step.id);

describe('among steps that are free the list chooses', () => {
  test('shared holes, fluids and drain plugs as soon as they may be, then what came off last', () => {
    const job = build();
    const a = job.removal('A').loose();
    const oil = job.fluid('Oil', [a.connection('Hose')], { bleed: true });
    const b = job.removal('B').loose();
    const set = b.set(2);
    const c = job.removal('C').loose();
    job.holds(set.holes[1] ?? '', c.part('Clip'));
    const drain = job.removal('Drain plug', { did: 'opened' }).loose();
    const water = job.fluid('Water', [drain.set(1).id], { drainedMl: 10 });
    const d = job.removal('D').loose();
    expect(list(job)).toEqual([
      `S:${drain.id}`,
      `C1:${water}`,
      `S:${d.id}`,
      `S:${c.id}`,
      `S:${b.id}`,
      `F:${set.holes[1]}`,
      `S:${a.id}`,
      `C1:${oil}`,
      `C2:${oil}`,
    ]);
  });

  test('own steps and carried-over parts just before the step they were put before; own steps without a place after all removals', () => {
    const job = build();
    const a = job.removal('A');
    const new1 = a.part('New', { how: 'fitted new' });
    const b = job.removal('B');
    const moved = job.removal('C').part('Elbow', { fate: 'carry over', carryToId: new1 });
    const first = job.ownStep('First');
    const second = job.ownStep('Second');
    const free = job.ownStep('Free');
    job.first(second, b.id);
    job.first(first, b.id);
    expect(list(job)).toEqual(
      [`U:${first}`, `U:${second}`, `S:${job.rows.removal[2]?.id}`, `S:${b.id}`, `S:${a.id}`, `U:${free}`]
        .flatMap((id) => (id === `S:${job.rows.removal[2]?.id}` ? [`B:${moved}`, id] : [id]))
        .sort((x, y) => list(job).indexOf(x) - list(job).indexOf(y)),
    );
    const at = (id: string) => list(job).indexOf(id);
    expect(at(`U:${first}`)).toBe(at(`S:${b.id}`) - 2);
    expect(at(`U:${second}`)).toBe(at(`S:${b.id}`) - 1);
    expect(at(`B:${moved}`)).toBe(at(`S:${job.rows.removal[2]?.id}`) - 1);
    expect(list(job).at(-1)).toBe(`U:${free}`);
  });

  test('own steps among themselves in the order in which they were written, whatever they stand before', () => {
    const job = build();
    const a = job.removal('A');
    const power = job.removal('Off', { did: 'safe' }).isolation('electricity');
    const [late, soon] = [job.ownStep('Late', { ord: 'z' }), job.ownStep('Soon', { ord: 'b' })];
    for (const own of [late, soon]) job.first(a.id, own);
    expect(list(job)).toEqual([`S:${a.id}`, `U:${soon}`, `U:${late}`, `I:${power}`]);
  });

  test('an own step that was put before another own step or an isolation comes as soon as it may', () => {
    const job = build();
    const a = job.removal('A');
    const b = job.removal('B');
    const [look, wash] = [job.ownStep('Look'), job.ownStep('Wash')];
    job.first(wash, look);
    job.first(look, a.id);
    expect(list(job)).toEqual([`U:${wash}`, `U:${look}`, `S:${b.id}`, `S:${a.id}`]);
    const other = build();
    const c = other.removal('C');
    const mains = other.removal('Off', { did: 'safe' }).isolation('electricity');
    const own = other.ownStep('Look');
    other.first(own, mains);
    expect(list(other)).toEqual([`S:${c.id}`, `U:${own}`, `I:${mains}`]);
  });

  test('final tightenings before isolations, re-checks last; the latest in the log first', () => {
    const job = build();
    const a = job.removal('A');
    const b = job.removal('B');
    const sets = [a, b].map((removal) => removal.set(1, { laterWhen: 'some day', recheck: true }).id);
    const power = job.removal('Off', { did: 'safe' }).isolation('electricity');
    const look = job.ownStep('Look again', { kind: 'recheck' });
    expect(list(job)).toEqual([
      `S:${b.id}`,
      `S:${a.id}`,
      `T:${sets[1]}`,
      `T:${sets[0]}`,
      `I:${power}`,
      `K:${sets[1]}`,
      `K:${sets[0]}`,
      `K:${look}`,
    ]);
  });
});

describe('an order of the user’s', () => {
  test('between things means the steps in which they are finished', () => {
    const job = build();
    const a = job.removal('A');
    const b = job.removal('B').loose();
    const things = [
      b.part('p'),
      b.connection('c'),
      b.set(1).id,
      b.measure('m'),
      b.mark('k'),
      b.temporary('t', 'blocks'),
    ];
    for (const thing of things) {
      const state = job.state();
      const row = { id: 'x', jobId: job.rows.job.id, beforeId: a.id, afterId: thing, why: 'so' };
      const plan = planJob({ ...state, backOrder: [row] }, 0);
      expect(
        plan.edges.filter((edge) => edge.rule === 'own order'),
        thing,
      ).toMatchObject([
        { from: `S:${a.id}`, to: `S:${b.id}`, mayLoosen: true, assumed: false, covers: false, why: 'so' },
      ]);
    }
  });

  test('a temporary stands for the step it comes out with, else the one it was put in with', () => {
    const job = build();
    const [a, b, c] = [job.removal('A'), job.removal('B').loose(), job.removal('C').loose()];
    const edge = (temporary: string): string | undefined => {
      const row = { id: 'x', jobId: job.rows.job.id, beforeId: a.id, afterId: temporary, why: '' };
      return planJob({ ...job.state(), backOrder: [row] }, 0).edges.find((one) => one.rule === 'own order')
        ?.to;
    };
    expect(edge(b.temporary('t', 'blocks', { outWithId: c.id }))).toBe(`S:${c.id}`);
    expect(edge(b.temporary('t', 'blocks'))).toBe(`S:${b.id}`);
    expect(edge(job.temporary('t', { stepThingId: c.id }))).toBe(`S:${c.id}`);
    expect(edge(job.temporary('t'))).toBeUndefined();
  });

  test('a set means its final tightening, a fluid its live half only towards live work', () => {
    const job = build();
    const power = job.removal('Off', { did: 'safe' }).isolation('electricity');
    const a = job.removal('A');
    const set = a.set(1, { laterWhen: 'some day' });
    const oil = job.fluid('Oil', [a.connection('Hose')], { bleed: true });
    const [dead, live] = [job.ownStep('Dead'), job.ownStep('Live', { liveEnergy: 'motion' })];
    const edge = (beforeId: string, afterId: string) => {
      const row = { id: 'x', jobId: job.rows.job.id, beforeId, afterId, why: '' };
      const found = planJob({ ...job.state(), backOrder: [row] }, 0).edges.find(
        (one) => one.rule === 'own order',
      );
      return found && [found.from, found.to];
    };
    expect(edge(set.id, dead)).toEqual([`T:${set.id}`, `U:${dead}`]);
    expect(edge(dead, set.id)).toEqual([`U:${dead}`, `T:${set.id}`]);
    expect(edge(oil, dead)).toEqual([`C1:${oil}`, `U:${dead}`]);
    expect(edge(oil, live)).toEqual([`C2:${oil}`, `U:${live}`]);
    expect(edge(oil, set.id)).toEqual([`C2:${oil}`, `T:${set.id}`]);
    expect(edge(oil, power)).toEqual([`C2:${oil}`, `I:${power}`]);
    expect(edge(dead, oil)).toEqual([`U:${dead}`, `C1:${oil}`]);
  });
});
