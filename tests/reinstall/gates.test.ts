import { describe, expect, test } from 'vitest';
import { buriedBy, type Gate, type GateKind, planJob, type Step } from '../../core/reinstall/index.ts';
import { build, type JobBuilder } from '../support/build.ts';

const plan = (job: JobBuilder) => planJob(job.state(), job.at);
const gate = (job: JobBuilder, kind: GateKind): Gate | undefined =>
  plan(job).gates.find((one) => one.kind === kind);
const states = (job: JobBuilder): string[] => plan(job).steps.map((step) => `${step.title}: ${step.state}`);

/** A housing with a plug, a cover over it, and a cap over the cover; the cover was ticked with the plug still open. */
const buried = () => {
  const job = build();
  const cap = job.removal('Cap');
  const cover = job.removal('Cover').needs(cap);
  const housing = job.removal('Housing').needs(cover);
  const plug = housing.connection('Plug');
  job.deed(cover.id, 'done');
  return { job, plug };
};

describe('gates', () => {
  test('stand before filling, power or pressure, lowering, and before the job is closed', () => {
    const job = build();
    const isolations = (
      ['electricity', 'ignition', 'pressure', 'fuel', 'motion', 'heat', 'spring', 'load', 'other'] as const
    ).map((energy) => job.removal(energy, { did: 'safe' }).isolation(energy));
    const fluid = job.fluid('Oil', [job.removal('Plug').set(1).id], { bleed: true });
    const kinds = new Map(plan(job).gates.map((one) => [one.stepId, one.kind]));
    expect(kinds.get(`C1:${fluid}`)).toBe('filling');
    expect(kinds.get(`C2:${fluid}`)).toBe('power or pressure');
    expect(isolations.map((id) => kinds.get(`I:${id}`))).toEqual([
      ...Array<string>(7).fill('power or pressure'),
      'lowering or moving',
      undefined,
    ]);
    expect(kinds.get(null)).toBe('closing');
    expect(plan(job).steps.find((step) => step.kind === 'C1')?.gate).toBe(`gate:C1:${fluid}`);
    expect(plan(job).steps.find((step) => step.kind === 'S')?.gate).toBeNull();
    expect(planJob(build().state(), 0).gates).toEqual([]);
  });

  test('say what is simply not done yet, each with what it lacks first', () => {
    const job = build();
    const power = job.removal('Off', { did: 'safe' }).isolation('electricity');
    const housing = job.removal('Housing');
    const plug = housing.connection('Plug');
    const own = job.ownStep('Look round');
    job.ownStep('After a week', { kind: 'recheck' });
    expect(gate(job, 'power or pressure')).toMatchObject({
      id: `gate:I:${power}`,
      stepId: `I:${power}`,
      open: false,
      holding: [],
      notYet: expect.arrayContaining([{ stepId: `S:${housing.id}`, sentence: 'Plug is not joined.' }]),
    });
    expect(
      gate(job, 'closing')
        ?.notYet.map((one) => one.stepId)
        .sort(),
    ).toEqual([`S:${housing.id}`, `I:${power}`, `U:${own}`].sort());
    job.deed(plug, 'joined').deed(own, 'done').deed(power, 'given back');
    expect(gate(job, 'closing'), 'a re-check comes after').toMatchObject({
      id: 'gate:closing',
      open: true,
      notYet: [],
      holding: [],
    });
    expect(gate(job, 'power or pressure')?.open).toBe(true);
  });

  test('a stop holds the step that would cover it, and every gate above it, until it is mended or passed by name', () => {
    const { job, plug } = buried();
    const power = job.removal('Off', { did: 'safe' }).isolation('electricity');
    const key = plan(job).findings.find((one) => one.code === 'connection.open')?.key ?? '';
    expect(gate(job, 'closing')?.holding).toEqual([key]);
    expect(gate(job, 'power or pressure')).toMatchObject({
      stepId: `I:${power}`,
      open: false,
      holding: [key],
    });
    job.deed(plug, 'joined');
    expect(gate(job, 'closing')?.holding).toEqual([]);
    expect(states(job)).toContain('Cap: ready');
  });

  test('a lost rag holds the steps that would close the ways in, and they say so', () => {
    const job = build();
    const port = job.removal('Port');
    port.part('Port cover', { stowId: job.bag() });
    const rag = port.temporary('Rag', 'blocks');
    job.tickTock(30);
    job.counting(1, 0, { thingId: rag });
    job.deed(rag, 'taken out');
    const step = () => plan(job).steps.find((one) => one.id === `S:${port.id}`) as Step;
    const key = plan(job).findings.find((one) => one.code === 'item.unaccounted')?.key ?? '';
    expect(step()).toMatchObject({
      state: 'held',
      stoppedBy: [key],
      why: 'Something underneath is open that it would cover.',
      gate: `gate:S:${port.id}`,
    });
    expect(gate(job, 'covering')).toMatchObject({ stepId: `S:${port.id}`, open: false, holding: [key] });
    expect(plan(job).ahead.size).toBe(0);
    job.accept(
      { key, digest: plan(job).findings.find((one) => one.key === key)?.digest ?? '' },
      'Seen in the bin.',
    );
    expect(step()).toMatchObject({ state: 'ready', stoppedBy: [], gate: null });
    expect(plan(job).ahead.has(`S:${port.id}`)).toBe(true);
  });
});

describe('the state of a step is the first that fits', () => {
  test('done before behind, behind before waiting, waiting before held, else ready', () => {
    const job = build();
    const cover = job.removal('Cover');
    const head = job.removal('Head');
    const lent = head.part('Head', { stowId: job.bag() });
    expect(states(job)).toEqual(['Head: ready', 'Cover: behind']);
    const away = job.away(lent);
    expect(states(job)).toEqual(['Head: waiting', 'Cover: behind']);
    job.deed(cover.id, 'done');
    expect(states(job)).toEqual(['Head: waiting', 'Cover: done']);
    job.set('away', away, { backAt: job.at });
    job.deed(head.id, 'done');
    expect(states(job)).toEqual(['Head: done', 'Cover: done']);
  });

  test('what can go ahead is what nothing is lacking, nothing holds, and nothing open is behind', () => {
    const job = build();
    const a = job.removal('A');
    const b = job.removal('B').needs(a);
    const c = job.removal('C').loose();
    const lent = c.part('Lent', { stowId: job.bag() });
    job.away(lent);
    expect([...plan(job).ahead].sort()).toEqual([`S:${a.id}`, `S:${b.id}`].sort());
    job.deed(b.id, 'done');
    expect([...plan(job).ahead]).toEqual([`S:${a.id}`]);
  });
});

describe('what ticking a step would bury', () => {
  const before = (job: JobBuilder, id: string) => {
    const now = plan(job);
    return buriedBy(job.state(), job.at, now, now.steps.find((step) => step.id === id) as Step).map(
      (one) => one.code,
    );
  };

  test('is what stands open under it and is no finding yet; its own lack is not counted, nor what is known already', () => {
    const job = build();
    const cover = job.removal('Cover');
    cover.part('Lid');
    const housing = job.removal('Housing').needs(cover);
    const plug = housing.connection('Plug');
    expect(before(job, `S:${cover.id}`)).toEqual(['connection.open']);
    expect(before(job, `S:${housing.id}`)).toEqual([]);
    job.deed(cover.id, 'done');
    expect(before(job, `S:${cover.id}`)).toEqual([]);
    job.deed(cover.id, 'came off again').deed(plug, 'joined');
    expect(before(job, `S:${cover.id}`)).toEqual([]);
  });

  test('holds before filling, bleeding, power, a shared hole, a part on the bench and an own step as well', () => {
    const job = build();
    const power = job.removal('Off', { did: 'safe' }).isolation('electricity');
    const sump = job.removal('Sump');
    sump.connection('Sensor');
    const fluid = job.fluid('Oil', [sump.part('Sump')], { bleed: true });
    expect(before(job, `C1:${fluid}`)).toEqual(expect.arrayContaining(['connection.open', 'part.missing']));
    expect(before(job, `C2:${fluid}`)).toContain('fluid.open');
    expect(before(job, `I:${power}`)).toContain('connection.open');
  });

  test('a cure that the step itself would not wait for is counted', () => {
    const job = build();
    const sump = job.removal('Sump');
    const fluid = job.fluid('Oil', [sump.set(1).id]);
    job.deed(sump.id, 'done');
    job.consumable(sump.id, { name: 'Sealant', cureMinutes: 60, cureBefore: 'fill', putAt: job.at });
    expect(before(job, `C1:${fluid}`)).toEqual(['cure.wait']);
  });
});
