import type { WorkTimes } from '../../core/model/work-times.ts';
import { removal as say } from '../texts/removal.ts';
import { clock } from './time.ts';

const MINUTE = 60_000;

/** "paused 25 min"; "" where it never was, or nothing is known. */
export function pausedSay(times: WorkTimes | undefined, now: number): string {
  const paused = (times?.pauses ?? []).reduce((sum, one) => sum + ((one.to ?? now) - one.from), 0);
  const minutes = Math.round(paused / MINUTE);
  return minutes > 0 ? say.paused(minutes) : '';
}

/** Each pause with its length, for reading at the bench. */
export function pauseLines(times: WorkTimes | undefined, now: number): string[] {
  return (times?.pauses ?? []).map((pause) => {
    const minutes = Math.max(1, Math.round(((pause.to ?? now) - pause.from) / MINUTE));
    return pause.to === null
      ? say.pauseLasts(clock(pause.from), minutes)
      : say.pauseFromTo(clock(pause.from), clock(pause.to), minutes);
  });
}
