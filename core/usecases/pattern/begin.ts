import { generateKeyBetween } from 'fractional-indexing';
import { blank } from '../../model/blank.ts';
import { againPlans } from '../../model/off-again.ts';
import { ok, refuse } from '../../model/result.ts';
import type { Row } from '../../model/tables.ts';
import { needsBroken } from '../../reinstall/index.ts';
import { cameOffAgain } from '../again.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply, rowIn } from '../frame.ts';
import { logOrder } from '../log/order.ts';
import { bookOut, bookPartOut, holesOf, nextBag } from '../pieces.ts';
import { endRemoval } from '../removal-end.ts';
import { differencesOf } from './differences.ts';
import { dropSet, dropUnseen } from './origin.ts';

/** A planned removal begins: what was expected is now off, into the next bag. */
export function beginPlanned(decision: Decision, removal: Row<'removal'>): void {
  const { writer, state } = decision;
  for (const set of writer.list('fset', (one) => one.removalId === removal.id, state.fset)) {
    const holes = holesOf(decision, set.id).map((hole) =>
      hole.found === 'unknown' ? { ...hole, found: 'fitted' as const } : hole,
    );
    for (const hole of holes) writer.put('position', hole);
    if (set.how !== 'out') continue;
    const stowId = set.stowId ?? nextBag(decision).id;
    const kept = { ...set, stowId };
    writer.put('fset', kept);
    bookOut(decision, kept, holes);
  }
  for (const part of state.part)
    if (part.removalId === removal.id && part.how === 'off' && part.qty > 0) bookPartOut(decision, part);
}

/** Ends what is under way; what was expected of it and never seen goes. */
export function endUnderWay(decision: Decision): void {
  for (const removal of decision.state.removal) {
    if (removal.phase !== 'under way') continue;
    endRemoval(decision, removal);
    dropUnseen(decision, removal.id);
  }
}

/**
 * Where a removal stands that is begun now: after the last one that was begun, so that the log keeps the order in which
 * things really came off, and before what is only planned.
 */
export function ordOfNext(decision: Decision, exceptId: string | null = null): string {
  const order = logOrder(decision.state.removal).filter((removal) => removal.id !== exceptId);
  const at = order.findLastIndex((removal) => removal.phase !== 'planned');
  return generateKeyBetween(order[at]?.ord ?? null, order[at + 1]?.ord ?? null);
}

/** A planned removal becomes the one under way, at its place in the log; a planned need that this turns round goes. */
export function startPlanned(decision: Decision, removal: Row<'removal'>): Row<'removal'> {
  const { writer, state } = decision;
  const ord = ordOfNext(decision, removal.id);
  const started: Row<'removal'> = {
    ...removal,
    ord,
    phase: 'under way',
    startedAt: decision.at,
    personId: decision.personId,
  };
  const others = state.removal.filter((one) => one.id !== removal.id);
  const order = logOrder([...others, started]).map((one) => one.id);
  for (const { removalId, needsId } of needsBroken(state, order))
    for (const need of state.need)
      if (need.removalId === removalId && need.needsId === needsId) writer.remove('need', need.id);
  endUnderWay(decision);
  writer.put('removal', started);
  return started;
}

/** So many were found where others were expected: fewer leave their last holes empty as found, more are more holes. */
function recount(decision: Decision, set: Row<'fset'>, count: number): void {
  const { writer, jobId } = decision;
  const holes = holesOf(decision, set.id);
  if (count === 0) {
    dropSet(decision, set);
    return;
  }
  holes.forEach((hole, i) => {
    if (i >= count) writer.put('position', { ...hole, found: 'empty' });
  });
  for (let n = (holes.at(-1)?.n ?? 0) + 1, more = holes.length; more < count; n += 1, more += 1)
    writer.put(
      'position',
      blank('position', decision.newId(), jobId, { setId: set.id, n, found: 'unknown' }),
    );
  writer.put('fset', { ...set, countKnown: true });
}

/**
 * A planned removal is off, with what was found of each set; a set not named was found as expected. Answers what differs
 * from the earlier job.
 */
export function plannedBegin(
  context: Context,
  input: JobInput & { removalId: string; found: { setId: string; count: number }[] },
): Reply<{ said: string; differences: string[] }> {
  return inJob(context, 'pattern.begin', input, (decision) => {
    const row = rowIn(decision, 'removal', input.removalId, 'removal');
    if (!row.ok) return row;
    if (row.value.phase !== 'planned')
      return refuse('refused', 'Expected a removal that is only planned; this one has begun.');
    const again = againPlans(decision.state).get(row.value.id);
    if (again !== undefined) {
      const off = cameOffAgain(decision, again, row.value.note);
      return off.ok ? ok({ said: off.value.said, differences: [] }) : off;
    }
    for (const { setId, count } of input.found) {
      const set = rowIn(decision, 'fset', setId, 'fastener set');
      if (!set.ok) return set;
      if (set.value.removalId !== input.removalId)
        return refuse('input', 'Expected sets of this removal, got one of another.');
      const { length } = holesOf(decision, setId);
      if (count !== length) recount(decision, set.value, count);
    }
    const started = startPlanned(decision, row.value);
    beginPlanned(decision, started);
    const differences = differencesOf(context, decision, started.id);
    const title = started.title === '' ? 'It' : started.title;
    return ok({ said: [`${title} is off.`, ...differences].join(' '), differences });
  });
}
