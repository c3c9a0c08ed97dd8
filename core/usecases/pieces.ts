import { ok, type Result, refuse } from '../model/result.ts';
import { blank } from '../model/blank.ts';
import type { Row } from '../model/tables.ts';
import type { Decision } from './frame.ts';

export type MoveInput = Pick<Row<'move'>, 'qty' | 'src' | 'dst' | 'cause'> &
  Partial<Omit<Row<'move'>, 'id' | 'jobId' | 'at' | 'personId'>>;

/** Books pieces from one account into another. Both sides are in the one row, so the books cannot open. */
export function book(decision: Decision, move: MoveInput): void {
  decision.writer.put('move', {
    id: decision.newId(),
    jobId: decision.jobId,
    specId: null,
    homeSetId: null,
    partId: null,
    positionId: null,
    srcStowId: null,
    dstStowId: null,
    countId: null,
    fresh: false,
    ...move,
    at: decision.at,
    personId: decision.personId,
  });
}

/** The bag with this label that is in use, or a new one. Labels are kept as typed. */
export function stowFor(decision: Decision, kind: Row<'stow'>['kind'], label: string): Row<'stow'> {
  const wanted = label.trim();
  const [known] = decision.writer.list(
    'stow',
    (stow) => !stow.emptied && stow.kind === kind && stow.label.toLowerCase() === wanted.toLowerCase(),
    decision.state.stow,
  );
  if (known) return known;
  const made = blank('stow', decision.newId(), '', { kind, label: wanted });
  decision.writer.put('stow', made);
  return made;
}

/** The next bag by itself: one more than the highest number in use, so that numbers on the bench run on. */
export function nextBag(decision: Decision): Row<'stow'> {
  let highest = 0;
  // The bags of this command count too.
  for (const stow of decision.writer.list('stow', () => true, decision.state.stow))
    if (!stow.emptied && stow.kind === 'bag' && /^\d+$/.test(stow.label))
      highest = Math.max(highest, Number(stow.label));
  return stowFor(decision, 'bag', String(highest + 1));
}

/** The stow of a hole's piece: its own, else its set's. */
export function stowOf(position: Row<'position'>, set: Row<'fset'>): string | null {
  return position.stowId ?? set.stowId;
}

/** What one hole of a set holds: the fastener itself, and the washers, spacers and nuts of its stack. */
export function piecesPerHole(
  decision: Decision,
  set: Row<'fset'>,
  position: Row<'position'>,
): { specId: string; qty: number }[] {
  const main = position.specId ?? set.specId;
  const stack = stackOf(decision, set.id);
  const own = stack.find((item) => item.specId === set.specId);
  const rest = stack
    .filter((item) => item !== own && item.specId !== null)
    .map((item) => ({ specId: item.specId as string, qty: item.qty }));
  return [{ specId: main, qty: own?.qty ?? 1 }, ...rest];
}

function stackOf(decision: Decision, setId: string): Row<'stackItem'>[] {
  return decision.writer.list('stackItem', (item) => item.setId === setId, decision.state.stackItem);
}

/** Books what came out of each fitted hole of a set into the hole's bag. */
export function bookOut(decision: Decision, set: Row<'fset'>, positions: readonly Row<'position'>[]): void {
  for (const position of positions) {
    if (position.found === 'empty' || position.found === 'new hole') continue;
    // A broken-off piece is still in its hole: nothing came out.
    if (position.fate === 'blocked' && position.condition !== '') continue;
    for (const piece of piecesPerHole(decision, set, position))
      book(decision, {
        qty: piece.qty,
        src: 'hole',
        dst: 'stow',
        cause: 'came off',
        specId: piece.specId,
        homeSetId: set.id,
        positionId: position.id,
        dstStowId: stowOf(position, set),
      });
  }
}

/**
 * A washer, spacer or nut that is noted after its set came off: it came out of the same holes, into the same bags.
 * Refused once a hole was worked on on the way back, since nobody knows then what went in with its fastener.
 */
export function stackOut(decision: Decision, set: Row<'fset'>, item: Row<'stackItem'>): Result<null> {
  if (item.specId === null || item.specId === set.specId) return ok(null);
  for (const hole of holesOf(decision, set.id)) {
    if (decision.state.deed.some((deed) => deed.thingId === hole.id))
      return refuse(
        'refused',
        `Expected a set that was not worked on on the way back, but hole ${hole.n} was. Take it off again first.`,
      );
    if (hole.found === 'empty' || hole.found === 'new hole') continue;
    book(decision, {
      qty: item.qty,
      src: 'hole',
      dst: 'stow',
      cause: 'came off',
      specId: item.specId,
      homeSetId: set.id,
      positionId: hole.id,
      dstStowId: stowOf(hole, set),
    });
  }
  return ok(null);
}

/** The rows of a set's holes as this command sees them, by number. */
export function holesOf(decision: Decision, setId: string): Row<'position'>[] {
  return decision.writer
    .list('position', (position) => position.setId === setId, decision.state.position)
    .sort((a, b) => a.n - b.n);
}

/** So many holes more, after the last one; what came out of them is booked. */
export function addHoles(decision: Decision, set: Row<'fset'>, count: number): void {
  const last = holesOf(decision, set.id).at(-1)?.n ?? 0;
  const more = Array.from({ length: Math.max(0, count) }, (_, i) =>
    blank('position', decision.newId(), decision.jobId, { setId: set.id, n: last + 1 + i }),
  );
  for (const hole of more) decision.writer.put('position', hole);
  if (set.how === 'out') bookOut(decision, set, more);
}

/** The thing as set or part with how many pieces it has, for bookings that name one. */
export function pieceHome(
  decision: Decision,
  thingId: string,
): Result<{ kind: 'set'; set: Row<'fset'> } | { kind: 'part'; part: Row<'part'> }> {
  const set = decision.writer.get('fset', thingId);
  if (set?.jobId === decision.jobId) return ok({ kind: 'set', set });
  const part = decision.writer.get('part', thingId);
  if (part?.jobId === decision.jobId) return ok({ kind: 'part', part });
  const position = decision.writer.get('position', thingId);
  const home = position ? decision.writer.get('fset', position.setId) : null;
  if (home && home.jobId === decision.jobId) return ok({ kind: 'set', set: home });
  return refuse('not-found', `Expected a fastener set, a hole or a part of this job, got ${thingId}.`);
}

/** A part leaves its place: one booking for all of its pieces. */
export function bookPartOut(decision: Decision, part: Row<'part'>): void {
  book(decision, {
    qty: part.qty,
    src: 'hole',
    dst: 'stow',
    cause: 'came off',
    partId: part.id,
    dstStowId: part.stowId,
  });
}
