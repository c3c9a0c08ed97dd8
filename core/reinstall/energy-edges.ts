import type { Row } from '../model/tables.ts';
import { arcs, type Graph } from './graph.ts';
import { of } from './job-log.ts';
import { ownerOf } from './nodes.ts';

/**
 * Rules 3 and 4 and the conditions of rule 5. Isolations stand in one line, last made first given back; `place` counts
 * along it from 1. A step that comes after some isolation anyway feeds only those further along, so no ring can close.
 */
export function addEnergyEdges(graph: Graph): void {
  const line = isolationLine(graph);
  const after = new Map<number, number>();
  for (const [fluidId, node] of graph.closing) addFluid(graph, line, after, fluidId, node);
  for (let i = 0; i < graph.putBack.length; i++) addDead(graph, line, graph.putBack[i] ?? -1, 0);
  for (const node of [...graph.shared.values(), ...graph.carried.values()]) addDead(graph, line, node, 0);
  graph.isolations.forEach((isolation, i) => addScope(graph, isolation, i + 1, after));
  for (const [setId, node] of graph.final) addCondition(graph, line, setId, node);
  for (const own of graph.log.state.ownStep) {
    const node = graph.own.get(own.id);
    if (node === undefined || own.kind === 'recheck' || own.liveEnergy === null) continue;
    const last = line.lastOf(own.liveEnergy, null);
    if (last) graph.addEdge(last.node, node, 'isolation');
  }
}

interface Placed {
  readonly node: number;
  readonly place: number;
}

interface Line {
  /** The first isolation along the line, behind `place`, that all dead work comes before. */
  readonly firstForAll: (place: number) => Placed | undefined;
  /** The last along the line that gives this energy back, to this fluid where it is one fluid's. */
  readonly lastOf: (energy: string, fluidId: string | null) => Placed | undefined;
  readonly placeOf: ReadonlyMap<string, number>;
}

function isolationLine(graph: Graph): Line {
  const placeOf = new Map<string, number>();
  const forAll: Placed[] = [];
  const byEnergy = new Map<string, Placed>();
  graph.isolations.forEach((isolation, i) => {
    const node = graph.givenBack.get(isolation.id) ?? -1;
    const before = graph.isolations[i - 1];
    if (before) graph.addEdge(graph.givenBack.get(before.id) ?? -1, node, 'isolation order');
    const placed = { node, place: i + 1 };
    placeOf.set(isolation.id, i + 1);
    if (coversAll(isolation)) forAll.push(placed);
    byEnergy.set(isolation.energy, placed);
    byEnergy.set(`${isolation.energy} ${fluidOf(isolation) ?? ''}`, placed);
  });
  return {
    placeOf,
    firstForAll: (place) => forAll.find((one) => one.place > place),
    lastOf: (energy, fluidId) => {
      if (fluidId === null) return byEnergy.get(energy);
      const own = byEnergy.get(`${energy} ${fluidId}`);
      const common = byEnergy.get(`${energy} `);
      return (own?.place ?? 0) > (common?.place ?? 0) ? own : common;
    },
  };
}

function coversAll(isolation: Row<'isolation'>): boolean {
  return isolation.scope === 'all' || (isolation.scope === 'fluid' && isolation.fluidId === null);
}

function fluidOf(isolation: Row<'isolation'>): string | null {
  return isolation.scope === 'fluid' ? isolation.fluidId : null;
}

/** Dead work comes before every energy that it was made safe for; the line carries it on from the first. */
function addDead(graph: Graph, line: Line, node: number, place: number): void {
  const first = node < 0 ? undefined : line.firstForAll(place);
  if (first) graph.addEdge(node, first.node, 'isolation');
}

/** The steps that close the openings of a fluid, C1, C2, and what energy each of them needs or must not have. */
function addFluid(graph: Graph, line: Line, after: Map<number, number>, fluidId: string, node: number): void {
  const { log } = graph;
  const fluid = log.fluid.get(fluidId);
  if (!fluid) return;
  const closers = closersOf(graph, fluidId);
  for (const closer of closers) graph.addEdge(closer, node, 'fluid');
  // What only made something safe is closed with its isolation, which has a place of its own in the line.
  const closed = safeOpenings(graph, fluidId);
  const feeds = graph.isolations.filter(
    (isolation) => feedsFill(isolation, fluid) || closed.has(isolation.removalId),
  );
  const place = Math.max(0, ...feeds.map((isolation) => line.placeOf.get(isolation.id) ?? 0));
  const feed = graph.isolations[place - 1];
  if (feed) graph.addEdge(graph.givenBack.get(feed.id) ?? -1, node, 'isolation');
  after.set(node, place);
  addDead(graph, line, node, place);
  if (place === 0) addHiding(graph, fluidId, node, closers);
  const second = graph.bleeding.get(fluidId);
  if (second === undefined) return;
  graph.addEdge(node, second, 'fluid');
  const energy = fluid.liveEnergy === null ? undefined : line.lastOf(fluid.liveEnergy, fluidId);
  if (energy) graph.addEdge(energy.node, second, 'isolation');
  after.set(second, Math.max(place, energy?.place ?? 0));
  if (fluid.liveEnergy === null) addDead(graph, line, second, place);
}

/**
 * A valve that was shut feeds the fill, so it is opened first. A pressure that was let off and that the live work needs is
 * built up only once the system is full.
 */
function feedsFill(isolation: Row<'isolation'>, fluid: Row<'fluid'>): boolean {
  if (fluidOf(isolation) !== fluid.id) return false;
  return isolation.energy !== fluid.liveEnergy || /\b(valve|tap|cock|stopcock)\b/i.test(isolation.how);
}

/** Steps in which an opening of the fluid is closed, and those that waited for its empty system. */
export function closersOf(graph: Graph, fluidId: string): number[] {
  const steps = new Set<number>();
  for (const open of of(graph.log.opensOf, fluidId)) {
    const direct = graph.shared.get(open.thingId) ?? graph.carried.get(open.thingId);
    const owner = ownerOf(graph.log, open.thingId);
    const index = owner === null ? undefined : graph.log.indexOf.get(owner);
    const put = index === undefined ? -1 : (graph.putBack[index] ?? -1);
    if (direct !== undefined) steps.add(direct);
    if (put >= 0) steps.add(put);
    // What came off because the system was empty is on again before it is filled.
    for (const later of graph.needs.behindDrain.get(index ?? -1) ?? []) {
      const step = graph.putBack[later] ?? -1;
      if (step >= 0) steps.add(step);
    }
  }
  return [...steps];
}

/** Removals that only made something safe and opened the fluid by it. */
function safeOpenings(graph: Graph, fluidId: string): ReadonlySet<string> {
  const removals = new Set<string>();
  for (const open of of(graph.log.opensOf, fluidId)) {
    const owner = ownerOf(graph.log, open.thingId);
    const index = owner === null ? undefined : graph.log.indexOf.get(owner);
    if (owner !== null && index !== undefined && (graph.putBack[index] ?? -1) < 0) removals.add(owner);
  }
  return removals;
}

/** A leak check comes before the step that hides its joints, where that step lies further up than every opening. */
function addHiding(graph: Graph, fluidId: string, node: number, closers: readonly number[]): void {
  const { log, needs } = graph;
  let lowest = Number.POSITIVE_INFINITY;
  for (const closer of closers) {
    const one = graph.nodes[closer];
    if (!one || one.kind === 'B' || (one.kind === 'S' && needs.drains[one.index])) continue;
    lowest = Math.min(lowest, one.kind === 'F' ? lowestHolder(graph, closer) : one.index);
  }
  const hiding = new Set<number>();
  for (const open of of(log.opensOf, fluidId)) {
    if (!isHidden(graph, open.thingId)) continue;
    const index = log.indexOf.get(ownerOf(log, open.thingId) ?? '') ?? -1;
    for (const link of needs.links[index] ?? []) if (link.on < lowest) hiding.add(link.on);
  }
  for (const index of hiding) graph.addEdge(node, graph.putBack[index] ?? -1, 'hides a joint');
}

function lowestHolder(graph: Graph, node: number): number {
  let lowest = graph.nodes[node]?.index ?? 0;
  const holds = of(graph.log.holdsOf, graph.nodes[node]?.thingId ?? '');
  for (const hold of holds) {
    const index = graph.log.indexOf.get(graph.log.part.get(hold.partId)?.removalId ?? '');
    if (index !== undefined) lowest = Math.min(lowest, index);
  }
  return lowest;
}

function isHidden(graph: Graph, thingId: string): boolean {
  const { log } = graph;
  return (
    log.connection.get(thingId)?.hidden === true ||
    log.part.get(thingId)?.hidden === true ||
    log.position.get(thingId)?.hidden === true
  );
}

/** Where an isolation protects one fluid or a list, what opens that fluid or stands in the list comes before it. */
function addScope(
  graph: Graph,
  isolation: Row<'isolation'>,
  place: number,
  after: ReadonlyMap<number, number>,
): void {
  const node = graph.givenBack.get(isolation.id) ?? -1;
  const fluidId = fluidOf(isolation);
  if (fluidId !== null) {
    for (const closer of closersOf(graph, fluidId)) graph.addEdge(closer, node, 'isolation');
    const closing = graph.closing.get(fluidId);
    if (closing !== undefined && (after.get(closing) ?? 0) < place) graph.addEdge(closing, node, 'isolation');
  }
  if (isolation.scope !== 'listed') return;
  for (const row of of(graph.log.protectsOf, isolation.id)) {
    const index = graph.log.indexOf.get(row.removalId);
    if (index !== undefined) graph.addEdge(graph.putBack[index] ?? -1, node, 'isolation');
  }
}

const GROUND = /\b(ground|ride height|lowered|on its wheels|under load|loaded|weight)\b/i;
const WARM = /\b(warm|hot|run|running|heat)\b/i;

/** Rule 5: the node that makes the condition of a final tightening true. */
function addCondition(graph: Graph, line: Line, setId: string, node: number): void {
  const when = graph.log.set.get(setId)?.laterWhen ?? '';
  if (GROUND.test(when)) {
    const lowering = line.lastOf('load', null);
    if (lowering) graph.addEdge(lowering.node, node, 'later', { why: when });
  } else if (WARM.test(when)) {
    const live = liveWork(graph);
    const power = graph.givenBack.get(graph.isolations.at(-1)?.id ?? '');
    const makers = live.length > 0 || power === undefined ? live : [power];
    for (const from of makers) graph.addEdge(from, node, 'later', { why: when });
  } else {
    // "after alignment" waits for the own step that is called so.
    const words = longWords(when);
    for (const own of graph.log.state.ownStep) {
      const named = own.kind === 'work' && [...longWords(own.title)].some((word) => words.has(word));
      if (named) graph.addEdge(graph.own.get(own.id) ?? -1, node, 'later', { why: when });
    }
  }
}

function longWords(text: string): ReadonlySet<string> {
  return new Set((text.toLowerCase().match(/[a-z]{5,}/g) ?? []).filter((word) => word !== 'after'));
}

function liveWork(graph: Graph): number[] {
  const live = [...graph.bleeding]
    .filter(([id]) => (graph.log.fluid.get(id)?.liveEnergy ?? null) !== null)
    .map(([, n]) => n);
  for (const own of graph.log.state.ownStep) {
    if (own.liveEnergy !== null && own.kind === 'work') live.push(graph.own.get(own.id) ?? -1);
  }
  return live;
}

/**
 * The user's own steps of dead work come before the energies too, unless the user put them behind one.
 * `place` of a step: the furthest isolation that it comes after, by the edges drawn so far.
 */
export function addOwnDead(graph: Graph): void {
  if (graph.own.size === 0 || graph.isolations.length === 0) return;
  const line: Line = { ...placesOnly(graph) };
  const places = furthestBefore(graph, line);
  for (const own of graph.log.state.ownStep) {
    const node = graph.own.get(own.id);
    if (node === undefined || own.kind === 'recheck' || own.liveEnergy !== null) continue;
    const place = places[node] ?? -1;
    if (place >= 0) addDead(graph, line, node, place);
  }
}

function placesOnly(graph: Graph): Line {
  const placeOf = new Map(graph.isolations.map((isolation, i) => [isolation.id, i + 1]));
  const forAll = graph.isolations
    .map((isolation, i) => ({ isolation, node: graph.givenBack.get(isolation.id) ?? -1, place: i + 1 }))
    .filter(({ isolation }) => coversAll(isolation));
  return {
    placeOf,
    firstForAll: (place) => forAll.find((one) => one.place > place),
    lastOf: () => undefined,
  };
}

/** Furthest place in the line before each node; −1 for nodes in or behind a ring. */
function furthestBefore(graph: Graph, line: Line): Int32Array {
  const n = graph.nodes.length;
  const out = arcs(n, graph.edges);
  const waits = new Int32Array(n);
  for (const edge of graph.edges) waits[edge.to] = (waits[edge.to] ?? 0) + 1;
  const best = new Int32Array(n);
  const places = new Int32Array(n).fill(-1);
  for (const [id, node] of graph.givenBack) best[node] = line.placeOf.get(id) ?? 0;
  const free: number[] = [];
  waits.forEach((wait, node) => {
    if (wait === 0) free.push(node);
  });
  for (let node = free.pop(); node !== undefined; node = free.pop()) {
    places[node] = best[node] ?? 0;
    for (let k = out.start[node] ?? 0; k < (out.start[node + 1] ?? 0); k++) {
      const head = out.to[k] ?? 0;
      best[head] = Math.max(best[head] ?? 0, best[node] ?? 0);
      const left = (waits[head] ?? 0) - 1;
      waits[head] = left;
      if (left === 0) free.push(head);
    }
  }
  return places;
}
