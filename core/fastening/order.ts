import { fitEllipse, centroid, onUnitCircle, principalAxes, type Point } from './ellipse.ts';
import { MAKER_FIRST, good, refuse, type Basis, type Outcome } from './outcome.ts';
import { publishedPattern, ringSequence } from './patterns.ts';

/** A hole by its marker: a fraction 0…1 of the upright picture. Give holes in marker-number order. */
export interface HolePoint {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  /** One order may span several sets of the same joint. */
  readonly setId?: string | undefined;
}

/** Size of the upright picture in pixels: fractions alone would squeeze a circle. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

export interface OrderOptions {
  /** Whether all holes of the joint are on the photo; left open, the question comes back. */
  readonly allShown?: boolean | undefined;
  /** The hole to begin with on a ring; the first given unless told. */
  readonly firstId?: string | undefined;
  /** "other": the part is known not to be round (an oval cover looks like a ring at an angle): from the centre outwards. */
  readonly shape?: 'round' | 'other' | undefined;
}

export type Layout = 'single' | 'pair' | 'ring' | 'rectangle' | 'line' | 'scattered';

export interface TighteningOrder extends Basis {
  readonly layout: Layout;
  /** Ids in order of tightening, each once. */
  readonly order: readonly string[];
  /** Ids once around (on a ring), else as the order: for the last round. */
  readonly around: readonly string[];
  /** Ids in order of undoing, for castings: to be shown before the first one is undone. */
  readonly undoing: readonly string[];
  readonly undoingSays: string;
  readonly published: boolean;
  /** Asked until it is answered. */
  readonly question?: string;
  /** Where the gaps suggest that a hole is not shown. */
  readonly hint?: string;
  /** The two holes on either side of that gap, by id. */
  readonly gap?: readonly [string, string];
}

/** How a ring is undone. Common practice, no source: it keeps the part from hanging on the last bolt and springing. */
export const UNDOING_RING =
  'Undo in the same crosswise order, a quarter to half a turn at a time, about half of the load first.';

const ALL_SHOWN = 'Are all holes of this joint on the photo?';

interface Hole extends Point {
  readonly id: string;
  /** Place in the given list: breaks ties, so that turning or mirroring the picture changes nothing. */
  readonly rank: number;
}

/**
 * Order of tightening from markers: ring (ellipse fit, published cross pattern where there is one), else from the centre
 * outwards. The answer depends on the holes and their given order only, not on how the picture is turned or mirrored.
 * 1 to 200 holes, each with its own id and place. Sources: ASME PCC-1 legacy pattern; elsewhere common practice, no source.
 */
export function tighteningOrder(
  points: readonly HolePoint[],
  picture: PictureSize,
  options: OrderOptions = {},
): Outcome<TighteningOrder> {
  const refused = checkInput(points, picture);
  if (refused) return refused;
  const holes = points.map((p, rank) => ({
    id: p.id,
    rank,
    x: p.x * picture.width,
    y: p.y * picture.height,
  }));
  const first = holes.find((hole) => hole.id === options.firstId) ?? holes[0];
  if (options.firstId !== undefined && first?.id !== options.firstId) {
    return refuse('order.first', 'a first hole that is one of the holes', options.firstId);
  }
  if (!first) return refuse('order.count', '1 to 200 holes', 0);
  const sets = new Set(points.map((p) => p.setId ?? '')).size;
  const ring = options.shape === 'other' ? undefined : aroundRing(holes);
  const answer = ring ? ringOrder(ring, first, options.shape === 'round') : outwardsOrder(holes, first);
  return good({
    ...answer,
    inputs: [
      `${holes.length} ${holes.length === 1 ? 'hole' : 'holes'}${sets > 1 ? ` of ${sets} sets in one order` : ''}`,
      options.allShown === true
        ? 'all holes are on the photo'
        : 'whether all holes are on the photo is not said',
      ...(ring ? [`first hole ${first.id}`] : []),
    ],
    cautions: [
      MAKER_FIRST,
      ...(options.allShown === false
        ? ['Holes are missing on the photo: this order is not the whole joint.']
        : []),
    ],
    ...(options.allShown === true ? {} : { question: ALL_SHOWN }),
    ...(ring && options.allShown !== true ? hintOfGap(ring, holes.length) : {}),
  });
}

function checkInput(points: readonly HolePoint[], picture: PictureSize): Outcome<never> | undefined {
  if (points.length < 1 || points.length > 200) return refuse('order.count', '1 to 200 holes', points.length);
  if (!(picture.width > 0 && picture.height > 0)) {
    return refuse(
      'order.picture',
      'a picture with a width and a height',
      `${picture.width} × ${picture.height}`,
    );
  }
  const outside = points.find((p) => !(p.x >= 0 && p.x <= 1 && p.y >= 0 && p.y <= 1));
  if (outside)
    return refuse(
      'order.point',
      'places as fractions from 0 to 1 of the picture',
      `${outside.x}, ${outside.y}`,
    );
  const seen = new Set<string>();
  for (const p of points) {
    if (seen.has(p.id)) return refuse('order.twice', 'each hole once', p.id);
    seen.add(p.id);
  }
  const places = new Set(points.map((p) => `${p.x.toFixed(5)} ${p.y.toFixed(5)}`));
  return places.size < points.length
    ? refuse('order.place', 'holes at different places', 'two at one place')
    : undefined;
}

interface RingHole extends Hole {
  readonly angle: number;
}

/**
 * The holes around their ring by angle, or undefined where they lie on none. Three and four corners count as rings:
 * crosswise is right for them whether they are round or square. From five on they must lie on an ellipse
 * (7.5 % of its radius on average: room for hand-set markers) without a gap of half the ring.
 */
function aroundRing(holes: readonly Hole[]): readonly RingHole[] | undefined {
  const n = holes.length;
  if (n < 3 || isLine(holes)) return undefined;
  if (n <= 4) return convexRing(holes);
  const ellipse = fitEllipse(holes);
  if (!ellipse || ellipse.minor < 0.2 * ellipse.major) return undefined;
  const placed = holes.map((hole) => ({ ...hole, ...onUnitCircle(ellipse, hole) }));
  const misses = placed.map((hole) => Math.abs(hole.radius - 1));
  const rms = Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / n);
  if (rms > 0.075 || Math.max(...misses) > 0.2) return undefined;
  const ring = [...placed].sort((a, b) => a.angle - b.angle || a.rank - b.rank);
  const widest = Math.max(...gapsOf(ring));
  return widest > Math.min(2.3 * ((2 * Math.PI) / n), 0.9 * Math.PI) ? undefined : ring;
}

function isLine(holes: readonly Point[]): boolean {
  const axes = principalAxes(holes);
  return Math.sqrt(axes.small) < 0.12 * Math.sqrt(axes.great);
}

/** Three or four holes around their middle; undefined where one lies inside the others. */
function convexRing(holes: readonly Hole[]): readonly RingHole[] | undefined {
  const c = centroid(holes);
  const ring = holes
    .map((hole) => ({ ...hole, angle: Math.atan2(hole.y - c.y, hole.x - c.x) }))
    .sort((a, b) => a.angle - b.angle || a.rank - b.rank);
  const turns = ring.map((hole, i) => {
    const next = at(ring, i + 1);
    const after = at(ring, i + 2);
    return Math.sign((next.x - hole.x) * (after.y - next.y) - (next.y - hole.y) * (after.x - next.x));
  });
  return turns.every((turn) => turn === turns[0] && turn !== 0) ? ring : undefined;
}

/** Element around a ring, wrapping at both ends. */
function at<T>(ring: readonly T[], index: number): T {
  const found = ring[((index % ring.length) + ring.length) % ring.length];
  if (found === undefined) throw new Error('An empty ring has no holes');
  return found;
}

/** Gap from each hole to the next, radians. */
function gapsOf(ring: readonly RingHole[]): readonly number[] {
  return ring.map((hole, i) => {
    const gap = at(ring, i + 1).angle - hole.angle;
    return gap > 0 ? gap : gap + 2 * Math.PI;
  });
}

/** What a gap in a ring of marks suggests, by the names of the holes beside it. */
export function sayGap(one: string, other: string): string {
  return `Between holes ${one} and ${other} there is room for one more: is a hole not shown?`;
}

/** A gap much wider than both its neighbours: compared locally, because a slanted view widens the near side. */
function hintOfGap(ring: readonly RingHole[], n: number): Pick<TighteningOrder, 'hint' | 'gap'> {
  if (n < 5) return {};
  const gaps = gapsOf(ring);
  const wide = gaps.findIndex((gap, i) => gap > 1.6 * Math.max(at(gaps, i - 1), at(gaps, i + 1)));
  if (wide < 0) return {};
  const gap = [at(ring, wide).id, at(ring, wide + 1).id] as const;
  return { hint: sayGap(...gap), gap };
}

type Answer = Omit<TighteningOrder, 'inputs' | 'cautions' | 'question' | 'hint' | 'gap'>;

/** Ring: numbered from the first hole towards the neighbour given earlier, then the pattern. */
function ringOrder(ring: readonly RingHole[], first: Hole, surelyRound: boolean): Answer {
  const n = ring.length;
  const start = ring.findIndex((hole) => hole.id === first.id);
  const step = at(ring, start + 1).rank <= at(ring, start - 1).rank ? 1 : -1;
  const around = ring.map((_, i) => at(ring, start + step * i).id);
  const order = ringSequence(n).map((place) => at(around, place - 1));
  const published = publishedPattern(n);
  return {
    layout: 'ring',
    order,
    around,
    undoing: order,
    undoingSays: UNDOING_RING,
    published: published !== undefined,
    formula: published
      ? 'Cross pattern: opposite holes in pairs, groups of four a quarter turn apart'
      : n % 2 === 0
        ? 'Opposite holes in pairs, each next pair far from those done'
        : n === 3
          ? 'Around, in several rounds'
          : 'Star: each next hole just under half a turn further',
    source: published
      ? `ASME PCC-1, legacy cross pattern (${published.confidence})${published.note ? `: ${published.note}` : ''}`
      : 'common practice, no source: the published pattern has no such count',
    limits: [
      'Holds for an even ring of equal bolts; tongues, ribs and dowels of the part may ask for another order.',
      ...(n > 4 && !surelyRound && isFlat(ring)
        ? [
            'It looks flat: if the part is oval and not round seen at an angle, go from the centre outwards instead.',
          ]
        : []),
    ],
  };
}

/** Flatter than a circle seen from 53° off its axis: more likely an oval. */
function isFlat(holes: readonly Point[]): boolean {
  const axes = principalAxes(holes);
  return axes.small < 0.36 * axes.great;
}

/** Everything that is no ring: from the centre outwards, sides in turn. */
function outwardsOrder(holes: readonly Hole[], first: Hole): Answer {
  const order = fromCentre(holes, first).map((hole) => hole.id);
  const layout = layoutOf(holes);
  return {
    layout,
    order,
    around: order,
    undoing: layout === 'pair' ? order : [...order].reverse(),
    undoingSays:
      layout === 'single'
        ? 'One hole only.'
        : layout === 'pair'
          ? 'Undo the two in turn, a little at a time.'
          : 'Undo from the ends inwards, a quarter to half a turn at a time, about half of the load first.',
    published: false,
    formula:
      layout === 'single'
        ? 'One hole: no order'
        : layout === 'pair'
          ? 'The two in turn, in at least two steps'
          : 'From the centre outwards, sides in turn',
    source: 'common practice, no source',
    limits: ['The maker gives a numbered figure for many covers and heads; that figure wins.'],
  };
}

function layoutOf(holes: readonly Hole[]): Layout {
  if (holes.length === 1) return 'single';
  if (holes.length === 2) return 'pair';
  if (isLine(holes)) return 'line';
  return isRectangle(holes) ? 'rectangle' : 'scattered';
}

/** Nearest to the centre first; among holes about as near, the one farthest from the hole before. */
function fromCentre(holes: readonly Hole[], first: Hole): readonly Hole[] {
  const c = centroid(holes);
  const distance = (p: Point): number => Math.hypot(p.x - c.x, p.y - c.y);
  const reach = Math.max(...holes.map(distance));
  const band = 0.06 * reach;
  const left = [...holes].sort((a, b) => a.rank - b.rank);
  const order: Hole[] = [];
  while (left.length > 0) {
    const nearest = Math.min(...left.map(distance));
    const near = left.filter((hole) => distance(hole) <= nearest + band);
    const before = order.at(-1);
    const pick = before
      ? near.reduce((a, b) => (span(b, before) > span(a, before) + 1e-6 * reach ? b : a))
      : (near.find((hole) => hole.id === first.id) ?? near[0]);
    if (!pick) throw new Error('No hole left to pick');
    order.push(pick);
    left.splice(left.indexOf(pick), 1);
  }
  return order;
}

function span(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/** All holes near the sides of the smallest rectangle around them, with its four corners taken. */
function isRectangle(holes: readonly Hole[]): boolean {
  for (const a of holes) {
    for (const b of holes) {
      if (a.rank < b.rank && fitsBox(holes, Math.atan2(b.y - a.y, b.x - a.x))) return true;
    }
  }
  return false;
}

function fitsBox(holes: readonly Hole[], turn: number): boolean {
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  const u = holes.map((p) => p.x * cos + p.y * sin);
  const v = holes.map((p) => p.y * cos - p.x * sin);
  const box = { u0: Math.min(...u), u1: Math.max(...u), v0: Math.min(...v), v1: Math.max(...v) };
  const slack = 0.08 * Math.min(box.u1 - box.u0, box.v1 - box.v0);
  const onSide = (i: number): boolean =>
    Math.min(at(u, i) - box.u0, box.u1 - at(u, i), at(v, i) - box.v0, box.v1 - at(v, i)) <= slack;
  const corner = (cu: number, cv: number): boolean =>
    holes.some((_, i) => Math.abs(at(u, i) - cu) <= slack && Math.abs(at(v, i) - cv) <= slack);
  return (
    holes.every((_, i) => onSide(i)) &&
    corner(box.u0, box.v0) &&
    corner(box.u0, box.v1) &&
    corner(box.u1, box.v0) &&
    corner(box.u1, box.v1)
  );
}
