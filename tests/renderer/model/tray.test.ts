import { describe, expect, it } from 'vitest';
import type { TrayAnswer } from '../../../core/contract/tray.ts';
import {
  boltHits,
  insideOf,
  keptTray,
  measureOf,
  NO_MEASURE,
  NO_TRAY,
  rowOf,
  searchesOf,
  stowNamed,
  trayAnswer,
  trayBags,
  trayDraft,
  trayRows,
  withTable,
} from '../../../renderer/model/tray.ts';
import { spreadLine } from '../../../renderer/model/tray-line.ts';
import { command, good } from '../../support/client.ts';
import { seeded } from './seed.ts';

const measure = { ...NO_MEASURE, count: '3', thread: 'M8', length: ' 25 ', head: '13' };

describe('a tray that is being listed', () => {
  it('is kept as short text and read back as it was; anything else is an empty one', () => {
    const draft = { ...NO_TRAY, unit: 'in' as const, into: 'tray 2', rows: [rowOf(measure, 2)] };
    expect(trayDraft(keptTray(draft))).toEqual(draft);
    const long = { ...NO_TRAY, rows: Array.from({ length: 150 }, (_, i) => rowOf(measure, i + 1)) };
    // The host keeps 10,000 letters of what is half typed.
    expect(keptTray(long).length).toBeLessThan(10_000);
    for (const text of ['', '{', '{"rows":4}', 'null']) expect(trayDraft(text)).toEqual(NO_TRAY);
  });

  it('takes a table behind what is listed, each row with a number of its own, and says what is wrong with the table', () => {
    const listed = { ...NO_TRAY, rows: [rowOf(measure, 7)] };
    const said = [
      { row: 2, sentence: 'Row 2: Expected a whole number from 1 to 2000 as its count, got “”.' },
      { row: 3, sentence: 'Row 3: expected at most 5 values, got 6.' },
      { row: 1, sentence: 'No heading: the columns are taken as count, thread.' },
    ];
    const draft = withTable(listed, [rowOf(measure, 2), rowOf(measure, 3)], said);
    expect(draft.rows.map(({ row }) => row)).toEqual([7, 9, 10]);
    expect(draft.told).toEqual([said[1]?.sentence, said[2]?.sentence]);
  });

  it('goes back into the fields as it was typed', () => {
    expect(measureOf(rowOf(measure, 2))).toEqual({ ...measure, length: '25' });
    expect(measureOf({ ...rowOf(measure, 2), thread: '', diameter: '7.86' }).thread).toBe('7.86');
  });

  it.each([
    ['', null],
    ['tray 2', { kind: 'tray', label: '2' }],
    ['Bag 14', { kind: 'bag', label: '14' }],
    ['upper left', { kind: 'tray', label: 'upper left' }],
  ] as const)('puts the sorted ones into “%s”', (text, stow) => {
    expect(stowNamed(text)).toEqual(stow);
  });

  it('shows what was read, what was not, and where it goes', async () => {
    const job = await seeded(['pump cover, 4 M8x25 hex 13, bag 1', '2 rags in the port']);
    const draft = {
      ...NO_TRAY,
      rows: [rowOf({ ...measure, count: '5' }, 2), rowOf({ ...measure, count: 'few' }, 3)],
    };
    const tray = { rows: [...draft.rows], from: [] };
    const answer: TrayAnswer = good(await job.client.tray.match({ jobId: job.jobId, ...tray }));
    expect(trayRows(draft, null).map(({ says }) => says)).toEqual(['5 × M8, 25, 13', 'few × M8, 25, 13']);
    expect(trayRows(draft, answer)).toMatchObject([
      { says: '5 × M8, 25 ± 1 mm, head 13', bad: false },
      { says: 'few × M8, 25, 13', bad: true, about: expect.stringContaining('whole number') },
    ]);
    const [first, second] = trayRows(draft, answer);
    expect(first?.goes).toMatchObject([
      { count: 4, name: 'Pump cover', about: expect.stringContaining('bag 1 · 4 holes open'), to: 'hole' },
      { count: 1, about: expect.stringContaining('All holes it fits are taken'), to: 'nowhere' },
    ]);
    expect(second?.goes).toEqual([]);
    expect(trayAnswer(answer)).toMatchObject({ pieces: 5, sorted: 4, doubtful: 0 });
    expect(trayBags(job.view(), []).map(({ name }) => name)).toEqual(['Bag 1: 4']);
  });
});

describe('a row of the tray that is not plain', () => {
  it('whose holes have no length written down is doubtful, and not among the sorted', async () => {
    const job = await seeded(['guard, 2 13, bag 2']);
    const draft = { ...NO_TRAY, rows: [rowOf({ ...measure, count: '2', length: '40' }, 2)] };
    const answer = good(await job.client.tray.match({ jobId: job.jobId, rows: [...draft.rows], from: [] }));
    expect(trayAnswer(answer)).toMatchObject({ sorted: 0, doubtful: 2 });
    expect(trayRows(draft, answer)[0]?.goes).toMatchObject([
      { to: 'hole', doubt: 'Doubtful: length not recorded there.' },
    ]);
  });

  it('that is typed as one line into the first field goes to the fields, or is shown as typed', () => {
    const line = (count: string, thread = '') => spreadLine({ ...NO_MEASURE, count, thread });
    const fields = (count: string, thread: string, pitch: string, length: string, head: string) => ({
      ...NO_MEASURE,
      ...{ count, thread, pitch, length, head },
    });
    expect(line('M8x25 13')).toEqual(fields('', 'M8', '', '25', '13'));
    expect(line('4 M8x25 hex 13')).toEqual(fields('4', 'M8', '', '25', '13'));
    expect(line('4 x M10 × 1,25 × 30 T50')).toEqual(fields('4', 'M10', '1,25', '30', 'T50'));
    expect(line('3', 'M6x1 16 long 5 mm key')).toEqual(fields('3', 'M6', '1', '16', '5 mm key'));
    expect(line('2 5/16-18 25')).toEqual(fields('2', '5/16-18', '', '25', ''));
    expect(line('6 M8 nuts')).toEqual({ ...fields('6', 'M8', '', '', ''), kind: 'nut' });
    for (const [count, thread] of [
      ['4', 'M8'],
      ['', '7.86'],
      ['few', ''],
      ['4 M8 banana', ''],
    ] as const)
      expect(line(count, thread)).toEqual({ ...NO_MEASURE, count, thread });
    const row = rowOf(line('4 M8 banana'), 2);
    expect(trayRows({ ...NO_TRAY, rows: [row] }, null)[0]?.says).toBe('“4 M8 banana”');
  });
});

describe('what is looked for, and whose a bolt is', () => {
  it('lists searches newest first, and rags that are in and not looked for', async () => {
    const job = await seeded(['pump cover, 4 M8x25 hex 13, bag 1', '2 rags in the port']);
    const { client, jobId } = job;
    expect(insideOf(job.view()).map(({ name }) => name)).toEqual([expect.stringContaining('2 × rag')]);
    const rag = insideOf(job.view())[0]?.id ?? '';
    good(await client.item.lost({ ...command(), jobId, what: 'scriber', qty: 1, thingId: null, note: '' }));
    good(await client.piece.miss({ ...command(), jobId, thingId: rag, qty: 1, note: '' }));
    expect(searchesOf(job.view()).map(({ name }) => name)).toEqual([
      expect.stringContaining('rag'),
      'scriber',
    ]);
    expect(insideOf(job.view())).toEqual([]);
  });

  it('counts the holes that a bolt fits, and none where it only comes near', async () => {
    const job = await seeded(['pump cover, 4 M8x25 hex 13', 'side cover, 6 M8x25 hex 13, class 10.9']);
    const ask = async (length: string) =>
      boltHits(good(await job.client.bolt.whose({ row: rowOf({ ...measure, count: '1', length }, 1) })));
    expect(await ask('25')).toMatchObject({
      holes: 10,
      hits: [{ name: 'Pump cover' }, { name: 'Side cover' }],
    });
    expect(await ask('40')).toMatchObject({ holes: 0, sentence: expect.stringContaining('fits none') });
  });
});
