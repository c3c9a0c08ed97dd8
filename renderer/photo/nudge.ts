import { type KeyboardEvent, useState } from 'react';
import { type Point, toFraction, toScreen, type View } from '../../core/drawing/geometry.ts';
import type { PhotoMark } from './types.ts';

const STEPS: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};
/** So far an arrow key moves a mark, px of what is shown: once, and again and again while it is held down. */
const FINE = 2;
const HELD = 12;

/** Shift and the arrows move a mark; the record hears of it once, when Shift is let go, so that it is one undo. */
export function useNudge(view: View, onMove: ((id: string, x: number, y: number) => void) | undefined) {
  const [drag, setDrag] = useState<{ readonly id: string; readonly at: Point } | null>(null);
  const keyDown = (event: KeyboardEvent, mark: PhotoMark) => {
    const step = STEPS[event.key];
    if (!event.shiftKey || onMove === undefined || step === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    const from = toScreen(drag?.id === mark.id ? drag.at : mark, view);
    const far = event.repeat ? HELD : FINE;
    const at = toFraction({ x: from.x + step.x * far, y: from.y + step.y * far }, view);
    setDrag({ id: mark.id, at });
  };
  const letGo = () => {
    if (drag === null) return;
    onMove?.(drag.id, drag.at.x, drag.at.y);
    setDrag(null);
  };
  return { drag, keyDown, letGo };
}
