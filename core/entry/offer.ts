import { NOUNS } from './nouns.ts';

/** A word offered for what is being typed, and the line with it taken. */
export interface Offer {
  readonly word: string;
  readonly text: string;
}

/** Letters before the trade's own words are offered: after one, too much would fit. */
const LETTERS = 2;
/** Words of the line that one noun may go on with. */
const WORDS = 3;

let sorted: readonly string[] | null = null;

/** The nouns of the trade, in the order of the tables, where the commoner ones stand first. */
function tradeNouns(): readonly string[] {
  sorted ??= [
    ...new Set(
      Object.values(NOUNS)
        .flatMap((table) => table.trim().split('\n'))
        .flatMap((line) => line.slice(line.indexOf('=') + 1).split(','))
        .map((word) => word.trim())
        .filter((word) => word !== ''),
    ),
  ];
  return sorted;
}

/** The last words of what stands behind the last comma, the longest run first: "side co" before "co". */
function fragmentsOf(text: string): string[] {
  const segment = /(?:^|[,;])\s*([^,;]*)$/.exec(text)?.[1] ?? '';
  const words = segment.split(' ');
  const runs = words.map((_, i) => words.slice(i).join(' ')).slice(-WORDS);
  return runs.filter((run) => /^\p{L}[\p{L}\p{N} -]*$/u.test(run) && !run.endsWith(' '));
}

/**
 * Nouns offered for the last words of a half-typed line: those of this job first (`own`, newest first), then the
 * trade's; of each the ones that go on with more of what was typed first. Nothing is ever put in by itself. At most
 * `limit`; none after a space, or while a number is typed.
 */
export function offerNouns(text: string, own: readonly string[], limit: number): Offer[] {
  const offers = new Map<string, Offer>();
  const fragments = fragmentsOf(text);
  const add = (nouns: readonly string[], letters: number) => {
    for (const fragment of fragments) {
      const typed = fragment.toLowerCase();
      if (typed.length < letters) continue;
      const before = text.slice(0, text.length - fragment.length);
      for (const word of nouns) {
        const low = word.toLowerCase();
        if (offers.size < limit && low.length > typed.length && low.startsWith(typed) && !offers.has(low))
          offers.set(low, { word, text: `${before}${word}` });
      }
    }
  };
  add(own, 1);
  add(tradeNouns(), LETTERS);
  return [...offers.values()];
}
