import { readRound } from '../../core/fastening/index.ts';
import type { DeedWhat } from '../../core/model/work.ts';
import { DEED_OF, type PlanStep } from './putback.ts';

/** A tick on its way to the record: what was done to which things, or through which round holes went. */
export type TickAhead =
  | { readonly thingIds: readonly string[]; readonly what: DeedWhat }
  | { readonly thingIds: readonly string[]; readonly round: string };

type Fasteners = PlanStep['fasteners'][number];
type Hole = Fasteners['holes'][number];

const LOOSE: ReadonlySet<Hole['mark']> = new Set(['out', 'started', 'later']);
/** What ends a step whose own thing it is done to. */
const ENDS: ReadonlySet<DeedWhat> = new Set(['done', 'fitted', 'given back']);

/** A hole as it stands once the tick is kept; what a tick does not touch stays as it is. */
function holeAfter(hole: Hole, set: Fasteners, step: PlanStep, tick: TickAhead): Hole {
  const own = tick.thingIds.includes(hole.positionId);
  const deed = 'round' in tick ? readRound(tick.round) : undefined;
  const what = 'what' in tick ? tick.what : DEED_OF_ROUND[deed?.kind ?? 'pulled'];
  if (what === 'started' && (own ? hole.mark !== 'later' : hole.mark === 'out'))
    return { ...hole, round: '', mark: set.laterWhen === null ? 'started' : 'later' };
  if (what === 'tightened' && LOOSE.has(hole.mark))
    return { ...hole, round: '', mark: set.laterWhen === null || step.kind === 'T' ? 'tightened' : 'later' };
  return 'round' in tick && what === undefined ? { ...hole, round: tick.round } : hole;
}

/** Rounds that are plain ticks of a hole. */
const DEED_OF_ROUND: Partial<Record<string, DeedWhat>> = { snug: 'started', tight: 'tightened' };

function after(step: PlanStep, tick: TickAhead): PlanStep {
  const ids = new Set(tick.thingIds);
  const whole = ids.has(step.thingId);
  const what = 'what' in tick ? tick.what : undefined;
  return {
    ...step,
    state: whole && what !== undefined && ENDS.has(what) ? 'done' : step.state,
    fasteners: step.fasteners.map((set) => ({
      ...set,
      holes: set.holes.map((hole) =>
        ids.has(hole.positionId) || (whole && what === 'started') ? holeAfter(hole, set, step, tick) : hole,
      ),
    })),
    actions: step.actions.map((action) =>
      what !== undefined && DEED_OF[action.code] === what && action.thingIds.every((id) => ids.has(id))
        ? { ...action, done: true }
        : action,
    ),
    missing: step.missing.filter((one) => one.what !== what || !ids.has(one.thingId)),
  };
}

/** A step as it will stand once the ticks on their way are kept: shown at the touch, not at the reply. */
export function tickedAhead(step: PlanStep, ticks: readonly TickAhead[]): PlanStep {
  return ticks.reduce(after, step);
}
