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

/**
 * How much empty ground a photo leaves below itself and its keys, px: its marks stand so far apart that it cannot fill
 * its place. What is written below may move up by that much. 0 on a phone, where the place is low enough.
 */
export function useEmptyBelow(photo: Extent | null, size: Extent | null, marks: readonly Point[]): number {
  const foot = useFoot();
  if (photo === null || size === null || foot === 0) return 0;
  const { scale } = framePhoto(photo, size, 'crop', marks, 88 + foot / 2);
  return Math.max(0, Math.floor(size.height - photo.height * scale - foot));
}
