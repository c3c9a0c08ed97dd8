import type { Row } from '../model/tables.ts';
import type { Graph } from './graph.ts';
import { of } from './job-log.ts';
import { removalOfPart, type SharedPosition } from './nodes.ts';

/** Edges of rules 1, 2 and 5, of carried-over parts and of re-checks. Those of energies and fluids follow on top. */
export function addMechanicalEdges(graph: Graph, shared: readonly SharedPosition[]): void {
  addNeeds(graph);
  for (const one of shared) addShared(graph, one);
  for (const [partId, node] of graph.carried) addCarried(graph, partId, node);
  for (const [setId, node] of graph.recheck) {
    const final = graph.final.get(setId);
    for (const from of final === undefined ? stepsOfSet(graph, setId) : [final])
      graph.addEdge(from, node, 'recheck');
  }
  for (const [setId, node] of graph.final) {
    for (const from of stepsOfSet(graph, setId)) graph.addEdge(from, node, 'later', { covers: false });
  }
}

/** The step a set is put back in, and those of its shared positions. */
function stepsOfSet(graph: Graph, setId: string): number[] {
  const home = graph.stepOfThing(setId);
  const steps = home >= 0 ? [home] : [];
  for (const position of of(graph.log.positionsOf, setId)) {
    const node = graph.shared.get(position.id);
    if (node !== undefined) steps.push(node);
  }
  return steps;
}

function addNeeds(graph: Graph): void {
  const { log, needs, putBack } = graph;
  for (const links of needs.links) {
    for (const link of links) {
      const later = log.removals[link.of];
      const earlier = log.removals[link.on];
      if (!later || !earlier) continue;
      graph.addEdge(putBack[link.of] ?? -1, putBack[link.on] ?? -1, link.structural ? 'bench' : 'need', {
        assumed: link.assumed,
        covers: !link.assumed || samePlace(later, earlier),
        mayLoosen: !link.structural,
        why: link.why,
      });
    }
  }
}

/** Two removals that may well lie in each other's way: the same place, or at least one without a place. */
function samePlace(a: Row<'removal'>, b: Row<'removal'>): boolean {
  if (a.side !== null && b.side !== null && a.side !== b.side && a.side !== 'both' && b.side !== 'both')
    return false;
  const one = a.place.trim().toLowerCase();
  const two = b.place.trim().toLowerCase();
  return one === '' || two === '' || one === two;
}

/** Rule 2. The position covers on where that cannot close a ring: only steps further up the log than all its holders. */
function addShared(graph: Graph, one: SharedPosition): void {
  const node = graph.shared.get(one.positionId) ?? -1;
  for (const holder of one.holders) {
    graph.addEdge(graph.putBack[holder] ?? -1, node, 'shared position', { covers: true });
  }
  const lowest = Math.min(...one.holders);
  for (const link of graph.needs.links[one.home] ?? []) {
    if (link.on < lowest)
      graph.addEdge(node, graph.putBack[link.on] ?? -1, 'shared position', { covers: true });
  }
}

/** A carried-over part is on its new parent before that goes back, and before its own fasteners are put in. */
function addCarried(graph: Graph, partId: string, node: number): void {
  const { log, putBack } = graph;
  const part = log.part.get(partId);
  const parent = part?.carryToId ? removalOfPart(log, part.carryToId) : undefined;
  const own = part?.removalId ? log.indexOf.get(part.removalId) : undefined;
  for (const index of new Set([parent, own])) {
    if (index !== undefined) graph.addEdge(node, putBack[index] ?? -1, 'carried over', { covers: true });
  }
}
