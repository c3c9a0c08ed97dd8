import { type DragEvent, useState } from 'react';
import { PHOTO_DRAG } from '../photo/drag.ts';

const photosIn = (event: DragEvent): boolean => event.dataTransfer.types.includes(PHOTO_DRAG);

const targetOf = (event: DragEvent): HTMLElement | null =>
  event.target instanceof Element ? event.target.closest<HTMLElement>('[data-removal], [data-far]') : null;

/** Photos drawn over the line: far removals come near, and the removal that they are let go on gets them. */
export function usePhotoDrop(onDrop: ((id: string) => void) | undefined, show: (id: string) => void) {
  const [over, setOver] = useState<string | null>(null);
  if (onDrop === undefined) return { over: null, on: {} };
  return {
    over,
    on: {
      onDragEnter: (event: DragEvent) => {
        const far = photosIn(event) ? targetOf(event)?.dataset['far'] : undefined;
        if (far !== undefined) show(far);
      },
      onDragOver: (event: DragEvent) => {
        if (!photosIn(event)) return;
        const id = targetOf(event)?.dataset['removal'] ?? null;
        if (id !== null) event.preventDefault();
        if (id !== over) setOver(id);
      },
      onDragLeave: (event: DragEvent) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) setOver(null);
      },
      onDrop: (event: DragEvent) => {
        const id = targetOf(event)?.dataset['removal'];
        setOver(null);
        if (id === undefined || !photosIn(event)) return;
        event.preventDefault();
        onDrop(id);
      },
    },
  };
}
