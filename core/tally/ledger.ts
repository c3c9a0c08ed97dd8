import type { Account } from '../model/fastener.ts';
import type { JobState, Row } from '../model/tables.ts';
import { inOrder, lookup } from './lookup.ts';
import type { Lookup } from './lookup.ts';
import { poolKeyOf } from './pool-key.ts';

/** Pieces per account. Starts at 0; only `hole` and `supply` may go below. */
export type Balances = Record<Account, number>;
/** What the books are split by; `spec` and `pool` leave parts out, `part` leaves fasteners out. */
export type BalanceBy = 'all' | 'set' | 'stow' | 'part' | 'spec' | 'pool';
/** The key of pieces that have none of what was asked for: no bag, no set, no pool. */
export const NONE = '';

function noBalances(): Balances {
  return { hole: 0, stow: 0, away: 0, scrap: 0, lost: 0, unknown: 0, supply: 0, stock: 0 };
}

/** The set a moved piece belongs to: said, or the one of the hole it names. */
export function homeOf(look: Lookup, move: Row<'move'>): string | null {
  if (move.homeSetId !== null) return move.homeSetId;
  return move.positionId === null ? null : (look.positions.get(move.positionId)?.setId ?? null);
}

/** The specification of a moved piece: said, else that of its hole, else that of its set. */
export function specOfMove(look: Lookup, move: Row<'move'>): string | null {
  if (move.specId !== null) return move.specId;
  const position = move.positionId === null ? undefined : look.positions.get(move.positionId);
  if (position?.specId) return position.specId;
  const home = homeOf(look, move);
  return home === null ? null : (look.sets.get(home)?.specId ?? null);
}

/**
 * Double-entry balances, split. Per set, part, spec and pool (and over all) the accounts of one key always add up to 0.
 * By stow, a move belongs to the bags it names, so a piece that changes bags leaves one key and comes into another.
 * Pools: equal pool keys; pieces that may not be pooled (own place, key unknown) stand under `NONE`.
 */
export function balances(state: JobState, by: BalanceBy): Map<string, Balances> {
  const look = lookup(state);
  const result = new Map<string, Balances>();
  const book = (key: string, account: Account, qty: number) => {
    let row = result.get(key);
    if (!row) {
      row = noBalances();
      result.set(key, row);
    }
    row[account] += qty;
  };
  const pools = new Map(state.spec.map((spec) => [spec.id, poolKeyOf(spec)]));
  for (const move of state.move) {
    if ((by === 'spec' || by === 'pool' || by === 'set') && move.partId !== null) continue;
    if (by === 'part' && move.partId === null) continue;
    const [from, to] = keysOf(look, pools, move, by);
    book(from, move.src, -move.qty);
    book(to, move.dst, move.qty);
  }
  return result;
}

function keysOf(
  look: Lookup,
  pools: ReadonlyMap<string, string | null>,
  move: Row<'move'>,
  by: BalanceBy,
): readonly [string, string] {
  switch (by) {
    case 'all':
      return [NONE, NONE];
    case 'set':
      return twice(homeOf(look, move));
    case 'part':
      return twice(move.partId);
    case 'spec':
      return twice(specOfMove(look, move));
    case 'pool': {
      const home = homeOf(look, move);
      const spec = specOfMove(look, move);
      const own = home !== null && (look.sets.get(home)?.ownPlace ?? false);
      return twice(own || spec === null ? null : (pools.get(spec) ?? null));
    }
    case 'stow': {
      const from = move.src === 'stow' ? move.srcStowId : null;
      const to = move.dst === 'stow' ? move.dstStowId : null;
      return [
        from ?? (move.src === 'stow' ? NONE : (to ?? NONE)),
        to ?? (move.dst === 'stow' ? NONE : (from ?? NONE)),
      ];
    }
  }
}

function twice(key: string | null): readonly [string, string] {
  return [key ?? NONE, key ?? NONE];
}

/** What is wrong in the books: a code for programs, a sentence for people, and the move that did it. */
export interface MoveProblem {
  readonly code: 'move.negative' | 'move.off-again' | 'move.into-supply' | 'move.nowhere' | 'move.stow';
  readonly moveId: string;
  readonly sentence: string;
}

const NAMES: Readonly<Record<Account, string>> = {
  hole: 'in its hole',
  stow: 'in the bag',
  away: 'away',
  scrap: 'scrapped',
  lost: 'lost',
  unknown: 'looked for',
  supply: 'supplied',
  stock: 'in stock',
};

/**
 * Everything the books cannot hold: more leaving an account, a bag included, than is in it; more coming off again
 * than was refitted; pieces given back to supply; a move that goes nowhere; a bag named for what is in no bag.
 * Moves of one instant are one event, so that their order among themselves does not matter. Empty = sound.
 */
export function moveProblems(state: JobState): MoveProblem[] {
  const look = lookup(state);
  const moves = inOrder(state.move);
  const problems: MoveProblem[] = [];
  const held = new Map<string, number>();
  let touched = new Map<string, Touched>();
  moves.forEach((move, i) => {
    const shape = shapeProblem(move);
    if (shape) problems.push(shape);
    for (const touch of touches(look, move)) {
      held.set(touch.key, (held.get(touch.key) ?? 0) + touch.qty);
      if (touch.qty < 0) touched.set(touch.key, touch);
    }
    if (moves[i + 1]?.at === move.at) return;
    for (const touch of touched.values()) {
      const left = held.get(touch.key) ?? 0;
      if (left < 0) problems.push(negative(touch, left));
    }
    touched = new Map();
  });
  return problems;
}

interface Touched {
  readonly key: string;
  readonly qty: number;
  readonly move: Row<'move'>;
  readonly account: Account;
}

function touches(look: Lookup, move: Row<'move'>): Touched[] {
  const piece = JSON.stringify([homeOf(look, move), specOfMove(look, move), move.partId]);
  const touch = (account: Account, stow: string | null, qty: number): Touched => ({
    key: `${account} ${account === 'stow' ? (stow ?? NONE) : ''} ${piece}`,
    qty,
    move,
    account,
  });
  const all: Touched[] = [];
  if (move.src !== 'hole' && move.src !== 'supply') all.push(touch(move.src, move.srcStowId, -move.qty));
  if (move.dst !== 'hole' && move.dst !== 'supply') all.push(touch(move.dst, move.dstStowId, move.qty));
  // Refitted pieces are what may come off again; the hole account alone cannot tell, it starts at 0 and goes below.
  if (move.src === 'hole' && move.cause === 'came off again') all.push(touch('hole', null, -move.qty));
  if (move.dst === 'hole' && move.cause !== 'counted') all.push(touch('hole', null, move.qty));
  return all;
}

function negative(touch: Touched, left: number): MoveProblem {
  const had = left + touch.move.qty;
  if (touch.account === 'hole') {
    return {
      code: 'move.off-again',
      moveId: touch.move.id,
      sentence: `Expected at most ${had} to come off again, got ${touch.move.qty}.`,
    };
  }
  return {
    code: 'move.negative',
    moveId: touch.move.id,
    sentence: `Expected at most ${had} to leave what is ${NAMES[touch.account]}, got ${touch.move.qty}.`,
  };
}

function shapeProblem(move: Row<'move'>): MoveProblem | null {
  if (move.dst === 'supply') {
    return {
      code: 'move.into-supply',
      moveId: move.id,
      sentence: 'Expected pieces to come from supply only, got some going back to it.',
    };
  }
  if (move.src === move.dst && (move.src !== 'stow' || move.srcStowId === move.dstStowId)) {
    return {
      code: 'move.nowhere',
      moveId: move.id,
      sentence: `Expected two different places, got ${NAMES[move.src]} twice.`,
    };
  }
  if ((move.src !== 'stow' && move.srcStowId !== null) || (move.dst !== 'stow' && move.dstStowId !== null)) {
    return {
      code: 'move.stow',
      moveId: move.id,
      sentence: 'Expected a bag only where pieces leave or enter one, got one beside another place.',
    };
  }
  return null;
}
