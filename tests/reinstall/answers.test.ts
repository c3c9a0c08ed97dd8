import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planJob, reachOf, suggestionsOf, timeLeftOf, toolPlan } from '../../core/reinstall/index.ts';
import { toolOf } from '../../core/reinstall/tools.ts';
import { build, START } from '../support/build.ts';
import { rowOf } from '../support/build-rows.ts';
import { chance } from './story.ts';

const MINUTE = 60_000;

/** A log of up to 10 removals with random confirmed and assumed needs, some of them back, some only planned. */
const logs = fc.record({
  n: fc.integer({ min: 1, max: 10 }),
  needs: fc.array(fc.tuple(fc.nat(9), fc.nat(9), fc.boolean()), { maxLength: 14 }),
  back: fc.array(fc.boolean(), { minLength: 10, maxLength: 10 }),
  planned: fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 10, maxLength: 10 }),
  targets: fc.array(fc.nat(9), { minLength: 1, maxLength: 3 }),
});

describe('what must come off', () => {
  test('is the least set with which no target has anything on the machine before it, for several targets', () => {
    fc.assert(
      fc.property(logs, ({ n, needs, back, planned, targets }) => {
        const job = build();
        // Everything planned stands at the end of the log, as it does while a job goes on.
        const first = Math.max(0, n - (planned[0] ?? 0));
        const made = Array.from({ length: n }, (_, i) =>
          job
            .removal(`r${i}`, i >= first ? { phase: 'planned', startedAt: null, endedAt: null } : {})
            .loose(),
        );
        const pairs = new Set<string>();
        for (const [a, b, sure] of needs) {
          const [later, earlier] = [Math.max(a, b) % n, Math.min(a, b) % n];
          const [x, y] = [made[Math.max(later, earlier)], made[Math.min(later, earlier)]];
          if (!x || !y || x === y) continue;
          x.need(y, sure);
          pairs.add(`${made.indexOf(x)}>${made.indexOf(y)}`);
        }
        made.forEach((removal, i) => {
          if (i < first && back[i]) job.deed(removal.id, 'done');
        });
        const on = (i: number) => i >= first || back[i] === true;
        const wanted = [...new Set(targets.map((k) => k % n))];
        // By brute force: of all sets of what is on, the smallest that holds the targets that are on and everything that
        // is on and needed, directly or through others, by something in it.
        const sufficient = (set: number) =>
          wanted.every((t) => !on(t) || set & (1 << t)) && closed(set, n, pairs, wanted, on);
        let least = (1 << n) - 1;
        for (let set = 0; set < 1 << n; set += 1) if (sufficient(set) && bits(set) < bits(least)) least = set;
        const ids = made.filter((_, i) => least & (1 << i) && on(i)).map((one) => one.id);
        const reach = reachOf(
          job.state(),
          wanted.map((t) => made[t]?.id ?? ''),
          job.at,
        );
        expect(reach.removals.map((one) => one.removalId)).toEqual(ids);
      }),
      { numRuns: 150, seed: 3 },
    );
  });

  test('says what is back, partly back and was never off, what of it is only assumed, and what comes out again', () => {
    const job = build();
    const battery = job.removal('Power off', { did: 'safe' });
    const mains = battery.isolation('electricity', { how: 'main switch locked' });
    const guard = job.removal('Guard');
    guard.set(4, {}, { driveTyped: '10 mm', drive: 'hex external' });
    const cover = job.removal('Cover');
    const gasket = cover.part('Gasket', { kind: 'gasket', renew: 'must' });
    const bolts = cover.set(6, {}, { driveTyped: '13 mm', drive: 'hex external' });
    const plate = job.part('Plate', { removalId: guard.id, how: 'off' });
    job.holds(bolts.holes[5] ?? '', plate);
    const oil = job.fluid('Oil', [cover.id]);
    job.deed(cover.id, 'done');
    const before = reachOf(job.state(), [gasket], job.at);
    expect(before.removals.map((one) => [one.title, one.state, one.assumed])).toEqual([
      ['Cover', 'again', false],
    ]);
    expect(before.isolations).toEqual([]);
    job.deed(guard.id, 'done');
    job.deed(bolts.holes[5] ?? '', 'tightened');
    job.deed(oil, 'done');
    job.deed(mains, 'given back');
    const after = reachOf(job.state(), [gasket], job.at);
    expect(after.removals.map((one) => [one.title, one.assumed])).toEqual([
      ['Guard', true],
      ['Cover', false],
    ]);
    expect(after).toMatchObject({
      isolations: [mains],
      // It holds the plate, which comes off before the cover.
      shared: [bolts.holes[5]],
      fluids: [oil],
      renew: [gasket],
      fasteners: 10,
    });
    expect(after.tools.map((one) => [one.tool, one.fasteners])).toEqual([
      ['13 mm spanner or socket', 6],
      ['10 mm spanner or socket', 4],
    ]);
    // Two removals of ten minutes each, quicker or slower the second time.
    expect([after.minutesLow, after.minutesHigh]).toEqual([12, 26]);
  });
});

const bits = (set: number): number => set.toString(2).replaceAll('0', '').length;

/** Whatever is needed through others counts, whether those are on or off. */
function closed(
  set: number,
  n: number,
  pairs: ReadonlySet<string>,
  wanted: readonly number[],
  on: (i: number) => boolean,
): boolean {
  const seen = new Set(wanted);
  for (let grown = true; grown; ) {
    grown = false;
    for (let a = 0; a < n; a += 1)
      for (let b = 0; b < n; b += 1)
        if (seen.has(a) && !seen.has(b) && pairs.has(`${a}>${b}`)) {
          // What is only planned was not in the way of what came off without it.
          seen.add(b);
          grown = true;
        }
  }
  return [...seen].every((i) => !on(i) || (set & (1 << i)) !== 0);
}

describe('suggestions for needs', () => {
  const two = (a: string, b: string) => {
    const job = build();
    const one = job.removal('Fan', { place: a });
    const other = job.removal('Pump', { place: b });
    return { job, one, other };
  };

  test('come only with a reason: said places that differ, and nothing shared', () => {
    const { job, one, other } = two('front', 'rear');
    const found = suggestionsOf(job.state(), job.at);
    expect(found).toMatchObject([{ removalId: other.id, needsId: one.id, instead: [] }]);
    expect(found[0]?.reason).toContain('rear, front');
    expect(found[0]?.waiting).toEqual({ stepId: `S:${one.id}`, forId: `S:${other.id}` });
    for (const [a, b] of [
      ['front', 'front'],
      ['front', ''],
      ['', ''],
    ] as const)
      expect(suggestionsOf(two(a, b).job.state(), START)).toEqual([]);
  });

  test('a shared hole, part, fluid or support, or something hidden, takes the suggestion away', () => {
    const cases: ((made: ReturnType<typeof two>) => void)[] = [
      ({ job, one, other }) => job.holds(one.set(1).holes[0] ?? '', other.part('Plate')),
      ({ one, other }) => other.part('Wheel', { parentId: one.part('Hub') }),
      ({ job, one, other }) => job.fluid('Oil', [one.id, other.id]),
      ({ one, other }) => one.temporary('strap', 'supports', { outWithId: other.id }),
      ({ other }) => other.connection('plug', { hidden: true }),
      ({ job, one, other }) =>
        job.set('removal', other.id, {
          defaultNeed: 'confirmed',
          place: other.job.rows.removal.find((row) => row.id === one.id)?.place ?? '',
        }),
    ];
    for (const change of cases) {
      const made = two('front', 'rear');
      change(made);
      expect(suggestionsOf(made.job.state(), made.job.at)).toEqual([]);
    }
  });

  test('what the loosened need stood for is handed on', () => {
    const { job, one, other } = two('front', 'rear');
    const third = job.removal('Seat', { place: 'top' });
    expect(suggestionsOf(job.state(), job.at).find((row) => row.removalId === third.id)).toMatchObject({
      needsId: other.id,
      instead: [one.id],
    });
  });
});

describe('tools', () => {
  const spec = (more: Parameters<typeof rowOf<'spec'>>[3]) =>
    rowOf('spec', 'x', 'j', {
      head: null,
      thread: null,
      drive: null,
      driveSizeUm: null,
      driveTyped: '',
      ...more,
    });

  test('are as recorded; else by the standard where thread and head say so; else not recorded', () => {
    expect(toolOf(spec({ kind: 'bolt', drive: 'hex external', driveTyped: '13 mm' }))).toEqual({
      tool: '13 mm spanner or socket',
      known: 'recorded',
    });
    expect(toolOf(spec({ kind: 'screw', drive: 'hexalobular', driveTyped: 'T30' })).tool).toBe('T30 bit');
    // ISO 4014/4017 and the withdrawn DIN 931/933 agree on 13 for M8 and differ for M10 (ISO 272: 16, DIN: 17); M10 inch rows: none.
    expect(toolOf(spec({ kind: 'bolt', head: 'hex', thread: 'M8' }))).toEqual({
      tool: '13 mm spanner or socket',
      known: 'by the standard',
    });
    expect(toolOf(spec({ kind: 'bolt', head: 'hex', thread: 'M10' })).tool).toBe(
      '16 mm or 17 mm spanner or socket',
    );
    expect(toolOf(spec({ kind: 'screw', head: 'socket cap', thread: 'M6' })).tool).toBe('5 mm hex key');
    expect(toolOf(spec({ kind: 'bolt', thread: 'M8' })).known).toBe('not recorded');
    expect(toolOf(spec({ kind: 'circlip' })).tool).toBe('circlip pliers');
    expect(toolOf(spec({ kind: 'clip' })).tool).toBe('');
  });

  test('the order with the fewest changes keeps every edge of the list and says what it saves', () => {
    const job = build();
    const sizes = ['10 mm', '13 mm', '10 mm', '13 mm', '10 mm'];
    const made = sizes.map((driveTyped, i) => {
      const removal = job.removal(`r${i}`).loose();
      removal.set(2, {}, { driveTyped, drive: 'hex external' });
      return removal;
    });
    made[4]?.needs(made[3] as (typeof made)[number]);
    const plan = toolPlan(job.state(), job.at);
    expect(plan).toMatchObject({ listed: 4, changes: 1, exact: true, ring: false });
    expect(plan.tools.map((one) => [one.tool, one.fasteners, one.steps])).toEqual([
      ['10 mm spanner or socket', 6, 3],
      ['13 mm spanner or socket', 4, 2],
    ]);
    const place = (k: number) => plan.order.indexOf(`S:${made[k]?.id}`);
    expect(place(4)).toBeLessThan(place(3));
    job.deed(made[0]?.id ?? '', 'done');
    expect(toolPlan(job.state(), job.at).order).toHaveLength(4);
  });

  test('steps that wait for each other in a ring are given no other order', () => {
    const job = build();
    const [a, b] = [job.removal('a').loose(), job.removal('b').loose()];
    a.set(1, {}, { driveTyped: '10 mm' });
    job.first(a.id, b.id);
    job.first(b.id, a.id);
    expect(toolPlan(job.state(), job.at)).toMatchObject({ ring: true, order: [] });
  });
});

describe('time left', () => {
  /** Steps of these lengths (minutes off, minutes back), the first so many of them back. */
  function run(steps: readonly (readonly [number, number])[], done: number) {
    const job = build();
    let at = START;
    const made = steps.map(([off], i) => {
      const removal = job.removal(`r${i}`, { startedAt: at, endedAt: at + off * MINUTE }).loose();
      at += off * MINUTE;
      return removal;
    });
    at += 60 * MINUTE;
    job.deed(job.ownStep('Look at it'), 'done', { at });
    for (let i = 0; i < done; i += 1) {
      at += (steps[i]?.[1] ?? 0) * MINUTE;
      job.deed(made[i]?.id ?? '', 'done', { at });
    }
    return { job, at };
  }

  test('is not known before three steps are back, and then is the pace so far times what is left', () => {
    const steps = Array.from({ length: 10 }, () => [10, 15] as const);
    for (const done of [0, 1, 2]) {
      const { job, at } = run(steps, done);
      expect(timeLeftOf(job.state(), at)).toEqual({
        known: false,
        sentence: `Not known yet: too little is back to tell the pace. 3 steps back are enough, each with times of when it came off and ticked within 30 minutes of the tick before; ${
          [
            'none is back so far',
            'so far that is 1 of the 1 that is back',
            'so far that is 2 of the 2 that are back',
          ][done]
        }.`,
      });
    }
    const { job, at } = run(steps, 4);
    // Six steps of 10 minutes at one and a half times that: 90 minutes, and no step strayed from it.
    expect(timeLeftOf(job.state(), at)).toMatchObject({
      known: true,
      minutesLow: 90,
      minutesHigh: 90,
      from: 4,
      left: 6,
    });
  });

  test('a night between two ticks is no pace, and steps without times are said', () => {
    const { job, at } = run(
      Array.from({ length: 8 }, () => [10, 20] as const),
      4,
    );
    const open = planJob(job.state(), at).steps.filter((step) => step.kind === 'S' && step.state !== 'done');
    job.set('removal', open[0]?.removalId ?? '', { startedAt: null });
    job.deed(open[1]?.removalId ?? '', 'done', { at: at + 14 * 60 * MINUTE });
    const left = timeLeftOf(job.state(), at);
    expect(left).toMatchObject({ known: true, left: 3, untimed: 1, minutesLow: 60, minutesHigh: 60 });
    expect(left.sentence).toContain('1 without times');
  });

  test('holds what really was left in about four of five jobs', () => {
    let inside = 0;
    const jobs = 300;
    for (let seed = 1; seed <= jobs; seed += 1) {
      const rnd = chance(seed);
      const pace = 0.8 + rnd();
      const steps = Array.from({ length: 16 }, () => {
        const off = 5 + rnd() * 25;
        return [off, Math.max(1, off * pace * (0.6 + 0.8 * rnd()))] as const;
      });
      const { job, at } = run(steps, 6);
      const left = timeLeftOf(job.state(), at);
      const real = steps.slice(6).reduce((sum, [, back]) => sum + back, 0);
      if (left.known && left.minutesLow - 1 <= real && real <= left.minutesHigh + 1) inside += 1;
    }
    expect(inside / jobs).toBeGreaterThan(0.7);
    expect(inside / jobs).toBeLessThan(0.93);
  });
});
