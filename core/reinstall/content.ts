import type { Row } from '../model/tables.ts';
import type { Graph } from './graph.ts';
import { of, staysEmpty, temporaryOut } from './job-log.ts';
import { holeMark, standingOfHole, type Standing } from './standing.ts';
import type { HoleMark } from './types.ts';

export interface Hole {
  readonly position: Row<'position'>;
  readonly set: Row<'fset'>;
  readonly standing: Standing;
  readonly mark: HoleMark;
}

/** The things that one step deals with. */
export interface Content {
  readonly parts: readonly Row<'part'>[];
  readonly holes: readonly Hole[];
  readonly connections: readonly Row<'connection'>[];
  readonly measures: readonly Row<'measure'>[];
  readonly marks: readonly Row<'mark'>[];
  /** Temporaries that come out with this step. */
  readonly temporaries: readonly Row<'temporary'>[];
}

const EMPTY: Content = { parts: [], holes: [], connections: [], measures: [], marks: [], temporaries: [] };

/** What every step deals with, by node. */
export function contents(graph: Graph): Content[] {
  const temporaries = new Map<number, Row<'temporary'>[]>();
  for (const temporary of graph.log.state.temporary) {
    const node = outNode(graph, temporary);
    const list = temporaries.get(node);
    if (list) list.push(temporary);
    else temporaries.set(node, [temporary]);
  }
  const finals = holesOfFinals(graph);
  return graph.nodes.map((node, i) => {
    const own = temporaries.get(i) ?? [];
    const home = node.kind === 'S' ? node.thingId : contentOfSafe(graph, i);
    if (home !== null) return { ...ofRemoval(graph, home), temporaries: own };
    const log = graph.log;
    if (node.kind === 'F') {
      const position = log.position.get(node.thingId);
      return { ...EMPTY, holes: position ? holesOf(graph, [position]) : [], temporaries: own };
    }
    if (node.kind === 'T') return { ...EMPTY, holes: finals.get(node.thingId) ?? [], temporaries: own };
    const part = node.kind === 'B' ? log.part.get(node.thingId) : undefined;
    return own.length > 0 || part ? { ...EMPTY, parts: part ? [part] : [], temporaries: own } : EMPTY;
  });
}

/** The step with which a temporary comes out; −1 where that has no step. */
function outNode(graph: Graph, temporary: Row<'temporary'>): number {
  const removal = temporaryOut(graph.log, temporary);
  if (removal !== null) return graph.stepOfRemoval(removal);
  return temporary.stepThingId === null ? -1 : graph.stepOfThing(temporary.stepThingId);
}

/** A removal that only made something safe: what came off with it goes back with the first of its isolations. */
function contentOfSafe(graph: Graph, node: number): string | null {
  const one = graph.nodes[node];
  if (one?.kind !== 'I') return null;
  const removal = graph.log.removals[one.index];
  return removal && (graph.putBack[one.index] ?? -1) < 0 && graph.stepOfRemoval(removal.id) === node
    ? removal.id
    : null;
}

function ofRemoval(graph: Graph, removalId: string): Content {
  const { log } = graph;
  const sets = of(log.setsOf, removalId);
  const positions: Row<'position'>[] = [];
  for (const set of sets) {
    for (const position of of(log.positionsOf, set.id))
      if (!graph.shared.has(position.id)) positions.push(position);
  }
  return {
    // A kit is a receipt: what it was split into is fitted, each where it belongs.
    parts: of(log.partsOf, removalId).filter((part) => part.kind !== 'kit' && !graph.carried.has(part.id)),
    holes: holesOf(graph, positions),
    connections: of(log.connectionsOf, removalId).filter((connection) => !connection.leaveAlone),
    measures: of(log.measuresOf, removalId),
    marks: of(log.marksOf, removalId),
    temporaries: [],
  };
}

function holesOf(graph: Graph, positions: readonly Row<'position'>[]): Hole[] {
  const { log } = graph;
  const holes: Hole[] = [];
  for (const position of positions) {
    const set = log.set.get(position.setId);
    if (!set) continue;
    const standing = standingOfHole(log, position);
    const mark = holeMark(log, position, standing);
    // Found empty, and nobody has said that it is to be filled: no hole to fill.
    if (staysEmpty(graph.log, position) && (mark === 'out' || mark === 'left out')) continue;
    holes.push({ position, set, standing, mark });
  }
  return holes;
}

function holesOfFinals(graph: Graph): Map<string, Hole[]> {
  const found = new Map<string, Hole[]>();
  for (const setId of graph.final.keys()) found.set(setId, holesOf(graph, of(graph.log.positionsOf, setId)));
  return found;
}
