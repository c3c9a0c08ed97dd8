import type { Condition, Stow } from './meaning.ts';
import { CONDITION_WORD } from './text.ts';

/** Puts a text into quotes, so that it is taken as it stands. */
export const quote = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** How open texts are written: as they are, or in quotes where they would be read as something else. */
export type Style = 'plain' | 'prefixed' | 'quoted';

/** An open text in this style. */
export const open = (text: string, style: Style): string => (style === 'quoted' ? quote(text) : text);

/** "bag 4", "bag". */
export function writeStow(stow: Stow | null, style: Style): string[] {
  if (stow === null) return [];
  return [stow.label === null ? stow.kind : `${stow.kind} ${open(stow.label, style)}`];
}

/** "2 stripped", "hole 3 snapped", "2 bent in holes 3 and 5". */
export function writeCondition({ what, qty, holes }: Condition): string {
  const word = CONDITION_WORD(what);
  const where = holes.length > 0 ? `${holes.length > 1 ? 'holes' : 'hole'} ${holes.join(' and ')}` : '';
  if (qty === null) return where === '' ? word : `${where} ${word}`;
  return where === '' ? `${qty} ${word}` : `${qty} ${word} in ${where}`;
}
