import {
  formatTorque,
  parseStages,
  parseTorque,
  type Stage,
  tighteningOrder,
  type TighteningOrder,
  tighteningRounds,
  type Torque,
} from '../fastening/index.ts';
import type { JobState } from '../model/tables.ts';
import type { Step, StepFasteners, StepHole } from '../reinstall/types.ts';
import type { Extent, Point } from './geometry.ts';
import type { Move } from './marks.ts';

/** Marks of a hole that is through. */
export const TIGHT: ReadonlySet<StepHole['mark']> = new Set(['tightened', 'paint-checked']);
const CLOSED: ReadonlySet<StepHole['mark']> = new Set(['left out', 'blocked']);

/** The holes that are tightened in the step: not left out, not blocked, not kept for a final tightening later. */
export function openHoles(step: Step): readonly StepHole[] {
  const now = step.fasteners.filter((set) => set.laterWhen === null || step.kind === 'T');
  const figured = now.filter((set) => set.torqueNm !== null || set.stages.length > 0);
  // Pins and clips go in beside the bolts and are not tightened: where some have a figure, the others are such.
  return (figured.length > 0 ? figured : now)
    .flatMap((set) => set.holes)
    .filter((hole) => !CLOSED.has(hole.mark));
}

/** Everything of the step that a mark may stand for. */
export function thingsOf(step: Step): Set<string> {
  return new Set([
    ...step.fasteners.flatMap((set) => set.holes.map((hole) => hole.positionId)),
    ...step.actions.flatMap((action) => action.thingIds),
    ...step.renew,
  ]);
}

/**
 * Puts the photos of a step in order: the one that shows most of it first, the given order among equals. Photos that
 * neither belong to its removal nor show anything of it are left out.
 */
export function photosFor<T extends { readonly id: string }>(
  state: Pick<JobState, 'marker' | 'photo'>,
  step: Step,
  photos: readonly T[],
): T[] {
  const things = thingsOf(step);
  const shown = new Map<string, number>();
  for (const marker of state.marker)
    if (marker.thingId !== null && things.has(marker.thingId))
      shown.set(marker.photoId, (shown.get(marker.photoId) ?? 0) + 1);
  const own = new Set(
    state.photo.filter((p) => step.removalId !== null && p.removalId === step.removalId).map((p) => p.id),
  );
  return photos
    .filter((photo) => own.has(photo.id) || shown.has(photo.id))
    .sort((a, b) => (shown.get(b.id) ?? 0) - (shown.get(a.id) ?? 0));
}

/** What is known of a joint beside its marks. */
export interface JointAsked {
  /** Known to be round, or known to be none; left open, the marks say it. */
  readonly shape?: 'round' | 'other' | undefined;
  /** Whether all holes of the joint are on the photo; left open, all that were logged are taken for all. */
  readonly allShown?: boolean | undefined;
}

/** The order of tightening by where the holes stand on the photo, over all sets; null with fewer than three of them on it. */
export function orderOf(
  step: Step,
  marks: readonly (Point & { readonly id: string })[],
  photo: Extent | null,
  asked: JointAsked = {},
): TighteningOrder | null {
  const open = openHoles(step);
  const places = new Map(marks.map((mark) => [mark.id, mark]));
  const setOf = new Map(
    step.fasteners.flatMap((set) => set.holes.map((hole) => [hole.positionId, set.setId])),
  );
  const points = open.flatMap((hole) => {
    const mark = places.get(hole.positionId);
    return mark ? [{ id: hole.positionId, x: mark.x, y: mark.y, setId: setOf.get(hole.positionId) }] : [];
  });
  if (photo === null || points.length < 3) return null;
  const allShown = asked.allShown ?? points.length === open.length;
  const order = tighteningOrder(points, photo, { allShown, shape: asked.shape });
  return order.ok ? order.value : null;
}

/** Moves from hole to hole that are still to come. */
export function movesOf(order: readonly string[], tight: ReadonlySet<string>): Move[] {
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

/** A torque as it is shown largest: as it was typed where it was, with the other unit beside it. */
export interface TorqueFigure {
  readonly value: string;
  readonly unit: string;
  readonly other: string;
}

/** The torque of a set, with its angle, in the unit that it was typed in; `torqueNm` is what it comes to in N·m. */
export function torqueFigure(set: StepFasteners, torqueNm: number): TorqueFigure {
  const typed = parseTorque(set.torqueTyped.split('+')[0]?.trim() ?? '');
  const metric = !typed.ok || typed.value.unit === 'N·m';
  // What was typed is kept as typed; the other unit stands beside it.
  const [reckoned = '', unit = ''] = formatTorque(torqueNm, metric ? 'N·m' : typed.value.unit).split(/\s/);
  const value = typed.ok ? String(typed.value.typedValue) : reckoned;
  const angle = set.angleDeg === null ? '' : ` + ${set.angleDeg}°`;
  return { value, unit: `${unit}${angle}`, other: formatTorque(torqueNm, metric ? 'lbf·ft' : 'N·m') };
}

/** A round of tightening as figures. */
export interface RoundFigure {
  /** "snug", "30 %", "stage 2", "once around". */
  readonly name: string;
  /** The torque that all holes share in this round, or its angle ("90°"); "" where there is none to be said. */
  readonly value: string;
  /** Unit of the torque, "" beside an angle. */
  readonly unit: string;
}

/** Rounds of tightening; none for a single fastener without stages, or where no torque is known. */
export function roundFigures(step: Step, order: TighteningOrder | null): RoundFigure[] {
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
  return rounds.map((round, i) => {
    const stage = staged ? stages.filter((one) => one.kind !== 'snug')[i - 1] : undefined;
    const [value, unit] = figureOf(round.torquesNm, torque?.unit ?? 'N·m');
    const angle = stage?.kind === 'angle' ? `${stage.angleDeg}°` : '';
    return { name: round.name, value: i === 0 ? '' : value || angle, unit: i === 0 ? '' : unit };
  });
}
