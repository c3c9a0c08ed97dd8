import type { DeedWhat } from '../../core/model/work.ts';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { remember } from '../data/remember.ts';
import type { PlanStep } from '../model/putback.ts';
import { putback as say } from '../texts/putback.ts';
import type { AskProps } from '../ui/AskDialog.tsx';

/** Ticks things; the refusal of a gate comes back as a sentence in the status line. */
export function tick(
  job: OpenJob,
  thingIds: readonly string[],
  what: DeedWhat,
  valueTyped = '',
): Promise<unknown> {
  return send(job.id, (command) =>
    client.tick.do({
      command,
      jobId: job.id,
      thingIds: [...thingIds],
      what,
      ...(valueTyped === '' ? {} : { valueTyped, known: 'read' as const }),
    }),
  );
}

const FLUID_DONE: Partial<Record<PlanStep['kind'], readonly DeedWhat[]>> = {
  C1: ['cold leak checked'],
  C2: ['bled', 'hot leak checked'],
};

/** What "it is back" means for each kind of step. */
async function finish(job: OpenJob, step: PlanStep): Promise<void> {
  const missing = new Set(step.missing.map((one) => one.what));
  for (const one of step.missing) if (one.what === 'taken out') await tick(job, [one.thingId], 'taken out');
  if (step.kind === 'I') await tick(job, [step.thingId], 'given back');
  else if (FLUID_DONE[step.kind]) {
    for (const what of FLUID_DONE[step.kind] ?? [])
      if (missing.has(what as 'bled')) await tick(job, [step.thingId], what);
  } else if (step.kind === 'T' || step.kind === 'F')
    await tick(
      job,
      step.fasteners.flatMap((set) => set.holes.map((hole) => hole.positionId)),
      'tightened',
    );
  else if (step.kind === 'B') await tick(job, [step.thingId], 'fitted');
  else await tick(job, [step.thingId], 'done');
}

type ActionCode = PlanStep['actions'][number]['code'];

const DEEDS: Partial<Record<ActionCode, DeedWhat>> = {
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
  'carry over': 'fitted',
};

/** The deed that ticks an action; null where it is done with its step. "fill" and "measure" ask for a value first. */
function deedOf(code: ActionCode): DeedWhat | null {
  return DEEDS[code] ?? null;
}

export type Ask = Omit<AskProps, 'onClose'>;

/** Why it came off again: asked, and kept with the second round. */
export function againAsk(job: OpenJob, thingId: string): Ask {
  return {
    title: say.againTitle,
    label: say.againAsk,
    example: say.againExample,
    go: say.againGo,
    onAnswer: (why) =>
      void send(job.id, (command) => client.tick.again({ command, jobId: job.id, thingId, why })),
  };
}

/** One hole set to a state by hand; "out" takes it off again. */
export function setHole(job: OpenJob, holeId: string, state: string): void {
  if (state === 'out')
    void send(job.id, (command) => client.tick.again({ command, jobId: job.id, thingId: holeId, why: '' }));
  else void tick(job, [holeId], state as DeedWhat);
}

function amountAsk(job: OpenJob, fluidId: string): Ask {
  const name = job.view.state.fluid.find((fluid) => fluid.id === fluidId)?.name ?? '';
  return {
    title: say.amountTitle(name),
    label: say.amountAsk,
    example: say.amountExample,
    go: say.amountGo,
    onAnswer: (text) => void tick(job, [fluidId], 'filled', text),
  };
}

function measureAsk(job: OpenJob, measureId: string): Ask {
  const what = job.view.state.measure.find((one) => one.id === measureId)?.what ?? '';
  return {
    title: say.measureTitle(what),
    label: say.measureAsk,
    example: say.measureExample,
    go: say.measureGo,
    onAnswer: (text) => void tick(job, [measureId], 'measured', text),
  };
}

/** What the large key and the boxes of a step do. What needs a value asks for it first. */
export function stepWork(job: OpenJob, step: PlanStep, setAsk: (ask: Ask) => void) {
  const holeIds = step.fasteners.flatMap((set) => set.holes.map((hole) => hole.positionId));
  const go = (what: 'started' | 'tightened' | 'done') => {
    const unmeasured = step.missing.find((one) => one.what === 'measured');
    if (what !== 'done') {
      if (holeIds.length > 0) void tick(job, step.kind === 'S' ? [step.thingId] : holeIds, what);
    } else if (step.missing.some((one) => one.what === 'filled')) setAsk(amountAsk(job, step.thingId));
    else if (unmeasured) setAsk(measureAsk(job, unmeasured.thingId));
    else void finish(job, step).then(() => remember.getState().go({ stepId: null }));
  };
  const onAction = (id: string, done: boolean) => {
    const action = step.actions[Number(id)];
    if (!action || !done) return;
    const first = action.thingIds[0] ?? '';
    const what = deedOf(action.code);
    if (action.code === 'fill') setAsk(amountAsk(job, first));
    else if (action.code === 'measure') setAsk(measureAsk(job, first));
    else if (what !== null) void tick(job, action.thingIds, what);
  };
  return { go, onAction };
}
