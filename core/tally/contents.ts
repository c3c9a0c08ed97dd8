import type { JobState } from '../model/tables.ts';
import { homeOf, NONE, specOfMove } from './ledger.ts';
import { compare, inOrder, lookup } from './lookup.ts';
import type { Lookup } from './lookup.ts';

/** What lies together in a bag: pieces of one kind of one set, or a part. */
export interface Content {
  readonly stowId: string | null;
  readonly setId: string | null;
  readonly specId: string | null;
  readonly partId: string | null;
  readonly qty: number;
  /** Last time that something of it was put in; UTC ms. */
  readonly putAt: number;
}

/** What is in hand by the books, by bag; "in hand, in no bag" has `stowId` null. Nothing that is 0. */
export function contents(state: JobState): Content[] {
  return contentsUntil(lookup(state), Infinity);
}

export function contentsUntil(look: Lookup, until: number): Content[] {
  const found = new Map<string, Content>();
  for (const move of inOrder(look.state.move)) {
    if (move.at > until) break;
    const own = { setId: homeOf(look, move), specId: specOfMove(look, move), partId: move.partId };
    const add = (stowId: string | null, qty: number) => {
      const key = [stowId, own.setId, own.specId, own.partId].join('/');
      const had = found.get(key);
      const putAt = qty > 0 ? move.at : (had?.putAt ?? move.at);
      found.set(key, { ...own, stowId, qty: (had?.qty ?? 0) + qty, putAt });
    };
    if (move.src === 'stow') add(move.srcStowId, -move.qty);
    if (move.dst === 'stow') add(move.dstStowId, move.qty);
  }
  return [...found.values()].filter((content) => content.qty > 0);
}

/** What lies in one bag, tin, tray or shelf by the books. */
export function contentsOf(state: JobState, stowId: string): Content[] {
  return contents(state).filter((content) => content.stowId === stowId);
}

/** How many pieces a count of this bag should find: fasteners, their washers and nuts, and parts that lie in it. */
export function expectedIn(state: JobState, stowId: string): number {
  return contentsOf(state, stowId).reduce((sum, content) => sum + content.qty, 0);
}

/**
 * How many of a thing should be found when it is looked for by itself: a rag, plug, cap, support or tool as many as
 * were put in; a part or set as many as are in hand by the books, or as were noted where nothing is booked.
 */
export function expectedOf(state: JobState, thingId: string): number {
  const temporary = state.temporary.find((row) => row.id === thingId);
  if (temporary) return temporary.qty;
  const part = state.part.find((row) => row.id === thingId);
  const booked = state.move.some((move) => (part ? move.partId === thingId : move.homeSetId === thingId));
  if (part && !booked) return part.qty;
  const mine = contents(state).filter((c) =>
    part ? c.partId === thingId : c.setId === thingId && c.partId === null,
  );
  return mine.reduce((sum, content) => sum + content.qty, 0);
}

/** A bag with something in it, and when it was last counted right. */
export interface BagCount {
  readonly stowId: string;
  readonly qty: number;
  /** The last count that agreed with the books; null = never counted. */
  readonly countedAt: number | null;
  /** Something was put in or taken out since, or it was never counted. */
  readonly due: boolean;
}

/** All bags with something in them, by label. */
export function bagCounts(state: JobState): BagCount[] {
  const qty = new Map<string, number>();
  for (const content of contents(state))
    if (content.stowId !== null) qty.set(content.stowId, (qty.get(content.stowId) ?? 0) + content.qty);
  const counted = new Map<string, number>();
  for (const row of state.counting)
    if (row.stowId !== null && row.counted === row.expected)
      counted.set(row.stowId, Math.max(row.at, counted.get(row.stowId) ?? 0));
  const moved = new Map<string, number>();
  for (const move of state.move)
    for (const stowId of [move.srcStowId, move.dstStowId])
      if (stowId !== null) moved.set(stowId, Math.max(move.at, moved.get(stowId) ?? 0));
  const labels = new Map(state.stow.map((stow) => [stow.id, stow.label]));
  return [...qty]
    .map(([stowId, pieces]) => {
      const countedAt = counted.get(stowId) ?? null;
      return {
        stowId,
        qty: pieces,
        countedAt,
        due: countedAt === null || countedAt < (moved.get(stowId) ?? 0),
      };
    })
    .sort((a, b) => compare(labels.get(a.stowId) ?? NONE, labels.get(b.stowId) ?? NONE));
}
