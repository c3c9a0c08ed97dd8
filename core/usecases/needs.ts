import { blank } from '../model/blank.ts';
import { ok, refuse } from '../model/result.ts';
import { loosened, SERVED_FIRST, waitsThrough } from '../reinstall/index.ts';
import { describeSpec } from '../tally/index.ts';
import type { Row } from '../model/tables.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply, rowIn } from './frame.ts';

interface SettleInput extends JobInput {
  readonly removalId: string;
  readonly needsId: string;
  readonly answer: 'confirmed' | 'loosened';
  readonly why: string;
}

/**
 * One need of the log's order confirmed or loosened, and no other: a loosened one hands on what it needed itself, still
 * assumed, so that nothing else comes free by the way.
 */
export function needSettle(context: Context, input: SettleInput): Reply<{ said: string }> {
  return inJob(context, 'need.settle', input, (decision) => {
    const later = rowIn(decision, 'removal', input.removalId, 'removal');
    const earlier = rowIn(decision, 'removal', input.needsId, 'removal');
    if (!later.ok) return later;
    if (!earlier.ok) return earlier;
    const rest = loosened(decision.state, input.removalId, input.needsId);
    if (rest === null) return refuse('refused', noNeed(decision, later.value, earlier.value));
    if (input.answer === 'confirmed') {
      put(decision, input.removalId, { needsId: input.needsId, confirmed: true, why: input.why });
      return ok({ said: `Kept: ${later.value.title} goes back before ${earlier.value.title}.` });
    }
    // The default of the log becomes stored needs: all that stood by it, but for the one that went.
    for (const need of decision.state.need)
      if (need.removalId === input.removalId && need.needsId === input.needsId)
        decision.writer.remove('need', need.id);
    decision.writer.put('removal', { ...later.value, defaultNeed: 'loosened', defaultNeedWhy: input.why });
    for (const need of rest) put(decision, input.removalId, need);
    return ok({ said: `${later.value.title} and ${earlier.value.title} no longer wait for each other.` });
  });
}

/** Why there is nothing to answer between two removals, and what to answer instead. */
function noNeed({ state }: Decision, later: Row<'removal'>, earlier: Row<'removal'>): string {
  const named = (id: string) => `“${state.removal.find((one) => one.id === id)?.title ?? ''}”`;
  const [one, two] = [named(later.id), named(earlier.id)];
  if (later.id === earlier.id) return `Expected two removals, got ${one} twice.`;
  const way = waitsThrough(state, later.id, earlier.id);
  if (way && way.length > 0) {
    const chain = [one, ...way.map(named), two];
    const pairs = way.map((_, i) => `${chain[i]} and ${chain[i + 1]}`);
    return `${one} goes back before ${two} only by way of ${way.map(named).join(', ')}. Answer one of these instead: ${[...pairs, `${chain.at(-2)} and ${two}`].join('; ')}.`;
  }
  if (way) return `${one} was taken apart as part of ${two}: that need cannot be loosened.`;
  if (waitsThrough(state, earlier.id, later.id))
    return `It is the other way round: ${two} goes back before ${one}.`;
  return `Expected a need that may be loosened, got none of ${one} on ${two}.`;
}

function put(
  decision: Decision,
  removalId: string,
  need: { readonly needsId: string; readonly confirmed: boolean; readonly why: string },
): void {
  const had = decision.state.need.find((one) => one.removalId === removalId && one.needsId === need.needsId);
  if (had && had.confirmed === need.confirmed) return;
  decision.writer.put(
    'need',
    blank('need', had?.id ?? decision.newId(), decision.jobId, { removalId, ...need }),
  );
}

/** Alike pieces of other sets go to this one first: a line that says so, taken back like any other. */
export function piecePromise(
  context: Context,
  input: JobInput & { readonly setId: string; readonly qty: number },
): Reply<{ id: string; said: string }> {
  return inJob(context, 'piece.promise', input, (decision) => {
    const set = rowIn(decision, 'fset', input.setId, 'set');
    if (!set.ok) return set;
    const spec = decision.writer.get('spec', set.value.specId);
    if (set.value.ownPlace || !spec || spec.poolKey === null)
      return refuse(
        'refused',
        'Expected a set whose pieces are known well enough to stand in for others; these are not, or have their own place.',
      );
    const had = decision.state.want.find(
      (want) => want.thingId === input.setId && want.cause === SERVED_FIRST,
    );
    const id = had?.id ?? decision.newId();
    decision.writer.put(
      'want',
      blank('want', id, decision.jobId, {
        thingId: input.setId,
        what: describeSpec(spec).slice(0, 300),
        qty: input.qty,
        state: 'here',
        cause: SERVED_FIRST,
      }),
    );
    return ok({ id, said: `${set.value.name || describeSpec(spec)} is served first.` });
  });
}
