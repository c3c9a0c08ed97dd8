/** Edits that turn `a` into `b`: insert, drop, change, or swap two neighbours; `limit + 1` when there are more than `limit`. */
export function edits(a: string, b: string, limit: number): number {
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

const lettersOf = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '');
const wordsOf = (text: string): string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word.length >= 3);

/** How far a name is from what was typed, 0 = the same letters; null = nothing in common. */
function farFrom(typed: string, name: string): number | null {
  const [a, b] = [lettersOf(typed), lettersOf(name)];
  const limit = Math.max(2, Math.floor(a.length / 3));
  if (Math.abs(a.length - b.length) <= limit) {
    const whole = edits(a, b, limit);
    if (whole <= limit) return whole;
  }
  const words = wordsOf(name);
  const common = wordsOf(typed).filter((word) =>
    words.some((other) => edits(word, other, word.length < 6 ? 1 : 2) <= (word.length < 6 ? 1 : 2)),
  );
  return common.length === 0 ? null : a.length + words.length - common.length;
}

/** The names that come nearest to what was typed, the nearest first; for a suggestion only. Each once, at most `most`. */
export function nearNames(typed: string, names: readonly string[], most = 3): string[] {
  const seen = new Set<string>();
  const once = names.filter((name) => !seen.has(name.toLowerCase()) && seen.add(name.toLowerCase()));
  return once
    .flatMap((name) => {
      const far = farFrom(typed, name);
      return far === null ? [] : [{ name, far }];
    })
    .sort((a, b) => a.far - b.far || (a.name < b.name ? -1 : 1))
    .slice(0, most)
    .map(({ name }) => name);
}
