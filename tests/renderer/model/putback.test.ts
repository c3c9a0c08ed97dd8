import { describe, expect, it } from 'vitest';
import { jointOf } from '../../../renderer/model/joint.ts';
import { type MarkerAt, markables } from '../../../renderer/model/marks.ts';
import { aheadData, goOf, stepAt, stepData } from '../../../renderer/model/putback.ts';
import { thingAtHand } from '../../../renderer/model/thing-at-hand.ts';
import { command, good } from '../../support/client.ts';
import { type Seeded, seeded } from './seed.ts';

/** The step at hand, as the screen is given it. */
function screenOf(job: Seeded, stepId: string | null = null, markers: readonly MarkerAt[] = []) {
  const view = job.view();
  const step = stepAt(view, stepId);
  if (!step) throw new Error('Expected a step at hand.');
  const joint = jointOf(view, step, { photoId: null, markers, things: markables(view), allShown: 'yes' });
  return { step, joint, data: stepData(view, step, joint, job.workshop.now()) };
}

describe('the step at hand', () => {
  it('is the first that can be worked on, and the one asked for once somebody asked', async () => {
    const job = await seeded(['guard', 'end cover']);
    expect(screenOf(job).data.title).toBe('End cover');
    const guard = job.view().plan.steps.find((step) => step.title === 'Guard');
    expect(screenOf(job, guard?.id ?? null).data).toMatchObject({ title: 'Guard', state: 'behind' });
    await job.tick('done', [job.removalId('end cover')]);
    expect(screenOf(job, 'gone meanwhile').data.title).toBe('Guard');
    await job.tick('done', [job.removalId('guard')]);
    expect(stepAt(job.view(), null)).toBeNull();
  });

  it('asks for all by hand, then all tight, then that it is back: by what is open', async () => {
    const job = await seeded(['end cover, 3 M8x25']);
    const what = () => goOf(screenOf(job).step).what;
    expect(what()).toBe('started');
    await job.tick('started', [job.removalId('end cover')]);
    expect(what()).toBe('tightened');
    await job.tick('tightened', [job.removalId('end cover')]);
    expect(what()).toBe('done');
  });

  it('does not ask for a start by hand where there is one bolt, nor for what is tightened later', async () => {
    const one = await seeded(['bracket, 1 M8x25']);
    expect(goOf(screenOf(one).step).what).toBe('tightened');
    const later = await seeded(['arm, 2 M12x60, final tightening on the ground']);
    const set = later.view().state.fset[0];
    good(
      await later.client.record.change({
        ...command(),
        jobId: later.jobId,
        table: 'fset',
        id: set?.id ?? '',
        values: { laterWhen: 'on the ground' },
      }),
    );
    await later.tick('started', [later.removalId('arm')]);
    expect(goOf(screenOf(later).step).what).toBe('done');
  });

  it('says fitted, not tight, of keys, circlips and pins, and tells their sets apart by what they are', async () => {
    const job = await seeded(['drive gear, own place, 1 key, 1 circlip, shelf 2']);
    const { step, data } = screenOf(job);
    expect(goOf(step)).toMatchObject({ what: 'tightened', label: 'All fitted' });
    expect(data.sets.map((set) => set.name)).toEqual(['key', 'circlip']);
    const hole = step.fasteners[0]?.holes[0]?.positionId ?? '';
    expect(thingAtHand(step, markables(job.view()), hole, '')).toMatchObject({
      reading: null,
      options: ['out', 'fitted', 'left out', 'spoilt', 'broke off'].map((label) => ({ label })),
    });
    await job.tick('tightened', [job.removalId('drive gear')]);
    expect(goOf(screenOf(job).step).what).toBe('done');
    const bolts = screenOf(await seeded(['end cover, 3 M8x25']));
    expect(bolts.data.sets).toEqual([]);
  });

  it('keeps the torque as it was typed, with the other unit beside it', async () => {
    const metric = await seeded(['end cover, 2 M8x25, 25 Nm']);
    expect(screenOf(metric).data.figure).toEqual({ value: '25', unit: 'N·m', other: '18.4 lbf·ft' });
    const inch = await seeded(['end cover, 2 M8x25, 18 lbf·ft']);
    expect(screenOf(inch).data.figure).toEqual({ value: '18', unit: 'lbf·ft', other: '24.4 N·m' });
  });

  it('shows what is filled in where nothing is tightened, and else how many fasteners there are', async () => {
    const oil = await seeded(['drained gear oil 2,5 l', 'guard, 3 M6x16']);
    const fill = oil.view().plan.steps.find((step) => step.kind === 'C1');
    expect(screenOf(oil, fill?.id ?? null).data.figure).toMatchObject({ value: '2.5', unit: 'litres' });
    const guard = oil.view().plan.steps.find((step) => step.title === 'Guard');
    expect(screenOf(oil, guard?.id ?? null).data.figure).toMatchObject({ value: '3', unit: 'fasteners' });
  });
});

describe('the order inside a step', () => {
  it('has a box where a tick is kept, and none where a thing is only to be read and done', async () => {
    const job = await seeded(['end cover, gasket, 2 M8x25']);
    const boxes = screenOf(job).data.actions.map((action) => [action.text.split(/[:. ]/)[0], action.ticks]);
    expect(boxes).toEqual(
      expect.arrayContaining([
        ['Clean', false],
        ['Fit', true],
        ['Start', true],
        ['Tighten', true],
      ]),
    );
  });
});

describe('rounds', () => {
  it('go by hand, 30, 70, 100 % and once around, each with its torque in the unit that was typed', async () => {
    const job = await seeded(['end cover, 4 M8x25, 20 lbf·ft']);
    const { rounds } = screenOf(job).joint;
    expect(rounds.map((round) => [round.share, round.value, round.unit, round.state])).toEqual([
      ['By hand', 'all', '', 'now'],
      ['30 %', '6', 'lbf·ft', 'to come'],
      ['70 %', '14', 'lbf·ft', 'to come'],
      ['100 %', '20', 'lbf·ft', 'to come'],
      ['Once around', '20', 'lbf·ft', 'to come'],
    ]);
  });

  it('follow the holes: by hand until all are started, full torque once one is tight, done when all are', async () => {
    const job = await seeded(['end cover, 3 M8x25, 25 Nm']);
    const states = () => screenOf(job).joint.rounds.map((round) => round.state);
    const holes = job.view().state.position.map((hole) => hole.id);
    await job.tick('started', holes);
    expect(states()).toEqual(['done', 'now', 'to come', 'to come', 'to come']);
    await job.tick('tightened', holes.slice(0, 1));
    // Nobody wrote that the shares before it were walked.
    expect(states()).toEqual(['done', 'not noted', 'not noted', 'now', 'to come']);
    expect(
      screenOf(job)
        .joint.rounds.map((round) => round.about)
        .slice(1, 4),
    ).toEqual(['not noted', 'not noted', 'round 3, 1 of 3']);
    await job.tick('tightened', holes);
    // Full torque is not the end: once around, until no fastener turns any more.
    expect(states()).toEqual(['done', 'not noted', 'not noted', 'done', 'now']);
    good(
      await job.client.tick.round({ ...command(), jobId: job.jobId, holeIds: holes, round: 'once around' }),
    );
    expect(states()).toEqual(['done', 'not noted', 'not noted', 'done', 'done']);
  });

  it('are done as they were walked, and no more once the joint came off again', async () => {
    const job = await seeded(['end cover, 3 M8x25, 25 Nm']);
    const states = () => screenOf(job).joint.rounds.map((round) => round.state);
    const holes = job.view().state.position.map((hole) => hole.id);
    const walk = async (round: string) =>
      good(await job.client.tick.round({ ...command(), jobId: job.jobId, holeIds: holes, round }));
    await job.tick('started', holes);
    await walk('30 %');
    await job.tick('tightened', holes);
    expect(states()).toEqual(['done', 'done', 'not noted', 'done', 'now']);
    const thingId = job.view().state.removal[0]?.id ?? '';
    good(await job.client.tick.again({ ...command(), jobId: job.jobId, thingId, why: 'gasket leaked' }));
    await job.tick('started', holes);
    await job.tick('tightened', holes);
    expect(states()).toEqual(['done', 'not noted', 'not noted', 'done', 'now']);
  });

  it('give the maker’s stages their place, and no full torque after an angle', async () => {
    const job = await seeded(['head, 4 M10x80']);
    good(
      await job.client.record.change({
        ...command(),
        jobId: job.jobId,
        table: 'fset',
        id: job.view().state.fset[0]?.id ?? '',
        values: { torqueMnm: 40_000, torqueTyped: '40 Nm + 90°', angleDeg: 90 },
      }),
    );
    const { rounds } = screenOf(job).joint;
    expect(rounds.map((round) => `${round.value} ${round.unit}`.trim())).toEqual(['all', '40 N·m', '90°']);
  });

  it('are none where no torque is known, and count only what has one: pins go in beside', async () => {
    const bare = await seeded(['guard, 4 M6x16']);
    expect(screenOf(bare).joint.rounds).toEqual([]);
    const pins = await seeded(['end cover, 4 M8x25, 25 Nm', '+2 dowels']);
    expect(screenOf(pins).joint.rounds[0]?.about).toBe('0 of 4');
  });
});

describe('the joint on its photo', () => {
  /** A photo row is all that the model reads; the picture itself is not looked at. */
  async function onPhoto(count: number, marked: number) {
    const job = await seeded([`end cover, ${count} M8x25, 25 Nm`]);
    const view = job.view();
    const original = { id: 'o', width: 1000, height: 1000, turn: 1, takenUtc: 1, takenLocal: null };
    const photo = {
      id: 'p',
      originalId: 'o',
      removalId: job.removalId('end cover'),
      fileName: 'cover.jpg',
      addedAt: 1,
    };
    const state = { ...view.state, original: [original], photo: [photo] } as unknown as typeof view.state;
    const holes = state.position.toSorted((a, b) => a.n - b.n);
    const markers: MarkerAt[] = holes.slice(0, marked).map((hole, i) => ({
      id: `m${hole.n}`,
      photoId: 'p',
      n: hole.n,
      x: 0.5 + 0.3 * Math.cos((2 * Math.PI * i) / count),
      y: 0.5 + 0.3 * Math.sin((2 * Math.PI * i) / count),
      thingId: hole.id,
      togetherId: null,
    }));
    const joint = (allShown: 'yes' | 'no' | '' = 'yes') => {
      const now = {
        ...job.view(),
        state: { ...job.view().state, original: state.original, photo: state.photo },
      };
      const step = stepAt(now, null);
      if (!step) throw new Error('Expected a step.');
      return jointOf(now, step, { photoId: null, markers, things: markables(now), allShown });
    };
    return { job, holes, joint };
  }

  it('is tightened crosswise by the marks: each second hole lies opposite the one before it', async () => {
    const { holes, joint } = await onPhoto(8, 8);
    const numbers = joint().order?.order.map((id) => holes.find((hole) => hole.id === id)?.n ?? 0) ?? [];
    expect(numbers).toHaveLength(8);
    for (let i = 0; i < 8; i += 2)
      expect(Math.abs((numbers[i] ?? 0) - (numbers[i + 1] ?? 0)), `pair ${i}`).toBe(4);
  });

  it('lets the moves done disappear, and lights the next hole of the round at hand', async () => {
    const { job, holes, joint } = await onPhoto(4, 4);
    // Asked first: an order over some of the holes is none.
    expect(joint('')).toMatchObject({ nextId: null, moves: [], question: true });
    const first = joint();
    expect([first.nextId, first.nextRound, first.question]).toEqual([first.order?.order[0], 'snug', false]);
    expect(first.moves).toHaveLength(3);
    await job.tick(
      'started',
      holes.map((hole) => hole.id),
    );
    const order = joint().order?.order ?? [];
    expect([joint().nextId, joint().nextRound]).toEqual([order[0], '30 %']);
    await job.tick('tightened', order.slice(0, 2));
    expect(joint().nextId).toBe(order[2]);
    expect(joint().moves).toEqual([
      { fromId: order[1], toId: order[2], now: true },
      { fromId: order[2], toId: order[3], now: false },
    ]);
  });

  it('keeps what the photo does not show beside it, and asks whether all are shown', async () => {
    const { holes, joint } = await onPhoto(5, 4);
    expect(joint().marks).toHaveLength(4);
    expect(joint().beside.map((mark) => mark.id)).toEqual([holes[4]?.id]);
    expect(joint('').question).toBe(true);
    // Four by the marks, then the one that the photo does not show: it counts the same.
    expect(joint('no').sequence).toEqual([...(joint('no').order?.order ?? []), holes[4]?.id]);
    expect(joint('no').order?.cautions.join(' ')).toContain('not the whole joint');
  });
});

describe('a single thing at hand', () => {
  it('is a hole with its states and what was read, or a temporary that is in or out', async () => {
    const job = await seeded(['end cover, 2 M8x25', '+rag in the port']);
    const [hole] = job.view().state.position;
    good(
      await job.client.tick.do({
        ...command(),
        jobId: job.jobId,
        thingIds: [hole?.id ?? ''],
        what: 'tightened',
        valueTyped: '24 N·m',
        known: 'read',
      }),
    );
    const { step } = screenOf(job);
    const things = markables(job.view());
    expect(thingAtHand(step, things, hole?.id ?? '', '')).toMatchObject({
      state: 'tightened',
      reached: expect.stringMatching(/24(\.0)? N·m/) as string,
    });
    const rag = job.view().state.temporary[0];
    expect(thingAtHand(step, things, rag?.id ?? '', '')).toMatchObject({ state: 'in', reading: null });
  });
});

describe('the list', () => {
  it('groups steps by what may be done with them, and offers the end only when nothing is left', async () => {
    const job = await seeded(['guard', 'end cover']);
    const groups = () =>
      aheadData(job.view(), Date.now()).groups.map((one) => [one.group, one.rows.map((row) => row.name)]);
    expect(groups()).toEqual([
      ['ready', ['End cover']],
      ['behind', ['Guard']],
    ]);
    expect(aheadData(job.view(), Date.now()).close).toBeNull();
    await job.tick('done', [job.removalId('end cover')]);
    await job.tick('done', [job.removalId('guard')]);
    expect(groups()).toEqual([['done', ['End cover', 'Guard']]]);
    expect(aheadData(job.view(), Date.now())).toMatchObject({ close: 'open', next: null });
    good(await job.client.jobs.close({ ...command(), jobId: job.jobId, phase: 'closed', recheckDue: null }));
    expect(aheadData(job.view(), Date.now()).close).toBe('closed');
  });
});
