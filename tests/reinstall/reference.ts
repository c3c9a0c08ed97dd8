import type { JobState, Row } from '../../core/model/tables.ts';

/**
 * The reinstall list by brute force, for jobs of a handful of removals: written from the specification alone, slowly and
 * plainly, to be compared with the planner. Nodes are named by kind and the thing they are ticked on.
 */
export interface Reference {
  readonly nodes: readonly string[];
  /** "u>v" for every pair with u before v, however far apart. */
  readonly before: ReadonlySet<string>;
  /** Null where the order of choice is not laid down: own steps, final tightenings, bench steps. */
  readonly order: readonly string[] | null;
  readonly done: ReadonlySet<string>;
  readonly behind: ReadonlySet<string>;
  readonly lacking: ReadonlySet<string>;
  readonly ahead: ReadonlySet<string>;
}

type Pair = readonly [string, string];

interface Log {
  readonly state: JobState;
  readonly removals: readonly Row<'removal'>[];
  readonly index: ReadonlyMap<string, number>;
  /** Removals with a step of their own. */
  readonly stepping: ReadonlySet<string>;
  /** What only made something safe, or a plug opened to drain: needs on it pass through it. */
  readonly through: ReadonlySet<string>;
}

function readLog(state: JobState): Log {
  const removals = [...state.removal].sort((a, b) => (a.ord < b.ord ? -1 : 1));
  const drains = new Set(state.opens.map((one) => one.thingId));
  return {
    state,
    removals,
    index: new Map(removals.map((one, i) => [one.id, i])),
    stepping: new Set(removals.filter((one) => one.did !== 'safe').map((one) => one.id)),
    through: new Set(
      removals
        .filter((one) => one.did === 'safe' || (one.did === 'opened' && drains.has(one.id)))
        .map((one) => one.id),
    ),
  };
}

/** Needs as said: the default chain per bench, and what is stored. */
function saidNeeds(log: Log): Map<string, Set<string>> {
  const needs = new Map(log.removals.map((one) => [one.id, new Set<string>()]));
  const last = new Map<string | null, string>();
  const benchOf = (id: string) => log.removals.find((one) => one.id === id)?.benchPartId;
  for (const one of log.removals) {
    const before = last.get(one.benchPartId);
    const assembly = log.state.part.find((part) => part.id === one.benchPartId)?.removalId;
    const own = needs.get(one.id) ?? new Set();
    if (one.defaultNeed !== 'loosened' && (before ?? assembly)) own.add(before ?? assembly ?? '');
    // The first on a bench may be loosened like any other; a later one still belongs to its assembly.
    const stored = log.state.need.filter((need) => need.removalId === one.id).map((need) => need.needsId);
    const tied = [...own, ...stored].some((id) => benchOf(id) === one.benchPartId);
    if (assembly && before !== undefined && !tied) own.add(assembly);
    last.set(one.benchPartId, one.id);
  }
  for (const need of log.state.need) needs.get(need.removalId)?.add(need.needsId);
  return needs;
}

/** Whoever needed what has no lasting step needs what that needed. */
function needsOf(log: Log): Map<string, Set<string>> {
  const said = saidNeeds(log);
  const found = new Map<string, Set<string>>();
  for (const one of log.removals) {
    const through = new Set<string>();
    const open = [...(said.get(one.id) ?? [])];
    for (let need = open.pop(); need !== undefined; need = open.pop())
      if (log.through.has(need)) open.push(...(said.get(need) ?? []));
      else through.add(need);
    found.set(one.id, through);
  }
  return found;
}

/** What was said to need the drained system, directly or through what has no lasting step, is on before the fill. */
function behindDrains(log: Log, fluidId: string): string[] {
  const said = saidNeeds(log);
  const drains = new Set(log.state.opens.filter((one) => one.fluidId === fluidId).map((one) => one.thingId));
  return [...log.stepping].filter((id) => {
    const seen = new Set<string>();
    const open = [...(said.get(id) ?? [])];
    for (let need = open.pop(); need !== undefined; need = open.pop()) {
      if (!log.through.has(need) || seen.has(need)) continue;
      seen.add(need);
      open.push(...(said.get(need) ?? []));
    }
    return [...seen].some((one) => drains.has(one));
  });
}

function closure(nodes: readonly string[], pairs: readonly Pair[]): Set<string> {
  const before = new Set(pairs.map(([u, v]) => `${u}>${v}`));
  for (const k of nodes)
    for (const u of nodes)
      if (before.has(`${u}>${k}`))
        for (const v of nodes) if (before.has(`${k}>${v}`)) before.add(`${u}>${v}`);
  return before;
}

interface Shared {
  readonly positionId: string;
  readonly home: string;
  readonly holders: readonly string[];
}

function sharedPositions(log: Log): Shared[] {
  const { state } = log;
  return state.position.flatMap((position) => {
    const home = state.fset.find((set) => set.id === position.setId)?.removalId ?? '';
    const others = state.holds
      .filter((one) => one.positionId === position.id)
      .map((one) => state.part.find((part) => part.id === one.partId)?.removalId ?? home);
    const holders = [...new Set([home, ...others])];
    return holders.length > 1 ? [{ positionId: position.id, home, holders }] : [];
  });
}

const step = (removalId: string): string => `S:${removalId}`;

/** Rules 1 and 2: removals among themselves, and positions that hold more than one part. */
function rules12(log: Log): { nodes: string[]; pairs: Pair[] } {
  const needs = needsOf(log);
  const nodes = log.removals.filter((one) => log.stepping.has(one.id)).map((one) => step(one.id));
  const pairs: Pair[] = [];
  for (const one of log.removals)
    if (log.stepping.has(one.id))
      for (const need of needs.get(one.id) ?? []) pairs.push([step(one.id), step(need)]);
  const reach = closure(nodes, pairs);
  for (const { positionId, home, holders } of sharedPositions(log)) {
    if (holders.every((one) => one === home || reach.has(`${step(one)}>${step(home)}`))) continue;
    const own = `F:${positionId}`;
    nodes.push(own);
    const lo = Math.min(...holders.map((one) => log.index.get(one) ?? 0));
    for (const one of holders) pairs.push([step(one), own]);
    for (const need of needs.get(home) ?? [])
      if ((log.index.get(need) ?? 0) < lo) pairs.push([own, step(need)]);
  }
  return { nodes, pairs };
}

/** Rules 3 to 5: fluids, energies, final tightenings, and what is carried over. */
function rules345(log: Log, dead: readonly string[]): { nodes: string[]; pairs: Pair[] } {
  const { state } = log;
  const nodes: string[] = [];
  const pairs: Pair[] = [];
  const resting = [...dead];
  for (const part of state.part) {
    if (part.fate !== 'carry over') continue;
    const onto = state.part.find((one) => one.id === part.carryToId)?.removalId;
    nodes.push(`B:${part.id}`);
    resting.push(`B:${part.id}`);
    if (onto) pairs.push([`B:${part.id}`, step(onto)]);
    // Its own bolts go in when it is on its new parent.
    if (part.removalId) pairs.push([`B:${part.id}`, step(part.removalId)]);
  }
  for (const one of state.ownStep) {
    nodes.push(`U:${one.id}`);
    resting.push(`U:${one.id}`);
  }
  const live: { node: string; energy: string }[] = [];
  for (const fluid of state.fluid) {
    const [c1, c2] = [`C1:${fluid.id}`, `C2:${fluid.id}`];
    nodes.push(c1);
    resting.push(c1);
    for (const one of state.opens) if (one.fluidId === fluid.id) pairs.push([step(one.thingId), c1]);
    for (const one of behindDrains(log, fluid.id)) pairs.push([step(one), c1]);
    if (!fluid.bleed && fluid.liveEnergy === null) continue;
    nodes.push(c2);
    pairs.push([c1, c2]);
    if (fluid.liveEnergy === null) resting.push(c2);
    else live.push({ node: c2, energy: fluid.liveEnergy });
  }
  const made = [...state.isolation].sort(
    (a, b) => (log.index.get(a.removalId) ?? 0) - (log.index.get(b.removalId) ?? 0),
  );
  made.forEach((isolation, i) => {
    const own = `I:${isolation.id}`;
    nodes.push(own);
    const listed = state.protects.filter((one) => one.isolationId === isolation.id);
    const scope = isolation.scope === 'listed' ? listed.map((one) => step(one.removalId)) : resting;
    for (const one of scope) pairs.push([one, own]);
    for (const later of made.slice(i + 1)) pairs.push([`I:${later.id}`, own]);
    for (const one of live) if (one.energy === isolation.energy) pairs.push([own, one.node]);
  });
  for (const set of state.fset) {
    if (set.laterWhen === null) continue;
    const own = `T:${set.id}`;
    nodes.push(own);
    pairs.push([step(set.removalId), own]);
    if (set.laterWhen === 'on the ground')
      for (const one of made) if (one.energy === 'load') pairs.push([`I:${one.id}`, own]);
    if (set.laterWhen === 'warm') {
      for (const one of live) pairs.push([one.node, own]);
      for (const one of made) pairs.push([`I:${one.id}`, own]);
    }
  }
  return { nodes, pairs };
}

/** Order of choice among free nodes: F and fluids at once, then removals by latest in the log, isolations last, then id. */
function choose(log: Log, nodes: readonly string[], before: ReadonlySet<string>): string[] | null {
  if (nodes.some((one) => /^[BTUK]:/.test(one))) return null;
  const rank = (node: string): readonly [number, number] => {
    const [kind = '', id = ''] = node.split(':');
    // A plug that was opened to drain is closed as soon as it may be.
    if (log.through.has(id)) return [-1, -(log.index.get(id) ?? 0)];
    if (kind === 'S') return [3, -(log.index.get(id) ?? 0)];
    return [['F', 'C1', 'C2', 'S', 'I'].indexOf(kind), kind === 'F' ? -homeOf(id) : 0];
  };
  const homeOf = (positionId: string): number => {
    const setId = log.state.position.find((one) => one.id === positionId)?.setId;
    return log.index.get(log.state.fset.find((one) => one.id === setId)?.removalId ?? '') ?? 0;
  };
  const left = new Set(nodes);
  const order: string[] = [];
  while (left.size > 0) {
    const free = [...left].filter((v) => ![...left].some((u) => before.has(`${u}>${v}`)));
    free.sort((a, b) => {
      const [x, y] = [rank(a), rank(b)];
      return x[0] - y[0] || x[1] - y[1] || (a < b ? -1 : 1);
    });
    const next = free[0];
    if (next === undefined) throw new Error('The reference found a ring.');
    order.push(next);
    left.delete(next);
  }
  return order;
}

/** Steps for which something is not there: a hole that takes nothing, a part that is away, a new one that has not come. */
function lacks(state: JobState): Set<string> {
  const lacking = new Set<string>();
  const home = (partId: string, removalId: string | null): string =>
    state.part.find((one) => one.id === partId)?.fate === 'carry over'
      ? `B:${partId}`
      : step(removalId ?? '');
  for (const hole of state.position)
    if (hole.fate === 'blocked')
      lacking.add(step(state.fset.find((set) => set.id === hole.setId)?.removalId ?? ''));
  for (const part of state.part) {
    const away = state.away.some((one) => one.thingId === part.id && one.backAt === null);
    const come = state.move.some((one) => one.partId === part.id && one.src === 'supply');
    if (away || (part.renew === 'must' && !come)) lacking.add(home(part.id, part.removalId));
  }
  return lacking;
}

/** The whole answer for one job; `done` are the nodes that were ticked off. */
export function reference(state: JobState, done: ReadonlySet<string>): Reference {
  const log = readLog(state);
  const first = rules12(log);
  const more = rules345(log, first.nodes);
  const nodes = [...first.nodes, ...more.nodes];
  const own = state.backOrder.map((one): Pair => {
    const first = state.ownStep.some((own) => own.id === one.beforeId) ? 'U' : 'S';
    return [`${first}:${one.beforeId}`, step(one.afterId)];
  });
  const before = closure(nodes, [...first.pairs, ...more.pairs, ...own]);
  const above = (v: string): string[] => nodes.filter((u) => before.has(`${u}>${v}`));
  const behind = new Set(nodes.filter((v) => !done.has(v) && above(v).some((u) => !done.has(u))));
  const lacking = lacks(state);
  const ahead = new Set(
    nodes.filter((v) => !done.has(v) && [v, ...above(v)].every((u) => done.has(u) || !lacking.has(u))),
  );
  return { nodes, before, order: choose(log, nodes, before), done, behind, lacking, ahead };
}
