import type { Row } from '../model/tables.ts';
import type { JobLog } from './job-log.ts';
import type { Needs } from './needs.ts';
import type { EdgeRule, StepKind } from './types.ts';

export interface PlanNode {
  readonly id: string;
  readonly kind: StepKind;
  readonly thingId: string;
  /** Log index of the removal it puts back, whose isolation it gives back or whose position it fills; -1 = none. */
  readonly index: number;
}

export interface GraphEdge {
  readonly from: number;
  readonly to: number;
  readonly rule: EdgeRule;
  readonly assumed: boolean;
  readonly covers: boolean;
  readonly mayLoosen: boolean;
  readonly why: string;
}

/** Nodes and edges of one job. Nodes are numbered; everything that walks works on the numbers. */
export class Graph {
  readonly log: JobLog;
  readonly needs: Needs;
  readonly nodes: PlanNode[] = [];
  readonly edges: GraphEdge[] = [];
  readonly numberOf = new Map<string, number>();
  /** Node S by log index; -1 = none. */
  readonly putBack: Int32Array;
  /** Node F by position. */
  readonly shared = new Map<string, number>();
  /** Node B by part. */
  readonly carried = new Map<string, number>();
  /** C1 and C2 by fluid. */
  readonly closing = new Map<string, number>();
  readonly bleeding = new Map<string, number>();
  readonly givenBack = new Map<string, number>();
  readonly final = new Map<string, number>();
  readonly recheck = new Map<string, number>();
  readonly own = new Map<string, number>();
  /** Isolations in the order in which they are given back. */
  readonly isolations: Row<'isolation'>[] = [];

  constructor(log: JobLog, needs: Needs) {
    this.log = log;
    this.needs = needs;
    this.putBack = new Int32Array(log.removals.length).fill(-1);
  }

  addNode(kind: StepKind, thingId: string, index: number): number {
    const id = `${kind}:${thingId}`;
    const number = this.nodes.length;
    this.nodes.push({ id, kind, thingId, index });
    this.numberOf.set(id, number);
    return number;
  }

  addEdge(from: number, to: number, rule: EdgeRule, more: Partial<GraphEdge> = {}): void {
    if (from === to || from < 0 || to < 0) return;
    this.edges.push({ from, to, rule, assumed: false, covers: false, mayLoosen: false, why: '', ...more });
  }

  /** The step in which a removal goes back: S, or the first of its isolations where it only made safe; -1 = none. */
  stepOfRemoval(removalId: string): number {
    const index = this.log.indexOf.get(removalId);
    if (index === undefined) return -1;
    const put = this.putBack[index] ?? -1;
    if (put >= 0) return put;
    for (const isolation of this.log.isolationsOf.get(removalId) ?? []) {
      const node = this.givenBack.get(isolation.id);
      if (node !== undefined) return node;
    }
    return -1;
  }

  /** The step in which a thing is finished on the way back; -1 = none. */
  stepOfThing(thingId: string): number {
    const own =
      this.shared.get(thingId) ??
      this.carried.get(thingId) ??
      this.givenBack.get(thingId) ??
      this.own.get(thingId) ??
      this.closing.get(thingId);
    if (own !== undefined) return own;
    const position = this.log.position.get(thingId);
    const owner = position
      ? this.log.set.get(position.setId)?.removalId
      : (this.log.part.get(thingId)?.removalId ??
        this.log.set.get(thingId)?.removalId ??
        this.log.connection.get(thingId)?.removalId ??
        this.log.measure.get(thingId)?.removalId ??
        this.log.mark.get(thingId)?.removalId ??
        thingId);
    return owner === undefined ? -1 : this.stepOfRemoval(owner);
  }
}

/** Arcs from every node, as offsets into one array: compressed rows, so that walking allocates nothing. */
export interface Arcs {
  readonly start: Int32Array;
  readonly to: Int32Array;
  /** Number of the edge that each arc came from. */
  readonly edge: Int32Array;
}

/** Arcs along the edges, or against them. */
export function arcs(nodes: number, edges: readonly GraphEdge[], against = false): Arcs {
  const start = new Int32Array(nodes + 1);
  for (const edge of edges) {
    const tail = against ? edge.to : edge.from;
    start[tail + 1] = (start[tail + 1] ?? 0) + 1;
  }
  for (let i = 0; i < nodes; i++) start[i + 1] = (start[i + 1] ?? 0) + (start[i] ?? 0);
  const at = start.slice();
  const to = new Int32Array(edges.length);
  const edgeOf = new Int32Array(edges.length);
  edges.forEach((edge, e) => {
    const tail = against ? edge.to : edge.from;
    const slot = at[tail] ?? 0;
    to[slot] = against ? edge.from : edge.to;
    edgeOf[slot] = e;
    at[tail] = slot + 1;
  });
  return { start, to, edge: edgeOf };
}
