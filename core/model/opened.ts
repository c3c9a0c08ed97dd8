import type { JobState } from './tables.ts';
import { removalIdOf } from './thing-words.ts';

/** Fluids whose system stands open once this removal, or this thing of one, is off. */
export function fluidsOpenedBy(state: JobState, thingId: string): string[] {
  const found = state.opens.filter(
    (open) => open.thingId === thingId || removalIdOf(state, open.thingId) === thingId,
  );
  return [...new Set(found.map((open) => open.fluidId))];
}

/** Removals that were opened to drain a fluid: whoever drains it again takes them out again. */
export function drainsOf(state: JobState, fluidId: string): string[] {
  const owners = new Set(
    state.opens.filter((open) => open.fluidId === fluidId).map((open) => removalIdOf(state, open.thingId)),
  );
  return state.removal.filter((row) => row.did === 'opened' && owners.has(row.id)).map((row) => row.id);
}
