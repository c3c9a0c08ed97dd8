import { describe, expect, it } from 'vitest';
import { gatesByNotch, gateTitle, stopsOfJob, whereToClear } from '../../../renderer/model/gates.ts';
import { lineOf, logOf } from '../../../renderer/model/line.ts';
import { command, good } from '../../support/client.ts';
import { type Seeded, seeded } from './seed.ts';

const titles = (job: Seeded, direction: 'back' | 'apart' = 'back') =>
  lineOf(job.view(), { direction, atId: null, now: 0 }, []).items.map((item) => item.title);

describe('gates on the line', () => {
  it('stand just below the notch that comes next on the way up, the closing one at the top', async () => {
    const job = await seeded(['mains locked out', 'guard', 'end cover']);
    expect(titles(job)).toEqual([
      'Check before closing',
      'Mains locked out',
      'Check before power or pressure',
      'Guard',
      'End cover',
    ]);
  });

  it('stand over each other in the order in which they come on the way up', async () => {
    const job = await seeded(['guard', 'drained gear oil 1 l', 'mains locked out', 'cover']);
    expect(titles(job).filter((title) => title.startsWith('Check before'))).toEqual([
      'Check before closing',
      'Check before power or pressure',
      'Check before filling',
    ]);
  });

  it('are not drawn while things come off', async () => {
    const job = await seeded(['mains locked out', 'guard']);
    expect(titles(job, 'apart')).toEqual(['Mains locked out', 'Guard']);
  });

  it('are one bar where two of a kind stand at one place', async () => {
    const job = await seeded(['mains locked out', 'pressure let off', 'guard']);
    expect(titles(job).filter((title) => title === 'Check before power or pressure')).toHaveLength(2);
    const merged = await seeded(['guard', 'mains locked out', 'pressure let off']);
    expect(titles(merged).filter((title) => title === 'Check before power or pressure')).toHaveLength(1);
  });

  it('say what holds them, what is first, and that they are passed', async () => {
    const job = await seeded(['mains locked out', 'guard', 'end cover, 4 M8x25, bag 4']);
    const log = logOf(job.view()).map((removal) => removal.id);
    const gate = () => gatesByNotch(job.view(), log).get(log[0] ?? '')?.[0];
    expect(gate()).toMatchObject({ passed: false, note: '2 steps first' });
    const bag = job.view().state.stow.find((stow) => stow.label === '4');
    good(await job.client.piece.count({ ...command(), jobId: job.jobId, stowId: bag?.id ?? '', counted: 3 }));
    expect(gate()).toMatchObject({ passed: false, note: '1 open point holds it' });
    const free = await seeded(['mains locked out', 'guard']);
    const ids = logOf(free.view()).map((removal) => removal.id);
    await free.tick('done', [free.removalId('guard')]);
    const power = () => gatesByNotch(free.view(), ids).get(ids[0] ?? '')?.[0];
    expect(power()).toMatchObject({ passed: false, note: 'nothing holds it' });
    await free.tick('given back', [free.view().state.isolation[0]?.id ?? '']);
    expect(power()).toMatchObject({ passed: true, note: '' });
  });

  it('let a removal that only made something safe be back once it is given back', async () => {
    const job = await seeded(['mains locked out', 'guard']);
    const back = () =>
      lineOf(job.view(), { direction: 'back', atId: null, now: 0 }, []).items.flatMap((item) =>
        item.kind === 'removal' ? [item.back] : [],
      );
    await job.tick('done', [job.removalId('guard')]);
    expect(back()).toEqual([false, true]);
    await job.tick('given back', [job.view().state.isolation[0]?.id ?? '']);
    expect(back()).toEqual([true, true]);
  });
});

describe('a point at a gate', () => {
  it('leads to the bag where a piece is looked for', async () => {
    const job = await seeded(['guard', 'end cover, 4 M8x25, bag 4']);
    const bag = job.view().state.stow.find((stow) => stow.label === '4');
    good(await job.client.piece.count({ ...command(), jobId: job.jobId, stowId: bag?.id ?? '', counted: 3 }));
    const [fact] = stopsOfJob(job.view());
    if (!fact) throw new Error('Expected the search to hold the closing.');
    expect(whereToClear(job.view(), fact, null)).toMatchObject({ stowId: bag?.id });
    expect(gateTitle(job.view(), null)).toBe('Check before closing');
  });

  it('leads to its step, and nowhere from that step itself', async () => {
    const job = await seeded(['guard', 'end cover, 2 M8x25']);
    const step = job.view().plan.steps.find((one) => one.title === 'End cover');
    const fact = { key: 'k', sentence: '', clears: '', stepId: step?.id ?? '', coveredBy: null };
    expect(whereToClear(job.view(), fact, null)).toEqual({ label: 'Go to End cover', stepId: step?.id });
    expect(whereToClear(job.view(), fact, step?.id ?? '')).toBeNull();
  });
});
