import type { JobState } from '../model/tables.ts';
import { buildGraph, ownOrderNodes } from './build-graph.ts';
import { byOrd } from './job-log.ts';
import { shortestPath } from './rings.ts';
import { titleOf } from './situation.ts';
import type { BrokenNeed, Edge, Ring } from './types.ts';

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
