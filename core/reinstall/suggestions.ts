import type { JobState, Row } from '../model/tables.ts';
import { needsOf, needsToReach, type NeedLink } from './needs.ts';
import { jobLog, of, type JobLog } from './job-log.ts';
import type { Situation } from './situation.ts';
import type { AssumedNeed, NeedSuggestion } from './types.ts';
import { situated } from './weighed.ts';

/**
 * Needs that only the order of the log says and that may well be none: the two removals lie in places that were said to
 * be different, and share no hole, part, fluid, connection or support, and hide nothing of each other. Only a place that
 * somebody wrote down counts: without one there is no reason, and nothing is suggested. `now` in UTC ms.
 */
export function suggestionsOf(state: JobState, now: number): NeedSuggestion[] {
  const at = situated(state, now);
  const { log, needs } = at.graph;
  const touches = touchesOf(log);
  const found: NeedSuggestion[] = [];
  needs.links.forEach((links, i) => {
    for (const link of links) {
      if (!link.assumed || link.structural) continue;
      const reason = reasonOf(log, touches, link);
      if (reason === null) continue;
      const [later, earlier] = [log.removals[i], log.removals[link.on]];
      if (!later || !earlier) continue;
      found.push({
        removalId: later.id,
        needsId: earlier.id,
        reason,
        instead: loosenedLinks(needs.links, i, link.on).map((one) => log.removals[one.on]?.id ?? ''),
        waiting: waitingOf(at, i, link.on),
      });
    }
  });
  return found.sort((a, b) => Number(b.waiting !== null) - Number(a.waiting !== null));
}

/** What is said of a need that no reason speaks against. */
const KEPT = {
  nowhere: 'nobody wrote down where both are',
  same: 'they are in the same place',
  hidden: 'something of the later one is hidden, and may lie under the other',
  shared: 'they share a hole, a part, a fluid or a support',
  doubted: 'it is doubted above',
};

/** Every need that only the order of the log says and nobody has confirmed, and why it is not doubted. */
export function assumedNeeds(state: JobState): AssumedNeed[] {
  const log = jobLog(state);
  const touches = touchesOf(log);
  return linksOf(log).flatMap((links, i) =>
    links.flatMap((link): AssumedNeed[] => {
      const [later, earlier] = [log.removals[i], log.removals[link.on]];
      if (!link.assumed || link.structural || !later || !earlier) return [];
      return [{ removalId: later.id, needsId: earlier.id, kept: keptBy(log, touches, link) }];
    }),
  );
}

function keptBy(log: JobLog, touches: Touches, link: NeedLink): string {
  const [later, earlier] = [log.removals[link.of], log.removals[link.on]];
  if (!later || !earlier) return KEPT.nowhere;
  if (reasonOf(log, touches, link) !== null) return KEPT.doubted;
  if (placesApart(later, earlier) !== null) return hidesJoints(log, later) ? KEPT.hidden : KEPT.shared;
  const where = [later, earlier].map((one) => `${one.place.trim()}${one.side ?? ''}`);
  return where.includes('') ? KEPT.nowhere : KEPT.same;
}

/** What a removal waits for on its way to one that it does not need by itself, the nearest first; null = it waits in no way. */
export function waitsThrough(state: JobState, removalId: string, needsId: string): string[] | null {
  const log = jobLog(state);
  const links = linksOf(log);
  const goal = log.indexOf.get(needsId) ?? -1;
  const start = log.indexOf.get(removalId) ?? -1;
  const cameFrom = new Map<number, number>([[start, -1]]);
  const open = [start];
  for (const next of open)
    for (const { on } of links[next] ?? [])
      if (!cameFrom.has(on)) {
        cameFrom.set(on, next);
        open.push(on);
      }
  if (goal < 0 || !cameFrom.has(goal)) return null;
  const way: string[] = [];
  for (let at = cameFrom.get(goal) ?? -1; at >= 0 && at !== start; at = cameFrom.get(at) ?? -1)
    way.unshift(log.removals[at]?.id ?? '');
  return way;
}

/** What each removal waits for, whether it has come off or is only planned. */
function linksOf(log: JobLog): readonly (readonly NeedLink[])[] {
  return needsToReach(log, needsOf(log));
}

/** The needs of a removal once one of them is gone: the others, and what that one needed. Null = nothing to loosen. */
export function loosened(
  state: JobState,
  removalId: string,
  needsId: string,
): { readonly needsId: string; readonly confirmed: boolean; readonly why: string }[] | null {
  const log = jobLog(state);
  const links = linksOf(log);
  const i = log.indexOf.get(removalId) ?? -1;
  const on = log.indexOf.get(needsId) ?? -1;
  const link = links[i]?.find((one) => one.on === on);
  if (!link || link.structural) return null;
  return loosenedLinks(links, i, on)
    .filter((one) => !one.structural)
    .map((one) => ({ needsId: log.removals[one.on]?.id ?? '', confirmed: !one.assumed, why: one.why }));
}

function loosenedLinks(links: readonly (readonly NeedLink[])[], i: number, on: number): NeedLink[] {
  const rest = new Map((links[i] ?? []).filter((one) => one.on !== on).map((one) => [one.on, one]));
  for (const next of links[on] ?? [])
    if (!rest.has(next.on)) rest.set(next.on, { ...next, of: i, assumed: true, structural: false, why: '' });
  return [...rest.values()].sort((a, b) => a.on - b.on);
}

function waitingOf(at: Situation, later: number, earlier: number): NeedSuggestion['waiting'] {
  const step = at.graph.putBack[earlier] ?? -1;
  const other = at.graph.putBack[later] ?? -1;
  if (step < 0 || other < 0 || at.progress[step]?.done || at.progress[other]?.done) return null;
  return { stepId: at.graph.nodes[step]?.id ?? '', forId: at.graph.nodes[other]?.id ?? '' };
}

/** By removal: everything that it touches, as ids: a hole it shares, a part something sits on, a fluid, a support. */
type Touches = ReadonlyMap<string, ReadonlySet<string>>;

function touchesOf(log: JobLog): Touches {
  const touches = new Map<string, Set<string>>();
  const add = (removalId: string | null | undefined, ...ids: (string | null | undefined)[]) => {
    if (!removalId) return;
    const set = touches.get(removalId) ?? new Set<string>();
    for (const id of ids) if (id) set.add(id);
    touches.set(removalId, set);
  };
  const { state } = log;
  const ownerOfThing = (id: string | null) =>
    id === null
      ? null
      : log.indexOf.has(id)
        ? id
        : (log.part.get(id)?.removalId ??
          log.connection.get(id)?.removalId ??
          log.set.get(id)?.removalId ??
          log.set.get(log.position.get(id)?.setId ?? '')?.removalId ??
          null);
  for (const hold of state.holds) {
    add(ownerOfThing(hold.positionId), hold.positionId);
    add(log.part.get(hold.partId)?.removalId, hold.positionId);
  }
  for (const part of state.part) {
    add(part.removalId, part.id, part.parentId, part.carryToId, part.kitId);
    // What sits on or goes over to a part ties the two removals, wherever it came off itself.
    for (const other of [part.parentId, part.carryToId]) add(ownerOfThing(other), other);
  }
  for (const connection of state.connection) {
    add(connection.removalId, connection.sealPartId);
    add(ownerOfThing(connection.sealPartId), connection.sealPartId);
  }
  for (const open of state.opens) add(ownerOfThing(open.thingId), open.fluidId);
  for (const one of state.temporary) {
    add(one.removalId, one.id);
    add(one.outWithId, one.id);
    add(ownerOfThing(one.holdsThingId), one.id);
  }
  return touches;
}

/** Why a need may be none; null = there is something between the two, or nobody said where they are. */
function reasonOf(log: JobLog, touches: Touches, link: NeedLink): string | null {
  const later = log.removals[link.of];
  const earlier = log.removals[link.on];
  if (!later || !earlier) return null;
  const apart = placesApart(later, earlier);
  if (apart === null || hidesJoints(log, later)) return null;
  const own = touches.get(later.id);
  for (const id of touches.get(earlier.id) ?? []) if (own?.has(id)) return null;
  return `${apart} They share no hole, no part and no fluid.`;
}

function placesApart(a: Row<'removal'>, b: Row<'removal'>): string | null {
  const [one, two] = [a.place.trim(), b.place.trim()];
  if (one !== '' && two !== '' && one.toLowerCase() !== two.toLowerCase())
    return `They are in different places: ${one}, ${two}.`;
  const sides = [a.side, b.side];
  if (sides.includes('left') && sides.includes('right')) return 'They are on different sides: left, right.';
  return null;
}

/** What it has inside may lie under the other: that is seen at the machine and not in the log. */
function hidesJoints(log: JobLog, removal: Row<'removal'>): boolean {
  return (
    of(log.connectionsOf, removal.id).some((one) => one.hidden) ||
    of(log.partsOf, removal.id).some((one) => one.hidden) ||
    of(log.setsOf, removal.id).some((set) => of(log.positionsOf, set.id).some((hole) => hole.hidden))
  );
}
