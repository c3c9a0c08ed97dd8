import { describe, expect, it } from 'vitest';
import { command, good } from '../../support/client.ts';
import { bench, inBags, row } from './bench.ts';

const FOREIGN = [row(2, { count: '2', thread: 'M8', length: '40', head: '13' })];
const QUICK = ['pump cover, 4 M8x25 hex 13, bag 1', 'guard, 2 13, bag 2'];

describe('what lies in a tray and belongs to none of it', () => {
  it('names a fit as doubtful where no length was written down, and books it only when asked to', async () => {
    const { client, jobId, state, bag } = await bench(QUICK);
    const tray = { jobId, rows: FOREIGN, from: [bag('2')], into: { kind: 'tray' as const, label: '9' } };
    const answer = good(await client.tray.match({ jobId, rows: FOREIGN, from: [bag('2')] }));
    expect(answer.assigned).toMatchObject([{ qty: 2, doubt: 'length not recorded there' }]);
    expect(answer.groups[0]?.homes).toMatchObject([{ name: 'Guard', bag: 'bag 2' }]);
    const booked = good(await client.tray.accept({ ...command(), ...tray }));
    // They lie on the table, so nobody looks for them.
    expect(booked).toMatchObject({ moved: 0, missing: 0, doubtful: 2 });
    expect(booked.said).toContain('never written down');
    expect(inBags(state(), bag('2'))).toBe(2);
    const asked = good(await client.tray.accept({ ...command(), ...tray, doubtful: true }));
    expect(asked).toMatchObject({ moved: 2, doubtful: 0 });
    expect(inBags(state(), bag('2'))).toBe(0);
  });

  it('gives nothing to a bag that was not spilled, and says which it would fit', async () => {
    const { client, jobId, state, bag } = await bench(QUICK);
    const answer = good(await client.tray.match({ jobId, rows: FOREIGN, from: [bag('1')] }));
    expect(answer.assigned).toEqual([]);
    expect(answer.leftOver[0]?.says).toMatch(/nothing that lay in what was spilled, but .*Guard/);
    const four = [row(2, { count: '6', thread: 'M8', length: '25', head: '13' })];
    const more = await bench([...QUICK, 'side cover, 4 M8x25 hex 13, bag 3']);
    const booked = await more.client.tray.accept({
      ...command(),
      jobId: more.jobId,
      rows: four,
      from: [more.bag('1')],
      into: { kind: 'tray', label: '9' },
    });
    expect(good(booked)).toMatchObject({ moved: 4, unbooked: 0 });
    expect(inBags(more.state(), more.bag('3'))).toBe(4);
    expect(state().counting).toEqual([]);
  });
});
