import { drawLine, type Drawing } from '../../core/drawing/line/drawing.ts';
import { tinyChannel } from '../../core/drawing/line/shapes.ts';
import type { LineData, Notch } from '../../core/drawing/line/types.ts';

/** Widest distance between two notches of a silhouette, px: a short job stays a short line. */
const widestPitch = 18;
const endRoom = 8;

/** The silhouette of a job without labels, in `height` px: every notch, evenly spaced, gates left out. */
export function drawTiny(line: LineData, height: number): Drawing {
  const items = line.items.filter((item): item is Notch => item.kind === 'removal');
  const used = line.direction === 'apart' ? Math.min(height, items.length * widestPitch + endRoom) : height;
  const pitch = (used - endRoom) / Math.max(1, items.length);
  const block = { kind: 'far', top: endRoom / 2, height: used - endRoom, items, pitch } as const;
  return drawLine(line, { blocks: [block], height: used }, tinyChannel);
}
