import { againPlans } from '../model/off-again.ts';
import type { JobState, Row } from '../model/tables.ts';
import { groupBy as group } from './grouping.ts';

/** The rows of a job by id and by owner, and the log in order. Made once per question, so that the rest stays linear. */
export interface JobLog {
  readonly state: JobState;
  /** All removals in log order, whatever their phase; but not those that only plan for one of them to come off again. */
  readonly removals: readonly Row<'removal'>[];
  /** Log index by removal id, from 0. */
  readonly indexOf: ReadonlyMap<string, number>;
  readonly part: ReadonlyMap<string, Row<'part'>>;
  readonly set: ReadonlyMap<string, Row<'fset'>>;
  readonly position: ReadonlyMap<string, Row<'position'>>;
  readonly connection: ReadonlyMap<string, Row<'connection'>>;
  readonly fluid: ReadonlyMap<string, Row<'fluid'>>;
  readonly isolation: ReadonlyMap<string, Row<'isolation'>>;
  readonly temporary: ReadonlyMap<string, Row<'temporary'>>;
  readonly measure: ReadonlyMap<string, Row<'measure'>>;
  readonly mark: ReadonlyMap<string, Row<'mark'>>;
  readonly ownStep: ReadonlyMap<string, Row<'ownStep'>>;
  readonly spec: ReadonlyMap<string, Row<'spec'>>;
  readonly stow: ReadonlyMap<string, Row<'stow'>>;
  readonly partsOf: Groups<'part'>;
  readonly setsOf: Groups<'fset'>;
  readonly positionsOf: Groups<'position'>;
  readonly connectionsOf: Groups<'connection'>;
  readonly isolationsOf: Groups<'isolation'>;
  readonly measuresOf: Groups<'measure'>;
  readonly marksOf: Groups<'mark'>;
  /** Put in on the way back, by the step it is put in with. */
  readonly putInWith: Groups<'temporary'>;
  readonly actionsOf: Groups<'action'>;
  readonly needsOf: Groups<'need'>;
  /** Holdings by position. */
  readonly holdsOf: Groups<'holds'>;
  readonly opensOf: Groups<'opens'>;
  readonly consumablesOf: Groups<'consumable'>;
  readonly protectsOf: Groups<'protects'>;
  readonly deedsOf: Groups<'deed'>;
  /** Things that stand on the list to get. */
  readonly wanted: ReadonlySet<string>;
}

export type Groups<T extends keyof JobState> = ReadonlyMap<
  string,
  readonly (JobState[T] extends readonly (infer R)[] ? R : never)[]
>;

const NOTHING: readonly never[] = [];

/** Rows of an owner; none is an empty list. */
export function of<T>(groups: ReadonlyMap<string, readonly T[]>, id: string): readonly T[] {
  return groups.get(id) ?? NOTHING;
}

export function jobLog(state: JobState): JobLog {
  const again = againPlans(state);
  const logged = again.size === 0 ? state.removal : state.removal.filter((one) => plansNothing(one, again));
  const removals = [...logged].sort(byOrd);
  return {
    state,
    removals,
    indexOf: new Map(removals.map((removal, i) => [removal.id, i])),
    part: byId(state.part),
    set: byId(state.fset),
    position: byId(state.position),
    connection: byId(state.connection),
    fluid: byId(state.fluid),
    isolation: byId(state.isolation),
    temporary: byId(state.temporary),
    measure: byId(state.measure),
    mark: byId(state.mark),
    ownStep: byId(state.ownStep),
    spec: byId(state.spec),
    stow: byId(state.stow),
    partsOf: group(state.part, (part) => part.removalId),
    setsOf: group([...state.fset].sort(byOrd), (set) => set.removalId),
    positionsOf: group(
      [...state.position].sort((a, b) => a.n - b.n || compare(a.id, b.id)),
      (position) => position.setId,
    ),
    connectionsOf: group(state.connection, (connection) => connection.removalId),
    isolationsOf: group(state.isolation, (isolation) => isolation.removalId),
    measuresOf: group(state.measure, (measure) => measure.removalId),
    marksOf: group(state.mark, (mark) => mark.removalId),
    putInWith: group(state.temporary, (temporary) => temporary.stepThingId),
    actionsOf: group([...state.action].sort(byOrd), (action) => action.removalId),
    needsOf: group(state.need, (need) => need.removalId),
    holdsOf: group(state.holds, (hold) => hold.positionId),
    opensOf: group(state.opens, (open) => open.fluidId),
    consumablesOf: group(state.consumable, (consumable) => consumable.thingId),
    protectsOf: group(state.protects, (row) => row.isolationId),
    deedsOf: group([...state.deed].sort(byRound), (deed) => deed.thingId),
    wanted: new Set(
      state.want.flatMap((want) => (want.thingId === null || want.state === 'dropped' ? [] : [want.thingId])),
    ),
  };
}

const plansNothing = (removal: Row<'removal'>, again: ReadonlyMap<string, string>): boolean =>
  isOff(removal) || !again.has(removal.id);

/** Plain text order, the same on every machine. */
export function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

export function byOrd(
  a: { readonly ord: string; readonly id: string },
  b: { readonly ord: string; readonly id: string },
): number {
  return compare(a.ord, b.ord) || compare(a.id, b.id);
}

/** Later rounds win over later times: a deed written down afterwards still belongs to its own round. */
export function byRound(a: Row<'deed'>, b: Row<'deed'>): number {
  return a.round - b.round || a.at - b.at || compare(a.id, b.id);
}

function byId<T extends { readonly id: string }>(rows: readonly T[]): ReadonlyMap<string, T> {
  return new Map(rows.map((row) => [row.id, row]));
}

/** Whether something of the removal is off the machine: only then there is something to put back. */
export function isOff(removal: Row<'removal'>): boolean {
  return removal.phase === 'off' || removal.phase === 'under way';
}

/** The removal a thing belongs to; null for things that came with none (a new part, an own step, a fluid). */
export function removalOf(log: JobLog, thingId: string): string | null {
  if (log.indexOf.has(thingId)) return thingId;
  const position = log.position.get(thingId);
  if (position) return log.set.get(position.setId)?.removalId ?? null;
  const temporary = log.temporary.get(thingId);
  if (temporary) return temporaryOut(log, temporary);
  const row =
    log.part.get(thingId) ??
    log.set.get(thingId) ??
    log.connection.get(thingId) ??
    log.isolation.get(thingId) ??
    log.measure.get(thingId) ??
    log.mark.get(thingId);
  return row?.removalId ?? null;
}

/** The removal with whose step a temporary comes out: said, else the one it was put in with; null = another step. */
export function temporaryOut(log: JobLog, temporary: Row<'temporary'>): string | null {
  const said = temporary.outWithId ?? temporary.removalId;
  if (said !== null) return said;
  return temporary.stepThingId !== null && log.indexOf.has(temporary.stepThingId)
    ? temporary.stepThingId
    : null;
}

/** Missing as found is not lost: it is filled only once somebody says so, by a reason or on the list to get. */
export function staysEmpty(log: JobLog, position: Row<'position'>): boolean {
  if (position.found !== 'empty' || position.fate === 'blocked') return false;
  if (position.fate === 'leave out') return true;
  return position.fateWhy === '' && !log.wanted.has(position.id);
}
