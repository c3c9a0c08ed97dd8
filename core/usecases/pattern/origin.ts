import { v5 } from 'uuid';
import type { Row } from '../../model/tables.ts';
import type { Decision } from '../frame.ts';
import { bookPartOut } from '../pieces.ts';

/**
 * The id that a row of the earlier job has in the job that follows it. Worked out and not stored, so that what is
 * expected is always read from the earlier job itself.
 */
export function patternId(jobId: string, sourceId: string): string {
  return v5(sourceId, jobId);
}

/** Rows that came from an earlier job carry its kind of id (version 5); all others are made of time (version 7). */
function isFromPattern(id: string): boolean {
  return id[14] === '5';
}

/** A set that an earlier job lets expect and that nobody has seen on this machine yet. */
export function isUnseen(decision: Decision, set: Row<'fset'>): boolean {
  if (!isFromPattern(set.id) || set.typed !== '') return false;
  const holes = decision.writer.list('position', (one) => one.setId === set.id, decision.state.position);
  return holes.every((hole) => hole.found === 'unknown');
}

/** A part that an earlier job lets expect and that nobody has seen on this machine yet. */
export function isUnseenPart(decision: Decision, part: Row<'part'>): boolean {
  if (!isFromPattern(part.id) || part.typed !== '' || part.how !== 'off') return false;
  return decision.writer.list('move', (move) => move.partId === part.id, decision.state.move).length === 0;
}

/** Takes an expected set out of the log again: this machine has none. */
export function dropSet(decision: Decision, set: Row<'fset'>): void {
  const { writer, state } = decision;
  for (const hole of writer.list('position', (one) => one.setId === set.id, state.position)) {
    for (const holds of writer.list('holds', (one) => one.positionId === hole.id, state.holds))
      writer.remove('holds', holds.id);
    writer.remove('position', hole.id);
  }
  for (const item of writer.list('stackItem', (one) => one.setId === set.id, state.stackItem))
    writer.remove('stackItem', item.id);
  for (const one of writer.list('consumable', (row) => row.thingId === set.id, state.consumable))
    writer.remove('consumable', one.id);
  writer.remove('fset', set.id);
}

/**
 * A removal ends: what was expected of it and never seen is no part of the record. It is still said as a difference,
 * because what is expected is read from the earlier job.
 */
export function dropUnseen(decision: Decision, removalId: string): void {
  const { writer, state } = decision;
  for (const set of writer.list('fset', (one) => one.removalId === removalId, state.fset))
    if (isUnseen(decision, set)) dropSet(decision, set);
  for (const part of writer.list('part', (one) => one.removalId === removalId, state.part)) {
    if (!isUnseenPart(decision, part)) continue;
    if (isNamed(decision, part.id)) bookPartOut(decision, part);
    else writer.remove('part', part.id);
  }
}

/** Whether another row still names the part: then it must have come off as well. */
function isNamed({ writer, state }: Decision, id: string): boolean {
  return (
    writer.list('part', (one) => one.parentId === id || one.carryToId === id, state.part).length > 0 ||
    writer.list('connection', (one) => one.sealPartId === id, state.connection).length > 0 ||
    writer.list('removal', (one) => one.benchPartId === id, state.removal).length > 0 ||
    writer.list('holds', (one) => one.partId === id, state.holds).length > 0 ||
    writer.list('action', (one) => one.thingId === id, state.action).length > 0 ||
    writer.list('marker', (one) => one.thingId === id, state.marker).length > 0 ||
    writer.list('consumable', (one) => one.thingId === id, state.consumable).length > 0 ||
    writer.list('backOrder', (one) => one.beforeId === id || one.afterId === id, state.backOrder).length > 0
  );
}
