import type { JobState, Row } from '../model/tables.ts';
import { planJob } from './plan.ts';
import type { Finding, Plan, Step, StepKind } from './types.ts';

/** The deed that begins what cannot be taken back: filling, power, covering. */
const SEALS: Record<StepKind, Row<'deed'>['what']> = {
  S: 'done',
  B: 'fitted',
  F: 'tightened',
  C1: 'filled',
  C2: 'bled',
  I: 'given back',
  T: 'done',
  U: 'done',
  K: 'done',
};

/**
 * What ticking this step would bury: the stops that the plan would name the moment after and does not name now. An open
 * connection is no finding while the step that covers it is still to come; it is one as that step is ticked, and then it
 * must be said before the tick is kept. `plan` is the plan of `state` at `now` (UTC ms). What the step itself still lacks
 * is not counted, but for a cure that it would not wait for.
 */
export function buriedBy(state: JobState, now: number, plan: Plan, step: Step): readonly Finding[] {
  const deed: Row<'deed'> = {
    id: 'ffffffff-ffff-7fff-bfff-ffffffffffff',
    jobId: state.job.id,
    thingId: step.thingId,
    round: step.round,
    what: SEALS[step.kind],
    value: null,
    valueTyped: '',
    known: 'ticked',
    toolId: null,
    withThingId: null,
    withSpecId: null,
    fresh: false,
    personId: null,
    at: now,
    why: '',
  };
  const known = new Set(stops(plan).map((finding) => finding.key));
  const then = planJob({ ...state, deed: [...state.deed, deed] }, now);
  return stops(then).filter(
    (finding) => !known.has(finding.key) && (finding.stepId !== step.id || finding.code === 'cure.wait'),
  );
}

function stops(plan: Plan): Finding[] {
  return plan.findings.filter((finding) => finding.severity === 'stop' && finding.accepted === null);
}
