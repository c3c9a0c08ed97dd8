import type { SearchHit } from '../../core/contract/contract.ts';
import type { JobView } from '../../core/contract/views.ts';
import { thingsDone } from '../../core/model/done.ts';

interface HitPlace {
  readonly screen: 'putback' | 'removal';
  readonly stepId?: string;
  readonly removalId?: string;
}

/**
 * Where a job is opened at what was found in it: while it goes back together, or is closed, at the step that the thing
 * belongs to, else at its removal. Null where it belongs to neither.
 */
export function placeOfHit(
  view: JobView,
  { thingId, removalId }: Pick<SearchHit, 'thingId' | 'removalId'>,
): HitPlace | null {
  const { steps, depth } = view.plan;
  if (depth.back > 0 && thingId !== null) {
    const holes = new Set(view.state.position.filter((one) => one.setId === thingId).map((one) => one.id));
    const own = steps.filter((step) => {
      const things = thingsDone(step);
      return things.has(thingId) || [...holes].some((id) => things.has(id));
    });
    // What is held by another part or tightened later has a second step; its own comes first.
    const step =
      own.find((one) => one.removalId === removalId && one.kind === 'S') ??
      own[0] ??
      steps.find((one) => one.removalId === removalId && removalId !== null && one.kind === 'S');
    if (step) return { screen: 'putback', stepId: step.id };
  }
  return removalId === null ? null : { screen: 'removal', removalId };
}
