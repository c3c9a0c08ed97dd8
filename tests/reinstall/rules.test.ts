import { describe, expect, test } from 'vitest';
import { needsBroken, planJob, reachOf, wouldCloseCycle } from '../../core/reinstall/index.ts';
import type { Plan } from '../../core/reinstall/index.ts';
import { build, type JobBuilder } from '../support/build.ts';

const plan = (job: JobBuilder): Plan => planJob(job.state(), job.at);
/** The list in short: kind and title of its steps. */
const list = (job: JobBuilder): string[] => plan(job).steps.map((step) => `${step.kind} ${step.title}`);
const kinds = (job: JobBuilder): string[] => plan(job).steps.map((step) => step.kind);
const has = (job: JobBuilder, from: string, to: string): boolean =>
  plan(job).edges.some((edge) => edge.from === from && edge.to === to);

describe('needs', () => {
  test('a plain log goes back in its exact reverse', () => {
    const job = build();
    for (const title of ['Cover', 'Pulley', 'Housing']) job.removal(title);
    expect(list(job)).toEqual(['S Housing', 'S Pulley', 'S Cover']);
  });

  test('a loosened default lets the latest off go first, and a stored need holds it', () => {
    const job = build();
    const a = job.removal('A');
    const b = job.removal('B').loose();
    const c = job.removal('C').loose().needs(a);
    expect(has(job, `S:${b.id}`, `S:${a.id}`)).toBe(false);
    expect(has(job, `S:${c.id}`, `S:${a.id}`)).toBe(true);
    expect(plan(job).steps.map((step) => step.state)).toEqual(['ready', 'ready', 'behind']);
  });

  test('an assembly that is taken apart on the bench goes back as a whole, even where its order was loosened', () => {
    const job = build();
    const off = job.removal('Pump off');
    const pump = off.part('Pump');
    job.removal('Bracket');
    const first = job.removal('Pump cover', { benchPartId: pump });
    const second = job.removal('Impeller', { benchPartId: pump }).loose();
    expect(list(job)).toEqual(['S Impeller', 'S Pump cover', 'S Bracket', 'S Pump off']);
    expect(has(job, `S:${first.id}`, `S:${off.id}`)).toBe(true);
    expect(has(job, `S:${second.id}`, `S:${off.id}`)).toBe(true);
    expect(has(job, `S:${second.id}`, `S:${first.id}`)).toBe(false);
  });

  test('what only made something safe has no step of its own, and hands its needs on', () => {
    const job = build();
    const a = job.removal('Cover');
    const safe = job.removal('Earth off', { did: 'safe' });
    const earth = safe.isolation('electricity');
    const c = job.removal('Starter');
    expect(kinds(job)).toEqual(['S', 'S', 'I']);
    expect(has(job, `S:${c.id}`, `S:${a.id}`)).toBe(true);
    expect(has(job, `S:${a.id}`, `I:${earth}`)).toBe(true);
  });

  test('void, given up and planned entries have no step, and hand their needs on', () => {
    for (const phase of ['void', 'given up', 'planned'] as const) {
      const job = build();
      const a = job.removal('A');
      job.removal('B', { phase });
      const c = job.removal('C');
      expect(list(job)).toEqual(['S C', 'S A']);
      expect(has(job, `S:${c.id}`, `S:${a.id}`)).toBe(true);
    }
  });

  test('a plug that was only opened to drain is closed as soon as it may be, not last', () => {
    const job = build();
    const tray = job.removal('Under tray');
    const drain = job.removal('Drain plug', { did: 'opened' });
    const plug = drain.set(1, { how: 'out', name: 'drain plug' }, { kind: 'plug' });
    const cover = job.removal('Cover');
    job.fluid('Gear oil', [plug.id], { drainedMl: 2500 });
    expect(list(job)).toEqual(
      ['S Drain plug', 'S Cover', 'S Under tray', 'C1 Fill Gear oil, leak check cold'].sort(
        (a, b) => list(job).indexOf(a) - list(job).indexOf(b),
      ),
    );
    expect(plan(job).steps[0]?.title).toBe('Drain plug');
    expect(has(job, `S:${cover.id}`, `S:${drain.id}`)).toBe(false);
    expect(has(job, `S:${cover.id}`, `S:${tray.id}`)).toBe(true);
    expect(has(job, `S:${drain.id}`, `S:${tray.id}`)).toBe(true);
  });

  test('needs that a new order would turn round are named; those of a bench cannot be loosened', () => {
    const job = build();
    const a = job.removal('A');
    const pump = a.part('Pump');
    const b = job.removal('B').needs(a);
    const c = job.removal('C', { benchPartId: pump });
    expect(needsBroken(job.state(), [a.id, b.id, c.id])).toEqual([]);
    const broken = needsBroken(job.state(), [b.id, c.id, a.id]);
    expect(broken.map(({ removalId, mayLoosen }) => [removalId, mayLoosen])).toEqual([
      [b.id, true],
      [c.id, false],
    ]);
    expect(broken[0]?.sentence).toBe('B needs A to be off first.');
  });
});

describe('shared positions', () => {
  test('a bolt whose parts all lead home is finished at home', () => {
    const job = build();
    const housing = job.removal('Housing');
    const set = housing.set(2);
    const bracket = job.removal('Bracket').part('Bracket');
    job.holds(set.holes[0] ?? '', bracket);
    expect(kinds(job)).toEqual(['S', 'S']);
    expect(plan(job).steps[1]?.fasteners[0]?.holes.length).toBe(2);
  });

  test('a bolt that waits for a part put back later is a step of its own, after all of them and before what covers it', () => {
    const job = build();
    const guard = job.removal('Guard');
    const bracket = job.removal('Bracket');
    const part = bracket.part('Bracket');
    const set = bracket.set(3);
    const pipe = job.removal('Pipe').loose();
    const clip = pipe.part('Pipe clip');
    job.holds(set.holes[1] ?? '', clip);
    job.holds(set.holes[1] ?? '', part);
    const shared = `F:${set.holes[1]}`;
    expect(kinds(job)).toEqual(['S', 'S', 'F', 'S']);
    for (const removal of [bracket, pipe]) expect(has(job, `S:${removal.id}`, shared)).toBe(true);
    expect(has(job, shared, `S:${guard.id}`)).toBe(true);
    expect(plan(job).steps.find((step) => step.id === `S:${bracket.id}`)?.fasteners[0]?.holes.length).toBe(2);
  });

  test('it does not hold up a step that one of its own parts needs first', () => {
    const job = build();
    const low = job.removal('Low');
    const part = low.part('Low part');
    const mid = job.removal('Mid');
    const home = job.removal('Home');
    const set = home.set(1);
    job.holds(set.holes[0] ?? '', part);
    expect(has(job, `F:${set.holes[0]}`, `S:${mid.id}`)).toBe(false);
    expect(list(job).at(-1)).toBe('F bolts, hole 1 (holds more than one part)');
  });
});

describe('energies and fluids', () => {
  test('isolations go back last, one by one, the reverse of how they were made, wherever they stand in the log', () => {
    const job = build();
    const one = job.removal('Earth off', { did: 'safe' }).isolation('electricity');
    const a = job.removal('A');
    const two = job.removal('On stands', { did: 'safe' }).isolation('load');
    job.removal('B');
    expect(list(job)).toEqual(['S B', 'S A', 'I Give back: load', 'I Give back: electricity']);
    expect(has(job, `I:${two}`, `I:${one}`)).toBe(true);
    expect(has(job, `S:${a.id}`, `I:${two}`)).toBe(true);
  });

  test('one removal that made safe and took off is split', () => {
    const job = build();
    const both = job.removal('Spring caged, cover off');
    both.isolation('spring');
    expect(kinds(job)).toEqual(['S', 'I']);
  });

  test('an isolation with a list waits for that list and for nothing else', () => {
    const job = build();
    const a = job.removal('A');
    const b = job.removal('B').loose();
    const safe = job.removal('Spring caged', { did: 'safe' });
    const spring = safe.isolation('spring', { scope: 'listed' });
    safe.protects(spring, b);
    expect(has(job, `S:${b.id}`, `I:${spring}`)).toBe(true);
    expect(has(job, `S:${a.id}`, `I:${spring}`)).toBe(false);
  });

  test('what opens a fluid is closed before it is filled; it is bled live, after its energy is back', () => {
    const job = build();
    const earth = job.removal('Earth off', { did: 'safe' }).isolation('electricity');
    const hose = job.removal('Hose');
    const end = hose.connection('Hose', { kind: 'hose', joint: 'hose on stub' });
    const oil = job.fluid('Oil', [end], { bleed: true, liveEnergy: 'electricity', drainedMl: 900 });
    expect(kinds(job)).toEqual(['S', 'C1', 'I', 'C2']);
    expect(has(job, `S:${hose.id}`, `C1:${oil}`)).toBe(true);
    expect(has(job, `C1:${oil}`, `I:${earth}`)).toBe(true);
    expect(has(job, `I:${earth}`, `C2:${oil}`)).toBe(true);
  });

  test('a fill that a valve feeds comes after the valve; pressure that the live work needs comes after the fill', () => {
    const job = build();
    const valve = job.removal('Water off', { did: 'safe' }).isolation('pressure', { how: 'valve shut' });
    const end = job.removal('Hose').connection('Hose', { kind: 'hose', joint: 'hose on stub' });
    const water = job.fluid('Water', [end], { liveEnergy: 'pressure' });
    job.set('isolation', valve, { scope: 'fluid', fluidId: water });
    expect(kinds(job)).toEqual(['S', 'I', 'C1', 'C2']);
    job.set('isolation', valve, { how: 'let off' });
    expect(kinds(job)).toEqual(['S', 'C1', 'I', 'C2']);
  });

  test('a cold leak check comes before the step that hides the joint', () => {
    const job = build();
    const shield = job.removal('Shield');
    const end = job.removal('Pipe').connection('Pipe', { kind: 'pipe', joint: 'flare', hidden: true });
    const fluid = job.fluid('Brake fluid', [end]);
    expect(kinds(job)).toEqual(['S', 'C1', 'S']);
    expect(has(job, `C1:${fluid}`, `S:${shield.id}`)).toBe(true);
    job.set('connection', end, { hidden: false });
    expect(has(job, `C1:${fluid}`, `S:${shield.id}`)).toBe(false);
  });

  test('final tightenings come after what makes their condition true', () => {
    const job = build();
    const stands = job.removal('On stands', { did: 'safe' }).isolation('load');
    const arm = job.removal('Arm');
    const ground = arm.set(2, { laterWhen: 'on the ground' });
    const aligned = arm.set(2, { laterWhen: 'after alignment' });
    const own = job.ownStep('Wheel alignment');
    expect(has(job, `I:${stands}`, `T:${ground.id}`)).toBe(true);
    expect(has(job, `U:${own}`, `T:${aligned.id}`)).toBe(true);
    expect(kinds(job).slice(-2)).toEqual(['I', 'T']);
  });

  test('a re-check comes last and blocks nothing', () => {
    const job = build();
    const set = job.removal('Wheel').set(5, { recheck: true });
    const steps = plan(job).steps;
    expect(steps.at(-1)?.id).toBe(`K:${set.id}`);
    expect(plan(job).edges.some((edge) => edge.from === `K:${set.id}`)).toBe(false);
  });

  test('a part carried over goes onto its new parent just before that goes back', () => {
    const job = build();
    const off = job.removal('Pump off');
    const next = off.part('New pump', { how: 'fitted new' });
    job.removal('Bracket').loose();
    const fitting = job.removal('Old fitting').loose();
    const elbow = fitting.part('Elbow', { fate: 'carry over', carryToId: next });
    expect(has(job, `B:${elbow}`, `S:${off.id}`)).toBe(true);
    expect(has(job, `B:${elbow}`, `S:${fitting.id}`)).toBe(true);
    expect(list(job)[0]).toBe('B Elbow onto its new place');
  });

  test('what is carried over waits at the bench until there is a new part to put it on', () => {
    const job = build();
    const cover = job.removal('Cover').part('Cover', { renew: 'must', fate: 'renew' });
    const glass = job.removal('Sight glass').part('Sight glass', { fate: 'carry over', carryToId: cover });
    const bench = () => plan(job).steps.find((step) => step.id === `B:${glass}`);
    expect(bench()?.state).toBe('waiting');
    expect(bench()?.lacks.map((lack) => [lack.code, lack.thingId])).toEqual([['to get', cover]]);
    job.move({ partId: cover, qty: 1, src: 'supply', dst: 'stow', cause: 'received', fresh: true });
    expect(bench()?.state).toBe('ready');
  });
});

describe('what has no thread', () => {
  test('clips are fitted and never started by hand; dowels go in before the part, bolts after it', () => {
    const job = build();
    const plate = job.removal('End plate');
    plate.part('End plate');
    plate.set(4, {}, { kind: 'bolt', thread: 'M10', lengthUm: 45_000 });
    plate.set(2, { name: 'dowels' }, { kind: 'dowel pin' });
    plate.set(3, {}, { kind: 'clip' });
    const said = plan(job).steps[0]?.actions.map((one) => one.sentence.split(/[:,] | M8/)[0]);
    expect(said).toEqual(['Fit 2 × dowel pin', 'Fit', 'Fit 3 × clip', 'Start all by hand', 'Tighten bolts']);
  });
});

describe('the user’s own steps and orders', () => {
  test('an own step that was put before another comes just before it, one without a place after all removals', () => {
    const job = build();
    const a = job.removal('A');
    job.removal('B');
    job.removal('Off', { did: 'safe' }).isolation('electricity');
    const grease = job.ownStep('Grease');
    job.ownStep('Look round');
    job.first(grease, a.id);
    expect(list(job)).toEqual(['S B', 'U Grease', 'S A', 'U Look round', 'I Give back: electricity']);
  });

  test('an own step may be put behind an energy, dead work may not', () => {
    const job = build();
    const a = job.removal('A');
    const power = job.removal('Off', { did: 'safe' }).isolation('electricity');
    const test1 = job.ownStep('Try the switch');
    expect(wouldCloseCycle(job.state(), power, test1)).toBeNull();
    job.first(power, test1);
    expect(list(job)).toEqual(['S A', 'I Give back: electricity', 'U Try the switch']);
    expect(wouldCloseCycle(job.state(), power, a.id)?.sentence).toBe(
      'That would close a ring: A before Give back: electricity before A. None of them can be loosened.',
    );
  });
});

describe('reach', () => {
  test('what is off already need not come off, and what was never logged cannot be reached', () => {
    const job = build();
    const cover = job.removal('Cover');
    const shaft = job.removal('Shaft');
    const seal = shaft.part('Seal', { renew: 'must' });
    shaft.set(4);
    const ghost = job.part('Ghost');
    job.deed(cover.id, 'done');
    const half = reachOf(job.state(), [seal]);
    expect(half.removals.map((removal) => removal.title)).toEqual(['Cover']);
    for (const hole of job.rows.position) job.deed(hole.id, 'tightened');
    job.deed(seal, 'fitted', { fresh: true });
    const reach = reachOf(job.state(), [seal, ghost]);
    expect(reach.removals.map((removal) => removal.title)).toEqual(['Cover', 'Shaft']);
    expect(reach.fasteners).toBe(4);
    expect(reach.tools.map((line) => [line.tool, line.fasteners])).toEqual([['13 mm spanner or socket', 4]]);
    expect(reach.renew).toEqual([seal]);
    expect(reach.unknown.map((one) => one.targetId)).toEqual([ghost]);
  });
});
