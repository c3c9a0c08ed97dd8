import { generateNKeysBetween } from 'fractional-indexing';
import { blank } from '../model/blank.ts';
import { OFF_AGAIN, plannedAgain } from '../model/off-again.ts';
import { drainsOf } from '../model/opened.ts';
import { ok, type Result, refuse } from '../model/result.ts';
import type { JobState, Row } from '../model/tables.ts';
import { type Reach, reachOf } from '../reinstall/index.ts';
import { ownerOf } from './again.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply } from './frame.ts';
import { logOrder } from './log/order.ts';

/** A thing to come off again, and where it stands in the order of taking off. */
interface Wanted {
  readonly thingId: string;
  readonly rank: readonly [number, number, number];
}

/** First what makes it safe, then what is drained, then removal after removal, before each the shared holes that hold it. */
function ranksOf(state: JobState): (thingId: string) => Wanted['rank'] {
  const index = new Map(logOrder(state.removal).map((removal, i) => [removal.id, i]));
  const isolations = new Set(state.isolation.map((row) => row.id));
  const fluids = new Set(state.fluid.map((row) => row.id));
  const home = new Map(state.part.map((part) => [part.id, part.removalId ?? '']));
  const sets = new Map(state.fset.map((set) => [set.id, set.removalId]));
  const holes = new Map(state.position.map((hole) => [hole.id, sets.get(hole.setId) ?? '']));
  return (id) => {
    if (isolations.has(id)) return [0, 0, 0];
    if (fluids.has(id)) return [1, 0, 0];
    const own = index.get(id);
    if (own !== undefined) return [2, own, 1];
    const held = state.holds.filter((one) => one.positionId === id).map((one) => home.get(one.partId) ?? '');
    const all = [holes.get(id) ?? '', ...held].flatMap((removalId) => index.get(removalId) ?? []);
    return [2, Math.min(...all), 0];
  };
}

const compare = (a: Wanted, b: Wanted): number =>
  a.rank[0] - b.rank[0] || a.rank[1] - b.rank[1] || a.rank[2] - b.rank[2] || (a.thingId < b.thingId ? -1 : 1);

/** What of a reach has to come off a second time: not what is only planned so far, that has a removal of its own. */
function againOf(state: JobState, reach: Reach): string[] {
  const phase = new Map(state.removal.map((removal) => [removal.id, removal.phase]));
  const madeSafe = new Map(state.isolation.map((row) => [row.id, row.removalId]));
  const sets = new Map(state.fset.map((set) => [set.id, set.removalId]));
  const holes = new Map(state.position.map((hole) => [hole.id, sets.get(hole.setId) ?? '']));
  const begun = (removalId: string | undefined): boolean => {
    const now = phase.get(removalId ?? '');
    return now === 'off' || now === 'under way';
  };
  // Taking its plug out drains a fluid: no line of its own then.
  const inReach = new Set(reach.removals.map((one) => one.removalId));
  return [
    ...reach.isolations.filter((id) => begun(madeSafe.get(id))),
    ...reach.fluids.filter((id) => !drainsOf(state, id).some((drain) => inReach.has(drain))),
    ...reach.removals.filter((one) => one.state !== 'still').map((one) => one.removalId),
    ...reach.shared.filter((id) => begun(holes.get(id))),
  ];
}

function titleOf({ writer, state }: Decision, thingId: string): string {
  const removal = writer.get('removal', thingId);
  if (removal) {
    const title = removal.title || (removal.typed.split('\n')[0] ?? '');
    return state.fluid.some((fluid) => drainsOf(state, fluid.id).includes(thingId))
      ? `Drain again: ${title}`
      : title;
  }
  const isolation = writer.get('isolation', thingId);
  if (isolation) return `Make safe again: ${isolation.how || isolation.energy}`;
  const fluid = writer.get('fluid', thingId);
  if (fluid) return `Drain again: ${fluid.name || 'fluid'}`;
  const hole = writer.get('position', thingId);
  const set = writer.get('fset', hole?.setId ?? '');
  const home = writer.get('removal', set?.removalId ?? '');
  return `${set?.name || home?.title || 'Fasteners'}, hole ${hole?.n ?? ''}`;
}

function didOf({ writer }: Decision, thingId: string): Row<'removal'>['did'] {
  if (writer.get('isolation', thingId)) return 'safe';
  return writer.get('fluid', thingId) || writer.get('removal', thingId)?.did === 'opened' ? 'opened' : 'off';
}

/** A planned removal for a thing that comes off again; its place in the log is given afterwards. */
function plan(decision: Decision, thingId: string, note: string): Row<'removal'> {
  const { writer, jobId } = decision;
  const from = writer.get('removal', ownerOf(decision, thingId) ?? '');
  const made = blank('removal', decision.newId(), jobId, {
    title: titleOf(decision, thingId).slice(0, 300),
    did: didOf(decision, thingId),
    place: from?.place ?? '',
    side: from?.side ?? null,
    phase: 'planned',
    zone: decision.state.job.zone,
    note,
    caution: from?.caution ?? '',
  });
  const action = blank('action', decision.newId(), jobId, {
    removalId: made.id,
    ord: 'a0',
    what: OFF_AGAIN,
    thingId,
  });
  writer.put('action', action);
  return made;
}

/**
 * What must come off to reach some things, as planned removals that are taken off one after the other. A thing that is
 * back comes off as its own second time: the planned removal only names it and goes once it is off, so that the first
 * tightening, the second and what must be renewed stay one history. What is planned already is not planned twice.
 */
export function planComeOff(
  context: Context,
  input: JobInput & { readonly targetIds: readonly string[] },
): Reply<{ removals: number; said: string }> {
  return inJob(context, 'plan.comeOff', input, (decision) => {
    const { state, writer } = decision;
    const reach = reachOf(state, input.targetIds, decision.at);
    const known = new Set(state.thing.map((thing) => thing.id));
    const stranger = input.targetIds.find((id) => !known.has(id));
    if (stranger !== undefined) return refuse('not-found', `Expected things of this job, got ${stranger}.`);
    const before = plannedAgain(state);
    const had = new Set(before.map((one) => one.thingId));
    const wanted = againOf(state, reach).filter((id) => !had.has(id));
    if (wanted.length === 0) return nothingNew(reach, had.size > 0);
    const names = input.targetIds.map((id) => nameOf(state, id)).filter((name) => name !== '');
    const note = `to reach ${names.join('; ') || 'something behind it'}`.slice(0, 2000);
    const rankOf = ranksOf(state);
    const rows = [
      ...before.map(({ removal, thingId }) => ({ removal, thingId, rank: rankOf(thingId) })),
      ...wanted.map((thingId) => ({
        removal: plan(decision, thingId, note),
        thingId,
        rank: rankOf(thingId),
      })),
    ].sort(compare);
    const planned = new Set(before.map((one) => one.removal.id));
    const order = logOrder(state.removal).filter((removal) => !planned.has(removal.id));
    const at = order.findLastIndex((removal) => removal.phase !== 'planned');
    const keys = generateNKeysBetween(order[at]?.ord ?? null, order[at + 1]?.ord ?? null, rows.length);
    rows.forEach(({ removal }, i) => {
      writer.put('removal', { ...removal, ord: keys[i] ?? removal.ord });
    });
    return ok({ removals: wanted.length, said: saidOf(state, reach, wanted.length) });
  });
}

function nameOf(state: JobState, id: string): string {
  const row =
    state.part.find((one) => one.id === id) ??
    state.fset.find((one) => one.id === id) ??
    state.connection.find((one) => one.id === id) ??
    state.fluid.find((one) => one.id === id);
  return row?.name || (state.removal.find((one) => one.id === id)?.title ?? '');
}

function nothingNew(reach: Reach, planned: boolean): Result<never> {
  const unknown = reach.unknown.map((one) => one.sentence);
  if (unknown.length > 0 && reach.removals.length === 0) return refuse('refused', unknown.join(' '));
  return refuse(
    'refused',
    reach.removals.length === 0
      ? 'Nothing is in the way, so that there is nothing to plan.'
      : `All of it is planned already${planned ? '' : ', and was never off: see Take apart'}.`,
  );
}

function saidOf(state: JobState, reach: Reach, count: number): string {
  const givenUp = reach.removals.filter(
    (one) => state.removal.find((row) => row.id === one.removalId)?.phase === 'given up',
  );
  return [
    `${count} planned to come off again. Nothing is off until you say so.`,
    ...(givenUp.length > 0
      ? [`Given up before, so log it when it does come off: ${givenUp.map((one) => one.title).join(', ')}.`]
      : []),
    ...reach.unknown.map((one) => one.sentence),
  ].join(' ');
}
