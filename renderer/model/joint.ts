import type { JobView } from '../../core/contract/views.ts';
import {
  movesOf,
  openHoles,
  orderOf,
  photosFor,
  roundFigures,
  thingsOf,
  TIGHT,
} from '../../core/drawing/joint.ts';
import type { TighteningOrder } from '../../core/fastening/index.ts';
import type { Move, PhotoData, PhotoMark } from '../photo/types.ts';
import type { Round } from '../screens/putback/types.ts';
import { putback as say } from '../texts/putback.ts';
import { type Markable, type MarkerAt, marksOn } from './marks.ts';
import { photosOf } from './photos.ts';

type Step = JobView['plan']['steps'][number];
type Hole = Step['fasteners'][number]['holes'][number];

/** What of a step is seen on a photo, and in which order its holes are tightened. */
export interface Joint {
  readonly photo: PhotoData | null;
  /** All photos of the step, the one that shows most of it first. */
  readonly photos: readonly PhotoData[];
  /** Which of them it is, from 1. */
  readonly number: number;
  /** Marks on the photo; each has the id of what it stands for. */
  readonly marks: readonly PhotoMark[];
  /** Holes that the photo does not show, or all where there is none. */
  readonly beside: readonly PhotoMark[];
  readonly order: TighteningOrder | null;
  readonly moves: readonly Move[];
  /** The hole to go to next; null while they are started by hand, and once all are tight. */
  readonly nextId: string | null;
  readonly rounds: readonly Round[];
}

/** Photos of a step, the one that shows most of it first; among equals the newest. */
export function photosOfStep(view: JobView, step: Step): PhotoData[] {
  return photosFor(view.state, step, photosOf(view, null).reverse());
}

/** The holes of the step as marks that stand on no photo. */
export function holeMarks(step: Step): PhotoMark[] {
  return step.fasteners.flatMap((set) =>
    set.holes.map((hole) => ({
      id: hole.positionId,
      text: String(hole.n),
      kind: 'position' as const,
      state: hole.mark,
      x: 0,
      y: 0,
      name: set.name === '' ? say.holeName(hole.n) : say.holeOf(set.name, hole.n),
      group: set.setId,
    })),
  );
}

/** The step's own marks on one photo, by what they stand for; a hole stands as the step has it. */
function ownMarks(
  step: Step,
  photoId: string,
  markers: readonly MarkerAt[],
  things: ReadonlyMap<string, Markable>,
): PhotoMark[] {
  const own = thingsOf(step);
  const holes = new Map(holeMarks(step).map((mark) => [mark.id, mark]));
  const bound = new Map(
    markers.flatMap((one) =>
      one.photoId === photoId && one.thingId !== null && own.has(one.thingId) ? [[one.thingId, one]] : [],
    ),
  );
  return [...bound].flatMap(([thingId, marker]) =>
    marksOn(photoId, [marker], things).map((mark) => {
      const hole = holes.get(thingId);
      return { ...mark, id: thingId, ...(hole && { state: hole.state, name: hole.name, group: 'joint' }) };
    }),
  );
}

/** Which round is at hand: by hand until all are started; then as told; once one is tight, the one at full torque. */
function roundAt(holes: readonly Hole[], names: readonly string[], told: number): number {
  if (holes.every((hole) => TIGHT.has(hole.mark))) return names.length;
  if (holes.some((hole) => hole.mark === 'out')) return 0;
  const around = names.at(-1) === 'once around' ? 1 : 0;
  if (holes.some((hole) => TIGHT.has(hole.mark))) return names.length - 1 - around;
  return Math.min(Math.max(1, told), names.length - 1);
}

/** Rounds of tightening as figures; none for a single fastener without stages, or where no torque is known. */
export function roundsOf(step: Step, order: TighteningOrder | null, told: number): Round[] {
  const holes = openHoles(step);
  const rounds = roundFigures(step, order);
  const at = roundAt(
    holes,
    rounds.map((round) => round.name),
    told,
  );
  const tight = holes.filter((hole) => TIGHT.has(hole.mark)).length;
  const started = holes.filter((hole) => hole.mark !== 'out').length;
  return rounds.map((round, i) => {
    const progress = i === at && tight > 0 ? say.ofHoles(tight, holes.length) : '';
    return {
      id: String(i),
      share: say.roundNames[round.name] ?? round.name,
      value: round.value || say.allHoles,
      unit: round.unit,
      about:
        i === 0
          ? say.ofHoles(started, holes.length)
          : [say.roundAbout(i, round.name), progress].filter(Boolean).join(', '),
      state: i < at ? 'done' : i === at ? 'now' : 'to come',
    };
  });
}

/** The picture of a step: the photo asked for, or the one that shows most. `told` is the round the user is at. */
export function jointOf(
  view: JobView,
  step: Step,
  seen: {
    readonly photoId: string | null;
    readonly markers: readonly MarkerAt[];
    readonly things: ReadonlyMap<string, Markable>;
    readonly round: number;
  },
): Joint {
  const photos = photosOfStep(view, step);
  const index = Math.max(
    0,
    photos.findIndex((photo) => photo.id === seen.photoId),
  );
  const photo = photos[index] ?? null;
  const marks = photo === null ? [] : ownMarks(step, photo.id, seen.markers, seen.things);
  const shown = new Set(marks.map((mark) => mark.id));
  const order = orderOf(step, marks, photo);
  const open = openHoles(step);
  const tight = new Set(open.filter((hole) => TIGHT.has(hole.mark)).map((hole) => hole.positionId));
  const starting = open.some((hole) => hole.mark === 'out');
  return {
    photo,
    number: index + 1,
    photos,
    marks,
    beside: holeMarks(step).filter((mark) => !shown.has(mark.id)),
    order,
    moves: order === null ? [] : movesOf(order.order, tight),
    nextId: starting ? null : (order?.order.find((id) => !tight.has(id)) ?? null),
    rounds: roundsOf(step, order, seen.round),
  };
}
