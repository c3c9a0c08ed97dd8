import type { JobView } from '../../core/contract/views.ts';
import { movesOf, openHoles, orderOf, photosFor, thingsOf } from '../../core/drawing/joint.ts';
import { sayGap, type TighteningOrder } from '../../core/fastening/index.ts';
import type { Row } from '../../core/model/tables.ts';
import type { Move, PhotoData, PhotoMark } from '../photo/types.ts';
import type { Round } from '../screens/putback/types.ts';
import { putback as say } from '../texts/putback.ts';
import { type Markable, type MarkerAt, marksOn } from './marks.ts';
import { photosOf } from './photos.ts';
import { walkOf } from './rounds.ts';

type Step = JobView['plan']['steps'][number];

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
  /** By the numbers of the maker's figure, and not by the marks. */
  readonly numbered: boolean;
  /** All open holes in the order of the round at hand; what is on no photo last. */
  readonly sequence: readonly string[];
  /** Nobody has said yet whether all holes of the joint are on the photo. */
  readonly question: boolean;
  /** Where the gaps suggest that a hole is not shown; "" where they do not. */
  readonly hint: string;
  readonly moves: readonly Move[];
  /** The hole that is lit; null without an order, and once every round is walked. */
  readonly nextId: string | null;
  /** The round that it goes through, by its name. */
  readonly nextRound: string;
  /** Holes that have not been through a round of this name. */
  readonly lagging: (round: string) => readonly string[];
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

/** How the job says that a joint is tightened: the maker's own numbering wins over every reckoned order. */
function orderKindOf(view: JobView, step: Step): Row<'fset'>['orderKind'] {
  const sets = new Set(step.fasteners.map((set) => set.setId));
  return view.state.fset.find((set) => sets.has(set.id) && set.orderKind !== 'auto')?.orderKind ?? 'auto';
}

/** Whether all holes of the joint are on the photo, as somebody answered; "" while nobody did. */
export type AllShown = 'yes' | 'no' | '';

/** The gap in the ring by the numbers on the marks; "" where there is none. */
export function hintOf(order: TighteningOrder | null, marks: readonly PhotoMark[]): string {
  const [one, other] = (order?.gap ?? []).map((id) => marks.find((mark) => mark.id === id)?.text ?? '');
  return one === undefined || other === undefined ? '' : sayGap(one, other);
}

/** Rounds that a hole of the step was written down for since it last came off, also those on their way to the record. */
function notedRounds(view: JobView, step: Step): Set<string> {
  const holes = new Map(
    step.fasteners.flatMap((set) => set.holes.map((hole) => [hole.positionId, hole.round] as const)),
  );
  const last = new Map<string, number>();
  for (const deed of view.state.deed)
    if (holes.has(deed.thingId)) last.set(deed.thingId, Math.max(last.get(deed.thingId) ?? 0, deed.round));
  const deeds = view.state.deed.filter((deed) => last.get(deed.thingId) === deed.round);
  return new Set([...holes.values(), ...deeds.map((deed) => deed.valueTyped)]);
}

/** The whole order: as numbered where the maker says so, else by the marks; what is on no photo comes after and counts. */
function sequenceOf(
  step: Step,
  order: TighteningOrder | null,
  kind: Row<'fset'>['orderKind'],
): { readonly order: readonly string[]; readonly around: readonly string[] } {
  const ids = openHoles(step).map((hole) => hole.positionId);
  if (kind === 'as numbered' || kind === 'maker') return { order: ids, around: ids };
  if (order === null) return { order: [], around: [] };
  const rest = ids.filter((id) => !order.order.includes(id));
  return { order: [...order.order, ...rest], around: [...order.around, ...rest] };
}

/** The picture of a step: the photo asked for, or the one that shows most; the hole at hand is lit in its round. */
export function jointOf(
  view: JobView,
  step: Step,
  seen: {
    readonly photoId: string | null;
    readonly markers: readonly MarkerAt[];
    readonly things: ReadonlyMap<string, Markable>;
    readonly allShown: AllShown;
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
  const kind = orderKindOf(view, step);
  const numbered = kind === 'as numbered' || kind === 'maker';
  const order = orderOf(step, marks, photo, {
    shape: kind === 'centre out' || kind === 'line' ? 'other' : kind === 'cross' ? 'round' : undefined,
    allShown: seen.allShown === '' ? undefined : seen.allShown === 'yes',
  });
  // A step that is done asks nothing, and no round of it is at hand.
  const over = step.state === 'done';
  const asked = order !== null && !numbered && seen.allShown === '' && !over;
  const walk = walkOf(
    step,
    asked ? { order: [], around: [] } : sequenceOf(step, order, kind),
    notedRounds(view, step),
  );
  return {
    photo,
    number: index + 1,
    photos,
    marks,
    beside: holeMarks(step).filter((mark) => !shown.has(mark.id)),
    order,
    numbered,
    sequence: walk.order,
    question: asked,
    hint: hintOf(order, marks),
    moves:
      order === null || numbered || asked || walk.nextId === null
        ? []
        : movesOf(walk.order, new Set(walk.order.slice(0, walk.order.indexOf(walk.nextId)))),
    nextId: walk.nextId,
    nextRound: walk.nextRound,
    lagging: walk.lagging,
    rounds: over
      ? walk.rounds.map((round) => (round.state === 'now' ? { ...round, state: 'to come' } : round))
      : walk.rounds,
  };
}
