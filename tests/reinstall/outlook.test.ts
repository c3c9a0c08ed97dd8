import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { JobState } from '../../core/model/tables.ts';
import { dayAheadOf, type FreeLine, outlookOf, planJob } from '../../core/reinstall/index.ts';
import { build, type JobBuilder } from '../support/build.ts';
import { anyRecipe, jobOf, type Recipe, tickOff } from './any-job.ts';

const RUNS = { numRuns: 120, seed: 9 };
const DAY = 86_400_000;

/** A job with some steps done in turn, and a day promised for some of what is lacking. */
function waiting(recipe: Recipe, days: readonly number[]): JobBuilder {
  const job = jobOf(recipe);
  for (const n of recipe.done) {
    const plan = planJob(job.state(), job.at);
    const shared = new Set(plan.steps.filter((step) => step.kind === 'F').map((step) => step.thingId));
    const ready = plan.steps.filter((step) => step.state === 'ready');
    const step = ready[n % Math.max(1, ready.length)];
    if (step) tickOff(job, step.kind, step.thingId, shared);
  }
  let k = 0;
  const day = () => job.at + (days[k++ % Math.max(1, days.length)] ?? 0) * DAY;
  for (const row of [...job.rows.away])
    if (row.backAt === null) job.set('away', row.id, { due: days.length > 0 ? day() : null });
  const plan = planJob(job.state(), job.at);
  for (const lack of plan.steps.flatMap((step) => step.lacks))
    if (
      lack.code === 'to get' &&
      days.length > 0 &&
      !job.rows.want.some((one) => one.thingId === lack.thingId)
    )
      job.want(lack.thingId, 'ordered', { qty: lack.qty, promisedAt: day() });
  return job;
}

/** The same job once everything promised up to that time has come: things are back, parts lie in hand. */
function cameTrue(job: JobBuilder, until: number): JobState {
  const state = job.state();
  const came = state.want.filter((one) => one.state === 'ordered' && (one.promisedAt ?? Infinity) <= until);
  return {
    ...state,
    away: state.away.map((row) => ((row.due ?? Infinity) <= until ? { ...row, backAt: until } : row)),
    move: [
      ...state.move,
      ...came.flatMap((want) => {
        const part = state.part.find((one) => one.id === want.thingId);
        const set = state.fset.find((one) => one.id === want.thingId);
        const base = job.rows.move[0];
        if (!base) return [];
        return [
          {
            ...base,
            id: `${want.id.slice(0, -1)}f`,
            partId: part?.id ?? null,
            specId: set?.specId ?? null,
            homeSetId: set?.id ?? null,
            positionId: null,
            qty: want.qty,
            src: 'supply' as const,
            dst: 'stow' as const,
            srcStowId: null,
            dstStowId: part?.stowId ?? set?.stowId ?? null,
            cause: 'received' as const,
            fresh: true,
            at: job.at,
          },
        ];
      }),
    ],
  };
}

const promised = fc.array(fc.integer({ min: 1, max: 4 }), { maxLength: 4 });

describe('by date, for any job', () => {
  test('by each date exactly that can go ahead which could if what is promised had come', () => {
    fc.assert(
      fc.property(anyRecipe, promised, fc.integer({ min: 1, max: 5 }), (recipe, days, after) => {
        const job = waiting(recipe, days);
        const until = job.at + after * DAY;
        const said = new Set(planJob(job.state(), job.at).ahead);
        for (const line of outlookOf(job.state(), job.at).dates)
          if (line.at <= until) for (const id of line.stepIds) said.add(id);
        const then = planJob(cameTrue(job, until), job.at).ahead;
        expect([...said].sort()).toEqual([...then].sort());
      }),
      RUNS,
    );
  });

  test('on a day: what can go ahead, what cannot, and what one more item frees are as if all of that had come', () => {
    fc.assert(
      fc.property(anyRecipe, promised, fc.integer({ min: 0, max: 5 }), (recipe, days, after) => {
        const job = waiting(recipe, days);
        const state = job.state();
        const on = job.at + after * DAY;
        const day = dayAheadOf(state, job.at, on);
        const came = cameTrue(job, on);
        const then = planJob(came, job.at);
        const ids = (rows: readonly { readonly stepId: string }[]) => rows.map((one) => one.stepId).sort();
        expect(ids(day.ahead)).toEqual([...then.ahead].sort());
        const open = then.steps.filter((step) => step.state !== 'done' && step.kind !== 'K');
        expect(ids(day.not)).toEqual(
          open
            .map((step) => step.id)
            .filter((id) => !then.ahead.has(id))
            .sort(),
        );
        const freed = (lines: readonly FreeLine[]) =>
          lines.map((line) => `${line.code} ${line.thingId} ${[...line.stepIds].sort().join(' ')}`).sort();
        expect(freed(day.oneMore)).toEqual(freed(outlookOf(came, job.at).oneMore));
        const now = planJob(state, job.at).ahead;
        for (const { stepId, at } of day.ahead) expect(at === null).toBe(now.has(stepId));
        const not = new Set(day.not.map((one) => one.stepId));
        for (const { stepId, firstId, lacks } of day.not) {
          expect(firstId === null || not.has(firstId)).toBe(true);
          const step = then.steps.find((one) => one.id === stepId);
          expect([...lacks].sort()).toEqual(step?.lacks.map((lack) => lack.sentence).sort());
        }
      }),
      RUNS,
    );
  });

  test('a step is freed by one item exactly where having that item alone lets it go ahead', () => {
    fc.assert(
      fc.property(anyRecipe, fc.nat(20), (recipe, n) => {
        const job = waiting(recipe, []);
        const state = job.state();
        const before = planJob(state, job.at).ahead;
        const { oneMore } = outlookOf(state, job.at);
        const counts = oneMore.map((line) => line.stepIds.length);
        expect(counts).toEqual([...counts].sort((a, b) => b - a));
        const lacks = planJob(state, job.at)
          .steps.flatMap((step) => step.lacks)
          .filter((lack) => lack.code === 'away' || lack.code === 'to get');
        const lack = lacks[n % Math.max(1, lacks.length)];
        if (!lack) return;
        for (const row of [...job.rows.away])
          if (lack.code === 'away' && row.thingId === lack.thingId) job.set('away', row.id, { due: job.at });
        if (lack.code === 'to get') job.want(lack.thingId, 'ordered', { qty: lack.qty, promisedAt: job.at });
        const then = planJob(cameTrue(job, job.at), job.at).ahead;
        const freed = [...then].filter((id) => !before.has(id));
        const line = oneMore.find((one) => one.thingId === lack.thingId && one.code === lack.code);
        expect([...(line?.stepIds ?? [])].sort()).toEqual(freed.sort());
      }),
      RUNS,
    );
  });

  test('a later day never takes a step away, and one thing promised more only brings steps forward', () => {
    fc.assert(
      fc.property(anyRecipe, promised, (recipe, days) => {
        const job = waiting(recipe, days);
        const when = (state: JobState) =>
          new Map(outlookOf(state, job.at).dates.flatMap((line) => line.stepIds.map((id) => [id, line.at])));
        const before = when(job.state());
        const open = planJob(job.state(), job.at).steps.flatMap((step) =>
          step.lacks.filter((one) => one.until === null),
        );
        const lack = open[0];
        if (lack) job.want(lack.thingId, 'ordered', { qty: lack.qty, promisedAt: job.at + DAY });
        const after = when(job.state());
        for (const [id, at] of before)
          expect(after.get(id) ?? Number.NEGATIVE_INFINITY).toBeLessThanOrEqual(at);
      }),
      RUNS,
    );
  });
});

/** Two covers with the same bolts; the plate under the first is away. */
function twoCovers() {
  const job = build();
  const spec = {
    kind: 'bolt',
    thread: 'M8',
    threadKnown: true,
    pitchUm: 1250,
    lengthUm: 25_000,
    head: 'hex',
    drive: 'hex external',
    driveSizeUm: 13_000,
    driveTyped: '13 mm',
    grade: '8.8',
    poolKey: 'm8',
  } as const;
  const one = job.removal('Front cover').loose();
  const front = one.set(4, { stowId: job.bag() }, spec);
  const two = job.removal('Rear cover').loose();
  const rear = two.set(4, { stowId: job.bag() }, spec);
  return { job, one, two, front, rear };
}

describe('promised stock, days and what is late', () => {
  test('a set that was promised stock is served first, out of what lay ready for another', () => {
    const { job, front, rear, one, two } = twoCovers();
    job.move({
      specId: front.specId,
      homeSetId: front.id,
      src: 'stow',
      dst: 'scrap',
      qty: 2,
      cause: 'scrapped',
      srcStowId: front.stowId,
    });
    const before = outlookOf(job.state(), job.at);
    expect([...planJob(job.state(), job.at).ahead]).toEqual([`S:${two.id}`]);
    expect(before.offers).toMatchObject([{ setId: front.id, qty: 2, fromSetIds: [rear.id] }]);
    job.want(front.id, 'here', { cause: 'served first', qty: 2 });
    const plan = planJob(job.state(), job.at);
    expect([...plan.ahead]).toEqual([`S:${one.id}`]);
    expect(plan.steps.find((step) => step.id === `S:${two.id}`)?.lacks).toMatchObject([
      { thingId: rear.id, qty: 2 },
    ]);
    const after = outlookOf(job.state(), job.at);
    expect(after.promises).toMatchObject([{ setId: front.id, qty: 2 }]);
  });

  test('what is on order counts only when enough of it has come, and what is late is not counted on', () => {
    const { job, rear, two } = twoCovers();
    job.move({
      specId: rear.specId,
      homeSetId: rear.id,
      src: 'stow',
      dst: 'scrap',
      qty: 3,
      cause: 'scrapped',
      srcStowId: rear.stowId,
    });
    job.want(rear.id, 'ordered', { qty: 2, promisedAt: job.at + DAY });
    expect(outlookOf(job.state(), job.at).dates).toEqual([]);
    job.want(rear.id, 'ordered', { qty: 1, promisedAt: job.at + 3 * DAY });
    expect(outlookOf(job.state(), job.at).dates).toMatchObject([
      { at: job.at + 3 * DAY, stepIds: [`S:${two.id}`] },
    ]);
    const late = outlookOf(job.state(), job.at + 9 * DAY);
    expect(late.dates).toEqual([]);
    expect(late.late).toMatchObject([{ thingId: rear.id }]);
  });

  test('a cure says when filling may go on', () => {
    const job = build();
    const cover = job.removal('Sump').loose();
    const part = cover.part('Sump');
    job.fluid('Oil', [part]);
    job.consumable(part, { kind: 'sealant', putAt: job.at, cureMinutes: 120, cureBefore: 'fill' });
    job.deed(part, 'fitted');
    const { dates, oneMore } = outlookOf(job.state(), job.at);
    expect(dates.map((line) => line.stepIds.map((id) => id.slice(0, 2)))).toEqual([['C1']]);
    expect(oneMore).toMatchObject([{ code: 'cure', stepIds: dates[0]?.stepIds }]);
  });
});
