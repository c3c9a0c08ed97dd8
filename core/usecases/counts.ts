import { blank } from '../model/blank.ts';
import { ok, refuse } from '../model/result.ts';
import type { Row } from '../model/tables.ts';
import { expectedIn } from '../tally/index.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply, rowIn } from './frame.ts';
import { book, pieceHome } from './pieces.ts';
import { learnCount } from './unknown-counts.ts';

type Said = Reply<{ said: string }>;

/** What lies in a stow by the books, per home and specification, most first. */
function lotsIn(decision: Decision, stowId: string) {
  const lots = new Map<string, Pick<Row<'move'>, 'specId' | 'homeSetId' | 'partId' | 'fresh' | 'qty'>>();
  for (const move of decision.state.move) {
    const into = move.dst === 'stow' && move.dstStowId === stowId;
    const from = move.src === 'stow' && move.srcStowId === stowId;
    if (into === from) continue;
    const key = [move.specId, move.homeSetId, move.partId, move.fresh].join('/');
    const lot = lots.get(key) ?? { ...move, qty: 0 };
    lots.set(key, { ...lot, qty: lot.qty + (into ? move.qty : -move.qty) });
  }
  return [...lots.values()].filter((lot) => lot.qty > 0).sort((a, b) => b.qty - a.qty);
}

/**
 * A bag counted by hand. Fewer than the books say: the difference is unaccounted for and a search opens. More: what
 * was thought to be gone is back, as far as that explains it; the rest is a difference that is shown.
 */
export function pieceCount(
  context: Context,
  input: JobInput & { stowId: string; counted: number; note?: string | undefined },
): Reply<{ countingId: string; expected: number; counted: number; said: string }> {
  return inJob(context, 'piece.count', input, (decision) => {
    const stow = decision.writer.get('stow', input.stowId);
    if (!stow) return refuse('not-found', `Expected a bag of this workshop, got ${input.stowId}.`);
    const booked = expectedIn(decision.state, input.stowId);
    const over = learnCount(decision, input.stowId, input.counted - booked);
    if (!over.ok) return over;
    const expected = input.counted - over.value;
    const id = decision.newId();
    const counting: Row<'counting'> = {
      id,
      jobId: decision.jobId,
      stowId: input.stowId,
      thingId: null,
      expected,
      counted: input.counted,
      at: decision.at,
      personId: decision.personId,
      note: input.note ?? '',
      ended: null,
      endedWhy: '',
      endedAt: null,
      endedBy: null,
    };
    const same = expected === input.counted;
    decision.writer.put('counting', same ? { ...counting, ended: 'found', endedAt: decision.at } : counting);
    if (input.counted < expected) bookMissing(decision, input.stowId, expected - input.counted, id);
    const name = `${stow.kind} ${stow.label}`;
    const said = same
      ? `${input.counted} in ${name}, as the books say.`
      : `${input.counted} in ${name}, and ${expected} by the books. Look for the difference before you buy.`;
    return ok({ countingId: id, expected, counted: input.counted, said });
  });
}

/** In a bag of one kind the missing ones are of that kind; in a mixed bag nobody knows yet, and nothing is booked. */
function bookMissing(decision: Decision, stowId: string, qty: number, countId: string): void {
  let left = qty;
  const lots = lotsIn(decision, stowId);
  if (new Set(lots.map((lot) => `${lot.specId}/${lot.partId}`)).size > 1) return;
  for (const lot of lots) {
    const some = Math.min(left, lot.qty);
    if (some <= 0) break;
    book(decision, {
      specId: lot.specId,
      homeSetId: lot.homeSetId,
      partId: lot.partId,
      fresh: lot.fresh,
      qty: some,
      src: 'stow',
      dst: 'unknown',
      cause: 'counted',
      srcStowId: stowId,
      countId,
    });
    left -= some;
  }
}

type Lot = Pick<Row<'move'>, 'specId' | 'homeSetId' | 'partId' | 'fresh' | 'qty' | 'srcStowId'>;

/** What is in hand (in any stow, or lying about) of the pieces that fit. */
export function lotsOf(decision: Decision, fits: (move: Row<'move'>) => boolean): Lot[] {
  const lots = new Map<string, Lot>();
  const add = (move: Row<'move'>, stowId: string | null, qty: number) => {
    const key = [move.specId, move.homeSetId, move.partId, move.fresh, stowId].join('/');
    const { specId, homeSetId, partId, fresh } = move;
    const lot = lots.get(key) ?? { specId, homeSetId, partId, fresh, srcStowId: stowId, qty: 0 };
    lots.set(key, { ...lot, qty: lot.qty + qty });
  };
  const moves = decision.writer.list('move', fits, decision.state.move);
  for (const move of moves) {
    if (move.dst === 'stow') add(move, move.dstStowId, move.qty);
    if (move.src === 'stow') add(move, move.srcStowId, -move.qty);
  }
  return [...lots.values()].filter((lot) => lot.qty > 0);
}

/** New pieces in hand, bought or made. Never ends a search: the old piece may be inside the machine. */
export function pieceReceive(
  context: Context,
  input: JobInput & {
    thingId: string;
    qty: number;
    stowId: string | null;
    wantId?: string | null | undefined;
    wantIds?: readonly string[] | undefined;
    specId?: string | null | undefined;
  },
): Said {
  return inJob(context, 'piece.receive', input, (decision) => {
    const home = pieceHome(decision, input.thingId);
    if (!home.ok) return home;
    const own =
      home.value.kind === 'set'
        ? {
            homeSetId: home.value.set.id,
            specId:
              input.specId ?? decision.writer.get('position', input.thingId)?.specId ?? home.value.set.specId,
            dstStowId: input.stowId ?? home.value.set.stowId,
          }
        : { partId: home.value.part.id, dstStowId: input.stowId ?? home.value.part.stowId };
    book(decision, { qty: input.qty, src: 'supply', dst: 'stow', cause: 'received', fresh: true, ...own });
    for (const wantId of new Set([...(input.wantId ? [input.wantId] : []), ...(input.wantIds ?? [])])) {
      const want = rowIn(decision, 'want', wantId, 'line of the list to get');
      if (!want.ok) return want;
      decision.writer.put('want', { ...want.value, state: 'here' });
    }
    return ok({ said: `${input.qty} new in hand.` });
  });
}

/** Out of use: scrapped, or put to stock. */
export function pieceScrap(
  context: Context,
  input: JobInput & { thingId: string; qty: number; to: 'scrap' | 'stock'; fresh: boolean; why: string },
): Said {
  return inJob(context, 'piece.scrap', input, (decision) => {
    const home = pieceHome(decision, input.thingId);
    if (!home.ok) return home;
    const mine = (move: Row<'move'>) =>
      home.value.kind === 'set' ? move.homeSetId === home.value.set.id : move.partId === home.value.part.id;
    const lots = lotsOf(decision, mine).filter((lot) => lot.fresh === input.fresh);
    const inHand = lots.reduce((sum, lot) => sum + lot.qty, 0);
    if (inHand < input.qty)
      return refuse('refused', `Expected at most ${inHand} in hand by the books, got ${input.qty}.`);
    let left = input.qty;
    for (const lot of lots) {
      const some = Math.min(left, lot.qty);
      if (some > 0)
        book(decision, {
          ...lot,
          qty: some,
          src: 'stow',
          dst: input.to,
          cause: input.to === 'scrap' ? 'scrapped' : 'to stock',
        });
      left -= some;
    }
    return ok({ said: input.to === 'scrap' ? `${input.qty} scrapped.` : `${input.qty} put to stock.` });
  });
}

/** A kit's receipt split into its items: each a new part, in hand. */
export function kitSplit(
  context: Context,
  input: JobInput & { partId: string; items: { name: string; qty: number; forPartId: string | null }[] },
): Said {
  return inJob(context, 'piece.kit', input, (decision) => {
    const kit = rowIn(decision, 'part', input.partId, 'kit');
    if (!kit.ok) return kit;
    decision.writer.put('part', { ...kit.value, kind: 'kit' });
    for (const item of input.items) {
      if (item.qty < 1) continue;
      let partId = item.forPartId;
      if (partId === null) {
        partId = decision.newId();
        decision.writer.put(
          'part',
          blank('part', partId, decision.jobId, {
            kitId: kit.value.id,
            name: item.name,
            kind: 'new part',
            qty: item.qty,
            how: 'fitted new',
          }),
        );
      } else if (!rowIn(decision, 'part', partId, 'part').ok)
        return refuse('not-found', `Expected a part of this job for “${item.name}”, got ${partId}.`);
      book(decision, {
        qty: item.qty,
        src: 'supply',
        dst: 'stow',
        cause: 'received',
        fresh: true,
        partId,
        dstStowId: kit.value.stowId,
      });
    }
    return ok({ said: `${input.items.length} items of the kit are in hand.` });
  });
}
