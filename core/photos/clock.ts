/** Wall clocks and moments: what is needed to lay photos beside removals. */

const parts = new Map<string, Intl.DateTimeFormat>();

function formatOf(zone: string): Intl.DateTimeFormat | null {
  const known = parts.get(zone);
  if (known) return known;
  try {
    const made = new Intl.DateTimeFormat('en-CA', {
      timeZone: zone,
      hourCycle: 'h23',
      year: 'numeric',
      month: '2-digit',
      day: '2-digit',
      hour: '2-digit',
      minute: '2-digit',
      second: '2-digit',
    });
    parts.set(zone, made);
    return made;
  } catch {
    return null;
  }
}

/** The wall clock of a zone (IANA name or offset) at a moment: `2026-09-01T14:02:03`. Null: no such zone. */
export function wallClock(utc: number, zone: string): string | null {
  const format = formatOf(zone);
  if (!format) return null;
  const part = Object.fromEntries(format.formatToParts(utc).map(({ type, value }) => [type, value]));
  return `${part['year']}-${part['month']}-${part['day']}T${part['hour']}:${part['minute']}:${part['second']}`;
}

/**
 * The moment (UTC milliseconds) at which the clocks of a zone show a wall clock such as `2026-09-01T14:02:03`. In the
 * hour that is skipped in spring the later clock is taken, in the one that comes twice in autumn the earlier moment.
 * Null: no such zone, no such time.
 */
export function momentIn(zone: string, local: string): number | null {
  const asUtc = Date.parse(`${local}Z`);
  if (Number.isNaN(asUtc)) return null;
  const offsetAt = (utc: number): number | null => {
    const clock = wallClock(utc, zone);
    return clock === null ? null : Date.parse(`${clock}Z`) - Math.floor(utc / 1000) * 1000;
  };
  const day = 24 * 3600 * 1000;
  const [before, after] = [offsetAt(asUtc - day), offsetAt(asUtc + day)];
  if (before === null || after === null) return null;
  const fits = [asUtc - before, asUtc - after].find((utc) => offsetAt(utc) === asUtc - utc);
  return fits ?? asUtc - before;
}
