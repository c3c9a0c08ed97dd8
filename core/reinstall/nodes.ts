import type { JobState, Row } from '../model/tables.ts';
import { Graph } from './graph.ts';
import { byOrd, compare, isOff, jobLog, of, staysEmpty, type JobLog } from './job-log.ts';
import { type Needs, needsOf } from './needs.ts';
import { needReach } from './reachability.ts';

/** A position whose holders are not all put back before the removal it came out with: it waits for all of them. */
export interface SharedPosition {
  readonly positionId: string;
  readonly home: number;
  /** Log indices of the removals of the parts it holds, and of its own. */
  readonly holders: readonly number[];
}

/** Every node of the job. Which there are follows from the log and its needs alone, never from an order of the user's. */
export function makeNodes(log: JobLog, needs: Needs): { graph: Graph; shared: SharedPosition[] } {
  const graph = new Graph(log, needs);
  needs.hasStep.forEach((has, i) => {
    const removal = log.removals[i];
    if (has && removal) graph.putBack[i] = graph.addNode('S', removal.id, i);
  });
  const shared = sharedPositions(log, needs);
  for (const one of shared) graph.shared.set(one.positionId, graph.addNode('F', one.positionId, one.home));
  for (const part of log.state.part) addCarried(graph, part);
  addIsolations(graph);
  for (const fluid of log.state.fluid) addFluid(graph, fluid);
  for (const set of log.state.fset) {
    const home = log.indexOf.get(set.removalId);
    const removal = home === undefined ? undefined : log.removals[home];
    if (home === undefined || !removal || !isOff(removal)) continue;
    if (set.laterWhen !== null) graph.final.set(set.id, graph.addNode('T', set.id, home));
    if (set.recheck) graph.recheck.set(set.id, graph.addNode('K', set.id, home));
  }
  for (const own of [...log.state.ownStep].sort(byOrd)) {
    graph.own.set(own.id, graph.addNode(own.kind === 'recheck' ? 'K' : 'U', own.id, -1));
  }
  return { graph, shared };
}

/** Rule 2: those positions that some holder does not lead home. */
function sharedPositions(log: JobLog, needs: Needs): SharedPosition[] {
  if (log.holdsOf.size === 0) return [];
  const reaches = needReach(needs);
  const found: SharedPosition[] = [];
  for (const [positionId, holds] of log.holdsOf) {
    const position = log.position.get(positionId);
    const home = log.indexOf.get(log.set.get(position?.setId ?? '')?.removalId ?? '');
    if (!position || staysEmpty(log, position)) continue;
    if (home === undefined || needs.hasStep[home] !== true) continue;
    const holders = new Set([home]);
    for (const hold of holds) {
      const part = log.part.get(hold.partId);
      const index = part?.fate === 'leave out' ? undefined : log.indexOf.get(part?.removalId ?? '');
      if (index !== undefined && needs.hasStep[index] === true) holders.add(index);
    }
    const list = [...holders].sort((a, b) => a - b);
    if (list.some((holder) => !reaches(holder, home))) found.push({ positionId, home, holders: list });
  }
  return found.sort((a, b) => compare(a.positionId, b.positionId));
}

/** Holes with a step of their own: they hold more than one part, and go in once the last of these is on. */
export function sharedHoles(state: JobState): ReadonlySet<string> {
  if (state.holds.length === 0) return new Set();
  const log = jobLog(state);
  return new Set(sharedPositions(log, needsOf(log)).map((one) => one.positionId));
}

/** A part moved over to another one that is put back in some step. */
function addCarried(graph: Graph, part: Row<'part'>): void {
  if (part.fate !== 'carry over' || part.carryToId === null) return;
  const parent = removalOfPart(graph.log, part.carryToId);
  const own = part.removalId === null ? undefined : graph.log.indexOf.get(part.removalId);
  const index = Math.max(parent ?? -1, own !== undefined && graph.needs.hasStep[own] ? own : -1);
  graph.carried.set(part.id, graph.addNode('B', part.id, index));
}

/** The removal a part goes back with: its own, else that of the part it sits on. */
export function removalOfPart(log: JobLog, partId: string): number | undefined {
  const seen = new Set<string>();
  for (let id: string | null = partId; id !== null && !seen.has(id); ) {
    seen.add(id);
    const part: Row<'part'> | undefined = log.part.get(id);
    if (!part) return undefined;
    if (part.removalId !== null) return log.indexOf.get(part.removalId);
    id = part.parentId;
  }
  return undefined;
}

/** Isolations in the reverse of the order in which they were made; inside one removal by its actions. */
function addIsolations(graph: Graph): void {
  const { log } = graph;
  log.removals.forEach((removal, i) => {
    if (!isOff(removal)) return;
    const actions = of(log.actionsOf, removal.id);
    const place = (id: string) => actions.findIndex((action) => action.thingId === id);
    const made = [...of(log.isolationsOf, removal.id)].sort(
      (a, b) => place(a.id) - place(b.id) || compare(a.id, b.id),
    );
    for (const isolation of made) {
      graph.isolations.unshift(isolation);
      graph.givenBack.set(isolation.id, graph.addNode('I', isolation.id, i));
    }
  });
}

/** C1 where it was opened or drained; C2 where there is something left to do once it is full. */
function addFluid(graph: Graph, fluid: Row<'fluid'>): void {
  const { log } = graph;
  const opened = of(log.opensOf, fluid.id).some((open) => {
    const removal = log.removals[log.indexOf.get(ownerOf(log, open.thingId) ?? '') ?? -1];
    return removal !== undefined && isOff(removal);
  });
  const drained =
    (fluid.drainedMl ?? 0) > 0 || of(log.deedsOf, fluid.id).some((deed) => deed.what === 'drained');
  if (!opened && !drained) return;
  graph.closing.set(fluid.id, graph.addNode('C1', fluid.id, -1));
  if (fluid.bleed || fluid.liveEnergy !== null) {
    graph.bleeding.set(fluid.id, graph.addNode('C2', fluid.id, -1));
  }
}

/** The removal with which an opening of a fluid was made. */
export function ownerOf(log: JobLog, thingId: string): string | null {
  if (log.indexOf.has(thingId)) return thingId;
  const position = log.position.get(thingId);
  if (position) return log.set.get(position.setId)?.removalId ?? null;
  return (
    log.part.get(thingId)?.removalId ??
    log.connection.get(thingId)?.removalId ??
    log.set.get(thingId)?.removalId ??
    null
  );
}
