import type { JobView } from '../../core/contract/views.ts';
import { formatTorque } from '../../core/fastening/index.ts';
import type { HoleData } from '../screens/putback/types.ts';
import { putback as say } from '../texts/putback.ts';
import type { Markable } from './marks.ts';
import { isPushedIn, type PlanStep } from './putback.ts';

const options = (states: Readonly<Record<string, string>>) =>
  Object.entries(states).map(([value, label]) => ({ value, label }));

/** Sets of which new pieces lie ready by the books. */
export function freshInHand(view: JobView): ReadonlySet<string> {
  const ready = new Map<string, number>();
  for (const move of view.state.move) {
    if (!move.fresh || move.homeSetId === null) continue;
    const change = (move.dst === 'stow' ? move.qty : 0) - (move.src === 'stow' ? move.qty : 0);
    ready.set(move.homeSetId, (ready.get(move.homeSetId) ?? 0) + change);
  }
  return new Set([...ready].filter(([, qty]) => qty > 0).map(([setId]) => setId));
}

/** What may be said of a hole; a new piece only while one is in hand. */
const holeOptions = (fresh: boolean) =>
  options(say.holeStates).flatMap((one) =>
    fresh && one.value === 'started' ? [{ value: NEW_ONE, label: say.newOneIn }, one] : [one],
  );

/** What may go wrong with a piece on the way back; not with one of a hole that takes none. */
const brokeOptions = (mark: string) => (mark === 'blocked' ? [] : options(say.brokeStates));

/** The choice that puts a new piece in a hole, in place of an old one where that is in. */
export const NEW_ONE = 'new one';

/** A single hole, part, connection or temporary of a step, opened by its mark; null where it has no state of its own. */
export function thingAtHand(
  step: PlanStep,
  things: ReadonlyMap<string, Markable>,
  id: string,
  reading: string,
  fresh: ReadonlySet<string> = new Set(),
): HoleData | null {
  for (const set of step.fasteners)
    for (const hole of set.holes)
      if (hole.positionId === id)
        return {
          id,
          name: set.name === '' ? say.holeName(hole.n) : say.holeOf(set.name, hole.n),
          state: hole.mark === 'later' ? 'started' : hole.mark,
          options: [
            ...(isPushedIn(step, id) ? options(say.pushedStates) : holeOptions(fresh.has(set.setId))),
            ...brokeOptions(hole.mark),
          ],
          reading: isPushedIn(step, id) ? null : reading,
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
