import type { Point } from '../../core/drawing/geometry.ts';
import { wedge, type Placed } from '../../core/drawing/leaders.ts';
import type { Move, PhotoMark } from './types.ts';

interface StrokesProps {
  readonly marks: readonly PhotoMark[];
  readonly moves: readonly Move[];
  readonly placed: readonly Placed[];
  readonly at: (mark: PhotoMark) => Point;
  readonly width: number;
}

/** Leaders, wedges and the rules between what belongs together. */
export function Strokes({ marks, moves, placed, at, width }: StrokesProps) {
  const byId = new Map(marks.map((mark) => [mark.id, mark]));
  const washer = Math.min(48, width * 0.06);
  const breadth = Math.min(17, Math.max(9, width * 0.019));
  return (
    <svg className="strokes" aria-hidden="true">
      {togetherPairs(marks).map(([a, b]) => (
        <Together key={a.id + b.id} from={at(a)} to={at(b)} />
      ))}
      {moves.map((move) => {
        const from = byId.get(move.fromId);
        const to = byId.get(move.toId);
        if (from === undefined || to === undefined) return null;
        const shape = wedge(at(from), at(to), washer, breadth * (move.now ? 1 : 0.5));
        return (
          <polygon
            key={`${move.fromId} ${move.toId}`}
            className={move.now ? 'wedge now' : 'wedge'}
            points={shape.map((p) => `${p.x},${p.y}`).join(' ')}
          />
        );
      })}
      {placed.map(({ id, disc, dot }) => (
        <g key={id}>
          <path d={`M${dot.x} ${dot.y}L${disc.x} ${disc.y}`} stroke="var(--mk-ink)" strokeWidth="5.5" />
          <path d={`M${dot.x} ${dot.y}L${disc.x} ${disc.y}`} stroke="var(--mk-paper)" strokeWidth="2.5" />
          <circle
            cx={dot.x}
            cy={dot.y}
            r="4.5"
            fill="var(--mk-paper)"
            stroke="var(--mk-ink)"
            strokeWidth="2"
          />
        </g>
      ))}
    </svg>
  );
}

function togetherPairs(marks: readonly PhotoMark[]): [PhotoMark, PhotoMark][] {
  const pairs: [PhotoMark, PhotoMark][] = [];
  const last = new Map<string, PhotoMark>();
  for (const mark of marks) {
    if (mark.together === undefined || mark.together === null) continue;
    const before = last.get(mark.together);
    if (before !== undefined) pairs.push([before, mark]);
    last.set(mark.together, mark);
  }
  return pairs;
}

/** A double rule: two things that belong together. */
function Together({ from, to }: { readonly from: Point; readonly to: Point }) {
  const d = `M${from.x} ${from.y}L${to.x} ${to.y}`;
  return (
    <>
      <path d={d} stroke="var(--mk-ink)" strokeWidth="9" />
      <path d={d} stroke="var(--mk-paper)" strokeWidth="6.5" />
      <path d={d} stroke="var(--mk-ink)" strokeWidth="2" />
    </>
  );
}
