import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Plan, planJob, reachOf, type Step } from '../../core/reinstall/index.ts';
import type { JobState } from '../../core/model/tables.ts';
import type { JobBuilder } from '../support/build.ts';
import { runs } from '../support/runs.ts';
import { anyRecipe, jobOf, type Recipe, tickOff } from './any-job.ts';
import { reference } from './reference.ts';

/** Published graphs of the literature are in fixtures.test.ts; here the properties hold for random jobs. */
const RUNS = runs(200);
const nameOf = (step: Pick<Step, 'kind' | 'thingId'>): string => `${step.kind}:${step.thingId}`;

const sharedOf = (plan: Plan): ReadonlySet<string> =>
  new Set(plan.steps.filter((step) => step.kind === 'F').map((step) => step.thingId));

/** A job with some of its steps done: in turn, or whatever they are. */
function begun(recipe: Recipe, inTurn: boolean): JobBuilder {
  const job = jobOf(recipe);
  for (const n of recipe.done) {
    const plan = planJob(job.state(), job.at);
    const open = plan.steps.filter((step) => (inTurn ? step.state === 'ready' : step.state !== 'done'));
    const step = open[n % Math.max(1, open.length)];
    if (step) tickOff(job, step.kind, step.thingId, sharedOf(plan));
  }
  return job;
}

const doneIn = (plan: Plan): string[] =>
  plan.steps.filter((step) => step.state === 'done').map((step) => step.id);

/** How many orders of these nodes there are: by subsets, each counted once. */
function orders(nodes: readonly string[], before: ReadonlySet<string>): number {
  const above = nodes.map((v) =>
    nodes.reduce((set, u, i) => (before.has(`${u}>${v}`) ? set | (1 << i) : set), 0),
  );
  const ways = new Map<number, number>([[0, 1]]);
  for (let set = 0; set < 1 << nodes.length; set += 1) {
    const had = ways.get(set);
    if (had === undefined) continue;
    for (const [i, need] of above.entries())
      if ((set & (1 << i)) === 0 && (need & ~set) === 0)
        ways.set(set | (1 << i), (ways.get(set | (1 << i)) ?? 0) + had);
  }
  return ways.get((1 << nodes.length) - 1) ?? 0;
}

/** The same by walking: what is ready is ticked, one after the other, in every order; a set of done steps is met once. */
function ordersByWalking(recipe: Recipe): number {
  const seen = new Map<string, number>();
  const shared = sharedOf(planJob(jobOf(recipe).state(), 0));
  const walk = (done: readonly Step[]): number => {
    const key = done.map(nameOf).sort().join(' ');
    const had = seen.get(key);
    if (had !== undefined) return had;
    const job = jobOf(recipe);
    for (const step of done) tickOff(job, step.kind, step.thingId, shared);
    const plan = planJob(job.state(), job.at);
    const ready = plan.steps.filter((step) => step.state === 'ready');
    const count =
      done.length === plan.steps.length ? 1 : ready.reduce((sum, step) => sum + walk([...done, step]), 0);
    seen.set(key, count);
    return count;
  };
  return walk([]);
}

/** What is not there in a recipe would hold the walk up. */
const allThere = (recipe: Recipe): Recipe => ({
  ...recipe,
  removals: recipe.removals.map((one) => ({ ...one, lack: 'none' })),
  done: [],
});

describe('for any job', () => {
  test('no order of its own closes a ring, and every step comes after all that it waits for', () => {
    fc.assert(
      fc.property(anyRecipe, (recipe) => {
        const plan = planJob(jobOf(recipe).state(), 0);
        expect(plan.undecided).toEqual([]);
        const place = new Map(plan.steps.map((step, i) => [step.id, i]));
        for (const edge of plan.edges) expect(place.get(edge.from)).toBeLessThan(place.get(edge.to) ?? -1);
      }),
      RUNS,
    );
  });

  test('which steps there are does not hang on needs, places or orders of the user’s own', () => {
    fc.assert(
      fc.property(anyRecipe, fc.constantFrom('assumed', 'confirmed', 'loosened'), (recipe, chain) => {
        const same = { ...recipe, shared: [] };
        const other: Recipe = {
          ...same,
          own: [],
          removals: same.removals.map((one) => ({ ...one, chain, needs: [], place: '' })),
        };
        const steps = (one: Recipe) =>
          planJob(jobOf(one).state(), 0)
            .steps.filter((step) => step.kind !== 'U')
            .map((step) => step.id)
            .sort();
        expect(steps(other)).toEqual(steps(same));
      }),
      RUNS,
    );
  });

  test('what is done and what can go ahead leave nothing open behind them', () => {
    fc.assert(
      fc.property(anyRecipe, (recipe) => {
        const plan = planJob(begun(recipe, true).state(), 0);
        const through = new Set([...doneIn(plan), ...plan.ahead]);
        for (const edge of plan.edges) if (through.has(edge.to)) expect(through).toContain(edge.from);
        for (const id of plan.ahead) expect(doneIn(plan)).not.toContain(id);
      }),
      RUNS,
    );
  });

  test('whatever was ticked, what can go ahead has nothing open behind it', () => {
    fc.assert(
      fc.property(anyRecipe, (recipe) => {
        const plan = planJob(begun(recipe, false).state(), 0);
        const through = new Set([...doneIn(plan), ...plan.ahead]);
        for (const edge of plan.edges) if (plan.ahead.has(edge.to)) expect(through).toContain(edge.from);
      }),
      RUNS,
    );
  });

  test('doing what can go ahead, down the list, never meets a step that is behind, waits or is held', () => {
    fc.assert(
      fc.property(anyRecipe, (recipe) => {
        const job = begun(recipe, true);
        const first = planJob(job.state(), job.at);
        for (const { id } of first.steps) {
          if (!first.ahead.has(id)) continue;
          const step = planJob(job.state(), job.at).steps.find((one) => one.id === id);
          expect(step).toMatchObject({ state: 'ready', why: '' });
          if (step) tickOff(job, step.kind, step.thingId, sharedOf(first));
        }
        const after = planJob(job.state(), job.at);
        expect(after.ahead.size).toBe(0);
        expect(
          after.findings.filter((one) => one.severity !== 'note' && one.code !== 'hole.blocked'),
        ).toEqual([]);
      }),
      RUNS,
    );
  });

  test('one more thing in hand never takes away from what can go ahead', () => {
    fc.assert(
      fc.property(anyRecipe, fc.nat(20), (recipe, n) => {
        const job = begun(recipe, true);
        const before = planJob(job.state(), job.at);
        const lacks = before.steps.flatMap((step) => step.lacks);
        const lack = lacks[n % Math.max(1, lacks.length)];
        if (!lack) return;
        const part = job.rows.part.find((one) => one.id === lack.thingId);
        if (lack.code === 'away')
          for (const row of job.rows.away)
            if (row.thingId === lack.thingId) job.set('away', row.id, { backAt: job.tickTock() });
        if (part && lack.code === 'to get')
          job.move({
            partId: part.id,
            src: 'supply',
            dst: 'stow',
            dstStowId: part.stowId,
            fresh: true,
            cause: 'received',
          });
        if (lack.code === 'blocked') job.deed(lack.thingId, 'repaired');
        const after = planJob(job.state(), job.at);
        for (const id of before.ahead) expect(after.ahead).toContain(id);
      }),
      RUNS,
    );
  });

  test('there are as many ways to walk through what is ready as orders of the reference allow', () => {
    fc.assert(
      fc.property(anyRecipe, (recipe) => {
        const all = allThere({ ...recipe, removals: recipe.removals.slice(0, 5) });
        const want = reference(jobOf(all).state(), new Set());
        fc.pre(want.nodes.length <= 8);
        expect(ordersByWalking(all)).toBe(orders(want.nodes, want.before));
      }),
      runs(60),
    );
  });

  test('reaching a part takes off what it needs off, and nothing else', () => {
    fc.assert(
      fc.property(anyRecipe, fc.nat(8), (recipe, n) => {
        const job = begun({ ...recipe, shared: [], fluids: [], carried: [], own: [], listed: [] }, true);
        const state = job.state();
        const targets = state.removal.filter((one) => one.did === 'off');
        const target = targets[n % Math.max(1, targets.length)];
        if (!target) return;
        expect(reachOf(state, [target.id]).removals.map((one) => one.removalId)).toEqual(
          onTheWay(state, target.id),
        );
      }),
      RUNS,
    );
  });
});

/** By brute force: everything that is on, and that the target or what it needs had to have off first, in log order. */
function onTheWay(state: JobState, targetId: string): string[] {
  const { before } = reference(state, new Set());
  const on = new Set(
    planJob(state, 0)
      .steps.filter((step) => step.state === 'done')
      .map((step) => step.thingId),
  );
  return [...state.removal]
    .sort((a, b) => (a.ord < b.ord ? -1 : 1))
    .map((one) => one.id)
    .filter((id) => on.has(id) && (id === targetId || before.has(`S:${targetId}>S:${id}`)));
}
