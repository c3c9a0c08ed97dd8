import type { JobView } from '../../core/contract/views.ts';
import {
  formatTorque,
  parseStages,
  type Stage,
  tighteningOrder,
  type TighteningOrder,
  tighteningRounds,
  type Torque,
} from '../../core/fastening/index.ts';
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

const TIGHT: ReadonlySet<Hole['mark']> = new Set(['tightened', 'paint-checked']);
const CLOSED: ReadonlySet<Hole['mark']> = new Set(['left out', 'blocked']);

/** The holes that are tightened in the step: not left out, not blocked, not kept for a final tightening later. */
function openHoles(step: Step): readonly Hole[] {
  const now = step.fasteners.filter((set) => set.laterWhen === null || step.kind === 'T');
  const figured = now.filter((set) => set.torqueNm !== null || set.stages.length > 0);
  // Pins and clips go in beside the bolts and are not tightened: where some have a figure, the others are such.
  return (figured.length > 0 ? figured : now)
    .flatMap((set) => set.holes)
    .filter((hole) => !CLOSED.has(hole.mark));
}

/** Everything of the step that a mark may stand for. */
function thingsOf(step: Step): Set<string> {
  return new Set([
    ...step.fasteners.flatMap((set) => set.holes.map((hole) => hole.positionId)),
    ...step.actions.flatMap((action) => action.thingIds),
    ...step.renew,
  ]);
}

/** Photos of a step, the one that shows most of it first; among equals the newest. */
export function photosOfStep(view: JobView, step: Step): PhotoData[] {
  const things = thingsOf(step);
  const shown = new Map<string, number>();
  for (const marker of view.state.marker)
    if (marker.thingId !== null && things.has(marker.thingId))
      shown.set(marker.photoId, (shown.get(marker.photoId) ?? 0) + 1);
  const own = new Set(
    view.state.photo
      .filter((p) => step.removalId !== null && p.removalId === step.removalId)
      .map((p) => p.id),
  );
  return photosOf(view, null)
    .filter((photo) => own.has(photo.id) || shown.has(photo.id))
    .reverse()
    .sort((a, b) => (shown.get(b.id) ?? 0) - (shown.get(a.id) ?? 0));
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

function orderOf(step: Step, marks: readonly PhotoMark[], photo: PhotoData | null): TighteningOrder | null {
  const open = openHoles(step);
  const places = new Map(marks.map((mark) => [mark.id, mark]));
  const points = open.flatMap((hole) => {
    const mark = places.get(hole.positionId);
    return mark ? [{ id: hole.positionId, x: mark.x, y: mark.y }] : [];
  });
  if (photo === null || points.length < 3) return null;
  const order = tighteningOrder(points, photo, { allShown: points.length === open.length });
  return order.ok ? order.value : null;
}

/** Moves from hole to hole that are still to come. */
function movesOf(order: readonly string[], tight: ReadonlySet<string>): Move[] {
  const next = order.findIndex((id) => !tight.has(id));
  if (next < 0) return [];
  return order.flatMap((toId, i) => {
    const fromId = order[i - 1];
    return fromId === undefined || i < next ? [] : [{ fromId, toId, now: i === next }];
  });
}

/** The maker's stages of the step's first set that has any, and the torque in the unit it was typed in. */
function makerOf(step: Step): { readonly stages: readonly Stage[]; readonly torque: Torque | null } {
  for (const set of step.fasteners)
    for (const text of [set.stages.join(' + '), set.torqueTyped]) {
      const read = parseStages(text);
      if (read.ok) return { stages: read.value.stages, torque: read.value.torque ?? null };
    }
  return { stages: [], torque: null };
}

function figureOf(torques: readonly (number | undefined)[], unit: Torque['unit']): readonly [string, string] {
  const first = torques[0];
  if (first === undefined || torques.some((torque) => torque !== first)) return ['', ''];
  const [value = '', name = ''] = formatTorque(first, unit).split(/\s/);
  // "25.0" would be read as more than a wrench can say.
  return [value.includes('.') ? value.replace(/\.?0+$/, '') : value, name];
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
  const { stages, torque } = makerOf(step);
  const staged = stages.filter((stage) => stage.kind !== 'snug').length > 1;
  const targets = new Map(
    step.fasteners.flatMap((set) => set.holes.map((hole) => [hole.positionId, set.torqueNm ?? undefined])),
  );
  const known = holes.some((hole) => targets.get(hole.positionId) !== undefined);
  if (!staged && (holes.length < 2 || !known)) return [];
  const ids = order?.order ?? holes.map((hole) => hole.positionId);
  const rounds = tighteningRounds({
    order: ids,
    around: order?.around ?? ids,
    targetNm: (id) => targets.get(id),
    makerStages: stages,
  });
  const at = roundAt(
    holes,
    rounds.map((round) => round.name),
    told,
  );
  const tight = holes.filter((hole) => TIGHT.has(hole.mark)).length;
  const started = holes.filter((hole) => hole.mark !== 'out').length;
  return rounds.map((round, i) => {
    const stage = staged ? stages.filter((one) => one.kind !== 'snug')[i - 1] : undefined;
    const [value, unit] = figureOf(round.torquesNm, torque?.unit ?? 'N·m');
    const angle = stage?.kind === 'angle' ? `${stage.angleDeg}°` : '';
    const progress = i === at && tight > 0 ? say.ofHoles(tight, holes.length) : '';
    return {
      id: String(i),
      share: say.roundNames[round.name] ?? round.name,
      value: i === 0 ? say.allHoles : value || angle || say.allHoles,
      unit: i === 0 ? '' : unit,
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
