import type { JobView } from '../../core/contract/views.ts';
import type { Gate } from '../../core/drawing/line/types.ts';
import { putback as say } from '../texts/putback.ts';
import type { Rich } from '../ui/rich.tsx';
import { clock, day, moment } from './time.ts';

type PlanGate = JobView['plan']['gates'][number];

/** An open point that stands at a gate, named by the plan or by a refused tick. */
export interface GateFact {
  readonly key: string;
  readonly sentence: string;
  readonly clears: string;
  /** The step that it lies on. */
  readonly stepId: string | null;
  /** The step whose tick would bury it, where the plan does not name the point before. */
  readonly coveredBy: string | null;
}

/** What a gate is called, by the step before which it stands; null is the one before the job is closed. */
export function gateTitle(view: JobView, stepId: string | null): string {
  const kind = view.plan.gates.find((gate) => gate.stepId === stepId)?.kind;
  return say.gates[kind ?? (stepId === null ? 'closing' : 'covering')];
}

/** The stops that hold a step, not passed yet. */
export function stopsAt(view: JobView, stepId: string): GateFact[] {
  const keys = new Set(view.plan.steps.find((step) => step.id === stepId)?.stoppedBy);
  return factsOf(view, (finding) => keys.has(finding.key));
}

/** The stops that hold the closing of the job. */
export function stopsOfJob(view: JobView): GateFact[] {
  return factsOf(view, (finding) => finding.severity === 'stop');
}

function factsOf(view: JobView, pick: (one: JobView['plan']['findings'][number]) => boolean): GateFact[] {
  return view.plan.findings
    .filter((one) => one.accepted === null && pick(one))
    .map(({ key, sentence, clears, stepId }) => ({ key, sentence, clears, stepId, coveredBy: null }));
}

/** Where a point is cleared: a bag to be searched, another step; null where it is cleared at hand. */
export function whereToClear(
  view: JobView,
  fact: GateFact,
  atStepId: string | null,
):
  | { readonly label: string; readonly stowId: string }
  | { readonly label: string; readonly stepId: string }
  | null {
  const finding = view.plan.findings.find((one) => one.key === fact.key);
  const search = view.searches.find((one) => finding?.subjects.includes(one.countingId));
  const stow = view.state.stow.find((one) => one.id === search?.stowId);
  if (stow) return { label: say.goToBag(`${stow.kind} ${stow.label}`), stowId: stow.id };
  if (fact.stepId === null || fact.stepId === atStepId) return null;
  const step = view.plan.steps.find((one) => one.id === fact.stepId);
  return step ? { label: say.goTo(step.title || say.untitled(step.number ?? 0)), stepId: step.id } : null;
}

export const pointSay = (fact: GateFact): Rich => [{ strong: fact.sentence }, ` ${fact.clears}`];

/** In place of a step: a check that was passed, to be looked at. */
export const seenGate = (gateId: string): string => `passed/${gateId}`;

/** The passed check at hand; null where a step is. */
export function gateSeen(view: JobView, at: string | null): PlanGate | null {
  return view.plan.gates.find((gate) => seenGate(gate.id) === at) ?? null;
}

/** Who passed which point of a check, when and why. */
export function passedPoints(
  view: JobView,
  gate: PlanGate,
  now: number,
): { readonly id: string; readonly sentence: string; readonly said: string }[] {
  const people = new Map(view.state.person.map((person) => [person.id, person.name]));
  const sentences = new Map(view.plan.findings.map((one) => [one.key, one.sentence]));
  return gate.passedBy.map((one) => ({
    id: one.finding,
    sentence: sentences.get(one.finding) ?? '',
    said: say.passedWhen(
      `${day(one.at, now)}, ${clock(one.at)}`,
      people.get(one.personId ?? '') ?? '',
      one.why,
    ),
  }));
}

export function isPassed(view: JobView, gate: PlanGate): boolean {
  if (gate.stepId === null) return view.state.job.phase === 'closed';
  return view.plan.steps.find((step) => step.id === gate.stepId)?.state === 'done';
}

/** What holds it, or who passed it. */
function noteOf(view: JobView, gate: PlanGate): string {
  if (gate.holding.length > 0) return say.gateHeld(gate.holding.length);
  const last = gate.passedBy.at(-1);
  if (last) {
    const who = view.state.person.find((person) => person.id === last.personId)?.name ?? '';
    return say.gatePassed(moment(last.at, Date.now()), who);
  }
  if (isPassed(view, gate)) return '';
  return gate.notYet.length > 0 ? say.gateFirst(gate.notYet.length) : say.gateFree;
}

/**
 * The gates by the removal under whose notch each is drawn ('' = above the first). A gate stands before its step, so it
 * is drawn just below the notch that comes next on the way up. Gates of one kind at one place are one bar.
 */
export function gatesByNotch(view: JobView, logIds: readonly string[]): Map<string, Gate[]> {
  const { steps, gates } = view.plan;
  const notch = new Map(logIds.map((id, i) => [id, i]));
  const places = new Map<string, Gate[]>();
  const first = Math.min(
    ...steps.map((step) => (step.kind === 'S' ? (notch.get(step.removalId ?? '') ?? 0) : Infinity)),
  );
  for (const gate of gates) {
    const at = steps.findIndex((step) => step.id === gate.stepId);
    const own = steps[at]?.removalId ?? '';
    const next =
      at < 0 ? undefined : steps.slice(at).find((step) => step.kind === 'S' && step.removalId !== null);
    const place = next?.removalId ?? ((notch.get(own) ?? Infinity) < first ? own : '');
    const here = places.get(place) ?? [];
    const title = say.gates[gate.kind];
    const item: Gate = {
      kind: 'gate',
      id: gate.id,
      title,
      passed: isPassed(view, gate),
      note: noteOf(view, gate),
    };
    const same = here.findIndex((one) => one.title === title);
    const old = here[same];
    // Two of one kind at one place: the one that is still to be passed says how it stands.
    if (!old) here.push(item);
    else if (old.passed || (gate.holding.length > 0 && !item.passed)) here[same] = item;
    places.set(place, here);
  }
  // The way back climbs the line: of several at one place the one that comes first is the lowest.
  const turn = new Map(gates.map((gate) => [gate.id, steps.findIndex((step) => step.id === gate.stepId)]));
  const turnOf = ({ id }: Gate) => ((turn.get(id) ?? -1) >= 0 ? (turn.get(id) ?? 0) : steps.length);
  for (const here of places.values()) here.sort((a, b) => turnOf(b) - turnOf(a));
  return places;
}
