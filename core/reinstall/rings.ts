import type { Graph, GraphEdge } from './graph.ts';

/** A shortest ring: nodes in order, and the edges between them (the last leads back to the first). */
export interface RingFound {
  readonly nodes: readonly number[];
  readonly edges: readonly GraphEdge[];
}

/** A shortest way from one node to another inside some nodes, by breadth; empty edges = none. */
export function shortestPath(
  graph: Graph,
  from: number,
  to: number,
  inside: ReadonlySet<number> | null,
): GraphEdge[] {
  const out = new Map<number, GraphEdge[]>();
  for (const edge of graph.edges) {
    if (inside && (!inside.has(edge.from) || !inside.has(edge.to))) continue;
    const list = out.get(edge.from);
    if (list) list.push(edge);
    else out.set(edge.from, [edge]);
  }
  const came = new Map<number, GraphEdge>();
  const queue = [from];
  for (let k = 0; k < queue.length; k++) {
    const node = queue[k] as number;
    for (const edge of out.get(node) ?? []) {
      if (came.has(edge.to) || (edge.to === from && to !== from)) continue;
      came.set(edge.to, edge);
      if (edge.to === to) return pathBack(came, from, to);
      queue.push(edge.to);
    }
  }
  return [];
}

function pathBack(came: ReadonlyMap<number, GraphEdge>, from: number, to: number): GraphEdge[] {
  const path: GraphEdge[] = [];
  let at = to;
  do {
    const edge = came.get(at);
    if (!edge) break;
    path.unshift(edge);
    at = edge.from;
  } while (at !== from);
  return path;
}

/** A shortest ring through a node of a strongly connected block. */
export function ringOf(graph: Graph, node: number, block: ReadonlySet<number>): RingFound {
  const edges = shortestPath(graph, node, node, block);
  return { nodes: edges.map((edge) => edge.from), edges };
}
