import { useEffect, useState } from 'react';
import { type OpenJob, undo } from '../data/job.ts';
import { remember } from '../data/remember.ts';
import { goOf, type PlanStep, stepAt, stepData, stopsOf } from '../model/putback.ts';
import { PutBackScreen } from '../screens/putback/PutBackScreen.tsx';
import type { HoleData } from '../screens/putback/types.ts';
import { putback as say } from '../texts/putback.ts';
import { AskDialog } from '../ui/AskDialog.tsx';
import { AheadPage } from './AheadPage.tsx';
import { GatePage } from './GatePage.tsx';
import { paneOf, useStatus } from './pane.ts';
import { type Ask, againAsk, setHole, stepWork, tick } from './putback-deeds.ts';

/** The step of a removal picked on the line. */
function pickStep(job: OpenJob, removalId: string): void {
  const step = job.view.plan.steps.find(
    (one) => one.removalId === removalId && (one.kind === 'S' || one.kind === 'I'),
  );
  if (step) remember.getState().go({ stepId: step.id });
}

/** S, T and Enter do what the large key says; not while something is typed. */
function useStepKeys(step: PlanStep | null, go: (what: 'started' | 'tightened' | 'done') => void): void {
  useEffect(() => {
    if (!step) return;
    const onKey = (event: KeyboardEvent) => {
      const { target } = event;
      const busy =
        target instanceof HTMLInputElement ||
        target instanceof HTMLTextAreaElement ||
        document.querySelector('[role=dialog]');
      if (busy || event.ctrlKey || event.altKey || event.metaKey) return;
      if (event.key.toLowerCase() === 's') go('started');
      else if (event.key.toLowerCase() === 't') go('tightened');
      else if (event.key === 'Enter' && !(target instanceof HTMLButtonElement)) go(goOf(step).what);
      else return;
      event.preventDefault();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  });
}

/** One hole opened for an exception or a reading. */
function holeData(step: PlanStep, id: string | null, reading: string): HoleData | null {
  for (const set of step.fasteners)
    for (const hole of set.holes)
      if (hole.positionId === id)
        return {
          id: hole.positionId,
          name: set.name === '' ? say.holeName(hole.n) : say.holeOf(set.name, hole.n),
          state: hole.mark === 'later' ? 'started' : hole.mark,
          options: Object.entries(say.holeStates).map(([value, label]) => ({ value, label })),
          reading,
          refused: null,
        };
  return null;
}

/** The way back: the step at hand, or the whole list where nothing is at hand. */
export function PutBackPage({ job }: { readonly job: OpenJob }) {
  const stepId = remember((place) => place.stepId);
  const step = stepAt(job.view, stepId);
  const list = stepId === 'list' || !step;
  if (list) return <AheadPage job={job} />;
  if (step.state === 'held' && stopsOf(job.view, step).length > 0) return <GatePage job={job} step={step} />;
  return <StepPage key={step.id} job={job} step={step} />;
}

function StepPage({ job, step }: { readonly job: OpenJob; readonly step: PlanStep }) {
  const status = useStatus();
  const [holeId, setHoleId] = useState<string | null>(null);
  const [reading, setReading] = useState('');
  const [ask, setAsk] = useState<Ask | null>(null);
  const work = stepWork(job, step, setAsk);
  useStepKeys(step, work.go);
  const keepReading = () => {
    if (holeId === null || reading.trim() === '') return;
    void tick(job, [holeId], 'tightened', /[a-z]/i.test(reading) ? reading : `${reading} N·m`);
    setReading('');
  };
  return (
    <>
      <PutBackScreen
        pane={paneOf(job, 'putback', 'back', step.removalId, (id) => pickStep(job, id))}
        status={status}
        step={stepData(job.view, step, job.now)}
        atMarkId={holeId}
        hole={holeData(step, holeId, reading)}
        canUndo={job.view.history.undo !== null}
        onGo={() => work.go(goOf(step).what)}
        onUndo={() => undo(job.id)}
        onCameOff={() => setAsk(againAsk(job, step.thingId))}
        onPickMark={(id) => {
          setHoleId(id);
          setReading('');
        }}
        onMoveMark={() => {}}
        onHole={(state) => holeId !== null && setHole(job, holeId, state)}
        onReading={setReading}
        onKeepReading={keepReading}
        onCloseHole={() => setHoleId(null)}
        onAction={work.onAction}
        onList={() => remember.getState().go({ stepId: 'list' })}
      />
      {ask && <AskDialog {...ask} onClose={() => setAsk(null)} />}
    </>
  );
}
