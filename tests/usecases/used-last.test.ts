import { describe, expect, it } from 'vitest';
import { usedLast } from '../../core/usecases/used-last.ts';
import { good, named } from '../support/client.ts';
import { gearbox } from '../support/gearbox.ts';

describe('where a tool was used last', () => {
  it('is the last removal worked on that has a head of its size, on the way off and on the way back', async () => {
    const box = await gearbox([
      'chain guard, 4 M6x16 hex 10',
      'brake cover, 3 M8x25 hex 13',
      'bracket, 2 M6x20 hex 10',
      'load lowered',
    ]);
    const { client, base, state } = box;
    const at = (what: string) => state().removal.find((row) => row.id === usedLast(state(), what))?.title;
    expect(at('10 mm socket')).toBe('Bracket');
    expect(at('13mm spanner')).toBe('Brake cover');
    // No head of that size, or no size said: the last that was worked on at all.
    expect(at('19 mm socket')).toBe('Load lowered');
    expect(at('torch')).toBe('Load lowered');
    const bracket = named(state().removal, 'Bracket').id;
    good(await client.tick.do({ ...base(), thingIds: [bracket], what: 'done' }));
    const guard = named(state().removal, 'Chain guard').id;
    const hole = state().position.find(
      (one) => one.setId === state().fset.find((set) => set.removalId === guard)?.id,
    );
    good(await client.tick.do({ ...base(), thingIds: [hole?.id ?? ''], what: 'started' }));
    expect(at('10 mm socket')).toBe('Chain guard');
    expect(at('torch')).toBe('Chain guard');
    good(await client.item.lost({ ...base(), what: '10 mm socket', qty: 1, thingId: null, note: '' }));
    expect(state().counting[0]?.thingId).toBe(guard);
  });

  it('is nowhere in a job in which nothing was worked on', async () => {
    expect(usedLast((await gearbox([])).state(), '10 mm socket')).toBeNull();
  });
});
