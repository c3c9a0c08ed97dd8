import type { Row } from '../model/tables.ts';
import { byRound, compare, of, type JobLog } from './job-log.ts';
import type { HoleMark } from './types.ts';

/** What was done to a thing since it last came off, and which time round that is. */
export interface Standing {
  readonly round: number;
  readonly deeds: readonly Row<'deed'>[];
  /** When it last came off again; 0 = never. */
  readonly offAt: number;
}

const NEVER: Standing = { round: 1, deeds: [], offAt: 0 };

/**
 * The deeds of a thing in its current round. `within`: things whose coming off again takes this one along (its removal).
 */
export function standing(log: JobLog, thingId: string, ...within: readonly (string | null)[]): Standing {
  let own = current(of(log.deedsOf, thingId));
  for (const id of within) {
    if (id === null || !log.deedsOf.has(id)) continue;
    const outer = current(of(log.deedsOf, id));
    if (outer.offAt === 0) continue;
    const deeds = own.deeds.filter((deed) => deed.at > outer.offAt);
    own = { round: Math.max(own.round, outer.round), deeds, offAt: Math.max(own.offAt, outer.offAt) };
  }
  return own;
}

function current(deeds: readonly Row<'deed'>[]): Standing {
  if (deeds.length === 0) return NEVER;
  const off = deeds.findLastIndex((deed) => deed.what === 'came off again');
  if (off < 0) return { round: deeds.at(-1)?.round ?? 1, deeds, offAt: 0 };
  const times = deeds.filter((deed) => deed.what === 'came off again').length;
  return {
    round: Math.max(times + 1, deeds.at(-1)?.round ?? 1),
    deeds: deeds.slice(off + 1),
    offAt: deeds[off]?.at ?? 0,
  };
}

/** The last deed of one of these kinds in the current round. */
export function last(state: Standing, ...what: readonly Row<'deed'>['what'][]): Row<'deed'> | undefined {
  return state.deeds.findLast((deed) => what.includes(deed.what));
}

/** A hole: its own deeds and those ticked on its whole set, in the order of time. */
export function standingOfHole(log: JobLog, position: Row<'position'>): Standing {
  const set = log.set.get(position.setId);
  const own = standing(log, position.id, set?.id ?? null, set?.removalId ?? null);
  if (!set || !log.deedsOf.has(set.id)) return own;
  const shared = standing(log, set.id, set.removalId).deeds.filter((deed) => deed.at > own.offAt);
  if (shared.length === 0) return own;
  const deeds = [...own.deeds, ...shared].sort((a, b) => a.at - b.at || byRound(a, b) || compare(a.id, b.id));
  return { ...own, deeds };
}

const HOLE_DEEDS = ['started', 'tightened', 'paint-checked', 'left out', 'fitted', 'done'] as const;

/** The mark of a hole on the way back. "later": in by hand or snug, final tightening still due. */
export function holeMark(log: JobLog, position: Row<'position'>, state: Standing): HoleMark {
  const deed = last(state, ...HOLE_DEEDS);
  switch (deed?.what) {
    case 'tightened':
    case 'done':
      return 'tightened';
    case 'paint-checked':
      return 'paint-checked';
    case 'started':
    case 'fitted':
      return log.set.get(position.setId)?.laterWhen ? 'later' : 'started';
    case 'left out':
      return 'left out';
    default:
      if (position.fate === 'leave out') return 'left out';
      return isBlocked(log, position) ? 'blocked' : 'out';
  }
}

/** Broken stud, bad thread, and no repair recorded since. */
export function isBlocked(log: JobLog, position: Row<'position'>): boolean {
  return (
    position.fate === 'blocked' && !of(log.deedsOf, position.id).some((deed) => deed.what === 'repaired')
  );
}

export function isTight(mark: HoleMark): boolean {
  return mark === 'tightened' || mark === 'paint-checked';
}

/** In as far as its step asks: tight, or in by hand where the final tightening comes later. */
export function isIn(mark: HoleMark): boolean {
  return isTight(mark) || mark === 'later';
}
