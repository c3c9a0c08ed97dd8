import { useEffect, useRef } from 'react';
import { centreAfterPan, type Point, toFraction, type View } from '../../core/drawing/geometry.ts';

interface Zoomed {
  readonly on: boolean;
  readonly view: View;
  readonly zoom: number;
  readonly setView: (zoom: number, centre: Point | null) => void;
}

/** So far an arrow key draws the photo along, px. */
const PAN = 120;
const CLOSER = 1.6;
const PANS: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: PAN, y: 0 },
  ArrowRight: { x: -PAN, y: 0 },
  ArrowUp: { x: 0, y: PAN },
  ArrowDown: { x: 0, y: -PAN },
};

const isIn = (target: EventTarget | null, places: string): boolean =>
  target instanceof Element && target.closest(places) !== null;

/**
 * Plus and minus draw near and away, 0 shows all of it; drawn near, the arrow keys go about on the photo. A key that was
 * used here is marked as such, so that whoever turns pages with arrow keys leaves it alone.
 */
export function useZoomKeys(zoomed: Zoomed): void {
  const now = useRef(zoomed);
  useEffect(() => {
    now.current = zoomed;
  });
  useEffect(() => {
    if (!zoomed.on) return undefined;
    const onKey = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.altKey || event.metaKey) return;
      if (isIn(event.target, 'input, textarea, select')) return;
      const { view, zoom, setView } = now.current;
      const middle = toFraction({ x: view.box.width / 2, y: view.box.height / 2 }, view);
      // On a mark the arrow keys go from mark to mark.
      const pan = zoom > 1 && !isIn(event.target, '.mark-key') ? PANS[event.key] : undefined;
      if (event.key === '+' || event.key === '=') setView(zoom * CLOSER, middle);
      else if (event.key === '-') setView(zoom / CLOSER, zoom / CLOSER <= 1 ? null : middle);
      else if (event.key === '0') setView(1, null);
      else if (pan) setView(zoom, centreAfterPan(view, pan));
      else return;
      event.preventDefault();
    };
    // Before those who turn pages with the same keys.
    window.addEventListener('keydown', onKey, { capture: true });
    return () => window.removeEventListener('keydown', onKey, { capture: true });
  }, [zoomed.on]);
}
