import { describe, expect, it } from 'vitest';
import { note, notUnderstood, part, said, set } from './said.ts';

const item = (kind: string, fields: Readonly<Record<string, unknown>>): unknown => ({ kind, ...fields });
const connection = (what: string, name: string, fields: Readonly<Record<string, unknown>> = {}): unknown =>
  item('connection', { what, name, ...fields });
const out = (name: string, role: string, fields: Readonly<Record<string, unknown>> = {}): unknown =>
  item('temporary', { name, role, ...fields });
const safe = (how: string, energy: string): unknown => item('made safe', { how, energy });

/** `what` of a connection is said whatever it is, so it is never left out as "unspecified". */
const LINES: readonly (readonly [string, ...unknown[]])[] = [
  // parts
  ['cover', part('cover')],
  ['lower front cover, 6 10', part('lower front cover'), set({ count: 6, drive: 'hex external 10 mm' })],
  ['cover, front', part('front cover')],
  ['cover 5 13', part('cover'), set({ count: 5, drive: 'hex external 13 mm' })],
  [
    'valve cover 10 M6x20 T30',
    part('valve cover'),
    set({ count: 10, thread: 'M6 (1)', lengthMm: 20, drive: 'hexalobular T30' }),
  ],
  [
    'alternator, 2 M8x40, 1 M10x60',
    part('alternator'),
    set({ count: 2, thread: 'M8 (1.25)', lengthMm: 40 }),
    set({ count: 1, thread: 'M10 (1.5)', lengthMm: 60 }),
  ],
  ['pump and motor', part('pump'), part('motor')],
  ['took off cover', part('cover')],
  ['slackened tensioner', part('tensioner', { happened: 'slackened' })],
  ['tensioner slackened', part('tensioner', { happened: 'slackened' })],
  ['slackened whatsit', part('whatsit', { happened: 'slackened' })],
  ['opened filler cap', part('filler cap', { happened: 'opened' })],
  ['aside caliper, hung on wire', part('caliper', { happened: 'aside', heldBy: 'hung on wire' })],
  ['caliper aside, tied up with wire', part('caliper', { happened: 'aside', heldBy: 'tied up with wire' })],
  [
    'motor, 3 M6x16, hung on wire',
    part('motor', { heldBy: 'hung on wire' }),
    set({ count: 3, thread: 'M6 (1)', lengthMm: 16 }),
  ],
  [
    'slackened pump, 2 M8x25, propped on hose',
    part('pump', { happened: 'slackened', heldBy: 'propped on hose' }),
    set({ count: 2, thread: 'M8 (1.25)', lengthMm: 25 }),
  ],
  ['moved aside compressor on strap', part('compressor', { happened: 'aside', heldBy: 'on strap' })],
  ['gasket, renew', part('gasket', { look: 'gasket', renew: 'must' })],
  ['belt, renew if worn', part('belt', { renew: 'if worn' })],
  ['2 O-rings 20x2.5, renew', part('O-rings 20x2.5', { look: 'O-ring', qty: 2, renew: 'must' })],
  ['oil seal 35x52x7', part('oil seal 35x52x7', { look: 'seal' })],
  ['shim 3, own place, stamped 3', part('shim 3', { look: 'shim', ownPlace: true, stamped: '3' })],
  ['bearing caps, keep in order, stamped A1', part('bearing caps', { ownPlace: true, stamped: 'A1' })],
  ['caps 1 to 5, own place', part('caps 1 to 5', { ownPlace: true })],
  ['lifters, own place, tray B', part('lifters', { ownPlace: true, stow: 'tray B' })],
  ['cracked cover', part('cover', { conditions: [{ what: 'cracked' }] })],
  [
    'cover off, gasket torn',
    part('cover'),
    part('gasket', { look: 'gasket', conditions: [{ what: 'damaged' }] }),
  ],
  ['cover missing as found', part('cover', { conditions: [{ what: 'missing' }] })],
  ['shelf 2, cover', part('cover', { stow: 'shelf 2' })],
  ['flange gasket', part('flange gasket', { look: 'gasket' })],
  ['part "M8 bracket, the long one"', part('M8 bracket, the long one')],
  [
    'M16x1.5 drain plug, 17 mm',
    set({ name: 'drain plug', thread: 'M16x1.5', drive: 'hex external 17 mm' }),
    part('drain plug'),
  ],
  // hoses, plugs, cables
  ['hose, suction, 2 ends', connection('hose', 'suction hose', { ends: 2 })],
  ['hose, lower, 2 ends, clamp 35 mm', connection('hose', 'lower hose', { ends: 2, clampMm: 35 })],
  ['upper hose, 1 end, jubilee clip 40', connection('hose', 'upper hose', { ends: 1, clampMm: 40 })],
  ['hose, 2 clamps 35 mm', connection('hose', 'hose'), set({ what: 'clamp', count: 2, sizeMm: 35 })],
  ['plug off', connection('plug', 'plug')],
  ['plug at the sensor', connection('plug', 'plug at the sensor')],
  ['2 plugs', connection('plug', 'plugs', { qty: 2 })],
  ['plug, 3 pin', connection('plug', 'plug', { pins: 3 })],
  ['3-pin plug at the sensor', connection('plug', 'plug at the sensor', { pins: 3 })],
  ['connector, 6 way', connection('connector', 'connector', { pins: 6 })],
  [
    'earth lead, 1 10',
    connection('earth lead', 'earth lead'),
    set({ count: 1, drive: 'hex external 10 mm' }),
  ],
  ['ground strap', connection('earth lead', 'ground strap')],
  ['throttle cable', connection('cable', 'throttle cable')],
  ['brake pipe, leave alone', connection('pipe', 'brake pipe', { leaveAlone: true })],
  [
    'moved aside: loom, cable tied to the frame',
    connection('cable', 'loom', { happened: 'aside', heldBy: 'cable tied to the frame' }),
  ],
  ['vacuum hose off, both ends capped', connection('hose', 'vacuum hose'), out('cap', 'blocks', { qty: 2 })],
  // fluids
  [
    'drained 2.5 l gear oil 75W-90',
    item('fluid', { name: 'gear oil', did: 'drained', amountMl: 2500, amountTyped: '2.5 l', type: '75W-90' }),
  ],
  ['2,5 l oil drained', item('fluid', { name: 'oil', did: 'drained', amountMl: 2500, amountTyped: '2,5 l' })],
  [
    'drained 300 ml brake fluid DOT 4',
    item('fluid', {
      name: 'brake fluid',
      did: 'drained',
      amountMl: 300,
      amountTyped: '300 ml',
      type: 'DOT 4',
    }),
  ],
  ['lost some hydraulic oil', item('fluid', { name: 'hydraulic oil', did: 'lost' })],
  ['2 US qt oil', item('fluid', { name: 'oil', amountMl: 1893, amountTyped: '2 US qt' })],
  ['2 pints gear oil', item('fluid', { name: 'gear oil', amountTyped: '2 pints' })],
  ['milky oil', item('fluid', { name: 'oil', conditions: [{ what: 'milky' }] })],
  // made safe
  ['battery earth off', safe('battery earth off', 'electricity')],
  ['made safe: battery earth off', safe('battery earth off', 'electricity')],
  ['mains isolated and locked out', safe('mains isolated and locked out', 'electricity')],
  ['pressure let off', safe('pressure let off', 'pressure')],
  ['spring caged', safe('spring caged', 'spring')],
  ['on axle stands', safe('on axle stands', 'load')],
  ['load lowered', safe('load lowered', 'load')],
  ['fuel tap shut', safe('fuel tap shut', 'fuel')],
  ['ignition off', safe('ignition off', 'ignition')],
  ['made safe (pressure): valve 3 shut', safe('valve 3 shut', 'pressure')],
  ['isolated: hatch wedged', safe('hatch wedged', 'other')],
  // must come out
  ['must come out: 2 rags in the inlet', out('rags', 'blocks', { qty: 2, where: 'in the inlet' })],
  ['2 rags in the inlet', out('rags', 'blocks', { qty: 2, where: 'in the inlet' })],
  ['rag in inlet, must come out', out('rag', 'blocks', { where: 'in inlet' })],
  ['must come out: plug in port 3', out('plug', 'blocks', { where: 'in port 3' })],
  ['put in: blanking cap on pipe', out('blanking cap', 'blocks', { where: 'on pipe' })],
  ['caging bolt', out('caging bolt', 'cages')],
  ['timing pin, must come out', out('timing pin', 'locks')],
  ['must come out: strap under the engine', out('strap', 'supports', { where: 'under the engine' })],
  ['must come out (supports): 2 wooden wedges', out('wooden wedges', 'supports', { qty: 2 })],
  // readings, marks, conditions, bags, places, notes
  ['end float 0,15 mm', item('measurement', { what: 'end float', value: 0.15, unit: 'mm' })],
  ['backlash .1', item('measurement', { what: 'backlash', value: 0.1, unit: '' })],
  ['compression 9.5 bar', item('measurement', { what: 'compression', value: 9.5, unit: 'bar' })],
  ['match mark on pulley and cover', item('mark', { text: 'match mark on pulley and cover' })],
  ['belt, arrow to front', part('belt'), item('mark', { text: 'arrow to front' })],
  ['one stripped', item('condition', { condition: { what: 'stripped', qty: 1 } })],
  ['hole 3 snapped', item('condition', { condition: { what: 'snapped', holes: [3] } })],
  ['head rounded', item('condition', { condition: { what: 'rounded' } })],
  ['bag 7', item('stow', { stow: 'bag 7' })],
  ['front, left, under', item('place', { place: 'front, left, under' })],
  [
    "note: prise only at the lugs, one and seven o'clock",
    note("prise only at the lugs, one and seven o'clock"),
  ],
  ['"4 M8 in the lid"', note('4 M8 in the lid')],
  ['8 M6x20 stainless', set({ count: 8, thread: 'M6 (1)', lengthMm: 20 }), note('stainless')],
];

describe('parts, connections, fluids and the rest on the entry line', () => {
  it.each(LINES.map(([line, ...items]) => ({ line, items })))('$line', ({ line, items }) => {
    expect(said(line)).toEqual(items);
    expect(notUnderstood(line)).toEqual([]);
  });
});

/** The line, what is not understood (with its suggestion), and what is left of the meaning. */
const DOUBTFUL: readonly (readonly [string, readonly string[], ...unknown[]])[] = [
  [
    '8 M10x35 hex 16, class 8.8, bag 6, grezed',
    ['grezed → greased'],
    set({
      count: 8,
      thread: 'M10 (1.5)',
      lengthMm: 35,
      head: 'hex',
      drive: 'hex external 16 mm',
      propertyClass: '8.8',
      stow: 'bag 6',
    }),
    note('grezed'),
  ],
  ['4 bots', ['bots → bolts'], set({ count: 4 }), note('bots')],
  ['lower hoze', ['lower', 'hoze → hose'], note('lower hoze')],
  // 13 mm can be the head of M8 or its length; 25 mm can only be the length.
  ['4 M8 13 mm', ['13 mm → 13 mm long'], set({ count: 4, thread: 'M8 (1.25)' }), note('13 mm')],
  ['4 8x25', ['8 → M8x25', 'x', '25'], set({ count: 4 }), note('8x25')],
  ['5 13 30', ['30 → 30 long'], set({ count: 5, drive: 'hex external 13 mm' }), note('30')],
  ['1/4-20 x 25', ['25 → 25 long'], set({ thread: '1/4-20' }), note('25')],
  ['7/16 nut', ['7/16 → 7/16 AF'], note('7/16'), set({ what: 'nut' })],
  ['bolts 13', ['13 → 13 AF'], set({ what: 'bolt' }), note('13')],
  ['circlips 25', ['25 → 25 mm'], set({ what: 'circlip' }), note('25')],
  [
    '4 M8x25, bag 3, bag 4',
    ['bag 4'],
    set({ count: 4, thread: 'M8 (1.25)', lengthMm: 25, stow: 'bag 3' }),
    note('bag 4'),
  ],
  ['4 M8 12-20 mm', ['12-20 mm'], set({ count: 4, thread: 'M8 (1.25)' }), note('12-20 mm')],
  ['no gasket', ['no gasket'], note('no gasket')],
  [
    "couldn't find bolt 3, 5 13",
    ["couldn't find bolt 3"],
    note("couldn't find bolt 3"),
    set({ count: 5, drive: 'hex external 13 mm' }),
  ],
  ['xyzzy', ['xyzzy'], note('xyzzy')],
  ['5 ?', ['?'], set({ count: 5 }), note('?')],
];

describe('what is not understood', () => {
  it.each(DOUBTFUL.map(([line, unknown, ...items]) => ({ line, unknown, items })))(
    'is kept as typed, at most with a suggestion: $line',
    ({ line, unknown, items }) => {
      expect(notUnderstood(line)).toEqual(unknown);
      expect(said(line)).toEqual(items);
    },
  );
});
