import { edits } from '../model/near-names.ts';
import { KNOWN_WORDS } from './vocabulary.ts';

const BY_FIRST = new Map<string, string[]>();
for (const word of KNOWN_WORDS) {
  const first = word.charAt(0);
  BY_FIRST.set(first, [...(BY_FIRST.get(first) ?? []), word]);
}

/**
 * The known word that a word comes close to, or null: one edit for four and five letters, two from six on, same
 * first letter. For a suggestion only; the caller never takes it for what was meant.
 */
export function nearWord(word: string): string | null {
  const typed = word.toLowerCase();
  if (typed.length < 4 || typed.length > 20 || KNOWN_WORDS.has(typed)) return null;
  const limit = typed.length < 6 ? 1 : 2;
  let best: string | null = null;
  let least = limit + 1;
  for (const known of BY_FIRST.get(typed.charAt(0)) ?? []) {
    if (Math.abs(known.length - typed.length) > limit) continue;
    const cost = edits(typed, known, limit);
    if (cost < least) {
      least = cost;
      best = known;
    }
  }
  return best;
}
