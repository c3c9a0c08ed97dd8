import { generateKeyBetween } from 'fractional-indexing';
import { needsBroken } from '../reinstall/index.ts';
import { blank } from '../model/blank.ts';
import { againPlans } from '../model/off-again.ts';
import { ok, refuse } from '../model/result.ts';
import type { Row } from '../model/tables.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply, rowIn } from './frame.ts';
import { lotsOf } from './counts.ts';
import { logOrder } from './log/order.ts';
import { dropUnseen } from './pattern/origin.ts';
import { book } from './pieces.ts';
import { endRemoval } from './removal-end.ts';
import { poolKeyOf } from '../tally/index.ts';

type Said = Reply<{ said: string }>;

/** Ends the removal under way. */
export function removalEnd(context: Context, input: JobInput & { removalId: string }): Said {
  return inJob(context, 'removal.end', input, (decision) => {
    const found = rowIn(decision, 'removal', input.removalId, 'removal');
    if (!found.ok) return found;
    if (found.value.phase !== 'under way') return refuse('refused', 'This removal is not under way.');
    endRemoval(decision, found.value);
    dropUnseen(decision, found.value.id);
    return ok({ said: 'Done.' });
  });
}

/** Moves a removal in the log; what it would turn round is refused, or loosened when asked to. */
export function removalReorder(
  context: Context,
  input: JobInput & { removalId: string; afterId: string | null; loosen: boolean },
): Said {
  return inJob(context, 'removal.reorder', input, (decision) => {
    const found = rowIn(decision, 'removal', input.removalId, 'removal');
    if (!found.ok) return found;
    const order = logOrder(decision.state.removal).filter((removal) => removal.id !== input.removalId);
    const at = input.afterId === null ? 0 : order.findIndex((removal) => removal.id === input.afterId) + 1;
    if (input.afterId !== null && at === 0)
      return refuse('not-found', `Expected a removal of this job to go after, got ${input.afterId}.`);
    const planned = [
      ...order.slice(0, at).map((r) => r.id),
      input.removalId,
      ...order.slice(at).map((r) => r.id),
    ];
    const broken = needsBroken(decision.state, planned);
    const fixed = broken.find((need) => !need.mayLoosen);
    if (fixed) return refuse('refused', fixed.sentence);
    if (broken.length > 0 && !input.loosen)
      return refuse(
        'loosen',
        `${broken.map((need) => need.sentence).join(' ')} Loosen it to move it all the same.`,
      );
    for (const { removalId, needsId } of broken) loosen(decision, removalId, needsId);
    const ord = generateKeyBetween(order[at - 1]?.ord ?? null, order[at]?.ord ?? null);
    decision.writer.put('removal', { ...found.value, ord });
    const said =
      broken.length === 0 ? 'Moved.' : `Moved. Loosened: ${broken.map((need) => need.sentence).join(' ')}`;
    return ok({ said });
  });
}

function loosen(decision: Decision, removalId: string, needsId: string): void {
  for (const need of decision.state.need)
    if (need.removalId === removalId && need.needsId === needsId) decision.writer.remove('need', need.id);
}

/** Takes things of one removal into a new one right after it. */
export function removalSplit(
  context: Context,
  input: JobInput & { removalId: string; thingIds: string[]; title: string },
): Reply<{ id: string; said: string }> {
  return inJob(context, 'removal.split', input, (decision) => {
    const found = rowIn(decision, 'removal', input.removalId, 'removal');
    if (!found.ok) return found;
    const order = logOrder(decision.state.removal);
    const at = order.findIndex((removal) => removal.id === input.removalId);
    const made: Row<'removal'> = {
      ...found.value,
      id: decision.newId(),
      ord: generateKeyBetween(order[at]?.ord ?? null, order[at + 1]?.ord ?? null),
      title: input.title,
      typed: '',
      note: '',
      noteBack: '',
    };
    decision.writer.put('removal', made);
    const wanted = new Set(input.thingIds);
    moveThings(decision, input.removalId, made.id, wanted);
    if (wanted.size > 0)
      return refuse('input', 'Expected things of this removal, got one that is not of it.');
    return ok({ id: made.id, said: `“${input.title}” is a removal of its own now.` });
  });
}

const OF_REMOVAL = [
  'fset',
  'part',
  'connection',
  'isolation',
  'temporary',
  'mark',
  'measure',
  'photo',
  'action',
] as const;

/** Hands the rows of a removal to another: the wanted things, or all of them. */
export function moveThings(
  decision: Decision,
  fromId: string,
  intoId: string,
  wanted: Set<string> | null,
): void {
  for (const table of OF_REMOVAL)
    for (const row of decision.state[table] as readonly { id: string; removalId: string | null }[]) {
      if (row.removalId !== fromId || (wanted && !wanted.delete(row.id))) continue;
      decision.writer.put(table, { ...row, removalId: intoId } as Row<typeof table>);
    }
  if (wanted) return;
  for (const row of decision.state.opens)
    if (row.thingId === fromId) decision.writer.put('opens', { ...row, thingId: intoId });
}

/** Everything of the second goes into the first; the second becomes void, and its needs are handed on. */
export function removalMerge(context: Context, input: JobInput & { intoId: string; fromId: string }): Said {
  return inJob(context, 'removal.merge', input, (decision) => {
    const into = rowIn(decision, 'removal', input.intoId, 'removal');
    const from = rowIn(decision, 'removal', input.fromId, 'removal');
    if (!into.ok) return into;
    if (!from.ok) return from;
    if (input.intoId === input.fromId)
      return refuse('input', 'Expected two removals, got the same one twice.');
    const again = againPlans(decision.state);
    if (again.has(input.fromId) || again.has(input.intoId))
      return refuse('refused', 'Expected removals of the log, got a plan for one to come off again.');
    if (decision.state.deed.some((deed) => deed.thingId === input.fromId))
      return refuse('refused', 'This removal was worked on on the way back; it stays as it is.');
    moveThings(decision, input.fromId, input.intoId, null);
    handNeedsOn(decision, input.fromId, input.intoId);
    const notes = (a: string, b: string) => [a, b].filter((text) => text !== '').join('\n');
    decision.writer.put('removal', {
      ...into.value,
      typed: notes(into.value.typed, from.value.typed),
      note: notes(into.value.note, from.value.note),
      noteBack: notes(into.value.noteBack, from.value.noteBack),
      title: into.value.title === '' ? from.value.title : into.value.title,
    });
    decision.writer.put('removal', { ...from.value, phase: 'void', phaseWhy: 'merged into another removal' });
    return ok({ said: 'Merged.' });
  });
}

/** Needs of a removal that goes are handed on, so that no order is lost. */
export function handNeedsOn(decision: Decision, goneId: string, toId: string | null): void {
  const { need } = decision.state;
  const below = need.filter((one) => one.removalId === goneId);
  for (const one of need) {
    if (one.removalId === goneId) {
      if (toId !== null && one.needsId !== toId) decision.writer.put('need', { ...one, removalId: toId });
      else decision.writer.remove('need', one.id);
    } else if (one.needsId === goneId) {
      if (toId !== null && one.removalId !== toId) decision.writer.put('need', { ...one, needsId: toId });
      else decision.writer.remove('need', one.id);
      if (toId === null)
        for (const lower of below)
          decision.writer.put('need', {
            ...one,
            id: decision.newId(),
            needsId: lower.needsId,
            confirmed: one.confirmed && lower.confirmed,
          });
    }
  }
}

/** Given up, or void: kept in the record, no longer a step. Its needs are handed on. */
export function removalVoid(
  context: Context,
  input: JobInput & { removalId: string; phase: 'given up' | 'void'; why: string },
): Said {
  return inJob(context, 'removal.void', input, (decision) => {
    const found = rowIn(decision, 'removal', input.removalId, 'removal');
    if (!found.ok) return found;
    if (input.phase === 'void') {
      handNeedsOn(decision, input.removalId, null);
      bookAllBack(decision, input.removalId);
    }
    decision.writer.put('removal', { ...found.value, phase: input.phase, phaseWhy: input.why });
    return ok({
      said: input.phase === 'void' ? 'Void, and kept in the record.' : 'Given up, and kept in the record.',
    });
  });
}

/** Nothing came off after all: what was booked out and is in hand goes back on paper, as a correction of the count. */
function bookAllBack(decision: Decision, removalId: string): void {
  const { state } = decision;
  const sets = new Set(state.fset.filter((set) => set.removalId === removalId).map((set) => set.id));
  const parts = new Set(state.part.filter((part) => part.removalId === removalId).map((part) => part.id));
  const lots = lotsOf(decision, (move) => sets.has(move.homeSetId ?? '') || parts.has(move.partId ?? ''));
  for (const lot of lots)
    if (!lot.fresh) book(decision, { ...lot, src: 'stow', dst: 'hole', cause: 'counted' });
}

/** The same on the other side: specification and expected count are copied, never bag, photo, condition or values. */
export function removalRepeat(
  context: Context,
  input: JobInput & { removalId: string; side: Row<'removal'>['side']; mirrorThreads: boolean },
): Reply<{ id: string; said: string }> {
  return inJob(context, 'removal.repeat', input, (decision) => {
    const found = rowIn(decision, 'removal', input.removalId, 'removal');
    if (!found.ok) return found;
    const last =
      [...decision.state.removal]
        .map((one) => one.ord)
        .sort()
        .at(-1) ?? null;
    const made = blank('removal', decision.newId(), decision.jobId, {
      ord: generateKeyBetween(last, null),
      title: found.value.title,
      did: found.value.did,
      place: found.value.place,
      side: input.side,
      twinOfId: found.value.id,
      phase: 'planned',
      noteBack: found.value.noteBack,
      caution: found.value.caution,
      zone: decision.state.job.zone,
      personId: decision.personId,
    });
    decision.writer.put('removal', made);
    copySets(decision, found.value.id, made, input.mirrorThreads);
    copyParts(decision, found.value.id, made.id);
    return ok({ id: made.id, said: `“${made.title}” is repeated. Confirm what really came off.` });
  });
}

function copySets(decision: Decision, fromId: string, made: Row<'removal'>, mirror: boolean): void {
  for (const set of decision.state.fset.filter((one) => one.removalId === fromId)) {
    const specs = new Map<string, string>();
    const copySpec = (id: string): string => {
      const known = specs.get(id);
      if (known !== undefined) return known;
      const spec = decision.writer.get('spec', id) as Row<'spec'>;
      const hand = mirror ? (spec.hand === 'left' ? 'right' : 'left') : spec.hand;
      const own = { ...spec, id: decision.newId(), hand } as Row<'spec'>;
      decision.writer.put('spec', { ...own, poolKey: poolKeyOf(own) });
      specs.set(id, own.id);
      return own.id;
    };
    const setId = decision.newId();
    decision.writer.put('fset', {
      ...set,
      id: setId,
      removalId: made.id,
      specId: copySpec(set.specId),
      side: made.side,
      stowId: null,
      typed: '',
    });
    for (const hole of decision.state.position.filter((one) => one.setId === set.id))
      decision.writer.put(
        'position',
        blank('position', decision.newId(), decision.jobId, {
          setId,
          n: hole.n,
          specId: hole.specId === null ? null : copySpec(hole.specId),
          hidden: hole.hidden,
          found: 'unknown',
        }),
      );
    for (const item of decision.state.stackItem.filter((one) => one.setId === set.id))
      decision.writer.put('stackItem', {
        ...item,
        id: decision.newId(),
        setId,
        specId: item.specId === null ? null : copySpec(item.specId),
      });
  }
}

function copyParts(decision: Decision, fromId: string, madeId: string): void {
  for (const part of decision.state.part.filter((one) => one.removalId === fromId))
    decision.writer.put(
      'part',
      blank('part', decision.newId(), decision.jobId, {
        removalId: madeId,
        name: part.name,
        kind: part.kind,
        qty: part.qty,
        how: part.how,
        ownPlace: part.ownPlace,
        hidden: part.hidden,
        fate: part.renew === 'must' ? 'renew' : 'refit',
        renew: part.renew === 'overridden' ? 'must' : part.renew,
        renewRule: part.renewRule,
        renewWhy: part.renewWhy,
      }),
    );
  for (const connection of decision.state.connection.filter((one) => one.removalId === fromId))
    decision.writer.put('connection', { ...connection, id: decision.newId(), removalId: madeId, typed: '' });
}
