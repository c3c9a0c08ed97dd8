import type { Row } from '../model/tables.ts';
import { nameOf } from './describe.ts';
import { compare, groupBy, happened } from './lookup.ts';
import type { Lookup } from './lookup.ts';

/** A way into the machine that stood open for a time: what something may have fallen into. */
export interface Opening {
  readonly removalId: string;
  /** Parts, connections and fluids that were open in that time. */
  readonly thingIds: readonly string[];
  readonly openedAt: number | null;
  /** Null while it still stands open. */
  readonly closedAt: number | null;
  /** Rags, plugs and caps of this removal: a covered opening is less likely, not impossible. */
  readonly coveredBy: readonly string[];
  readonly sentence: string;
}

/** Joints without a way in: nothing falls into a cable lug or a linkage. */
const CLOSED_JOINTS: ReadonlySet<string> = new Set(['plug', 'earth', 'linkage']);
const COVERS: ReadonlySet<string> = new Set(['part', 'filter', 'gasket', 'seal']);

/**
 * What stood open at any moment from `from` to `to` (UTC ms), in the order of the log: removals with a part that was
 * off or opened, a hose or union apart, a fluid system open. A removal without a time is taken as open from the start.
 */
export function openingsBetween(look: Lookup, from: number, to: number): Opening[] {
  const parts = groupBy(look.state.part, (part) => part.removalId ?? '');
  const connections = groupBy(look.state.connection, (connection) => connection.removalId ?? '');
  const opens = groupBy(look.state.opens, (row) => row.thingId);
  const covers = groupBy(look.state.temporary, (row) => row.removalId ?? '');
  const removals = [...look.state.removal].sort((a, b) => compare(a.ord, b.ord));
  return removals.flatMap((removal) => {
    if (!happened(removal) || removal.did === 'safe' || removal.did === 'slackened') return [];
    const things = [
      ...(parts.get(removal.id) ?? []).filter(uncovers).map((part) => part.id),
      ...(connections.get(removal.id) ?? []).filter(isWayIn).map((connection) => connection.id),
    ];
    const fluids = [removal.id, ...things].flatMap((id) => opens.get(id) ?? []).map((row) => row.fluidId);
    if (things.length === 0 && fluids.length === 0) return [];
    const blocks = (covers.get(removal.id) ?? []).filter((temporary) => temporary.role === 'blocks');
    const opening = openingOf(look, removal, things, fluids, blocks, { from, to });
    return opening ? [opening] : [];
  });
}

function uncovers(part: Row<'part'>): boolean {
  return COVERS.has(part.kind) && (part.how === 'off' || part.how === 'opened');
}

function isWayIn(connection: Row<'connection'>): boolean {
  return (
    !connection.leaveAlone && !CLOSED_JOINTS.has(connection.joint) && !/cable|earth/.test(connection.kind)
  );
}

function openingOf(
  look: Lookup,
  removal: Row<'removal'>,
  things: readonly string[],
  fluids: readonly string[],
  blocks: readonly Row<'temporary'>[],
  window: { readonly from: number; readonly to: number },
): Opening | null {
  const openedAt = removal.endedAt ?? removal.startedAt;
  const times = (things.length > 0 ? things : [removal.id]).map((id) => ({
    id,
    spans: spansOf(look, [id, removal.id], openedAt ?? 0),
  }));
  const open = times.filter(({ spans }) => spans.some(([a, b]) => a <= window.to && b >= window.from));
  if (open.length === 0) return null;
  const ends = open.map(({ spans }) => spans.at(-1)?.[1] ?? Infinity);
  const closedAt = ends.includes(Infinity) ? null : Math.max(...ends);
  const coveredBy = blocks.map((temporary) => temporary.name);
  const names = open.map(({ id }) => nameOf(look, id));
  const covered = coveredBy.length > 0 ? ` (${coveredBy.join(', ')} in it)` : '';
  return {
    removalId: removal.id,
    thingIds: [...open.map(({ id }) => id).filter((id) => id !== removal.id), ...new Set(fluids)],
    openedAt,
    closedAt,
    coveredBy,
    sentence: `${names.join(', ')}: stood open${covered}. Look inside with light and mirror before it is closed.`,
  };
}

/** From when to when a thing was open, one span a round; still open ends at Infinity. */
function spansOf(look: Lookup, ids: readonly string[], openedAt: number): (readonly [number, number])[] {
  const deeds = ids
    .flatMap((id) => look.deedsOf.get(id) ?? [])
    .sort((a, b) => a.at - b.at || compare(a.id, b.id));
  const spans: (readonly [number, number])[] = [];
  let since: number | null = openedAt;
  for (const deed of deeds) {
    if (since !== null && ['joined', 'fitted', 'done'].includes(deed.what)) {
      spans.push([since, deed.at]);
      since = null;
    } else if (since === null && deed.what === 'came off again') since = deed.at;
  }
  if (since !== null) spans.push([since, Infinity]);
  return spans;
}
