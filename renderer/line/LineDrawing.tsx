import type { Drawing } from '../../core/drawing/line/drawing.ts';
import { gatePlaces, placeRules, type Laid } from '../../core/drawing/line/layout.ts';
import type { Channel } from '../../core/drawing/line/shapes.ts';
import type { LineData } from '../../core/drawing/line/types.ts';

interface LineDrawingProps {
  readonly line: LineData;
  readonly drawing: Drawing;
  readonly laid: Laid;
  readonly channel: Channel;
  readonly width: number;
  readonly clip: string;
}

/** The picture of the line. All that it says is said in words by the list over it. */
export function LineDrawing({ line, drawing, laid, channel, width, clip }: LineDrawingProps) {
  const { left, right } = channel;
  const middle = (left + right) / 2;
  const height = laid.height + (line.direction === 'apart' ? 52 : 4);
  return (
    <svg
      className="dl-svg"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      aria-hidden="true"
    >
      <path d={drawing.body} fill="var(--sheet)" />
      <clipPath id={clip}>
        <rect
          className="dl-level"
          width={width}
          height={height}
          style={{ transform: `translateY(${drawing.level}px)` }}
        />
      </clipPath>
      {line.direction === 'back' && <path d={drawing.body} fill="var(--ink)" clipPath={`url(#${clip})`} />}
      {drawing.ticks !== null && (
        <path d={drawing.ticks.path} stroke="var(--ink)" strokeWidth={drawing.ticks.width} />
      )}
      {drawing.filled.map((shape) => (
        <path key={shape} d={shape} fill="var(--ink)" />
      ))}
      {drawing.hollow.map((shape) => (
        <path key={shape} d={shape} fill="var(--sheet)" stroke="var(--ink)" strokeWidth="2.25" />
      ))}
      {drawing.at !== null && <path d={drawing.at.shape} fill="var(--accent)" />}
      {drawing.at !== null && line.direction === 'apart' && (
        <rect x={left} width={right - left + 1} y={drawing.at.y - 6} height={12} fill="var(--accent)" />
      )}
      <path className="dl-outline" d={drawing.outline} />
      <path d={`M${left - 14} 0H${right + 30}`} stroke="var(--ink)" strokeWidth="4" />
      {drawing.at !== null && line.direction === 'back' && (
        <path d={`M${left - 6} ${drawing.at.y}H${right}`} stroke="var(--accent)" strokeWidth="4" />
      )}
      {placeRules(laid).map((rule) => (
        <path
          key={rule.from}
          d={`M${left - 12} ${rule.from}V${rule.to}`}
          stroke="var(--ink-3)"
          strokeWidth="2"
        />
      ))}
      <Gates laid={laid} channel={channel} />
      {line.direction === 'apart' && (
        <path
          d={`M${middle} ${drawing.end + 6}V${drawing.end + 46}`}
          stroke="var(--edge)"
          strokeWidth="2"
          strokeDasharray="2 6"
        />
      )}
    </svg>
  );
}

/** A bar with two posts across the channel, wider than any notch. Shut: solid. Passed: the bar parts. */
function Gates({ laid, channel }: { laid: Laid; channel: Channel }) {
  const from = Math.max(2.5, channel.left - 20);
  const to = channel.right + 28 * channel.reach + 1;
  return gatePlaces(laid).map(({ item, y, close }) => {
    const [bar, post, wide] = close ? [5, 5, 3] : [12, 14, 5];
    if (item.kind === 'gate' && item.passed)
      return (
        <path
          key={item.id}
          d={`M${from} ${y - post * 0.65}v${post * 1.3}M${from} ${y}H${channel.left - 5}M${channel.right + 5} ${y}H${to}M${to} ${y - post * 0.65}v${post * 1.3}`}
          stroke="var(--ink)"
          strokeWidth={wide}
          fill="none"
        />
      );
    return (
      <g key={item.id}>
        <rect x={from - 2} width={to - from + 4} y={y - bar / 2 - 2} height={bar + 4} fill="var(--paper)" />
        <rect x={from} width={to - from} y={y - bar / 2} height={bar} fill="var(--ink)" />
        <path
          d={`M${from} ${y - post}v${post * 2}M${to} ${y - post}v${post * 2}`}
          stroke="var(--ink)"
          strokeWidth={wide}
        />
      </g>
    );
  });
}
