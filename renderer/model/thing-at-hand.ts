import { formatTorque } from '../../core/fastening/index.ts';
import type { HoleData } from '../screens/putback/types.ts';
import { putback as say } from '../texts/putback.ts';
import type { Markable } from './marks.ts';
import type { PlanStep } from './putback.ts';

const options = (states: Readonly<Record<string, string>>) =>
  Object.entries(states).map(([value, label]) => ({ value, label }));

/** A single hole, part, connection or temporary of a step, opened by its mark; null where it has no state of its own. */
export function thingAtHand(
  step: PlanStep,
  things: ReadonlyMap<string, Markable>,
  id: string,
  reading: string,
): HoleData | null {
  for (const set of step.fasteners)
    for (const hole of set.holes)
      if (hole.positionId === id)
        return {
          id,
          name: set.name === '' ? say.holeName(hole.n) : say.holeOf(set.name, hole.n),
          state: hole.mark === 'later' ? 'started' : hole.mark,
          options: options(say.holeStates),
          reading,
          refused: null,
          reached: hole.reachedNm === null ? '' : say.reached(formatTorque(hole.reachedNm)),
        };
  const thing = things.get(id);
  if (!thing) return null;
  const base = { id, name: thing.name, reading: null, refused: null, reached: '' };
  switch (thing.kind) {
    case 'part':
      return {
        ...base,
        state: thing.state === 'tightened' ? 'fitted' : 'out',
        options: options(say.partStates),
      };
    case 'connection':
      return {
        ...base,
        state: thing.state === 'tightened' ? 'joined' : 'out',
        options: options(say.connectionStates),
      };
    case 'temporary':
      return {
        ...base,
        state: thing.state === 'out' ? 'taken out' : 'in',
        options: options(say.temporaryStates),
      };
    default:
      return null;
  }
}
