import type { JobState, Row } from '../model/tables.ts';
import { addMechanicalEdges } from './edges.ts';
import { addEnergyEdges, addOwnDead } from './energy-edges.ts';
import type { Graph } from './graph.ts';
import { byOrd, compare, jobLog } from './job-log.ts';
import { needsOf } from './needs.ts';
import { makeNodes } from './nodes.ts';
import { orderNodes, type Ordered } from './order.ts';

/** The whole graph of a job: nodes, edges of all six rules. `extra`: an order of the user's that is only being asked about. */
export function buildGraph(state: JobState, extra: readonly Row<'backOrder'>[] = []): Graph {
  const log = jobLog(state);
  const { graph, shared } = makeNodes(log, needsOf(log));
  addMechanicalEdges(graph, shared);
  addEnergyEdges(graph);
  for (const row of [...state.backOrder, ...extra]) addOwnOrder(graph, row);
  addOwnDead(graph);
  return graph;
}

/** Rule 6. A set means its final tightening where it has one; a fluid means its live half only towards live work. */
function addOwnOrder(graph: Graph, row: Row<'backOrder'>): void {
  const [from, to] = ownOrderNodes(graph, row.beforeId, row.afterId);
  graph.addEdge(from, to, 'own order', { mayLoosen: true, why: row.why });
}

/** The two steps an order between things means; −1 where a thing has no step. */
export function ownOrderNodes(graph: Graph, beforeId: string, afterId: string): readonly [number, number] {
  const to = graph.final.get(afterId) ?? stepFor(graph, afterId);
  const live =
    ['C2', 'T', 'I'].includes(graph.nodes[to]?.kind ?? '') ||
    (graph.log.ownStep.get(afterId)?.liveEnergy ?? null) !== null;
  const bled = live && beforeId !== afterId ? graph.bleeding.get(beforeId) : undefined;
  return [bled ?? graph.final.get(beforeId) ?? stepFor(graph, beforeId), to];
}

function stepFor(graph: Graph, thingId: string): number {
  // A temporary stands for the step it comes out with.
  const temporary = graph.log.temporary.get(thingId);
  const owner = temporary
    ? (temporary.outWithId ?? temporary.removalId ?? temporary.stepThingId ?? thingId)
    : thingId;
  return graph.stepOfThing(owner);
}

/** Nodes in list order, and the rings. */
export function listOrder(graph: Graph): Ordered {
  const { nodes, edges } = graph;
  const from = new Int32Array(edges.length);
  const to = new Int32Array(edges.length);
  edges.forEach((edge, e) => {
    from[e] = edge.from;
    to[e] = edge.to;
  });
  return orderNodes({ nodes: nodes.length, from, to, rank: ranks(graph) });
}

/**
 * Order of choice: shared positions, fluids, drain plugs and placed own steps as soon as they are free; then removals by
 * latest log index, with carried-over parts and own steps just before the step that needs them; own steps without a
 * place; final tightenings; isolations; re-checks.
 */
function ranks(graph: Graph): Int32Array {
  const { nodes, edges, needs, log } = graph;
  const before = new Int32Array(nodes.length).fill(-1);
  const placed = new Uint8Array(nodes.length);
  for (const edge of edges) {
    const then = nodes[edge.to];
    if (then?.kind === 'U') placed[edge.to] = 1;
    if (nodes[edge.from]?.kind !== 'U' || edge.rule !== 'own order') continue;
    if (then?.kind === 'S' || then?.kind === 'B')
      before[edge.from] = Math.max(before[edge.from] ?? -1, then.index);
    else if (then?.kind !== 'I') placed[edge.from] = 1;
  }
  const soon: number[] = [];
  const byIndex: number[][] = Array.from({ length: log.removals.length + 1 }, () => []);
  const rest: number[][] = [[], [], [], []];
  nodes.forEach((node, i) => {
    if (node.kind === 'F' || node.kind === 'C1' || node.kind === 'C2') soon.push(i);
    else if (node.kind === 'S') {
      if (needs.drains[node.index]) soon.push(i);
      else byIndex[node.index]?.push(i);
    } else if (node.kind === 'B') byIndex[Math.max(0, node.index)]?.unshift(i);
    else if (node.kind === 'U') {
      const at = before[i] ?? -1;
      if (placed[i]) soon.push(i);
      else if (at >= 0) byIndex[at]?.unshift(i);
      else rest[0]?.push(i);
    } else if (node.kind === 'T') rest[1]?.push(i);
    else if (node.kind === 'I') rest[2]?.push(i);
    else rest[3]?.push(i);
  });
  soon.sort((a, b) => compareSoon(graph, a, b));
  const rank = new Int32Array(nodes.length);
  let next = 0;
  for (const i of soon) rank[i] = next++;
  for (let at = byIndex.length - 1; at >= 0; at--) {
    for (const i of (byIndex[at] ?? []).sort(
      (a, b) => kindInPlace(graph, a) - kindInPlace(graph, b) || byId(graph, a, b),
    )) {
      rank[i] = next++;
    }
  }
  for (const [k, list] of rest.entries()) {
    if (k === 1 || k === 3)
      list.sort((a, b) => (nodes[b]?.index ?? 0) - (nodes[a]?.index ?? 0) || byId(graph, a, b));
    for (const i of list) rank[i] = next++;
  }
  return rank;
}

const SOON: readonly string[] = ['S', 'F', 'C1', 'C2', 'U'];

function compareSoon(graph: Graph, a: number, b: number): number {
  const [one, two] = [graph.nodes[a], graph.nodes[b]];
  if (!one || !two) return 0;
  const kind = SOON.indexOf(one.kind) - SOON.indexOf(two.kind);
  if (kind !== 0) return kind;
  if (one.kind === 'U') return byOwn(graph, one.thingId, two.thingId);
  return two.index - one.index || byId(graph, a, b);
}

function byOwn(graph: Graph, a: string, b: string): number {
  const [one, two] = [graph.log.ownStep.get(a), graph.log.ownStep.get(b)];
  return one && two ? byOrd(one, two) : compare(a, b);
}

function kindInPlace(graph: Graph, node: number): number {
  return ['U', 'B', 'S'].indexOf(graph.nodes[node]?.kind ?? 'S');
}

function byId(graph: Graph, a: number, b: number): number {
  return compare(graph.nodes[a]?.id ?? '', graph.nodes[b]?.id ?? '');
}
