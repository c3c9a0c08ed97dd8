import type { JobView } from '../../core/contract/views.ts';
import { thingsOf } from '../../core/drawing/joint.ts';
import type { PhotoMark } from '../photo/types.ts';
import { marks as say } from '../texts/marks.ts';
import { type Markable, type MarkerAt, marksOn } from './marks.ts';

/** What goes together with the things of a step. */
export interface Mates {
  /** Marks of the photo in sight that belong to other steps, or to nothing yet. */
  readonly marks: readonly PhotoMark[];
  /** "hole 3 of cover with slot, on IMG_2.jpg": each pair once. */
  readonly lines: readonly string[];
}

/** Marks were joined when things came apart: on the way back each is shown beside its mate, at the step of either. */
export function matesOf(
  view: JobView,
  step: JobView['plan']['steps'][number],
  photoId: string | null,
  markers: readonly MarkerAt[],
  things: ReadonlyMap<string, Markable>,
): Mates {
  const own = thingsOf(step);
  const isOwn = (marker: MarkerAt) => marker.thingId !== null && own.has(marker.thingId);
  const groups = new Set(markers.filter(isOwn).flatMap((marker) => marker.togetherId ?? []));
  const joined = markers.filter((marker) => marker.togetherId !== null && groups.has(marker.togetherId));
  const photos = new Map(view.state.photo.map((photo) => [photo.id, photo.fileName]));
  const nameOf = (marker: MarkerAt) => things.get(marker.thingId ?? '')?.name ?? say.unbound(marker.n);
  const lines = joined.filter(isOwn).flatMap((marker) =>
    joined
      .filter((mate) => mate.togetherId === marker.togetherId && nameOf(mate) !== nameOf(marker))
      // Two of this step are said once.
      .filter((mate) => !isOwn(mate) || mate.id > marker.id)
      .map((mate) => {
        const where = mate.photoId === photoId ? '' : (photos.get(mate.photoId) ?? '');
        return say.pair(nameOf(marker), where === '' ? nameOf(mate) : say.mateOn(nameOf(mate), where));
      }),
  );
  const others = photoId === null ? [] : joined.filter((marker) => !isOwn(marker));
  return { marks: marksOn(photoId ?? '', others, things), lines: [...new Set(lines)] };
}
