import type { JobState, Row } from '../model/tables.ts';

/** Rows by id and by owner, made once per question so that every answer stays linear in the size of the job. */
export interface Lookup {
  readonly state: JobState;
  readonly removals: ReadonlyMap<string, Row<'removal'>>;
  readonly sets: ReadonlyMap<string, Row<'fset'>>;
  readonly specs: ReadonlyMap<string, Row<'spec'>>;
  readonly parts: ReadonlyMap<string, Row<'part'>>;
  readonly positions: ReadonlyMap<string, Row<'position'>>;
  readonly stows: ReadonlyMap<string, Row<'stow'>>;
  readonly positionsOf: ReadonlyMap<string, readonly Row<'position'>[]>;
  readonly stackOf: ReadonlyMap<string, readonly Row<'stackItem'>[]>;
  /** Things that stand on the list to get. */
  readonly wanted: ReadonlySet<string>;
  readonly deedsOf: ReadonlyMap<string, readonly Row<'deed'>[]>;
}

export function lookup(state: JobState): Lookup {
  const positionsOf = groupBy(state.position, (p) => p.setId);
  for (const list of positionsOf.values()) list.sort((a, b) => a.n - b.n);
  const stackOf = groupBy(state.stackItem, (item) => item.setId);
  for (const list of stackOf.values()) list.sort((a, b) => compare(a.ord, b.ord));
  const deedsOf = groupBy(state.deed, (deed) => deed.thingId);
  for (const list of deedsOf.values()) list.sort(byRound);
  return {
    state,
    removals: byId(state.removal),
    sets: byId(state.fset),
    specs: byId(state.spec),
    parts: byId(state.part),
    positions: byId(state.position),
    stows: byId(state.stow),
    positionsOf,
    stackOf,
    deedsOf,
    wanted: new Set(
      state.want.flatMap((want) => (want.thingId === null || want.state === 'dropped' ? [] : [want.thingId])),
    ),
  };
}

/** Plain text order, the same on every machine. */
export function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function byId<T extends { readonly id: string }>(rows: readonly T[]): Map<string, T> {
  return new Map(rows.map((row) => [row.id, row]));
}

export function groupBy<T>(rows: readonly T[], key: (row: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const row of rows) {
    const list = groups.get(key(row));
    if (list) list.push(row);
    else groups.set(key(row), [row]);
  }
  return groups;
}

/** By time, then by id, which runs with time: the order in which things were booked. */
export function inOrder<T extends { readonly at: number; readonly id: string }>(rows: readonly T[]): T[] {
  return [...rows].sort((a, b) => a.at - b.at || compare(a.id, b.id));
}

/** Later rounds win over later times: a deed written down afterwards still belongs to its own round. */
function byRound(a: Row<'deed'>, b: Row<'deed'>): number {
  return a.round - b.round || a.at - b.at || compare(a.id, b.id);
}

const STATE_DEEDS: ReadonlySet<string> = new Set([
  'started',
  'tightened',
  'paint-checked',
  'left out',
  'fitted',
  'joined',
  'put in',
  'taken out',
  'done',
  'came off again',
]);

/**
 * The last deed that says where the things of `ids` stand (a position and its set, a part and its removal), or null.
 * "measured", "repaired" and the like do not change where a thing is.
 */
export function lastDeed(look: Lookup, ...ids: readonly (string | null)[]): Row<'deed'> | null {
  let last: Row<'deed'> | null = null;
  for (const id of ids) {
    if (id === null) continue;
    const own = look.deedsOf.get(id)?.findLast((deed) => STATE_DEEDS.has(deed.what));
    if (own && (last === null || byRound(last, own) < 0)) last = own;
  }
  return last;
}

/** Whether a removal has begun, so that its pieces and holes are real. */
export function happened(removal: Row<'removal'> | undefined): boolean {
  return removal !== undefined && removal.phase !== 'planned' && removal.phase !== 'void';
}
