import { ok, refuse } from '../model/result.ts';
import type { Row } from '../model/tables.ts';
import { poolKeyOf } from '../tally/index.ts';
import { newlyAlike } from './alike.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply, rowIn } from './frame.ts';
import { lotsOf } from './counts.ts';
import { addHoles, book, bookOut, holesOf, nextBag, piecesPerHole, stowFor, stowOf } from './pieces.ts';

type Said = Reply<{ said: string }>;

/** What was done, and what lies with a look-alike since. */
const withAlike = (decision: Decision, said: string): string => `${said} ${newlyAlike(decision)}`.trim();

/** Slackened so far, now out: its pieces come out of their holes into a bag. */
export function setTakeOut(
  context: Context,
  input: JobInput & { setId: string; stowId: string | null },
): Said {
  return inJob(context, 'set.takeOut', input, (decision) => {
    const found = rowIn(decision, 'fset', input.setId, 'fastener set');
    if (!found.ok) return found;
    if (found.value.how === 'out')
      return refuse('refused', 'Expected a set that is only slackened; this one is out already.');
    const stow = input.stowId === null ? nextBag(decision) : decision.writer.get('stow', input.stowId);
    if (!stow) return refuse('not-found', `Expected a bag of this workshop, got ${String(input.stowId)}.`);
    const set = { ...found.value, how: 'out' as const, stowId: stow.id };
    decision.writer.put('fset', set);
    bookOut(decision, set, holesOf(decision, set.id));
    return ok({ said: withAlike(decision, `Out, into ${stow.kind} ${stow.label}.`) });
  });
}

/** Books a set's pieces from one bag to another: all of them, or what belongs in one hole. No more than lies there. */
function moveLots(
  decision: Decision,
  set: Row<'fset'>,
  from: string | null,
  to: string,
  hole: Row<'position'> | null,
): void {
  const lots = lotsOf(decision, (move) => move.homeSetId === set.id).filter((lot) => lot.srcStowId === from);
  const move = (lot: (typeof lots)[number], qty: number) =>
    book(decision, { ...lot, qty, src: 'stow', dst: 'stow', cause: 'moved', dstStowId: to });
  if (hole === null) {
    for (const lot of lots) move(lot, lot.qty);
    return;
  }
  for (const piece of piecesPerHole(decision, set, hole)) {
    const lot = lots.find((one) => one.specId === piece.specId);
    if (lot) move(lot, Math.min(lot.qty, piece.qty));
  }
}

/** Another bag for a set, or for some of its holes; what lies in the old bag moves with it. */
export function setStow(
  context: Context,
  input: JobInput & { setId: string; positionIds: string[]; kind: Row<'stow'>['kind']; label: string },
): Said {
  return inJob(context, 'set.stow', input, (decision) => {
    const found = rowIn(decision, 'fset', input.setId, 'fastener set');
    if (!found.ok) return found;
    const set = found.value;
    const stow = stowFor(decision, input.kind, input.label);
    const chosen = new Set(input.positionIds);
    if (chosen.size === 0) {
      decision.writer.put('fset', { ...set, stowId: stow.id });
      if (set.stowId !== stow.id) moveLots(decision, set, set.stowId, stow.id, null);
      return ok({ said: withAlike(decision, `In ${stow.kind} ${stow.label}.`) });
    }
    for (const hole of holesOf(decision, set.id)) {
      if (!chosen.delete(hole.id)) continue;
      const from = stowOf(hole, set);
      decision.writer.put('position', { ...hole, stowId: stow.id });
      if (from !== stow.id) moveLots(decision, set, from, stow.id, hole);
    }
    if (chosen.size > 0) return refuse('not-found', 'Expected holes of this set, got one that is not.');
    return ok({ said: withAlike(decision, `In ${stow.kind} ${stow.label}.`) });
  });
}

/** Gives a hole its length: the set's own specification where it agrees, else one of the length. */
function specForLength(decision: Decision, base: Row<'spec'>, made: Map<number, string>, lengthUm: number) {
  if (lengthUm === base.lengthUm) return base.id;
  const known = made.get(lengthUm);
  if (known !== undefined) return known;
  const own = { ...base, id: decision.newId(), lengthUm };
  decision.writer.put('spec', { ...own, poolKey: poolKeyOf(own) });
  made.set(lengthUm, own.id);
  return own.id;
}

/** The hole's piece is of this specification, and so is all that was booked for it. */
function respec(decision: Decision, hole: Row<'position'>, base: Row<'spec'>, specId: string): void {
  const before = hole.specId ?? base.id;
  decision.writer.put('position', { ...hole, specId: specId === base.id ? null : specId });
  for (const move of decision.state.move)
    if (move.positionId === hole.id && move.specId === before)
      decision.writer.put('move', { ...move, specId });
}

/**
 * Lengths of a set: of all its holes, then by hole; where all agree, the set itself has the length. A hole that differs
 * gets a specification of its own, and what is booked for it follows.
 */
export function setLengths(
  context: Context,
  input: JobInput & {
    setId: string;
    allUm?: number | null | undefined;
    holes: { n: number; lengthUm: number }[];
  },
): Said {
  return inJob(context, 'set.lengths', input, (decision) => {
    const found = rowIn(decision, 'fset', input.setId, 'fastener set');
    if (!found.ok) return found;
    const known = decision.writer.get('spec', found.value.specId) as Row<'spec'>;
    const holes = holesOf(decision, input.setId);
    const lengthOf = (hole: Row<'position'>): number | null =>
      hole.specId === null ? known.lengthUm : (decision.writer.get('spec', hole.specId)?.lengthUm ?? null);
    const wanted = new Map(
      holes.map((hole) => [hole.n, input.allUm === undefined ? lengthOf(hole) : input.allUm]),
    );
    for (const { n, lengthUm } of input.holes) {
      if (!wanted.has(n))
        return refuse('input', `Expected a hole from 1 to ${holes.length} of this set, got ${n}.`);
      wanted.set(n, lengthUm);
    }
    const lengths = new Set(wanted.values());
    const [only] = lengths;
    const all = lengths.size === 1 ? only : input.allUm;
    const base = all === undefined ? known : { ...known, lengthUm: all };
    if (base !== known) decision.writer.put('spec', { ...base, poolKey: poolKeyOf(base) });
    const made = new Map<number, string>();
    for (const hole of holes) {
      const lengthUm = wanted.get(hole.n) ?? null;
      const same = hole.specId !== null && lengthOf(hole) === lengthUm && lengthUm !== base.lengthUm;
      const specId =
        lengthUm === null ? base.id : same ? hole.specId : specForLength(decision, base, made, lengthUm);
      respec(decision, hole, base, specId ?? base.id);
    }
    return ok({ said: withAlike(decision, 'Kept.') });
  });
}

/** More or fewer holes than first noted. A hole that something hangs on (marker, deed, part) is not dropped. */
export function setCount(context: Context, input: JobInput & { setId: string; count: number }): Said {
  return inJob(context, 'set.count', input, (decision) => {
    const found = rowIn(decision, 'fset', input.setId, 'fastener set');
    if (!found.ok) return found;
    const set = { ...found.value, countKnown: true };
    decision.writer.put('fset', set);
    const holes = holesOf(decision, set.id);
    for (const hole of holes.slice(input.count)) {
      const used = decision.state.deed.some((deed) => deed.thingId === hole.id);
      if (used) return refuse('refused', `Hole ${hole.n} was worked on already; leave it out instead.`);
      for (const move of decision.state.move)
        if (move.positionId === hole.id) decision.writer.remove('move', move.id);
      decision.writer.remove('position', hole.id);
    }
    addHoles(decision, set, input.count - holes.length);
    return ok({ said: `${input.count} holes.` });
  });
}
