import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PicturePool } from '../../core/photos/pool.ts';
import { addPhotos } from '../../core/usecases/photo-import.ts';
import type { Row } from '../../core/model/tables.ts';
import { type Bench, must } from './bench.ts';

/** The photos of the sample, and the true places on them: see `../scene/README.md`. */
export const PHOTO_FOLDER = join(import.meta.dirname, '..', 'photos');

interface Place {
  readonly set?: string;
  readonly n?: number;
  readonly x: number;
  readonly y: number;
  readonly what: string;
  readonly visible: boolean;
}

const PLACES = JSON.parse(readFileSync(join(PHOTO_FOLDER, 'places.json'), 'utf8')) as Readonly<
  Record<string, readonly Place[]>
>;

/** What is marked on a photo, where it belongs, and what it is for. */
interface Shot {
  readonly removal: string | null;
  readonly role: Row<'photo'>['role'];
  /** Sets and things of `places.json` that get a mark on it. */
  readonly marks: readonly string[];
}

const shot = (removal: string | null, role: Row<'photo'>['role'], ...marks: string[]): Shot => ({
  removal,
  role,
  marks,
});

const SHOTS: Readonly<Record<string, Shot>> = {
  'IMG_0412.jpg': shot('Pressure line, moved aside', 'as found', 'pressure line union'),
  'IMG_0414.jpg': shot('Gear cover', 'as found', 'gear-cover', 'hose bracket', 'sight glass'),
  'IMG_0417.jpg': shot('Inlet elbow', 'as found', 'inlet', 'relief'),
  'IMG_0421.jpg': shot('Pulley and taper bush', 'other', 'bush', 'pulley'),
  'IMG_0425.jpg': shot('Bearing cap 3', 'other', 'cap-3', 'cap-4', 'end-plate'),
  'IMG_0431.jpg': shot('Gear, right', 'other', 'gear-right', 'gear-left'),
  'IMG_0432.jpg': shot('Gear, right', 'other'),
  'IMG_0433.jpg': shot('Gear, right', 'other', 'match', 'locking pin'),
  'IMG_0438.jpg': shot('Gear, left', 'other', 'gear-cover'),
  'IMG_0442.jpg': shot('Bearing cap 4', 'other', 'cap-3', 'cap-4', 'end-plate'),
  'IMG_0447.jpg': shot(null, 'other', 'sight glass', 'gear left', 'gear right', 'shims 3', 'shims 4'),
  'IMG_0449.jpg': shot(null, 'other'),
  'IMG_0451.jpg': shot('Gear cover', 'other'),
  'IMG_0466.jpg': shot('Bearing cap 3', 'as refitted', 'cap-3', 'cap-4'),
  'IMG_0471.jpg': shot('Gear cover', 'as refitted', 'gear-cover'),
  'IMG_0473.jpg': shot(null, 'as refitted'),
};

/** Where the sets of `places.json` are in the log: the removal, and which of its sets. */
const SETS: Readonly<Record<string, string>> = {
  'gear-cover': 'Gear cover',
  inlet: 'Inlet elbow',
  relief: 'Relief valve',
  bush: 'Pulley and taper bush',
  'cap-3': 'Bearing cap 3',
  'cap-4': 'Bearing cap 4',
  'end-plate': 'End plate',
  'gear-right': 'Gear, right',
  'gear-left': 'Gear, left',
};

const THINGS: Readonly<Record<string, readonly ['part' | 'connection' | 'temporary', string]>> = {
  'pressure line union': ['connection', 'pressure line union'],
  'hose bracket': ['part', 'hose bracket'],
  'sight glass': ['part', 'sight glass'],
  pulley: ['part', 'pulley'],
  'locking pin': ['temporary', 'locking pin in the lower mesh'],
  'gear left': ['part', 'gear, left'],
  'gear right': ['part', 'gear, right'],
  'shims 3': ['part', 'shims 3'],
  'shims 4': ['part', 'shims 4'],
};

/** Brings in the photos named, files them and puts the marks on what was taken off until then. */
export async function addShots(bench: Bench, files: readonly string[]): Promise<void> {
  bench.clock.pace = 1000;
  const pool = new PicturePool();
  try {
    const context = { workshop: bench.workshop, actor: null };
    const named = files.map((fileName) => ({ path: join(PHOTO_FOLDER, fileName), fileName }));
    const added = await addPhotos(context, pool, bench.jobId, named);
    if (!added.ok) throw new Error(added.fault.sentence);
    for (const one of added.value)
      if (one.status !== 'added') throw new Error(`${one.fileName}: ${one.sentence}`);
  } finally {
    await pool.close();
  }
  for (const file of files) await markOne(bench, file);
}

async function markOne(bench: Bench, file: string): Promise<void> {
  const about = SHOTS[file];
  const photo = bench.state().photo.find((one) => one.fileName === file);
  if (!about || !photo) throw new Error(`${file} is not of the sample.`);
  const removalId = about.removal === null ? null : bench.find('removal', about.removal).id;
  if (photo.removalId !== removalId)
    must(await bench.client.photo.file({ ...bench.base(), photoIds: [photo.id], removalId }));
  if (about.role !== photo.role) await bench.change('photo', photo.id, { role: about.role });
  for (const place of PLACES[file] ?? []) {
    if (!place.visible || !about.marks.some((mark) => isOf(place, mark))) continue;
    const thingId = thingOf(bench, place);
    if (thingId === null) continue;
    await bench.make('marker', { photoId: photo.id, x: place.x, y: place.y, thingId });
  }
  if (about.marks.includes('match')) await matchMarks(bench, photo.id, PLACES[file] ?? []);
}

const isOf = (place: Place, mark: string): boolean => place.set === mark;

function thingOf(bench: Bench, place: Place): string | null {
  const title = SETS[place.set ?? ''];
  if (title !== undefined) {
    if (!bench.state().removal.some((one) => one.title === title)) return null;
    const [set] = bench.sets(title);
    const hole = bench.state().position.find((one) => one.setId === set?.id && one.n === place.n);
    return hole?.id ?? null;
  }
  const thing = THINGS[place.set ?? ''];
  return thing === undefined ? null : bench.find(thing[0], thing[1]).id;
}

/** Two dots take one dot between them: three marks that go together. */
async function matchMarks(bench: Bench, photoId: string, places: readonly Place[]): Promise<void> {
  const togetherId = await bench.make('together', { name: 'two dots take one dot between them' });
  const mark = bench.state().mark.find((one) => one.kind === 'match');
  for (const place of places)
    if (place.what === 'mark' && place.visible)
      await bench.make('marker', { photoId, x: place.x, y: place.y, thingId: mark?.id ?? null, togetherId });
}
