import { isDeepStrictEqual } from 'node:util';
import { describe, expect, it } from 'vitest';
import type { DeedWhat } from '../../../core/model/work.ts';
import { DEED_OF, goOf, type PlanStep, stepAt } from '../../../renderer/model/putback.ts';
import { type TickAhead, tickedAhead } from '../../../renderer/model/ticked-ahead.ts';
import { command } from '../../support/client.ts';
import { READY_JOBS } from '../../support/jobs.ts';
import { type Seeded, seeded } from './seed.ts';

/** What a person sees of a step: how its holes stand and what the large key says. */
const seen = (step: PlanStep) => ({
  holes: step.fasteners.flatMap((set) => set.holes.map((hole) => `${hole.n} ${hole.mark} ${hole.round}`)),
  go: goOf(step).what,
});
const ticked = (step: PlanStep) => step.actions.filter((action) => action.done).map((one) => one.sentence);

/** Every tick that the keys, rounds and boxes of a step offer, in the order of a hand that uses all of them. */
function ticksOf(step: PlanStep): TickAhead[] {
  const holes = step.fasteners.flatMap((set) => set.holes.map((hole) => hole.positionId));
  const boxes = step.actions.flatMap((action): TickAhead[] => {
    const what = DEED_OF[action.code];
    return what === undefined || what === 'filled' || what === 'measured'
      ? []
      : [{ thingIds: action.thingIds, what }];
  });
  const whole = step.kind === 'S' ? [step.thingId] : holes;
  const end: DeedWhat = step.kind === 'I' ? 'given back' : step.kind === 'B' ? 'fitted' : 'done';
  const all: TickAhead[] = [
    { thingIds: holes.slice(0, 1), what: 'started' },
    { thingIds: whole, what: 'started' },
    ...['snug', '30 %', '70 %', '100 %', 'once around'].map(
      (round): TickAhead => ({ thingIds: holes, round }),
    ),
    ...boxes.filter((tick) => !('what' in tick && tick.what === 'started')),
    { thingIds: holes, what: 'tightened' },
    { thingIds: [step.thingId], what: end },
  ];
  return all.filter((tick) => tick.thingIds.length > 0);
}

/** Sends it as the screen does; false where the program refuses it. */
async function sent(job: Seeded, tick: TickAhead): Promise<boolean> {
  const head = { ...command(), jobId: job.jobId };
  const reply =
    'round' in tick
      ? await job.client.tick.round({ ...head, holeIds: [...tick.thingIds], round: tick.round })
      : await job.client.tick.do({ ...head, thingIds: [...tick.thingIds], what: tick.what });
  return reply.ok;
}

describe('a tick shown ahead of the record', () => {
  // Told by the program itself: each job is put back step by step, and every tick that is kept must have been shown.
  it('shows at the touch what the record then says', async () => {
    let compared = 0;
    for (const { name, lines } of READY_JOBS) {
      const job = await seeded(lines);
      for (let turn = 0; turn < 40; turn += 1) {
        const step = stepAt(job.view(), null);
        if (step === null || step.state !== 'ready') break;
        for (const tick of ticksOf(step)) {
          const before = job.view().plan.steps.find((one) => one.id === step.id);
          if (!before) continue;
          const shown = tickedAhead(before, [tick]);
          // What is so already is not offered again by the screen.
          if (isDeepStrictEqual(shown, before) || !(await sent(job, tick))) continue;
          const after = job.view().plan.steps.find((one) => one.id === step.id) ?? before;
          expect({ name, tick, ...seen(shown) }).toEqual({ name, tick, ...seen(after) });
          // A box that the record ticks by itself may come later; none may be ticked that it does not tick.
          expect(ticked(after)).toEqual(expect.arrayContaining(ticked(shown)));
          compared += 1;
        }
      }
    }
    expect(compared).toBeGreaterThan(100);
  });

  it('is not there any more once it was refused: the step is the record’s own', async () => {
    const job = await seeded(['end cover, 4 M8x25']);
    const step = stepAt(job.view(), null);
    if (!step) throw new Error('Expected a step.');
    expect(tickedAhead(step, [])).toBe(step);
  });
});
