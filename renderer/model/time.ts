const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
const WEEK = 7 * DAY;

/** "10:42" by the reader's locale. */
export function clock(ms: number): string {
  return new Intl.DateTimeFormat(undefined, { hour: '2-digit', minute: '2-digit' }).format(ms);
}

/** "10:42" where that was today, else "21 Oct", with the year where it is not this one. */
export function moment(ms: number, now: number): string {
  const [then, today] = [new Date(ms), new Date(now)];
  if (then.toDateString() === today.toDateString()) return clock(ms);
  const year = then.getFullYear() === today.getFullYear() ? {} : { year: 'numeric' as const };
  return new Intl.DateTimeFormat(undefined, { day: 'numeric', month: 'short', ...year }).format(ms);
}

interface Taken {
  readonly takenUtc: number | null;
  readonly takenLocal: string | null;
}

/**
 * When a photo was taken, ms: the same instant as every other time where its file names its offset, else the camera's
 * clock taken for the reader's own; null where no time is known.
 */
export function takenMs({ takenUtc, takenLocal }: Taken): number | null {
  const at = takenUtc ?? (takenLocal === null ? null : Date.parse(takenLocal.slice(0, 19)));
  return at === null || Number.isNaN(at) ? null : at;
}

/** "10:44", with its day where that is not today; null where no time is known. */
export function takenAt(taken: Taken, now: number): string | null {
  const at = takenMs(taken);
  if (at === null) return null;
  const today = new Date(at).toDateString() === new Date(now).toDateString();
  return new Intl.DateTimeFormat(undefined, {
    ...(today ? {} : { day: 'numeric', month: 'short' }),
    hour: '2-digit',
    minute: '2-digit',
  }).format(at);
}

/** "21 October" by the reader's locale; with the year where it is not this one. */
export function day(ms: number, now: number): string {
  const sameYear = new Date(ms).getFullYear() === new Date(now).getFullYear();
  return new Intl.DateTimeFormat(undefined, {
    day: 'numeric',
    month: 'long',
    ...(sameYear ? {} : { year: 'numeric' }),
  }).format(ms);
}

/** How long ago, as one number with its unit: at most two figures. */
export function since(ms: number, now: number): { value: string; unit: string } {
  const gone = Math.max(0, now - ms);
  const [size, one, many] =
    gone >= 2 * WEEK
      ? [WEEK, 'week', 'weeks']
      : gone >= DAY
        ? [DAY, 'day', 'days']
        : gone >= HOUR
          ? [HOUR, 'hour', 'hours']
          : [MINUTE, 'minute', 'minutes'];
  if (gone < MINUTE) return { value: 'now', unit: '' };
  const value = Math.floor(gone / (size as number));
  return { value: String(value), unit: value === 1 ? (one as string) : (many as string) };
}

/** "5 days" */
export function ago(ms: number, now: number): string {
  const { value, unit } = since(ms, now);
  return `${value} ${unit}`;
}
