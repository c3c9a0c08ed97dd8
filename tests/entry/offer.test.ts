import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { offerNouns, readEntry, stickyLine } from '../../core/entry/index.ts';

const words = (text: string, own: readonly string[] = []) => offerNouns(text, own, 4).map((one) => one.word);

describe('nouns offered while a line is typed', () => {
  it('are those of this job first, newest first, from the first letter on', () => {
    expect(words('c', ['caliper', 'Coupling guard', 'pump'])).toEqual(['caliper', 'Coupling guard']);
  });

  it('are the trade’s own from the second letter on, never twice', () => {
    expect(words('tens', ['Tensioner'])).toEqual(['Tensioner']);
    expect(words('aside cal')).toContain('caliper');
    expect(words('t')).toEqual([]);
  });

  it('go on with as many words as fit, and replace only those', () => {
    expect(offerNouns('4 M8x20, side cov', ['coverplate', 'side cover'], 2)).toEqual([
      { word: 'side cover', text: '4 M8x20, side cover' },
      { word: 'coverplate', text: '4 M8x20, side coverplate' },
    ]);
  });

  it('are none while a number is typed, after a space, or when the word is whole', () => {
    for (const text of ['', '5 13', 'M8', 'cover ', 'caliper'])
      expect(words(text, ['cover'])).not.toContain('cover');
    expect(words('5 13', ['13 mm nut'])).toEqual([]);
  });

  it('begin with what was typed, for any text', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 20 }), (text) => {
        for (const offer of offerNouns(text, ['belt guard', 'Pulley'], 4))
          expect(offer.text.toLowerCase().startsWith(text.toLowerCase())).toBe(true);
      }),
      { seed: 6, numRuns: 500 },
    );
  });
});

describe('a mode for plugs and hose ends', () => {
  const item = (mode: 'plug' | 'hose', typed: string) => readEntry(stickyLine(mode, typed).text).items;

  it('reads each line as one more of them, named or not', () => {
    expect(item('plug', '')).toMatchObject([{ kind: 'connection', what: 'plug', name: 'plug' }]);
    expect(item('plug', 'fan')).toMatchObject([{ kind: 'connection', what: 'plug', name: 'plug at fan' }]);
    expect(item('hose', '')).toMatchObject([{ kind: 'connection', what: 'hose', ends: 1 }]);
    expect(item('hose', 'pump')).toMatchObject([
      { kind: 'connection', what: 'hose', ends: 1, name: 'hose at pump' },
    ]);
  });

  it('says where in the line the typed words stand', () => {
    for (const mode of ['plug', 'hose', null] as const) {
      const { text, from, to } = stickyLine(mode, 'fan, 3 pin');
      expect(text.slice(from, to)).toBe('fan, 3 pin');
    }
  });
});
