import { drawBolt, type BoltShape } from '../../photo/bolt.ts';
import { off as say } from '../../texts/off.ts';

export interface AlikeData {
  readonly id: string;
  readonly shape: BoltShape;
  /** "M10 × 35" */
  readonly name: string;
  /** "bag 6, cover" */
  readonly where: string;
}

const width = 520;
const labelWidth = 116;
const ruleHeight = 44;
const gap = 20;

/** Bolts that are easily taken for one another, one above the other on one scale with a rule in mm. */
export function LookAlikes({ bolts }: { readonly bolts: readonly AlikeData[] }) {
  const longest = Math.max(10, ...bolts.map((bolt) => bolt.shape.lengthMm));
  const deepest = Math.max(0, ...bolts.map((bolt) => bolt.shape.headHeightMm));
  const scale = Math.min(7.6, (width - labelWidth - 12) / (longest + deepest));
  const left = deepest * scale + 4;
  let top = 4;
  const drawn = bolts.map((bolt) => {
    const drawing = drawBolt(bolt.shape, scale);
    const at = top;
    top += drawing.height + gap;
    return { bolt, drawing, top: at };
  });
  const height = top + ruleHeight;
  return (
    <svg
      className="alikes"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={say.drawn(bolts.map((bolt) => `${bolt.name}, ${bolt.where}`))}
    >
      <path d={`M${left} 0V${top}`} stroke="var(--ink-3)" strokeDasharray="2 4" />
      {drawn.map(({ bolt, drawing, top: at }) => (
        <g key={bolt.id} transform={`translate(${left} ${at})`}>
          <path d={drawing.body} fill="var(--paper)" stroke="var(--ink)" strokeWidth="2" />
          <path d={drawing.threads} fill="none" stroke="var(--ink)" strokeWidth="1.1" />
          <path d={drawing.head} fill="var(--paper)" stroke="var(--ink)" strokeWidth="2" />
          <path d={drawing.edges} fill="none" stroke="var(--ink)" strokeWidth="1.5" />
          <text x={width - left - labelWidth + 8} y={drawing.height / 2} className="alike-name">
            {bolt.name}
          </text>
          <text x={width - left - labelWidth + 8} y={drawing.height / 2 + 20} className="alike-where">
            {bolt.where}
          </text>
        </g>
      ))}
      <Rule left={left} top={top} scale={scale} lengthMm={longest} />
    </svg>
  );
}

interface RuleProps {
  readonly left: number;
  readonly top: number;
  readonly scale: number;
  readonly lengthMm: number;
}

function Rule({ left, top, scale, lengthMm }: RuleProps) {
  const marks = Array.from({ length: Math.floor(lengthMm) + 1 }, (_, mm) => mm);
  const every = scale < 3 ? 20 : 10;
  return (
    <g transform={`translate(${left} ${top})`} stroke="var(--ink)" strokeWidth="1">
      <path d={`M0 0H${lengthMm * scale}`} strokeWidth="2" />
      <path
        d={marks
          .map((mm) => `M${mm * scale} 0v${mm % 10 === 0 ? 15 : mm % 5 === 0 ? 10 : scale < 4 ? 0 : 5}`)
          .join('')}
      />
      {marks
        .filter((mm) => mm % every === 0)
        .map((mm) => (
          <text key={mm} x={mm * scale} y="34" textAnchor="middle" className="rule-figure" stroke="none">
            {mm}
          </text>
        ))}
      <text x={width - left - labelWidth + 8} y="34" className="alike-where" stroke="none">
        {say.scale}
      </text>
    </g>
  );
}
