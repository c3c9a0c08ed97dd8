import { ok, type Result, refuse } from '../model/result.ts';
import type { Row } from '../model/tables.ts';
import type { Decision } from './frame.ts';
import { damagesPiece } from '../tally/index.ts';
import { book, holesOf, piecesPerHole, stowOf } from './pieces.ts';

/** What is in hand, lot by lot; counted down as pieces go in, so that one command never uses a piece twice. */
interface Lot {
  readonly specId: string | null;
  readonly homeSetId: string | null;
  readonly partId: string | null;
  readonly fresh: boolean;
  readonly stowId: string | null;
  qty: number;
}
export type Hands = readonly Lot[];

/** The pieces of the job that are in hand by the books. */
export function hands(decision: Decision): Hands {
  const lots = new Map<string, Lot>();
  const add = (move: Row<'move'>, stowId: string | null, qty: number) => {
    const { specId, homeSetId, partId, fresh } = move;
    const key = [specId, homeSetId, partId, fresh, stowId].join('/');
    const lot = lots.get(key);
    if (lot) lot.qty += qty;
    else lots.set(key, { specId, homeSetId, partId, fresh, stowId, qty });
  };
  for (const move of decision.state.move) {
    if (move.dst === 'stow') add(move, move.dstStowId, move.qty);
    if (move.src === 'stow') add(move, move.srcStowId, -move.qty);
  }
  return [...lots.values()];
}

/** New ones first where only new ones will do, else the old ones that came out of these very holes. */
function byPreference(fresh: boolean, stowId: string | null, specId: string) {
  return (a: Lot, b: Lot): number =>
    Number(b.fresh === fresh) - Number(a.fresh === fresh) ||
    Number(b.specId === specId) - Number(a.specId === specId) ||
    Number(b.stowId === stowId) - Number(a.stowId === stowId);
}

/** Lots in hand that may go into a hole of this set. */
export function lotFor(decision: Decision, all: Hands, set: Row<'fset'>, specId: string, qty: number) {
  const spec = decision.writer.get('spec', specId);
  const fits = (lot: Lot): boolean => {
    if (lot.qty < qty || lot.partId !== null) return false;
    if (lot.homeSetId === set.id && lot.specId === specId) return true;
    if (set.ownPlace || spec?.poolKey === null || lot.specId === null) return false;
    const other = decision.writer.get('fset', lot.homeSetId ?? '');
    return other?.ownPlace !== true && decision.writer.get('spec', lot.specId)?.poolKey === spec?.poolKey;
  };
  return all.filter(fits);
}

/** What is said of a piece that goes into a hole. */
export interface FillWith {
  /** Only new ones, or only old ones; undefined = whatever is right. */
  readonly fresh: boolean | undefined;
  /** The specification that went in, where somebody says that it is another one than the hole's. */
  readonly withSpecId?: string | null | undefined;
  /** Somebody pointed at this very hole: then even a damaged piece goes back in, and is found as such. */
  readonly asked: boolean;
}

/** Whether the piece that came out of this hole was damaged and is still in hand: the first to be scrapped is that one. */
function damagedInHand(decision: Decision, set: Row<'fset'>, hole: Row<'position'>): boolean {
  const marked = (one: Row<'position'>) => one.found !== 'empty' && damagesPiece(one.condition);
  if (!marked(hole)) return false;
  const marks = holesOf(decision, set.id).filter(marked).length;
  const scrapped = decision.state.move
    .filter((move) => move.homeSetId === set.id && move.dst === 'scrap')
    .reduce((sum, move) => sum + move.qty, 0);
  return marks > scrapped;
}

/**
 * Books the pieces of one hole in: new ones where they must be new and are in hand. `fresh` says which were taken.
 * Refused when none is in hand by the books; then one is missing, or more came than was written down.
 */
export function fillHole(
  decision: Decision,
  all: Hands,
  hole: Row<'position'>,
  { fresh, withSpecId = null, asked }: FillWith,
): Result<{ fresh: boolean; withSpecId: string }> {
  const set = decision.writer.get('fset', hole.setId) as Row<'fset'>;
  const main = hole.specId ?? set.specId;
  // A slackened bolt never left its hole, and neither did one in a hole nobody emptied: nothing to book.
  if (set.how === 'slackened' && hole.found !== 'new hole') return ok({ fresh: false, withSpecId: main });
  const damaged = damagedInHand(decision, set, hole);
  const wantNew = fresh ?? (set.renew === 'must' || damaged);
  let used = false;
  for (const one of piecesPerHole(decision, set, hole)) {
    const piece = one.specId === main && withSpecId !== null ? { ...one, specId: withSpecId } : one;
    const lots = lotFor(decision, all, set, piece.specId, piece.qty);
    const usable = fresh === undefined ? lots : lots.filter((lot) => lot.fresh === fresh);
    const lot = usable.sort(byPreference(wantNew, stowOf(hole, set), piece.specId))[0];
    if (!lot)
      return refuse(
        'refused',
        `Hole ${hole.n}: none in hand by the books${fresh ? ' that is new' : ''}. Count the bag, find it, or write down what came new.`,
      );
    if (one.specId === main && damaged && !lot.fresh && lot.homeSetId === set.id && !asked)
      return refuse(
        'refused',
        `Hole ${hole.n}: ${hole.condition}, and no new one is in hand. Get one, or tick this hole by itself if the old one goes back.`,
      );
    lot.qty -= piece.qty;
    if (one.specId === main) used = lot.fresh;
    book(decision, {
      qty: piece.qty,
      src: 'stow',
      dst: 'hole',
      cause: lot.fresh ? 'renewed' : 'refitted',
      specId: lot.specId,
      homeSetId: lot.homeSetId,
      positionId: hole.id,
      srcStowId: lot.stowId,
      fresh: lot.fresh,
    });
  }
  return ok({ fresh: used, withSpecId: withSpecId ?? main });
}

/** Takes the pieces of a hole out again, into its bag. A new piece that was fitted once is no longer new. */
export function emptyHole(decision: Decision, hole: Row<'position'>): void {
  const set = decision.writer.get('fset', hole.setId) as Row<'fset'>;
  if (set.how === 'slackened' && hole.found !== 'new hole') return;
  for (const piece of inHole(decision, (move) => move.positionId === hole.id))
    book(decision, {
      qty: piece.qty,
      specId: piece.specId,
      homeSetId: piece.homeSetId,
      src: 'hole',
      dst: 'stow',
      cause: 'came off again',
      positionId: hole.id,
      dstStowId: stowOf(hole, set),
    });
}

function inHole(decision: Decision, fits: (move: Row<'move'>) => boolean) {
  const sums = new Map<string, { specId: string | null; homeSetId: string | null; qty: number }>();
  for (const move of decision.state.move) {
    if (!fits(move)) continue;
    const into = move.dst === 'hole' && move.cause !== 'counted' ? move.qty : 0;
    const out = move.src === 'hole' && move.cause === 'came off again' ? move.qty : 0;
    const key = `${move.specId ?? ''}/${move.homeSetId ?? ''}`;
    const sum = sums.get(key) ?? { specId: move.specId, homeSetId: move.homeSetId, qty: 0 };
    sums.set(key, { ...sum, qty: sum.qty + into - out });
  }
  return [...sums.values()].filter((sum) => sum.qty > 0);
}

/** Books a part back to its place. What only moved aside or was opened never left, so there is nothing to book. */
export function fitPart(
  decision: Decision,
  all: Hands,
  part: Row<'part'>,
  fresh: boolean | undefined,
): Result<{ fresh: boolean }> {
  if (part.how === 'aside' || part.how === 'opened' || part.qty === 0) return ok({ fresh: false });
  const wantNew = fresh ?? (part.renew === 'must' || part.fate === 'renew' || part.fate === 'exchange');
  const lots = all.filter((lot) => lot.partId === part.id && lot.qty >= part.qty);
  const usable = fresh === undefined ? lots : lots.filter((lot) => lot.fresh === fresh);
  const lot = usable.sort((a, b) => Number(b.fresh === wantNew) - Number(a.fresh === wantNew))[0];
  if (!lot) return refuse('refused', notInHand(decision, part));
  lot.qty -= part.qty;
  book(decision, {
    qty: part.qty,
    src: 'stow',
    dst: 'hole',
    cause: lot.fresh ? 'renewed' : 'refitted',
    partId: part.id,
    srcStowId: lot.stowId,
    fresh: lot.fresh,
  });
  return ok({ fresh: lot.fresh });
}

/** Why a part cannot go in, and what is done about it. */
function notInHand({ state }: Decision, part: Row<'part'>): string {
  const name = part.name || 'This part';
  const away = state.away.find((one) => one.thingId === part.id && one.backAt === null);
  if (!away) return `${name}: not in hand by the books. It is lost, or a new one has not come.`;
  return `${name}: it is away${away.toWhom === '' ? '' : `, with ${away.toWhom}`}. Say first that it is back.`;
}

/** A part came off again: back to where it is stowed, and no longer new. */
export function unfitPart(decision: Decision, part: Row<'part'>): void {
  for (const piece of inHole(decision, (move) => move.partId === part.id))
    book(decision, {
      qty: piece.qty,
      src: 'hole',
      dst: 'stow',
      cause: 'came off again',
      partId: part.id,
      dstStowId: part.stowId,
    });
}
