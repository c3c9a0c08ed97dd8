import { describe, expect, it } from 'vitest';
import { readEntry } from '../../core/entry/index.ts';
import { notUnderstood, said, set } from './said.ts';

const HEX13 = 'hex external 13 mm';

/** Lines and what they mean. Notation: common practice, no source; designations as in ISO 965-1 and ASME B1.1. */
const LINES: readonly (readonly [string, ...unknown[]])[] = [
  // the number pad
  ['5 13', set({ count: 5, drive: HEX13 })],
  ['5x13', set({ count: 5, drive: HEX13 })],
  ['5 × 13', set({ count: 5, drive: HEX13 })],
  ['5 5.5', set({ count: 5, drive: 'hex external 5.5 mm' })],
  ['5', set({ count: 5 })],
  ['5 13, 3 10', set({ count: 5, drive: HEX13 }), set({ count: 3, drive: 'hex external 10 mm' })],
  ['5 13 M8x30', set({ count: 5, drive: HEX13, thread: 'M8 (1.25)', lengthMm: 30 })],
  ['5 13, bag 4', set({ count: 5, drive: HEX13, stow: 'bag 4' })],
  ['5 1/2', set({ count: 5, drive: 'hex external 1/2 in' })],
  ['3 8mm', set({ count: 3, drive: 'hex external 8 mm' })],
  // threads
  ['M8x25', set({ thread: 'M8 (1.25)', lengthMm: 25 })],
  ['M8 × 25', set({ thread: 'M8 (1.25)', lengthMm: 25 })],
  ['M8*25', set({ thread: 'M8 (1.25)', lengthMm: 25 })],
  ['m8 x 25 mm', set({ thread: 'M8 (1.25)', lengthMm: 25 })],
  ['M10x1,5x30', set({ thread: 'M10x1.5', lengthMm: 30 })],
  ['M10x30x1.5', set({ thread: 'M10x1.5', lengthMm: 30 })],
  ['4xM6', set({ count: 4, thread: 'M6 (1)' })],
  ['4 x M6x20', set({ count: 4, thread: 'M6 (1)', lengthMm: 20 })],
  ['4 off M10', set({ count: 4, thread: 'M10 (1.5)' })],
  ['six M8x25', set({ count: 6, thread: 'M8 (1.25)', lengthMm: 25 })],
  ['M10 fine', set({ thread: 'M10 (?)' })],
  ['M3x4', set({ thread: 'M3 (0.5)', lengthMm: 4 })],
  ['M6x3', set({ thread: 'M6 (1)', lengthMm: 3 })],
  ['M24x3', set({ thread: 'M24x3' })],
  ['Tr 20x4', set({ thread: 'Tr 20x4' })],
  ['4 1/4-20 UNC x 3/4', set({ count: 4, thread: '1/4-20 UNC', lengthMm: 19.05, lengthUnit: 'in' })],
  ['2 5/16-18 1/2 AF', set({ count: 2, thread: '5/16-18', drive: 'hex external 1/2 in' })],
  [
    '6 #10-32 x 1/2 pan head',
    set({ count: 6, thread: '#10-32', lengthMm: 12.7, lengthUnit: 'in', head: 'pan' }),
  ],
  ['10-32 x 3/4', set({ thread: '#10-32', lengthMm: 19.05, lengthUnit: 'in' })],
  ['6 3/8" UNF', set({ count: 6, thread: '3/8 UNF (24)' })],
  [
    '3/8-16 UNC x 1 1/4, grade 5',
    set({ thread: '3/8-16 UNC', lengthMm: 31.75, lengthUnit: 'in', propertyClass: 'grade 5' }),
  ],
  [
    '2 5/16-18 x 1 1/2 AF',
    set({ count: 2, thread: '5/16-18', lengthMm: 25.4, lengthUnit: 'in', drive: 'hex external 1/2 in' }),
  ],
  ['1/4-20 x 20 mm', set({ thread: '1/4-20', lengthMm: 20 })],
  ['2 ½-13 UNC', set({ count: 2, thread: '1/2-13 UNC' })],
  ['G1/2', set({ thread: 'G 1/2' })],
  ['1/8 NPT', set({ thread: '1/8 NPT' })],
  [
    '2 M12x1.25 LH, threadlock',
    set({ count: 2, thread: 'M12x1.25', leftHand: true, treatments: ['threadlock'] }),
  ],
  // heads, drives, classes
  [
    '4 M10x1.5x30 hex 16 mm, class 10.9, bag 4',
    set({
      count: 4,
      thread: 'M10x1.5',
      lengthMm: 30,
      head: 'hex',
      drive: 'hex external 16 mm',
      propertyClass: '10.9',
      stow: 'bag 4',
    }),
  ],
  ['8 M8x25-8.8', set({ count: 8, thread: 'M8 (1.25)', lengthMm: 25, propertyClass: '8.8' })],
  ['8 M8 A2-70', set({ count: 8, thread: 'M8 (1.25)', propertyClass: 'A2-70' })],
  [
    '2 hex bolts M12x80 19 mm',
    set({
      what: 'bolt',
      count: 2,
      thread: 'M12 (1.75)',
      lengthMm: 80,
      head: 'hex',
      drive: 'hex external 19 mm',
    }),
  ],
  [
    'flange bolt M8x30 10mm',
    set({ what: 'bolt', thread: 'M8 (1.25)', lengthMm: 30, head: 'flange', drive: 'hex external 10 mm' }),
  ],
  [
    '4 M6x20 socket cap 5 mm hex key',
    set({ count: 4, thread: 'M6 (1)', lengthMm: 20, head: 'socket cap', drive: 'hex socket 5 mm' }),
  ],
  [
    '4 M6 cap head 5 mm Allen',
    set({ count: 4, thread: 'M6 (1)', head: 'socket cap', drive: 'hex socket 5 mm' }),
  ],
  [
    '4 grub screws M5x8, 2.5 Allen',
    set({ what: 'set screw', count: 4, thread: 'M5 (0.8)', lengthMm: 8, drive: 'hex socket 2.5 mm' }),
  ],
  [
    '6 set screws M8x20 13 mm',
    set({ what: 'set screw', count: 6, thread: 'M8 (1.25)', lengthMm: 20, drive: HEX13 }),
  ],
  ['4 T30 M6x16', set({ count: 4, drive: 'hexalobular T30', thread: 'M6 (1)', lengthMm: 16 })],
  ['4 E12', set({ count: 4, drive: 'hexalobular external E12' })],
  ['12 screws PH2', set({ what: 'screw', count: 12, drive: 'cross PH PH2' })],
  [
    '10 M5x16 csk T25',
    set({ count: 10, thread: 'M5 (0.8)', lengthMm: 16, head: 'countersunk', drive: 'hexalobular T25' }),
  ],
  ['13 mm spanner', set({ drive: HEX13 })],
  ['13 mm wrench', set({ drive: HEX13 })],
  ['5 bolts 13 mm', set({ what: 'bolt', count: 5, drive: HEX13 })],
  ['5 13 mm bolts', set({ what: 'bolt', count: 5, drive: HEX13 })],
  ['4 nuts M12, 19 mm', set({ what: 'nut', count: 4, thread: 'M12 (1.75)', drive: 'hex external 19 mm' })],
  ['2 nyloc nuts 13 mm', set({ what: 'nut', count: 2, head: 'nyloc', drive: HEX13 })],
  // lengths
  [
    '8 flange 10 mm, 6 of them 20 long, 2 of them 45',
    set({
      count: 8,
      head: 'flange',
      drive: 'hex external 10 mm',
      lengths: [
        { count: 6, lengthMm: 20 },
        { count: 2, lengthMm: 45 },
      ],
    }),
  ],
  [
    '8 M6, 6 of them 20 long, the rest 45',
    set({
      count: 8,
      thread: 'M6 (1)',
      lengths: [
        { count: 6, lengthMm: 20 },
        { count: 2, lengthMm: 45 },
      ],
    }),
  ],
  ['4 M8 25 mm long', set({ count: 4, thread: 'M8 (1.25)', lengthMm: 25 })],
  ['4 M8, length 25', set({ count: 4, thread: 'M8 (1.25)', lengthMm: 25 })],
  ['4 M8x25 in bag 4', set({ count: 4, thread: 'M8 (1.25)', lengthMm: 25, stow: 'bag 4' })],
  // other fasteners
  ['12 clips', set({ what: 'clip', count: 12 })],
  ['3 push rivets', set({ what: 'push rivet', count: 3 })],
  ['push rivets, 6', set({ what: 'push rivet', count: 6 })],
  ['2 split pins 3.2x40', set({ what: 'split pin', count: 2, sizeMm: 3.2, lengthMm: 40 })],
  ['2 cotter pins', set({ what: 'split pin', count: 2 })],
  // Named in the singular: "circlip" is one, as "a bolt" is; it was unknown before, and nobody takes one circlip for some.
  ['circlip 25', set({ count: 1, what: 'circlip', sizeMm: 25 })],
  ['1 snap ring', set({ what: 'circlip', count: 1 })],
  ['2 hose clamps 35 mm', set({ what: 'clamp', count: 2, sizeMm: 35 })],
  ['4 6x20 dowels', set({ what: 'dowel pin', count: 4, sizeMm: 6, lengthMm: 20 })],
  ['2 wood screws 4x40', set({ what: 'wood screw', count: 2, sizeMm: 4, lengthMm: 40 })],
  ['8 M8 washers', set({ what: 'washer', count: 8, thread: 'M8 (1.25)' })],
  ['4 spring washers', set({ what: 'spring washer', count: 4 })],
  ['4 cover bolts', set({ what: 'bolt', count: 4, name: 'cover' })],
  ['4 bolts from the cover', set({ what: 'bolt', count: 4, name: 'cover' })],
  [
    '10 cylinder head bolts M10x120',
    set({ what: 'bolt', count: 10, name: 'cylinder head', thread: 'M10 (1.5)', lengthMm: 120 }),
  ],
  ['a bolt', set({ what: 'bolt', count: 1 })],
  // stacks
  [
    '4 M8x40 bolt + washer + spacer + nut',
    set({
      what: 'bolt',
      count: 4,
      thread: 'M8 (1.25)',
      lengthMm: 40,
      stack: ['bolt', 'washer', 'spacer', 'nut'].map((what) => ({ what, qty: 1 })),
    }),
  ],
  [
    '4 bolts with 4 washers',
    set({
      what: 'bolt',
      count: 4,
      stack: [
        { what: 'bolt', qty: 1 },
        { what: 'washer', qty: 1 },
      ],
    }),
  ],
  [
    '4 bolts with 2 washers each',
    set({
      what: 'bolt',
      count: 4,
      stack: [
        { what: 'bolt', qty: 1 },
        { what: 'washer', qty: 2 },
      ],
    }),
  ],
  [
    '4 stacks: bolt, 2 washers, nut',
    set({
      count: 4,
      stack: [
        { what: 'bolt', qty: 1 },
        { what: 'washer', qty: 2 },
        { what: 'nut', qty: 1 },
      ],
    }),
  ],
  [
    '4 M8x25, 4 washers',
    set({ count: 4, thread: 'M8 (1.25)', lengthMm: 25 }),
    set({ what: 'washer', count: 4 }),
  ],
  // torque, condition, missing, what happened
  [
    '3 M8x25 25 Nm',
    set({ count: 3, thread: 'M8 (1.25)', lengthMm: 25, torque: { value: 25, unit: 'Nm', torqueNm: 25 } }),
  ],
  [
    'M10, 40 Nm + 90°',
    set({ thread: 'M10 (1.5)', torque: { value: 40, unit: 'Nm', torqueNm: 40, angleDeg: 90 } }),
  ],
  ['M10, 45 ft-lbs', set({ thread: 'M10 (1.5)', torque: { value: 45, unit: 'lbf ft', torqueNm: 61.012 } })],
  ['M5 90 lbf in', set({ thread: 'M5 (0.8)', torque: { value: 90, unit: 'lbf in', torqueNm: 10.169 } })],
  ['4 M10 snug', set({ count: 4, thread: 'M10 (1.5)', torque: { unit: 'Nm', byFeel: true } })],
  [
    '8 M8x25, one stripped',
    set({ count: 8, thread: 'M8 (1.25)', lengthMm: 25, conditions: [{ what: 'stripped', qty: 1 }] }),
  ],
  [
    '8 M8x25, hole 3 snapped',
    set({ count: 8, thread: 'M8 (1.25)', lengthMm: 25, conditions: [{ what: 'snapped', holes: [3] }] }),
  ],
  [
    '8 M8, bent in holes 3 and 5, 1 stripped',
    set({
      count: 8,
      thread: 'M8 (1.25)',
      conditions: [
        { what: 'bent', holes: [3, 5] },
        { what: 'stripped', qty: 1 },
      ],
    }),
  ],
  ['bolt 3 sheared', set({ what: 'bolt', conditions: [{ what: 'snapped', holes: [3] }] })],
  ['5 bolts 13 mm, 2 missing as found', set({ what: 'bolt', count: 5, drive: HEX13, missingAsFound: 2 })],
  [
    '8 M6, 2 of them missing as found',
    set({ count: 8, thread: 'M6 (1)', missingAsFound: 2, missingAre: 'among' }),
  ],
  ['4 M8, 2 more missing', set({ count: 4, thread: 'M8 (1.25)', missingAsFound: 2, missingAre: 'besides' })],
  [
    '8 M6, hole 4 empty as found',
    set({ count: 8, thread: 'M6 (1)', missingAsFound: 1, missingHoles: [4], missingAre: 'among' }),
  ],
  ['slackened 2 M10 bolts', set({ what: 'bolt', happened: 'slackened', count: 2, thread: 'M10 (1.5)' })],
  ['4 13 loosened', set({ happened: 'slackened', count: 4, drive: HEX13 })],
  ['12 M10x120, renew', set({ count: 12, thread: 'M10 (1.5)', lengthMm: 120, renew: 'must' })],
  ['4 M6x16, greased', set({ count: 4, thread: 'M6 (1)', lengthMm: 16, treatments: ['greased'] })],
  ['bag 3, 4 M8x25', set({ count: 4, thread: 'M8 (1.25)', lengthMm: 25, stow: 'bag 3' })],
  ['4 M8x25, tray B2', set({ count: 4, thread: 'M8 (1.25)', lengthMm: 25, stow: 'tray B2' })],
  ['4 M8x25, bag', set({ count: 4, thread: 'M8 (1.25)', lengthMm: 25, stow: 'bag' })],
];

describe('fasteners on the entry line', () => {
  it.each(LINES.map(([line, ...items]) => ({ line, items })))('$line', ({ line, items }) => {
    expect(said(line)).toEqual(items);
    expect(notUnderstood(line)).toEqual([]);
  });

  it('keeps every thread that a bare head size can belong to, the usual one first to be confirmed', () => {
    const [item] = readEntry('5 13').items;
    expect(item).toMatchObject({ thread: null, threadToConfirm: 'M8' });
    // ISO 4014 and ISO 4162 (flange, small series): 13 mm is M8, and M10 on a small flange bolt.
    expect(item).toMatchObject({ threadsPossible: expect.arrayContaining(['M8', 'M10']) });
  });

  it('asks for no thread when one was typed', () => {
    expect(readEntry('4 M8 hex 13').items[0]).toMatchObject({ threadsPossible: [], threadToConfirm: null });
  });

  it('reads inch heads as inches, and puts inch threads first', () => {
    expect(readEntry('4 1/2 AF').items[0]).toMatchObject({
      threadToConfirm: '5/16',
      drive: { acrossFlatsMm: 12.7 },
    });
    expect(readEntry('4 19').items[0]).toMatchObject({ threadToConfirm: 'M12' });
  });
});
