import { describe, expect, test } from 'vitest';
import { planJob, type Step } from '../../core/reinstall/index.ts';
import type { Row } from '../../core/model/tables.ts';
import { build, type JobBuilder } from '../support/build.ts';

/** Housing, cover, cap, lid, each over the one before; housing and cover were ticked whole, and a plug under them is open. */
const stacked = (place: Partial<Row<'removal'>> = {}) => {
  const job = build();
  const lid = job.removal('Lid', { defaultNeed: 'loosened' });
  const cap = job.removal('Cap', place);
  const cover = job.removal('Cover');
  const housing = job.removal('Housing');
  const plug = housing.connection('Plug');
  job.deed(housing.id, 'done').deed(cover.id, 'done');
  return { job, lid, cap, cover, housing, plug };
};
const plan = (job: JobBuilder) => planJob(job.state(), job.at);
const step = (job: JobBuilder, id: string): Step =>
  plan(job).steps.find((one) => one.id === `S:${id}`) as Step;
const open = (job: JobBuilder): string =>
  plan(job).findings.find((one) => one.code === 'connection.open')?.key ?? '';
const covering = (job: JobBuilder) => plan(job).gates.filter((gate) => gate.kind === 'covering');

describe('a stop holds every step above it', () => {
  test('however far below it lies, until it is mended', () => {
    const { job, cap, cover, housing, plug } = stacked();
    const key = open(job);
    expect(key).not.toBe('');
    expect(step(job, housing.id), 'what lies on a step is mended in it').toMatchObject({
      state: 'done',
      stoppedBy: [],
      findings: [key],
    });
    expect(step(job, cover.id)).toMatchObject({ state: 'done', stoppedBy: [key] });
    expect(step(job, cap.id)).toMatchObject({ state: 'held', stoppedBy: [key], gate: `gate:S:${cap.id}` });
    expect(plan(job).ahead.has(`S:${cap.id}`)).toBe(false);
    job.deed(plug, 'joined');
    expect(step(job, cap.id)).toMatchObject({ state: 'ready', stoppedBy: [], gate: null });
    expect(plan(job).ahead.has(`S:${cap.id}`)).toBe(true);
  });

  test('or is passed by name', () => {
    const { job, cap } = stacked();
    job.accept(plan(job).findings.find((one) => one.key === open(job)) ?? { key: '', digest: '' }, 'Capped.');
    expect(step(job, cap.id)).toMatchObject({ state: 'ready', stoppedBy: [] });
    expect(covering(job)).toEqual([]);
  });

  test('but not a step that only follows it somewhere else: it covers nothing there', () => {
    const { job, cap } = stacked({ place: 'rear' });
    for (const removal of job.rows.removal)
      if (removal.id !== cap.id) job.set('removal', removal.id, { place: 'front' });
    expect(step(job, cap.id)).toMatchObject({ state: 'ready', stoppedBy: [] });
  });

  test('nor by what is only a warning or a note', () => {
    const { job, cap, housing, plug } = stacked();
    job.deed(plug, 'joined');
    const face = housing.connection('Face', { joint: 'face', seal: 'unknown' });
    job.deed(face, 'joined');
    expect(plan(job).findings.map((one) => one.severity)).toContain('warn');
    expect(step(job, cap.id).state).toBe('ready');
  });

  test('power comes over everything, wherever it lies', () => {
    const { job, cap } = stacked({ place: 'rear' });
    for (const removal of job.rows.removal)
      if (removal.id !== cap.id) job.set('removal', removal.id, { place: 'front' });
    const power = job.removal('Off', { did: 'safe' }).isolation('electricity');
    job.deed(cap.id, 'done').deed(job.rows.removal[0]?.id ?? '', 'done');
    const gate = plan(job).gates.find((one) => one.stepId === `I:${power}`);
    expect(gate).toMatchObject({ open: false, holding: [open(job)], notYet: [], passedBy: [] });
    expect(plan(job).steps.find((one) => one.id === `I:${power}`)?.state).toBe('held');
  });

  test('of many below one example is enough, of those right below all are named', () => {
    const { job, cap, cover, housing } = stacked();
    housing.part('Shim');
    const hose = cover.connection('Hose');
    const mine = step(job, cap.id).stoppedBy;
    expect(mine).toEqual([`connection.open:${hose}`]);
    expect(step(job, cover.id).stoppedBy).toHaveLength(2);
  });
});

describe('the gate before covering', () => {
  test('stands before the step that somebody could turn to, and names what is under it', () => {
    const { job, cap } = stacked();
    const lid = job.rows.removal[0]?.id ?? '';
    job.set('removal', cap.id, { defaultNeed: 'confirmed' });
    expect(covering(job)).toEqual([
      {
        id: `gate:S:${cap.id}`,
        kind: 'covering',
        stepId: `S:${cap.id}`,
        open: false,
        holding: [open(job)],
        notYet: [],
        passedBy: [],
      },
    ]);
    expect(step(job, lid).state, 'behind the cap').toBe('behind');
  });

  test('stands as well before a step that waits for something', () => {
    const { job, cap } = stacked();
    job.away(cap.part('Cap', { stowId: job.bag() }));
    expect(step(job, cap.id).state).toBe('waiting');
    expect(covering(job).map((gate) => gate.stepId)).toEqual([`S:${cap.id}`]);
  });

  test('stands nowhere where a step only waits, and nothing is open under it', () => {
    const job = build();
    job.away(job.removal('Cap').part('Cap', { stowId: job.bag() }));
    expect(covering(job)).toEqual([]);
  });
});

describe('what a gate still lacks', () => {
  test('a step of nothing is simply not done', () => {
    const job = build();
    const look = job.removal('Looked at');
    expect(plan(job).gates).toEqual([
      {
        id: 'gate:closing',
        kind: 'closing',
        stepId: null,
        open: false,
        holding: [],
        notYet: [{ stepId: `S:${look.id}`, sentence: 'It is not done.' }],
        passedBy: [],
      },
    ]);
  });

  test('only what lies below it, directly or through others', () => {
    const job = build();
    const power = job.removal('Off', { did: 'safe' }).isolation('load', { scope: 'listed' });
    const [a, b] = [job.removal('A'), job.removal('B')];
    job.removal('C').loose();
    job.add('protects', job.id('protects'), { isolationId: power, removalId: a.id });
    expect(
      plan(job)
        .gates.find((gate) => gate.stepId === `I:${power}`)
        ?.notYet.map((one) => one.stepId)
        .sort(),
    ).toEqual([`S:${a.id}`, `S:${b.id}`].sort());
  });

  test('never more than two hundred lines of it', () => {
    const job = build();
    for (let i = 0; i < 203; i += 1) job.removal(`R${i}`);
    expect(plan(job).gates.at(-1)?.notYet).toHaveLength(200);
  });
});

describe('a ring', () => {
  test('holds its steps once nothing else is before them', () => {
    const job = build();
    const [a, b] = [job.removal('A').loose(), job.removal('B').loose()];
    job.first(a.id, b.id);
    job.first(b.id, a.id);
    job.deed(a.id, 'done');
    expect(plan(job).ahead.size).toBe(0);
    expect(step(job, b.id)).toMatchObject({
      state: 'held',
      why: 'It waits in a ring of steps.',
      stoppedBy: [],
    });
  });
});
