import type { StandingPoint } from '../../core/model/result.ts';
import type { Row } from '../../core/model/tables.ts';
import type { DeedWhat } from '../../core/model/work.ts';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { remember } from '../data/remember.ts';
import { DEED_OF, type PlanStep } from '../model/putback.ts';
import { NEW_ONE } from '../model/thing-at-hand.ts';
import { putback as say } from '../texts/putback.ts';
import type { AskProps } from '../ui/AskDialog.tsx';
import type { TellProps } from '../ui/TellDialog.tsx';

/** Takes the open points that a tick would cover. */
type OnStopped = (points: readonly StandingPoint[]) => void;

/** Ticks things; what a gate holds goes to `onStopped`, any other refusal is said in the status line. */
function tick(
  job: OpenJob,
  thingIds: readonly string[],
  what: DeedWhat,
  onStopped: OnStopped,
  valueTyped = '',
): Promise<unknown> {
  const value = valueTyped === '' ? {} : { valueTyped, known: 'read' as const };
  return send(
    job.id,
    (command) => client.tick.do({ command, jobId: job.id, thingIds: [...thingIds], what, ...value }),
    { onStopped, tick: { thingIds, what } },
  );
}

const FLUID_DONE: Partial<Record<PlanStep['kind'], readonly DeedWhat[]>> = {
  C1: ['cold leak checked'],
  C2: ['bled', 'hot leak checked'],
};

/** What "it is back" means for each kind of step; true once all of it is kept. */
async function finish(job: OpenJob, step: PlanStep, onStopped: OnStopped): Promise<boolean> {
  const missing = new Set(step.missing.map((one) => one.what));
  const did = async (ids: readonly string[], what: DeedWhat) =>
    (await tick(job, ids, what, onStopped)) !== null;
  switch (step.kind) {
    case 'I':
      return did([step.thingId], 'given back');
    case 'C1':
    case 'C2':
      for (const what of FLUID_DONE[step.kind] ?? [])
        if (missing.has(what as 'bled') && !(await did([step.thingId], what))) return false;
      return true;
    case 'T':
    case 'F':
      return did(
        step.fasteners.flatMap((set) => set.holes.map((hole) => hole.positionId)),
        'tightened',
      );
    case 'B':
      return did([step.thingId], 'fitted');
    default:
      return did([step.thingId], 'done');
  }
}

/** Answers an open point on the spot: a hole that was found empty is to be filled, or stays as it was. */
export function answerPoint(job: OpenJob, key: string, answer: string): void {
  const finding = job.view.plan.findings.find((one) => one.key === key);
  const id = finding?.subjects[0];
  if (finding?.code !== 'hole.empty' || id === undefined) return;
  const values =
    answer === 'fill'
      ? { fate: 'fill', fateWhy: say.emptyFill }
      : { fate: 'leave out', fateWhy: say.emptyLeave };
  void send(job.id, (command) =>
    client.record.change({ command, jobId: job.id, table: 'position', id, values }),
  );
}

/** A question before a deed: for a line of text, or only for a yes. */
export type Ask =
  | ({ readonly kind: 'text' } & Omit<AskProps, 'onClose'>)
  | ({ readonly kind: 'yes' } & Omit<TellProps, 'onClose'>);

/** Why it came off again: asked, and kept with the second round. */
export function againAsk(job: OpenJob, thingId: string): Ask {
  return {
    kind: 'text',
    draft: `${thingId}/again`,
    title: say.againTitle,
    label: say.againAsk,
    example: say.againExample,
    go: say.againGo,
    onAnswer: (why) =>
      void send(job.id, (command) => client.tick.again({ command, jobId: job.id, thingId, why })),
  };
}

/** What broke or was spoilt is scrapped, and another one short; stuck, its hole waits for a repair. */
function brokeAsk(job: OpenJob, thingId: string, stuck: boolean): Ask {
  return {
    kind: 'text',
    draft: `${thingId}/broke`,
    title: stuck ? say.brokeTitle : say.spoiltTitle,
    label: say.brokeAsk,
    example: stuck ? say.brokeExample : say.spoiltExample,
    go: stuck ? say.brokeGo : say.spoiltGo,
    onAnswer: (why) =>
      void send(job.id, (command) => client.tick.broke({ command, jobId: job.id, thingId, stuck, why })),
  };
}

/** What is left out needs its reason: the next person would look for it. */
function leftOutAsk(job: OpenJob, thingId: string): Ask {
  return {
    kind: 'text',
    draft: `${thingId}/left out`,
    title: say.leftOutTitle,
    label: say.leftOutAsk,
    example: say.leftOutExample,
    go: say.leftOutGo,
    onAnswer: (why) =>
      void send(job.id, (command) =>
        client.tick.do({ command, jobId: job.id, thingIds: [thingId], what: 'left out', why }),
      ),
  };
}

function amountAsk(job: OpenJob, fluidId: string, onAnswer: (text: string) => void): Ask {
  const name = job.view.state.fluid.find((fluid) => fluid.id === fluidId)?.name ?? '';
  return {
    kind: 'text',
    draft: `${fluidId}/amount`,
    title: say.amountTitle(name),
    label: say.amountAsk,
    example: say.amountExample,
    go: say.amountGo,
    onAnswer,
  };
}

function measureAsk(job: OpenJob, measureId: string, onAnswer: (text: string) => void): Ask {
  const what = job.view.state.measure.find((one) => one.id === measureId)?.what ?? '';
  return {
    kind: 'text',
    draft: `${measureId}/measure`,
    title: say.measureTitle(what),
    label: say.measureAsk,
    example: say.measureExample,
    go: say.measureGo,
    onAnswer,
  };
}

/** What was put in for the work is looked at and counted before it is said to be out. */
function outAsk(inside: readonly Row<'temporary'>[], onOut: (ids: readonly string[]) => void): Ask {
  return {
    kind: 'yes',
    title: say.outTitle,
    lines: inside.map((one) => one.name),
    say: say.outSay,
    go: say.outGo,
    onYes: () => onOut(inside.map((one) => one.id)),
  };
}

/** A new piece goes in; the old one that is in comes out first. */
function newOne(
  job: OpenJob,
  step: PlanStep,
  thingId: string,
  onStop: (points: readonly StandingPoint[], again: () => void) => void,
): void {
  const hole = step.fasteners.flatMap((set) => set.holes).find((one) => one.positionId === thingId);
  const put = async () => {
    if (hole !== undefined && hole.mark !== 'out' && hole.mark !== 'left out') {
      const why = say.newOneIn;
      const out = await send(job.id, (command) =>
        client.tick.again({ command, jobId: job.id, thingId, why }),
      );
      if (out === null) return;
    }
    await send(
      job.id,
      (command) =>
        client.tick.do({ command, jobId: job.id, thingIds: [thingId], what: 'started', fresh: true }),
      { onStopped: (points) => onStop(points, () => void put()) },
    );
  };
  void put();
}

/** What the keys, boxes and marks of a step do. What needs a value or a look asks first; what a gate holds goes there. */
export function stepWork(
  job: OpenJob,
  step: PlanStep,
  setAsk: (ask: Ask) => void,
  onStop: (points: readonly StandingPoint[], again: () => void) => void,
) {
  const holeIds = step.fasteners.flatMap((set) => set.holes.map((hole) => hole.positionId));
  const guarded = (run: (onStopped: OnStopped) => Promise<unknown>): void => {
    void run((points) => onStop(points, () => guarded(run)));
  };
  const ticks = (ids: readonly string[], what: DeedWhat, value = '') =>
    guarded((onStopped) => tick(job, ids, what, onStopped, value));
  const end = () =>
    guarded(async (onStopped) => {
      if (await finish(job, step, onStopped)) remember.getState().go({ stepId: null });
    });

  const lacking = (deed: PlanStep['missing'][number]['what']) =>
    step.missing.filter((one) => one.what === deed).map((one) => one.thingId);
  const stillIn = job.view.state.temporary.filter((one) => lacking('taken out').includes(one.id));
  const askOut = (inside: typeof stillIn) => setAsk(outAsk(inside, (ids) => ticks(ids, 'taken out')));
  /** What closes an opening asks first for the rags and caps in it: once its bolts are in, nobody sees them. */
  const closing = (run: () => void): void => {
    const blocking = stillIn.filter((one) => one.role === 'blocks');
    if (blocking.length > 0) askOut(blocking);
    else run();
  };

  const go = (what: 'started' | 'tightened' | 'done') => {
    const [unmeasured] = lacking('measured');
    if (what !== 'done') {
      if (holeIds.length > 0) closing(() => ticks(step.kind === 'S' ? [step.thingId] : holeIds, what));
    } else if (stillIn.length > 0) askOut(stillIn);
    else if (lacking('filled').length > 0)
      setAsk(amountAsk(job, step.thingId, (text) => ticks([step.thingId], 'filled', text)));
    else if (unmeasured) setAsk(measureAsk(job, unmeasured, (text) => ticks([unmeasured], 'measured', text)));
    else end();
  };
  const onAction = (id: string, done: boolean) => {
    const action = step.actions[Number(id)];
    if (!action || !done) return;
    const first = action.thingIds[0] ?? '';
    const what = DEED_OF[action.code];
    if (action.code === 'fill') setAsk(amountAsk(job, first, (text) => ticks([first], 'filled', text)));
    else if (action.code === 'measure')
      setAsk(measureAsk(job, first, (text) => ticks([first], 'measured', text)));
    else if (what !== undefined) ticks(action.thingIds, what);
  };
  /** One thing set to a state by hand; "out" takes it off again. */
  const setThing = (thingId: string, state: string) => {
    if (state === 'out')
      void send(job.id, (command) => client.tick.again({ command, jobId: job.id, thingId, why: '' }));
    else if (state === NEW_ONE) newOne(job, step, thingId, onStop);
    else if (state === 'left out') setAsk(leftOutAsk(job, thingId));
    else if (state in say.brokeStates) setAsk(brokeAsk(job, thingId, state === 'broke off'));
    else ticks([thingId], state === 'in' ? 'put in' : (state as DeedWhat));
  };
  const answer = (key: string, said: string) => answerPoint(job, key, said);
  const keepReading = (holeId: string, typed: string) =>
    ticks([holeId], 'tightened', /[a-z]/i.test(typed) ? typed : `${typed} N·m`);
  return { go, closing, onAction, setThing, keepReading, answer };
}
