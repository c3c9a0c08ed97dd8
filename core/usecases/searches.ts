import { ok, refuse } from '../model/result.ts';
import type { Row } from '../model/tables.ts';
import { lotsOf } from './counts.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply, rowIn } from './frame.ts';
import { book, pieceHome } from './pieces.ts';
import { usedLast } from './used-last.ts';

type Said = Reply<{ said: string }>;
type Opened = Reply<{ countingId: string; said: string }>;
const OPENED = 'The search is open. It ends in found, or in a name and a reason.';

/** A search as it begins: so many of a thing, none found. */
export function newSearch(
  decision: Decision,
  thingId: string | null,
  expected: number,
  note: string,
): Row<'counting'> {
  return {
    id: decision.newId(),
    jobId: decision.jobId,
    stowId: null,
    thingId,
    expected,
    counted: 0,
    at: decision.at,
    personId: decision.personId,
    note,
    ended: null,
    endedWhy: '',
    endedAt: null,
    endedBy: null,
  };
}

/** A search without a count: a piece, rag, cap, tool or key that is not where it should be. */
export function pieceMiss(
  context: Context,
  input: JobInput & { thingId: string; qty: number; note: string },
): Opened {
  return inJob(context, 'piece.miss', input, (decision) => {
    const thing = rowIn(decision, 'thing', input.thingId, 'thing');
    if (!thing.ok) return thing;
    const search = newSearch(decision, input.thingId, input.qty, input.note);
    const { id } = search;
    decision.writer.put('counting', search);
    const home = pieceHome(decision, input.thingId);
    if (home.ok) {
      const mine = (move: Row<'move'>) =>
        home.value.kind === 'set' ? move.homeSetId === home.value.set.id : move.partId === home.value.part.id;
      let left = input.qty;
      for (const lot of lotsOf(decision, mine)) {
        const some = Math.min(left, lot.qty);
        if (some <= 0) break;
        book(decision, { ...lot, qty: some, src: 'stow', dst: 'unknown', cause: 'counted', countId: id });
        left -= some;
      }
      if (left > 0)
        return refuse(
          'refused',
          `Expected at most ${input.qty - left} that are in hand by the books, got ${input.qty}.`,
        );
    }
    return ok({ countingId: id, said: OPENED });
  });
}

/**
 * A search for what is no fastener and no part: a tool, a key, a cap, a broken-off bit. It lies where it was used last:
 * the thing named, else where the record shows that it can have been used last.
 */
export function itemLost(
  context: Context,
  input: JobInput & { what: string; qty: number; thingId: string | null; note: string },
): Opened {
  return inJob(context, 'item.lost', input, (decision) => {
    const what = input.what.trim().replace(/\s+/g, ' ');
    if (what === '') return refuse('input', 'Expected the name of what is missing, such as “10 mm socket”.');
    if (input.thingId !== null) {
      const thing = rowIn(decision, 'thing', input.thingId, 'thing');
      if (!thing.ok) return thing;
    }
    const note = [what, input.note.trim()].filter((line) => line !== '').join('\n');
    const search = newSearch(decision, input.thingId ?? usedLast(decision.state, what), input.qty, note);
    decision.writer.put('counting', search);
    return ok({ countingId: search.id, said: `${what}: ${OPENED[0]?.toLowerCase()}${OPENED.slice(1)}` });
  });
}

function openCount(decision: Decision, countingId: string) {
  const found = rowIn(decision, 'counting', countingId, 'search');
  if (!found.ok) return found;
  return found.value.ended === null ? found : refuse('refused', 'This search is ended already.');
}

/** Found again: back into its bag. */
export function pieceFound(context: Context, input: JobInput & { countingId: string; where: string }): Said {
  return inJob(context, 'piece.found', input, (decision) => {
    const found = openCount(decision, input.countingId);
    if (!found.ok) return found;
    endSearch(decision, found.value, 'found', input.where, 'stow');
    return ok({ said: 'Found. The search is ended.' });
  });
}

/** Searched and not found: written off by name and with a reason. */
export function pieceGone(context: Context, input: JobInput & { countingId: string; why: string }): Said {
  return inJob(context, 'piece.gone', input, (decision) => {
    const found = openCount(decision, input.countingId);
    if (!found.ok) return found;
    endSearch(decision, found.value, 'accepted', input.why, 'lost');
    const who = decision.writer.get('person', decision.personId ?? '')?.name;
    return ok({
      said: who
        ? `Written off by ${who}, with your reason.`
        : 'Written off, with your reason; nobody is named for it. --who NAME says who.',
    });
  });
}

function endSearch(
  decision: Decision,
  counting: Row<'counting'>,
  ended: 'found' | 'accepted',
  why: string,
  dst: 'stow' | 'lost',
): void {
  decision.writer.put('counting', {
    ...counting,
    ended,
    endedWhy: why,
    endedAt: decision.at,
    endedBy: decision.personId,
  });
  for (const { qty, ...lot } of stillLookedFor(decision, counting.id))
    book(decision, {
      ...lot,
      qty,
      src: 'unknown',
      srcStowId: null,
      dst,
      cause: dst === 'stow' ? 'found' : 'written off',
      dstStowId: dst === 'stow' ? lot.srcStowId : null,
      countId: counting.id,
    });
}

type Sought = Pick<Row<'move'>, 'specId' | 'homeSetId' | 'partId' | 'fresh' | 'srcStowId' | 'qty'>;

/** What a search booked as missing and what has not been found since, with the bag it was missed from. */
function stillLookedFor(decision: Decision, countId: string): Sought[] {
  const lots = new Map<string, Sought>();
  for (const move of decision.state.move) {
    if (move.countId !== countId || (move.dst !== 'unknown' && move.src !== 'unknown')) continue;
    const { specId, homeSetId, partId, fresh } = move;
    const key = [specId, homeSetId, partId, fresh].join('/');
    const had = lots.get(key);
    const qty = (had?.qty ?? 0) + (move.dst === 'unknown' ? move.qty : -move.qty);
    lots.set(key, { specId, homeSetId, partId, fresh, srcStowId: had?.srcStowId ?? move.srcStowId, qty });
  }
  return [...lots.values()].filter(({ qty }) => qty > 0);
}
