import type { Row } from '../model/tables.ts';

const MINUTE = 60_000;
/** Nobody works so long without a pause: the removal was left open overnight. Common practice, no source. */
const LONGEST = 8 * 60;

/** Minutes that a removal took, pauses taken out; null where its times were not recorded or it was left open. */
export function minutesOf(removal: Row<'removal'>): number | null {
  if (removal.startedAt === null || removal.endedAt === null) return null;
  const end = removal.endedAt;
  const paused = removal.pauses.reduce((sum, pause) => sum + Math.max(0, (pause.to ?? end) - pause.from), 0);
  const minutes = (end - removal.startedAt - paused) / MINUTE;
  return minutes <= 0 || minutes > LONGEST ? null : minutes;
}

/** The value below which this share of a sorted list lies. */
export function quantile(sorted: readonly number[], share: number): number {
  const at = (sorted.length - 1) * share;
  const low = sorted[Math.floor(at)] ?? 0;
  const high = sorted[Math.ceil(at)] ?? low;
  return low + (high - low) * (at - Math.floor(at));
}
