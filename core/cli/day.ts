const DAYS = ['sunday', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday'];

/** A moment by the clock of a zone (IANA name); null, or one that is not known, is this computer's. */
function wallOf(ms: number, zone: string | null): string {
  const how = { dateStyle: 'short', timeStyle: 'short' } as const;
  // Swedish short dates are those of ISO 8601.
  try {
    return new Intl.DateTimeFormat('sv-SE', { ...how, ...(zone ? { timeZone: zone } : {}) }).format(ms);
  } catch {
    return new Intl.DateTimeFormat('sv-SE', how).format(ms);
  }
}

/** "2026-11-26 14:05" by the clock of a zone, else by this computer's, as on the screens. */
export const momentOf = (ms: number, zone: string | null = null): string => wallOf(ms, zone);

/** "2026-11-26" by the clock of a zone, else by this computer's, as on the screens. */
export const dayOf = (ms: number, zone: string | null = null): string => wallOf(ms, zone).slice(0, 10);

/** The last millisecond of a day as typed, in this computer's zone: "2026-11-26", "today", "thursday" (the next one). */
export function dayEnd(typed: string, now: number): number | null {
  const low = typed.trim().toLowerCase();
  const today = new Date(now);
  const end = (year: number, month: number, day: number) =>
    new Date(year, month, day, 23, 59, 59, 999).getTime();
  const date = /^(\d{4})-(\d{2})-(\d{2})$/.exec(low);
  if (date) {
    const [year, month, day] = date.slice(1).map(Number) as [number, number, number];
    const made = new Date(year, month - 1, day);
    return made.getMonth() === month - 1 && made.getDate() === day ? end(year, month - 1, day) : null;
  }
  const ahead =
    low === 'today'
      ? 0
      : low === 'tomorrow'
        ? 1
        : DAYS.includes(low)
          ? ((DAYS.indexOf(low) - today.getDay() + 6) % 7) + 1
          : -1;
  return ahead < 0 ? null : end(today.getFullYear(), today.getMonth(), today.getDate() + ahead);
}
