import { handbook as say } from '../../texts/handbook.ts';
import type { DrawnHole } from './types.ts';

const SIZE = 440;

/** The holes with their place in the order: the number in the disc is when, not which. */
export function OrderDrawing({ holes }: { readonly holes: readonly DrawnHole[] }) {
  const inOrder = [...holes].sort((a, b) => a.step - b.step);
  const tall = Math.max(...holes.map((hole) => hole.y)) - Math.min(...holes.map((hole) => hole.y));
  // A row of holes needs no square.
  const height = tall < 0.1 ? SIZE / 4 : SIZE;
  const radius = Math.min(24, 190 / Math.max(6, holes.length ** 0.8));
  const at = (hole: DrawnHole): readonly [number, number] => [
    28 + hole.x * (SIZE - 56),
    tall < 0.1 ? height / 2 : 28 + hole.y * (SIZE - 56),
  ];
  return (
    <svg
      className="book-order"
      viewBox={`0 0 ${SIZE} ${height}`}
      role="img"
      aria-label={say.drawn(inOrder.map((hole) => say.hole(hole.id)))}
    >
      {inOrder.slice(1).map((hole, i) => {
        const before = inOrder[i];
        if (before === undefined) return null;
        const [x1, y1] = at(before);
        const [x2, y2] = at(hole);
        return <line key={hole.id} x1={x1} y1={y1} x2={x2} y2={y2} className="book-move" />;
      })}
      {holes.map((hole) => {
        const [x, y] = at(hole);
        return (
          <g key={hole.id}>
            <circle cx={x} cy={y} r={radius} className={hole.step === 1 ? 'book-hole first' : 'book-hole'} />
            <text x={x} y={y} dy="0.36em" textAnchor="middle" fontSize={radius * 1.05} className="book-step">
              {hole.step}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
