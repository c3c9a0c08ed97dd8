import { isGateKind, type Situation } from './situation.ts';
import type { Finding, Gate, GateKind, Lack, StepState } from './types.ts';

export interface States {
  readonly state: StepState[];
  /** By node: keys of stop findings that hold it; where many stand below, one example. */
  readonly stoppedBy: string[][];
  readonly ahead: Set<number>;
}

/** Whether an edge carries a stop upwards: what covers, and every edge into filling, bleeding, power and pressure. */
export function carries(at: Situation, edge: number): boolean {
  const one = at.graph.edges[edge];
  return one !== undefined && (one.covers || isGateKind(at.graph, one.to));
}

/**
 * done · behind · waiting · held · ready: the first that fits. "A stop underneath" is one pass along the list, carrying
 * one example; a step is not held by what lies on itself, which is mended in it, unless it was ticked already.
 */
export function statesOf(
  at: Situation,
  lacks: readonly (readonly Lack[])[],
  findings: readonly Finding[],
): States {
  const n = at.graph.nodes.length;
  const own: string[][] = Array.from({ length: n }, () => []);
  const self: string[][] = Array.from({ length: n }, () => []);
  for (const finding of findings) {
    if (finding.severity !== 'stop' || finding.accepted) continue;
    const node = at.graph.numberOf.get(finding.stepId ?? '');
    if (node !== undefined) own[node]?.push(finding.key);
    for (const id of finding.holds) {
      const held = at.graph.numberOf.get(id);
      if (held === undefined) continue;
      self[held]?.push(finding.key);
      if (held !== node) own[held]?.push(finding.key);
    }
  }
  const below: (string | null)[] = new Array<string | null>(n).fill(null);
  const ancestorsDone = new Uint8Array(n).fill(1);
  const state: StepState[] = new Array<StepState>(n).fill('ready');
  const stoppedBy: string[][] = Array.from({ length: n }, () => []);
  const ahead = new Set<number>();
  for (const node of at.ordered.order) {
    let example: string | null = null;
    let free = true;
    const direct = new Set<string>(self[node]);
    for (let k = at.into.start[node] as number; k < (at.into.start[node + 1] as number); k++) {
      const before = at.into.to[k] as number;
      if (!at.progress[before]?.done || ancestorsDone[before] === 0) ancestorsDone[node] = 0;
      if (!at.progress[before]?.done && !ahead.has(before)) free = false;
      if (!carries(at, at.into.edge[k] as number)) continue;
      for (const key of own[before] ?? []) direct.add(key);
      example ??= own[before]?.[0] ?? below[before] ?? null;
    }
    below[node] = example;
    stoppedBy[node] = direct.size > 0 ? [...direct] : example === null ? [] : [example];
    const ring = (at.ordered.block[node] ?? -1) >= 0;
    const lack = (lacks[node]?.length ?? 0) > 0;
    const held = direct.size > 0 || example !== null || ring;
    if (at.progress[node]?.done) state[node] = 'done';
    else if (ancestorsDone[node] === 0) state[node] = 'behind';
    else if (lack) state[node] = 'waiting';
    else if (held) state[node] = 'held';
    if (!at.progress[node]?.done && !lack && !held && free) ahead.add(node);
  }
  return { state, stoppedBy, ahead };
}

const GATES: Partial<Record<string, GateKind>> = {
  electricity: 'power or pressure',
  ignition: 'power or pressure',
  pressure: 'power or pressure',
  fuel: 'power or pressure',
  motion: 'power or pressure',
  heat: 'power or pressure',
  spring: 'power or pressure',
  load: 'lowering or moving',
};

function gateKind(at: Situation, node: number): GateKind | null {
  const one = at.graph.nodes[node];
  if (one?.kind === 'C1') return 'filling';
  if (one?.kind === 'C2') return 'power or pressure';
  if (one?.kind === 'I') return GATES[at.graph.log.isolation.get(one.thingId)?.energy ?? ''] ?? null;
  return null;
}

/** Everything below a node along the edges that carry a stop. Walked only for the gates that are shown. */
function allBelow(at: Situation, node: number): Set<number> {
  const seen = new Set<number>();
  const open = [node];
  for (let next = open.pop(); next !== undefined; next = open.pop())
    for (let k = at.into.start[next] as number; k < (at.into.start[next + 1] as number); k++) {
      const before = at.into.to[k] as number;
      if (seen.has(before) || !carries(at, at.into.edge[k] as number)) continue;
      seen.add(before);
      open.push(before);
    }
  return seen;
}

/**
 * Gates: before filling, power or pressure, lowering; before covering only where something holds it or was passed by
 * name; and one before the job is handed over. `notYet` names steps that are simply not done.
 */
export function gatesOf(at: Situation, states: States, findings: readonly Finding[]): Gate[] {
  const gates: Gate[] = [];
  const stops = findings.filter((finding) => finding.severity === 'stop');
  for (const node of at.ordered.order) {
    const one = at.graph.nodes[node];
    if (!one) continue;
    const fixed = gateKind(at, node);
    // A stop far below is under every step above it: only those that somebody could turn to now get a gate of their own.
    const turn = states.state[node] === 'held' || states.state[node] === 'waiting';
    const covering = fixed === null && turn && states.stoppedBy[node]?.length !== 0;
    if (fixed === null && !covering) continue;
    gates.push(gateAt(at, fixed ?? 'covering', node, stops));
  }
  if (at.graph.nodes.length > 0) gates.push(gateAt(at, 'closing', -1, stops));
  return gates;
}

function gateAt(at: Situation, kind: GateKind, node: number, stops: readonly Finding[]): Gate {
  const below = node < 0 ? null : allBelow(at, node);
  const mine = stops.filter((finding) => {
    return (
      below === null ||
      [finding.stepId ?? '', ...finding.holds].some((id) => below.has(at.graph.numberOf.get(id) ?? -1)) ||
      finding.holds.includes(at.graph.nodes[node]?.id ?? '')
    );
  });
  const holding = mine.filter((finding) => finding.accepted === null).map((finding) => finding.key);
  const notYet: { stepId: string; sentence: string }[] = [];
  for (const other of below ?? at.graph.nodes.keys()) {
    const step = at.graph.nodes[other];
    if (step && step.kind !== 'K' && !at.progress[other]?.done && notYet.length < 200)
      notYet.push({
        stepId: step.id,
        sentence: at.progress[other]?.missing[0]?.sentence ?? 'It is not done.',
      });
  }
  return {
    id: node < 0 ? 'gate:closing' : `gate:${at.graph.nodes[node]?.id ?? ''}`,
    kind,
    stepId: at.graph.nodes[node]?.id ?? null,
    open: holding.length === 0 && notYet.length === 0,
    holding,
    notYet,
    passedBy: mine.flatMap((finding) =>
      finding.accepted
        ? [
            {
              finding: finding.key,
              personId: finding.accepted.personId,
              why: finding.accepted.why,
              at: finding.accepted.at,
            },
          ]
        : [],
    ),
  };
}
