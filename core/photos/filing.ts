import { momentIn, wallClock } from './clock.ts';

/** A removal as photos are laid beside it; in the order of the log, none that is void. */
export interface FilingRemoval {
  readonly id: string;
  /** As in the log, from 1. */
  readonly number: number;
  readonly title: string;
  /** UTC milliseconds; null = not recorded. */
  readonly startedAt: number | null;
  readonly endedAt: number | null;
}

export interface TakenAt {
  readonly takenLocal: string | null;
  readonly takenUtc: number | null;
}

export interface Filed {
  readonly removalId: string | null;
  readonly filedBy: 'time' | 'none';
  /** In words, for people. */
  readonly filedWhy: string;
}

/** A capture time as a moment, and whether the job's zone had to stand in for one that the file does not name. */
export function momentOf(taken: TakenAt, zone: string | null): { utc: number; assumed: boolean } | null {
  if (taken.takenUtc !== null) return { utc: taken.takenUtc, assumed: false };
  if (taken.takenLocal === null || zone === null) return null;
  const utc = momentIn(zone, taken.takenLocal);
  return utc === null ? null : { utc, assumed: true };
}

interface Interval extends FilingRemoval {
  readonly from: number;
  readonly to: number;
}

/** What is not ended by hand ends with the next one, or after this long: nobody works on for ever. */
const LONGEST_MS = 12 * 3_600_000;

/** When each removal was under way, in the order of their beginnings. Cameras know whole seconds: so does the beginning. */
function intervals(removals: readonly FilingRemoval[], now: number): Interval[] {
  const begun = removals
    .flatMap((removal) => (removal.startedAt === null ? [] : [{ ...removal, from: removal.startedAt }]))
    .sort((a, b) => a.from - b.from);
  return begun.map((removal, i) => {
    const end = removal.endedAt ?? begun[i + 1]?.from ?? Math.min(removal.from + LONGEST_MS, now);
    return { ...removal, from: Math.floor(removal.from / 1000) * 1000, to: Math.max(end, removal.from) };
  });
}

const named = (span: FilingRemoval): string =>
  `removal ${span.number}${span.title === '' ? '' : ` (${span.title})`}`;

/** A moment for a sentence: the day is said only where it is not the day of the other one. */
function clock(utc: number, zone: string, beside?: number): string {
  const text = wallClock(utc, zone) ?? new Date(utc).toISOString();
  const same = beside !== undefined && wallClock(beside, zone)?.slice(0, 10) === text.slice(0, 10);
  return same ? text.slice(11, 16) : `${text.slice(0, 10)} ${text.slice(11, 16)}`;
}

/**
 * Files a photo by its capture time: into the removal that was under way then; of several, the one that began last.
 * A time without an offset is read as a clock of the job's zone, and the reason says so; without either it stays
 * unfiled. `zone`: the job’s (IANA name or offset), or null; `now`: UTC milliseconds.
 */
export function fileByTime(
  taken: TakenAt,
  removals: readonly FilingRemoval[],
  at: { readonly zone: string | null; readonly now: number },
): Filed {
  const none = (filedWhy: string): Filed => ({ removalId: null, filedBy: 'none', filedWhy });
  if (taken.takenLocal === null && taken.takenUtc === null)
    return none('The file does not say when it was taken.');
  const moment = momentOf(taken, at.zone);
  if (!moment)
    return none(
      `Taken ${taken.takenLocal?.slice(0, 16).replace('T', ' ')} by the camera’s clock; neither the file nor the job names a time zone.`,
    );
  const { utc } = moment;
  const zone = at.zone !== null && wallClock(utc, at.zone) !== null ? at.zone : 'UTC';
  const said = `Taken ${clock(utc, zone)}${zone === 'UTC' ? ' UTC' : ''}`;
  const assumed = moment.assumed ? ` The file names no time zone; read as ${at.zone}, the job’s.` : '';
  const all = intervals(removals, at.now);
  const within = all.filter((one) => one.from <= utc && utc <= one.to);
  const hit = within.at(-1);
  if (!hit) return none(`${said}, ${between(all, utc, zone)}${assumed}`);
  const since = clock(hit.from, zone, utc);
  const span = hit.endedAt === null ? `since ${since}` : `from ${since} to ${clock(hit.to, zone, utc)}`;
  const also = within.length > 1 ? ` Of ${within.length} under way then, it began last.` : '';
  const filedWhy = `${said}: ${named(hit)} was under way ${span}.${also}${assumed}`;
  return { removalId: hit.id, filedBy: 'time', filedWhy };
}

/** Where a moment lies that is in no removal. */
function between(all: readonly Interval[], utc: number, zone: string): string {
  const before = all
    .filter((one) => one.to < utc)
    .sort((a, b) => a.to - b.to)
    .at(-1);
  const next = all.find((one) => one.from > utc);
  const ended = before ? `after ${named(before)} ended ${clock(before.to, zone, utc)}` : '';
  const begins = next ? `before ${named(next)} began ${clock(next.from, zone, utc)}` : '';
  if (before && next) return `${ended} and ${begins}.`;
  if (next) return `${begins}.`;
  return before ? `${ended}: offered to the next removal.` : 'before any removal: offered to the first.';
}

/** An unfiled photo with the moment it counts by: its capture time, else when it was added. UTC milliseconds. */
export interface Loose {
  readonly id: string;
  readonly at: number;
}

/** Unfiled photos offered to a removal; `removalId` null: to the next one, not yet logged. */
export interface Offer {
  readonly removalId: string | null;
  readonly photoIds: readonly string[];
}

/**
 * Photos come before the log: what was taken since the removal before is offered to the one after it. Offers in the
 * order of time; a photo taken within a removal that it was taken out of is offered to nobody.
 */
export function offersOf(removals: readonly FilingRemoval[], loose: readonly Loose[], now: number): Offer[] {
  const all = intervals(removals, now);
  const offers = new Map<string | null, string[]>();
  for (const photo of [...loose].sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1))) {
    if (all.some((one) => one.from <= photo.at && photo.at <= one.to)) continue;
    const to = all.find((one) => one.from > photo.at)?.id ?? null;
    const own = offers.get(to);
    if (own) own.push(photo.id);
    else offers.set(to, [photo.id]);
  }
  return [...offers].map(([removalId, photoIds]) => ({ removalId, photoIds }));
}

/** Runs of photos with no longer pause between two of them than `gapMs`, in the order of time: one draft removal each. */
export function rollsOf(photos: readonly Loose[], gapMs: number): Loose[][] {
  const rolls: Loose[][] = [];
  for (const photo of [...photos].sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1))) {
    const last = rolls.at(-1);
    if (last && photo.at - (last.at(-1) as Loose).at <= gapMs) last.push(photo);
    else rolls.push([photo]);
  }
  return rolls;
}
