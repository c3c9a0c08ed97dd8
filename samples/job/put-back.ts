import { type Plan, planJob, type Step, type StepAction } from '../../core/reinstall/index.ts';
import type { DeedWhat } from '../../core/model/work.ts';
import { type Bench, must } from './bench.ts';
import type { Crew } from './take-apart.ts';

const DEEDS: Partial<Record<StepAction['code'], DeedWhat>> = {
  'put in': 'put in',
  'take out': 'taken out',
  fit: 'fitted',
  renew: 'fitted',
  'carry over': 'fitted',
  'put on': 'put on',
  join: 'joined',
  start: 'started',
  tighten: 'tightened',
  'final tighten': 'tightened',
  measure: 'measured',
  fill: 'filled',
  'leak check cold': 'cold leak checked',
  'prime and bleed': 'bled',
  'leak check hot': 'hot leak checked',
  'give back': 'given back',
  'own step': 'done',
};

/** What was read, in the story: by the first words of the step's title or of what is ticked. */
function valueOf(bench: Bench, step: Step, action: StepAction): string | null {
  if (action.code === 'measure') return '0.14 mm';
  if (action.code === 'fill')
    return bench.state().fluid.find((one) => one.id === step.thingId)?.name === 'gear oil'
      ? '0.8 l'
      : '0.25 l';
  if (action.code !== 'tighten' && action.code !== 'final tighten') return null;
  const set = step.fasteners.find((one) =>
    one.holes.some((hole) => action.thingIds.includes(hole.positionId)),
  );
  return set && set.torqueNm !== null ? `${set.torqueNm} N·m` : null;
}

async function act(bench: Bench, who: Crew, step: Step, action: StepAction): Promise<void> {
  const what = DEEDS[action.code];
  if (what === undefined || action.done) return;
  const ids = action.thingIds.filter((id) => what !== 'started' || !isConnection(bench, id));
  if (ids.length === 0) return;
  const valueTyped = valueOf(bench, step, action);
  const fresh = what === 'started' ? ids.filter((id) => NEW_HOLES.has(holeName(bench, id))) : [];
  if (fresh.length > 0 && fresh.length < ids.length) {
    for (const id of fresh)
      must(await bench.client.tick.do({ ...bench.base(), thingIds: [id], what, fresh: true }));
    return act(bench, who, step, { ...action, thingIds: ids.filter((id) => !fresh.includes(id)) });
  }
  must(
    await bench.client.tick.do({
      ...bench.base(),
      thingIds: ids,
      what,
      ...(action.code === 'renew' ? { fresh: true } : {}),
      ...(valueTyped === null ? {} : { valueTyped, known: 'read' as const, toolId: who.wrench }),
    }),
  );
}

/** Holes of the gear cover that get a new bolt: one was stripped, one was not there. */
const NEW_HOLES: ReadonlySet<string> = new Set(['gear cover bolts 4', 'gear cover bolts 11']);

function holeName(bench: Bench, id: string): string {
  const hole = bench.state().position.find((one) => one.id === id);
  return `${bench.state().fset.find((one) => one.id === hole?.setId)?.name ?? ''} ${hole?.n ?? ''}`;
}

const isConnection = (bench: Bench, id: string): boolean =>
  bench.state().connection.some((one) => one.id === id);

/** What is new for this step comes in. */
async function receive(bench: Bench, step: Step): Promise<void> {
  for (const lack of step.lacks)
    if (lack.code === 'to get' || lack.code === 'short')
      must(
        await bench.client.piece.receive({
          ...bench.base(),
          thingId: lack.thingId,
          qty: Math.max(1, lack.qty),
          stowId: null,
        }),
      );
}

/** One step from beginning to end, in the order in which it says its actions. */
async function doStep(bench: Bench, who: Crew, step: Step): Promise<void> {
  await receive(bench, step);
  for (const action of step.actions) await act(bench, who, step, action);
  const after = planJob(bench.state(), bench.clock.now()).steps.find((one) => one.id === step.id);
  if (after && after.state !== 'done')
    must(await bench.client.tick.do({ ...bench.base(), thingIds: [step.thingId], what: 'done' }));
}

/** An open point that Edda passes by name: the reason is part of the story. */
const PASSED: Readonly<Record<string, string>> = {
  'fluid.amount': 'The level stands in the middle of the sight glass: the new cover takes less oil.',
};

async function pass(bench: Bench, findings: Plan['findings']): Promise<boolean> {
  const point = findings.find((one) => one.severity === 'stop' && !one.accepted && one.code in PASSED);
  if (!point) return false;
  const why = PASSED[point.code] ?? '';
  must(await bench.client.finding.accept({ ...bench.base(), finding: point.key, why }));
  return true;
}

/** What it waits for only has to be fetched. */
const mayGet = (step: Step): boolean =>
  step.lacks.every((lack) => lack.code === 'to get' || lack.code === 'short');

/**
 * Puts back what is ready, in the order of the list, until nothing is left or the step with this title is the next
 * one. `times`: when a morning begins, each with the title of the step that is done first then.
 */
export async function putBack(
  bench: Bench,
  who: Crew,
  times: Readonly<Record<string, string>>,
  until?: string,
): Promise<void> {
  for (;;) {
    const plan = planJob(bench.state(), bench.clock.now());
    const open = plan.steps.filter((step) => step.state !== 'done' && step.kind !== 'K');
    const next = open.find((step) => step.state === 'ready' || (step.state === 'waiting' && mayGet(step)));
    if (next && next.title === until) return;
    if (next) {
      const at = times[next.title];
      if (at !== undefined) bench.clock.set(at);
      await doStep(bench, who, next);
    } else if (!(await pass(bench, plan.findings))) {
      if (open.length === 0) return;
      const points = plan.findings.filter((one) => one.severity === 'stop').map((one) => one.sentence);
      throw new Error(`Stuck at ${open[0]?.title ?? ''}: ${open[0]?.why ?? ''} ${points.join(' ')}`);
    }
  }
}
