import type { JobView } from '../../core/contract/views.ts';
import type { Row } from '../../core/model/tables.ts';
import type { Pending } from '../data/journal.ts';
import type { LineData, LineItem, Notch } from '../../core/drawing/line/types.ts';
import { windowText as say } from '../texts/window.ts';
import type { Count } from '../ui/Numbers.tsx';
import { gatesByNotch } from './gates.ts';
import { ago } from './time.ts';

/** The removals that are not void, in the order of the log. */
export function logOf(view: JobView): Row<'removal'>[] {
  return view.state.removal
    .filter((removal) => removal.phase !== 'void')
    .sort((a, b) => (a.ord === b.ord ? (a.id < b.id ? -1 : 1) : a.ord < b.ord ? -1 : 1));
}

/** Removals that are only planned: nothing of them is off, open or safe yet. */
export function plannedIds(view: JobView): ReadonlySet<string> {
  return new Set(view.state.removal.filter(({ phase }) => phase === 'planned').map(({ id }) => id));
}

/** How many removals of the log stand before one that is begun now. */
export function begunBefore(log: readonly Row<'removal'>[]): number {
  return log.findLastIndex((removal) => removal.phase !== 'planned') + 1;
}

/** Pieces per removal: what came out of its holes, and its parts. */
function piecesOf(view: JobView): Map<string, number> {
  const pieces = new Map<string, number>();
  const home = new Map(view.state.fset.map((set) => [set.id, set.removalId]));
  const add = (id: string | null | undefined, qty: number) => {
    if (id) pieces.set(id, (pieces.get(id) ?? 0) + qty);
  };
  for (const hole of view.state.position) if (hole.found !== 'empty') add(home.get(hole.setId), 1);
  for (const part of view.state.part) add(part.removalId, part.qty);
  return pieces;
}

function noteOf(view: JobView, removal: Row<'removal'>, now: number): string {
  const parts = view.state.part.filter((part) => part.removalId === removal.id);
  const away = view.state.away.find(
    (one) => one.backAt === null && parts.some((part) => part.id === one.thingId),
  );
  if (!away)
    return removal.phase === 'given up' ? say.givenUp : removal.phase === 'planned' ? say.planned : '';
  return away.due !== null && away.due < now ? say.awayLate(ago(away.due, now)) : say.away;
}

/** Removals that are back: their step is done, or all that they made safe is given back. */
function backOn(view: JobView): Set<string | null> {
  const mine = view.plan.steps.filter((step) => step.kind === 'S' || step.kind === 'I');
  const putBack = new Set(mine.filter((step) => step.kind === 'S').map((step) => step.removalId));
  const counts = mine.filter((step) => step.kind === 'S' || !putBack.has(step.removalId));
  const open = new Set(counts.filter((step) => step.state !== 'done').map((step) => step.removalId));
  return new Set(counts.map((step) => step.removalId).filter((id) => !open.has(id)));
}

/** The depth line of a job: its removals, what is on its way to the record, the gates that are checks to pass. */
export function lineOf(
  view: JobView,
  options: { readonly direction: LineData['direction']; readonly atId: string | null; readonly now: number },
  pending: readonly Pending[],
): LineData {
  const done = backOn(view);
  const pieces = piecesOf(view);
  const log = logOf(view);
  const gates =
    options.direction === 'back'
      ? gatesByNotch(
          view,
          log.map((removal) => removal.id),
        )
      : new Map();
  const items: LineItem[] = [...(gates.get('') ?? [])];
  const known = new Set(log.map((removal) => removal.id));
  const ahead = pending.flatMap(({ removal }) => (removal && !known.has(removal.id) ? [removal] : []));
  const next = begunBefore(log);
  const addAhead = () =>
    ahead.forEach((removal, i) => {
      items.push({
        kind: 'removal',
        id: removal.id,
        number: next + i + 1,
        title: removal.text,
        pieces: 0,
        did: 'off',
        back: false,
        place: '',
        note: say.unsaved,
      });
    });
  log.forEach((removal, i) => {
    if (i === next) addAhead();
    const notch: Notch = {
      kind: 'removal',
      id: removal.id,
      number: i + 1 + (i >= next ? ahead.length : 0),
      title: removal.title || removal.typed.split('\n')[0] || say.untitled,
      pieces: pieces.get(removal.id) ?? 0,
      did: removal.did,
      back: done.has(removal.id),
      place: removal.place,
      note: noteOf(view, removal, options.now),
    };
    items.push(notch, ...(gates.get(removal.id) ?? []));
  });
  if (next === log.length) addAhead();
  return { direction: options.direction, items, atId: options.atId };
}

/** Off, back, left; the one that matters in this direction is the largest. */
export function countsOf(view: JobView, direction: LineData['direction'], pending: number): Count[] {
  const { off, back, left, pieces } = view.plan.depth;
  if (direction === 'apart')
    return [
      { label: say.off, value: off + pending, largest: true },
      ...(back > 0 ? [{ label: say.back, value: back }] : []),
      { label: say.pieces, value: pieces },
    ];
  return [
    { label: say.off, value: off },
    { label: say.back, value: back },
    { label: say.left, value: left, largest: true },
  ];
}
