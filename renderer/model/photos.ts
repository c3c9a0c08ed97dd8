import type { JobView } from '../../core/contract/views.ts';
import type { PhotoData } from '../photo/types.ts';

/** The photos of a removal, or of the whole job, newest last. */
export function photosOf(view: JobView, removalId: string | null): PhotoData[] {
  const originals = new Map(view.state.original.map((original) => [original.id, original]));
  return view.state.photo
    .filter((photo) => removalId === null || photo.removalId === removalId)
    .flatMap((photo) => {
      const original = originals.get(photo.originalId);
      if (!original) return [];
      const turned = original.turn >= 5;
      return [
        {
          id: photo.id,
          src: `/photo/${photo.originalId}/2048`,
          width: turned ? original.height : original.width,
          height: turned ? original.width : original.height,
          alt: photo.fileName,
        },
      ];
    });
}
