import { openHoles } from '../drawing/joint.ts';
import { formatTorque } from '../fastening/index.ts';
import type { JobState, Row } from '../model/tables.ts';
import type { SheetHole, SheetSet } from '../record/sheet-data.ts';
import { words } from '../record/words.ts';
import type { Step, StepFasteners, StepHole } from '../reinstall/index.ts';
import { describeSpec } from '../tally/index.ts';

interface InSet {
  readonly set: StepFasteners;
  readonly hole: StepHole;
}

/** What is taken in hand for a set: "8 × bolt M10 × 35 mm, hex 16 mm, from bag 6". */
function titleOf(state: JobState, set: StepFasteners): string {
  const row = state.fset.find((one) => one.id === set.setId);
  const byKind = new Map<string, number>();
  for (const hole of set.holes) {
    const kind = `${nameOfSpec(state, hole.specId)}${fromWhere(state, hole.stowId)}`;
    byKind.set(kind, (byKind.get(kind) ?? 0) + 1);
  }
  const kinds = [...byKind].map(
    ([kind, count]) => `${count} × ${set.mustBeNew ? `${words.newOnes} ` : ''}${kind}`,
  );
  const name = row?.name ?? '';
  return `${name === '' ? '' : `${name[0]?.toUpperCase() ?? ''}${name.slice(1)}: `}${kinds.join('; ')}`;
}

function nameOfSpec(state: JobState, specId: string): string {
  const spec = state.spec.find((one) => one.id === specId);
  return spec === undefined ? 'fastener' : describeSpec(spec);
}

function fromWhere(state: JobState, stowId: string | null): string {
  const stow = state.stow.find((one) => one.id === stowId);
  return stow === undefined ? '' : `, ${words.from(`${stow.kind} ${stow.label}`)}`;
}

const lengthOf = (spec: Row<'spec'> | undefined): string =>
  spec?.lengthUm === null || spec === undefined ? '' : `${spec.lengthUm / 1000} mm`;

/** What is to be said beside a hole: only where it differs from its neighbours, or cannot be seen. */
function noteOf(state: JobState, step: Step, { set, hole }: InSet): string {
  const spec = (id: string) => state.spec.find((one) => one.id === id);
  const kinds = new Set(
    step.fasteners.flatMap((one) => one.holes.map((other) => nameOfSpec(state, other.specId))),
  );
  const lengths = new Set(
    step.fasteners.flatMap((one) => one.holes.map((other) => lengthOf(spec(other.specId)))),
  );
  const own = spec(hole.specId);
  const torques = new Set(step.fasteners.map((one) => one.torqueTyped));
  const repair = state.deed
    .filter((deed) => deed.thingId === hole.positionId && deed.what === 'repaired')
    .at(-1);
  return [
    kinds.size > 1 && lengths.size > 1 ? [own?.thread ?? '', lengthOf(own)].filter(Boolean).join(' × ') : '',
    kinds.size > 1 && lengths.size === 1 ? nameOfSpec(state, hole.specId) : '',
    torques.size > 1 ? set.torqueTyped : '',
    hole.reachedNm === null ? '' : words.wasRead(formatTorque(hole.reachedNm)),
    repair === undefined ? '' : words.repaired(repair.why),
    hole.hidden ? words.unseen : '',
  ]
    .filter((text) => text !== '')
    .join(', ');
}

function sheetHole(state: JobState, step: Step, one: InSet, open: boolean, order: number | null): SheetHole {
  const { set, hole } = one;
  const base = { order, text: String(hole.n), state: hole.mark };
  const row = state.position.find((position) => position.id === hole.positionId);
  if (hole.mark === 'left out' || hole.mark === 'blocked') {
    const say = hole.mark === 'blocked' ? words.blocked : words.staysOut;
    return { ...base, boxes: 'none', note: say(row?.fateWhy ?? '') };
  }
  if (set.laterWhen !== null && step.kind !== 'T')
    return { ...base, boxes: 'first', note: words.snugOnly(set.laterWhen) };
  return { ...base, boxes: open ? 'all' : 'first', note: noteOf(state, step, one) };
}

/**
 * The holes of a step as rows: those of an order together in it, whatever set they are of; then the others by set.
 *
 * @param order position ids in the order of tightening; empty where there is none
 */
export function sheetSets(state: JobState, step: Step, order: readonly string[]): SheetSet[] {
  const open = new Set(openHoles(step).map((hole) => hole.positionId));
  const all = step.fasteners.flatMap((set) => set.holes.map((hole): InSet => ({ set, hole })));
  const rank = new Map(order.map((id, i) => [id, i + 1]));
  const rowOf = (one: InSet) =>
    sheetHole(state, step, one, open.has(one.hole.positionId), rank.get(one.hole.positionId) ?? null);
  const inOrder = all
    .filter((one) => rank.has(one.hole.positionId))
    .sort((a, b) => (rank.get(a.hole.positionId) ?? 0) - (rank.get(b.hole.positionId) ?? 0));
  const joint = step.fasteners.filter((set) => inOrder.some((one) => one.set === set));
  const ordered: SheetSet[] =
    inOrder.length === 0
      ? []
      : [{ title: joint.map((set) => titleOf(state, set)).join('\n'), holes: inOrder.map(rowOf) }];
  const others = step.fasteners.flatMap((set): SheetSet[] => {
    const holes = all.filter((one) => one.set === set && !rank.has(one.hole.positionId));
    if (holes.length === 0) return [];
    return [{ title: joint.includes(set) ? '' : titleOf(state, set), holes: holes.map(rowOf) }];
  });
  return [...ordered, ...others];
}
