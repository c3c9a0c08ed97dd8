import type { EntryItem } from './meaning.ts';

/** What takes nothing off by itself: a rag, a mark, a measurement, a bag, a place, a sealant, a note. */
const BESIDE: ReadonlySet<EntryItem['kind']> = new Set([
  'temporary',
  'mark',
  'measurement',
  'condition',
  'stow',
  'place',
  'treatment',
  'note',
]);

/** Whether a line takes nothing off, so that it belongs to the removal under way, where there is one. */
export function takesNothingOff(items: readonly EntryItem[]): boolean {
  return items.length > 0 && items.every((item) => BESIDE.has(item.kind));
}
