import {
  good,
  parseStages,
  refuse,
  sayRound,
  tighteningOrder,
  tighteningRounds,
  type HolePoint,
  type Outcome,
} from '../../../core/fastening/index.ts';
import { handbook as say } from '../../texts/handbook.ts';
import { type Answering, answerOf, basisOf, Reading } from './answer.ts';

const FIELDS = ['shape', 'holes', 'torque'] as const;

/** Holes along a side, and rows of them; a single count has one row. */
interface Count {
  readonly across: number;
  readonly rows: number;
}

function parseHoles(text: string): Outcome<Count> {
  const parts = /^(\d{1,3})(?:\s*[x×*]\s*(\d{1,2}))?$/i.exec(text);
  const count = { across: Number(parts?.[1] ?? 0), rows: Number(parts?.[2] ?? 1) };
  const all = count.across * count.rows;
  return parts && all >= 1 && all <= 200
    ? good(count)
    : refuse('order.count', '1 to 200 holes, or rows such as 5 x 2', text);
}

function ring(n: number): readonly (readonly [number, number])[] {
  return Array.from({ length: n }, (_, i) => {
    const angle = (2 * Math.PI * i) / n - Math.PI / 2;
    return [0.5 + 0.42 * Math.cos(angle), 0.5 + 0.42 * Math.sin(angle)] as const;
  });
}

/** Rows of holes in a frame of three to two. */
function grid({ across, rows }: Count): readonly (readonly [number, number])[] {
  const at = (i: number, n: number, from: number, to: number): number =>
    n === 1 ? (from + to) / 2 : from + ((to - from) * i) / (n - 1);
  return Array.from({ length: across * rows }, (_, i) => [
    at(i % across, across, 0.06, 0.94),
    at(Math.floor(i / across), rows, 0.22, 0.78),
  ]);
}

/** Holes around the edge of a cover of three to two, as evenly as a cover has them: one in each corner. */
function frame(n: number): readonly (readonly [number, number])[] {
  if (n < 5) return grid({ across: 2, rows: Math.ceil(n / 2) }).slice(0, n);
  const between = n - 4;
  const long = Math.ceil((between * 3) / 10);
  const sides = [long, Math.floor((between - 2 * long) / 2), long, Math.ceil((between - 2 * long) / 2)].map(
    (k) => Math.max(0, k),
  );
  const corners = [
    [0.06, 0.22],
    [0.94, 0.22],
    [0.94, 0.78],
    [0.06, 0.78],
  ] as const;
  return corners
    .flatMap(([x, y], side) => {
      const [toX, toY] = corners[(side + 1) % 4] ?? [x, y];
      const own = sides[side] ?? 0;
      return Array.from(
        { length: own + 1 },
        (_, i) => [x + ((toX - x) * i) / (own + 1), y + ((toY - y) * i) / (own + 1)] as const,
      );
    })
    .slice(0, n);
}

function placesOf(shape: string, count: Count): readonly (readonly [number, number])[] {
  const all = count.across * count.rows;
  if (shape === 'rows' || count.rows > 1) return grid(count);
  if (shape === 'frame') return frame(all);
  return all === 1 ? [[0.5, 0.5]] : ring(all);
}

/** Order and rounds of a plain shape; on a photo the marks say it better. */
const order: Answering = (typed) => {
  const reading = new Reading(typed);
  const count = reading.read('holes', parseHoles);
  const torque = reading.read('torque', (text) => parseStages(text, 'N·m'));
  if (!count || !reading.ok) return reading.end(null);
  const shape = reading.text('shape') || 'ring';
  const points: HolePoint[] = placesOf(shape, count).map(([x, y], i) => ({ id: String(i + 1), x, y }));
  const found = reading.take(
    'holes',
    tighteningOrder(
      points,
      { width: 1000, height: 1000 },
      { allShown: true, shape: shape === 'ring' ? 'round' : 'other' },
    ),
  );
  if (!found) return reading.end(null);
  const target = torque?.stages.length === 1 ? torque.torque?.torqueNm : undefined;
  const rounds = tighteningRounds({
    order: found.order,
    around: found.around,
    targetNm: () => target,
    makerStages: torque?.stages,
  });
  const step = new Map(found.order.map((id, i) => [id, i + 1]));
  return reading.end(
    answerOf({
      figure: {
        value: String(points.length),
        unit: say.holesIn(points.length),
        other: say.layouts[found.layout],
      },
      whose: found.published ? say.published : say.commonPractice,
      drawing: points.map((point) => ({ ...point, step: step.get(point.id) ?? 0 })),
      groups: [
        {
          title: say.rounds,
          rows: rounds.map((round, i) => ({
            id: String(i),
            mark: String(i + 1),
            name: sayRound(round),
            about: round.says,
          })),
        },
        {
          title: say.undoingTitle,
          rows: [{ id: 'undo', mark: '', name: found.undoing.join('  '), about: found.undoingSays }],
        },
      ],
      basis: basisOf({ ...found, inputs: [say.holesEven(points.length), ...(torque ? [torque.typed] : [])] }),
    }),
  );
};

export const orderTopic = { topic: 'order' as const, fields: FIELDS, answer: order };
