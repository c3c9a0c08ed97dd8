import { describe, expect, it } from 'vitest';
import { plannedAgain } from '../../core/model/off-again.ts';
import { command, good, refused } from '../support/client.ts';
import { gearbox } from '../support/gearbox.ts';

/** A gearbox that was drained behind a guard, all of it back, filled and checked. */
async function filled() {
  const box = await gearbox([
    'belt guard, 4 M6x16',
    'drained gear oil 1,2 l, drain plug',
    'end cover, 2 M8x25',
  ]);
  const { client, base, state, plan } = box;
  const removal = (n: number) => state().removal[n - 1]?.id ?? '';
  const oil = state().fluid[0]?.id ?? '';
  const tick = async (thingId: string, what: 'done' | 'filled' | 'cold leak checked', valueTyped = '') =>
    good(
      await client.tick.do({ ...base(), thingIds: [thingId], what, ...(valueTyped ? { valueTyped } : {}) }),
    );
  const refill = async () => {
    await tick(oil, 'filled', '1,2 l');
    await tick(oil, 'cold leak checked');
  };
  for (const n of [3, 2]) await tick(removal(n), 'done');
  await refill();
  await tick(removal(1), 'done');
  const again = (thingId: string) => client.tick.again({ ...base(), thingId, why: 'it leaks' });
  const open = () =>
    plan()
      .steps.filter((step) => step.state !== 'done')
      .map((step) => `${step.kind} ${step.title}`);
  return { ...box, removal, oil, tick, refill, again, open };
}

describe('a system that was filled and is opened again', () => {
  it('is to be filled and checked again once its plug is out, and one undo takes both back', async () => {
    const box = await filled();
    expect(box.open()).toEqual([]);
    good(await box.again(box.removal(1)));
    const before = JSON.stringify(box.state());
    expect(good(await box.again(box.removal(2))).said).toContain('gear oil is to be filled');
    expect(box.open()).toEqual([
      'S Close the drain: Gear oil',
      'C1 Fill gear oil, leak check cold',
      'S Belt guard',
    ]);
    good(await box.client.history.undo({ ...command(), jobId: box.jobId }));
    expect(JSON.stringify(box.state())).toBe(before);
    good(await box.again(box.removal(2)));
    await box.tick(box.removal(2), 'done');
    expect(box.open()).toEqual(['C1 Fill gear oil, leak check cold', 'S Belt guard']);
    await box.refill();
    expect(box.open()).toEqual(['S Belt guard']);
  });

  it('drained again takes the plug with it, and what stands before the plug first', async () => {
    const box = await filled();
    expect(refused(await box.again(box.oil))).toContain('First take off Belt guard');
    good(await box.again(box.removal(1)));
    expect(good(await box.again(box.oil)).said).toContain('Off again: gear oil.');
    expect(box.open()).toEqual([
      'S Close the drain: Gear oil',
      'C1 Fill gear oil, leak check cold',
      'S Belt guard',
    ]);
  });

  it('is drained by its own plug only: a spark plug named beside it came off', async () => {
    const did = async (line: string) => (await gearbox([line])).state().removal[0]?.did;
    expect(await did('drained engine oil 1 l, drain plug')).toBe('opened');
    expect(await did('drained engine oil 1 l, spark plug')).toBe('off');
  });

  it('what never touched it leaves it filled', async () => {
    const box = await filled();
    good(await box.again(box.removal(1)));
    expect(box.open()).toEqual(['S Belt guard']);
  });

  it('is planned with its plug in one line, in the order of taking off, and followed to its end', async () => {
    const box = await filled();
    const { client, base, state } = box;
    good(await client.plan.comeOff({ ...base(), targetIds: [box.removal(3)] }));
    expect(plannedAgain(state()).map((one) => [one.removal.title, one.removal.did])).toEqual([
      ['Belt guard', 'off'],
      ['Drain again: Gear oil', 'opened'],
      ['End cover', 'off'],
    ]);
    for (let left = 3; left > 0; left -= 1) {
      expect(plannedAgain(state())).toHaveLength(left);
      const removalId = plannedAgain(state())[0]?.removal.id ?? '';
      good(await client.pattern.begin({ ...base(), removalId, found: [] }));
    }
    expect(box.open()).toEqual([
      // The plug as soon as it may be; both before the fill.
      'S Close the drain: Gear oil',
      'S End cover',
      'C1 Fill gear oil, leak check cold',
      'S Belt guard',
    ]);
  });
});
