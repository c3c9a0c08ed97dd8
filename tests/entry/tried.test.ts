import { describe, expect, it } from 'vitest';
import { chips, readEntry } from '../../core/entry/index.ts';
import { note, notUnderstood, part, said, set } from './said.ts';

/** Lines that a person typed who knew only the guide, and what was meant by them. */

/** A line and the things that are meant by it. */
type Tried = readonly [string, ...unknown[]];

const tried = (...rows: readonly Tried[]) => rows.map(([line, ...meant]) => ({ line, meant }));

const safe = (how: string, energy = 'electricity'): unknown => ({ kind: 'made safe', how, energy });

describe('a lock or tag says that it was made safe, and is nothing to fit', () => {
  it.each([
    ['main isolator locked, my lock', safe('main isolator locked, my lock')],
    ['locked out, my lock on isolator', safe('locked out, my lock on isolator')],
    ['isolator locked off', safe('isolator locked off')],
    ['main switch off, locked', safe('main switch off, locked')],
    ['main switch off, locked and tagged', safe('main switch off, locked and tagged')],
    ['breaker off and tagged', safe('breaker off and tagged')],
    ['my lock on', safe('my lock on')],
    ['my padlock on the main switch', safe('my padlock on the main switch')],
    ['my lock on steam valve', safe('my lock on steam valve', 'pressure')],
    ['lock 7 on isolator', safe('lock 7 on isolator')],
    ['Q3 breaker open, lock 7, tagged', safe('Q3 breaker open, lock 7, tagged')],
    ['locked out, padlock 7', safe('locked out, padlock 7')],
    ['mains plug drawn, her lock on it', safe('mains plug drawn, her lock on it')],
    ['isolator off, tag on', safe('isolator off, tag on')],
    ['mains off, lock B', safe('mains off, lock B')],
    ['load lowered', safe('load lowered', 'load')],
  ])('%s', (line, meant) => {
    expect(said(line)).toEqual([meant]);
    expect(notUnderstood(line)).toEqual([]);
  });

  it('leaves a lock that comes off a part', () => {
    expect(said('door lock')).toEqual([part('door lock')]);
    expect(said('mains off, door lock')).toEqual([safe('mains off'), part('door lock')]);
    expect(said('lock plate on the hub')).toEqual([part('lock plate on the hub')]);
    expect(said('breaker cover off')).toEqual([part('breaker cover')]);
  });
});

const m8 = (fields: Readonly<Record<string, unknown>> = {}): unknown =>
  set({ count: 4, thread: 'M8 (1.25)', ...fields });
const place = (words: string): unknown => ({ kind: 'place', place: words });

describe('an end of the machine is a place', () => {
  it.each(
    tried(
      ['bearing, at drive end, 4 M8', part('drive end bearing'), m8()],
      ['bearing, gear end', part('gear end bearing')],
      ['bearing, non-drive end, own place', part('non-drive end bearing', { ownPlace: true })],
      ['drive end bearing', part('drive end bearing')],
      ['gear end plate, 4 M8', part('gear end plate'), m8()],
      ['4 M8 at motor end', m8(), place('motor end')],
      ['4 bolts M8 at the free end, bag 2', m8({ what: 'bolt', stow: 'bag 2' }), place('free end')],
      ['cover, 4 M8, at the left end', part('cover'), m8(), place('left end')],
      ['2 M8 at drive end, 4 M8 at gear end', m8({ count: 2, name: 'drive end' }), m8({ name: 'gear end' })],
      ['track rod end', part('track rod end')],
    ),
  )('$line', ({ line, meant }) => {
    expect(said(line)).toEqual(meant);
    expect(notUnderstood(line)).toEqual([]);
  });
});

describe('a name of two words is kept whole', () => {
  it.each(
    tried(
      ['coupling half, 4 M8', part('coupling half'), m8()],
      ['2 coupling halves', part('coupling halves', { qty: 2 })],
      ['coupling upper half', part('coupling upper half')],
      ['lower casing half', part('lower casing half')],
      ['upper half of the casing', part('upper half of the casing')],
      ['2 upper halves', part('upper halves', { qty: 2 })],
      ['2 halves', part('halves', { qty: 2 })],
      ['bearing pair, own place', part('bearing pair', { ownPlace: true })],
      ['pump assembly', part('pump assembly')],
      ['pulley half, inner', part('inner pulley half')],
      ...['upper', 'lower', 'inner', 'outer'].flatMap((word): Tried[] => [
        [`${word} race`, part(`${word} race`)],
        [`race ${word}`, part(`race ${word}`)],
      ]),
    ),
  )('$line', ({ line, meant }) => {
    expect(said(line)).toEqual(meant);
    expect(notUnderstood(line)).toEqual([]);
  });
});

describe('one piece that is named in the singular is one', () => {
  const one = (what: string, fields: Readonly<Record<string, unknown>> = {}): unknown =>
    set({ what, count: 1, ...fields });
  it.each(
    tried(
      ['output pinion, circlip, bearing 6206', part('output pinion'), one('circlip'), part('bearing 6206')],
      ['snap ring', one('circlip')],
      ['retaining ring 30 mm', one('circlip', { sizeMm: 30 })],
      ['internal circlip', one('circlip', { name: 'internal' })],
      ['split pin 3.2x40', one('split pin', { sizeMm: 3.2, lengthMm: 40 })],
      ['cotter pin', one('split pin')],
      ['key', one('key')],
      ['trim clip', one('clip')],
      ['drain plug, sealing washer', part('drain plug'), one('sealing washer')],
      ['dust cap', part('dust cap')],
      ['circlip missing as found', one('circlip', { missingAsFound: 1, missingAre: 'among' })],
      ['circlip, 2 off', set({ what: 'circlip', count: 2 })],
      ['2 circlip', set({ what: 'circlip', count: 2 })],
      // Several, or what comes in rows and is named in the singular for its kind: how many was not said.
      ['circlips', set({ what: 'circlip' })],
      ['split pins', set({ what: 'split pin' })],
      ['clips', set({ what: 'clip' })],
      ['bolt M8x20', set({ what: 'bolt', thread: 'M8 (1.25)', lengthMm: 20 })],
      ['washer 8 mm', set({ what: 'washer', sizeMm: 8 })],
    ),
  )('$line', ({ line, meant }) => {
    expect(said(line)).toEqual(meant);
    expect(notUnderstood(line)).toEqual([]);
  });
});

it('keeps how rivets came off as a note', () => {
  expect(said('4 pop rivets drilled out')).toEqual([set({ what: 'rivet', count: 4 }), note('drilled out')]);
});

describe('a thread that no table has', () => {
  const threadChip = (line: string) => chips(readEntry(line)).find((chip) => chip.label.startsWith('M'));
  it.each([
    ['5 M80x16', 'M80 × 16', 'in no table here, M8?'],
    ['5 M88x20', 'M88 × 20', 'in no table here, M8?'],
    ['4 M15', 'M15', 'in no table here, M14? M16?'],
    ['4 M42x90', 'M42 × 90', 'in no table here'],
    ['4 M9.5x30', 'M9.5 × 30', 'in no table here, M10?'],
    ['2 M8x2x30', 'M8 × 30', 'pitch 2 in no table for M8'],
  ])('is doubtful: %s', (line, label, caption) => {
    expect(threadChip(line)).toEqual({ label, caption, doubtful: true });
  });

  it.each(['5 M8x16', '2 M8x1x30', '4 M10x1.25', '2 M80x6x200'])('is not: %s', (line) => {
    expect(threadChip(line)?.doubtful).toBe(false);
  });
});
