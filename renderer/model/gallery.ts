import type { JobView } from '../../core/contract/views.ts';
import { type Sharpness, sharpnessOfAll } from '../../core/model/shots.ts';
import type { Row } from '../../core/model/tables.ts';
import type { GallerySection, GalleryTile, PhotoFilter, ShotFact } from '../screens/photos/types.ts';
import { gallery as say } from '../texts/gallery.ts';
import { logOf } from './line.ts';
import { moment, takenAt, takenMs } from './time.ts';

/** What the host says of a job's photos. */
export interface Tray {
  readonly groups: readonly (readonly string[])[];
  readonly dark: readonly string[];
}

/** A photo with all that is known of it, for tiles and facts alike. */
export interface Shot {
  readonly photo: Row<'photo'>;
  readonly original: Row<'original'>;
  /** When it was taken, or added where that is not known: UTC milliseconds. */
  readonly at: number;
  readonly sharpness: Sharpness | null;
  readonly dark: boolean;
  readonly marks: number;
  readonly unbound: number;
}

/** All photos of a job, oldest first. */
export function shotsOf(view: JobView, tray: Tray): Shot[] {
  const originals = new Map(view.state.original.map((original) => [original.id, original]));
  const sharpness = sharpnessOfAll(view.state.original);
  const dark = new Set(tray.dark);
  const marks = new Map<string, { all: number; unbound: number }>();
  for (const { photoId, thingId, togetherId } of view.state.marker) {
    const count = marks.get(photoId) ?? { all: 0, unbound: 0 };
    count.all++;
    if (thingId === null && togetherId === null) count.unbound++;
    marks.set(photoId, count);
  }
  return view.state.photo
    .flatMap((photo): Shot[] => {
      const original = originals.get(photo.originalId);
      if (!original) return [];
      const count = marks.get(photo.id);
      return [
        {
          photo,
          original,
          at: takenMs(original) ?? photo.addedAt,
          sharpness: sharpness.get(original.id) ?? null,
          dark: dark.has(photo.id),
          marks: count?.all ?? 0,
          unbound: count?.unbound ?? 0,
        },
      ];
    })
    .sort((a, b) => a.at - b.at || (a.photo.id < b.photo.id ? -1 : 1));
}

const poor = (shot: Shot): boolean => shot.sharpness === 'blurred' || shot.dark;

const FILTERS: Record<Exclude<PhotoFilter, 'alike' | 'removal'>, (shot: Shot) => boolean> = {
  all: () => true,
  unfiled: (shot) => shot.photo.removalId === null,
  found: (shot) => shot.photo.role === 'as found',
  refitted: (shot) => shot.photo.role === 'as refitted',
  poor,
  unbound: (shot) => shot.unbound > 0,
};

/** How many photos each filter shows. */
export function filterCounts(
  shots: readonly Shot[],
  groups: Tray['groups'],
): Record<Exclude<PhotoFilter, 'removal'>, number> {
  const count = (filter: keyof typeof FILTERS) => shots.filter(FILTERS[filter]).length;
  return {
    all: shots.length,
    unfiled: count('unfiled'),
    found: count('found'),
    refitted: count('refitted'),
    poor: count('poor'),
    alike: groups.reduce((sum, group) => sum + group.length, 0),
    unbound: count('unbound'),
  };
}

export function tileOf(shot: Shot, now: number, best = false): GalleryTile {
  return {
    id: shot.photo.id,
    src: `/photo/${shot.original.id}/320`,
    taken: takenAt(shot.original, now) ?? shot.photo.fileName,
    name: shot.photo.fileName,
    why: shot.photo.filedWhy,
    blurred: shot.sharpness === 'blurred',
    dark: shot.dark,
    unbound: shot.unbound,
    best,
  };
}

/** The photos that a filter shows, under heads: by removal as in the log, or by what is alike. */
export function sectionsOf(
  view: JobView,
  shots: readonly Shot[],
  at: { readonly filter: PhotoFilter; readonly removalId: string | null; readonly groups: Tray['groups'] },
  now: number,
): GallerySection[] {
  if (at.filter === 'alike') {
    const byId = new Map(shots.map((shot) => [shot.photo.id, shot]));
    return at.groups.map((group) => ({
      id: group[0] ?? '',
      head: say.alike(group.length),
      said: false,
      alike: group,
      tiles: group.flatMap((id, i) => {
        const shot = byId.get(id);
        return shot ? tileOf(shot, now, i === 0) : [];
      }),
    }));
  }
  const { filter } = at;
  const shown =
    filter === 'removal'
      ? shots.filter((shot) => shot.photo.removalId === at.removalId)
      : shots.filter(FILTERS[filter]);
  return byRemoval(view, shown, now);
}

function byRemoval(view: JobView, shots: readonly Shot[], now: number): GallerySection[] {
  const byRemovalId = new Map<string | null, Shot[]>();
  for (const shot of shots) {
    const own = byRemovalId.get(shot.photo.removalId);
    if (own) own.push(shot);
    else byRemovalId.set(shot.photo.removalId, [shot]);
  }
  const section = (id: string | null, head: string): GallerySection[] => {
    const own = byRemovalId.get(id);
    byRemovalId.delete(id);
    if (!own) return [];
    return [
      {
        id: id ?? 'unfiled',
        head,
        said: id !== null,
        alike: null,
        tiles: own.map((shot) => tileOf(shot, now)),
      },
    ];
  };
  const sections = [
    ...section(null, say.unfiled),
    ...logOf(view).flatMap((removal, i) => section(removal.id, say.ofRemoval(i + 1, removal.title))),
  ];
  // Photos of a removal that is void since: still there, under its title.
  const titles = new Map(view.state.removal.map((removal) => [removal.id, removal.title]));
  return [
    ...sections,
    ...[...byRemovalId.keys()].flatMap((id) => section(id, titles.get(id ?? '') || say.unfiled)),
  ];
}

/** What is known of one photo, in words, a line each. */
export function factsOf(view: JobView, shot: Shot, groups: Tray['groups'], now: number): ShotFact[] {
  const { original, photo } = shot;
  const { facts } = say;
  const turned = original.turn >= 5;
  const [width, height] = turned ? [original.height, original.width] : [original.width, original.height];
  const log = logOf(view);
  const at = log.findIndex((removal) => removal.id === photo.removalId);
  const removal = log[at];
  const filed = removal ? say.ofRemoval(at + 1, removal.title) : say.unfiled;
  const alike = groups.find((group) => group.includes(photo.id));
  return [
    { label: facts.taken, value: takenFact(original, now) },
    { label: facts.filed, value: [filed, photo.filedWhy].filter(Boolean).join('. ') },
    {
      label: facts.sharpness,
      value: shot.sharpness === null ? facts.unknownSharpness : facts.sharp[shot.sharpness],
    },
    ...(shot.dark ? [{ label: facts.light, value: facts.dark }] : []),
    {
      label: facts.marks,
      value: shot.marks === 0 ? facts.noMarks : facts.marksOf(shot.marks, shot.unbound),
    },
    ...(alike ? [{ label: facts.alike, value: facts.alikeOf(alike.length - 1) }] : []),
    ...(photo.role === 'other' ? [] : [{ label: facts.shows, value: say.roles[photo.role] }]),
    { label: facts.camera, value: original.camera || facts.unknownCamera },
    { label: facts.size, value: facts.sizeOf(width, height, millionsOf(width * height)) },
    { label: facts.location, value: original.hasLocation ? facts.withLocation : facts.withoutLocation },
    { label: facts.file, value: photo.fileName, said: true },
  ];
}

const millionsOf = (pixels: number): string =>
  new Intl.NumberFormat(undefined, { maximumSignificantDigits: 2 }).format(pixels / 1e6);

/** As the camera's clock said it, with the offset that the file names, or that it names none. */
function takenFact({ takenLocal, takenZone, takenUtc }: Row<'original'>, now: number): string {
  if (takenLocal === null) return takenUtc === null ? say.facts.unknownTime : moment(takenUtc, now);
  const local = takenLocal.slice(0, 19).replace('T', ' ');
  return takenZone === null ? `${local}, ${say.facts.unknownZone}` : `${local}, UTC${takenZone}`;
}
