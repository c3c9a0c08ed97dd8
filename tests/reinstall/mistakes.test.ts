import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { planJob, wouldCloseCycle } from '../../core/reinstall/index.ts';
import { clean, plant } from './judge.ts';
import { machine } from './machine.ts';
import { MISTAKES } from './mistakes.ts';
import { chance, openYard, type Yard } from './story.ts';

let yard: Yard;
beforeAll(() => {
  yard = openYard();
});
afterAll(() => yard.close());

describe('one mistake in a job that is clean otherwise is found while it can be mended', () => {
  test.each(MISTAKES)('$name', async (mistake) => {
    for (const seed of [1, 2]) {
      const verdict = await plant(yard, mistake, seed);
      expect(verdict.found, `${verdict.how}\n${verdict.told.join('\n')}`).toBe(true);
    }
  });

  test.each(MISTAKES.filter((one) => one.deadline === 'guard'))(
    '$name, and the guard ticked in one touch',
    async (mistake) => {
      const verdict = await plant(yard, mistake, 3, true);
      expect(verdict.found, `${verdict.how}\n${verdict.told.join('\n')}`).toBe(true);
    },
  );

  test.each(MISTAKES.filter((one) => one.slip))('without it, nothing is found: $name', async (mistake) => {
    const { slip: _, ...careful } = mistake;
    const verdict = await plant(yard, careful, 1);
    expect(verdict).toMatchObject({ found: false });
    expect(verdict.how).toMatch(/nothing was said|the job closed/);
  });

  test('an order that closes a ring is refused with the ring, and shown as undecided if it is stored all the same', async () => {
    const { story, ids } = await machine(yard, chance(4), { must: ['caps'], plain: true });
    const rule = { beforeId: ids.guard ?? '', afterId: ids['cap 2 off'] ?? '', why: '' };
    const refused = await story.tryMake('backOrder', rule);
    expect(refused.ok).toBe(false);
    const ring = wouldCloseCycle(story.state, rule.beforeId, rule.afterId);
    expect(ring?.steps.length).toBeGreaterThanOrEqual(2);
    expect(ring?.mayLoosen.length).toBeGreaterThanOrEqual(1);
    const row = { id: '00000000-0000-7000-8000-000000000001', jobId: story.jobId, ...rule };
    const plan = planJob({ ...story.state, backOrder: [row] }, yard.workshop.now());
    expect(plan.findings.filter((one) => one.code === 'order.cycle')).toMatchObject([{ severity: 'stop' }]);
    expect(plan.undecided).toHaveLength(1);
    expect(plan.undecided[0]?.stepIds).toEqual(expect.arrayContaining([...(ring?.steps ?? [])]));
  });
});

describe('a job without a mistake', () => {
  test('a hundred of them, put back in any order of clean deeds: no stop, no warning, and each closes', async () => {
    for (let batch = 0; batch < 5; batch += 1) {
      const own = openYard();
      try {
        for (let seed = 1; seed <= 20; seed += 1)
          expect(await clean(own, batch * 20 + seed), `machine ${batch * 20 + seed}`).toBeNull();
      } finally {
        own.close();
      }
    }
  }, 300_000);
});
