import type { Row } from './tables.ts';

/** A pause begins where nothing changed in the job for longer than this, ms (common practice, no source). */
export const PAUSE_MS = 15 * 60_000;

export interface Pause {
  readonly from: number;
  /** Null while it lasts. */
  readonly to: number | null;
}

/** When a removal was worked on; UTC ms. */
export interface WorkTimes {
  readonly start: number;
  /** Null while it is under way. */
  readonly end: number | null;
  readonly pauses: readonly Pause[];
  /** From start to end, or to the last change while it is under way, without the pauses; ms. */
  readonly workedMs: number;
}

/**
 * The times of a removal from what is known anyway: when it began and ended, and when anything in the job changed
 * (`changes`, ascending). A pause: no change for more than 15 minutes, or work was stopped (`halts`). Null where
 * nobody knows when it began.
 */
export function workTimes(
  removal: Pick<Row<'removal'>, 'startedAt' | 'endedAt'>,
  changes: readonly number[],
  halts: readonly number[],
  now: number,
): WorkTimes | null {
  const start = removal.startedAt;
  if (start === null) return null;
  const end = removal.endedAt;
  const until = end ?? now;
  const inside = changes.filter((at) => at > start && at < until);
  const times = [start, ...inside, ...(end === null ? [] : [end])];
  const stopped = new Set(halts);
  const pauses: Pause[] = [];
  let last = start;
  for (const at of times) {
    if (at > last && (at - last > PAUSE_MS || stopped.has(last))) pauses.push({ from: last, to: at });
    last = Math.max(last, at);
  }
  if (end === null && (now - last > PAUSE_MS || stopped.has(last))) pauses.push({ from: last, to: null });
  return { start, end, pauses, workedMs: workedOf(start, Math.max(last, end ?? last), pauses) };
}

function workedOf(start: number, end: number, pauses: readonly Pause[]): number {
  const paused = pauses.reduce((sum, pause) => sum + Math.max(0, (pause.to ?? pause.from) - pause.from), 0);
  return Math.max(0, end - start - paused);
}

/** The times as the record keeps them once a removal has ended; they travel with the job where the journal does not. */
export function keptTimes(removal: Row<'removal'>): WorkTimes | null {
  if (removal.startedAt === null || removal.endedAt === null) return null;
  const { startedAt: start, endedAt: end, pauses } = removal;
  return { start, end, pauses, workedMs: workedOf(start, end, pauses) };
}
