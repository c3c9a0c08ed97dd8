import type { JobState, Row } from './tables.ts';

/**
 * What the one action of a removal says that only plans for something to come off a second time. The action names the
 * thing: a removal that is back, a shared hole, an energy to be made safe again, a fluid to be drained again. So the plan
 * is kept in the tables that plans are kept in, and the thing keeps one history.
 */
export const OFF_AGAIN = 'comes off again';

const NONE: ReadonlyMap<string, string> = new Map();

/** By removal: the thing that it plans to come off again, whatever became of the plan. */
export function againPlans(state: Pick<JobState, 'action'>): ReadonlyMap<string, string> {
  let found: Map<string, string> | null = null;
  for (const { what, thingId, removalId } of state.action)
    if (what === OFF_AGAIN && thingId !== null) (found ??= new Map()).set(removalId, thingId);
  return found ?? NONE;
}

/** A removal that only plans for something to come off again, and the thing. */
export interface AgainPlan {
  readonly removal: Row<'removal'>;
  readonly thingId: string;
}

/** What is planned to come off again and is not off yet, in the order of taking off. */
export function plannedAgain(state: Pick<JobState, 'action' | 'removal'>): AgainPlan[] {
  const plans = againPlans(state);
  if (plans.size === 0) return [];
  return state.removal
    .flatMap((removal) => {
      const thingId = removal.phase === 'planned' ? plans.get(removal.id) : undefined;
      return thingId === undefined ? [] : [{ removal, thingId }];
    })
    .sort((a, b) => (a.removal.ord < b.removal.ord ? -1 : 1));
}
