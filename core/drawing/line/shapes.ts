import type { Did } from './types.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Where the channel stands and how far its notches reach, px. */
export interface Channel {
  readonly left: number;
  readonly right: number;
  /** 1 on the full line; smaller where the line is narrow. */
  readonly reach: number;
}

export const fullChannel: Channel = { left: 24, right: 38, reach: 1 };
export const slimChannel: Channel = { left: 16, right: 30, reach: 0.72 };
export const tinyChannel: Channel = { left: 6, right: 16, reach: 0.72 };

/**
 * Length of a notch, px: one piece (or nobody said how many) short, 2 to 5 middle, 6 and more long, so that the
 * silhouette of a job is known before a label is read.
 */
export function notchLength(pieces: number, channel: Channel): number {
  return (pieces >= 6 ? 28 : pieces >= 2 ? 18 : 10) * channel.reach;
}

/**
 * The outline of one notch, from where it leaves the right edge of the channel to where it comes back, top first.
 * Off is a square cut. Slackened is a saw tooth: it has not let go. Opened is a dovetail, wider outside than in. Moved
 * aside leans. Made safe is two thin cuts.
 *
 * @param y middle of the notch, px
 * @param height its height, px
 */
export function notchShape(did: Did, y: number, height: number, length: number, channel: Channel): Point[] {
  const x = channel.right;
  const end = x + length;
  const half = height / 2;
  switch (did) {
    case 'off':
      return points(x, y - half, end, y - half, end, y + half, x, y + half);
    case 'slackened':
      return points(x, y - half, end, y, x, y + half);
    case 'opened':
      return points(x, y - half * 0.45, end, y - half, end, y + half, x, y + half * 0.45);
    case 'aside':
      return points(x, y - half, end, y - half * 0.1, end, y + half * 1.4, x, y + half * 0.5);
    case 'safe': {
      const cut = height * 0.28;
      return points(
        ...[x, y - half, end, y - half, end, y - half + cut, x, y - half + cut],
        ...[x, y + half - cut, end, y + half - cut, end, y + half, x, y + half],
      );
    }
  }
}

function points(...xy: number[]): Point[] {
  const made: Point[] = [];
  for (let i = 0; i + 1 < xy.length; i += 2) made.push({ x: xy[i] ?? 0, y: xy[i + 1] ?? 0 });
  return made;
}

/** SVG path data of a polygon or polyline; to a tenth of a pixel. */
export function pathOf(shape: readonly Point[], closed: boolean): string {
  const body = shape.map((p, i) => `${i === 0 ? 'M' : 'L'}${round(p.x)} ${round(p.y)}`).join('');
  return closed ? `${body}Z` : body;
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
