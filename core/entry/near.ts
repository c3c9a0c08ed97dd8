import { KNOWN_WORDS } from './vocabulary.ts';

const BY_FIRST = new Map<string, string[]>();
for (const word of KNOWN_WORDS) {
  const first = word.charAt(0);
  BY_FIRST.set(first, [...(BY_FIRST.get(first) ?? []), word]);
}

/** Edits that turn `a` into `b`: insert, drop, change, or swap two neighbours; `limit + 1` when there are more than `limit`. */
function edits(a: string, b: string, limit: number): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    let least = i;
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1];
      let cost = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + (same ? 0 : 1));
      if (a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) cost = Math.min(cost, (before[j - 2] ?? 0) + 1);
      row.push(cost);
      least = Math.min(least, cost);
    }
    if (least > limit) return limit + 1;
    before = last;
    last = row;
  }
  return last[b.length] ?? limit + 1;
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
