import type { JobView } from '../../core/contract/views.ts';
import type { DeedWhat } from '../../core/model/work.ts';
import { torqueFigure } from '../../core/drawing/joint.ts';
import type { AheadGroup, AheadScreenProps } from '../screens/putback/AheadScreen.tsx';
import type { StepData } from '../screens/putback/types.ts';
import { lookedAt as sayLooked } from '../texts/looked-at.ts';
import { putback as say } from '../texts/putback.ts';
import type { PointData } from '../ui/Point.tsx';
import type { RowData } from '../ui/Rows.tsx';
import type { Rich } from '../ui/rich.tsx';
import { done as sayDone } from '../texts/done.ts';
import { backWords, doneLines, passedLines } from './done.ts';
import type { Joint } from './joint.ts';
import { lookedAt } from './looked-at.ts';
import { day } from './time.ts';

export type PlanStep = JobView['plan']['steps'][number];
export type PlanFinding = JobView['plan']['findings'][number];

/** The step remembered, else the first that can be worked on; null = nothing is left to do. */
export function stepAt(view: JobView, stepId: string | null): PlanStep | null {
  const { steps } = view.plan;
  return (
    steps.find((step) => step.id === stepId) ??
    steps.find((step) => step.state === 'ready') ??
    steps.find((step) => step.state !== 'done' && step.kind !== 'K') ??
    null
  );
}

/** An open point in the words of the screen. */
export function pointOf(finding: PlanFinding): PointData {
  return {
    id: finding.key,
    grave: finding.severity,
    say: [{ strong: finding.sentence }, ` ${finding.clears}`],
    ...(finding.code === 'hole.empty' ? { answers: say.emptyAnswers } : {}),
  };
}

/** The one number of the step: its torque with the other unit beside it, else what is filled in, else its holes. */
function figureOf(view: JobView, step: PlanStep): StepData['figure'] {
  const set = step.fasteners.find((one) => one.torqueNm !== null);
  if (set && set.torqueNm !== null) return torqueFigure(set, set.torqueNm);
  const fluid = view.state.fluid.find((one) => one.id === step.thingId);
  const ml = fluid?.capacityMl ?? fluid?.drainedMl ?? null;
  if (ml !== null && step.kind === 'C1')
    return { value: say.litres(ml), unit: say.litre, other: fluid?.capacityMl ? say.holds : say.cameOut };
  const holes = step.fasteners.reduce((sum, one) => sum + one.holes.length, 0);
  return holes > 0 ? { value: String(holes), unit: say.holes(holes), other: '' } : null;
}

/** What goes in without a turn: a key, circlip or pin is fitted, never tight. */
export function isPushedIn(step: PlanStep, holeId: string): boolean {
  const has = (code: PlanStep['actions'][number]['code']) =>
    step.actions.some((action) => action.code === code && action.thingIds.includes(holeId));
  return has('tighten') && !has('start') && !has('snug');
}

/** What the large key does now: start all by hand, tighten all, or say that the step is done. */
export function goOf(step: PlanStep): {
  what: 'started' | 'tightened' | 'done';
  label: string;
  hint: string;
} {
  const holes = step.fasteners.flatMap((set) => set.holes);
  const later = new Set(
    step.fasteners.filter((set) => set.laterWhen !== null && step.kind !== 'T').map((set) => set.setId),
  );
  const open = holes.filter((hole) => hole.mark === 'out');
  const pushed = holes.every((hole) => isPushedIn(step, hole.positionId));
  if (holes.length > 1 && open.length > 0 && !pushed)
    return { what: 'started', label: say.allStarted, hint: 'S' };
  const loose = step.fasteners
    .filter((set) => !later.has(set.setId))
    .flatMap((set) => set.holes)
    .filter((hole) => ['out', 'started', 'later'].includes(hole.mark));
  const tight = holes.length > 1 ? say.allTight : say.tight;
  const fitted = holes.length > 1 ? say.allFitted : say.oneFitted;
  if (holes.length > 0 && loose.length > 0)
    return { what: 'tightened', label: pushed ? fitted : tight, hint: 'T' };
  return { what: 'done', label: DONE[step.kind] ?? say.done, hint: 'Enter' };
}

const DONE: Partial<Record<PlanStep['kind'], string>> = {
  C1: say.filledDone,
  C2: say.bledDone,
  I: say.givenBack,
};

/** What is next, from where it is taken, by whose figure, on what kind of thread. */
function aboutOf(view: JobView, step: PlanStep, joint: Joint): Rich {
  const bags = new Set(step.fasteners.flatMap((set) => set.holes.map((hole) => hole.stowId)));
  const next = joint.marks.find((mark) => mark.id === joint.nextId);
  const rows = step.fasteners.flatMap((set) => view.state.fset.filter((row) => row.id === set.setId));
  const figures = rows.map((row) => say.figureFrom(row.torqueFrom, row.torquePage));
  const threads = rows.map((row) => (row.lubrication === 'unknown' ? '' : say.thread(row.lubrication)));
  const words = [
    ...view.state.stow
      .filter((stow) => bags.has(stow.id))
      .map((stow) => say.fromBag(`${stow.kind} ${stow.label}`)),
    ...new Set([...figures, ...threads].filter((word) => word !== '')),
  ].join(' ');
  return next ? [...say.next(next.text), words] : words;
}

/** What goes in beside the bolts: new parts, repaired holes, what was carried over. */
function fittedOf(view: JobView, step: PlanStep): string {
  const renew = new Set(step.renew);
  const holes = new Map(step.fasteners.flatMap((set) => set.holes.map((hole) => [hole.positionId, hole.n])));
  const repairs = view.state.deed.filter((deed) => deed.what === 'repaired' && holes.has(deed.thingId));
  return [
    ...view.state.part.filter((part) => renew.has(part.id)).map((part) => say.newOne(part.name)),
    ...repairs.map((deed) => say.repaired(holes.get(deed.thingId) ?? 0, deed.why)),
  ].join(' ');
}

function noteOf(view: JobView, step: PlanStep, now: number): StepData['noteBack'] {
  const removal = view.state.removal.find((one) => one.id === step.removalId);
  const text = step.notes.join(' ');
  if (text === '') return null;
  return { text, when: removal?.startedAt ? day(removal.startedAt, now) : '' };
}

type ActionCode = PlanStep['actions'][number]['code'];

/** The deed that ticks an action. What is not here is done with its step; "fill" and "measure" ask for a value first. */
export const DEED_OF: Partial<Record<ActionCode, DeedWhat>> = {
  'take out': 'taken out',
  'put in': 'put in',
  renew: 'fitted',
  fit: 'fitted',
  'put on': 'put on',
  join: 'joined',
  start: 'started',
  tighten: 'tightened',
  snug: 'started',
  'final tighten': 'tightened',
  'leak check cold': 'cold leak checked',
  'prime and bleed': 'bled',
  'leak check hot': 'hot leak checked',
  'give back': 'given back',
  'own step': 'done',
  recheck: 'done',
  'carry over': 'fitted',
  fill: 'filled',
  measure: 'measured',
};

function orderData(joint: Joint): StepData['order'] {
  if (joint.numbered) return { say: say.orderNumbered, markIds: joint.sequence, question: false };
  if (joint.order === null) return null;
  const around = joint.nextRound === 'once around';
  const markIds = joint.sequence.length > 0 ? joint.sequence : joint.order.order;
  return {
    say: around ? say.orderAround : say.orderSay[joint.order.layout],
    markIds,
    question: joint.question,
  };
}

/** "Hole 7: 30 %": the lit hole and the round that it goes through next. */
function advanceOf(joint: Joint): string {
  const mark = [...joint.marks, ...joint.beside].find((one) => one.id === joint.nextId);
  if (!mark) return '';
  return say.advance(mark.text, say.roundNames[joint.nextRound] ?? joint.nextRound);
}

/** The sets of a step by what they are, so that hole 1 of one is not taken for hole 1 of another. */
function setsOf(view: JobView, step: PlanStep): StepData['sets'] {
  if (step.fasteners.length < 2) return [];
  return step.fasteners.map(({ setId, name }) => {
    const spec = view.state.fset.find((set) => set.id === setId)?.specId ?? '';
    return { id: setId, name: [name, view.specNames[spec] ?? ''].filter((word) => word !== '').join(', ') };
  });
}

/** From a step that is done: on to the next one at hand, else to the whole list. */
function onwards(view: JobView): StepData['go'] {
  const next = stepAt(view, null);
  return { label: next === null ? sayDone.list : sayDone.next, hint: 'Enter', off: false };
}

/** Whether an action is done on the thing, or on a hole of the set, that a search led to. */
function isLit(view: JobView, thingIds: readonly string[], litId: string | null): boolean {
  if (litId === null) return false;
  const sets = new Map(view.state.position.map((hole) => [hole.id, hole.setId]));
  return thingIds.some((id) => id === litId || sets.get(id) === litId);
}

function actionsOf(view: JobView, step: PlanStep, litId: string | null): StepData['actions'] {
  return step.actions.map((action, i) => ({
    id: String(i),
    text: action.sentence,
    done: action.done,
    lit: isLit(view, action.thingIds, litId),
    more: action.done && action.code === 'fill' ? say.fillMore : '',
    ticks: DEED_OF[action.code] !== undefined,
    caution: i === 0 ? step.cautions.join(' ') : '',
  }));
}

/** The step at hand as the screen shows it. */
export function stepData(
  view: JobView,
  step: PlanStep,
  joint: Joint,
  now: number,
  litId: string | null = null,
): StepData {
  const { steps, findings } = view.plan;
  const go = goOf(step);
  const gate = view.plan.gates.find((one) => one.stepId === step.id);
  const own = new Set(step.findings);
  const points = findings.filter(
    (one) =>
      (own.has(one.key) || gate?.holding.includes(one.key)) &&
      one.severity !== 'note' &&
      one.accepted === null,
  );
  return {
    id: step.id,
    title: step.title || say.untitled(step.number ?? 0),
    number: steps.findIndex((one) => one.id === step.id) + 1,
    total: steps.length,
    state: step.state,
    byTools: view.walk === 'tools',
    stateWhy:
      step.state === 'waiting'
        ? step.lacks.map((lack) => lack.sentence)
        : [step.why].filter((why) => why !== ''),
    figure: figureOf(view, step),
    about: aboutOf(view, step, joint),
    noteBack: noteOf(view, step, now),
    fitted: fittedOf(view, step),
    actions: actionsOf(view, step, litId),
    gate:
      points.length > 0
        ? { title: gate ? say.gates[gate.kind] : say.openHere, points: points.map(pointOf) }
        : null,
    sets: setsOf(view, step),
    did: step.state === 'done' ? doneLines(view, step, now) : [],
    passed: passedLines(view, step.id, now).map((one) => sayDone.passed(one.sentence, one.about)),
    rounds: joint.rounds,
    order: orderData(joint),
    advance: advanceOf(joint),
    hint: joint.hint,
    marks: joint.marks,
    beside: joint.beside,
    shown: say.shown(joint.marks.filter((mark) => mark.kind === 'position').length, joint.beside.length),
    moves: joint.moves,
    photo: joint.photo,
    photoPlace: joint.photos.length > 1 ? { number: joint.number, total: joint.photos.length } : null,
    go: step.state === 'done' ? onwards(view) : { label: go.label, hint: go.hint, off: false },
  };
}

const GROUP: Record<PlanStep['state'], AheadGroup> = {
  ready: 'ready',
  waiting: 'waiting',
  behind: 'behind',
  held: 'held',
  done: 'done',
};

function rowOf(view: JobView, step: PlanStep, now: number): RowData {
  const holes = step.fasteners.reduce((sum, set) => sum + set.holes.length, 0);
  return {
    id: step.id,
    mark: step.number === null ? '' : String(step.number),
    name: step.title || say.untitled(step.number ?? 0),
    count: holes > 0 ? holes : '',
    about: step.state === 'done' ? backWords(view, step, now) : step.why,
    grave: view.plan.findings.some(
      (one) => one.stepId === step.id && one.severity === 'stop' && one.accepted === null,
    ),
  };
}

/** The whole way back in groups, and the open points. */
export function aheadData(
  view: JobView,
  now: number,
): Pick<AheadScreenProps, 'ahead' | 'groups' | 'points' | 'next' | 'close' | 'lookedAt'> {
  const { steps, findings, ahead, later } = view.plan;
  const groups: { group: AheadGroup; rows: RowData[] }[] = [];
  for (const group of ['ready', 'held', 'waiting', 'behind', 'done'] as const) {
    const rows = steps.filter((step) => GROUP[step.state] === group).map((step) => rowOf(view, step, now));
    if (rows.length > 0) groups.push({ group, rows });
    if (group === 'ready' && later.length > 0)
      groups.push({
        group: 'later',
        rows: later.map((one) => ({
          id: one.stepId,
          mark: '',
          name: steps.find((step) => step.id === one.stepId)?.title ?? '',
          count: one.holesLeft,
          about: one.due ? say.dueNow : one.when,
          grave: one.due,
        })),
      });
  }
  const passed = passedLines(view, null, now);
  if (passed.length > 0)
    groups.push({
      group: 'passed',
      rows: passed.map((one, i) => ({
        id: `${one.stepId ?? 'list'}#${i}`,
        mark: '',
        name: one.sentence,
        count: '',
        about: one.about,
      })),
    });
  const next = stepAt(view, null);
  const open = steps.some((step) => step.kind !== 'K' && step.state !== 'done');
  const isHeld = findings.some((one) => one.severity === 'stop' && one.accepted === null);
  return {
    close: steps.length === 0 || open ? null : view.state.job.phase === 'open' ? 'open' : 'closed',
    lookedAt: steps.length === 0 || open ? [] : [...(isHeld ? [] : [sayLooked.free]), ...lookedAt(view)],
    ahead: ahead.size,
    groups,
    points: findings.filter((one) => one.severity !== 'note' && one.accepted === null).map(pointOf),
    next: next && next.state === 'ready' ? { label: next.title || say.untitled(next.number ?? 0) } : null,
  };
}
