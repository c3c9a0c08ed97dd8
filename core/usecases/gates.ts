import { ok, type Result, refuse, type StandingPoint } from '../model/result.ts';
import type { Row } from '../model/tables.ts';
import type { DeedWhat } from '../model/work.ts';
import { buriedBy, type Finding, type Plan, planJob, type Step } from '../reinstall/index.ts';
import type { Decision } from './frame.ts';

/** Deeds that clear points instead of covering them: never stopped. */
const CLEARS: ReadonlySet<DeedWhat> = new Set([
  'taken out',
  'measured',
  'repaired',
  'left out',
  'put on',
  'put in',
  'drained',
  'cold leak checked',
  'hot leak checked',
]);

/** The step that a thing is ticked in, for what is done to it. */
function stepOf(plan: Plan, decision: Decision, thingId: string, what: DeedWhat): Step | null {
  const exact = plan.steps.filter((step) => step.thingId === thingId);
  if (exact.length === 1) return exact[0] ?? null;
  if (exact.length > 1) {
    const kind = what === 'filled' || what === 'cold leak checked' ? 'C1' : 'C2';
    return exact.find((step) => step.kind === kind) ?? exact[0] ?? null;
  }
  const removalId = removalOf(decision, thingId);
  const withHole = plan.steps.find(
    (step) =>
      step.kind !== 'T' &&
      step.fasteners.some((set) => set.holes.some((hole) => hole.positionId === thingId)),
  );
  return withHole ?? plan.steps.find((step) => step.kind === 'S' && step.removalId === removalId) ?? null;
}

function removalOf(decision: Decision, thingId: string): string | null {
  const { writer } = decision;
  if (writer.get('removal', thingId)) return thingId;
  const position = writer.get('position', thingId);
  const set = writer.get('fset', position?.setId ?? thingId);
  if (set) return set.removalId;
  for (const table of ['part', 'connection', 'temporary', 'mark', 'measure', 'isolation'] as const) {
    const row = writer.get(table, thingId) as { removalId: string | null } | null;
    if (row) return row.removalId;
  }
  return null;
}

function sentencesOf(findings: readonly { readonly sentence: string; readonly clears: string }[]): string {
  return findings.map((finding) => `${finding.sentence} ${finding.clears}`).join('\n');
}

/** Keys of the stop findings that hold a refused tick, in the fault's sentence order. */
function holding(plan: Plan, step: Step): Finding[] {
  const keys = new Set(step.stoppedBy);
  return plan.findings.filter((finding) => keys.has(finding.key) && finding.accepted === null);
}

/** Deeds after which nothing below can be mended without undoing them. */
const POINTS: ReadonlySet<DeedWhat> = new Set(['done', 'filled', 'bled', 'given back']);

/** Whether this tick ends the step: what is open below would be buried by it. */
function seals(step: Step, decision: Decision, thingIds: readonly string[], what: DeedWhat): boolean {
  if (POINTS.has(what)) return true;
  const ticked = new Set(thingIds);
  return step.missing.every((one) => {
    const setId = decision.writer.get('position', one.thingId)?.setId ?? '';
    const part = decision.writer.get('part', one.thingId);
    const whole =
      what === 'fitted' ? part?.removalId : what === one.what ? removalOf(decision, one.thingId) : null;
    return ticked.has(one.thingId) || (what === one.what && ticked.has(setId)) || ticked.has(whole ?? '');
  });
}

/**
 * A step with a stop finding underneath may not be ticked, unless each one is passed by name and with a reason. The
 * reason is kept with the digest of the finding, so that it opens again when the facts change.
 */
export function gateCheck(
  decision: Decision,
  thingIds: readonly string[],
  what: DeedWhat,
  accept: readonly { readonly finding: string; readonly why: string }[],
): Result<null> {
  if (CLEARS.has(what)) return ok(null);
  const plan = planJob(decision.state, decision.at);
  const reasons = new Map(accept.map((one) => [one.finding, one.why]));
  const open = new Map<string, StandingPoint>();
  for (const id of thingIds) {
    const step = stepOf(plan, decision, id, what);
    if (!step || step.state === 'done') continue;
    const buried = seals(step, decision, thingIds, what)
      ? buriedBy(decision.state, decision.at, plan, step)
      : [];
    for (const finding of [...holding(plan, step), ...buried]) {
      const why = reasons.get(finding.key);
      if (why === undefined) open.set(finding.key, pointOf(finding, step));
      else acceptFinding(decision, finding, why);
    }
  }
  if (open.size === 0) return ok(null);
  const points = [...open.values()];
  return refuse('refused', `Stopped.\n${sentencesOf(points)}`, points);
}

function pointOf({ key, sentence, clears, stepId }: Finding, step: Step): StandingPoint {
  return { key, sentence, clears, stepId, coveredBy: step.id };
}

/** An open point of the job, or one that ticking `stepId` would bury and that the plan does not name before. */
export function findingOf(decision: Decision, key: string, stepId: string | null): Finding | null {
  const plan = planJob(decision.state, decision.at);
  const named = plan.findings.find((finding) => finding.key === key);
  if (named) return named;
  const step = plan.steps.find((one) => one.id === stepId);
  const buried = step ? buriedBy(decision.state, decision.at, plan, step) : [];
  return buried.find((finding) => finding.key === key) ?? null;
}

/** Keeps who passed an open point and why. */
export function acceptFinding(decision: Decision, finding: Finding, why: string): void {
  const row: Row<'accepted'> = {
    id: decision.newId(),
    jobId: decision.jobId,
    finding: finding.key,
    digest: finding.digest,
    why,
    personId: decision.personId,
    at: decision.at,
  };
  decision.writer.put('accepted', row);
}

/** A sentence when a done step covers the thing, so that it cannot have come off before that one; else null. */
export function coveredBy(decision: Decision, thingId: string): string | null {
  const plan = planJob(decision.state, decision.at);
  const step = stepOf(plan, decision, thingId, 'came off again');
  if (!step) return null;
  // Holes that hold more than one part have a step of their own, and come out with the removal they belong to.
  const sets = new Set(decision.state.fset.filter((set) => set.removalId === thingId).map((set) => set.id));
  const holes = new Set(
    decision.state.position.filter((hole) => sets.has(hole.setId)).map((hole) => hole.id),
  );
  const own = new Set([
    step.id,
    ...plan.steps.filter((one) => one.kind === 'F' && holes.has(one.thingId)).map((one) => one.id),
  ]);
  const above = plan.edges
    .filter((edge) => own.has(edge.from) && edge.covers && !own.has(edge.to))
    .map((edge) => plan.steps.find((one) => one.id === edge.to))
    .find((one) => one?.state === 'done');
  return above
    ? `First take off ${above.title || `step ${above.number ?? ''}`}: it is back, and covers this.`
    : null;
}
