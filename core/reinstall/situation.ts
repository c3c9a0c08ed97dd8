import type { JobState, Row } from '../model/tables.ts';
import { buildGraph, listOrder } from './build-graph.ts';
import { contents, type Content } from './content.ts';
import { arcs, type Arcs, type Graph } from './graph.ts';
import { of } from './job-log.ts';
import type { Ordered } from './order.ts';
import { progressOf, type Progress } from './progress.ts';

/** Everything that the parts of a plan are computed from: made once, read by all. */
export interface Situation {
  readonly state: JobState;
  readonly now: number;
  readonly graph: Graph;
  readonly ordered: Ordered;
  readonly content: readonly Content[];
  readonly progress: readonly Progress[];
  readonly into: Arcs;
  readonly out: Arcs;
  /** By node: a step that covers it, or the end of the job, was passed: what is open under it is a finding. */
  readonly past: Uint8Array;
  /** By log index: the number of a removal as people see it; void ones are not counted. */
  readonly numbers: readonly number[];
}

export function situationOf(state: JobState, now: number): Situation {
  const graph = buildGraph(state);
  const ordered = listOrder(graph);
  const content = contents(graph);
  const progress = progressOf(graph, content);
  const n = graph.nodes.length;
  const into = arcs(n, graph.edges, true);
  const out = arcs(n, graph.edges);
  let number = 0;
  const numbers = graph.log.removals.map((removal) => (removal.phase === 'void' ? number : ++number));
  const base = { state, now, graph, ordered, content, progress, into, out, numbers };
  return { ...base, past: pastOf(base) };
}

/**
 * Passed: the step itself was ticked as a whole, the job is closed, or something that covers it was done or begun in this
 * round. Walks the list from its end, so that one look at each edge is enough.
 */
function pastOf(base: Omit<Situation, 'past'>): Uint8Array {
  const { graph, ordered, progress, out, state } = base;
  const closed = state.job.phase !== 'open';
  const past = new Uint8Array(graph.nodes.length);
  for (let k = ordered.order.length - 1; k >= 0; k--) {
    const node = ordered.order[k] as number;
    const own = progress[node] as Progress;
    if (own.wholeAt > 0 || (closed && graph.nodes[node]?.kind !== 'K')) past[node] = 1;
    for (let e = out.start[node] as number; past[node] === 0 && e < (out.start[node + 1] as number); e++) {
      const edge = graph.edges[out.edge[e] as number];
      if (!edge?.covers && !isGateKind(graph, out.to[e] as number)) continue;
      const above = out.to[e] as number;
      // What is through only because all of it is left out was never ticked: it passes nothing.
      const own = progress[above];
      if (own?.touched || (own?.wholeAt ?? 0) > 0 || past[above] === 1) past[node] = 1;
    }
  }
  return past;
}

/** Filling, bleeding, power and pressure: nothing at all may be open under them. */
export function isGateKind(graph: Graph, node: number): boolean {
  const kind = graph.nodes[node]?.kind;
  return kind === 'C1' || kind === 'C2' || kind === 'I';
}

/** Steps of this node's kind that are behind a gate, in words of the step types. */
export function titleOf(graph: Graph, node: number): string {
  const one = graph.nodes[node];
  if (!one) return '';
  const { log } = graph;
  const removal = log.removals[one.index];
  const set = log.set.get(one.thingId);
  switch (one.kind) {
    case 'S': {
      const title = removal?.title || removal?.typed.split('\n')[0] || '';
      // A plug that was written down has its own name.
      const plain = graph.needs.drains[one.index] && of(log.setsOf, one.thingId).length === 0;
      return plain ? `Close the drain: ${title}` : title;
    }
    case 'B':
      return `${log.part.get(one.thingId)?.name ?? 'Part'} onto its new place`;
    case 'F': {
      const position = log.position.get(one.thingId);
      const name = log.set.get(position?.setId ?? '')?.name || removal?.title || 'fasteners';
      return `${name}, hole ${position?.n ?? ''} (holds more than one part)`;
    }
    case 'C1':
      return `Fill ${log.fluid.get(one.thingId)?.name ?? 'fluid'}, leak check cold`;
    case 'C2':
      return bleedTitle(log.fluid.get(one.thingId));
    case 'I':
      return `Give back: ${log.isolation.get(one.thingId)?.how || (log.isolation.get(one.thingId)?.energy ?? '')}`;
    case 'T':
      return `Final tightening ${set?.laterWhen ?? ''}: ${set?.name || removal?.title || 'fasteners'}`;
    case 'U':
    case 'K':
      return log.ownStep.get(one.thingId)?.title ?? `Re-check: ${set?.name || removal?.title || 'fasteners'}`;
  }
}

/** No more than is done in it: not every fluid is bled, and not every one is looked at running. */
function bleedTitle(fluid: Row<'fluid'> | undefined): string {
  const name = fluid?.name ?? 'fluid';
  if (fluid?.bleed === false) return `Leak check hot: ${name}`;
  return fluid?.liveEnergy === null ? `Bleed ${name}` : `Bleed ${name}, leak check hot`;
}
