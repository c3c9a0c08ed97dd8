import type { MarkKind, MarkState } from './marks.ts';

/**
 * Outline of each kind, middle 24 24. Position: disc. Part: plate. Connection: a plate with a stub at either side.
 * Match mark: a pointer with its line. Temporary: a tag with its hole, to be pulled.
 */
export const outlines: Record<MarkKind, string> = {
  position: 'M24 7.75a16.25 16.25 0 1 1 0 32.5a16.25 16.25 0 1 1 0-32.5Z',
  part: 'M8.5 8.5H39.5V39.5H8.5Z',
  connection: 'M10.5 9H37.5V18H43.5V30H37.5V39H10.5V30H4.5V18H10.5Z',
  match: 'M8.5 5H39.5V31L24 44L8.5 31Z',
  temporary: 'M15 3H33L40 11V42H8V11Z',
};
/** A head seen from above, still in its hole. Six corners, so that it is never taken for a disc. */
export const head = 'M24 3.5L42.5 13.75V34.25L24 44.5L5.5 34.25V13.75Z';

/** The half that is filled: to just below the middle, so that the number keeps a whole ground above it. */
export const halves: Record<MarkKind, string> = {
  position: 'M6.6 27.6h34.8a17.8 17.8 0 0 1-34.8 0z',
  part: 'M8.5 28.5H39.5V39.5H8.5Z',
  connection: 'M4.5 28.5H43.5V30H37.5V39H10.5V30H4.5Z',
  match: 'M8.5 29H39.5V31L24 44L8.5 31Z',
  temporary: 'M8 31H40V42H8Z',
};

/** How large the number stands, where its middle is (of 48), and whether its ground is ink. */
export function textOf(
  kind: MarkKind,
  state: MarkState,
  text: string,
): { readonly size: number; readonly y: number; readonly full: boolean } {
  const half = state === 'started';
  return {
    size: text.length > 2 ? 13 : half || text.length > 1 ? 16.5 : 19.5,
    y: half ? 18.7 : kind === 'temporary' ? 26.5 : kind === 'match' ? 21.5 : 24,
    full: state === 'in' || state === 'tightened' || state === 'paint-checked',
  };
}
