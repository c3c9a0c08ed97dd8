import type { JobState, Row } from '../model/tables.ts';
import { isOff, of, removalOf, type JobLog } from './job-log.ts';
import { needsToReach } from './needs.ts';
import { ownerOf } from './nodes.ts';
import type { Situation } from './situation.ts';
import { holeMark, standingOfHole } from './standing.ts';
import { minutesOf, quantile } from './times.ts';
import { ToolBox, ToolSum } from './tools.ts';
import type { Reach, ReachRemoval } from './types.ts';
import { situated } from './weighed.ts';

/** The second time is quicker, bolts turn; or slower, the log is read meanwhile. Common practice, no source. */
const QUICKER = 0.6;
const SLOWER = 1.3;

const WHY = { target: 'it holds what you want', drain: 'it is drained here', way: 'it is in the way' };

/** The removal in which a target came off, or a sentence why nobody can say. */
function targetOf(state: JobState, log: JobLog, id: string): string | { sentence: string } {
  const fluid = state.fluid.find((one) => one.id === id);
  const opening = fluid ? (of(log.opensOf, fluid.id)[0]?.thingId ?? '') : id;
  const removal = fluid ? ownerOf(log, opening) : removalOf(log, opening);
  const index = removal === null ? undefined : log.indexOf.get(removal);
  if (removal !== null && index !== undefined && log.removals[index]?.phase !== 'void') return removal;
  const name = state.part.find((part) => part.id === id)?.name || fluid?.name || 'This';
  return { sentence: `${name} was never logged as coming off, so nobody can say what is in the way.` };
}

/**
 * What must come off to reach the targets: the closure under needs over what is on the machine now, back again or never
 * off. The least set, in the order of taking off; with what is shared, what must be made safe and drained again, tools,
 * what must be renewed, and time as a range. A part that was never logged cannot be reached, and is said.
 */
export function reachOf(state: JobState, targets: readonly string[], now = 0): Reach {
  const at = situated(state, now);
  const { log, needs } = at.graph;
  const unknown: { targetId: string; sentence: string }[] = [];
  const starts = new Set<number>();
  for (const id of new Set(targets)) {
    const target = targetOf(state, log, id);
    if (typeof target === 'string') starts.add(log.indexOf.get(target) ?? -1);
    else unknown.push({ targetId: id, sentence: target.sentence });
  }
  const links = needsToReach(log, needs);
  // Whoever drains a system again takes its plug out, and first what is in the way of the plug.
  const drains = new Set<number>();
  let list: Listed[] = [];
  for (let grown = true; grown; ) {
    const from = new Set([...starts, ...drains]);
    const all = closure(links, from, () => true);
    const sure = closure(links, from, (link) => !link.assumed);
    list = [...all]
      .sort((a, b) => a - b)
      .flatMap((index) => {
        const on = onNow(at, index, starts.has(index));
        const why = starts.has(index) ? WHY.target : drains.has(index) ? WHY.drain : WHY.way;
        return on === null ? [] : [{ index, on, why, assumed: !sure.has(index) }];
      });
    const before = drains.size;
    for (const drain of drainsOf(at, list)) drains.add(drain);
    grown = drains.size > before;
  }
  return costOf(at, list, unknown);
}

function closure(
  links: readonly (readonly { readonly on: number; readonly assumed: boolean }[])[],
  starts: ReadonlySet<number>,
  counts: (link: { readonly assumed: boolean }) => boolean,
): Set<number> {
  const seen = new Set<number>();
  const open = [...starts];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (seen.has(next)) continue;
    seen.add(next);
    for (const link of links[next] ?? []) if (counts(link)) open.push(link.on);
  }
  return seen;
}

/** Whether a removal has anything on the machine now; null = all of it is off. */
function onNow(at: Situation, index: number, target: boolean): ReachRemoval['state'] | null {
  const removal = at.graph.log.removals[index];
  if (!removal || removal.phase === 'void') return null;
  // What was given up never came off, and what came off after it did so without it.
  if (!isOff(removal)) return removal.phase === 'planned' || target ? 'still' : null;
  const progress = at.progress[at.graph.putBack[index] ?? -1];
  if (progress?.done) return 'again';
  return progress?.touched ? 'partly' : null;
}

interface Listed {
  readonly index: number;
  readonly on: ReachRemoval['state'];
  readonly why: string;
  readonly assumed: boolean;
}

/** What taking these removals off again costs. */
function costOf(at: Situation, list: readonly Listed[], unknown: Reach['unknown']): Reach {
  const { log } = at.graph;
  const row = (one: Listed) => log.removals[one.index] as Row<'removal'>;
  const ids = new Set(list.map((one) => row(one).id));
  const sets = list.flatMap((one) => of(log.setsOf, row(one).id));
  const parts = list.flatMap((one) => of(log.partsOf, row(one).id));
  const box = new ToolBox(at.state);
  const sum = new ToolSum();
  const shared = sharedWith(at, ids);
  const apart = new Set(shared.map((position) => position.id));
  const undo = (position: Row<'position'>, stepId: string) => {
    const set = log.set.get(position.setId);
    if (set) for (const tool of box.toolsFor(set.id, position.specId ?? set.specId)) sum.add(tool, 1, stepId);
  };
  const removals = list.map((one): ReachRemoval => {
    const removal = row(one);
    const holes = of(log.setsOf, removal.id)
      .flatMap((set) => of(log.positionsOf, set.id))
      .filter((position) => !apart.has(position.id) && isInNow(at, position, stateOf(at, position, one.on)));
    for (const hole of holes) undo(hole, removal.id);
    return {
      removalId: removal.id,
      number: at.numbers[one.index] ?? one.index + 1,
      title: removal.title || removal.typed.split('\n')[0] || '',
      why: one.why,
      state: one.on,
      assumed: one.assumed,
      fasteners: holes.length,
      minutes: minutesOf(removal),
    };
  });
  for (const position of shared) undo(position, position.id);
  const fluids = fluidsOf(at, ids);
  return {
    removals,
    shared: shared.map((position) => position.id),
    isolations: isolationsOf(at, ids, new Set(fluids)),
    fluids,
    fasteners: removals.reduce((total, one) => total + one.fasteners, 0) + shared.length,
    tools: sum.list(),
    renew: [...parts, ...sets].filter((one) => one.renew === 'must').map((one) => one.id),
    renewIfWorn: [...parts, ...sets].filter((one) => one.renew === 'if worn').map((one) => one.id),
    ...timeOf(at, removals),
    unknown,
  };
}

/** In its hole now: in a step that is back all but those left out, in others those that were put in. */
function isInNow(at: Situation, position: Row<'position'>, on: ReachRemoval['state']): boolean {
  if (on === 'still') return position.found !== 'empty';
  const mark = holeMark(at.graph.log, position, standingOfHole(at.graph.log, position));
  if (on === 'again' && position.found !== 'empty') return mark !== 'left out' && mark !== 'blocked';
  return mark === 'started' || mark === 'tightened' || mark === 'paint-checked' || mark === 'later';
}

/** A position that waits for several parts is back with its own step, not with the removal it came out with. */
function stateOf(
  at: Situation,
  position: Row<'position'>,
  home: ReachRemoval['state'],
): ReachRemoval['state'] {
  const own = at.graph.shared.get(position.id);
  return own === undefined || home === 'still' ? home : at.progress[own]?.done ? 'again' : 'partly';
}

/**
 * Positions that hold a part of these and are in now: those of other removals, and those of one that comes off after the
 * part, which must be out before it.
 */
function sharedWith(at: Situation, ids: ReadonlySet<string>): Row<'position'>[] {
  const { log } = at.graph;
  const found = new Map<string, Row<'position'>>();
  for (const hold of at.state.holds) {
    const position = log.position.get(hold.positionId);
    const home = log.set.get(position?.setId ?? '')?.removalId ?? '';
    const owner = log.part.get(hold.partId)?.removalId ?? '';
    const later = (log.indexOf.get(owner) ?? 0) < (log.indexOf.get(home) ?? 0);
    if (!position || !ids.has(owner) || (ids.has(home) && !later)) continue;
    const phase = log.removals[log.indexOf.get(home) ?? -1]?.phase;
    const done = at.progress[at.graph.stepOfRemoval(home)]?.done === true;
    const back = phase === 'planned' || phase === 'given up' ? 'still' : done ? 'again' : 'partly';
    if (isInNow(at, position, stateOf(at, position, back))) found.set(position.id, position);
  }
  return [...found.values()];
}

/** Fluids that these removals open, or that were drained before they came off, and that are in the system now. */
function fluidsOf(at: Situation, ids: ReadonlySet<string>): string[] {
  const found = new Set<string>();
  const { log, needs } = at.graph;
  for (const open of at.state.opens) {
    const owner = ownerOf(log, open.thingId) ?? '';
    const behind = needs.behindDrain.get(log.indexOf.get(owner) ?? -1) ?? [];
    if (!ids.has(owner) && !behind.some((index) => ids.has(log.removals[index]?.id ?? ''))) continue;
    const progress = at.progress[at.graph.closing.get(open.fluidId) ?? -1];
    if (!progress || progress.done || progress.touched) found.add(open.fluidId);
  }
  return [...found];
}

/** By log index: the plugs, in now, by which what these removals open is drained again. */
function drainsOf(at: Situation, list: readonly Listed[]): number[] {
  const { log } = at.graph;
  const fluids = new Set(fluidsOf(at, new Set(list.map((one) => log.removals[one.index]?.id ?? ''))));
  return at.state.opens
    .filter((open) => fluids.has(open.fluidId))
    .map((open) => log.indexOf.get(ownerOf(log, open.thingId) ?? '') ?? -1)
    .filter((index) => log.removals[index]?.did === 'opened' && onNow(at, index, false) !== null);
}

/** What protects this work and is not in place now: given back already, or only planned. */
function isolationsOf(at: Situation, ids: ReadonlySet<string>, fluids: ReadonlySet<string>): string[] {
  if (ids.size === 0) return [];
  const { log } = at.graph;
  return at.state.isolation
    .filter((row) => {
      if (row.scope === 'listed') return of(log.protectsOf, row.id).some((one) => ids.has(one.removalId));
      return row.scope === 'all' || fluids.has(row.fluidId ?? '');
    })
    .filter((row) => {
      const node = at.graph.givenBack.get(row.id);
      if (node !== undefined) return at.progress[node]?.done === true;
      return log.removals[log.indexOf.get(row.removalId) ?? -1]?.phase === 'planned';
    })
    .map((row) => row.id);
}

/** From the times in the log. Removals without one count as the quicker and the slower quarter of the others took. */
function timeOf(at: Situation, removals: readonly ReachRemoval[]): Pick<Reach, 'minutesLow' | 'minutesHigh'> {
  const times = at.graph.log.removals
    .map(minutesOf)
    .filter((minutes) => minutes !== null)
    .sort((a, b) => a - b);
  if (times.length === 0 || removals.length === 0) return { minutesLow: null, minutesHigh: null };
  const total = (share: number) =>
    removals.reduce((sum, one) => sum + (one.minutes ?? quantile(times, share)), 0);
  return { minutesLow: Math.round(total(0.25) * QUICKER), minutesHigh: Math.round(total(0.75) * SLOWER) };
}
