import { describe, expect, it } from 'vitest';
import { notUnderstood, part, said } from './said.ts';

/** Lines that a person typed who knew only the guide, and what was meant by them. */

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
