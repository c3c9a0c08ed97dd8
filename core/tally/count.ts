import type { JobState } from '../model/tables.ts';
import { sumBooks } from './books.ts';
import type { SetSums, Sums } from './books.ts';
import type { CountLine, Holes, Pieces, PoolLine, Verdict } from './count-types.ts';
import { groupBy, happened, lookup } from './lookup.ts';
import type { Lookup } from './lookup.ts';
import { poolKeyOf } from './pool-key.ts';

/**
 * The count of every set, one line per kind of piece: its bolts of one length, its washers, its nuts.
 * Order: the log's. Pieces bought for no set come last, with `setId` null.
 */
export function countLines(state: JobState): CountLine[] {
  const look = lookup(state);
  return sumBooks(look).flatMap((sums) => linesOfSet(look, sums));
}

/** The lines of one set; an unknown id gives none. */
export function countOfSet(state: JobState, setId: string): CountLine[] {
  return countLines(state).filter((line) => line.setId === setId);
}

/** What the books are off by; 0 when they close. */
export function bookDifference(p: Pieces): number {
  return p.out + p.got - (p.inBag + p.away + p.backIn + p.scrapped + p.lost + p.unknown + p.toStock);
}

function linesOfSet(look: Lookup, sums: SetSums): CountLine[] {
  const real = sums.set !== null && happened(look.removals.get(sums.set.removalId));
  const lines = [...sums.lines.values()];
  const asking = lines.filter((line) => line.perHole > 0);
  const emptied = real ? emptiedBy(sums, asking) : new Map<Sums, number>();
  const strays = real ? fillStrays(sums, asking, emptied) : new Map<Sums, number>();
  const known = sums.set?.countKnown ?? true;
  return lines.map((line) => {
    const holes = holesOf(line, emptied.get(line) ?? 0, strays.get(line) ?? 0, known);
    const pieces = piecesOfLine(line);
    return {
      setId: line.setId,
      removalId: sums.set?.removalId ?? null,
      specId: line.specId,
      what: line.what,
      main: line.main,
      perHole: line.perHole,
      ownPlace: sums.set?.ownPlace ?? false,
      countKnown: known,
      mustBeNew: line.mustBeNew,
      ...pieces,
      ...holes,
      ...verdict(pieces, holes, line.mustBeNew ? 0 : pieces.away),
    };
  });
}

function piecesOfLine(line: Sums): Pieces {
  const newInBag = Math.min(Math.max(0, line.inBag), line.fresh.unused);
  const old = Math.max(0, line.inBag - newInBag);
  const mustRenew = line.mustBeNew ? old : 0;
  // The damaged ones are the first to be scrapped; which of alike pieces is damaged is known to the hand, not to the books.
  const damaged = line.mustBeNew ? 0 : Math.min(old, Math.max(0, line.damagedMarks - line.scrapped));
  return {
    out: line.out,
    got: line.got,
    inBag: line.inBag,
    away: line.away,
    backIn: line.backIn,
    scrapped: line.scrapped,
    lost: line.lost,
    unknown: line.unknown,
    toStock: line.toStock,
    newInBag,
    mustRenew,
    damaged,
    usable: line.inBag - mustRenew - damaged,
  };
}

/**
 * How many pieces left the holes of each line. A hole that takes another size since its repair was emptied of the
 * old size, so what came out beyond the holes of a line is given to lines that have holes to spare.
 */
function emptiedBy(sums: SetSums, asking: readonly Sums[]): Map<Sums, number> {
  const main = asking.filter((line) => line.main);
  const emptied = new Map(asking.map((line) => [line, line.outOfHoles]));
  const first = main[0] ?? asking[0];
  if (!first) return emptied;
  emptied.set(first, (emptied.get(first) ?? 0) + sums.strayOut);
  for (const from of main) {
    for (const to of main) {
      const over = (emptied.get(from) ?? 0) - from.fitted;
      const room = to.fitted - (emptied.get(to) ?? 0);
      const shift = Math.min(over, room);
      if (shift <= 0) continue;
      emptied.set(from, (emptied.get(from) ?? 0) - shift);
      emptied.set(to, (emptied.get(to) ?? 0) + shift);
    }
  }
  return emptied;
}

/** Substitutes went into holes without a number: they fill the first holes of the set that are still open. */
function fillStrays(
  sums: SetSums,
  asking: readonly Sums[],
  emptied: ReadonlyMap<Sums, number>,
): Map<Sums, number> {
  const strays = new Map<Sums, number>();
  let left = sums.strayIn;
  for (const line of [...asking.filter((l) => l.main), ...asking.filter((l) => !l.main)]) {
    if (left <= 0) break;
    const take = Math.min(left, holesOf(line, emptied.get(line) ?? 0, 0, true).toFill ?? 0);
    strays.set(line, take);
    left -= take;
  }
  return strays;
}

function holesOf(line: Sums, outOfHoles: number, strays: number, known: boolean): Holes {
  const open = line.fitted - line.fittedBlocked;
  const within = Math.min(outOfHoles + line.fittedCleared, line.fitted);
  const emptied = Math.max(0, Math.min(within, open)) + Math.max(0, outOfHoles - line.fitted);
  // Holes that still hold their piece are the ones left out or left alone, as long as nobody says otherwise.
  const stillIn = open - Math.min(emptied, open);
  const leftOut = line.newLeft + Math.max(0, line.fittedLeft - stillIn);
  const filled = line.intoHoles + strays;
  const toFill = Math.max(0, emptied + line.newHoles - filled - leftOut);
  return {
    holes: known ? line.holes : null,
    emptied,
    newHoles: line.newHoles,
    filled,
    leftOut,
    blocked: line.blocked,
    foundEmpty: line.foundEmpty,
    slackened: Math.max(0, line.slackened - (line.fitted === 0 ? Math.max(0, outOfHoles) : 0)),
    toFill: known ? toFill : null,
    toFillNew: known && line.mustBeNew ? toFill : 0,
  };
}

/**
 * Short, left over and spare. New pieces are kept for the holes that only a new one will do.
 * `awayFit`: pieces that are away and may go back when they return.
 */
function verdict(pieces: Pieces, holes: Holes, awayFit: number): Verdict {
  const { toFill } = holes;
  if (toFill === null) return { short: null, toGet: null, leftOver: null, spare: 0 };
  const shortNew = holes.toFillNew - pieces.newInBag;
  return {
    short: Math.max(0, toFill - pieces.usable, shortNew),
    toGet: Math.max(0, toFill - pieces.usable - awayFit, shortNew),
    // A blocked hole keeps its piece waiting: it is not left over, the repair will want it.
    leftOver: toFill === 0 ? Math.max(0, pieces.usable - pieces.newInBag - holes.blocked) : 0,
    spare: Math.min(pieces.newInBag, Math.max(0, pieces.usable - toFill - holes.blocked)),
  };
}

/**
 * The count over pools: lines whose pool keys are equal and known are added up. Never pooled: own-place sets, fitted
 * bolts, sets whose count was not recorded. A piece that went into another set's hole is right here and only here.
 */
export function poolLines(state: JobState, lines: readonly CountLine[] = countLines(state)): PoolLine[] {
  const keys = new Map(state.spec.map((spec) => [spec.id, poolKeyOf(spec)]));
  const keyOf = (line: CountLine): string | null =>
    line.ownPlace || !line.countKnown || line.specId === null ? null : (keys.get(line.specId) ?? null);
  let alone = 0;
  const groups = groupBy(lines, (line) => {
    const key = keyOf(line);
    // A line that may not be pooled still stands together with pieces of its own set and specification only.
    alone += 1;
    return key === null ? `alone ${alone}` : `pool ${key}`;
  });
  return [...groups.values()].map((members) => poolOf(keyOf(members[0] as CountLine), members));
}

/** Below 0 where another set's hole was filled out of this one without being named: the pool evens it out. */
const openHoles = (line: Holes): number => line.emptied + line.newHoles - line.filled - line.leftOut;

function poolOf(poolKey: string | null, lines: readonly CountLine[]): PoolLine {
  const sum = (of: (line: CountLine) => number) => lines.reduce((total, line) => total + of(line), 0);
  const known = lines.every((line) => line.countKnown);
  const pieces: Pieces = {
    out: sum((l) => l.out),
    got: sum((l) => l.got),
    inBag: sum((l) => l.inBag),
    away: sum((l) => l.away),
    backIn: sum((l) => l.backIn),
    scrapped: sum((l) => l.scrapped),
    lost: sum((l) => l.lost),
    unknown: sum((l) => l.unknown),
    toStock: sum((l) => l.toStock),
    newInBag: sum((l) => l.newInBag),
    mustRenew: sum((l) => l.mustRenew),
    damaged: sum((l) => l.damaged),
    usable: sum((l) => l.usable),
  };
  const holes: Holes = {
    holes: known ? sum((l) => l.holes ?? 0) : null,
    emptied: sum((l) => l.emptied),
    newHoles: sum((l) => l.newHoles),
    filled: sum((l) => l.filled),
    leftOut: sum((l) => l.leftOut),
    blocked: sum((l) => l.blocked),
    foundEmpty: sum((l) => l.foundEmpty),
    slackened: sum((l) => l.slackened),
    toFill: known ? Math.max(0, sum(openHoles)) : null,
    toFillNew: known
      ? Math.max(
          0,
          sum((l) => (l.mustBeNew ? openHoles(l) : 0)),
        )
      : 0,
  };
  return {
    poolKey,
    specId: lines[0]?.specId ?? null,
    countKnown: known,
    lines,
    ...pieces,
    ...holes,
    ...verdict(
      pieces,
      holes,
      sum((l) => (l.mustBeNew ? 0 : l.away)),
    ),
  };
}
