import type { Row } from '../model/tables.ts';
import type { Pieces } from './count-types.ts';
import { holePieces, holeState } from './holes.ts';
import type { HolePiece, HoleState } from './holes.ts';
import { homeOf, NONE, specOfMove } from './ledger.ts';
import { followFresh, noFresh } from './fresh.ts';
import type { Fresh } from './fresh.ts';
import { compare, happened, inOrder } from './lookup.ts';
import type { Lookup } from './lookup.ts';
import { mustBeNew } from './renewal.ts';

/** Running sums of one kind of piece of one set, before anything is concluded from them. */
export interface Sums {
  readonly setId: string | null;
  readonly specId: string | null;
  readonly what: string;
  main: boolean;
  perHole: number;
  mustBeNew: boolean;
  out: number;
  got: number;
  inBag: number;
  away: number;
  backIn: number;
  scrapped: number;
  lost: number;
  unknown: number;
  toStock: number;
  readonly fresh: Fresh;
  damagedMarks: number;
  holes: number;
  /** Holes that held a piece as found, in a set that came out. */
  fitted: number;
  fittedBlocked: number;
  fittedLeft: number;
  fittedCleared: number;
  newHoles: number;
  newLeft: number;
  blocked: number;
  foundEmpty: number;
  slackened: number;
  /** Pieces out of, and net into, the holes of this line, whatever specification they are of. */
  outOfHoles: number;
  intoHoles: number;
}

/** The sums of one set, and what went out of or into its holes as a substitute that no hole asks for. */
export interface SetSums {
  readonly set: Row<'fset'> | null;
  readonly lines: Map<string, Sums>;
  strayOut: number;
  strayIn: number;
}

/** Sums per set in the order of the log, pieces of no set last. */
export function sumBooks(look: Lookup): SetSums[] {
  const books = new Map<string, SetSums>();
  const outAt = emptiedHoles(look);
  for (const set of inLogOrder(look)) {
    const sums: SetSums = { set, lines: new Map(), strayOut: 0, strayIn: 0 };
    books.set(set.id, sums);
    addHoles(look, sums, set, outAt);
  }
  const free: SetSums = { set: null, lines: new Map(), strayOut: 0, strayIn: 0 };
  for (const move of inOrder(look.state.move)) {
    if (move.partId !== null) continue;
    const home = books.get(homeOf(look, move) ?? NONE) ?? free;
    addPieces(look, home, move);
    addToHoles(look, books, home, move);
  }
  return free.lines.size > 0 ? [...books.values(), free] : [...books.values()];
}

function inLogOrder(look: Lookup): Row<'fset'>[] {
  const ord = (set: Row<'fset'>) => look.removals.get(set.removalId)?.ord ?? '';
  return [...look.state.fset].sort((a, b) => compare(ord(a), ord(b)) || compare(a.ord, b.ord));
}

function lineOf(look: Lookup, sums: SetSums, piece: HolePiece): Sums {
  const key = piece.specId ?? NONE;
  const had = sums.lines.get(key);
  if (had) return had;
  const line: Sums = {
    setId: sums.set?.id ?? null,
    specId: piece.specId,
    what: piece.what,
    main: piece.main,
    perHole: piece.qty,
    mustBeNew: sums.set !== null && mustBeNew(look, sums.set, piece),
    out: 0,
    got: 0,
    inBag: 0,
    away: 0,
    backIn: 0,
    scrapped: 0,
    lost: 0,
    unknown: 0,
    toStock: 0,
    fresh: noFresh(),
    damagedMarks: 0,
    holes: 0,
    fitted: 0,
    fittedBlocked: 0,
    fittedLeft: 0,
    fittedCleared: 0,
    newHoles: 0,
    newLeft: 0,
    blocked: 0,
    foundEmpty: 0,
    slackened: 0,
    outOfHoles: 0,
    intoHoles: 0,
  };
  sums.lines.set(key, line);
  return line;
}

function addHoles(look: Lookup, sums: SetSums, set: Row<'fset'>, outAt: ReadonlySet<string>): void {
  const real = happened(look.removals.get(set.removalId));
  const positions = look.positionsOf.get(set.id) ?? [];
  if (positions.length === 0) for (const piece of holePieces(look, set)) lineOf(look, sums, piece);
  for (const position of positions) {
    const state = holeState(look, position);
    // What is broken off and still in its hole is no damaged piece in a bag.
    const marked = state.damagedPiece && (!(state.blocked || state.cleared) || outAt.has(position.id));
    for (const piece of holePieces(look, set, position)) {
      const line = lineOf(look, sums, piece);
      if (!real) continue;
      addHole(line, set, position, state, piece.qty);
      if (line.main && marked) line.damagedMarks += piece.qty;
    }
  }
}

function addHole(
  line: Sums,
  set: Row<'fset'>,
  position: Row<'position'>,
  state: HoleState,
  qty: number,
): void {
  line.holes += qty;
  if (state.blocked) line.blocked += qty;
  if (state.stayEmpty) line.foundEmpty += qty;
  else if (state.cameEmpty && !state.blocked) {
    line.newHoles += qty;
    if (state.leftOut) line.newLeft += qty;
  } else if (!state.cameEmpty && set.how === 'slackened') {
    if (!state.tight) line.slackened += qty;
  } else if (!state.cameEmpty) {
    line.fitted += qty;
    if (state.blocked) line.fittedBlocked += qty;
    else if (state.leftOut) line.fittedLeft += qty;
    else if (state.cleared) line.fittedCleared += qty;
  }
}

/** Holes whose piece is booked as having come out. */
function emptiedHoles(look: Lookup): Set<string> {
  const out = look.state.move.filter((move) => move.src === 'hole' && move.partId === null);
  return new Set(out.flatMap((move) => (move.positionId === null ? [] : [move.positionId])));
}

const COLUMN = {
  stow: 'inBag',
  away: 'away',
  scrap: 'scrapped',
  lost: 'lost',
  unknown: 'unknown',
  stock: 'toStock',
} as const satisfies Partial<Record<Row<'move'>['src'], keyof Pieces>>;

function addPieces(look: Lookup, home: SetSums, move: Row<'move'>): void {
  const specId = specOfMove(look, move);
  const kind = (specId === null ? undefined : look.specs.get(specId)?.kind) ?? 'fastener';
  const line = lineOf(look, home, { specId, what: kind, qty: 0, main: false });
  const qty = move.qty;
  if (move.src === 'hole') {
    if (move.cause === 'came off again') line.backIn -= qty;
    else line.out += qty;
  } else if (move.src === 'supply') line.got += qty;
  else line[COLUMN[move.src]] -= qty;
  if (move.dst === 'hole') {
    // A count corrects how many came off: such a piece never left its hole.
    if (move.cause === 'counted') line.out -= qty;
    else line.backIn += qty;
  } else if (move.dst === 'supply') line.got -= qty;
  else line[COLUMN[move.dst]] += qty;
  followFresh(line.fresh, move);
}

/** Books a move to the hole it names, else to the holes of its set that ask for such a piece, else as a stray. */
function addToHoles(look: Lookup, books: Map<string, SetSums>, home: SetSums, move: Row<'move'>): void {
  if (move.src !== 'hole' && move.dst !== 'hole') return;
  const specId = specOfMove(look, move);
  const position = move.positionId === null ? undefined : look.positions.get(move.positionId);
  const owner = (position && books.get(position.setId)) ?? home;
  const line =
    position && owner.set
      ? lineOf(look, owner, pieceFor(look, owner.set, position, specId))
      : owner.lines.get(specId ?? NONE);
  const asked = line !== undefined && line.perHole > 0;
  const out = move.src === 'hole' && move.cause !== 'came off again' ? move.qty : 0;
  const corrected = move.dst === 'hole' && move.cause === 'counted' ? move.qty : 0;
  const back = move.dst === 'hole' && move.cause !== 'counted' ? move.qty : 0;
  const again = move.src === 'hole' && move.cause === 'came off again' ? move.qty : 0;
  if (asked) {
    line.outOfHoles += out - corrected;
    line.intoHoles += back - again;
  } else {
    owner.strayOut += out - corrected;
    owner.strayIn += back - again;
  }
}

function pieceFor(
  look: Lookup,
  set: Row<'fset'>,
  position: Row<'position'>,
  specId: string | null,
): HolePiece {
  const pieces = holePieces(look, set, position);
  const kind = (id: string | null) => (id === null ? undefined : look.specs.get(id)?.kind);
  const main = pieces[0] as HolePiece;
  return (
    pieces.find((piece) => piece.specId === specId) ??
    pieces.find((piece) => kind(piece.specId) !== undefined && kind(piece.specId) === kind(specId)) ??
    main
  );
}
