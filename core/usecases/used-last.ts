import type { JobState, Row } from '../model/tables.ts';

/** The size in a tool's name: "10 mm socket", "6,5 mm key". Micrometres; null = none was said. */
function sizeOf(what: string): number | null {
  const typed = /(\d+(?:[.,]\d+)?)\s*mm\b/i.exec(what)?.[1];
  return typed === undefined ? null : Math.round(Number(typed.replace(',', '.')) * 1000);
}

/** The removal of whatever was worked on, by the id of the thing. */
function homes(state: JobState): Map<string, string> {
  const found = new Map(state.removal.map((row) => [row.id, row.id]));
  const sets = new Map(state.fset.map((set) => [set.id, set.removalId]));
  for (const [id, removalId] of sets) found.set(id, removalId);
  for (const hole of state.position) found.set(hole.id, sets.get(hole.setId) ?? '');
  for (const row of [...state.part, ...state.connection])
    if (row.removalId !== null) found.set(row.id, row.removalId);
  return found;
}

/**
 * Where a tool was used last, as far as the record tells: the removal that was worked on last, off or back; where the
 * tool's name says a size, the last of those that have a head of it. Null where nothing was worked on.
 */
export function usedLast(state: JobState, what: string): string | null {
  const at = new Map<string, number>();
  const seen = (id: string | undefined, time: number | null) => {
    if (id !== undefined && time !== null) at.set(id, Math.max(at.get(id) ?? 0, time));
  };
  const home = homes(state);
  const worked = state.removal.filter(
    (row: Row<'removal'>) => row.phase !== 'planned' && row.phase !== 'void',
  );
  for (const row of worked) seen(row.id, row.startedAt ?? 0);
  const open = new Set(worked.map((row) => row.id));
  for (const deed of state.deed)
    if (open.has(home.get(deed.thingId) ?? '')) seen(home.get(deed.thingId), deed.at);
  const size = sizeOf(what);
  const specs = new Set(state.spec.filter((spec) => spec.driveSizeUm === size).map((spec) => spec.id));
  const fits = new Set(
    size === null ? [] : state.fset.filter((set) => specs.has(set.specId)).map((set) => set.removalId),
  );
  const order = [...worked].sort(
    (a, b) => (at.get(a.id) ?? 0) - (at.get(b.id) ?? 0) || (a.ord < b.ord ? -1 : 1),
  );
  return (order.findLast((row) => fits.has(row.id)) ?? order.at(-1))?.id ?? null;
}
