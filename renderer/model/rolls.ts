import type { RollData } from '../screens/photos/types.ts';
import { type Shot, tileOf } from './gallery.ts';

/** Groups of photos as they are shown before removals are made of them. */
export function rollsData(
  rolls: readonly (readonly string[])[],
  shots: readonly Shot[],
  now: number,
): RollData[] {
  const byId = new Map(shots.map((shot) => [shot.photo.id, shot]));
  return rolls.flatMap((roll): RollData[] => {
    const tiles = roll.flatMap((id) => {
      const shot = byId.get(id);
      return shot ? [tileOf(shot, now)] : [];
    });
    const [first, last] = [tiles[0], tiles.at(-1)];
    return first && last ? [{ id: first.id, from: first.taken, to: last.taken, tiles }] : [];
  });
}
