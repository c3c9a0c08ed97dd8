import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { planJob, reachOf, wouldCloseCycle } from '../../core/reinstall/index.ts';
import { build, type JobBuilder, type RemovalBuilder } from '../support/build.ts';

/** One line of data/precedence.csv; sources are named there. */
interface Fixture {
  readonly name: string;
  readonly n: number;
  readonly pairs: readonly (readonly [number, number])[];
  readonly attributes: string;
  readonly question: string;
  readonly expected: string;
}

const FIXTURES: readonly Fixture[] = readFileSync(new URL('data/precedence.csv', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .slice(1)
  .map((line) => {
    const [name = '', n = '', precedence = '', attributes = '', question = '', expected = ''] =
      line.split(',');
    const pairs = precedence
      .split(' ')
      .filter((pair) => pair !== '')
      .map((pair) => pair.split('>').map(Number) as unknown as readonly [number, number]);
    return { name, n: Number(n), pairs, attributes, question, expected };
  });

const asking = (question: string) => FIXTURES.filter((fixture) => fixture.question === question);

/** Removal k of the fixture is removal k of the log; what was removed before is needed, and nothing is assumed. */
function jobOf(fixture: Fixture): { job: JobBuilder; removals: RemovalBuilder[] } {
  const job = build();
  const removals = Array.from({ length: fixture.n }, (_, i) => job.removal(`${i + 1}`).loose());
  for (const [a, b] of fixture.pairs) removals[b - 1]?.needs(removals[a - 1] as RemovalBuilder);
  return { job, removals };
}

/** Counts the orders of putting back by walking what is ready, over sets of done steps. */
function ordersByWalking(fixture: Fixture): number {
  const { job, removals } = jobOf(fixture);
  const state = job.state();
  const known = new Map<string, number>();
  const all = (1 << fixture.n) - 1;
  const open = [0];
  while (open.length > 0) {
    const done = open.at(-1) as number;
    if (known.has(`${done}`) || done === all) {
      known.set(`${done}`, known.get(`${done}`) ?? 1);
      open.pop();
      continue;
    }
    const walked = build();
    removals.forEach((removal, i) => {
      if (done & (1 << i)) walked.deed(removal.id, 'done');
    });
    const ready = planJob({ ...state, deed: walked.rows.deed }, 0).steps.filter(
      (step) => step.state === 'ready',
    );
    const next = ready.map((step) => done | (1 << (Number(step.title) - 1)));
    const missing = next.filter((set) => !known.has(`${set}`));
    if (missing.length > 0) {
      open.push(...missing);
      continue;
    }
    known.set(
      `${done}`,
      next.reduce((sum, set) => sum + (known.get(`${set}`) ?? 0), 0),
    );
    open.pop();
  }
  return known.get('0') ?? 0;
}

describe('graphs of the literature', () => {
  test('they are all read', () => {
    expect(asking('linear_extensions').length).toBe(10);
    expect(
      FIXTURES.every((fixture) => fixture.n > 0 && fixture.pairs.every((pair) => pair.length === 2)),
    ).toBe(true);
  });

  test.each(asking('linear_extensions'))('$name can be put back in $expected orders', (fixture) => {
    expect(ordersByWalking(fixture)).toBe(Number(fixture.expected));
  });

  test.each(asking('topological_order'))(
    '$name has no order, and says so as one undecided block',
    (fixture) => {
      const { job, removals } = jobOf(fixture);
      const plan = planJob(job.state(), 0);
      expect(fixture.expected).toBe('none (cycle)');
      expect(plan.undecided.map((block) => [...block.stepIds].sort())).toEqual([
        removals.map((removal) => `S:${removal.id}`).sort(),
      ]);
      expect(plan.undecided[0]?.ring.length).toBe(3);
      expect(plan.findings.filter((finding) => finding.code === 'order.cycle').length).toBe(1);
      expect(plan.ahead.size).toBe(0);
    },
  );

  test.each(asking('smallest_id_order'))(
    '$name goes back in the reverse of the order it came off in',
    (fixture) => {
      const { job } = jobOf(fixture);
      const titles = planJob(job.state(), 0).steps.map((step) => step.title);
      expect(titles.reverse().join(' ')).toBe(fixture.expected);
    },
  );

  test.each(asking('ancestor_closure'))('$name: reaching $attributes takes off $expected', (fixture) => {
    const { job, removals } = jobOf(fixture);
    for (const removal of removals) job.deed(removal.id, 'done');
    const target = removals[Number(fixture.attributes.replace('target=', '')) - 1] as RemovalBuilder;
    const reach = reachOf(job.state(), [target.id]);
    expect(reach.removals.map((removal) => removal.title).join(' ')).toBe(fixture.expected);
  });

  test('the third side of the ring is refused before it is kept, with the ring', () => {
    const job = build();
    const [one, two, three] = [job.removal('1').loose(), job.removal('2').loose(), job.removal('3').loose()];
    two.needs(one);
    three.needs(two);
    const ring = wouldCloseCycle(job.state(), one.id, three.id);
    expect(ring?.steps).toEqual([`S:${three.id}`, `S:${two.id}`, `S:${one.id}`]);
    expect(ring?.mayLoosen.map((edge) => edge.rule)).toEqual(['need', 'need']);
    expect(wouldCloseCycle(job.state(), three.id, one.id)).toBeNull();
  });
});
