import type { Chip, Condition, Stow } from './meaning.ts';
import { CAPTION } from './text.ts';
import { writeCondition } from './write-words.ts';

/** A chip; `doubtful` only where someone should confirm or look. */
export const chip = (label: string, caption: string, doubtful = false): Chip => ({
  label,
  caption,
  doubtful,
});

/** "bag 6", or the next free one. */
export function chipsOfStow(stow: Stow | null): Chip[] {
  if (stow === null) return [];
  return stow.label === null
    ? [chip(stow.kind, CAPTION.stowNext)]
    : [chip(`${stow.kind} ${stow.label}`, CAPTION.stow)];
}

/** "1 stripped", or the condition over its hole. */
export function chipOfCondition(condition: Condition): Chip {
  const { holes, what, qty } = condition;
  if (holes.length === 0) return chip(writeCondition(condition), CAPTION.condition);
  return chip(qty === null ? what : `${qty} ${what}`, CAPTION.hole(holes));
}
