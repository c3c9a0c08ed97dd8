import { ok, refuse } from '../model/result.ts';
import type { Row } from '../model/tables.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply, rowIn } from './frame.ts';
import { book, bookOut, holesOf, nextBag } from './pieces.ts';

const HOW: Record<Row<'removal'>['did'], Row<'part'>['how'] | null> = {
  off: 'off',
  slackened: 'aside',
  aside: 'aside',
  opened: 'opened',
  safe: null,
};

/**
 * What was done at a removal, said or corrected later: what was booked as off and was only slackened, opened or moved
 * aside never left the machine, and the other way round. Refused once its things were worked on on the way back.
 */
export function removalDid(
  context: Context,
  input: JobInput & { removalId: string; did: Row<'removal'>['did'] },
): Reply<{ said: string }> {
  return inJob(context, 'removal.did', input, (decision) => {
    const found = rowIn(decision, 'removal', input.removalId, 'removal');
    if (!found.ok) return found;
    const sets = decision.state.fset.filter((set) => set.removalId === input.removalId);
    const parts = decision.state.part.filter((part) => part.removalId === input.removalId);
    const mine = new Set([input.removalId, ...[...sets, ...parts].map((row) => row.id)]);
    for (const hole of decision.state.position) if (mine.has(hole.setId)) mine.add(hole.id);
    if (decision.state.deed.some((deed) => mine.has(deed.thingId)))
      return refuse('refused', 'This was worked on already on the way back; what was done to it stays.');
    const removal = { ...found.value, did: input.did };
    decision.writer.put('removal', removal);
    const booked = removal.phase !== 'planned';
    for (const set of sets) setDid(decision, set, input.did, booked);
    for (const part of parts) partDid(decision, part, HOW[input.did], booked);
    return ok({ said: 'Kept.' });
  });
}

function takeBack(decision: Decision, fits: (move: Row<'move'>) => boolean): void {
  for (const move of decision.state.move)
    if (move.cause === 'came off' && fits(move)) decision.writer.remove('move', move.id);
}

function setDid(decision: Decision, set: Row<'fset'>, did: Row<'removal'>['did'], booked: boolean): void {
  if (did === 'slackened' && set.how === 'out') {
    takeBack(decision, (move) => move.homeSetId === set.id && move.partId === null);
    decision.writer.put('fset', { ...set, how: 'slackened', stowId: null });
  } else if (did === 'off' && set.how === 'slackened') {
    const out = { ...set, how: 'out' as const, stowId: booked ? nextBag(decision).id : null };
    decision.writer.put('fset', out);
    if (booked) bookOut(decision, out, holesOf(decision, set.id));
  }
}

function partDid(
  decision: Decision,
  part: Row<'part'>,
  how: Row<'part'>['how'] | null,
  booked: boolean,
): void {
  if (how === null || part.how === how || part.how === 'fitted new') return;
  decision.writer.put('part', { ...part, how });
  if (part.how === 'off') takeBack(decision, (move) => move.partId === part.id);
  else if (how === 'off' && booked && part.qty > 0)
    book(decision, {
      qty: part.qty,
      src: 'hole',
      dst: 'stow',
      cause: 'came off',
      partId: part.id,
      dstStowId: part.stowId,
    });
}
