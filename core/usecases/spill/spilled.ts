import type { JobState, Row } from '../../model/tables.ts';
import type { CountLine } from '../../tally/index.ts';
import type { OpenGroup } from './groups.ts';

const keyOf = (setId: string | null, specId: string | null): string => `${setId ?? ''}/${specId ?? ''}`;

/** Pieces of each group in the bags that were spilled, by the books. */
export function spilledOf(
  state: JobState,
  groups: readonly OpenGroup[],
  from: readonly string[],
): readonly number[] {
  const at = new Map(groups.flatMap(({ lines }, g) => lines.map((l) => [keyOf(l.setId, l.specId), g])));
  const sums = groups.map(() => 0);
  const spilled = new Set(from);
  const put = (move: Row<'move'>, qty: number) => {
    const g = move.partId === null ? at.get(keyOf(move.homeSetId, move.specId)) : undefined;
    if (g !== undefined) sums[g] = (sums[g] ?? 0) + qty;
  };
  for (const move of spilled.size > 0 ? state.move : []) {
    if (spilled.has(move.dstStowId ?? '')) put(move, move.qty);
    if (spilled.has(move.srcStowId ?? '')) put(move, -move.qty);
  }
  return sums;
}

/**
 * Which lines of the count may take part: with no bag named all of them, else those of which something lies in a named
 * bag by the books, is put there, or was missed from there.
 */
export function tookPart(state: JobState, from: readonly string[]): (line: CountLine) => boolean {
  if (from.length === 0) return () => true;
  const named = new Set(from);
  const inThem = new Map<string, number>();
  const ours = new Set<string>();
  for (const move of state.move) {
    if (move.partId !== null) continue;
    const key = keyOf(move.homeSetId, move.specId);
    const put = (qty: number) => inThem.set(key, (inThem.get(key) ?? 0) + qty);
    if (named.has(move.dstStowId ?? '')) put(move.qty);
    if (named.has(move.srcStowId ?? '')) put(-move.qty);
    if ((move.dst === 'unknown' || move.dst === 'lost') && named.has(move.srcStowId ?? '')) ours.add(key);
  }
  const sets = new Set(state.fset.filter((set) => named.has(set.stowId ?? '')).map((set) => set.id));
  for (const hole of state.position) if (named.has(hole.stowId ?? '')) sets.add(hole.setId);
  return ({ setId, specId }) => {
    const key = keyOf(setId, specId);
    return sets.has(setId ?? '') || (inThem.get(key) ?? 0) > 0 || ours.has(key);
  };
}
