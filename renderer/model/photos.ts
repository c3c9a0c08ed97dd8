import type { JobCard, JobView } from '../../core/contract/views.ts';
import { sharpnessOfAll } from '../../core/model/shots.ts';
import type { Row } from '../../core/model/tables.ts';
import type { PhotoData } from '../photo/types.ts';
import type { Thumb, UnfiledData } from '../screens/removal/Unfiled.tsx';
import { clock, takenMs } from './time.ts';

/** The photos of a removal, or of the whole job, newest last. */
export function photosOf(view: JobView, removalId: string | null): PhotoData[] {
  const originals = new Map(view.state.original.map((original) => [original.id, original]));
  return view.state.photo
    .filter((photo) => removalId === null || photo.removalId === removalId)
    .flatMap((photo) => {
      const original = originals.get(photo.originalId);
      if (!original) return [];
      return [photoData(photo, original)];
    })
    .sort((a, b) => (a.at === b.at ? 0 : a.at < b.at ? -1 : 1))
    .map(({ data }) => data);
}

interface Dated {
  readonly at: string;
  readonly data: PhotoData;
}

/** A photo as it is shown, with when it was taken or, where that is not known, added. */
function photoData(photo: Row<'photo'>, original: Row<'original'>): Dated {
  const turned = original.turn >= 5;
  return {
    at: `${new Date(original.takenUtc ?? photo.addedAt).toISOString()} ${photo.id}`,
    data: {
      id: photo.id,
      src: `/photo/${photo.originalId}/2048`,
      full: `/photo/${photo.originalId}/full`,
      width: turned ? original.height : original.width,
      height: turned ? original.width : original.height,
      alt: photo.fileName,
    },
  };
}

/** Most thumbs drawn at once; the count says how many there are. */
const MOST_THUMBS = 60;

/** Photos of no removal yet, newest last; `since` is the removal before the one that they are offered to. */
export function unfiledOf(view: JobView, since: number, dark: readonly string[]): UnfiledData {
  const sharpness = sharpnessOfAll(view.state.original);
  const originals = new Map(view.state.original.map((original) => [original.id, original]));
  const loose = view.state.photo
    .filter((photo) => photo.removalId === null)
    .flatMap((photo) => {
      const original = originals.get(photo.originalId);
      return original ? [{ photo, original, at: photoData(photo, original).at }] : [];
    })
    .sort((a, b) => (a.at < b.at ? -1 : 1));
  return {
    count: loose.length,
    since,
    ids: loose.map(({ photo }) => photo.id),
    thumbs: loose.slice(-MOST_THUMBS).map(
      ({ photo, original }): Thumb => ({
        id: photo.id,
        src: `/photo/${photo.originalId}/320`,
        taken: takenWords(original) ?? photo.fileName,
        why: photo.filedWhy,
        blurred: sharpness.get(photo.originalId) === 'blurred',
        dark: dark.includes(photo.id),
      }),
    ),
  };
}

/** "10:44", short enough for a thumb. */
function takenWords(original: Row<'original'>): string | null {
  const at = takenMs(original);
  return at === null ? null : clock(at);
}

/** The photo that a job is recognised by: the last one taken. */
export function lastPhoto(photo: JobCard['photo']): PhotoData | null {
  return photo === null ? null : photoData(photo.photo, photo.original).data;
}
