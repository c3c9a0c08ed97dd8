import { useMemo, useState } from 'react';
import { narrow, useMedia } from '../ui/use-media.ts';
import { framePhoto, layPhoto, type Extent, type Point, type View } from '../../core/drawing/geometry.ts';

export const mostZoom = 8;
/** Height of the keys along the foot of the photo: no disc goes under them. On a phone they stand below it. */
const footKeys = 44;

/** How high the keys are that lie on the photo, px. */
export function useFoot(): number {
  return useMedia(narrow) ? 0 : footKeys;
}

/** Where the photo is drawn, and how to draw it elsewhere. */
export function useView(
  photo: Extent & { readonly id: string },
  size: Extent | null,
  fit: 'whole' | 'crop',
  marks: readonly Point[],
): {
  readonly view: View;
  /** Scale at zoom 1. */
  readonly scale: number;
  readonly zoom: number;
  /** Centre null: as it was framed. */
  readonly setView: (zoom: number, centre: Point | null) => void;
} {
  const [zoom, setZoom] = useState(1);
  const [centre, setCentre] = useState<Point | null>(null);
  const foot = useFoot();
  const box = size ?? { width: 0, height: 0 };
  // Framed anew for another photo or window, not whenever a mark is set: the ground must not move under the finger.
  const base = useMemo(
    () => framePhoto(photo, box, fit, marks, foot === 0 ? 62 : 88 + foot / 2),
    [photo.id, box.width, box.height, fit, marks.length > 0, foot],
  );
  const framed = {
    x: base.centre.x,
    y: base.centre.y + foot / 2 / Math.max(1, photo.height * base.scale),
  };
  return {
    view: layPhoto(photo, box, { scale: base.scale * zoom, centre: centre ?? framed }),
    scale: base.scale,
    zoom,
    setView: (nextZoom, nextCentre) => {
      setZoom(Math.min(mostZoom, Math.max(1, nextZoom)));
      setCentre(nextCentre);
    },
  };
}
