import { describe, expect, test } from 'vitest';
import { buriedBy, planJob, type Step } from '../../core/reinstall/index.ts';
import { build, type JobBuilder } from '../support/build.ts';

const plan = (job: JobBuilder) => planJob(job.state(), job.at);
const edges = (job: JobBuilder) =>
  plan(job).edges.map(({ from, to, rule, covers, mayLoosen }) => [from, to, rule, covers, mayLoosen]);
const step = (job: JobBuilder, id: string): Step => plan(job).steps.find((one) => one.id === id) as Step;

describe('why one step comes before another', () => {
  test('a need, and what may be loosened of it; a bench may not', () => {
    const job = build();
    const off = job.removal('Pump off');
    const pump = off.part('Pump');
    const cover = job.removal('Cover', { benchPartId: pump });
    const wheel = job.removal('Wheel', { benchPartId: pump, defaultNeed: 'loosened' });
    expect(edges(job)).toEqual([
      [`S:${cover.id}`, `S:${off.id}`, 'need', true, true],
      [`S:${wheel.id}`, `S:${off.id}`, 'bench', true, false],
    ]);
    expect(plan(job).edges[1]?.why).toBe('It was taken apart on the bench.');
  });

  test('a hole that holds more than one part comes after all of them, and covers what lies further up', () => {
    const job = build();
    const guard = job.removal('Guard');
    const bracket = job.removal('Bracket');
    const set = bracket.set(1, { laterWhen: 'some day', recheck: true });
    const pipe = job.removal('Pipe').loose();
    job.holds(set.holes[0] ?? '', pipe.part('Clip'));
    const shared = `F:${set.holes[0]}`;
    expect(edges(job).filter((edge) => edge[2] === 'shared position')).toEqual([
      [`S:${bracket.id}`, shared, 'shared position', true, false],
      [`S:${pipe.id}`, shared, 'shared position', true, false],
      [shared, `S:${guard.id}`, 'shared position', true, false],
    ]);
    expect(edges(job).filter((edge) => edge[2] === 'later' || edge[2] === 'recheck')).toEqual([
      [`T:${set.id}`, `K:${set.id}`, 'recheck', false, false],
      [`S:${bracket.id}`, `T:${set.id}`, 'later', false, false],
      [shared, `T:${set.id}`, 'later', false, false],
    ]);
  });

  test('a part that is carried over is under its new parent, and under its own step', () => {
    const job = build();
    const engine = job.removal('Engine');
    const next = engine.part('Engine', { how: 'fitted new' });
    const sensor = job.removal('Sensor').loose();
    const moved = sensor.part('Sensor', { fate: 'carry over', carryToId: next });
    expect(edges(job)).toEqual([
      [`B:${moved}`, `S:${engine.id}`, 'carried over', true, false],
      [`B:${moved}`, `S:${sensor.id}`, 'carried over', true, false],
    ]);
  });

  test('what is under way is off as well', () => {
    const job = build();
    const a = job.removal('A', { phase: 'under way' });
    job.fluid('Oil', [a.connection('Hose')]);
    expect(plan(job).steps.map((one) => one.kind)).toEqual(['S', 'C1']);
    expect(plan(job).depth.off).toBe(1);
  });
});

describe('what a step deals with', () => {
  test('a kit is a receipt, what is left alone is not joined, what is carried over goes on at the bench', () => {
    const job = build();
    const work = job.removal('Work');
    work.part('Kit', { kind: 'kit' });
    const lid = work.part('Lid');
    const moved = work.part('Elbow', { fate: 'carry over', carryToId: lid });
    work.connection('Old pipe', { leaveAlone: true });
    const hose = work.connection('Hose');
    expect(step(job, `S:${work.id}`).missing.map((one) => one.thingId)).toEqual([lid, hose]);
    expect(step(job, `B:${moved}`).missing.map((one) => one.thingId)).toEqual([moved]);
    expect(step(job, `B:${moved}`).actions.map((one) => one.thingIds)).toEqual([[moved]]);
  });

  test('a hole that was found empty is none of its holes, until somebody fills it or wants it filled', () => {
    const job = build();
    const work = job.removal('Work');
    const set = work.set(2);
    const hole = set.holes[1] ?? '';
    job.set('position', hole, { found: 'empty' });
    const holes = () => step(job, `S:${work.id}`).fasteners[0]?.holes.map((one) => one.n);
    expect(holes()).toEqual([1]);
    job.set('position', hole, { fate: 'leave out' });
    expect(holes()).toEqual([1]);
    job.deed(hole, 'started');
    expect(holes()).toEqual([1, 2]);
    job.deed(hole, 'came off again').set('position', hole, { fate: 'fill' });
    expect(holes()).toEqual([1]);
    job.want(null, 'needed');
    const want = job.want(hole, 'dropped');
    expect(holes()).toEqual([1]);
    job.set('want', want, { state: 'needed' });
    expect(holes()).toEqual([1, 2]);
  });

  test('a temporary comes out with the step that was said, else with its own, else nowhere', () => {
    const job = build();
    const [a, b] = [job.removal('A'), job.removal('B')];
    const own = job.ownStep('Test');
    const said = a.temporary('said', 'blocks', { outWithId: b.id });
    const mine = a.temporary('mine', 'blocks');
    const blank = job.temporary('blank', { stepThingId: own });
    job.temporary('nowhere');
    const out = (id: string) =>
      step(job, id)
        .actions.filter((one) => one.code === 'take out')
        .flatMap((one) => one.thingIds);
    expect(out(`S:${b.id}`)).toEqual([said]);
    expect(out(`S:${a.id}`)).toEqual([mine]);
    job.deed(blank, 'put in');
    expect(step(job, `U:${own}`).missing.map((one) => one.thingId)).toEqual([own, blank]);
  });

  test('what was only made safe goes back with the first of its isolations, and with no other', () => {
    const job = build();
    const safe = job.removal('Off', { did: 'safe' });
    const [one, two] = [safe.isolation('electricity'), safe.isolation('load')];
    const guard = safe.part('Guard');
    expect(step(job, `I:${one}`).missing.map((missing) => missing.thingId)).toEqual([guard, one]);
    expect(step(job, `I:${two}`).missing.map((missing) => missing.thingId)).toEqual([two]);
    const both = build();
    const work = both.removal('Both');
    const lid = work.part('Lid');
    const energy = work.isolation('spring');
    expect(step(both, `I:${energy}`).missing.map((missing) => missing.thingId)).toEqual([energy]);
    expect(step(both, `S:${work.id}`).missing.map((missing) => missing.thingId)).toEqual([lid]);
  });
});

describe('a plan at a glance', () => {
  test('each step names the findings that lie on it, and only those', () => {
    const job = build();
    const a = job.removal('A');
    const b = job.removal('B', { place: 'rear' });
    b.connection('Plug');
    b.part('Lid');
    job.deed(b.id, 'done');
    const on = plan(job)
      .findings.filter((one) => one.stepId === `S:${b.id}`)
      .map((one) => one.key);
    expect(on.length).toBeGreaterThan(1);
    expect(step(job, `S:${b.id}`).findings).toEqual(on);
    expect(step(job, `S:${a.id}`).findings).toEqual([]);
  });

  test('a ring is shown with one shortest way round, and what of it may be loosened', () => {
    const job = build();
    const a = job.removal('A');
    const pump = a.part('Pump');
    const b = job.removal('B', { benchPartId: pump });
    job.first(a.id, b.id);
    expect(plan(job).undecided).toHaveLength(1);
    const [block] = plan(job).undecided;
    expect([...(block?.ring ?? [])].sort()).toEqual([`S:${a.id}`, `S:${b.id}`].sort());
    expect(block?.mayLoosen.map((edge) => [edge.from, edge.to, edge.rule])).toEqual(
      expect.arrayContaining([[`S:${a.id}`, `S:${b.id}`, 'own order']]),
    );
  });

  test('pieces that came off are counted once, not what was moved or bought', () => {
    const job = build();
    const set = job.removal('A').set(3);
    const own = { specId: set.specId, homeSetId: set.id } as const;
    job.move({ ...own, src: 'stow', dst: 'hole', cause: 'refitted' });
    job.move({ ...own, src: 'hole', dst: 'stow', cause: 'came off again' });
    job.move({ ...own, src: 'supply', dst: 'stow', qty: 5, cause: 'received' });
    job.move({ ...own, src: 'stow', dst: 'scrap', cause: 'came off' });
    expect(plan(job).depth.pieces).toBe(3);
  });

  test('a step that waits for two things says both', () => {
    const job = build();
    const work = job.removal('Work');
    for (const name of ['Head', 'Pump']) job.away(work.part(name, { stowId: job.bag() }), { toWhom: '' });
    expect(step(job, `S:${work.id}`).why).toBe('Head is away. Pump is away.');
  });
});

describe('ticking a step of any kind asks first what it would bury', () => {
  test('a shared hole, a part at the bench, an own step, a final tightening', () => {
    const job = build();
    const guard = job.removal('Guard');
    const bracket = job.removal('Bracket');
    const set = bracket.set(2, { laterWhen: 'some day' });
    const pipe = job.removal('Pipe').loose();
    job.holds(set.holes[1] ?? '', pipe.part('Clip'));
    pipe.connection('Sensor');
    const now = plan(job);
    const buried = (id: string) =>
      buriedBy(job.state(), job.at, now, now.steps.find((one) => one.id === id) as Step).map(
        (one) => one.code,
      );
    expect(buried(`F:${set.holes[1]}`)).toEqual(expect.arrayContaining(['connection.open', 'part.missing']));
    expect(buried(`S:${guard.id}`)).toContain('connection.open');
    expect(buried(`T:${set.id}`), 'the shared hole is tightened with it').toContain('part.missing');
  });

  test('what was passed by name is not asked again', () => {
    const job = build();
    const cover = job.removal('Cover');
    job.removal('Housing').needs(cover).connection('Plug');
    job.deed(cover.id, 'done');
    for (const finding of plan(job).findings) job.accept(finding, 'Capped.');
    job.deed(cover.id, 'came off again');
    const now = plan(job);
    expect(
      buriedBy(job.state(), job.at, now, now.steps.find((one) => one.id === `S:${cover.id}`) as Step),
    ).toEqual([]);
  });
});
