import { describe, expect, test } from 'vitest';
import { type HoleMark, planJob, type Step } from '../../core/reinstall/index.ts';
import type { Row } from '../../core/model/tables.ts';
import { build } from '../support/build.ts';

/** A cover with two bolts, a part, a hose, a measure; and what the plan says about it. */
const cover = (more: Partial<Row<'fset'>> = {}) => {
  const job = build();
  const removal = job.removal('Cover');
  const set = removal.set(2, more);
  const part = removal.part('Lid');
  const hose = removal.connection('Hose');
  const play = removal.measure('Play');
  const step = (): Step => planJob(job.state(), job.at).steps.find((one) => one.kind === 'S') as Step;
  const marks = (): HoleMark[] => step().fasteners[0]?.holes.map((hole) => hole.mark) ?? [];
  const missing = (): string[] => step().missing.map((one) => `${one.what} ${one.sentence}`);
  const [one, two] = set.holes as [string, string];
  return { job, removal, set, part, hose, play, one, two, step, marks, missing };
};

describe('what a hole shows', () => {
  test.each<[Row<'deed'>['what'], HoleMark]>([
    ['started', 'started'],
    ['fitted', 'started'],
    ['tightened', 'tightened'],
    ['done', 'tightened'],
    ['paint-checked', 'paint-checked'],
    ['left out', 'left out'],
    ['measured', 'out'],
    ['put on', 'out'],
  ])('%s: %s', (what, mark) => {
    const { job, one, marks } = cover();
    job.deed(one, what);
    expect(marks()).toEqual([mark, 'out']);
  });

  test('in by hand is enough for now where the final tightening comes later', () => {
    const { job, one, two, marks } = cover({ laterWhen: 'warm' });
    job.deed(one, 'started').deed(two, 'fitted');
    expect(marks()).toEqual(['later', 'later']);
  });

  test('left out by its fate, blocked until a repair, and what was done to it after all wins over both', () => {
    const { job, one, two, marks } = cover();
    job.set('position', one, { fate: 'leave out' }).set('position', two, { fate: 'blocked' });
    expect(marks()).toEqual(['left out', 'blocked']);
    job.deed(two, 'measured');
    expect(marks()).toEqual(['left out', 'blocked']);
    job.deed(two, 'repaired');
    expect(marks()).toEqual(['left out', 'out']);
    job.deed(one, 'tightened').deed(two, 'tightened');
    expect(marks()).toEqual(['tightened', 'tightened']);
  });
});

describe('what is ticked on a whole set', () => {
  test('goes for all its holes, and a later word on one hole wins, as an earlier one does not', () => {
    const { job, set, one, marks } = cover();
    job.deed(one, 'left out').deed(set.id, 'started');
    expect(marks()).toEqual(['started', 'started']);
    job.deed(one, 'tightened');
    expect(marks()).toEqual(['tightened', 'started']);
    job.deed(set.id, 'tightened');
    expect(marks()).toEqual(['tightened', 'tightened']);
  });

  test('counts for one hole only since that hole last came off again', () => {
    const { job, set, one, marks } = cover();
    job.deed(set.id, 'tightened').deed(one, 'came off again');
    expect(marks()).toEqual(['out', 'tightened']);
    job.deed(set.id, 'started');
    expect(marks()).toEqual(['started', 'started']);
  });

  test('in the same moment as a word on the hole stands in the order of rounds', () => {
    const { job, set, one, marks } = cover();
    const at = job.tickTock();
    job.deed(one, 'tightened', { at, round: 2 }).deed(set.id, 'started', { at, round: 1 });
    expect(marks()[0]).toBe('tightened');
  });
});

describe('coming off again', () => {
  test('a set takes its holes along, a removal all that is in it', () => {
    const { job, removal, set, part, hose, play, one, two, marks, step, missing } = cover();
    for (const hole of [one, two]) job.deed(hole, 'tightened');
    job.deed(part, 'fitted').deed(hose, 'joined').deed(play, 'measured', { value: 1 });
    expect(step()).toMatchObject({ state: 'done', missing: [] });
    job.deed(set.id, 'came off again');
    expect(marks()).toEqual(['out', 'out']);
    for (const hole of [one, two]) job.deed(hole, 'tightened');
    expect(step().state).toBe('done');
    job.deed(removal.id, 'came off again');
    expect(marks()).toEqual(['out', 'out']);
    expect(missing()).toEqual([
      'tightened bolts, hole 1: empty.',
      'tightened bolts, hole 2: empty.',
      'fitted Lid is not back.',
      'joined Hose is not joined.',
      'measured Play is not measured.',
    ]);
    job.deed(part, 'fitted').deed(hose, 'tightened').deed(play, 'done').deed(set.id, 'done');
    expect(step()).toMatchObject({ state: 'done', missing: [] });
  });

  test('each time opens one more round', () => {
    const { job, removal, step } = cover();
    expect(step().round).toBe(1);
    job.deed(removal.id, 'done').deed(removal.id, 'came off again');
    expect(step()).toMatchObject({ round: 2, state: 'ready' });
    job.deed(removal.id, 'done', { round: 2 }).deed(removal.id, 'came off again', { round: 3 });
    expect(step().round).toBe(3);
    job.deed(removal.id, 'done', { round: 7 });
    expect(step()).toMatchObject({ round: 7, state: 'done' });
  });

  test('a step that was ticked as a whole is done until something of it came off again', () => {
    const { job, removal, part, hose, one, step } = cover();
    for (const thing of [part, hose, one]) {
      job.deed(removal.id, 'done');
      expect(step().state).toBe('done');
      job.deed(thing, 'came off again');
      expect(step().state, thing).toBe('ready');
    }
  });
});

describe('what is still missing, in words', () => {
  test('by what was done to it so far', () => {
    const { job, removal, one, two, part, hose, missing } = cover();
    job.deed(one, 'started').set('position', two, { fate: 'blocked' });
    job.set('part', part, { name: '' }).set('connection', hose, { name: '' });
    removal.temporary('Rag', 'blocks');
    expect(missing()).toEqual([
      'tightened bolts, hole 1: started, not tight.',
      'tightened bolts, hole 2: blocked.',
      'fitted The part is not back.',
      'joined The connection is not joined.',
      'measured Play is not measured.',
      'taken out Rag is still in place.',
    ]);
  });

  test('slackened is not tight, a new hole in a slackened set is empty, and one that is tightened later is only to be started', () => {
    const slack = cover({ how: 'slackened', name: '' });
    slack.job.set('position', slack.two, { found: 'new hole' });
    expect(slack.missing().slice(0, 2)).toEqual([
      'tightened fasteners, hole 1: slackened, not tight.',
      'tightened fasteners, hole 2: empty.',
    ]);
    expect(cover({ laterWhen: 'warm' }).missing()[0]).toBe('started bolts, hole 1: empty.');
  });

  test('what is left out, or need not be measured, is missing nowhere', () => {
    const { job, one, two, part, hose, play, step } = cover();
    job.set('part', part, { fate: 'leave out' }).set('measure', play, { required: false });
    job.deed(one, 'left out').deed(two, 'left out').deed(hose, 'left out');
    expect(step()).toMatchObject({ state: 'done', missing: [] });
  });

  test('a temporary is in place since its removal, an aid only once it was put in', () => {
    const { job, removal, step } = cover();
    const rag = removal.temporary('Rag', 'blocks');
    const aid = removal.temporary('Pin', 'aid');
    const plug = job.temporary('Plug', { stepThingId: removal.id });
    const out = () =>
      step()
        .missing.filter((one) => one.what === 'taken out')
        .map((one) => one.thingId);
    expect(out()).toEqual([rag]);
    job.deed(aid, 'put in').deed(plug, 'fitted').deed(rag, 'taken out');
    expect(out()).toEqual([aid, plug]);
    job.deed(rag, 'put in').deed(aid, 'done').deed(plug, 'taken out').deed(rag, 'measured');
    expect(out()).toEqual([rag]);
  });

  test('a step of nothing is done only when it is ticked', () => {
    const job = build();
    const removal = job.removal('Looked at');
    const state = () => planJob(job.state(), job.at).steps[0]?.state;
    expect(state()).toBe('ready');
    job.deed(removal.id, 'done');
    expect(state()).toBe('done');
  });
});

describe('fluids, energies, own steps and re-checks', () => {
  test('a fluid by its deeds, or ticked as a whole; where nothing was lost it needs no filling', () => {
    const job = build();
    const oil = job.fluid('Oil', [job.removal('Plug').set(1).id], { bleed: true, liveEnergy: 'motion' });
    const states = () =>
      planJob(job.state(), job.at)
        .steps.filter((one) => one.kind.startsWith('C'))
        .map((one) => [one.kind, one.state, one.missing.map((m) => m.what)]);
    expect(states()).toEqual([
      ['C1', 'behind', ['filled', 'cold leak checked']],
      ['C2', 'behind', ['bled', 'hot leak checked']],
    ]);
    job.deed(oil, 'filled').deed(oil, 'cold leak checked');
    expect(states()[0]).toEqual(['C1', 'done', []]);
    job.deed(oil, 'bled');
    expect(states()[1]?.[2]).toEqual(['hot leak checked']);
    job.deed(oil, 'hot leak checked');
    expect(states()[1]).toEqual(['C2', 'done', []]);
    job.deed(oil, 'came off again').set('fluid', oil, { lost: 'none' });
    expect(states()[0]?.[2]).toEqual(['cold leak checked']);
    job.deed(oil, 'done');
    expect(states().map((one) => one[1])).toEqual(['done', 'done']);
  });

  test('an energy is back when it is given back, whatever else came off with it', () => {
    const job = build();
    const safe = job.removal('Off', { did: 'safe' });
    const guard = safe.part('Guard');
    const power = safe.isolation('electricity');
    const step = () => planJob(job.state(), job.at).steps[0] as Step;
    expect(step().missing.map((one) => one.what)).toEqual(['fitted', 'given back']);
    job.deed(guard, 'fitted');
    expect(step()).toMatchObject({
      state: 'ready',
      missing: [{ what: 'given back', sentence: 'It is not given back.' }],
    });
    job.deed(power, 'given back');
    expect(step()).toMatchObject({ state: 'done', missing: [] });
    job.deed(power, 'came off again');
    expect(step()).toMatchObject({ state: 'ready', round: 2 });
  });

  test('an own step by its tick, a re-check of a set by a measurement, not by the tightening', () => {
    const job = build();
    const own = job.ownStep('Look');
    const set = job.removal('Wheel').set(1, { recheck: true });
    const of = (kind: Step['kind']) =>
      planJob(job.state(), job.at).steps.find((one) => one.kind === kind) as Step;
    expect(of('U').missing).toMatchObject([{ thingId: own, what: 'done', sentence: 'It is not done.' }]);
    expect(of('K').missing).toMatchObject([
      { thingId: set.id, what: 'done', sentence: 'It is not re-checked.' },
    ]);
    job.deed(own, 'done').deed(set.id, 'tightened').deed(set.id, 'done');
    expect(of('U').state).toBe('done');
    expect(of('K').state).not.toBe('done');
    job.rows.job = { ...job.rows.job, phase: 'closed' };
    job.deed(set.id, 'paint-checked');
    expect(of('K').state).toBe('done');
  });

  test('a final tightening that is ticked as a whole is through, and left-out holes need none', () => {
    const job = build();
    const set = job.removal('Arm').set(2, { laterWhen: 'some day', name: '' });
    const final = () => planJob(job.state(), job.at).steps.find((one) => one.kind === 'T') as Step;
    expect(final().missing.map((one) => one.sentence)).toEqual([
      'fasteners, hole 1: final tightening is due some day.',
      'fasteners, hole 2: final tightening is due some day.',
    ]);
    job.deed(set.holes[0] ?? '', 'left out').deed(set.holes[1] ?? '', 'paint-checked');
    expect(final().state).toBe('done');
    job.deed(set.holes[1] ?? '', 'came off again');
    expect(final().state).not.toBe('done');
    job.deed(set.id, 'done');
    expect(final().state).toBe('done');
  });
});

describe('the last step at which something can be mended', () => {
  test('is the first in the list that covers it, and none where nothing does', () => {
    const job = build();
    const far = job.removal('Far', { place: 'rear' });
    const second = job.removal('Second').needs(far);
    const first = job.removal('First').needs(far, second);
    const low = job.removal('Low').needs(second, first, far);
    const plug = low.connection('Plug');
    job.deed(first.id, 'done');
    const found = () => planJob(job.state(), job.at).findings.find((one) => one.subjects[0] === plug);
    expect(found()?.latestStep).toBe(`S:${first.id}`);
    job.rows.job = { ...job.rows.job, phase: 'closed' };
    const top = far.connection('Top');
    expect(
      planJob(job.state(), job.at).findings.find((one) => one.subjects[0] === top)?.latestStep,
    ).toBeNull();
  });

  test('findings on one step stand in the order of their keys; a step without a title is named by its number', () => {
    const job = build();
    const step = job.removal('');
    const [hose, lid, bolts] = [step.connection('Hose'), step.part('Lid'), step.set(1, { name: '' })];
    job.deed(step.id, 'done');
    const stops = planJob(job.state(), job.at).findings.filter((one) => one.severity === 'stop');
    expect(stops.map((one) => one.code)).toEqual(['connection.open', 'fastener.short', 'part.missing']);
    expect(stops[1]?.sentence).toBe('removal 1: hole 1 of 1 is empty.');
    expect(stops.map((one) => one.subjects[0])).toEqual([hose, bolts.holes[0], lid]);
  });
});
