import { generateKeyBetween } from 'fractional-indexing';
import { blank } from '../../model/blank.ts';
import { ok, refuse } from '../../model/result.ts';
import type { JobState, Row } from '../../model/tables.ts';
import { poolKeyOf } from '../../tally/index.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply } from '../frame.ts';
import { logOrder } from '../log/order.ts';
import { patternId } from './origin.ts';

/** One copying: where from, where to, and which rows of the earlier job have one here. */
interface Copy {
  readonly decision: Decision;
  readonly from: JobState;
  readonly id: (sourceId: string) => string;
  /** The row here for one there, or null where it was not copied. */
  readonly mapped: (sourceId: string | null) => string | null;
  readonly known: Set<string>;
}

/** Removals that took something off, in the order in which they came off. */
export function patternRemovals(from: JobState): Row<'removal'>[] {
  return logOrder(from.removal).filter(({ phase }) => phase === 'off' || phase === 'under way');
}

function copyRemovals({ decision, from, id, mapped, known }: Copy): void {
  let last = logOrder(decision.state.removal).at(-1)?.ord ?? null;
  const all = patternRemovals(from);
  const off = new Set(all.map((removal) => removal.id));
  const benches = new Set(from.part.filter((part) => off.has(part.removalId ?? '')).map((part) => part.id));
  for (const removal of all) {
    last = generateKeyBetween(last, null);
    known.add(removal.id);
    decision.writer.put(
      'removal',
      blank('removal', id(removal.id), decision.jobId, {
        ord: last,
        title: removal.title || removal.typed.slice(0, 300),
        did: removal.did,
        benchPartId: benches.has(removal.benchPartId ?? '') ? id(removal.benchPartId ?? '') : null,
        place: removal.place,
        side: removal.side,
        twinOfId: mapped(removal.twinOfId),
        defaultNeed: removal.defaultNeed,
        defaultNeedWhy: removal.defaultNeedWhy,
        phase: 'planned',
        heldBy: removal.heldBy,
        zone: decision.state.job.zone,
        noteBack: removal.noteBack,
        caution: removal.caution,
      }),
    );
  }
}

/** Specification, count, torque and order are expected again; bag, condition, words and values reached are of the other machine. */
function copySets({ decision, from, id, mapped, known }: Copy): void {
  const { writer, jobId } = decision;
  const copySpec = (specId: string): string => {
    const spec = from.spec.find((one) => one.id === specId) as Row<'spec'>;
    const own = { ...spec, id: id(specId), jobId };
    writer.put('spec', { ...own, poolKey: poolKeyOf(own) });
    return own.id;
  };
  for (const set of from.fset) {
    const removalId = mapped(set.removalId);
    if (removalId === null) continue;
    known.add(set.id);
    writer.put('fset', {
      ...set,
      id: id(set.id),
      jobId,
      removalId,
      specId: copySpec(set.specId),
      typed: '',
      stowId: null,
      renew: set.renew === 'overridden' ? 'must' : set.renew,
    });
    for (const hole of from.position.filter((one) => one.setId === set.id)) {
      known.add(hole.id);
      const specId = hole.specId === null ? null : copySpec(hole.specId);
      const { n, hidden } = hole;
      const values = { setId: id(set.id), n, specId, hidden, found: 'unknown' as const };
      writer.put('position', blank('position', id(hole.id), jobId, values));
    }
    for (const item of from.stackItem.filter((one) => one.setId === set.id))
      writer.put('stackItem', {
        ...item,
        id: id(item.id),
        jobId,
        setId: id(set.id),
        specId: item.specId === null ? null : copySpec(item.specId),
      });
  }
}

function copyParts({ decision, from, id, mapped, known }: Copy): void {
  const { writer, jobId } = decision;
  const parts = from.part.filter((part) => mapped(part.removalId) !== null);
  for (const part of parts) known.add(part.id);
  for (const part of parts)
    writer.put(
      'part',
      blank('part', id(part.id), jobId, {
        removalId: mapped(part.removalId),
        parentId: mapped(part.parentId),
        name: part.name || part.typed.slice(0, 300),
        kind: part.kind,
        qty: part.qty,
        how: part.how,
        ownPlace: part.ownPlace,
        ownPlaceText: part.ownPlaceText,
        hidden: part.hidden,
        fate: part.renew === 'must' || part.renew === 'overridden' ? 'renew' : 'refit',
        renew: part.renew === 'overridden' ? 'must' : part.renew,
        renewRule: part.renewRule,
        renewWhy: part.renewWhy,
      }),
    );
  for (const one of from.connection) {
    const removalId = mapped(one.removalId);
    if (removalId === null) continue;
    known.add(one.id);
    const sealPartId = mapped(one.sealPartId);
    writer.put('connection', { ...one, id: id(one.id), jobId, removalId, sealPartId, typed: '' });
  }
  for (const one of from.holds) {
    const [positionId, partId] = [mapped(one.positionId), mapped(one.partId)];
    if (positionId !== null && partId !== null)
      writer.put('holds', { id: id(one.id), jobId, positionId, partId });
  }
}

/** Fluids by name: one that this job knows already is the same system. */
function copyFluids({ decision, from, id, mapped, known }: Copy): void {
  const { writer, jobId, state } = decision;
  for (const fluid of from.fluid) {
    const opens = from.opens.filter((one) => one.fluidId === fluid.id && mapped(one.thingId) !== null);
    if (opens.length === 0) continue;
    const same = state.fluid.find((one) => one.name.toLowerCase() === fluid.name.toLowerCase());
    if (!same) {
      known.add(fluid.id);
      const { name, type, capacityMl, liveEnergy, bleed } = fluid;
      writer.put('fluid', blank('fluid', id(fluid.id), jobId, { name, type, capacityMl, liveEnergy, bleed }));
    }
    for (const one of opens)
      writer.put('opens', {
        id: id(one.id),
        jobId,
        fluidId: same?.id ?? id(fluid.id),
        thingId: mapped(one.thingId) as string,
      });
  }
}

/** What has to be made safe, measured and put on; who did it and what came out of it is of the other machine. */
function copyRest({ decision, from, id, mapped, known }: Copy): void {
  const { writer, jobId } = decision;
  for (const one of from.isolation) {
    const removalId = mapped(one.removalId);
    if (removalId === null) continue;
    known.add(one.id);
    const { energy, how, scope } = one;
    const fluidId = mapped(one.fluidId);
    writer.put(
      'isolation',
      blank('isolation', id(one.id), jobId, { removalId, energy, how, scope, fluidId }),
    );
  }
  for (const one of from.protects) {
    const [isolationId, removalId] = [mapped(one.isolationId), mapped(one.removalId)];
    if (isolationId !== null && removalId !== null)
      writer.put('protects', { id: id(one.id), jobId, isolationId, removalId });
  }
  for (const one of from.measure) {
    const removalId = mapped(one.removalId);
    if (removalId === null) continue;
    known.add(one.id);
    const { what, unit, limitLow, limitHigh, required } = one;
    const values = { removalId, what, unit, limitLow, limitHigh, required };
    writer.put('measure', blank('measure', id(one.id), jobId, values));
  }
  for (const one of from.consumable) {
    const thingId = mapped(one.thingId);
    if (thingId === null) continue;
    const { kind, name, skinMinutes, cureMinutes, cureBefore } = one;
    const values = { thingId, kind, name, skinMinutes, cureMinutes, cureBefore };
    writer.put('consumable', blank('consumable', id(one.id), jobId, values));
  }
}

function copyOrder({ decision, from, id, mapped }: Copy): void {
  const { writer, jobId } = decision;
  for (const one of from.need) {
    const [removalId, needsId] = [mapped(one.removalId), mapped(one.needsId)];
    if (removalId !== null && needsId !== null)
      writer.put('need', { ...one, id: id(one.id), jobId, removalId, needsId });
  }
  for (const one of from.action) {
    const [removalId, thingId] = [mapped(one.removalId), mapped(one.thingId)];
    if (removalId !== null && (one.thingId === null || thingId !== null))
      writer.put('action', { ...one, id: id(one.id), jobId, removalId, thingId });
  }
  for (const one of from.backOrder) {
    const [beforeId, afterId] = [mapped(one.beforeId), mapped(one.afterId)];
    if (beforeId !== null && afterId !== null)
      writer.put('backOrder', { ...one, id: id(one.id), jobId, beforeId, afterId });
  }
}

/** What had to be at hand: what was listed, and what was put in for the duration (caps, locks, supports). */
function copyReady({ decision, from }: Copy): void {
  const { state, writer, jobId } = decision;
  const had = new Set(state.ready.map((one) => one.text.toLowerCase()));
  let ord =
    state.ready
      .map((one) => one.ord)
      .sort()
      .at(-1) ?? null;
  const put = from.temporary.map((one) => (one.qty > 1 ? `${one.qty} × ${one.name}` : one.name));
  for (const text of [...from.ready.map((one) => one.text), ...put]) {
    if (had.has(text.toLowerCase())) continue;
    had.add(text.toLowerCase());
    ord = generateKeyBetween(ord, null);
    writer.put('ready', blank('ready', decision.newId(), jobId, { ord, text: text.slice(0, 300) }));
  }
}

/**
 * An earlier job on a like machine as the pattern of this one: its removals as a plan, with counts and torques as what is
 * expected. Never copied: photos, marks made on the other machine, bags, conditions, persons, times, values reached. One
 * command, so that one undo takes all of it back.
 */
export function patternUse(
  context: Context,
  input: JobInput & { fromJobId: string },
): Reply<{ removals: number; said: string }> {
  return inJob(context, 'pattern.use', input, (decision) => {
    const { jobId, state, writer } = decision;
    if (input.fromJobId === jobId) return refuse('input', 'Expected another job as pattern, got this one.');
    const from = context.workshop.job(input.fromJobId);
    if (!from)
      return refuse('not-found', `Expected a job of this workshop as pattern, got ${input.fromJobId}.`);
    const removals = patternRemovals(from);
    if (removals.length === 0)
      return refuse('refused', `Nothing came off in “${from.job.title}”, so that it is no pattern.`);
    const id = (sourceId: string) => patternId(jobId, sourceId);
    if (state.job.patternJobId !== null && state.removal.some((one) => one.id === id(removals[0]?.id ?? '')))
      return refuse('refused', 'This job follows a pattern already. Undo that first.');
    const known = new Set<string>();
    const mapped = (sourceId: string | null) =>
      sourceId !== null && known.has(sourceId) ? id(sourceId) : null;
    const copy: Copy = { decision, from, id, mapped, known };
    copyRemovals(copy);
    copySets(copy);
    copyParts(copy);
    copyFluids(copy);
    copyRest(copy);
    copyOrder(copy);
    copyReady(copy);
    writer.put('job', { ...state.job, patternJobId: input.fromJobId });
    const words = removals.length === 1 ? '1 removal is' : `${removals.length} removals are`;
    return ok({
      removals: removals.length,
      said: `${words} planned after “${from.job.title}”. Nothing counts as off until you say so.`,
    });
  });
}
