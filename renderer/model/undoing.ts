import type { JobView } from '../../core/contract/views.ts';
import { tighteningOrder } from '../../core/fastening/index.ts';
import type { Move, PhotoData, PhotoMark } from '../photo/types.ts';
import { hintOf } from './joint.ts';
import type { UndoingData } from '../screens/removal/Undoing.tsx';

/** Fewer than four have no order to speak of. */
const LEAST = 4;

/** Holes whose fastener is still in: planned only, or slackened and not out, and nothing was done on the way back. */
export function stillIn(state: JobView['state']): ReadonlySet<string> {
  const planned = new Set(state.removal.filter((one) => one.phase === 'planned').map((one) => one.id));
  const sets = new Set(
    state.fset.filter((set) => set.how === 'slackened' || planned.has(set.removalId)).map((set) => set.id),
  );
  const begun = new Set(state.deed.map((deed) => deed.thingId));
  return new Set(
    state.position.filter((hole) => sets.has(hole.setId) && !begun.has(hole.id)).map((hole) => hole.id),
  );
}

/**
 * The order of undoing by the marks of holes that are still in: shown before the first one is undone, because a casting
 * that hangs on its last bolt warps or breaks. Null where fewer than four are marked, or any of them is out already.
 */
export function undoingOf(
  marks: readonly PhotoMark[],
  photo: PhotoData | null,
  isIn: (markId: string) => boolean,
): (UndoingData & { readonly moves: readonly Move[] }) | null {
  const holes = marks.filter((mark) => mark.kind === 'position');
  if (photo === null || holes.length < LEAST || !holes.every((mark) => isIn(mark.id))) return null;
  const found = tighteningOrder(
    holes.map(({ id, x, y }) => ({ id, x, y })),
    photo,
  );
  if (!found.ok) return null;
  const text = new Map(holes.map((mark) => [mark.id, mark.text]));
  const { undoing } = found.value;
  return {
    order: undoing.map((id) => text.get(id) ?? ''),
    says: found.value.undoingSays,
    hint: hintOf(found.value, holes),
    moves: undoing.flatMap((toId, i) => {
      const fromId = undoing[i - 1];
      return fromId === undefined ? [] : [{ fromId, toId, now: i === 1 }];
    }),
  };
}
