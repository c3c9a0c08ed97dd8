import { drawLine, type Drawing } from './drawing.ts';
import type { Laid } from './layout.ts';
import { tinyChannel } from './shapes.ts';
import type { LineData, Notch } from './types.ts';

/** The silhouette of a job without labels, in `height` px: every notch, evenly spaced, gates left out. */
export function drawTiny(line: LineData, height: number): Drawing {
  const items = line.items.filter((item): item is Notch => item.kind === 'removal');
  const inner = Math.max(1, height - 8);
  const pitch = items.length === 0 ? inner : Math.min(18, inner / items.length);
  const used = line.direction === 'apart' ? Math.min(height, items.length * pitch + 8) : height;
  const laid: Laid = {
    blocks: [
      { kind: 'far', top: 4, height: used - 8, items, pitch: items.length > 1 ? spread(items, used) : pitch },
    ],
    height: used,
  };
  return drawLine(line, laid, tinyChannel);
}

function spread(items: readonly Notch[], used: number): number {
  return (used - 8) / items.length;
}
