/** A photo as near-duplicates are looked for among: its perceptual hash (16 hex digits) and what makes it the better one. */
export interface Likeness {
  readonly id: string;
  readonly phash: string | null;
  readonly sharpness: number | null;
  /** Pixels of the original. */
  readonly pixels: number;
}

const bits32 = (value: number): number => {
  let v = value - ((value >>> 1) & 0x55555555);
  v = (v & 0x33333333) + ((v >>> 2) & 0x33333333);
  return (((v + (v >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
};

const halves = (hash: string): [number, number] => [
  Number.parseInt(hash.slice(0, 8), 16) | 0,
  Number.parseInt(hash.slice(8), 16) | 0,
];

/** In how many of their 64 bits two hashes of 16 hex digits differ. */
export function hammingDistance(a: string, b: string): number {
  const [a1, a2] = halves(a);
  const [b1, b2] = halves(b);
  return bits32(a1 ^ b1) + bits32(a2 ^ b2);
}

/**
 * At most so many different bits count as the same picture taken again. Measured on the photos of the sample job: the
 * same shot smaller, packed harder, brighter or a few per cent beside it differs in 0 to 8 (2 of 30 in 10 and 12); any
 * two other views of the same machine in 10 and more (3 of 120 pairs below 18, half of them above 32).
 */
export const NEAR_BITS = 8;

/**
 * Groups of photos that show nearly the same, each best first: sharpest, then largest, then as given. Every member is
 * near to the first of its group, so that a long pan does not melt into one. Photos without a like are left out;
 * nothing is deleted. At most a few thousand photos: the time grows with the square.
 */
export function nearDuplicates(photos: readonly Likeness[], maxBits = NEAR_BITS): string[][] {
  const better = (a: Likeness, b: Likeness) =>
    (b.sharpness ?? -1) - (a.sharpness ?? -1) || b.pixels - a.pixels;
  const waiting = photos
    .filter((photo): photo is Likeness & { phash: string } => photo.phash !== null)
    .sort(better)
    .map((photo) => ({ id: photo.id, half: halves(photo.phash) }));
  // Packed side by side: every pair is looked at, and thousands of photos make millions of pairs.
  const upper = Int32Array.from(waiting, ({ half }) => half[0]);
  const lower = Int32Array.from(waiting, ({ half }) => half[1]);
  const taken = new Uint8Array(waiting.length);
  const groups: string[][] = [];
  for (const [at, best] of waiting.entries()) {
    if (taken[at] === 1) continue;
    const group = [best.id];
    const [up, low] = best.half;
    for (let other = at + 1; other < waiting.length; other++) {
      if (taken[other] === 1) continue;
      const differs = bits32(up ^ (upper[other] as number)) + bits32(low ^ (lower[other] as number));
      if (differs > maxBits) continue;
      group.push((waiting[other] as (typeof waiting)[number]).id);
      taken[other] = 1;
    }
    if (group.length > 1) groups.push(group);
  }
  return groups;
}
