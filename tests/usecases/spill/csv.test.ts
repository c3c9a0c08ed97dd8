import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trayRead } from '../../../core/usecases/spill/csv.ts';
import { readRow } from '../../../core/usecases/spill/measure.ts';

const measured = (text: string, unit?: 'mm' | 'in') =>
  trayRead(text, unit).rows.map((row) => {
    const read = readRow(row, unit);
    if (!read.ok) throw new Error(read.fault.sentence);
    const { count, threads, lengthMm, toleranceMm, head } = read.value;
    return [
      count,
      threads?.map((thread) => thread.size).join('/') ?? null,
      lengthMm,
      toleranceMm,
      head?.mm ?? head?.number ?? null,
    ];
  });

describe('a table of loose fasteners', () => {
  it.each([
    ['commas', 'count,thread,length,tolerance,head\n4,M8,25.5,0.5,13\n'],
    ['quoted decimal commas', 'count,thread,length,tolerance,head\n4,M8,"25,5","0,5",13\n'],
    ['semicolons and decimal commas', 'count;thread;length;tolerance;head\n4;M8;25,5;0,5;13\n'],
    ['three decimals behind a comma', 'count;thread;length;tolerance;head\n4;M8;25,500;0,500;13\n'],
    ['tabs', 'Count\tThread\tLength\tTolerance\tHead\r\n4\tM8\t25,5\t0,5\t13\r\n'],
    ['other words for the columns', 'Qty, Size ,LEN (mm),± ,Across flats\n4,M8,25.5,0.5,13 mm\n'],
    ['the plus and minus written too', 'no.;thread;length;tol;hex\n4;M8;25,5;± 0,5;13\n'],
    ['a mark at the start of the file', '\uFEFFcount;thread;length;tol;head\n4;M8;25,5;0,5;13\n'],
    ['no heading', '4,M8,25.5,0.5,13,\n'],
  ])('is read with %s', (_name, text) => {
    expect(measured(text)).toEqual([[4, 'M8', 25.5, 0.5, 13]]);
  });

  it('is read in inches, by the unit of the table, of a column or of a value', () => {
    const wanted = [[2, '1/4', 25.4, 1, 12.7]];
    expect(measured('count,thread,length,head\n2,1/4-20,1,0.5', 'in')).toEqual(wanted);
    expect(measured('count,thread,length (in),head in\n2,1/4-20,1,1/2')).toEqual(wanted);
    expect(measured('count,thread,length,head\n2,1/4-20,1 in,"1/2"""')).toEqual(wanted);
  });

  it('takes a thread as measured: below its nominal diameter', () => {
    expect(measured('count,diameter,pitch,length\n4,7.86,1.25,25')).toEqual([[4, 'M8', 25, 1, null]]);
    expect(measured('count,thread,pitch,length\n4,7.86,18 tpi,25')).toEqual([[4, '5/16', 25, 1, null]]);
    expect(measured('count,thread\n1,M8x25')).toEqual([[1, 'M8', 25, 1, null]]);
  });

  it('says what is wrong with each bad row by its number in the table, and keeps its text', () => {
    const { rows, said } = trayRead(
      'count,thread,length,head,shelf\nmany,M8,25,13,2\n4,banana,25,,\n,,,,\n4,M8,25,5,13,extra\n2,M8,-3,,\n1,,,,\n3,M6,16,T30,4',
    );
    expect(said.map(({ row, sentence }) => [row, sentence.split(',')[0]])).toEqual([
      [2, 'Row 2: Expected a whole number from 1 to 2000 as its count'],
      [3, 'Row 3: Expected a thread such as M8'],
      [5, 'Row 5: expected at most 5 values'],
      [6, 'Row 6: Length: Expected a length above 0 and up to 10 m'],
      [7, 'Row 7: Expected at least a thread'],
    ]);
    expect(rows.map(({ row }) => row)).toEqual([2, 3, 5, 6, 7, 8]);
    expect(rows[0]).toMatchObject({ count: 'many', thread: 'M8', note: 'shelf: 2' });
    expect(rows[2]?.note).toBe('4,M8,25,5,13,extra');
  });

  it('says when it is empty, and when a heading lacks the count or has a value twice', () => {
    expect(trayRead(' \n').said[0]?.sentence).toContain('empty');
    const { said, rows } = trayRead('thread,length,len\nM8,25,30');
    expect(said.map(({ sentence }) => sentence)).toEqual([
      expect.stringContaining('“len” once more'),
      expect.stringContaining('each line is taken as one piece'),
    ]);
    expect(rows[0]).toMatchObject({ count: '1', length: '30' });
  });

  it('loses no word of any table, whatever is in it', () => {
    const cell = fc.stringMatching(/^[a-zA-Z0-9 .,;"±/-]{0,12}$/);
    fc.assert(
      fc.property(
        fc.constantFrom(',', ';', '\t'),
        fc.array(fc.array(cell, { minLength: 1, maxLength: 7 }), { minLength: 1, maxLength: 12 }),
        (sign, table) => {
          const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`;
          const heading = ['count', 'thread', 'length', 'head', 'shelf'].join(sign);
          const text = [heading, ...table.map((row) => row.map(quoted).join(sign))].join('\n');
          const { rows, said } = trayRead(text);
          const bare = (word: string) => word.replaceAll(/[^a-z0-9]/gi, '');
          table.forEach((cells, i) => {
            if (cells.every((one) => one.trim() === '')) return;
            const row = rows.find((one) => one.row === i + 2);
            const kept = bare(Object.values(row ?? {}).join(' '));
            for (const one of cells) expect(kept).toContain(bare(one.trim()));
            const read = row && readRow(row);
            if (!read?.ok) expect(said.some((one) => one.row === i + 2)).toBe(true);
          });
        },
      ),
      { numRuns: 200, seed: 33 },
    );
  });
});
