import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planJob, wouldCloseCycle } from '../../core/reinstall/index.ts';
import type { Plan } from '../../core/reinstall/index.ts';
import { runs } from '../support/runs.ts';
import { anyThing, randomJob, tapes } from './random-jobs.ts';

const RUNS = runs(1000);

function place(plan: Plan): Map<string, number> {
  return new Map(plan.steps.map((step, i) => [step.id, i]));
}

/** Every edge leads down the list, and every step stands in it once. */
function expectOrdered(plan: Plan): void {
  const at = place(plan);
  expect(at.size).toBe(plan.steps.length);
  for (const edge of plan.edges) {
    const [from, to] = [at.get(edge.from), at.get(edge.to)];
    expect(from, edge.from).toBeDefined();
    expect(to, edge.to).toBeDefined();
    expect((from as number) < (to as number), `${edge.rule}: ${edge.from} before ${edge.to}`).toBe(true);
  }
}

describe('the graph of any job', () => {
  test('has no ring without orders of the user’s own, and every edge is kept', () => {
    fc.assert(
      fc.property(tapes(), (tape) => {
        const plan = planJob(randomJob(tape).job.state(), 0);
        expect(plan.undecided).toEqual([]);
        expectOrdered(plan);
      }),
      RUNS,
    );
  });

  test('has the same nodes whatever the user orders, and no ring as long as nothing refused is kept', () => {
    fc.assert(
      fc.property(tapes(), (tape) => {
        const made = randomJob(tape);
        const before = planJob(made.job.state(), 0);
        for (let k = 0; k < 4; k++) {
          const [first, then] = [anyThing(tape, made), anyThing(tape, made)];
          if (wouldCloseCycle(made.job.state(), first, then) === null) made.job.first(first, then);
        }
        const plan = planJob(made.job.state(), 0);
        expect(plan.steps.map((step) => step.id).sort()).toEqual(before.steps.map((step) => step.id).sort());
        expect(plan.undecided).toEqual([]);
        expectOrdered(plan);
      }),
      RUNS,
    );
  });

  test('shows exactly its rings as undecided when refused orders are stored all the same', () => {
    fc.assert(
      fc.property(tapes(), (tape) => {
        const made = randomJob(tape);
        for (let k = 0; k < 3; k++) made.job.first(anyThing(tape, made), anyThing(tape, made));
        const plan = planJob(made.job.state(), 0);
        const blocks = new Map(
          plan.undecided.flatMap((block, b) => block.stepIds.map((id) => [id, b] as const)),
        );
        const at = place(plan);
        for (const edge of plan.edges) {
          const inside = blocks.has(edge.from) && blocks.get(edge.from) === blocks.get(edge.to);
          if (!inside)
            expect((at.get(edge.from) as number) < (at.get(edge.to) as number), edge.rule).toBe(true);
        }
        for (const block of plan.undecided) {
          // A ring can be walked: each of its steps comes before the next, and the last before the first.
          block.ring.forEach((id, i) => {
            const next = block.ring[(i + 1) % block.ring.length];
            expect(plan.edges.some((edge) => edge.from === id && edge.to === next)).toBe(true);
          });
          expect(block.mayLoosen.some((edge) => edge.rule === 'own order')).toBe(true);
        }
        expect(plan.findings.filter((one) => one.code === 'order.cycle').length).toBe(plan.undecided.length);
        expect([...plan.ahead].filter((id) => blocks.has(id))).toEqual([]);
      }),
      RUNS,
    );
  });

  test('says of a refused order the shortest ring that it would close', () => {
    fc.assert(
      fc.property(tapes(), (tape) => {
        const made = randomJob(tape);
        const [first, then] = [anyThing(tape, made), anyThing(tape, made)];
        const ring = wouldCloseCycle(made.job.state(), first, then);
        if (!ring || ring.edges.length === 0) return;
        ring.edges.forEach((edge, i) => {
          expect(edge.from).toBe(ring.steps[i]);
          expect(edge.to).toBe(ring.steps[i + 1]);
        });
        expect(ring.mayLoosen).toEqual(ring.edges.filter((edge) => edge.mayLoosen));
        made.job.first(first, then);
        const kept = planJob(made.job.state(), 0).undecided.find((block) =>
          block.stepIds.includes(ring.steps[0] ?? ''),
        );
        expect(kept, 'the refused order does close a ring').toBeDefined();
        expect(ring.steps.length).toBeLessThanOrEqual((kept?.stepIds.length ?? 0) + 0);
      }),
      RUNS,
    );
  });
});
