import { roundFigures, torqueFigure } from '../drawing/joint.ts';
import type { Gate as LineGate, LineItem } from '../drawing/line/types.ts';
import { ok, type Result, refuse } from '../model/result.ts';
import type { JobState } from '../model/tables.ts';
import type { PicturePool } from '../photos/pool.ts';
import type { SheetBox, SheetData, SheetGate, SheetPoint, SheetStep } from '../record/sheet-data.ts';
import { putBackSheet } from '../record/sheet.ts';
import { words } from '../record/words.ts';
import type { Walk } from '../store/local.ts';
import type { Plan, Step } from '../reinstall/index.ts';
import type { Context } from './frame.ts';
import { logOrder } from './log/order.ts';
import { sheetSets } from './sheet-holes.ts';
import { photoOfStep, pictureOf } from './sheet-photo.ts';
import { jobState, piecesByRemoval } from './views.ts';
import { walkedPlan } from './walk.ts';

export interface SheetInput {
  readonly jobId: string;
  /** Ids of steps, or their numbers in the list from 1; null: all that is left. */
  readonly steps: readonly (string | number)[] | null;
  /** Photos as lines, to save ink. */
  readonly light: boolean;
  /** Left out: the order in which the job is put back. */
  readonly order?: Walk | undefined;
}

/** The put-back sheet of a job as a PDF. Reads only; the pictures for paper are kept with the other renditions. */
export async function sheetPdf(
  context: Context,
  pool: PicturePool,
  input: SheetInput,
): Promise<Result<Buffer>> {
  const found = jobState(context, input.jobId);
  if (!found.ok) return found;
  const state = found.value;
  const now = context.workshop.now();
  const plan = walkedPlan(context, state, now, input.order);
  const chosen = stepsOf(plan, input.steps);
  if (!chosen.ok) return chosen;
  const steps: SheetStep[] = [];
  for (const step of chosen.value) {
    const photo = photoOfStep(state, step);
    const picture =
      photo === null ? null : await pictureOf(context.workshop.dir, pool, step, photo, input.light);
    steps.push({
      ...sheetStep(state, plan, step),
      photo: picture,
      noPhoto: photo === null ? words.noPhoto : words.photoGone,
      rounds: roundFigures(step, photo?.order ?? null),
      sets: sheetSets(state, step, picture === null ? [] : (photo?.order?.order ?? [])),
    });
  }
  const last = input.steps === null ? plan.gates.find((gate) => gate.stepId === null) : undefined;
  const data: SheetData = {
    job: state.job.title,
    machine: state.job.machine,
    owner: state.person.find((person) => person.id === state.job.ownerId)?.name ?? '',
    date: dateOf(now),
    line: { direction: 'back', items: lineItems(state, plan), atId: chosen.value[0]?.removalId ?? null },
    steps,
    last: last === undefined ? null : sheetGate(plan, last),
  };
  return ok(await putBackSheet(data));
}

/** "25 November 2026 at 14:05", by this computer's clock as on the screens. */
function dateOf(now: number): string {
  return new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeStyle: 'short' }).format(now);
}

function stepsOf(plan: Plan, wanted: SheetInput['steps']): Result<readonly Step[]> {
  if (wanted === null) return ok(plan.steps.filter((step) => step.state !== 'done' && step.kind !== 'K'));
  const chosen: Step[] = [];
  for (const one of wanted) {
    const step = plan.steps.find((known, i) => known.id === one || i + 1 === one);
    if (!step)
      return refuse(
        'not-found',
        `Expected a step of the reinstall list, from 1 to ${plan.steps.length}, got ${one}.`,
      );
    chosen.push(step);
  }
  return ok(chosen);
}

const pointOf = ({ severity, sentence, clears }: Plan['findings'][number]): SheetPoint => ({
  grave: severity === 'stop' ? 'stop' : 'warn',
  sentence,
  clears,
});

function sheetGate(plan: Plan, gate: Plan['gates'][number]): SheetGate {
  const holding = new Set(gate.holding);
  return {
    title: words.gates[gate.kind],
    points: plan.findings.filter((one) => holding.has(one.key)).map(pointOf),
    notYet: gate.stepId === null ? [] : gate.notYet.map((one) => one.sentence),
  };
}

const WRITTEN: ReadonlySet<Step['actions'][number]['code']> = new Set(['measure', 'fill']);

/** Actions that are not in the table of holes, before and after the tightening. */
function boxesOf(step: Step): { readonly before: SheetBox[]; readonly after: SheetBox[] } {
  const holes = new Set(step.fasteners.flatMap((set) => set.holes.map((hole) => hole.positionId)));
  const inTable = (ids: readonly string[]) => ids.length > 0 && ids.every((id) => holes.has(id));
  const tightens = step.actions.findIndex(
    ({ code, thingIds }) => ['tighten', 'snug', 'final tighten'].includes(code) && inTable(thingIds),
  );
  const boxes = step.actions.map((action, i) => ({
    late: tightens >= 0 && i > tightens,
    shown: action.code !== 'caution' && !(inTable(action.thingIds) && action.code !== 'check hole'),
    box: { text: action.sentence, done: action.done, write: WRITTEN.has(action.code) },
  }));
  const pick = (late: boolean) => boxes.filter((one) => one.shown && one.late === late).map((one) => one.box);
  return { before: pick(false), after: pick(true) };
}

function figureOf(state: JobState, step: Step): SheetStep['figure'] {
  const set = step.fasteners.find((one) => one.torqueNm !== null);
  if (set && set.torqueNm !== null) return torqueFigure(set, set.torqueNm);
  const fluid = state.fluid.find((one) => one.id === step.thingId);
  const ml = fluid?.capacityMl ?? fluid?.drainedMl ?? null;
  if (ml === null || step.kind !== 'C1') return null;
  const value = new Intl.NumberFormat('en-GB', { maximumFractionDigits: 2 }).format(ml / 1000);
  return { value, unit: words.litre, other: fluid?.capacityMl ? words.holds : words.cameOut };
}

/** By whose figure, and on what kind of thread. */
function aboutOf(state: JobState, step: Step): string {
  const sets = new Set(step.fasteners.map((set) => set.setId));
  const said = state.fset
    .filter((row) => sets.has(row.id))
    .flatMap((row) => [
      row.torqueFrom === 'maker' ? words.makersFigure(row.torquePage) : '',
      row.torqueFrom === 'reference' ? words.referenceFigure : '',
      row.lubrication === 'unknown' ? '' : words.thread(row.lubrication),
    ]);
  return [...new Set(said)].filter((text) => text !== '').join(' ');
}

function sheetStep(
  state: JobState,
  plan: Plan,
  step: Step,
): Omit<SheetStep, 'photo' | 'noPhoto' | 'rounds' | 'sets'> {
  const gate = plan.gates.find((one) => one.stepId === step.id);
  const holding = new Set(gate?.holding);
  const own = new Set(step.findings);
  const points = plan.findings.filter(
    (one) => own.has(one.key) && !holding.has(one.key) && one.severity !== 'note' && one.accepted === null,
  );
  return {
    id: step.id,
    removalId: step.removalId,
    number: step.number,
    title: step.title || words.untitled(step.number ?? 0),
    place: words.step(plan.steps.indexOf(step) + 1, plan.steps.length),
    why: step.state === 'done' ? '' : step.why,
    figure: figureOf(state, step),
    gate: gate === undefined ? null : sheetGate(plan, gate),
    points: points.map(pointOf),
    cautions: step.cautions,
    notes: step.notes,
    ...boxesOf(step),
    about: aboutOf(state, step),
  };
}

/** Removals that are back: what was put back is done, or all that they made safe is given back. */
function backOn(plan: Plan): ReadonlySet<string | null> {
  const open = new Set(
    plan.steps
      .filter((step) => (step.kind === 'S' || step.kind === 'I') && step.state !== 'done')
      .map((step) => step.removalId),
  );
  return new Set(plan.steps.map((step) => step.removalId).filter((id) => id !== null && !open.has(id)));
}

/** The depth line: removals in the order of the log; a check stands below the notch that comes next on the way up. */
function lineItems(state: JobState, plan: Plan): LineItem[] {
  const pieces = piecesByRemoval(state);
  const back = backOn(plan);
  const checks = new Map<string, LineGate[]>();
  for (const gate of plan.gates) {
    const at = plan.steps.findIndex((step) => step.id === gate.stepId);
    const next = at < 0 ? undefined : plan.steps.slice(at).find((step) => step.kind === 'S');
    const place = next?.removalId ?? '';
    const here = checks.get(place) ?? [];
    const passed = plan.steps[at]?.state === 'done';
    const title = words.gates[gate.kind];
    if (!here.some((one) => one.title === title))
      here.push({ kind: 'gate', id: gate.id, title, passed, note: '' });
    checks.set(place, here);
  }
  const removals = logOrder(state.removal).flatMap((removal, i): LineItem[] => [
    {
      kind: 'removal',
      id: removal.id,
      number: i + 1,
      title: removal.title,
      pieces: pieces.get(removal.id) ?? 0,
      did: removal.did,
      back: back.has(removal.id),
      place: removal.place,
      note: '',
    },
    ...(checks.get(removal.id) ?? []),
  ]);
  return [...(checks.get('') ?? []), ...removals];
}
