import type { Point } from '../../core/drawing/geometry.ts';
import { type Placed, washerOf, wedge } from '../../core/drawing/leaders.ts';
import type { Move, PhotoMark } from './types.ts';

interface StrokesProps {
  readonly marks: readonly PhotoMark[];
  readonly moves: readonly Move[];
  readonly placed: readonly Placed[];
  /** Leaders end on the very point that was touched. */
  readonly placing: boolean;
  readonly at: (mark: PhotoMark) => Point;
  readonly width: number;
}

/** Leaders, wedges and the rules between what belongs together. */
export function Strokes({ marks, moves, placed, placing, at, width }: StrokesProps) {
  const byId = new Map(marks.map((mark) => [mark.id, mark]));
  const discs = new Map(placed.map((one) => [one.id, one.disc]));
  const { pairs, lone } = togetherPairs(marks);
  const holes = marks.filter((mark) => mark.kind === 'position');
  const washer = washerOf(holes.map(at), Math.min(48, width * 0.06));
  const breadth = Math.min(17, Math.max(9, width * 0.019));
  return (
    <svg className="strokes" aria-hidden="true">
      {pairs.map(([a, b]) => (
        <Together key={a.id + b.id} from={at(a)} to={at(b)} />
      ))}
      {lone.map((mark) => (
        <Elsewhere key={mark.id} from={at(mark)} disc={discs.get(mark.id)} />
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
      {placed.map(({ id, disc, dot }) => {
        const mark = byId.get(id);
        return <Leader key={id} from={placing && mark !== undefined ? at(mark) : dot} to={disc} />;
      })}
    </svg>
  );
}

/** From the washer, or while marks are set from the point itself, to the disc. */
function Leader({ from, to }: { readonly from: Point; readonly to: Point }) {
  const d = `M${from.x} ${from.y}L${to.x} ${to.y}`;
  return (
    <g>
      <path d={d} stroke="var(--mk-ink)" strokeWidth="5.5" />
      <path d={d} stroke="var(--mk-paper)" strokeWidth="2.5" />
      <circle cx={from.x} cy={from.y} r="4.5" fill="var(--mk-paper)" stroke="var(--mk-ink)" strokeWidth="2" />
    </g>
  );
}

interface Pairs {
  readonly pairs: readonly (readonly [PhotoMark, PhotoMark])[];
  /** Marks whose mates are on other photos. */
  readonly lone: readonly PhotoMark[];
}

function togetherPairs(marks: readonly PhotoMark[]): Pairs {
  const groups = new Map<string, PhotoMark[]>();
  for (const mark of marks) {
    if (mark.together === undefined || mark.together === null) continue;
    const group = groups.get(mark.together);
    if (group) group.push(mark);
    else groups.set(mark.together, [mark]);
  }
  const pairs: [PhotoMark, PhotoMark][] = [];
  const lone: PhotoMark[] = [];
  for (const group of groups.values()) {
    for (const [i, mark] of group.entries()) {
      const before = group[i - 1];
      if (before !== undefined) pairs.push([before, mark]);
    }
    if (group.length === 1 && group[0] !== undefined) lone.push(group[0]);
  }
  return { pairs, lone };
}

/** A double rule with a clasp across its middle: two things that belong together. */
function Together({ from, to }: { readonly from: Point; readonly to: Point }) {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const bar = (way: number) => across(middle, along, way, 11);
  return (
    <>
      <Rule d={`M${from.x} ${from.y}L${to.x} ${to.y}`} />
      {length > 60 && (
        <>
          <path d={bar(-5) + bar(5)} stroke="var(--mk-paper)" strokeWidth="7" />
          <path d={bar(-5) + bar(5)} stroke="var(--mk-ink)" strokeWidth="3.5" />
        </>
      )}
    </>
  );
}

/** The mate is on another photo: the rule goes away from the mark and ends at one half of the clasp. */
function Elsewhere({ from, disc }: { readonly from: Point; readonly disc: Point | undefined }) {
  const away = disc === undefined ? { x: 0, y: 1 } : { x: from.x - disc.x, y: from.y - disc.y };
  const length = Math.hypot(away.x, away.y) || 1;
  const along = { x: away.x / length, y: away.y / length };
  const end = { x: from.x + along.x * 44, y: from.y + along.y * 44 };
  const bar = across(end, along, 0, 11);
  return (
    <>
      <Rule d={`M${from.x} ${from.y}L${end.x} ${end.y}`} />
      <path d={bar} stroke="var(--mk-paper)" strokeWidth="7" />
      <path d={bar} stroke="var(--mk-ink)" strokeWidth="3.5" />
    </>
  );
}

/** A short line across a rule, `way` px along it. */
function across(at: Point, along: Point, way: number, half: number): string {
  const [x, y] = [at.x + along.x * way, at.y + along.y * way];
  const [dx, dy] = [-along.y * half, along.x * half];
  return `M${x - dx} ${y - dy}L${x + dx} ${y + dy}`;
}

function Rule({ d }: { readonly d: string }) {
  return (
    <>
      <path d={d} stroke="var(--mk-ink)" strokeWidth="9" />
      <path d={d} stroke="var(--mk-paper)" strokeWidth="6.5" />
      <path d={d} stroke="var(--mk-ink)" strokeWidth="2" />
    </>
  );
}
