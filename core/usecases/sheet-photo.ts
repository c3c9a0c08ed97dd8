import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { movesOf, openHoles, orderOf, photosFor, thingsOf, TIGHT } from '../drawing/joint.ts';
import type { MarkKind, PhotoMark } from '../drawing/marks.ts';
import type { TighteningOrder } from '../fastening/index.ts';
import type { JobState, Row } from '../model/tables.ts';
import { renditionPath } from '../photos/disk.ts';
import type { PicturePool } from '../photos/pool.ts';
import type { SheetPhoto } from '../record/sheet-data.ts';
import type { Step } from '../reinstall/index.ts';
import { originalPath } from '../store/check.ts';
import { places } from '../store/workshop.ts';

/** A photo of a step with what stands on it, before its picture is read. */
export interface StepPhoto {
  readonly original: Row<'original'>;
  readonly width: number;
  readonly height: number;
  readonly marks: readonly PhotoMark[];
  readonly order: TighteningOrder | null;
}

/** The photo that shows most of a step, with its marks; null where there is none. */
export function photoOfStep(state: JobState, step: Step): StepPhoto | null {
  const originals = new Map(state.original.map((original) => [original.id, original]));
  const at = (photo: Row<'photo'>) => originals.get(photo.originalId)?.takenUtc ?? photo.addedAt;
  const [photo] = photosFor(
    state,
    step,
    [...state.photo].sort((a, b) => at(b) - at(a)),
  );
  const original = originals.get(photo?.originalId ?? '');
  if (photo === undefined || original === undefined) return null;
  const turned = original.turn >= 5;
  const size = {
    width: turned ? original.height : original.width,
    height: turned ? original.width : original.height,
  };
  const marks = marksOf(state, step, photo.id);
  return { original, ...size, marks, order: orderOf(step, marks, size) };
}

/** The step's own marks on a photo, one for each thing. */
function marksOf(state: JobState, step: Step, photoId: string): PhotoMark[] {
  const holes = new Map(step.fasteners.flatMap((set) => set.holes.map((hole) => [hole.positionId, hole])));
  const own = thingsOf(step);
  const done = new Set(step.actions.filter((one) => one.done).flatMap((one) => one.thingIds));
  const bound = new Map(
    state.marker.flatMap((marker) =>
      marker.photoId === photoId && marker.thingId !== null && own.has(marker.thingId)
        ? [[marker.thingId, marker] as const]
        : [],
    ),
  );
  return [...bound].map(([thingId, marker]) => {
    const hole = holes.get(thingId);
    const place = { id: thingId, x: marker.x, y: marker.y, name: '' };
    if (hole)
      return { ...place, text: String(hole.n), kind: 'position', state: hole.mark, group: 'joint' } as const;
    const kind = kindOf(state, thingId);
    const before = kind === 'temporary' || kind === 'match' ? 'in' : 'out';
    const text = String(Math.abs(marker.n));
    return { ...place, text, kind, state: done.has(thingId) ? 'tightened' : before, group: thingId } as const;
  });
}

function kindOf(state: JobState, thingId: string): MarkKind {
  if (state.connection.some((row) => row.id === thingId)) return 'connection';
  if (state.temporary.some((row) => row.id === thingId)) return 'temporary';
  return state.part.some((row) => row.id === thingId) ? 'part' : 'match';
}

/** The picture itself, made for paper where it is not there yet; null: its file is missing or cannot be read. */
export async function pictureOf(
  dir: string,
  pool: PicturePool,
  step: Step,
  photo: StepPhoto,
  light: boolean,
): Promise<SheetPhoto | null> {
  const { originals, renditions } = places(dir);
  const { id } = photo.original;
  const size = light ? 'light' : 'print';
  const path = renditionPath(renditions, id, size);
  const original = originalPath(originals, id);
  if (!existsSync(original)) return null;
  if (!existsSync(path)) {
    const made = await pool.run({ op: 'render', path: original, sha256: id, renditions, size }, true);
    if (!made.ok) return null;
  }
  const tight = new Set(
    openHoles(step)
      .filter((hole) => TIGHT.has(hole.mark))
      .map((hole) => hole.positionId),
  );
  const moves = photo.order === null ? [] : movesOf(photo.order.order, tight);
  const { width, height, marks } = photo;
  return { bytes: await readFile(path), width, height, marks, moves };
}
