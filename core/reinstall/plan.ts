import { readRound } from '../fastening/index.ts';
import type { JobState } from '../model/tables.ts';
import { actionsOf } from './actions.ts';
import { cautionsOf } from './cautions.ts';
import { isOff, of } from './job-log.ts';
import { ringOf } from './rings.ts';
import { type Situation, titleOf } from './situation.ts';
import { last } from './standing.ts';
import { gatesOf, type States } from './states.ts';
import type { Depth, Edge, Lack, Later, Plan, Step, StepFasteners, Undecided } from './types.ts';
import { weighed } from './weighed.ts';

/**
 * The reinstall list of a job at a time (UTC ms): steps in order with their state, gates, findings, what can go ahead.
 * A pure function of the rows; linear in their number. Order: Kahn 1962.
 */
export function planJob(state: JobState, now: number): Plan {
  const { at, lacks, findings, states } = weighed(state, now);
  const onStep = new Map<string, string[]>();
  for (const finding of findings)
    if (finding.stepId !== null)
      onStep.set(finding.stepId, [...(onStep.get(finding.stepId) ?? []), finding.key]);
  const steps = [...at.ordered.order].map((node) => stepOf(at, node, lacks[node] ?? [], states, onStep));
  return {
    steps,
    edges: at.graph.edges.map((edge): Edge => {
      const { rule, assumed, covers, mayLoosen, why } = edge;
      return { from: idOf(at, edge.from), to: idOf(at, edge.to), rule, assumed, covers, mayLoosen, why };
    }),
    gates: gatesOf(at, states, findings),
    findings,
    ahead: new Set([...states.ahead].map((node) => idOf(at, node))),
    later: laterOf(at),
    undecided: undecidedOf(at),
    depth: depthOf(at),
  };
}

const idOf = (at: Situation, node: number): string => at.graph.nodes[node]?.id ?? '';

function stepOf(
  at: Situation,
  node: number,
  lacks: readonly Lack[],
  states: States,
  onStep: ReadonlyMap<string, readonly string[]>,
): Step {
  const one = at.graph.nodes[node];
  const progress = at.progress[node];
  if (!one || !progress) throw new Error('Expected a node of the graph.');
  const removal = one.kind === 'S' || one.kind === 'I' ? at.graph.log.removals[one.index] : undefined;
  const state = states.state[node] ?? 'ready';
  const before = beforeOf(at, node);
  return {
    id: one.id,
    kind: one.kind,
    thingId: one.thingId,
    removalId: one.index >= 0 ? (at.graph.log.removals[one.index]?.id ?? null) : null,
    number: one.index >= 0 ? numberOf(at, one.index) : null,
    title: titleOf(at.graph, node),
    state,
    round: progress.round,
    lacks,
    why: whyOf(at, state, lacks, before, states.stoppedBy[node]?.length ?? 0),
    firstDo: before.map((other) => idOf(at, other)),
    ask: state === 'behind' ? askOf(at, node) : [],
    stoppedBy: states.stoppedBy[node] ?? [],
    findings: onStep.get(one.id) ?? [],
    actions: actionsOf(at, node),
    fasteners: fastenersOf(at, node),
    renew: (at.content[node]?.parts ?? [])
      .filter((part) => part.renew === 'must' || part.fate === 'renew')
      .map((part) => part.id),
    notes: [removal?.noteBack ?? ''].filter((note) => note !== '' && one.kind === 'S'),
    cautions: cautionsOf(at, node),
    missing: progress.done ? [] : progress.missing,
    coversCount: null,
    gate:
      (states.stoppedBy[node]?.length ?? 0) > 0 || ['C1', 'C2', 'I'].includes(one.kind)
        ? `gate:${one.id}`
        : null,
  };
}

/** The number of a removal in the log as people see it: void ones are not counted. */
function numberOf(at: Situation, index: number): number {
  return at.numbers[index] ?? index + 1;
}

function beforeOf(at: Situation, node: number): number[] {
  const before = new Set<number>();
  for (let k = at.into.start[node] as number; k < (at.into.start[node + 1] as number); k++) {
    const other = at.into.to[k] as number;
    if (!at.progress[other]?.done) before.add(other);
  }
  return [...before];
}

function whyOf(
  at: Situation,
  state: Step['state'],
  lacks: readonly Lack[],
  before: readonly number[],
  stops: number,
): string {
  switch (state) {
    case 'done':
    case 'ready':
      return '';
    case 'behind': {
      const first = before[0];
      if (first === undefined) return 'Something further down is not done.';
      const more = before.length > 1 ? ` and ${before.length - 1} more` : '';
      return `First do ${titleOf(at.graph, first) || `removal ${numberOf(at, at.graph.nodes[first]?.index ?? 0)}`}${more}.`;
    }
    case 'waiting':
      return lacks.map((lack) => lack.sentence).join(' ');
    case 'held':
      return stops === 0
        ? 'It waits in a ring of steps.'
        : 'Something underneath is open that it would cover.';
  }
}

/** The assumed needs behind which a step waits: asked about now, and not before. */
function askOf(at: Situation, node: number): Step['ask'] {
  const ask: { removalId: string; needsId: string; question: string }[] = [];
  for (let k = at.into.start[node] as number; k < (at.into.start[node + 1] as number); k++) {
    const edge = at.graph.edges[at.into.edge[k] as number];
    const other = at.into.to[k] as number;
    if (!edge?.assumed || edge.rule !== 'need' || at.progress[other]?.done) continue;
    const later = at.graph.log.removals[at.graph.nodes[other]?.index ?? -1];
    const earlier = at.graph.log.removals[at.graph.nodes[node]?.index ?? -1];
    if (!later || !earlier) continue;
    const name = (removal: typeof later, index: number) =>
      `${numberOf(at, index)}${removal.title ? ` (${removal.title})` : ''}`;
    const apart =
      later.place !== '' && earlier.place !== '' && later.place !== earlier.place
        ? ` They are in different places: ${later.place}, ${earlier.place}.`
        : '';
    ask.push({
      removalId: later.id,
      needsId: earlier.id,
      question: `Does ${name(later, at.graph.nodes[other]?.index ?? 0)} really have to go in before ${name(earlier, at.graph.nodes[node]?.index ?? 0)}?${apart}`,
    });
  }
  return ask;
}

function fastenersOf(at: Situation, node: number): StepFasteners[] {
  const bySet = new Map<string, StepFasteners & { holes: StepFasteners['holes'][number][] }>();
  for (const { position, set, standing, mark } of at.content[node]?.holes ?? []) {
    let entry = bySet.get(set.id);
    if (!entry) {
      entry = {
        setId: set.id,
        name: set.name,
        holes: [],
        torqueNm: set.torqueMnm === null ? null : set.torqueMnm / 1000,
        torqueTyped: set.torqueTyped,
        angleDeg: set.angleDeg,
        stages: set.stages,
        laterWhen: set.laterWhen,
        mustBeNew: set.renew === 'must',
      };
      bySet.set(set.id, entry);
    }
    const read = standing.deeds.findLast((deed) => deed.what === 'tightened' && deed.value !== null);
    const through = last(standing, 'started', 'tightened', 'paint-checked')?.valueTyped ?? '';
    entry.holes.push({
      positionId: position.id,
      n: position.n,
      mark,
      specId: position.specId ?? set.specId,
      stowId: position.stowId ?? set.stowId,
      hidden: position.hidden,
      reachedNm: read?.value ?? null,
      round: readRound(through) ? through : '',
    });
  }
  return [...bySet.values()];
}

function laterOf(at: Situation): Later[] {
  return [...at.graph.final].flatMap(([setId, node]) => {
    const progress = at.progress[node];
    if (!progress || progress.done) return [];
    const due = beforeOf(at, node).length === 0;
    const when = at.graph.log.set.get(setId)?.laterWhen ?? '';
    return [{ stepId: idOf(at, node), setId, when, holesLeft: progress.missing.length, due }];
  });
}

function undecidedOf(at: Situation): Undecided[] {
  return at.ordered.blocks.map((block) => {
    const ring = ringOf(at.graph, block[0] ?? 0, new Set(block));
    return {
      stepIds: block.map((node) => idOf(at, node)),
      ring: ring.nodes.map((node) => idOf(at, node)),
      mayLoosen: ring.edges
        .filter((edge) => edge.mayLoosen)
        .map((edge): Edge => ({ ...edge, from: idOf(at, edge.from), to: idOf(at, edge.to) })),
    };
  });
}

/** Off, back, left: removals that took, slackened, opened or moved something; pieces that came off. */
function depthOf(at: Situation): Depth {
  let off = 0;
  let back = 0;
  at.graph.log.removals.forEach((removal, i) => {
    if (!isOff(removal)) return;
    off += 1;
    const node = at.graph.putBack[i] ?? -1;
    const isolations = of(at.graph.log.isolationsOf, removal.id).map(
      (row) => at.graph.givenBack.get(row.id) ?? -1,
    );
    const nodes = node >= 0 ? [node] : isolations;
    if (nodes.length > 0 && nodes.every((one) => at.progress[one]?.done)) back += 1;
  });
  const { log } = at.graph;
  let pieces = 0;
  for (const move of at.state.move) {
    const owner = log.set.get(move.homeSetId ?? '') ?? log.part.get(move.partId ?? '');
    const removal = log.removals[log.indexOf.get(owner?.removalId ?? '') ?? -1];
    if (move.src === 'hole' && move.cause === 'came off' && removal?.phase !== 'void') pieces += move.qty;
  }
  return { off, back, left: off - back, pieces };
}
