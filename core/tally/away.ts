import type { JobState } from '../model/tables.ts';

/** Something at the machinist's, lent, sent out. Times in UTC ms. */
export interface AwayThing {
  readonly awayId: string;
  readonly thingId: string;
  readonly toWhom: string;
  readonly since: number;
  readonly due: number | null;
  readonly note: string;
  /** Whole days that it has been away. */
  readonly days: number;
  readonly late: boolean;
  /** Whole days since it was due; 0 when it is not late or no day was named. */
  readonly daysLate: number;
}

const DAY_MS = 86_400_000;

/** What is away at `now` (UTC ms), late ones first, then the longest away. What has come back is not in it. */
export function awayThings(state: JobState, now: number): AwayThing[] {
  return state.away
    .filter((row) => row.backAt === null)
    .map((row) => {
      const late = row.due !== null && now > row.due;
      return {
        awayId: row.id,
        thingId: row.thingId,
        toWhom: row.toWhom,
        since: row.since,
        due: row.due,
        note: row.note,
        days: wholeDays(now - row.since),
        late,
        daysLate: late && row.due !== null ? wholeDays(now - row.due) : 0,
      };
    })
    .sort((a, b) => Number(b.late) - Number(a.late) || a.since - b.since);
}

function wholeDays(ms: number): number {
  return Math.max(0, Math.floor(ms / DAY_MS));
}
