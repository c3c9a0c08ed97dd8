import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TrayRow } from '../../../core/contract/tray.ts';
import type { JobState, Row } from '../../../core/model/tables.ts';
import { bookDifference, countLines, moveProblems, openSearches } from '../../../core/tally/index.ts';
import { fitOf, wantedOf } from '../../../core/usecases/spill/fit.ts';
import { readRow } from '../../../core/usecases/spill/measure.ts';
import { rowOf } from '../../support/build-rows.ts';
import { idOf } from '../../support/build.ts';
import { command, good, logJob, refused, stateOf } from '../../support/client.ts';
import { bench, inBags, row } from './bench.ts';

describe('a spilled tray', () => {
  it('says where each belongs, what is short, what is left over, and what measuring cannot tell apart', async () => {
    const { client, jobId, bag } = await bench();
    const rows = [
      row(2, { count: '3', thread: 'M8', length: '25.3', head: '13' }),
      row(3, { count: '7', diameter: '7.85', pitch: '1.25', length: '30', head: '12.8' }),
      row(4, { count: '4', thread: 'M10', length: '40', head: '16' }),
      row(5, { count: 'some', thread: 'M8' }),
    ];
    const from = ['1', '2', '3', '4'].map(bag);
    const answer = good(await client.tray.match({ jobId, rows, from }));
    expect(answer.pieces).toBe(14);
    expect(answer.rows.at(-1)?.problem).toContain('Expected a whole number');
    const short = answer.groups.filter((group) => group.short > 0);
    expect(short.map((group) => [group.homes[0]?.name, group.short])).toEqual([
      ['Pump cover', 1],
      expect.arrayContaining([expect.any(String), 1]),
    ]);
    expect(answer.leftOver).toMatchObject([{ row: 3, qty: 1 }]);
    expect(answer.leftOver[0]?.says).toContain('All holes it fits are taken');
    expect(answer.alike).toHaveLength(1);
    expect(answer.alike[0]?.sentence).toContain('Look at the mark on the head.');
  });

  it('never takes a bolt whose length lies outside its tolerance, and says what is nearest', async () => {
    const { client, jobId } = await bench();
    const rows = [row(2, { count: '2', thread: 'M8', length: '27.4', tolerance: '2', head: '13' })];
    const answer = good(await client.tray.match({ jobId, rows, from: [] }));
    expect(answer.assigned).toEqual([]);
    expect(answer.leftOver[0]?.says).toContain('Nearest: M8');
    const closer = [row(2, { count: '2', thread: 'M8', length: '27.4', tolerance: '2.5', head: '13' })];
    expect(good(await client.tray.match({ jobId, rows: closer, from: [] })).assigned).toHaveLength(1);
  });

  it('leaves nuts and washers out of the holes of bolts, and finds them their own', async () => {
    const { client, jobId, bag } = await bench();
    const rows = [
      row(2, { count: '3', kind: 'washers' }),
      row(3, { count: '4', thread: 'M6', length: '16' }),
    ];
    const answer = good(await client.tray.match({ jobId, rows, from: [bag('5')] }));
    expect(answer.assigned.map(({ row: n, qty }) => [n, qty])).toEqual([
      [2, 3],
      [3, 4],
    ]);
    expect(answer.groups.find((group) => group.what === 'washer')?.short).toBe(1);
  });

  it('is booked in one: sorted into a tray, and a search for each set that lacks pieces', async () => {
    const { client, jobId, state, bag, workshop } = await bench();
    const rows = [
      row(2, { count: '3', thread: 'M8', length: '25', head: '13' }),
      row(3, { count: '6', thread: 'M8', length: '30', head: '13' }),
    ];
    const before = JSON.stringify(workshop.job(jobId));
    const booked = good(
      await client.tray.accept({
        ...command(),
        jobId,
        rows,
        from: [bag('1'), bag('2')],
        into: { kind: 'tray', label: '9' },
      }),
    );
    expect(booked).toMatchObject({ moved: 9, found: 0, missing: 1, unbooked: 0 });
    expect(inBags(state(), bag('9'))).toBe(9);
    expect(inBags(state(), bag('1'))).toBe(0);
    const moved = state().fset.filter((set) => set.stowId === bag('9'));
    expect(moved.map((set) => set.typed.split(',')[0])).toEqual(['pump cover', 'side cover']);
    expect(openSearches(state())).toMatchObject([{ missing: 1, expected: 4, counted: 3 }]);
    // The washers of bag 5 were not spilled; nobody looks for them.
    expect(inBags(state(), bag('5'))).toBe(8);
    good(await client.history.undo({ ...command(), jobId }));
    expect(JSON.stringify(workshop.job(jobId))).toBe(before);
  });

  it('leaves alone what nobody measured: washers stay where they are while only bolts are listed', async () => {
    const { client, jobId, state, bag } = await bench();
    const rows = [row(2, { count: '4', thread: 'M6', length: '16' })];
    const booked = await client.tray.accept({ ...command(), jobId, rows, from: [bag('5')], into: null });
    expect(good(booked)).toMatchObject({ missing: 0, unbooked: 0 });
    expect(inBags(state(), bag('5'))).toBe(8);
  });

  it('ends a search when what was looked for lies in the tray, wholly or in part', async () => {
    const { client, jobId, state, bag } = await bench();
    good(await client.piece.count({ ...command(), jobId, stowId: bag('1'), counted: 2 }));
    const tray = (count: string) => ({
      jobId,
      rows: [row(2, { count, thread: 'M8', length: '25', head: '13' })],
      from: [],
      into: null,
    });
    expect(good(await client.tray.accept({ ...command(), ...tray('3') }))).toMatchObject({ found: 1 });
    expect(openSearches(state())).toMatchObject([{ missing: 1 }]);
    const [search] = openSearches(state());
    const kept = JSON.stringify(state());
    good(
      await client.piece.found({ ...command(), jobId, countingId: search?.countingId ?? '', where: 'floor' }),
    );
    expect(openSearches(state())).toEqual([]);
    expect(inBags(state(), bag('1'))).toBe(4);
    good(await client.history.undo({ ...command(), jobId }));
    expect(JSON.stringify(state())).toBe(kept);
    expect(good(await client.tray.accept({ ...command(), ...tray('4') }))).toMatchObject({ found: 1 });
    expect(openSearches(state())).toEqual([]);
    expect(good(await client.tray.accept({ ...command(), ...tray('4') }))).toMatchObject({
      found: 0,
      unbooked: 0,
    });
  });

  it('keeps the books closed whatever was measured, and undo brings back every row', async () => {
    const { client, jobId, state, bag, workshop } = await bench();
    const any = fc.record({
      count: fc.integer({ min: 1, max: 9 }).map(String),
      thread: fc.constantFrom('M8', 'M10', 'M6', '', '7.86', '9.8'),
      length: fc.constantFrom('25', '30', '40', '16', '27', ''),
      head: fc.constantFrom('13', '16', '10', ''),
      kind: fc.constantFrom('', '', 'washer'),
    });
    const bags = ['1', '2', '3', '4', '5'];
    await fc.assert(
      fc.asyncProperty(
        fc.array(any, { minLength: 1, maxLength: 6 }),
        fc.subarray(bags),
        fc.boolean(),
        fc.option(fc.record({ bag: fc.constantFrom(...bags), counted: fc.nat(5) }), { nil: null }),
        async (measured, from, sort, counted) => {
          if (counted)
            good(
              await client.piece.count({
                ...command(),
                jobId,
                stowId: bag(counted.bag),
                counted: counted.counted,
              }),
            );
          const before = JSON.stringify(workshop.job(jobId));
          const pieces = (one: JobState) =>
            countLines(one).reduce((sum, line) => sum + line.out + line.got, 0);
          const total = pieces(state());
          const reply = await client.tray.accept({
            ...command(),
            jobId,
            rows: measured.map((values, i) => row(i + 2, values)),
            from: from.map(bag),
            into: sort ? { kind: 'tray', label: 'S' } : null,
          });
          if (reply.ok) {
            expect(moveProblems(state())).toEqual([]);
            for (const line of countLines(state())) expect(bookDifference(line)).toBe(0);
            expect(pieces(state())).toBe(total);
            if (JSON.stringify(workshop.job(jobId)) !== before)
              good(await client.history.undo({ ...command(), jobId }));
          }
          expect(JSON.stringify(workshop.job(jobId))).toBe(before);
          if (counted) good(await client.history.undo({ ...command(), jobId }));
        },
      ),
      { numRuns: 30, seed: 34 },
    );
  });

  it('refuses more than it can match exactly', async () => {
    const { client, jobId } = await bench();
    const rows = [row(2, { count: '1500', thread: 'M8' }), row(3, { count: '1500', thread: 'M6' })];
    expect(refused(await client.tray.match({ jobId, rows, from: [] }))).toContain('at most 2000 pieces');
  });
});

describe('a measured piece against what a hole takes', () => {
  const spec = (more: Partial<Row<'spec'>>): Row<'spec'> => rowOf('spec', idOf(1, 1), idOf(1, 2), more);
  const measured = (values: Partial<TrayRow>) => {
    const read = readRow(row(1, values));
    if (!read.ok) throw new Error(read.fault.sentence);
    return read.value;
  };

  it('fits only while its length lies within its tolerance', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5_000, max: 120_000 }),
        fc.integer({ min: -4_900, max: 6_000 }),
        fc.integer({ min: 0, max: 5_000 }),
        (lengthUm, by, tolerance) => {
          const one = measured({
            thread: 'M8',
            length: `${(lengthUm + by) / 1000} mm`,
            tolerance: `${Math.max(1, tolerance) / 1000} mm`,
          });
          expect(fitOf(one, wantedOf(spec({ lengthUm }))).fits).toBe(Math.abs(by) <= Math.max(1, tolerance));
        },
      ),
      { numRuns: 300, seed: 35 },
    );
  });

  it.each([
    ['the same', { thread: 'M8', head: '13' }, {}, true],
    ['measured below nominal', { diameter: '7.85', pitch: '1.25' }, {}, true],
    ['measured too thin even for a worn one', { diameter: '7.4' }, {}, false],
    ['another pitch', { thread: 'M8x1' }, {}, false],
    ['another pitch where the pitch was only assumed', { thread: 'M8x1' }, { threadKnown: false }, true],
    ['another size', { thread: 'M10' }, {}, false],
    [
      'another size where the head only suggested one',
      { thread: 'M10', head: '13' },
      { threadKnown: false, pitchUm: null },
      true,
    ],
    ['that, with another head', { thread: 'M10', head: '17' }, { threadKnown: false, pitchUm: null }, false],
    ['a key for a hexagon', { thread: 'M8', head: '13 key' }, {}, false],
    ['a number for a hexagon', { thread: 'M8', head: 'T40' }, {}, false],
    [
      'the same number',
      { thread: 'M8', head: 'T40' },
      { driveSizeUm: null, driveTyped: 'T40', drive: 'hexalobular' },
      true,
    ],
    ['a half inch spanner on a 13', { thread: 'M8', head: '1/2' }, {}, true],
    ['an inch thread', { thread: '5/16-18' }, { thread: '5/16-18', pitchUm: 1411 }, true],
    ['an inch thread that measures the same', { diameter: '7.85', pitch: '18 tpi' }, {}, false],
    [
      'nothing recorded',
      { thread: 'M8', length: '20' },
      { thread: null, pitchUm: null, threadKnown: false, lengthUm: null },
      true,
    ],
    ['a washer', { thread: 'M8', kind: 'washer' }, {}, false],
  ] as const)('%s', (_name, values, more, fits) => {
    const one = measured({ length: '30', ...values });
    expect(fitOf(one, wantedOf(spec(more))).fits).toBe(fits);
  });
});

describe('an unknown bolt from the floor', () => {
  it('is matched against the open holes of every job, best first, and one that is looked for before its like', async () => {
    const { client, workshop, jobId } = await bench();
    const other = await logJob(workshop, 'Winch', ['drum, 4 M8x25 hex 13', 'drum cover, 2 M12x25']);
    const stowId = stateOf(workshop, other).fset[0]?.stowId ?? '';
    good(await client.piece.count({ ...command(), jobId: other, stowId, counted: 3 }));
    const answer = good(
      await client.bolt.whose({
        row: row(1, { diameter: '7.85', pitch: '1.25', length: '25.2', head: '13' }),
      }),
    );
    expect(answer.fits).toBe(true);
    expect(answer.hits.map((hit) => [hit.jobId, hit.open, hit.lookedFor])).toEqual([
      [other, 4, 1],
      [jobId, 4, 0],
    ]);
    expect(answer.hits[0]?.says).toContain('length +0.2 mm');
    expect(answer.sentence).toBe('It fits 8 open holes in 2 jobs. Best first.');
  });

  it('fits none is said, with the nearest and what is off', async () => {
    const { client } = await bench();
    const answer = good(await client.bolt.whose({ row: row(1, { thread: 'M8', length: '45', head: '13' }) }));
    expect(answer.fits).toBe(false);
    expect(answer.sentence).toMatch(
      /fits none of the open holes\. Nearest: M8 .*30.*Side cover.*length \+15 mm/,
    );
    expect(refused(await client.bolt.whose({ row: row(1, {}) }))).toContain('Expected at least a thread');
  });
});
