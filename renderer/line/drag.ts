import { useRef, useState, type PointerEvent } from 'react';
import type { Block, Laid } from '../../core/drawing/line/layout.ts';

/** A place between two removals on the line: how far down it is, and after which removal it lies. */
export interface Gap {
  readonly top: number;
  /** Null = before the first. */
  readonly afterId: string | null;
}

/** Less than this is a touch, px. */
const STEADY = 8;

const removalsOf = (block: Block): readonly string[] => {
  if (block.kind === 'far') return block.items.map((item) => item.id);
  return block.kind === 'row' ? [block.item.id] : [];
};

/** The gap nearest to a height on the line, as if the removal drawn along were not on it. `y` in px from the top. */
export function gapAt(blocks: readonly Block[], y: number, drawnId: string): Gap {
  let afterId: string | null = null;
  let top = 0;
  for (const block of blocks) {
    const ids = removalsOf(block).filter((id) => id !== drawnId);
    if (ids.length > 0 && y < block.top + block.height / 2) return { top: block.top, afterId };
    afterId = ids.at(-1) ?? afterId;
    top = block.top + block.height;
  }
  return { top, afterId };
}

/** The removal before one, in the order of the line; null = it is the first. */
function beforeOf(blocks: readonly Block[], id: string): string | null {
  const ids = blocks.flatMap(removalsOf);
  return ids[ids.indexOf(id) - 1] ?? null;
}

interface Drawn {
  readonly id: string;
  readonly from: number;
  readonly gap: Gap | null;
}

/** Draws the removal at hand along the line to another place in the log. `move` null = it stays where it is. */
export function useDrag(laid: Laid, move: ((id: string, afterId: string | null) => void) | null) {
  const [drawn, setDrawn] = useState<Drawn | null>(null);
  // The press that ends a draw is no touch of the row.
  const moved = useRef(false);
  const heightIn = (event: PointerEvent<HTMLElement>): number => {
    const list = event.currentTarget.closest('ol');
    return event.clientY - (list?.getBoundingClientRect().top ?? 0);
  };
  const handlers = (id: string) =>
    move === null
      ? {}
      : {
          onPointerDown: (event: PointerEvent<HTMLElement>) => {
            if (event.button !== 0) return;
            moved.current = false;
            event.currentTarget.setPointerCapture(event.pointerId);
            setDrawn({ id, from: event.clientY, gap: null });
          },
          onPointerMove: (event: PointerEvent<HTMLElement>) => {
            if (drawn?.id !== id) return;
            if (drawn.gap === null && Math.abs(event.clientY - drawn.from) < STEADY) return;
            moved.current = true;
            setDrawn({ ...drawn, gap: gapAt(laid.blocks, heightIn(event), id) });
          },
          onPointerUp: () => {
            const gap = drawn?.id === id ? drawn.gap : null;
            setDrawn(null);
            if (gap !== null && gap.afterId !== beforeOf(laid.blocks, id)) move(id, gap.afterId);
          },
          onPointerCancel: () => setDrawn(null),
        };
  return { gap: drawn?.gap ?? null, handlers, wasDrawn: () => moved.current };
}
