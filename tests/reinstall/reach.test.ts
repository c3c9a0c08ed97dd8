import { describe, expect, test } from 'vitest';
import { needsBroken, reachOf, wouldCloseCycle } from '../../core/reinstall/index.ts';
import { build } from '../support/build.ts';

const MINUTE = 60_000;

describe('what it costs to reach something', () => {
  const machine = () => {
    const job = build();
    const earth = job.removal('Earth off', { did: 'safe' }).isolation('electricity');
    const cover = job.removal('Cover', {
      startedAt: 0,
      endedAt: 10 * MINUTE,
      pauses: [{ from: MINUTE, to: 3 * MINUTE }],
    });
    const bolts = cover.set(3);
    const pipe = job.removal('Pipe', { startedAt: 0, endedAt: 20 * MINUTE }).loose();
    const hose = pipe.connection('Hose');
    const clip = pipe.part('Clip', { renew: 'must' });
    const pump = job.removal('Pump', { startedAt: null }).loose().needs(cover, pipe);
    const seal = pump.part('Seal');
    const own = pump.set(2, { renew: 'must' }, { driveTyped: '10 mm' });
    job.holds(bolts.holes[0] ?? '', clip);
    job.holds(own.holes[0] ?? '', seal);
    const fluid = job.fluid('Oil', [hose]);
    const other = job.fluid('Water', [job.removal('Tank').connection('Tap')]);
    for (const removal of [cover, pipe, pump]) job.deed(removal.id, 'done');
    job.deed(bolts.holes[0] ?? '', 'tightened');
    job.deed(earth, 'given back');
    job.deed(fluid, 'done');
    return { job, earth, cover, pipe, pump, seal, clip, own, bolts, fluid, other, hose };
  };

  test('what is in the way and what holds it, in the order of taking off', () => {
    const { job, cover, pipe, pump, seal } = machine();
    const reach = reachOf(job.state(), [seal]);
    expect(reach.removals).toMatchObject([
      { removalId: cover.id, number: 2, title: 'Cover', why: 'it is in the way' },
      { removalId: pipe.id, number: 3, title: 'Pipe', why: 'it is in the way' },
      { removalId: pump.id, number: 4, title: 'Pump', why: 'it holds what you want' },
    ]);
    expect(reach.unknown).toEqual([]);
  });

  test('what came off because the system was empty needs it empty again, and a hole filled meanwhile counts', () => {
    const job = build();
    const drain = job.removal('Oil', { did: 'opened' });
    const oil = job.fluid('Oil', [drain.id], { drainedMl: 1000 });
    const cover = job.removal('Cover');
    const set = cover.set(3);
    job.set('position', set.holes[2] ?? '', { found: 'empty' });
    const gear = job.removal('Gear').needs(cover);
    const part = gear.part('Gear');
    expect(reachOf(job.state(), [part]).fluids).toEqual([]);
    for (const hole of set.holes) job.deed(hole, 'tightened');
    for (const removal of [gear, cover, drain]) job.deed(removal.id, 'done');
    job.deed(oil, 'done');
    const reach = reachOf(job.state(), [part]);
    expect(reach.removals.map((one) => [one.title, one.fasteners, one.why])).toEqual([
      ['Oil', 0, 'it is drained here'],
      ['Cover', 3, 'it is in the way'],
      ['Gear', 0, 'it holds what you want'],
    ]);
    expect(reach.fluids).toEqual([oil]);
  });

  test('what stands before the plug must come off to drain again, and a plug that is out still need not', () => {
    const job = build();
    const guard = job.removal('Guard');
    const drain = job.removal('Oil', { did: 'opened' }).loose().needs(guard);
    const oil = job.fluid('Oil', [drain.id, job.removal('Hose').loose().id], { drainedMl: 1000 });
    const hose = job.rows.removal[2]?.id ?? '';
    for (const id of [drain.id, guard.id, hose]) job.deed(id, 'done');
    const titles = () => reachOf(job.state(), [hose]).removals.map((one) => one.title);
    expect(titles()).toEqual(['Hose']);
    job.deed(oil, 'filled');
    expect(titles()).toEqual(['Guard', 'Oil', 'Hose']);
    job.deed(drain.id, 'came off again', { round: 2 });
    expect(titles()).toEqual(['Hose']);
  });

  test('with fasteners, tools, what must be renewed, made safe and drained again', () => {
    const { job, earth, seal, clip, own, fluid } = machine();
    const reach = reachOf(job.state(), [seal]);
    expect(reach).toMatchObject({
      fasteners: 5,
      tools: [
        { tool: '13 mm spanner or socket', fasteners: 3 },
        { tool: '10 mm spanner or socket', fasteners: 2 },
      ],
      renew: [clip, own.id],
      isolations: [earth],
      fluids: [fluid],
      shared: [],
    });
  });

  test('a bolt of another removal that holds a part of these is undone with them', () => {
    const { job, clip, bolts } = machine();
    expect(reachOf(job.state(), [clip])).toMatchObject({ shared: [bolts.holes[0]] });
  });

  test('a hole that holds a part which comes off before its own removal is out before both, and counts once', () => {
    const job = build();
    const pump = job.removal('Pump');
    const part = pump.part('Pump');
    const loom = job.removal('Loom').needs(pump);
    const set = loom.set(2);
    job.holds(set.holes[0] ?? '', part);
    for (const id of [loom.id, pump.id, ...set.holes]) job.deed(id, 'done');
    for (const hole of set.holes) job.deed(hole, 'tightened');
    const reach = reachOf(job.state(), [loom.id]);
    expect(reach.removals.map((one) => one.title)).toEqual(['Pump', 'Loom']);
    expect(reach).toMatchObject({ shared: [set.holes[0]], fasteners: 2 });
  });

  test('an isolation with a list is made again only for what stands in it', () => {
    const { job, seal, pump } = machine();
    const safe = job.removal('Caged', { did: 'safe' });
    const one = safe.isolation('spring', { scope: 'listed' });
    safe.isolation('spring', { scope: 'listed' });
    safe.protects(one, pump);
    expect(reachOf(job.state(), [seal]).isolations.slice(1)).toEqual([]);
    job.deed(one, 'given back');
    expect(reachOf(job.state(), [seal]).isolations.slice(1)).toEqual([one]);
  });

  test('time as a range, from what it took, pauses left out, and for what nobody timed by the rest', () => {
    const { job, seal, clip, cover } = machine();
    // Cover 8 min, pipe 20 min, pump not timed: 9.5 to 12.5 as the quarters of all; 0.6 to 1.3 of that.
    expect(reachOf(job.state(), [seal])).toMatchObject({ minutesLow: 23, minutesHigh: 53 });
    expect(reachOf(job.state(), [clip])).toMatchObject({ minutesLow: 12, minutesHigh: 26 });
    job.set('removal', cover.id, { pauses: [{ from: 5 * MINUTE, to: null }] });
    expect(reachOf(job.state(), [cover.id])).toMatchObject({ minutesLow: 3, minutesHigh: 7 });
    job.set('removal', cover.id, { endedAt: null });
    // Not timed itself: as the quarters of the others, which took 10 and 20 min.
    expect(reachOf(job.state(), [cover.id])).toMatchObject({ minutesLow: 6, minutesHigh: 20 });
    for (const removal of job.rows.removal) job.set('removal', removal.id, { endedAt: null });
    expect(reachOf(job.state(), [cover.id])).toMatchObject({ minutesLow: null, minutesHigh: null });
    expect(reachOf(job.state(), [])).toMatchObject({ removals: [], minutesLow: null, fasteners: 0 });
  });

  test('what was only planned is on the machine still, and a removal that only made safe is not in the way', () => {
    const job = build();
    job.removal('Off', { did: 'safe' }).isolation('electricity');
    const plan = job.removal('Planned', { phase: 'planned', title: 'Belt' });
    const part = plan.part('Belt', { how: 'off' });
    expect(reachOf(job.state(), [part]).removals.map((one) => one.title)).toEqual(['Belt']);
  });

  test('of what was never logged it says that nobody can know', () => {
    const job = build();
    const ghost = job.part('Ghost');
    const fluid = job.fluid('Water', []);
    expect(reachOf(job.state(), [ghost, fluid, 'nothing']).unknown).toEqual([
      {
        targetId: ghost,
        sentence: 'Ghost was never logged as coming off, so nobody can say what is in the way.',
      },
      {
        targetId: fluid,
        sentence: 'Water was never logged as coming off, so nobody can say what is in the way.',
      },
      {
        targetId: 'nothing',
        sentence: 'This was never logged as coming off, so nobody can say what is in the way.',
      },
    ]);
  });

  test('any thing of a removal leads to it', () => {
    const job = build();
    const step = job.removal('Step');
    const set = step.set(1);
    const things = [
      step.id,
      set.id,
      set.holes[0] ?? '',
      step.part('p'),
      step.connection('c'),
      step.measure('m'),
      step.mark('k'),
      step.isolation('load'),
      step.temporary('t', 'blocks'),
      job.temporary('aid', { stepThingId: step.id, role: 'aid' }),
      job.temporary('out', { outWithId: step.id }),
    ];
    job.deed(step.id, 'done');
    for (const thing of things)
      expect(
        reachOf(job.state(), [thing]).removals.map((one) => one.title),
        thing,
      ).toEqual(['Step']);
    expect(reachOf(job.state(), [job.temporary('loose', { stepThingId: 'own' })]).unknown).toHaveLength(1);
  });
});

describe('an order that would close a ring', () => {
  test('is told with the steps of the ring and what may be loosened', () => {
    const job = build();
    const a = job.removal('A');
    const b = job.removal('').loose().needs(a);
    const c = job.removal('C').loose().needs(b);
    const ring = wouldCloseCycle(job.state(), a.id, c.id);
    expect(ring?.sentence).toBe(
      'That would close a ring: C before removal 2 before A before C. These may be loosened: C before removal 2; removal 2 before A.',
    );
    expect(ring?.steps).toEqual([`S:${c.id}`, `S:${b.id}`, `S:${a.id}`]);
    expect(ring?.mayLoosen.map((edge) => [edge.from, edge.to])).toEqual([
      [`S:${c.id}`, `S:${b.id}`],
      [`S:${b.id}`, `S:${a.id}`],
    ]);
  });

  test('a step cannot come before itself, and what has no step has no order', () => {
    const job = build();
    const a = job.removal('A');
    const part = a.part('Lid');
    expect(wouldCloseCycle(job.state(), a.id, part)).toEqual({
      steps: [`S:${a.id}`],
      edges: [],
      mayLoosen: [],
      sentence: 'Expected two different steps; both are A.',
    });
    expect(wouldCloseCycle(job.state(), a.id, 'nothing')).toBeNull();
    expect(wouldCloseCycle(job.state(), 'nothing', a.id)).toBeNull();
    expect(wouldCloseCycle(job.state(), job.removal('B').loose().id, a.id)).toBeNull();
  });
});

describe('needs that a new order would turn round', () => {
  test('are named in words, the bench’s own too; what is not in the new order is not turned', () => {
    const job = build();
    const a = job.removal('A');
    const pump = a.part('Pump');
    const b = job.removal('').needs(a);
    const c = job.removal('C', { benchPartId: pump });
    const loose = job.removal('D', { benchPartId: job.part('Loose') });
    expect(needsBroken(job.state(), [b.id, c.id, loose.id])).toEqual([]);
    expect(needsBroken(job.state(), [a.id, b.id, c.id, loose.id])).toEqual([]);
    expect(needsBroken(job.state(), [loose.id, c.id, b.id, a.id]).map((one) => one.sentence)).toEqual([
      'removal 2 needs A to be off first.',
      'C was taken apart on the bench, so A had to be off first.',
    ]);
  });
});
