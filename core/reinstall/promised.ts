import type { JobState } from '../model/tables.ts';
import type { PromiseLine } from './answers.ts';

/** The cause of a line on the list to get that is a promise: these pieces are taken from alike sets of the same job. */
export const SERVED_FIRST = 'served first';

/** Sets that the user has served first, in the order in which that was said. */
export function promisesOf(state: JobState): PromiseLine[] {
  return state.want.flatMap((want) =>
    want.cause === SERVED_FIRST && want.state === 'here' && want.thingId !== null
      ? [{ wantId: want.id, setId: want.thingId, qty: want.qty }]
      : [],
  );
}
