import type { Row } from '../model/tables.ts';
import { lastDeed, lookup } from './lookup.ts';
import type { Lookup } from './lookup.ts';
import type { JobState } from '../model/tables.ts';

/** One kind of piece that a hole takes: the bolt itself, or a washer, spacer, nut of its stack. */
export interface HolePiece {
  readonly specId: string | null;
  readonly what: string;
  readonly qty: number;
  /** The fastener itself, whose length may differ from hole to hole. */
  readonly main: boolean;
}

const FASTENERS = /\b(bolt|screw|stud)\b/i;

/**
 * What one hole of a set takes, the fastener itself first. `position` null: a hole without a number of its own.
 * Stack items of one specification are added up; the item that is the fastener itself is the one with the set's
 * specification, else the first bolt, screw or stud; a stack that names none has it besides.
 */
export function holePieces(
  look: Lookup,
  set: Row<'fset'>,
  position: Row<'position'> | null = null,
): HolePiece[] {
  const stack = look.stackOf.get(set.id) ?? [];
  const own =
    stack.find((item) => item.specId === set.specId) ??
    stack.find((item) => item.specId === null && FASTENERS.test(item.what));
  const mainSpec = position?.specId ?? set.specId;
  const kind = look.specs.get(mainSpec)?.kind ?? 'fastener';
  const pieces = new Map<string | null, HolePiece>();
  pieces.set(mainSpec, { specId: mainSpec, what: own?.what ?? kind, qty: own?.qty ?? 1, main: true });
  for (const item of stack) {
    if (item === own) continue;
    const had = pieces.get(item.specId);
    pieces.set(
      item.specId,
      had
        ? { ...had, qty: had.qty + item.qty }
        : { specId: item.specId, what: item.what, qty: item.qty, main: false },
    );
  }
  return [...pieces.values()];
}

/** What one numbered hole takes. An id that is no position of the job gives nothing. */
export function piecesOf(state: JobState, positionId: string): HolePiece[] {
  const look = lookup(state);
  const position = look.positions.get(positionId);
  const set = position && look.sets.get(position.setId);
  return position && set ? holePieces(look, set, position) : [];
}

/** Where a hole stands. */
export interface HoleState {
  readonly filled: boolean;
  readonly tight: boolean;
  readonly leftOut: boolean;
  /** Broken stud, bad thread; a repair recorded since lifts it. */
  readonly blocked: boolean;
  /** Was blocked by what was left in it, and is clear now: it wants a piece though none may have come out. */
  readonly cleared: boolean;
  /** Nothing was in it as found, so nothing came off: "missing as found" is not lost. */
  readonly cameEmpty: boolean;
  /** Found empty, and nobody has said yet that it is to be filled. */
  readonly stayEmpty: boolean;
  readonly damagedPiece: boolean;
}

export function holeState(look: Lookup, position: Row<'position'>): HoleState {
  const last = lastDeed(look, position.id, position.setId)?.what;
  const tight = last === 'tightened' || last === 'paint-checked' || last === 'done';
  const filled = tight || last === 'started' || last === 'fitted';
  const repaired = (look.deedsOf.get(position.id) ?? []).some((deed) => deed.what === 'repaired');
  const leftOut = !filled && (last === 'left out' || position.fate === 'leave out');
  const chosen = position.fate === 'fill' && position.fateWhy !== '';
  const wanted = chosen || position.fate === 'blocked' || look.wanted.has(position.id);
  return {
    filled,
    tight,
    leftOut,
    blocked: position.fate === 'blocked' && !repaired,
    cleared: repaired || (chosen && BROKEN_OFF.test(position.condition)),
    cameEmpty: position.found === 'empty' || position.found === 'new hole',
    stayEmpty: position.found === 'empty' && !filled && (leftOut || !wanted),
    damagedPiece: position.found !== 'empty' && damagesPiece(position.condition),
  };
}

const BROKEN_OFF = /\b(snapped|broken|broke|sheared)\b/i;

/** Harm that takes a fastener out of use. Rust and dirt do not; a worn or rusted one is the user's judgement. */
const HARM =
  /\b(stripped|stretched|cross[- ]?threaded|bent|cracked|snapped|broken|broke|sheared|rounded|damaged|necked|perished|burnt)\b/i;
/** Words that say that the hole is meant and not the piece. */
const OF_THE_HOLE = /\b(hole|casting|insert|tapped|female|housing|block)\b/i;

/** Whether a condition, as written beside a hole, means that the piece itself may not go back. Common practice, no source. */
export function damagesPiece(condition: string): boolean {
  return condition
    .split(/[,;.\n]/)
    .some((clause) => HARM.test(clause) && !OF_THE_HOLE.test(clause) && !/\bnot\b|\bno\b/i.test(clause));
}
