import { describe, expect, it } from 'vitest';
import { countLines, toGet } from '../../core/tally/index.ts';
import { command, good, named, refused } from '../support/client.ts';
import { gearbox } from '../support/gearbox.ts';

/** A cover with four bolts, put back up to its bolts, under a guard. */
async function cover() {
  const box = await gearbox(['guard, 2 M6x16', 'cover, 4 M8x25 bolts hex 13, 25 Nm']);
  const { client, base, state, plan } = box;
  const row = named(state().removal, 'Cover');
  const set = state().fset.find((one) => one.removalId === row.id);
  const holes = state().position.filter((hole) => hole.setId === set?.id);
  const hole = (n: number) => holes[n - 1]?.id ?? '';
  const tick = async (ids: readonly string[], what: 'started' | 'tightened' | 'done') =>
    good(await client.tick.do({ ...base(), thingIds: [...ids], what }));
  const broke = (n: number, stuck: boolean) =>
    client.tick.broke({ ...base(), thingId: hole(n), stuck, why: 'sheared at 20 N·m' });
  const books = () => countLines(state()).find((line) => line.setId === set?.id);
  const mark = (n: number) =>
    plan()
      .steps.flatMap((step) => step.fasteners)
      .flatMap((one) => one.holes)
      .find((one) => one.positionId === hole(n))?.mark;
  return { ...box, row, hole, tick, broke, books, mark };
}

describe('a fastener that broke on the way back', () => {
  it('is scrapped and one short; its hole is blocked until a repair, then takes a new one', async () => {
    const box = await cover();
    const { client, base, state } = box;
    await box.tick([box.hole(1), box.hole(2)], 'tightened');
    const before = JSON.stringify(state());
    expect(good(await box.broke(2, true)).said).toBe(
      'Hole 2: broken off on the way back, and scrapped. Another one is needed. Its hole takes nothing until a repair is written down.',
    );
    expect(box.mark(2)).toBe('blocked');
    expect(box.books()).toMatchObject({ backIn: 1, inBag: 2, usable: 2 });
    expect(box.plan().findings.some((one) => one.code === 'hole.blocked')).toBe(true);
    expect(refused(await client.tick.do({ ...base(), thingIds: [box.hole(2)], what: 'started' }))).toContain(
      'blocked',
    );
    expect(refused(await box.broke(2, true))).toContain('it is blocked');
    const repair = { thingIds: [box.hole(2)], what: 'repaired' as const, why: 'insert' };
    good(await client.tick.do({ ...base(), ...repair }));
    expect(toGet(state()).map((line) => [line.needed, line.cause])).toEqual([[1, 'short']]);
    good(await client.piece.receive({ ...base(), thingId: box.hole(2), qty: 1, stowId: null }));
    await box.tick([box.hole(2)], 'tightened');
    expect(box.books()).toMatchObject({ backIn: 2, short: 0 });
    expect(refused(await box.broke(2, true))).toContain('repaired before');
    for (let i = 0; i < 4; i += 1) good(await client.history.undo({ ...command(), jobId: box.jobId }));
    expect(JSON.stringify(state())).toBe(before);
  });

  it('spoilt before it was in: scrapped from its bag, and its hole stays open', async () => {
    const box = await cover();
    expect(good(await box.broke(3, false)).said).toContain('Hole 3: damaged on the way back');
    expect(box.mark(3)).toBe('out');
    expect(box.books()).toMatchObject({ inBag: 3, usable: 3, short: 1, damaged: 0 });
    await box.tick([box.hole(1), box.hole(2), box.hole(4)], 'started');
    expect(refused(await box.broke(3, false))).toContain('in hand by the books, got none');
  });

  it('under something that is back is refused, with what must come off first', async () => {
    const box = await cover();
    await box.tick([box.row.id], 'done');
    await box.tick([named(box.state().removal, 'Guard').id], 'done');
    expect(refused(await box.broke(1, true))).toContain('First take off Guard');
  });
});
