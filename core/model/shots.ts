/** What is said at once about a shot, while it can be repeated; the same on every screen and in every finding. */

/** So many photos of one camera are needed before one of them can be called blurred. */
const ENOUGH = 4;
/** Below this share of the camera's middle sharpness a shot is called blurred. */
const BLURRED_SHARE = 0.2;
/** Below this share it is softer than the others: said with its facts, but no reason to take it again. */
const SOFT_SHARE = 0.6;
/** Where 95 of 100 pixels are darker than this grey (0 to 255), the picture shows next to nothing. */
const DARK_GREY = 32;

/** A shot beside the others of its camera. */
export type Sharpness = 'even' | 'soft' | 'blurred';

function against(sharpness: number, middle: number): Sharpness {
  if (sharpness < middle * BLURRED_SHARE) return 'blurred';
  return sharpness < middle * SOFT_SHARE ? 'soft' : 'even';
}

/**
 * Whether a shot is blurred against the camera's own other photos: cameras and lenses differ too much for one figure.
 * `others` are the sharpness figures of the same camera, this shot left out; with too few of them nothing is said.
 */
export function isBlurred(sharpness: number | null, others: readonly number[]): boolean {
  if (sharpness === null || others.length < ENOUGH) return false;
  const sorted = [...others].sort((a, b) => a - b);
  return against(sharpness, sorted[Math.floor(sorted.length / 2)] as number) === 'blurred';
}

interface Shot {
  readonly id: string;
  readonly camera: string;
  readonly sharpness: number | null;
}

/**
 * Every shot of a job beside the others of its camera, by its id; left out where nothing can be said. Sorted once for
 * each camera, so that thousands of photos cost no more than their sorting.
 */
export function sharpnessOfAll(shots: readonly Shot[]): Map<string, Sharpness> {
  const cameras = new Map<string, (Shot & { readonly sharpness: number })[]>();
  for (const shot of shots) {
    if (shot.sharpness === null) continue;
    const own = cameras.get(shot.camera);
    if (own) own.push({ ...shot, sharpness: shot.sharpness });
    else cameras.set(shot.camera, [{ ...shot, sharpness: shot.sharpness }]);
  }
  const said = new Map<string, Sharpness>();
  for (const own of cameras.values()) {
    if (own.length <= ENOUGH) continue;
    own.sort((a, b) => a.sharpness - b.sharpness);
    // The middle of the others, this one left out.
    const middle = Math.floor((own.length - 1) / 2);
    for (const [at, shot] of own.entries())
      said.set(
        shot.id,
        against(shot.sharpness, (own[middle < at ? middle : middle + 1] as typeof shot).sharpness),
      );
  }
  return said;
}

export function isDark(light: { readonly bright: number }): boolean {
  return light.bright < DARK_GREY;
}
