import { describe, expect, it } from 'vitest';
import { chips, readEntry, writeEntry } from '../../core/entry/index.ts';

const shown = (line: string): string[] =>
  chips(readEntry(line)).map(
    ({ label, caption, doubtful }) => `${label} / ${caption}${doubtful ? ' (?)' : ''}`,
  );

describe('the chips under the entry line', () => {
  it('say what was read, what was assumed and what is kept as a note', () => {
    expect(shown('8 M10x35 hex 16, class 8.8, bag 6, grezed')).toEqual([
      '8 / count',
      'M10 × 35 / pitch 1.5 assumed',
      'hex 16 mm / fits M10',
      '8.8 / class',
      'bag 6 / goes in',
      'greased? / “grezed” is kept as a note (?)',
    ]);
  });

  it('ask for the thread behind a bare head, with every candidate', () => {
    const [count, thread, head] = shown('5 13');
    expect(count).toBe('5 / count');
    expect(thread).toMatch(/^M8\? \/ to confirm: M8, M10.* \(\?\)$/);
    expect(head).toBe('hex 13 mm / across flats');
  });

  it('say that a count was not recorded, rather than showing one', () => {
    expect(shown('M8x25')).toEqual(['? / count not recorded (?)', 'M8 × 25 / pitch 1.25 assumed']);
  });

  it('doubt a head that no table has for the thread', () => {
    expect(shown('4 M8 hex 24')[2]).toBe('hex 24 mm / not M8 in the tables: M16 (?)');
  });

  it('doubt whether missing ones are among the count, unless it was said', () => {
    expect(shown('8 M6, 2 missing as found').at(-1)).toBe('2 / missing as found (?)');
    expect(shown('8 M6, 2 of them missing').at(-1)).toBe('2 / missing as found, of these');
  });

  it('ask whose pint it is', () => {
    expect(shown('2 pints gear oil')).toEqual(['gear oil / fluid', '2 pints / US or imperial? (?)']);
  });

  it.each([
    ['hose, lower, 2 ends, clamp 35 mm', ['lower hose / off', '2 / hose ends', '35 mm / clamp']],
    [
      'hose, lower, 2 ends, clamp 25 mm, bag 2',
      ['lower hose / off', '2 / hose ends', '25 mm / clamp', 'bag 2 / 1 clamp goes in'],
    ],
    ['earth lead, shelf 2', ['earth lead / off', 'shelf 2 / noted beside it']],
    ['aside caliper, hung on wire', ['caliper / moved aside', 'hung on wire / holds it']],
    ['2 rags in the inlet', ['2 rags / must come out: it blocks', 'in the inlet / where it is']],
    ['battery earth off', ['battery earth off / made safe: electricity']],
    [
      '4 M6x16, 90 lbf in',
      ['4 / count', 'M6 × 16 / pitch 1 assumed', '90 lbf in (10.2 N·m) / torque as found'],
    ],
    ['xyzzy', ['xyzzy / not understood, kept as a note (?)']],
  ])('%s', (line, expected) => {
    expect(shown(line)).toEqual(expected);
  });
});

describe('trade notation, written', () => {
  it.each([
    ['5x13', '5 13 mm AF'],
    ['4 M10x1,5x30 hex 16, class 10.9, bag 4', '4 M10x1.5x30 hex 16 mm, class 10.9, bag 4'],
    [
      '8 flange 10 mm, 6 of them 20 long, 2 of them 45',
      '8 flange 10 mm, 6 of them 20 mm long, 2 of them 45 mm long',
    ],
    ['4 1/4-20 UNC x 3/4', '4 1/4-20 UNC x 3/4'],
    // "M10x1.5" would be the pitch.
    ['M10, 1.5 long', 'M10, 1.5 mm long'],
    ['hose, lower, 2 ends, clamp 35', 'lower hose, 2 ends, clamp 35 mm'],
    ['caliper aside, hung on wire', 'aside caliper, hung on wire'],
    ['drained 2,5 l gear oil 75W-90', 'drained gear oil 2,5 l, 75W-90'],
  ])('%s', (typed, written) => {
    const [item] = readEntry(typed).items;
    expect(item && writeEntry(item)).toBe(written);
  });
});

describe('speed', () => {
  const LINES = [
    '4 M10x1.5x30 hex 16 mm, class 10.9, bag 4',
    '8 flange 10 mm, 6 of them 20 long, 2 of them 45, grezed widly, torqe 25',
    'hose, lower, 2 ends, clamp 35 mm, moved aside caliper, hung on wire, must come out: 2 rags in the inlet',
  ];

  it('reads a line in less than a millisecond of work, unknown words included', () => {
    for (let i = 0; i < 200; i += 1) for (const line of LINES) readEntry(line);
    const before = process.cpuUsage();
    for (let i = 0; i < 300; i += 1) for (const line of LINES) readEntry(line);
    expect(process.cpuUsage(before).user / 1000 / 300 / LINES.length).toBeLessThan(1);
  });

  it('grows with the length of the text, not with its square', () => {
    const time = (text: string): number => {
      // Work done, not time passed: whatever else runs on the machine does not count.
      const before = process.cpuUsage();
      readEntry(text);
      return process.cpuUsage(before).user / 1000;
    };
    for (const unit of ['4 M8x25, ', 'lower ', '"', '(', '1/4-20 x ', 'a"b ', 'hung on wire ', 'no ', '9']) {
      time(unit.repeat(200));
      const small = Math.max(0.5, Math.min(time(unit.repeat(500)), time(unit.repeat(500))));
      const large = Math.min(time(unit.repeat(8000)), time(unit.repeat(8000)));
      // 16 times the text; a square would take 256 times as long.
      expect({ unit, tooSlow: large / small > 100 }).toEqual({ unit, tooSlow: false });
    }
  });
});
