import { ok } from '../../model/result.ts';
import type { Row } from '../../model/tables.ts';
import { lotsOf } from '../counts.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply } from '../frame.ts';
import { book, stowFor } from '../pieces.ts';
import { newSearch } from '../searches.ts';
import type { OpenGroup } from './groups.ts';
import { matchTray, type Tray } from './tray.ts';

type Move = Row<'move'>;
type InHand = ReturnType<typeof lotsOf>[number];
type Lot = Pick<Move, 'specId' | 'homeSetId' | 'fresh' | 'countId' | 'qty'> & {
  readonly stowId: string | null;
};

export interface Accepted {
  said: string;
  moved: number;
  found: number;
  missing: number;
  unbooked: number;
  doubtful: number;
}

interface Booking {
  readonly decision: Decision;
  readonly from: ReadonlySet<string>;
  readonly intoId: string | null;
  readonly done: { moved: number; found: number; missing: number; unbooked: number; doubtful: number };
  /** Pieces found, by the search they end. */
  readonly found: Map<string, number>;
}

const keyOf = (setId: string | null, specId: string | null): string => `${setId ?? ''}/${specId ?? ''}`;

/** What stands in an account of no bag (looked for, lost) for these lines, by the search it belongs to. */
function accountLots(decision: Decision, account: 'unknown' | 'lost', keys: ReadonlySet<string>): Lot[] {
  const lots = new Map<string, Lot>();
  const add = (move: Move, qty: number) => {
    const key = [move.specId, move.homeSetId, move.fresh, move.countId].join('/');
    const had = lots.get(key);
    const stowId = move.srcStowId ?? had?.stowId ?? null;
    lots.set(key, { ...move, stowId, qty: (had?.qty ?? 0) + qty });
  };
  for (const move of decision.state.move) {
    if (move.partId !== null || !keys.has(keyOf(move.homeSetId, move.specId))) continue;
    if (move.dst === account) add(move, move.qty);
    if (move.src === account) add(move, -move.qty);
  }
  return [...lots.values()].filter((lot) => lot.qty > 0);
}

/**
 * Sorted ones in hand, those of the spilled bags first: moved into the bag named, else they stay where the books have
 * them. What lay in a spilled bag and is not on the table is looked for; `held` lie there, but are not booked. Gives how many were not in hand by the books.
 */
function takeInHand(booking: Booking, group: OpenGroup, wanted: number, held: number): number {
  const { decision, from, intoId, done } = booking;
  const keys = new Set(group.lines.map((line) => keyOf(line.setId, line.specId)));
  const wasSpilled = ({ srcStowId }: InHand): boolean => from.has(srcStowId ?? '');
  const lots = lotsOf(
    decision,
    (move) => move.partId === null && keys.has(keyOf(move.homeSetId, move.specId)),
  )
    // What was not spilled still lies in its bag.
    .filter((lot) => from.size === 0 || wasSpilled(lot));
  let left = wanted;
  let there = held;
  for (const lot of lots) {
    const some = Math.min(left, lot.qty);
    left -= some;
    if (some > 0 && intoId !== null && lot.srcStowId !== intoId) {
      book(decision, { ...lot, qty: some, src: 'stow', dst: 'stow', cause: 'moved', dstStowId: intoId });
      done.moved += some;
    }
    const kept = Math.min(there, lot.qty - some);
    there -= kept;
    if (wasSpilled(lot) && lot.qty > some + kept) miss(booking, lot, lot.qty - some - kept);
  }
  return left;
}

/** One search a set, for all that is missing of it out of the spilled bags. */
function miss(booking: Booking, lot: InHand, qty: number): void {
  const { decision, done } = booking;
  const open = decision.writer.list(
    'counting',
    (row) => row.thingId === lot.homeSetId && row.at === decision.at,
    [],
  )[0];
  const counting = open ?? newSearch(decision, lot.homeSetId, 0, 'Not in the spilled tray.');
  decision.writer.put('counting', {
    ...counting,
    expected: counting.expected + lot.qty,
    counted: counting.counted + lot.qty - qty,
  });
  book(decision, { ...lot, qty, src: 'stow', dst: 'unknown', cause: 'counted', countId: counting.id });
  done.missing += qty;
}

/** More on the table than in hand by the books: what was looked for, then what was written off, is found again. */
function takeFound(booking: Booking, group: OpenGroup, wanted: number): number {
  const { decision, intoId, done, found } = booking;
  const keys = new Set(group.lines.map((line) => keyOf(line.setId, line.specId)));
  let left = wanted;
  for (const account of ['unknown', 'lost'] as const)
    for (const { stowId, ...lot } of left > 0 ? accountLots(decision, account, keys) : []) {
      const some = Math.min(left, lot.qty);
      if (some <= 0) continue;
      const { specId, homeSetId, fresh, countId } = lot;
      const own = { specId, homeSetId, fresh, countId, qty: some };
      book(decision, { ...own, src: account, dst: 'stow', cause: 'found', dstStowId: intoId ?? stowId });
      if (account === 'unknown' && countId !== null) found.set(countId, (found.get(countId) ?? 0) + some);
      done.found += some;
      left -= some;
    }
  return left;
}

/** A search all of whose pieces are here is ended by what was found. */
function endSearches({ decision, found }: Booking): void {
  for (const [id, qty] of found) {
    const row = decision.writer.get('counting', id);
    if (!row || row.ended !== null) continue;
    const before = decision.state.move
      .filter((move) => move.countId === id && move.src === 'unknown' && move.dst !== 'lost')
      .reduce((sum, move) => sum + move.qty, 0);
    if (row.expected - row.counted - before > qty) continue;
    decision.writer.put('counting', {
      ...row,
      ended: 'found',
      endedWhy: 'In the spilled tray.',
      endedAt: decision.at,
      endedBy: decision.personId,
    });
  }
}

/** A set all of whose pieces in hand lie in the new bag now is looked for there on the way back. */
function rehome({ decision, intoId }: Booking, groups: readonly OpenGroup[]): void {
  if (intoId === null) return;
  const { writer, state } = decision;
  for (const setId of new Set(groups.flatMap(({ lines }) => lines.map((line) => line.setId)))) {
    const set = setId === null ? null : writer.get('fset', setId);
    const lots = lotsOf(decision, (move) => move.homeSetId === setId);
    if (!set || lots.length === 0 || lots.some((lot) => lot.srcStowId !== intoId)) continue;
    if (set.stowId !== intoId) writer.put('fset', { ...set, stowId: intoId });
    for (const hole of writer.list('position', (one) => one.setId === setId, state.position))
      if (hole.stowId !== null && hole.stowId !== intoId) writer.put('position', { ...hole, stowId: null });
  }
}

function saidOf(
  { moved, found, missing, unbooked, doubtful }: Booking['done'],
  pieces: number,
  into: string | null,
): string {
  const said = [
    `${pieces} sorted${into === null ? '' : `, ${moved} of them moved into ${into}`}.`,
    found > 0 ? `${found} found again.` : '',
    missing > 0 ? `${missing} not on the table: looked for from now on.` : '',
    unbooked > 0
      ? `${unbooked} more than the books know of: nothing is booked for them. Check the counts.`
      : '',
    doubtful > 0
      ? `${doubtful} not booked: the size of the holes they would go to was never written down. Look first, or write it down.`
      : '',
  ];
  return said.filter((one) => one !== '').join(' ');
}

/**
 * Books a tray as it was matched: the sorted ones into the bag named, what was looked for is found again, and what lay
 * in the bags that were spilled and is not on the table is looked for. A kind of which nothing was measured (the washers
 * stayed on the floor) is left alone, and so is, unless asked for, what fits only holes of unknown size. One command; undo takes all of it back.
 */
export function trayAccept(
  context: Context,
  input: JobInput &
    Tray & {
      readonly into: { kind: Row<'stow'>['kind']; label: string } | null;
      readonly doubtful?: boolean | undefined;
    },
): Reply<Accepted> {
  return inJob(context, 'tray.accept', input, (decision) => {
    const matched = matchTray(decision.state, input);
    if (!matched.ok) return matched;
    const { groups, measured, fit } = matched.value;
    const inDoubt = ({ row, group }: { row: number; group: number }) =>
      input.doubtful !== true && fit(row, group).doubt !== null;
    const pairs = matched.value.pairs.filter((pair) => !inDoubt(pair));
    const held = matched.value.pairs.filter(inDoubt);
    const sumOf = (list: typeof pairs, g: number) =>
      list.reduce((sum, pair) => sum + (pair.group === g ? pair.qty : 0), 0);
    const into = input.into === null ? null : stowFor(decision, input.into.kind, input.into.label);
    const booking: Booking = {
      decision,
      from: new Set(input.from),
      intoId: into?.id ?? null,
      done: { moved: 0, found: 0, missing: 0, unbooked: 0, doubtful: 0 },
      found: new Map(),
    };
    const families = new Set<string>(
      measured.map(({ kind }) => (kind === 'nut' || kind === 'washer' || kind === 'spacer' ? kind : 'hole')),
    );
    groups.forEach((group, g) => {
      if (!families.has(group.wanted.family)) return;
      const left = takeInHand(booking, group, sumOf(pairs, g), sumOf(held, g));
      booking.done.unbooked += takeFound(booking, group, left);
      booking.done.doubtful += sumOf(held, g);
    });
    endSearches(booking);
    rehome(booking, groups);
    const pieces = pairs.reduce((sum, { qty }) => sum + qty, 0);
    const name = into === null ? null : `${into.kind} ${into.label}`;
    return ok({ ...booking.done, said: saidOf(booking.done, pieces, name) });
  });
}
