import { ok, refuse } from '../model/result.ts';
import { type Context, inJob, type JobInput, type Reply, rowIn } from './frame.ts';
import { lotsOf } from './counts.ts';
import { book, pieceHome } from './pieces.ts';

/** Sent out: to be repaired, coated, measured. Its pieces are away until they are back. */
export function awaySend(
  context: Context,
  input: JobInput & { thingId: string; toWhom: string; due: number | null; note: string },
): Reply<{ id: string; said: string }> {
  return inJob(context, 'away.send', input, (decision) => {
    const home = pieceHome(decision, input.thingId);
    if (!home.ok) return home;
    if (decision.state.away.some((away) => away.thingId === input.thingId && away.backAt === null))
      return refuse('refused', 'This is away already.');
    const id = decision.newId();
    decision.writer.put('away', {
      id,
      jobId: decision.jobId,
      thingId: input.thingId,
      toWhom: input.toWhom,
      since: decision.at,
      due: input.due,
      backAt: null,
      note: input.note,
    });
    const value = home.value;
    const lots = lotsOf(decision, (move) =>
      value.kind === 'set' ? move.homeSetId === value.set.id : move.partId === value.part.id,
    );
    if (lots.length === 0)
      return refuse(
        'refused',
        'Expected something that is off the machine and in hand; by the books it is not.',
      );
    for (const lot of lots) book(decision, { ...lot, src: 'stow', dst: 'away', cause: 'sent out' });
    return ok({ id, said: `Sent to ${input.toWhom}.` });
  });
}

/** Back in the workshop, to where it lay. */
export function awayBack(context: Context, input: JobInput & { awayId: string }): Reply<{ said: string }> {
  return inJob(context, 'away.back', input, (decision) => {
    const found = rowIn(decision, 'away', input.awayId, 'thing that is away');
    if (!found.ok) return found;
    if (found.value.backAt !== null) return refuse('refused', 'This is back already.');
    const home = pieceHome(decision, found.value.thingId);
    if (!home.ok) return home;
    decision.writer.put('away', { ...found.value, backAt: decision.at });
    const value = home.value;
    const balance = new Map<
      string,
      { fresh: boolean; specId: string | null; qty: number; stow: string | null }
    >();
    for (const move of decision.state.move) {
      const mine = value.kind === 'set' ? move.homeSetId === value.set.id : move.partId === value.part.id;
      if (!mine || (move.dst !== 'away' && move.src !== 'away')) continue;
      const key = `${move.specId ?? ''}/${move.fresh}`;
      const sum = balance.get(key) ?? {
        fresh: move.fresh,
        specId: move.specId,
        qty: 0,
        stow: move.srcStowId,
      };
      balance.set(key, { ...sum, qty: sum.qty + (move.dst === 'away' ? move.qty : -move.qty) });
    }
    for (const lot of balance.values())
      if (lot.qty > 0)
        book(decision, {
          qty: lot.qty,
          src: 'away',
          dst: 'stow',
          cause: 'came back',
          fresh: lot.fresh,
          specId: lot.specId,
          homeSetId: value.kind === 'set' ? value.set.id : null,
          partId: value.kind === 'part' ? value.part.id : null,
          dstStowId: lot.stow,
        });
    return ok({ said: 'Back in the workshop.' });
  });
}
