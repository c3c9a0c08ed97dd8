import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planJob, type Step, toolPlan, walked } from '../../core/reinstall/index.ts';
import { build, type JobBuilder } from '../support/build.ts';
import { runs } from '../support/runs.ts';
import { anyRecipe, jobOf, tickOff } from './any-job.ts';

const byTools = (job: JobBuilder) =>
  walked(planJob(job.state(), job.at), toolPlan(job.state(), job.at).order);

const isOpen = (step: Step): boolean => step.state !== 'done' && step.kind !== 'K';

describe('walking the list by tools', () => {
  test('for any job nothing is lost, no state changes, and every open step comes after the open ones it waits for', () => {
    fc.assert(
      fc.property(anyRecipe, (recipe) => {
        const job = jobOf(recipe);
        const plan = planJob(job.state(), job.at);
        const shared = new Set(plan.steps.filter((one) => one.kind === 'F').map((one) => one.thingId));
        for (const n of recipe.done) {
          const ready = byTools(job).steps.filter((one) => one.state === 'ready');
          const step = ready[n % Math.max(1, ready.length)];
          if (step) tickOff(job, step.kind, step.thingId, shared);
        }
        const list = planJob(job.state(), job.at);
        const walk = byTools(job);
        const byId = <T extends { readonly id: string }>(rows: readonly T[]) =>
          [...rows].sort((a, b) => (a.id < b.id ? -1 : 1));
        expect(byId(walk.steps)).toEqual(byId(list.steps));
        expect({ ...walk, steps: [] }).toEqual({ ...list, steps: [] });
        const place = new Map(walk.steps.filter(isOpen).map((one, i) => [one.id, i]));
        for (const { from, to } of walk.edges)
          if (place.has(from) && place.has(to))
            expect(place.get(from)).toBeLessThan(place.get(to) ?? Number.NEGATIVE_INFINITY);
      }),
      runs(200),
    );
  });

  /** Eight loose steps of two sizes in turn. */
  function twoSizes() {
    const job = build();
    const holes = new Map<string, readonly string[]>();
    for (let i = 0; i < 8; i += 1) {
      const removal = job.removal(`r${i}`).loose();
      const driveTyped = i % 2 === 0 ? '10 mm' : '13 mm';
      holes.set(removal.id, removal.set(2, {}, { driveTyped, drive: 'hex external' }).holes);
    }
    const tick = (step: Step | undefined) => {
      job.tickTock();
      for (const hole of holes.get(step?.removalId ?? '') ?? []) job.deed(hole, 'tightened');
    };
    return { job, tick };
  }

  test('step by step it goes on with the tool in hand, so that the saving is kept to the end', () => {
    const { job, tick } = twoSizes();
    expect(toolPlan(job.state(), job.at)).toMatchObject({ listed: 7, changes: 1 });
    // Begun against the grain: with the size of the fourth step in hand the rest still takes one change.
    tick(planJob(job.state(), job.at).steps[3]);
    const left = [];
    for (let step = byTools(job).steps.find(isOpen); step; step = byTools(job).steps.find(isOpen)) {
      left.push([toolPlan(job.state(), job.at).changes, step.title]);
      expect(step.state).toBe('ready');
      tick(step);
    }
    expect(left.map(([changes]) => changes)).toEqual([1, 1, 1, 1, 0, 0, 0]);
    const inHand = planJob(job.state(), job.at).steps.map((one) => one.title);
    expect(inHand).toHaveLength(8);
    const sizes = left.map(([, title]) => Number(String(title).slice(1)) % 2);
    expect(sizes).toEqual([0, 0, 0, 1, 1, 1, 1]);
  });

  test('nobody is sent away from a step half done, wherever it stands in the list', () => {
    const { job } = twoSizes();
    const [, , , , , sixth] = planJob(job.state(), job.at).steps;
    const [hole] = sixth?.fasteners[0]?.holes ?? [];
    job.tickTock();
    job.deed(hole?.positionId ?? '', 'started');
    expect(byTools(job).steps[0]?.id).toBe(sixth?.id);
    expect(toolPlan(job.state(), job.at)).toMatchObject({ changes: 1, exact: true });
  });

  test('an order that was made of another plan is not followed', () => {
    const { job } = twoSizes();
    const plan = planJob(job.state(), job.at);
    expect(walked(plan, toolPlan(job.state(), job.at).order.slice(1))).toBe(plan);
  });
});
