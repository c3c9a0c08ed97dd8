import type { JobState, Row } from '../model/tables.ts';
import { contentsUntil } from './contents.ts';
import { nameOf } from './describe.ts';
import { homeOf, specOfMove } from './ledger.ts';
import { inOrder, lookup } from './lookup.ts';
import type { Lookup } from './lookup.ts';
import { openingsBetween } from './openings.ts';
import type { Opening } from './openings.ts';

/** Something that a count did not find, or found too many of; open until found or accepted by name. */
export interface Search {
  readonly countingId: string;
  readonly stowId: string | null;
  readonly thingId: string | null;
  /** What is looked for, in words: the bag, the thing, or what somebody named. */
  readonly name: string;
  readonly expected: number;
  readonly counted: number;
  /** Still not found: expected − counted − found since. Below 0: that many too many. */
  readonly missing: number;
  /** What may be missing, as it lay there: sets, specifications, parts. */
  readonly of: readonly {
    readonly setId: string | null;
    readonly specId: string | null;
    readonly partId: string | null;
    readonly qty: number;
  }[];
  readonly openedAt: number;
  readonly lastSeen: LastSeen;
  /** What stood open between the time it was last seen and the count. */
  readonly openings: readonly Opening[];
  /** What to look at, nearest first, as sentences. */
  readonly lookAt: readonly string[];
}

interface LastSeen {
  /** UTC ms; null where nothing was recorded. */
  readonly at: number | null;
  readonly how: 'counted' | 'booked' | 'not recorded';
  readonly sentence: string;
}

/**
 * The searches that are open, oldest first. Only the count's own row ends one ("found", or searched and accepted by
 * name): a replacement that was bought, a later count that agrees, and anything else that is booked leave it open.
 */
export function openSearches(state: JobState): Search[] {
  const look = lookup(state);
  const open = state.counting.filter((row) => row.ended === null && row.counted !== row.expected);
  return inOrder(open).map((row) => searchOf(look, row));
}

/** A tool or key has no row of its own: the first line of its note names it, and the removal is where it was used last. */
function isNamed(look: Lookup, row: Row<'counting'>): boolean {
  return row.stowId === null && (row.thingId === null || look.removals.has(row.thingId));
}

function soughtName(look: Lookup, row: Row<'counting'>): string {
  if (!isNamed(look, row)) return nameOf(look, row.stowId ?? row.thingId);
  return row.note.split('\n')[0]?.trim() || 'Something';
}

function searchOf(look: Lookup, row: Row<'counting'>): Search {
  const booked = look.state.move.filter((move) => move.countId === row.id);
  const found = booked
    .filter((m) => m.src === 'unknown' && m.dst !== 'lost')
    .reduce((sum, m) => sum + m.qty, 0);
  const of = missingPieces(look, row, booked);
  const lastSeen = lastSeenOf(look, row, of);
  const openings = openingsBetween(look, lastSeen.at ?? 0, row.at);
  return {
    countingId: row.id,
    stowId: row.stowId,
    thingId: row.thingId,
    name: soughtName(look, row),
    expected: row.expected,
    counted: row.counted,
    missing: row.expected - row.counted - (row.counted < row.expected ? found : 0),
    of,
    openedAt: row.at,
    lastSeen,
    openings,
    lookAt: lookAt(look, row, lastSeen, openings),
  };
}

/** What the count booked as missing; where it booked nothing, all that should have been there. */
function missingPieces(look: Lookup, row: Row<'counting'>, booked: readonly Row<'move'>[]): Search['of'] {
  const gone = booked.filter((move) => move.dst === 'unknown');
  if (gone.length > 0) {
    return gone.map((move) => ({
      setId: homeOf(look, move),
      specId: specOfMove(look, move),
      partId: move.partId,
      qty: move.qty,
    }));
  }
  if (row.stowId === null) return [];
  return contentsUntil(look, row.at)
    .filter((content) => content.stowId === row.stowId)
    .map(({ setId, specId, partId, qty }) => ({ setId, specId, partId, qty }));
}

function lastSeenOf(look: Lookup, row: Row<'counting'>, of: Search['of']): LastSeen {
  const name = soughtName(look, row);
  const same = (other: Row<'counting'>) =>
    other.id !== row.id &&
    other.counted === other.expected &&
    other.at < row.at &&
    (row.stowId === null
      ? other.thingId === row.thingId && other.stowId === null
      : other.stowId === row.stowId);
  const good = inOrder(look.state.counting.filter(same)).at(-1);
  if (good)
    return { at: good.at, how: 'counted', sentence: `Last counted right: ${good.counted} in ${name}.` };
  // Never counted before: it may have gone from the moment the first of its kind was put there.
  const sets = new Set(of.map((piece) => piece.partId ?? piece.setId));
  if (row.thingId !== null) sets.add(row.thingId);
  const into = look.state.move.filter(
    (move) =>
      move.at <= row.at &&
      move.dst === 'stow' &&
      move.countId === null &&
      (row.stowId === null || move.dstStowId === row.stowId) &&
      sets.has(move.partId ?? homeOf(look, move)),
  );
  const used = isNamed(look, row) ? (look.removals.get(row.thingId ?? '')?.startedAt ?? null) : null;
  if (used !== null)
    return {
      at: used,
      how: 'booked',
      sentence: `Used last, as far as is known, at ${nameOf(look, row.thingId)}.`,
    };
  const first = inOrder(into)[0]?.at ?? temporaryIn(look, row.thingId);
  if (first === null)
    return { at: null, how: 'not recorded', sentence: `When ${name} was last seen is not recorded.` };
  return { at: first, how: 'booked', sentence: `Never counted since it was noted at ${name}.` };
}

/** When a rag, cap, support or tool was put in: its deed, else its removal. */
function temporaryIn(look: Lookup, thingId: string | null): number | null {
  const row = look.state.temporary.find((temporary) => temporary.id === thingId);
  if (!row) return null;
  const put = look.deedsOf.get(row.id)?.findLast((deed) => deed.what === 'put in');
  const removal = row.removalId === null ? undefined : look.removals.get(row.removalId);
  return put?.at ?? removal?.startedAt ?? removal?.endedAt ?? null;
}

function lookAt(
  look: Lookup,
  row: Row<'counting'>,
  seen: LastSeen,
  openings: readonly Opening[],
): readonly string[] {
  const from = seen.at ?? 0;
  const between = look.state.move.filter(
    (move) => move.at >= from && move.at <= row.at && move.countId === null,
  );
  const said: string[] = [];
  if (row.stowId !== null) {
    said.push(`${nameOf(look, row.stowId)}: empty it, its seams and what it stood on.`);
    for (const id of otherStows(between, row.stowId)) said.push(`${nameOf(look, id)}: handled since.`);
  } else if (isNamed(look, row)) said.push('The bench, the tool trolley, pockets, and under the machine.');
  else if (row.thingId !== null)
    said.push(`${nameOf(look, row.thingId)}: where it was put in, and the bench.`);
  const fitted = new Set(between.filter((move) => move.dst === 'hole').map((move) => homeOf(look, move)));
  for (const setId of fitted)
    if (setId !== null) said.push(`${nameOf(look, setId)}: fitted since. Is one of them in there?`);
  for (const opening of openings) said.push(opening.sentence);
  if (row.counted > row.expected) said.push('More than expected: which set or job does it belong to?');
  return said;
}

function otherStows(moves: readonly Row<'move'>[], stowId: string): ReadonlySet<string> {
  const ids = moves.flatMap((move) => [move.srcStowId, move.dstStowId]);
  return new Set(ids.filter((id) => id !== null && id !== stowId) as string[]);
}
