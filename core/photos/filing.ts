import type { PhotoFacts } from './facts.ts';

/** A removal as filing looks at it; in the order of the log, none that is void. */
export interface FilingRemoval {
  readonly id: string;
  /** As in the log, from 1. */
  readonly number: number;
  readonly title: string;
  /** UTC milliseconds; null before it has begun. */
  readonly startedAt: number | null;
  /** UTC milliseconds; null while it is under way. */
  readonly endedAt: number | null;
  /** Zone of its times; null = unknown. */
  readonly zone: string | null;
}

export interface Filed {
  readonly removalId: string | null;
  readonly filedBy: 'time' | 'none';
  /** In words, always. */
  readonly filedWhy: string;
}

/** What is not ended by hand ends with the next one, or after this long: nobody works on for ever. */
const LONGEST_MS = 12 * 3_600_000;

function partsIn(zone: string, utc: number): Record<string, string> {
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
  });
  return Object.fromEntries(format.formatToParts(utc).map((part) => [part.type, part.value]));
}

function wallIn(zone: string, utc: number): number {
  const at = partsIn(zone, utc);
  return Date.parse(
    `${at['year']}-${at['month']}-${at['day']}T${at['hour']}:${at['minute']}:${at['second']}Z`,
  );
}

/** UTC milliseconds at which clocks in a zone showed this; null for a zone that is not known. */
export function utcOfWall(local: string, zone: string): number | null {
  try {
    const wall = Date.parse(`${local}Z`);
    const once = wall - (wallIn(zone, wall) - wall);
    // Once more, for the day on which the clocks change.
    return wall - (wallIn(zone, once) - once);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

function clockIn(zone: string | null, utc: number): string {
  try {
    const at = partsIn(zone ?? 'UTC', utc);
    return `${at['hour']}:${at['minute']}${zone === null ? ' UTC' : ''}`;
  } catch (error) {
    if (error instanceof RangeError) return clockIn(null, utc);
    throw error;
  }
}

const MONTHS = 'January February March April May June July August September October November December';

function dayOf(local: string): string {
  const [, year, month, day] = /^(\d+)-(\d+)-(\d+)/.exec(local) ?? [];
  return `${Number(day)} ${MONTHS.split(' ')[Number(month) - 1] ?? ''} ${year}`;
}

/**
 * Which removal was under way when a photo was taken. With an offset in the file, by true time; without one, by what
 * the camera's clock showed, read in the zone of the job, and the reason says so.
 */
export function fileByTime(
  facts: Pick<PhotoFacts, 'takenLocal' | 'takenUtc'>,
  removals: readonly FilingRemoval[],
  at: { readonly zone: string | null; readonly now: number },
): Filed {
  const none = (filedWhy: string): Filed => ({ removalId: null, filedBy: 'none', filedWhy });
  const { takenLocal, takenUtc } = facts;
  if (takenLocal === null) return none('The file does not say when it was taken.');
  const clock = takenLocal.slice(11, 16);
  const when = `Taken ${dayOf(takenLocal)}, ${clock}`;
  if (takenUtc === null && at.zone === null)
    return none(`${when} by a clock whose zone is not known, and the zone of this job is not known either.`);
  const utc = takenUtc ?? utcOfWall(takenLocal, at.zone ?? 'UTC');
  if (utc === null) return none(`${when} by a clock whose zone is not known.`);
  const how = takenUtc === null ? `${when} by the camera’s clock, zone not known` : when;
  const begun = removals
    .filter((removal) => removal.startedAt !== null)
    .sort((a, b) => (a.startedAt ?? 0) - (b.startedAt ?? 0));
  let found: FilingRemoval | null = null;
  for (const [i, removal] of begun.entries()) {
    const start = removal.startedAt ?? 0;
    const end = removal.endedAt ?? begun[i + 1]?.startedAt ?? Math.min(start + LONGEST_MS, at.now);
    if (utc >= Math.floor(start / 1000) * 1000 && utc <= end) found = removal;
  }
  if (!found) return none(`${how}: no removal was under way then.`);
  const zone = found.zone ?? at.zone;
  const until = found.endedAt === null ? '' : ` to ${clockIn(zone, found.endedAt)}`;
  const name = found.title === '' ? '' : ` (${found.title})`;
  return {
    removalId: found.id,
    filedBy: 'time',
    filedWhy: `${how}: removal ${found.number}${name} was under way from ${clockIn(zone, found.startedAt ?? 0)}${until}.`,
  };
}

/** Fewer photos of one camera than this say nothing about what is sharp for it. */
const ENOUGH_OTHERS = 4;
/** Below this share of the camera's own middle a shot counts as blurred. */
const BLURRED_SHARE = 0.2;
/** Mean brightness below which nothing can be told from a picture, 0 to 255. */
const DARK = 22;

/** What is wrong with a shot while it can still be repeated; null when nothing is. */
export function shotProblem(
  facts: Pick<PhotoFacts, 'sharpness' | 'brightness'>,
  others: readonly number[],
): string | null {
  if (facts.brightness < DARK) return 'Very dark. Take it again while it can be repeated.';
  if (others.length < ENOUGH_OTHERS) return null;
  const middle = [...others].sort((a, b) => a - b)[Math.floor(others.length / 2)] ?? 0;
  return facts.sharpness < middle * BLURRED_SHARE
    ? 'Blurred against the others of this camera. Take it again while it can be repeated.'
    : null;
}
