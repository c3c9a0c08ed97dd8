import type { JobState, Row } from '../model/tables.ts';
import type { PoolLine } from './count-types.ts';
import { poolLines } from './count.ts';
import { describeSpec } from '../model/spec-words.ts';
import { nameOf } from './describe.ts';
import { holeState } from './holes.ts';
import { newParts } from './new-parts.ts';
import { happened, lookup } from './lookup.ts';
import type { Lookup } from './lookup.ts';

/** Why something has to be got: too few, only a new one will do, exchanged, a hole to be repaired, or noted by hand. */
type GetCause = 'short' | 'must renew' | 'exchange' | 'repair' | 'noted';

/** One line of the list to get. */
export interface GetLine {
  /** The same for the same need, whatever its quantity. */
  readonly key: string;
  readonly what: string;
  readonly cause: GetCause;
  /** Pieces still needed; null where the count was not recorded; 0 where the need is met and the line only noted. */
  readonly needed: number | null;
  /** What was noted beside it: pieces on order, and the whole noted quantity. */
  readonly ordered: number;
  readonly noted: number;
  readonly state: Row<'want'>['state'];
  /** Earliest promised day; UTC ms. */
  readonly promisedAt: number | null;
  readonly thingIds: readonly string[];
  readonly specId: string | null;
  readonly wantIds: readonly string[];
}

interface Need {
  readonly key: string;
  readonly what: string;
  readonly cause: GetCause;
  readonly needed: number | null;
  readonly thingIds: readonly string[];
  readonly specIds: readonly string[];
}

/**
 * What must be bought, made or fetched: what the count says is short, what must be new and is not in hand, what a
 * blocked hole needs, each merged with what was noted by hand; then what was only noted. Order: fasteners, parts and
 * holes as they stand in the job, then the notes. Lines that are noted as here or dropped stay in it with that state.
 */
export function toGet(state: JobState): GetLine[] {
  const look = lookup(state);
  const needs = [...fastenerNeeds(look, poolLines(state)), ...partNeeds(look), ...repairs(look)];
  const wants = new Map<Need, Row<'want'>[]>();
  const alone: Row<'want'>[] = [];
  for (const want of state.want) {
    // Promised out of what is there: nothing to get.
    if (want.cause === 'served first') continue;
    const need = needFor(look, needs, want);
    if (!need) alone.push(want);
    else wants.set(need, [...(wants.get(need) ?? []), want]);
  }
  return [
    ...needs.map((need) => lineOf(need, wants.get(need) ?? [])),
    ...alone.map((want) =>
      lineOf(
        {
          key: `want/${want.id}`,
          what: want.what,
          cause: 'noted',
          needed: want.state === 'needed' || want.state === 'ordered' ? want.qty : 0,
          thingIds: want.thingId === null ? [] : [want.thingId],
          specIds: want.specId === null ? [] : [want.specId],
        },
        [want],
      ),
    ),
  ];
}

function fastenerNeeds(look: Lookup, pools: readonly PoolLine[]): Need[] {
  return pools.flatMap((pool) => {
    const mustBeNew = pool.lines.some((line) => line.mustBeNew);
    // Count not recorded: that new ones are needed is known all the same, only not how many.
    const open = pool.toGet === null && mustBeNew && pool.newInBag === 0 && pool.backIn === 0;
    if (!open && !(pool.toGet !== null && pool.toGet > 0)) return [];
    const spec = pool.specId === null ? undefined : look.specs.get(pool.specId);
    const line = pool.lines[0];
    const name = spec ? describeSpec(spec) : (line?.what ?? 'fastener');
    const forNew = pool.toFillNew > pool.newInBag || open;
    return [
      {
        key: `pool/${pool.poolKey ?? `${line?.setId ?? ''}/${pool.specId ?? ''}`}`,
        what: line && !line.main && spec?.kind === 'unknown' ? `${line.what}, ${name}` : name,
        cause: forNew ? ('must renew' as const) : ('short' as const),
        needed: pool.toGet,
        thingIds: unique(pool.lines.map((l) => l.setId)),
        specIds: unique(pool.lines.map((l) => l.specId)),
      },
    ];
  });
}

function partNeeds(look: Lookup): Need[] {
  return newParts(look.state).flatMap(({ part, cause, lacking }) =>
    lacking > 0
      ? [
          {
            key: `part/${part.id}`,
            what: nameOf(look, part.id),
            cause,
            needed: lacking,
            thingIds: [part.id],
            specIds: [],
          },
        ]
      : [],
  );
}

function repairs(look: Lookup): Need[] {
  return look.state.position.flatMap((position) => {
    const set = look.sets.get(position.setId);
    if (!set || !happened(look.removals.get(set.removalId)) || !holeState(look, position).blocked) return [];
    const why = position.fateWhy || position.condition;
    return [
      {
        key: `hole/${position.id}`,
        what: `repair: ${nameOf(look, position.id)}${why === '' ? '' : `, ${why}`}`,
        cause: 'repair' as const,
        needed: 1,
        thingIds: [position.id],
        specIds: [],
      },
    ];
  });
}

/** The need that a note is about: the thing it names, a hole's own repair first; else the specification. */
function needFor(look: Lookup, needs: readonly Need[], want: Row<'want'>): Need | undefined {
  const set = want.thingId === null ? undefined : look.positions.get(want.thingId)?.setId;
  const about = (id: string | null | undefined) =>
    id
      ? needs.find((need) => need.thingIds.includes(id) && (!want.specId || fitsSpec(need, want.specId)))
      : undefined;
  const bySpec =
    want.specId === null ? undefined : needs.find((need) => need.specIds.includes(want.specId ?? ''));
  return about(want.thingId) ?? about(set) ?? bySpec;
}

function fitsSpec(need: Need, specId: string): boolean {
  return need.specIds.length === 0 || need.specIds.includes(specId);
}

function lineOf(need: Need, wants: readonly Row<'want'>[]): GetLine {
  const sum = (state: Row<'want'>['state']) =>
    wants.filter((want) => want.state === state).reduce((total, want) => total + want.qty, 0);
  const promises = wants.flatMap((want) => (want.promisedAt === null ? [] : [want.promisedAt]));
  return {
    key: need.key,
    what: need.what,
    cause: need.cause,
    needed: need.needed,
    ordered: sum('ordered'),
    noted: wants.reduce((total, want) => total + want.qty, 0),
    state: stateOf(need, wants, sum('ordered')),
    promisedAt: promises.length > 0 ? Math.min(...promises) : null,
    thingIds: need.thingIds,
    specId: need.specIds[0] ?? null,
    wantIds: wants.map((want) => want.id),
  };
}

/** A need that still stands is "needed" until as many are on order; "here" without pieces in the books is not here. */
function stateOf(need: Need, wants: readonly Row<'want'>[], ordered: number): Row<'want'>['state'] {
  if (need.cause === 'noted') return wants[0]?.state ?? 'needed';
  if (need.cause === 'repair' && wants.some((want) => want.state === 'here')) return 'here';
  if (ordered > 0 && ordered >= (need.needed ?? 0)) return 'ordered';
  return wants.length > 0 && wants.every((want) => want.state === 'dropped') ? 'dropped' : 'needed';
}

function unique(ids: readonly (string | null)[]): string[] {
  return [...new Set(ids.filter((id) => id !== null))];
}
