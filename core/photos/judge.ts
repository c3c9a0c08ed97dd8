/** What is said at once about a shot, while it can be repeated. */

/** So many photos of one camera are needed before one of them can be called blurred. */
const ENOUGH = 4;
/** Below this share of the camera's middle sharpness a shot is called blurred. */
const BLURRED_SHARE = 0.2;
/** Where 95 of 100 pixels are darker than this grey (0 to 255), the picture shows next to nothing. */
const DARK_GREY = 32;

/**
 * Whether a shot is blurred against the camera's own other photos: cameras and lenses differ too much for one figure.
 * `others` are the sharpness figures of the same camera, this shot left out; with too few of them nothing is said.
 */
export function isBlurred(sharpness: number | null, others: readonly number[]): boolean {
  if (sharpness === null || others.length < ENOUGH) return false;
  const sorted = [...others].sort((a, b) => a - b);
  const middle = sorted[Math.floor(sorted.length / 2)] as number;
  return sharpness < middle * BLURRED_SHARE;
}

export function isDark(light: { readonly bright: number }): boolean {
  return light.bright < DARK_GREY;
}
