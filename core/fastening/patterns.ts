/** A cross pattern as published: places 1…n around the ring, in order of tightening. */
export interface PublishedPattern {
  readonly sequence: readonly number[];
  readonly confidence: string;
  readonly note: string;
}

/**
 * Legacy cross pattern for one tool, bolts numbered around the flange. Source: ASME PCC-1.
 * Confidence: public copies that agree. Disagreement for 20: a second implementation gives its groups of four in the
 * order 1 2 3 4 5; kept is the odd-then-even order of the others. 28 and 32 are from memory.
 */
const PUBLISHED = new Map<number, readonly [string, string]>([
  [4, ['1 3 2 4', 'verified-3']],
  [8, ['1 5 3 7 2 6 4 8', 'verified-3']],
  [12, ['1 7 4 10 2 8 5 11 3 9 6 12', 'verified-4']],
  [16, ['1 9 5 13 3 11 7 15 2 10 6 14 4 12 8 16', 'verified-2']],
  [20, ['1 11 6 16 3 13 8 18 5 15 10 20 2 12 7 17 4 14 9 19', 'verified-1, disputed']],
  [24, ['1 13 7 19 4 16 10 22 2 14 8 20 5 17 11 23 3 15 9 21 6 18 12 24', 'verified-2']],
  [28, ['1 15 8 22 4 18 11 25 6 20 13 27 2 16 9 23 5 19 12 26 7 21 14 28 3 17 10 24', 'memory']],
  [32, ['1 17 9 25 5 21 13 29 3 19 11 27 7 23 15 31 2 18 10 26 6 22 14 30 4 20 12 28 8 24 16 32', 'memory']],
]);

/** The published cross pattern of n holes, or undefined where the table has none. */
export function publishedPattern(n: number): PublishedPattern | undefined {
  const found = PUBLISHED.get(n);
  if (!found) return undefined;
  const note = found[1].includes('disputed')
    ? 'two public copies differ in the order of the groups of four'
    : '';
  return { sequence: found[0].split(' ').map(Number), confidence: found[1], note };
}

/**
 * Order of places 1…n around a ring for any n. The published pattern where there is one; otherwise: even counts go in
 * opposite pairs with each next pair as far from those done as it can be, odd counts step just under half a turn
 * (5: 1 3 5 2 4 is the five-point star). Common practice, no source, where nothing is published.
 */
export function ringSequence(n: number): readonly number[] {
  const published = publishedPattern(n);
  if (published) return published.sequence;
  if (n <= 2) return Array.from({ length: n }, (_, i) => i + 1);
  return n % 2 === 0 ? oppositePairs(n) : star(n);
}

function star(n: number): readonly number[] {
  const step = (n - 1) / 2;
  return Array.from({ length: n }, (_, i) => ((i * step) % n) + 1);
}

/** Pairs (p, p + n/2); the next pair is the one farthest from the pairs done, the earliest where several are. */
function oppositePairs(n: number): readonly number[] {
  const half = n / 2;
  const done: number[] = [0];
  while (done.length < half) {
    let best = -1;
    let bestGap = -1;
    for (let p = 0; p < half; p += 1) {
      const gap = Math.min(...done.map((q) => Math.min((p - q + half) % half, (q - p + half) % half)));
      if (gap > bestGap) {
        best = p;
        bestGap = gap;
      }
    }
    done.push(best);
  }
  return done.flatMap((p) => [p + 1, p + 1 + half]);
}
