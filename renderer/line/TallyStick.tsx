import { useId, useMemo } from 'react';
import { line as say } from '../texts/line.ts';
import { tinyChannel } from '../../core/drawing/line/shapes.ts';
import { drawTiny } from './tiny.ts';
import type { LineData } from '../../core/drawing/line/types.ts';

/** A job's silhouette, without labels: recognised before anything is read. */
export function TallyStick({ line, height = 168 }: { readonly line: LineData; readonly height?: number }) {
  const drawing = useMemo(() => drawTiny(line, height - 4), [line, height]);
  const clip = useId();
  const removals = line.items.filter((item) => item.kind === 'removal');
  const back = removals.filter((item) => item.back).length;
  return (
    <svg
      className="tally"
      width="44"
      height={height}
      viewBox={`0 -2 44 ${height}`}
      role="img"
      aria-label={say.stick(removals.length, back)}
    >
      <path d={drawing.body} fill="var(--sheet)" />
      <clipPath id={clip}>
        <rect y={drawing.level} width="44" height={height} />
      </clipPath>
      {line.direction === 'back' && <path d={drawing.body} fill="var(--ink)" clipPath={`url(#${clip})`} />}
      {drawing.ticks !== null && (
        <path d={drawing.ticks.path} stroke="var(--ink)" strokeWidth={drawing.ticks.width} />
      )}
      {drawing.filled.map((shape) => (
        <path key={shape} d={shape} fill="var(--ink)" />
      ))}
      {drawing.hollow.map((shape) => (
        <path key={shape} d={shape} fill="var(--sheet)" stroke="var(--ink)" strokeWidth="1.5" />
      ))}
      <path d={drawing.outline} fill="none" stroke="var(--ink)" strokeWidth="2" />
      <path d={`M0 0H${tinyChannel.right + 16}`} stroke="var(--ink)" strokeWidth="4" />
    </svg>
  );
}
