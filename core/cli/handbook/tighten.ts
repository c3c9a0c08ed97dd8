import {
  parseDecimal,
  parseStages,
  publishedPattern,
  refuse,
  ringSequence,
  sayRound,
  tighteningOrder,
  tighteningRounds,
  MAKER_FIRST,
  OTHER_ROUNDS,
  parseShares,
  UNDOING_RING,
  type HolePoint,
  type Outcome,
  type PictureSize,
  type Round,
  type Tightening,
} from '../../fastening/index.ts';
import {
  basisLines,
  missing,
  optional,
  parseYes,
  readOptions,
  type HandbookVerb,
  type Options,
  type VerbAnswer,
} from './verb.ts';

const OPTIONS: HandbookVerb['options'] = [
  {
    name: 'points',
    also: ['markers'],
    says: 'holes in marker order: "0.5,0.1 0.9,0.5 0.5,0.9" or "3:0.5,0.1 …", or JSON',
  },
  {
    name: 'size',
    also: ['picture'],
    says: 'picture in pixels, 4000x3000: points are fractions of it; left out: points in any one unit',
  },
  { name: 'width', says: 'picture width in pixels, with --height' },
  { name: 'height', says: 'picture height in pixels' },
  { name: 'holes', also: ['n', 'count'], says: 'instead of points: so many holes evenly around a ring' },
  { name: 'shape', says: 'round, or other where the part is known to be oval or square' },
  { name: 'first', says: 'hole to begin with' },
  { name: 'all-shown', says: 'yes or no: are all holes of the joint on the photo?' },
  { name: 'rounds', says: 'other shares of the torque: 30 60 100' },
  { name: 'torque', also: ['t'], says: "torque or the maker's stages: 25 N·m, 20 N·m + 60 N·m + 90°" },
];

const EXPECTED_POINTS = 'points such as "0.5,0.1 0.9,0.5 0.5,0.9"';

function parsePoints(text: string): Outcome<readonly HolePoint[]> {
  const typed = text.trim();
  if (typed.startsWith('[')) return parseJsonPoints(typed);
  const points: HolePoint[] = [];
  for (const [i, piece] of typed
    .split(/[;\s]+/)
    .filter((p) => p !== '')
    .entries()) {
    const parts = /^(?:([^:,]+)[:=])?(-?[\d.]+),(-?[\d.]+)$/.exec(piece);
    if (!parts) return refuse('tighten.points', EXPECTED_POINTS, piece);
    points.push({ id: parts[1] ?? String(i + 1), x: Number(parts[2]), y: Number(parts[3]) });
  }
  return points.some((p) => !Number.isFinite(p.x + p.y))
    ? refuse('tighten.points', EXPECTED_POINTS, typed)
    : { ok: true, value: points };
}

function parseJsonPoints(typed: string): Outcome<readonly HolePoint[]> {
  let raw: unknown;
  try {
    raw = JSON.parse(typed);
  } catch {
    return refuse('tighten.points', EXPECTED_POINTS, typed.slice(0, 40));
  }
  const points: HolePoint[] = [];
  for (const [i, item] of (Array.isArray(raw) ? (raw as unknown[]) : []).entries()) {
    const [x, y, id, setId] = coordinates(item);
    if (typeof x !== 'number' || typeof y !== 'number')
      return refuse('tighten.points', EXPECTED_POINTS, JSON.stringify(item));
    points.push({
      id: typeof id === 'string' || typeof id === 'number' ? String(id) : String(i + 1),
      x,
      y,
      ...(typeof setId === 'string' ? { setId } : {}),
    });
  }
  return { ok: true, value: points };
}

function coordinates(item: unknown): readonly unknown[] {
  if (Array.isArray(item)) return item as unknown[];
  if (typeof item !== 'object' || item === null) return [];
  const record = item as Record<string, unknown>;
  return [record['x'], record['y'], record['id'] ?? record['n'], record['setId'] ?? record['set']];
}

function parseSize(get: (name: string) => string | undefined): Outcome<PictureSize | undefined> {
  const size = get('size');
  const width = get('width');
  const height = get('height');
  if (size === undefined && width === undefined && height === undefined)
    return { ok: true, value: undefined };
  const parts = size === undefined ? [width ?? '', height ?? ''] : size.split(/\s*[x×*]\s*/i);
  const [w, h] = parts.map((part) => parseDecimal(part));
  if (!w?.ok || !h?.ok || !(w.value > 0 && h.value > 0)) {
    return refuse(
      'tighten.size',
      'a picture size such as 4000x3000',
      size ?? `${width ?? ''} by ${height ?? ''}`,
    );
  }
  return { ok: true, value: { width: w.value, height: h.value } };
}

/** Points in any one unit are brought into a square frame; one point or a row keeps its place. */
function intoFrame(points: readonly HolePoint[]): readonly HolePoint[] {
  const x0 = Math.min(...points.map((p) => p.x));
  const y0 = Math.min(...points.map((p) => p.y));
  const span = Math.max(...points.map((p) => Math.max(p.x - x0, p.y - y0))) || 1;
  return points.map((p) => ({ ...p, x: (p.x - x0) / span, y: (p.y - y0) / span }));
}

function runTighten(options: Options): VerbAnswer {
  const opened = readOptions(tighten, options);
  if (!opened.ok) return opened;
  const get = opened.value.get;
  const torque = optional(get('torque'), (text) => parseStages(text));
  const shares = optional(get('rounds'), parseShares);
  if (!torque.ok) return torque;
  if (!shares.ok) return shares;
  const pace: Pace = { torque: torque.value, shares: shares.value };
  if (get('points') === undefined) {
    const holes = get('holes');
    return holes === undefined
      ? missing('--points from the photo, or --holes for a plain ring')
      : byCount(holes, pace);
  }
  const points = optional(get('points'), parsePoints);
  const size = parseSize(get);
  const shown = optional(get('all-shown'), parseYes);
  const shape = get('shape');
  if (shape !== undefined && shape !== 'round' && shape !== 'other') {
    return refuse('tighten.shape', 'round or other', shape);
  }
  if (!points.ok) return points;
  if (!size.ok) return size;
  if (!shown.ok) return shown;
  const given = points.value ?? [];
  const found = tighteningOrder(
    size.value ? given : intoFrame(given),
    size.value ?? { width: 1, height: 1 },
    {
      allShown: shown.value,
      firstId: get('first'),
      shape,
    },
  );
  if (!found.ok) return found;
  const answer = found.value;
  const rounds = roundsFor(answer.order, answer.around, pace);
  return {
    ok: true,
    value: { ...answer, rounds, otherRounds: otherRounds(answer.order.length) },
    text: [
      ...(answer.question ? [`Question: ${answer.question}`] : []),
      ...(answer.hint ? [answer.hint] : []),
      `Layout: ${answer.layout}`,
      `Order: ${answer.order.join(' ')}`,
      ...roundLines(rounds),
      `Undoing (castings): ${answer.undoing.join(' ')}. ${answer.undoingSays}`,
      ...basisLines(answer),
    ],
  };
}

/** How the joint is pulled up: to which torque, and in which shares of it. */
interface Pace {
  readonly torque: Tightening | undefined;
  readonly shares: readonly number[] | undefined;
}

function otherRounds(holes: number): readonly unknown[] {
  return OTHER_ROUNDS.filter((one) => holes >= one.fromHoles);
}

function roundsFor(
  order: readonly string[],
  around: readonly string[],
  { torque, shares }: Pace,
): readonly Round[] {
  const target = torque?.stages.length === 1 ? torque.torque?.torqueNm : undefined;
  return tighteningRounds({ order, around, targetNm: () => target, makerStages: torque?.stages, shares });
}

function roundLines(rounds: readonly Round[]): string[] {
  return rounds.map((round) => `Round, ${sayRound(round)}: ${round.order.join(' ')}. ${round.says}`);
}

function byCount(typed: string, pace: Pace): VerbAnswer {
  const n = Number(typed);
  if (!Number.isInteger(n) || n < 1 || n > 200) return refuse('tighten.holes', '1 to 200 holes', typed);
  const order = ringSequence(n).map(String);
  const published = publishedPattern(n);
  const rounds = roundsFor(
    order,
    Array.from({ length: n }, (_, i) => String(i + 1)),
    pace,
  );
  const basis = {
    formula: published ? 'Cross pattern as published' : n % 2 === 0 ? 'Opposite holes in pairs' : 'Star',
    inputs: [`${n} holes evenly around a ring, numbered around`],
    source: published
      ? `ASME PCC-1, legacy cross pattern (${published.confidence})`
      : 'common practice, no source',
    limits: [
      'Numbers are places around the ring, not an order of marks on the part.',
      ...(published?.note ? [published.note] : []),
    ],
    cautions: [MAKER_FIRST],
  };
  return {
    ok: true,
    value: {
      layout: n === 1 ? 'single' : n === 2 ? 'pair' : 'ring',
      order,
      sequence: order.map(Number),
      undoing: order,
      undoingSays: UNDOING_RING,
      published: published !== undefined,
      rounds,
      otherRounds: otherRounds(n),
      ...basis,
    },
    text: [
      `Order: ${order.join(' ')}`,
      ...roundLines(rounds),
      `Undoing (castings): ${order.join(' ')}. ${UNDOING_RING}`,
      ...basisLines(basis),
    ],
  };
}

/** `tighten`: order and rounds from the holes. */
export const tighten: HandbookVerb = {
  name: 'tighten',
  says: 'order and rounds of tightening from the holes on a photo',
  options: OPTIONS,
  word: 'points',
  run: runTighten,
};
