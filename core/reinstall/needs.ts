import type { Row } from '../model/tables.ts';
import { isOff, of, type JobLog } from './job-log.ts';

/** `of` had to wait for `on`: `on` came off first, so `of` goes back first. Numbers are log indices. */
export interface NeedLink {
  readonly of: number;
  readonly on: number;
  /** Derived from the order of the log, not confirmed by anyone. */
  readonly assumed: boolean;
  /** An assembly on its bench goes back as a whole: nobody can loosen that. */
  readonly structural: boolean;
  readonly why: string;
}

/** Rule 1: who needs whom, seen through entries that have no step of their own. */
export interface Needs {
  /** By log index: the needs of a removal on removals that have a step. Empty for removals without one. */
  readonly links: readonly (readonly NeedLink[])[];
  /** By log index: whether the removal has a node S. */
  readonly hasStep: readonly boolean[];
  /** By log index: a plug opened to drain, closed again as soon as that is done. */
  readonly drains: readonly boolean[];
  /** By log index of a drain plug: the removals that waited for the empty system. */
  readonly behindDrain: ReadonlyMap<number, readonly number[]>;
}

/**
 * The needs of every removal: the default chain per bench, minus what was loosened, plus what was stored.
 * Entries that only made something safe, that are void, given up or only planned hand their needs on; so does the
 * opening of a drain plug, because what others needed was the empty system and not the open plug.
 */
export function needsOf(log: JobLog): Needs {
  const hasStep = log.removals.map((removal) => hasOwnStep(log, removal));
  const drains = drainOpenings(log);
  const raw = rawNeeds(log);
  const links: NeedLink[][] = [];
  // Handed-on needs of entries that are passed through; earlier entries are settled first, so no recursion.
  const through: NeedLink[][] = [];
  const emptied: Set<number>[] = [];
  const behindDrain = new Map<number, number[]>();
  raw.forEach((own, i) => {
    const settled = settle(own, through, (on) => hasStep[on] === true && drains[on] !== true);
    links.push(hasStep[i] ? settled : []);
    through.push(settled);
    const waited = emptiedFor(own, emptied, hasStep, drains);
    emptied.push(waited);
    for (const drain of waited) {
      const list = behindDrain.get(drain);
      if (list) list.push(i);
      else behindDrain.set(drain, [i]);
    }
  });
  return { links, hasStep, drains, behindDrain };
}

/** The drains that a removal was behind with no step between: what is fitted on the way back before the system is filled. */
function emptiedFor(
  own: readonly NeedLink[],
  emptied: readonly ReadonlySet<number>[],
  hasStep: readonly boolean[],
  drains: readonly boolean[],
): Set<number> {
  const found = new Set<number>();
  for (const { on } of own) {
    if (drains[on]) found.add(on);
    if (drains[on] || !hasStep[on]) for (const other of emptied[on] ?? []) found.add(other);
  }
  return found;
}

/**
 * By log index: what had to be off before each removal, for taking off again. As `needsOf`, and beside it: what is only
 * planned stands in the way of what is planned after it, and of nothing that came off without it.
 */
export function needsToReach(log: JobLog, needs: Needs): readonly (readonly NeedLink[])[] {
  const raw = rawNeeds(log);
  const planned: NeedLink[][] = [];
  return raw.map((own, i) => {
    const stands = (on: number) =>
      (needs.hasStep[on] === true && needs.drains[on] !== true) || waits(log.removals[on]);
    const settled = settle(own, planned, stands);
    planned.push(settled);
    return needs.hasStep[i] ? (needs.links[i] ?? []) : settled;
  });
}

const waits = (removal: Row<'removal'> | undefined): boolean =>
  removal?.phase === 'planned' && removal.did !== 'safe';

function settle(
  own: readonly NeedLink[],
  through: readonly (readonly NeedLink[])[],
  stands: (on: number) => boolean,
): NeedLink[] {
  const found = new Map<number, NeedLink>();
  const add = (link: NeedLink) => {
    const had = found.get(link.on);
    if (link.on !== link.of && (!had || (had.assumed && !link.assumed))) found.set(link.on, link);
  };
  for (const link of own) {
    if (stands(link.on)) {
      add(link);
      continue;
    }
    for (const next of through[link.on] ?? []) {
      add({
        ...next,
        of: link.of,
        assumed: link.assumed || next.assumed,
        structural: link.structural && next.structural,
      });
    }
  }
  return [...found.values()];
}

/** Making safe alone gives no S, its isolations are its step; unless it took something off and isolated nothing. */
function hasOwnStep(log: JobLog, removal: Row<'removal'>): boolean {
  if (!isOff(removal)) return false;
  if (removal.did !== 'safe') return true;
  if (of(log.isolationsOf, removal.id).length > 0) return false;
  return (
    of(log.partsOf, removal.id).length +
      of(log.setsOf, removal.id).length +
      of(log.connectionsOf, removal.id).length >
    0
  );
}

/** Only opened, opens a fluid by itself or by its plug, and nothing comes off with it. */
function drainOpenings(log: JobLog): boolean[] {
  const opened = new Set(log.state.opens.map((open) => open.thingId));
  return log.removals.map((removal) => {
    if (removal.did !== 'opened' || !isOff(removal)) return false;
    if (of(log.partsOf, removal.id).some((part) => part.how === 'off' && part.kind === 'part')) return false;
    if (of(log.connectionsOf, removal.id).length > 0) return false;
    const sets = of(log.setsOf, removal.id);
    return (
      opened.has(removal.id) ||
      sets.some((set) => opened.has(set.id)) ||
      sets.some((set) => of(log.positionsOf, set.id).some((position) => opened.has(position.id)))
    );
  });
}

function rawNeeds(log: JobLog): NeedLink[][] {
  const lastOnBench = new Map<string | null, number>();
  return log.removals.map((removal, i) => {
    const links: NeedLink[] = [];
    for (const need of of(log.needsOf, removal.id)) {
      const on = log.indexOf.get(need.needsId);
      if (on !== undefined)
        links.push({ of: i, on, assumed: !need.confirmed, structural: false, why: need.why });
    }
    const before = lastOnBench.get(removal.benchPartId);
    const bench = benchStart(log, removal, i);
    const first = before ?? bench;
    if (removal.defaultNeed !== 'loosened' && first !== undefined) {
      const assumed = removal.defaultNeed === 'assumed';
      links.push({ of: i, on: first, assumed, structural: false, why: removal.defaultNeedWhy });
    }
    // What was taken off an assembly on the bench goes back before the assembly does, whatever else was loosened.
    if (
      before !== undefined &&
      bench !== undefined &&
      !links.some((link) => sameBench(log, link.on, removal))
    ) {
      links.push({
        of: i,
        on: bench,
        assumed: false,
        structural: true,
        why: 'It was taken apart on the bench.',
      });
    }
    lastOnBench.set(removal.benchPartId, i);
    return links;
  });
}

/** The removal that took the assembly of this bench off, where it lies earlier in the log. */
function benchStart(log: JobLog, removal: Row<'removal'>, i: number): number | undefined {
  if (removal.benchPartId === null) return undefined;
  const owner = log.part.get(removal.benchPartId)?.removalId;
  const index = owner === null || owner === undefined ? undefined : log.indexOf.get(owner);
  return index !== undefined && index < i ? index : undefined;
}

function sameBench(log: JobLog, index: number, removal: Row<'removal'>): boolean {
  return log.removals[index]?.benchPartId === removal.benchPartId;
}
