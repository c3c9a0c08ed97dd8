import { blank } from '../model/blank.ts';
import { ok, refuse } from '../model/result.ts';
import type { Row } from '../model/tables.ts';
import { poolKeyOf } from '../tally/index.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply, rowIn } from './frame.ts';
import { book, bookOut, holesOf, nextBag, stowFor, stowOf } from './pieces.ts';

type Said = Reply<{ said: string }>;

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
    return ok({ said: `Out, into ${stow.kind} ${stow.label}.` });
  });
}

/** How many of a set's pieces (of these holes, or all) lie in a stow by the books, per specification. */
function inStow(decision: Decision, setId: string, stowId: string | null, holes: ReadonlySet<string> | null) {
  const sums = new Map<
    string,
    { qty: number; fresh: boolean; positionId: string | null; specId: string | null }
  >();
  for (const move of decision.state.move) {
    if (move.homeSetId !== setId) continue;
    if (holes && (move.positionId === null || !holes.has(move.positionId))) continue;
    const key = `${move.specId ?? ''}/${move.fresh}/${move.positionId ?? ''}`;
    const sum = sums.get(key) ?? {
      qty: 0,
      fresh: move.fresh,
      positionId: move.positionId,
      specId: move.specId,
    };
    if (move.dst === 'stow' && move.dstStowId === stowId) sum.qty += move.qty;
    if (move.src === 'stow' && move.srcStowId === stowId) sum.qty -= move.qty;
    sums.set(key, sum);
  }
  return [...sums.values()].filter((sum) => sum.qty > 0);
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
    const some = input.positionIds.length > 0;
    const chosen = new Set(input.positionIds);
    const moves: { from: string | null; holes: ReadonlySet<string> | null }[] = [];
    if (some) {
      for (const hole of holesOf(decision, set.id)) {
        if (!chosen.delete(hole.id)) continue;
        moves.push({ from: stowOf(hole, set), holes: new Set([hole.id]) });
        decision.writer.put('position', { ...hole, stowId: stow.id });
      }
      if (chosen.size > 0) return refuse('not-found', 'Expected holes of this set, got one that is not.');
    } else {
      moves.push({ from: set.stowId, holes: null });
      decision.writer.put('fset', { ...set, stowId: stow.id });
    }
    for (const { from, holes } of moves)
      if (from !== stow.id)
        for (const lot of inStow(decision, set.id, from, holes))
          book(decision, {
            ...lot,
            src: 'stow',
            dst: 'stow',
            cause: 'moved',
            homeSetId: set.id,
            srcStowId: from,
            dstStowId: stow.id,
          });
    return ok({ said: `In ${stow.kind} ${stow.label}.` });
  });
}

/** A length by hole; the hole gets a specification of its own, and what is booked for it follows. */
export function setLengths(
  context: Context,
  input: JobInput & { setId: string; holes: { n: number; lengthUm: number }[] },
): Said {
  return inJob(context, 'set.lengths', input, (decision) => {
    const found = rowIn(decision, 'fset', input.setId, 'fastener set');
    if (!found.ok) return found;
    const base = decision.writer.get('spec', found.value.specId) as Row<'spec'>;
    const holes = new Map(holesOf(decision, input.setId).map((hole) => [hole.n, hole]));
    const made = new Map<number, string>();
    for (const { n, lengthUm } of input.holes) {
      const hole = holes.get(n);
      if (!hole) return refuse('input', `Expected a hole from 1 to ${holes.size} of this set, got ${n}.`);
      let specId = lengthUm === base.lengthUm ? base.id : made.get(lengthUm);
      if (specId === undefined) {
        const own = { ...base, id: decision.newId(), lengthUm };
        decision.writer.put('spec', { ...own, poolKey: poolKeyOf(own) });
        specId = own.id;
        made.set(lengthUm, specId);
      }
      decision.writer.put('position', { ...hole, specId: specId === base.id ? null : specId });
      for (const move of decision.state.move)
        if (move.positionId === hole.id && move.specId === (hole.specId ?? base.id))
          decision.writer.put('move', { ...move, specId });
    }
    return ok({ said: `${input.holes.length} lengths kept.` });
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
    const more: Row<'position'>[] = [];
    for (let n = (holes.at(-1)?.n ?? 0) + 1; holes.length + more.length < input.count; n += 1)
      more.push(blank('position', decision.newId(), decision.jobId, { setId: set.id, n }));
    for (const hole of more) decision.writer.put('position', hole);
    if (set.how === 'out') bookOut(decision, set, more);
    return ok({ said: `${input.count} holes.` });
  });
}
