import type { JobState } from './tables.ts';

type Rows = Pick<JobState, 'connection' | 'fluid' | 'fset' | 'opens' | 'part' | 'position' | 'removal'>;

/** The removal with which a thing came off; null where nobody logged one, or for what comes off with none. */
export function removalOfThing(state: Rows, thingId: string): string | null {
  const setId = state.position.find((one) => one.id === thingId)?.setId ?? thingId;
  const rows = [...state.fset, ...state.part, ...state.connection];
  return (
    state.removal.find((one) => one.id === thingId)?.id ??
    rows.find((one) => one.id === setId)?.removalId ??
    null
  );
}

/** Fluids whose system stands open once this removal, or this thing of one, is off. */
export function fluidsOpenedBy(state: Rows, thingId: string): string[] {
  const found = state.opens.filter(
    (open) => open.thingId === thingId || removalOfThing(state, open.thingId) === thingId,
  );
  return [...new Set(found.map((open) => open.fluidId))];
}

/** Removals that were opened to drain a fluid: whoever drains it again takes them out again. */
export function drainsOf(state: Rows, fluidId: string): string[] {
  const owners = new Set(
    state.opens.filter((open) => open.fluidId === fluidId).map((open) => removalOfThing(state, open.thingId)),
  );
  return state.removal.filter((row) => row.did === 'opened' && owners.has(row.id)).map((row) => row.id);
}
