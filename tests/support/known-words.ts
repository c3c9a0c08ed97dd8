import { NOUNS } from '../../core/entry/nouns.ts';
import * as words from '../../core/entry/words.ts';

/** Words that carry nothing by themselves: what they stand beside does ("the", "each", "came off", "as found"). */
const BESIDE = new Set(['filler', 'preposition', 'with', 'and', 'each', 'more', 'as-found', 'off']);
/** Words for what follows: without it they mean nothing. */
const BEFORE = new Set([
  'length-word',
  'clamp-word',
  'across-flats',
  'stack-word',
  'must-come-out',
  'unspecified',
]);

/** Every sense of the entry line that carries a meaning of its own, with all its words. */
export const KNOWN: readonly { readonly sense: string; readonly words: readonly string[] }[] = [
  ...Object.values({ ...words, ...NOUNS })
    .flatMap((table) => table.split('\n'))
    .filter((line) => line.includes(' = '))
    .map((line) => {
      const [sense = '', list = ''] = line.split(' = ');
      return { sense: sense.trim(), words: list.split(',').map((word) => word.trim()) };
    }),
  { sense: 'end', words: words.ENDS.split(', ').map((word) => `${word} end`) },
].filter(({ sense }) => !BESIDE.has(sense) && !BEFORE.has(sense));

/** The nouns of parts, connections and fluids, and of what is put in. */
export const NOUN_WORDS: readonly string[] = [...Object.values(NOUNS), words.TEMPORARY].flatMap((table) =>
  table
    .split('\n')
    .filter((line) => line.includes(' = '))
    .flatMap((line) => (line.split(' = ')[1] ?? '').split(','))
    .map((word) => word.trim())
    // Behind a cover a tray is where it lies.
    .filter((word) => word !== 'tray'),
);
