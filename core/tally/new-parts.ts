import type { JobState, Row } from '../model/tables.ts';
import { followFresh, noFresh } from './fresh.ts';
import { groupBy, happened, inOrder, lastDeed, lookup } from './lookup.ts';
import type { Lookup } from './lookup.ts';

/** A part of which a new one has to go in, and how far that is from being so. */
export interface NewPart {
  readonly part: Row<'part'>;
  readonly cause: 'must renew' | 'exchange';
  /** Bought or made, in hand and not fitted. */
  readonly inHand: number;
  /** Bought ones that are in now; one that came off again is no longer new. */
  readonly fitted: number;
  /** Still to be got; 0 once it is in, whatever was fitted: the record says what. */
  readonly lacking: number;
}

/** Parts that must be renewed, are to be renewed or exchanged: each with what is in hand. In the order of the job. */
export function newParts(state: JobState): NewPart[] {
  const look = lookup(state);
  const moves = groupBy(
    look.state.move.filter((move) => move.partId !== null),
    (move) => move.partId ?? '',
  );
  return look.state.part.flatMap((part) => {
    const cause = causeOf(look, part);
    if (cause === null) return [];
    const fresh = noFresh();
    let fitted = 0;
    for (const move of inOrder(moves.get(part.id) ?? [])) {
      followFresh(fresh, move);
      if (move.dst === 'hole' && (move.fresh || move.src === 'supply')) fitted += move.qty;
      if (move.src === 'hole') fitted = Math.max(0, fitted - move.qty);
    }
    const last = lastDeed(look, part.id, part.removalId)?.what;
    const done = last === 'fitted' || last === 'done' || last === 'left out';
    const lacking = done ? 0 : Math.max(0, part.qty - fitted - fresh.unused);
    return [{ part, cause, inHand: fresh.unused, fitted, lacking }];
  });
}

function causeOf(look: Lookup, part: Row<'part'>): NewPart['cause'] | null {
  if (part.kind === 'kit' || part.kind === 'new part' || part.fate === 'leave out') return null;
  // What was only moved aside or opened is not replaced, it is closed again.
  if (part.how === 'aside' || part.how === 'opened' || part.how === 'fitted new') return null;
  if (part.removalId !== null && !happened(look.removals.get(part.removalId))) return null;
  if (part.fate === 'exchange') return 'exchange';
  return part.renew === 'must' || part.fate === 'renew' ? 'must renew' : null;
}

/** The new part needed in place of this one, or null where the old one may go back. For many parts, ask `newParts` once. */
export function newPartFor(state: JobState, partId: string): NewPart | null {
  return newParts(state).find((row) => row.part.id === partId) ?? null;
}
