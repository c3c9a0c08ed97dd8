import type { Extent, Point } from './geometry.ts';

/** A joint that gets a disc: px in the box. */
export interface Joint {
  readonly id: string;
  readonly at: Point;
  /** Marks of one joint are placed outwards from their common centre. */
  readonly group: string;
  /** Radius of the head or washer, px; null: judged from how near the neighbours are. */
  readonly radius: number | null;
}

/** Where the disc goes and how its leader runs. The leader ends in a dot at the washer's edge, never on the head. */
export interface Placed {
  readonly id: string;
  readonly disc: Point;
  readonly dot: Point;
}

/** Air between a disc and the edge of the picture, px. */
export const air = 8;
const leaderReach = 18;
/** How far a leader may turn from straight outwards, in the order tried, degrees. */
const turns = [
  0, 15, -15, 30, -30, 45, -45, 60, -60, 75, -75, 90, -90, 100, -100, 115, -115, 135, -135, 165, -165,
];
const reaches = [0, 14, 30, 54];

/**
 * Places a disc of `radius` px for every joint: outside the joint, away from its centre, `air` px inside the picture,
 * on no head and on no other disc as long as there is room; else as little as possible. Those with the least room
 * choose first. Joints outside the box get none, but still say where the middle of their joint is.
 *
 * @param headMost largest radius that a head is judged to have, px
 * @param middle what all discs go away from; null: each from the middle of its own joint, as far as that is marked
 */
export function placeDiscs(
  joints: readonly Joint[],
  box: Extent,
  radius: number,
  headMost = Math.min(40, box.width * 0.05),
  middle: Point | null = null,
): Placed[] {
  const heads = joints.map((joint) => ({ at: joint.at, radius: headRadius(joint, joints, headMost) }));
  const tried = joints.map((joint, i) =>
    candidates(
      joint,
      heads[i]?.radius ?? 0,
      outwardsFrom(joint, middle ?? middleOf(joint, joints, box)),
      radius,
    ).map((one) => ({
      placed: one.placed,
      cost:
        one.cost +
        outside(one.placed.disc, box, radius) * 40 +
        heads.reduce((sum, head) => sum + overlap(one.placed.disc, radius, head.at, head.radius), 0) * 4,
    })),
  );
  const cheapest = (i: number) => Math.min(...(tried[i] ?? []).map((one) => one.cost));
  const seen = joints.flatMap((joint, i) => (isInside(joint.at, box) ? [i] : []));
  const order = seen.sort((a, b) => cheapest(b) - cheapest(a) || a - b);
  const taken = new Map<number, Placed>();
  for (const i of order) {
    const others = [...taken.values()];
    let best: Candidate | null = null;
    for (const { placed, cost } of tried[i] ?? []) {
      const crowd = others.reduce(
        (sum, other) => sum + overlap(placed.disc, radius + 2, other.disc, radius + 2),
        0,
      );
      if (best === null || cost + crowd * 12 < best.cost) best = { placed, cost: cost + crowd * 12 };
    }
    if (best !== null) taken.set(i, best.placed);
  }
  return joints.flatMap((_, i) => {
    const placed = taken.get(i);
    return placed === undefined ? [] : [held(placed, box, radius)];
  });
}

interface Candidate {
  readonly placed: Placed;
  readonly cost: number;
}

function candidates(joint: Joint, head: number, outwards: number, radius: number): Candidate[] {
  return reaches.flatMap((reach) =>
    turns.map((turn) => {
      const angle = outwards + (turn * Math.PI) / 180;
      const along = (length: number) => ({
        x: joint.at.x + Math.cos(angle) * length,
        y: joint.at.y + Math.sin(angle) * length,
      });
      // Turned back into the joint it would cover what the hand needs to find.
      const inwards = Math.abs(turn) > 100 ? 60 : 0;
      return {
        placed: { id: joint.id, disc: along(head + leaderReach + radius + reach), dot: along(head) },
        cost: Math.abs(turn) * 0.12 + reach * 0.25 + inwards,
      };
    }),
  );
}

/** The number is never cut: whatever else has to give, the disc stays inside. */
function held(placed: Placed, box: Extent, radius: number): Placed {
  const edge = Math.min(radius + air, box.width / 2, box.height / 2);
  const disc = {
    x: Math.min(box.width - edge, Math.max(edge, placed.disc.x)),
    y: Math.min(box.height - edge, Math.max(edge, placed.disc.y)),
  };
  return { ...placed, disc };
}

/** A third of the way to the nearest neighbour, but no more than `most`. */
function headRadius(joint: Joint, joints: readonly Joint[], most: number): number {
  if (joint.radius !== null) return joint.radius;
  return joints.reduce(
    (least, other) =>
      other.id === joint.id ? least : Math.min(least, Math.max(8, distance(joint.at, other.at) * 0.3)),
    most,
  );
}

/** The middle of a joint; of a single mark the middle of the picture. */
function middleOf(joint: Joint, joints: readonly Joint[], box: Extent): Point {
  const mates = joints.filter((other) => other.group === joint.group);
  if (mates.length < 2) return { x: box.width / 2, y: box.height / 2 };
  return {
    x: mates.reduce((sum, mate) => sum + mate.at.x, 0) / mates.length,
    y: mates.reduce((sum, mate) => sum + mate.at.y, 0) / mates.length,
  };
}

/** Radians. */
function outwardsFrom(joint: Joint, middle: Point): number {
  const dx = joint.at.x - middle.x;
  const dy = joint.at.y - middle.y;
  return Math.hypot(dx, dy) < 1 ? -Math.PI / 4 : Math.atan2(dy, dx);
}

function isInside(at: Point, box: Extent): boolean {
  return at.x >= 0 && at.y >= 0 && at.x <= box.width && at.y <= box.height;
}

function outside(disc: Point, box: Extent, radius: number): number {
  const edge = radius + air;
  return (
    Math.max(0, edge - disc.x) +
    Math.max(0, disc.x + edge - box.width) +
    Math.max(0, edge - disc.y) +
    Math.max(0, disc.y + edge - box.height)
  );
}

function overlap(a: Point, ra: number, b: Point, rb: number): number {
  return Math.max(0, ra + rb - distance(a, b));
}

function distance(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/**
 * How far from the middle of its hole a move stops, px: at the washer, as far as that can be judged by the nearest
 * neighbour. In a small joint a move that stopped further away would point at nothing.
 *
 * @param share of the way to the nearest neighbour
 */
export function washerOf(holes: readonly Point[], most: number, share = 0.3): number {
  const nearest = holes.flatMap((hole, i) => holes.slice(i + 1).map((other) => distance(hole, other)));
  return nearest.reduce((least, far) => Math.min(least, Math.max(6, far * share)), most);
}

/** A move of the tightening order: broad where it starts, a point where it goes. Stops at the washers. */
export function wedge(from: Point, to: Point, washer: number, breadth: number): Point[] {
  const length = distance(from, to);
  if (length <= washer * 2) return [];
  const ux = (to.x - from.x) / length;
  const uy = (to.y - from.y) / length;
  const corner = (p: Point, way: number, side: number, half: number) => ({
    x: p.x + ux * way - uy * side * half,
    y: p.y + uy * way + ux * side * half,
  });
  const half = breadth / 2;
  return [
    corner(from, washer, 1, half),
    corner(to, -washer, 1, 1.1),
    corner(to, -washer, -1, 1.1),
    corner(from, washer, -1, half),
  ];
}
