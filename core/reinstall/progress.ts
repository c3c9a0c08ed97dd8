import type { Row } from '../model/tables.ts';
import type { Content, Hole } from './content.ts';
import { arcs, type Graph, type PlanNode } from './graph.ts';
import { isIn, isTight, last, standing } from './standing.ts';
import type { Missing } from './types.ts';

/** How far one step is. */
export interface Progress {
  readonly done: boolean;
  readonly round: number;
  /** Ticked as a whole, in this round; UTC ms, 0 = not. */
  readonly wholeAt: number;
  /** Something of it was done singly in this round, so that what was not is known to be open. */
  readonly touched: boolean;
  /** Last deed on it, UTC ms; 0 = none. */
  readonly lastAt: number;
  readonly missing: readonly Missing[];
}

/** Progress of every step. Final tightenings come last, because they count only after their condition came true. */
export function progressOf(graph: Graph, content: readonly Content[]): Progress[] {
  const progress: Progress[] = [];
  graph.nodes.forEach((node, i) => {
    if (node.kind !== 'T') progress[i] = progressOfNode(graph, node, content[i] as Content);
  });
  if (graph.final.size === 0) return progress;
  const into = arcs(graph.nodes.length, graph.edges, true);
  for (const node of graph.final.values()) {
    let since = 0;
    for (let k = into.start[node] ?? 0; k < (into.start[node + 1] ?? 0); k++) {
      const edge = graph.edges[into.edge[k] ?? 0];
      if (edge?.rule !== 'later' || edge.why === '') continue;
      const before = progress[edge.from];
      since = Math.max(since, before?.done ? before.lastAt : Number.POSITIVE_INFINITY);
    }
    progress[node] = finalProgress(graph, graph.nodes[node] as PlanNode, content[node] as Content, since);
  }
  return progress;
}

function progressOfNode(graph: Graph, node: PlanNode, content: Content): Progress {
  switch (node.kind) {
    case 'S':
      return ofThings(graph, node.thingId, content);
    case 'I': {
      const own = standing(graph.log, node.thingId);
      const given = last(own, 'given back', 'done');
      // What came off beside an isolation has a step of its own, whose ticks are no news of the isolation.
      const home = (graph.putBack[node.index] ?? -1) < 0 ? graph.log.removals[node.index]?.id : undefined;
      const rest = ofThings(graph, home ?? node.thingId, content);
      const missing = given
        ? rest.missing
        : [...rest.missing, miss(node.thingId, 'given back', 'It is not given back.')];
      return {
        ...rest,
        done: given !== undefined,
        wholeAt: given?.at ?? 0,
        // What waits for it waits for the giving back, not for what was ticked after it.
        lastAt: given?.at ?? rest.lastAt,
        missing,
        round: own.round,
      };
    }
    case 'F':
    case 'B':
      return ofThings(graph, node.thingId, content);
    case 'C1':
    case 'C2':
      return ofFluid(graph, node, content);
    case 'T':
    case 'U':
    case 'K':
      return ofOwn(graph, node, content);
  }
}

function miss(thingId: string, what: Missing['what'], sentence: string): Missing {
  return { thingId, what, sentence };
}

/** A step made of things: done as a whole, or when each of them is through. */
function ofThings(graph: Graph, thingId: string, content: Content): Progress {
  const { log } = graph;
  const own = standing(log, thingId);
  let lastAt = own.deeds.at(-1)?.at ?? 0;
  let offAt = own.offAt;
  let touched = false;
  const missing: Missing[] = [];
  const see = (deeds: readonly Row<'deed'>[], off: number) => {
    if (deeds.length > 0) touched = true;
    lastAt = Math.max(lastAt, deeds.at(-1)?.at ?? 0);
    offAt = Math.max(offAt, off);
  };
  for (const hole of content.holes) {
    see(hole.standing.deeds, hole.standing.offAt);
    if (!isIn(hole.mark) && hole.mark !== 'left out') missing.push(missingHole(hole));
  }
  for (const part of content.parts) {
    const state = standing(log, part.id, part.removalId);
    see(state.deeds, state.offAt);
    if (part.fate !== 'leave out' && !last(state, 'fitted', 'left out', 'done')) {
      missing.push(miss(part.id, 'fitted', `${part.name || 'The part'} is not back.`));
    }
  }
  for (const connection of content.connections) {
    const state = standing(log, connection.id, connection.removalId);
    see(state.deeds, state.offAt);
    if (!last(state, 'joined', 'tightened', 'left out', 'done')) {
      missing.push(miss(connection.id, 'joined', `${connection.name || 'The connection'} is not joined.`));
    }
  }
  for (const measure of content.measures) {
    const state = standing(log, measure.id, measure.removalId);
    if (measure.required && !last(state, 'measured', 'done')) {
      missing.push(miss(measure.id, 'measured', `${measure.what} is not measured.`));
    }
  }
  missing.push(...missingTemporaries(graph, content));
  const whole = wholeDeed(own, offAt);
  const items = content.holes.length + content.parts.length + content.connections.length;
  return {
    done: whole !== undefined || (items > 0 && missing.length === 0),
    round: own.round,
    wholeAt: whole?.at ?? 0,
    touched,
    lastAt,
    missing,
  };
}

/** "Done" on the step itself holds until something of it came off again. */
function wholeDeed(own: { readonly deeds: readonly Row<'deed'>[] }, offAt: number): Row<'deed'> | undefined {
  const deed = own.deeds.findLast((one) => one.what === 'done');
  return deed && deed.at >= offAt ? deed : undefined;
}

/** Slackened where it sits; nothing of it is in a bag. */
function neverLeft({ set, position }: Pick<Hole, 'set' | 'position'>): boolean {
  return set.how === 'slackened' && position.found !== 'new hole';
}

function missingHole(hole: Hole): Missing {
  const { position, set, mark } = hole;
  const name = `${set.name || 'fasteners'}, hole ${position.n}`;
  if (mark === 'started') return miss(position.id, 'tightened', `${name}: started, not tight.`);
  const what = set.laterWhen === null ? 'tightened' : 'started';
  // A slackened one never left its hole: it is loose on the machine, never short.
  if (neverLeft(hole) && mark === 'out') return miss(position.id, what, `${name}: slackened, not tight.`);
  return miss(position.id, what, `${name}: ${mark === 'blocked' ? 'blocked' : 'empty'}.`);
}

function missingTemporaries(graph: Graph, content: Content): Missing[] {
  return content.temporaries
    .filter((temporary) => isInPlace(graph, temporary))
    .map((temporary) => miss(temporary.id, 'taken out', `${temporary.name} is still in place.`));
}

/** In the machine now: put in on the way out and never taken out, or put in again since. */
export function isInPlace(graph: Graph, temporary: Row<'temporary'>): boolean {
  const deed = graph.log.deedsOf
    .get(temporary.id)
    ?.findLast((one) => ['put in', 'fitted', 'taken out', 'done'].includes(one.what));
  if (deed) return deed.what === 'put in' || deed.what === 'fitted';
  return temporary.removalId !== null && temporary.role !== 'aid';
}

function ofFluid(graph: Graph, node: PlanNode, content: Content): Progress {
  const fluid = graph.log.fluid.get(node.thingId);
  const own = standing(graph.log, node.thingId);
  const missing = missingTemporaries(graph, content);
  const has = (...what: Row<'deed'>['what'][]) => last(own, ...what) !== undefined;
  if (fluid && node.kind === 'C1') {
    if (fluid.lost !== 'none' && !has('filled'))
      missing.push(miss(fluid.id, 'filled', `${fluid.name} is not filled.`));
    if (!has('cold leak checked')) {
      missing.push(miss(fluid.id, 'cold leak checked', `${fluid.name} is not checked for leaks, cold.`));
    }
  } else if (fluid) {
    if (fluid.bleed && !has('bled')) missing.push(miss(fluid.id, 'bled', `${fluid.name} is not bled.`));
    if (fluid.liveEnergy !== null && !has('hot leak checked')) {
      missing.push(miss(fluid.id, 'hot leak checked', `${fluid.name} is not checked for leaks, hot.`));
    }
  }
  const whole = last(own, 'done');
  const wanted: readonly string[] =
    node.kind === 'C1' ? ['filled', 'cold leak checked'] : ['bled', 'hot leak checked'];
  const mine = own.deeds.filter((deed) => wanted.includes(deed.what) || deed.what === 'done');
  return {
    done: whole !== undefined || missing.length === 0,
    round: own.round,
    wholeAt: whole?.at ?? 0,
    touched: mine.length > 0,
    lastAt: mine.at(-1)?.at ?? 0,
    missing,
  };
}

/** Own steps and re-checks. A re-check of a set is its own deed, after the tightening was. */
function ofOwn(graph: Graph, node: PlanNode, content: Content): Progress {
  const own = standing(graph.log, node.thingId);
  const set = graph.log.set.get(node.thingId);
  const whole = set ? last(own, 'measured', 'paint-checked') : last(own, 'done');
  const missing = [
    ...(whole ? [] : [miss(node.thingId, 'done', set ? 'It is not re-checked.' : 'It is not done.')]),
    ...missingTemporaries(graph, content),
  ];
  return {
    done: whole !== undefined,
    round: own.round,
    wholeAt: whole?.at ?? 0,
    touched: whole !== undefined,
    lastAt: whole?.at ?? 0,
    missing,
  };
}

/** Tightening counts as the final one only when it was done after its condition came true. */
function finalProgress(graph: Graph, node: PlanNode, content: Content, since: number): Progress {
  const set = graph.log.set.get(node.thingId);
  const own = standing(graph.log, node.thingId, set?.removalId ?? null);
  const missing: Missing[] = [];
  let lastAt = 0;
  for (const hole of content.holes) {
    if (hole.mark === 'left out') continue;
    const tight = isTight(hole.mark) ? last(hole.standing, 'tightened', 'paint-checked', 'done') : undefined;
    lastAt = Math.max(lastAt, tight?.at ?? 0);
    if (tight && tight.at >= since) continue;
    const name = `${hole.set.name || 'fasteners'}, hole ${hole.position.n}`;
    missing.push(
      miss(hole.position.id, 'tightened', `${name}: final tightening is due ${set?.laterWhen ?? 'later'}.`),
    );
  }
  const whole = last(own, 'done');
  return {
    done: whole !== undefined || missing.length === 0,
    round: own.round,
    wholeAt: whole?.at ?? 0,
    touched: lastAt > 0,
    lastAt: Math.max(lastAt, whole?.at ?? 0),
    missing,
  };
}
