/**
 * The eight ways a picture is stored, as EXIF numbers them (CIPA DC-008, Orientation): 1 upright, 2 mirrored,
 * 3 half a turn, 4 mirrored and half a turn, 5 mirrored and turned, 6 to be turned a quarter to the right,
 * 7 mirrored and turned the other way, 8 to be turned a quarter to the left.
 */
export type Turn = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8;

/** A whole-pixel turn as a matrix on centred coordinates, y downwards: upright = M · stored. */
type Matrix = readonly [number, number, number, number];

const MATRICES: Readonly<Record<Turn, Matrix>> = {
  1: [1, 0, 0, 1],
  2: [-1, 0, 0, 1],
  3: [-1, 0, 0, -1],
  4: [1, 0, 0, -1],
  5: [0, 1, 1, 0],
  6: [0, -1, 1, 0],
  7: [0, -1, -1, 0],
  8: [0, 1, -1, 0],
};
const TURNS = [1, 2, 3, 4, 5, 6, 7, 8] as const;

/** A number as a turn; anything that is none means upright, as every viewer takes it. */
export function turnOf(value: unknown): Turn {
  return TURNS.find((turn) => turn === value) ?? 1;
}

/** First one turn, then another, as one. */
export function thenTurn(first: Turn, then: Turn): Turn {
  const [a, b, c, d] = MATRICES[then];
  const [e, f, g, h] = MATRICES[first];
  const both = [a * e + b * g, a * f + b * h, c * e + d * g, c * f + d * h];
  return TURNS.find((turn) => MATRICES[turn].every((value, i) => value === both[i])) ?? 1;
}

/** The turn that takes an upright picture back to how it is stored. */
export function turnBack(turn: Turn): Turn {
  return TURNS.find((back) => thenTurn(turn, back) === 1) ?? 1;
}

/** Whether width and height change places. */
export const swapsSides = (turn: Turn): boolean => turn >= 5;

/** Size of the upright picture, in pixels. */
export function uprightSize(width: number, height: number, turn: Turn): { width: number; height: number } {
  return swapsSides(turn) ? { width: height, height: width } : { width, height };
}

/** A point of the stored picture (fractions 0 to 1) in the upright one. */
export function toUpright(x: number, y: number, turn: Turn): { x: number; y: number } {
  const [a, b, c, d] = MATRICES[turn];
  return { x: a * (x - 0.5) + b * (y - 0.5) + 0.5, y: c * (x - 0.5) + d * (y - 0.5) + 0.5 };
}
