import { ok, type Result, refuse } from '../model/result.ts';
import type { Decision } from './frame.ts';
import { addHoles } from './pieces.ts';

/**
 * Nobody said how many came out of a set: the first count of its bag says it. `over` is what was counted beyond the
 * books. Refused where several sets in the bag are unknown, since the count cannot tell them apart; ok(0) says how
 * many are left over where nothing was unknown.
 */
export function learnCount(decision: Decision, stowId: string, over: number): Result<number> {
  const unknown = decision.state.fset.filter(
    (set) => set.stowId === stowId && set.how === 'out' && !set.countKnown,
  );
  const [set, other] = unknown;
  if (set === undefined || over <= 0) return ok(over);
  if (other !== undefined)
    return refuse(
      'refused',
      `Expected one set in this bag that nobody counted, got ${unknown.length}. Say at the bench how many belong to each, then count.`,
    );
  addHoles(decision, set, over);
  decision.writer.put('fset', { ...set, countKnown: true });
  return ok(0);
}
