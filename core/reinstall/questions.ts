import type { JobState, Row } from '../model/tables.ts';
import { buildGraph, ownOrderNodes } from './build-graph.ts';
import { byOrd, isOff, of, removalOf } from './job-log.ts';
import { shortestPath } from './rings.ts';
import { situationOf, titleOf } from './situation.ts';
import type { BrokenNeed, Edge, Reach, Ring } from './types.ts';

/**
 * Whether "first `beforeId`, then `afterId`" would close a ring with what is there; then the shortest one, and which of
 * its edges may be loosened. Null: it may be kept.
 */
export function wouldCloseCycle(state: JobState, beforeId: string, afterId: string): Ring | null {
  // Asked of the graph with the order in it: an own step that is put behind an energy no longer comes before it.
  const asked = { id: '', jobId: state.job.id, beforeId, afterId, why: '' };
  const graph = buildGraph(state, [asked]);
  const [from, to] = ownOrderNodes(graph, beforeId, afterId);
  const name = (node: number) => titleOf(graph, node) || `removal ${(graph.nodes[node]?.index ?? 0) + 1}`;
  const id = (node: number) => graph.nodes[node]?.id ?? '';
  if (from < 0 || to < 0) return null;
  if (from === to)
    return {
      steps: [id(from)],
      edges: [],
      mayLoosen: [],
      sentence: `Expected two different steps; both are ${name(from)}.`,
    };
  const path = shortestPath(graph, to, from, null);
  if (path.length === 0) return null;
  const edges = path.map((edge): Edge => ({ ...edge, from: id(edge.from), to: id(edge.to) }));
  const mayLoosen = edges.filter((edge) => edge.mayLoosen);
  const nodes = [...path.map((edge) => edge.from), from];
  const loosen =
    mayLoosen.length === 0
      ? 'None of them can be loosened.'
      : `These may be loosened: ${path
          .filter((edge) => edge.mayLoosen)
          .map((edge) => `${name(edge.from)} before ${name(edge.to)}`)
          .join('; ')}.`;
  return {
    steps: nodes.map(id),
    edges,
    mayLoosen,
    sentence: `That would close a ring: ${[...nodes, to].map(name).join(' before ')}. ${loosen}`,
  };
}

/** Stored needs that a new order of the log would turn round. `order`: removal ids, first off first. */
export function needsBroken(state: JobState, order: readonly string[]): BrokenNeed[] {
  const place = new Map(order.map((id, i) => [id, i]));
  const title = new Map(
    [...state.removal].sort(byOrd).map((removal, i) => [removal.id, removal.title || `removal ${i + 1}`]),
  );
  const broken: BrokenNeed[] = [];
  const turned = (removalId: string, needsId: string): boolean => {
    const a = place.get(removalId);
    const b = place.get(needsId);
    return a !== undefined && b !== undefined && b > a;
  };
  for (const need of state.need)
    if (turned(need.removalId, need.needsId))
      broken.push({
        removalId: need.removalId,
        needsId: need.needsId,
        mayLoosen: true,
        sentence: `${title.get(need.removalId)} needs ${title.get(need.needsId)} to be off first.`,
      });
  const home = new Map(state.part.map((part) => [part.id, part.removalId]));
  for (const removal of state.removal) {
    const owner = removal.benchPartId === null ? null : (home.get(removal.benchPartId) ?? null);
    if (owner !== null && turned(removal.id, owner))
      broken.push({
        removalId: removal.id,
        needsId: owner,
        mayLoosen: false,
        sentence: `${title.get(removal.id)} was taken apart on the bench, so ${title.get(owner)} had to be off first.`,
      });
  }
  return broken;
}

/** The removal in which a target came off, or a sentence why nobody can say. */
function targetOf(
  state: JobState,
  log: ReturnType<typeof situationOf>['graph']['log'],
  id: string,
): string | { sentence: string } {
  const removal = removalOf(log, id);
  if (removal !== null && log.indexOf.has(removal)) return removal;
  const name =
    state.part.find((part) => part.id === id)?.name ||
    state.fluid.find((fluid) => fluid.id === id)?.name ||
    'This';
  return { sentence: `${name} was never logged as coming off, so nobody can say what is in the way.` };
}

/**
 * What must come off to reach the targets: the closure under needs over what is on the machine now (put back already, or
 * never off). With what is shared, what must be made safe and drained again, tools, what must be renewed, time as a range.
 */
export function reachOf(state: JobState, targets: readonly string[]): Reach {
  const at = situationOf(state, 0);
  const { graph } = at;
  const { log } = graph;
  const unknown: { targetId: string; sentence: string }[] = [];
  const open: number[] = [];
  const wanted = new Set<number>();
  for (const id of targets) {
    const target = targetOf(state, log, id);
    if (typeof target === 'string') open.push(log.indexOf.get(target) ?? -1);
    else unknown.push({ targetId: id, sentence: target.sentence });
  }
  const starts = new Set(open);
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (next < 0 || wanted.has(next)) continue;
    wanted.add(next);
    for (const link of graph.needs.links[next] ?? []) open.push(link.on);
  }
  const isOn = (index: number): boolean => {
    const node = graph.putBack[index] ?? -1;
    const removal = log.removals[index];
    return removal !== undefined && (!isOff(removal) || (node >= 0 && at.progress[node]?.done === true));
  };
  const list = [...wanted].filter(isOn).sort((a, b) => a - b);
  return costOf(at, list, starts, unknown);
}

type Situation = ReturnType<typeof situationOf>;

/** What taking these removals off again costs. */
function costOf(
  at: Situation,
  list: readonly number[],
  starts: ReadonlySet<number>,
  unknown: Reach['unknown'],
): Reach {
  const { state } = at;
  const { log } = at.graph;
  const rows = list.map((index) => log.removals[index] as Row<'removal'>);
  const ids = new Set(rows.map((removal) => removal.id));
  const sets = rows.flatMap((removal) => of(log.setsOf, removal.id));
  const parts = rows.flatMap((removal) => of(log.partsOf, removal.id));
  const times = rows
    .map((removal) => minutesOf(removal))
    .filter((minutes): minutes is number => minutes !== null);
  const total = times.reduce((sum, minutes) => sum + minutes, 0);
  return {
    removals: rows.map((removal, i) => ({
      removalId: removal.id,
      number: (list[i] ?? 0) + 1,
      title: removal.title,
      why: starts.has(list[i] ?? -1) ? 'it holds what you want' : 'it is in the way',
    })),
    shared: state.holds
      .filter((hold) => ids.has(log.part.get(hold.partId)?.removalId ?? ''))
      .map((hold) => hold.positionId)
      .filter((id) => !ids.has(log.set.get(log.position.get(id)?.setId ?? '')?.removalId ?? '')),
    isolations: state.isolation
      .filter(
        (row) => row.scope !== 'listed' || of(log.protectsOf, row.id).some((one) => ids.has(one.removalId)),
      )
      .map((row) => row.id),
    fluids: [
      ...new Set(
        state.opens.filter((row) => ids.has(removalOf(log, row.thingId) ?? '')).map((row) => row.fluidId),
      ),
    ],
    fasteners: sets.reduce((sum, set) => sum + of(log.positionsOf, set.id).length, 0),
    tools: [
      ...new Set(sets.map((set) => log.spec.get(set.specId)?.driveTyped ?? '').filter((tool) => tool !== '')),
    ],
    renew: [
      ...parts.filter((part) => part.renew === 'must'),
      ...sets.filter((set) => set.renew === 'must'),
    ].map((row) => row.id),
    minutesLow: times.length === 0 ? null : Math.round(total * 0.6),
    minutesHigh: times.length === 0 ? null : Math.round((total * rows.length * 1.5) / times.length),
    unknown,
  };
}

function minutesOf(removal: Row<'removal'>): number | null {
  if (removal.startedAt === null || removal.endedAt === null) return null;
  const paused = removal.pauses.reduce(
    (sum, pause) => sum + Math.max(0, (pause.to ?? pause.from) - pause.from),
    0,
  );
  return Math.max(0, (removal.endedAt - removal.startedAt - paused) / 60_000);
}
