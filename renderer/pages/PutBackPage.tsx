import { useEffect, useState } from 'react';
import type { StandingPoint } from '../../core/model/result.ts';
import { useDraft } from '../data/draft.ts';
import { type OpenJob, undo } from '../data/job.ts';
import { keyIsTaken, pressesSomething, usePlainKeys } from '../data/keys.ts';
import { openHandbook } from '../data/handbook.ts';
import { remember } from '../data/remember.ts';
import { gateSeen, stopsAt } from '../model/gates.ts';
import { torqueOpening } from '../model/handbook/fill.ts';
import { type AllShown, jointOf } from '../model/joint.ts';
import { matesOf } from '../model/mates.ts';
import { goOf, type PlanStep, stepAt, stepData } from '../model/putback.ts';
import { tickedAhead } from '../model/ticked-ahead.ts';
import { freshInHand, thingAtHand } from '../model/thing-at-hand.ts';
import { PutBackScreen } from '../screens/putback/PutBackScreen.tsx';
import { AskDialog } from '../ui/AskDialog.tsx';
import { TellDialog } from '../ui/TellDialog.tsx';
import { needAsks } from '../model/ahead.ts';
import { NeedAsks } from './AheadMore.tsx';
import { AheadPage } from './AheadPage.tsx';
import { GatePage } from './GatePage.tsx';
import { GateSeenPage } from './GateSeenPage.tsx';
import { paneOf, useStatus } from './pane.ts';
import { type Ask, againAsk, stepWork } from './putback-deeds.ts';
import { SheetDialog } from './SheetDialog.tsx';
import { useRoundDeeds } from './use-round-deeds.ts';
import { useMarks } from './use-marks.ts';

/** A mark or round that was touched by a pointer lets go of the focus: the next Space is for the next hole, not for it. */
function useTouchedLetsGo(): void {
  useEffect(() => {
    const onClick = (event: MouseEvent) => {
      if (event.detail === 0 || !(event.target instanceof Element)) return;
      const touched = event.target.closest('.putback-photo button, .putback-rounds button');
      if (touched instanceof HTMLElement) touched.blur();
    };
    window.addEventListener('click', onClick);
    return () => window.removeEventListener('click', onClick);
  }, []);
}

/** The questions beside the way back. */
const LEAD_ON = {
  r: () => remember.getState().go({ screen: 'reach' }),
  d: () => remember.getState().go({ screen: 'days' }),
};

/** Space takes the lit hole through its round; S, T and Enter do what the large key says; not while something is typed. */
function useStepKeys(
  step: PlanStep,
  go: (what: 'started' | 'tightened' | 'done') => void,
  advance: (() => void) | null,
  onwards: (() => void) | null,
): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (keyIsTaken(event)) return;
      if (event.key === 'Enter' && onwards !== null) onwards();
      else if (event.key.toLowerCase() === 's') go('started');
      else if (event.key.toLowerCase() === 't') go('tightened');
      else if (event.key === ' ' && advance !== null && !pressesSomething(event.target)) advance();
      // Once all are tight Enter ends the step; until then it goes on to the next hole, as Space does.
      else if (event.key === 'Enter' && advance !== null && goOf(step).what !== 'done') advance();
      // The large key has another letter until then; on a step that waits, Enter is too easily meant for something else.
      else if (event.key === 'Enter' && goOf(step).what === 'done' && step.state !== 'done') go('done');
      else return;
      event.preventDefault();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  });
  usePlainKeys(LEAD_ON);
  useTouchedLetsGo();
}

/** The way back: the step at hand, or the whole list where nothing is at hand. */
export function PutBackPage({ job }: { readonly job: OpenJob }) {
  const stepId = remember((place) => place.stepId);
  const gate = gateSeen(job.view, stepId);
  if (gate !== null) return <GateSeenPage job={job} gate={gate} onOn={() => goOn(job)} />;
  const at = stepId === 'list' ? null : stepAt(job.view, stepId);
  const step = at && tickedAhead(at, job.ticks);
  return step === null ? <AheadPage job={job} /> : <StepOrGate key={step.id} job={job} step={step} />;
}

interface Stopped {
  readonly points: readonly StandingPoint[];
  /** Does again what was refused. */
  readonly again: () => void;
}

/** A step, behind its gate while something holds it or a tick of it was refused. */
function StepOrGate({ job, step }: { readonly job: OpenJob; readonly step: PlanStep }) {
  const stops = step.state === 'held' ? stopsAt(job.view, step.id) : [];
  const [stopped, setStopped] = useState<Stopped | null>(null);
  const [atGate, setAtGate] = useState(false);
  const [printing, setPrinting] = useState(false);
  // Answered here, while the reading may still hold them: a pass right after the answer must not lead back.
  const [through, setThrough] = useState<readonly string[]>([]);
  if (stops.length === 0 && through.length > 0) setThrough([]);
  // The gate stays until it is passed, with what was answered in sight.
  if (!atGate && stops.some((stop) => !through.includes(stop.key))) setAtGate(true);
  if (stopped !== null) {
    const pass = () => {
      setStopped(null);
      stopped.again();
    };
    return <GatePage key="tick" job={job} stepId={step.id} facts={stopped.points} onPass={pass} />;
  }
  if (atGate) {
    const pass = () => {
      setThrough(stops.map((stop) => stop.key));
      setAtGate(false);
    };
    return <GatePage job={job} stepId={step.id} facts={stops} onPass={pass} />;
  }
  return (
    <>
      <StepPage
        job={job}
        step={step}
        onStop={(points, again) => setStopped({ points, again })}
        onPrint={() => setPrinting(true)}
      />
      {printing && (
        <SheetDialog
          job={job}
          step={job.view.plan.steps.findIndex((one) => one.id === step.id) + 1}
          onClose={() => setPrinting(false)}
        />
      )}
    </>
  );
}

const readShown = (kept: string): AllShown => (kept === 'yes' || kept === 'no' ? kept : '');

/** To the first step that can be worked on, else to the whole list. */
function goOn(job: OpenJob): void {
  remember.getState().go({ stepId: stepAt(job.view, null)?.id ?? 'list' });
}

interface StepPageProps {
  readonly job: OpenJob;
  readonly step: PlanStep;
  readonly onStop: (points: readonly StandingPoint[], again: () => void) => void;
  readonly onPrint: () => void;
}

/** A mark is dragged by what it stands for; on another photo the same thing has a mark of its own. */
function moveMark(
  marks: ReturnType<typeof useMarks>,
  photoId: string | undefined,
  thingId: string,
  to: { x: number; y: number },
): void {
  const marker = marks.markers.find((one) => one.photoId === photoId && one.thingId === thingId);
  if (marker) marks.change(marker.id, to);
}

/** Keeps what was read on the wrench for the hole at hand; an empty line keeps nothing. */
function keepTyped(
  keep: (id: string, reading: string) => void,
  atId: string | null,
  [reading, setReading]: readonly [string, (text: string) => void],
): void {
  if (atId === null || reading.trim() === '') return;
  keep(atId, reading.trim());
  setReading('');
}

/** The way to where the torque comes from; null where there is nothing to ask. */
function torqueOf(job: OpenJob, step: PlanStep): { question: string; onAsk: () => void } | null {
  const opening = torqueOpening(job.view, step);
  return opening && { question: opening.question, onAsk: () => openHandbook(opening) };
}

function StepPage({ job, step, onStop, onPrint }: StepPageProps) {
  const status = useStatus(job, true);
  const found = remember((place) => place.found);
  const [atId, setAtId] = useState<string | null>(null);
  const [reading, setReading] = useDraft(`reading/${atId ?? step.id}`);
  const [ask, setAsk] = useState<Ask | null>(null);
  const [photoId, setPhotoId] = useState<string | null>(null);
  const [allShown, setAllShown] = useDraft(`${step.id}/all shown`);
  const marks = useMarks(job, step.removalId, photoId);
  const joint = jointOf(job.view, step, {
    photoId,
    markers: marks.markers,
    things: marks.things,
    allShown: readShown(allShown),
  });
  const work = stepWork(job, step, setAsk, onStop);
  const rounds = useRoundDeeds(job, joint, step, onStop, work.closing);
  // A step that is done leads on to the next one at hand.
  const onwards = step.state === 'done' ? () => goOn(job) : null;
  useStepKeys(step, work.go, rounds.advance, onwards);
  const mates = matesOf(job.view, step, joint.photo?.id ?? null, marks.markers, marks.things);
  // A touch on the lit hole takes it through its round; any other hole is opened.
  const pick = (id: string) => {
    // A mate of another step is only shown here.
    if (mates.marks.some((mark) => mark.id === id)) return;
    if (id === joint.nextId && rounds.advance !== null && atId === null) rounds.advance();
    else setAtId(id);
  };
  return (
    <>
      <PutBackScreen
        pane={paneOf(job, 'putback', 'back', step.removalId)}
        status={status}
        mates={mates}
        step={stepData(job.view, step, joint, job.now, found?.thingId ?? null)}
        found={found?.text ?? null}
        asks={<NeedAsks job={job} asks={needAsks(job.view, step.id)} />}
        atMarkId={atId ?? joint.nextId}
        hole={atId === null ? null : thingAtHand(step, marks.things, atId, reading, freshInHand(job.view))}
        canUndo={job.view.history.undo !== null}
        onGo={onwards ?? (() => work.go(goOf(step).what))}
        onUndo={() => undo(job.id)}
        onCameOff={() => setAsk(againAsk(job, step.thingId))}
        onPickMark={pick}
        onMoveMark={(thingId, x, y) => moveMark(marks, joint.photo?.id, thingId, { x, y })}
        onHole={(state) => atId !== null && work.setThing(atId, state)}
        onReading={setReading}
        onKeepReading={() => keepTyped(work.keepReading, atId, [reading, setReading])}
        onCloseHole={() => setAtId(null)}
        onAction={work.onAction}
        onAnswer={work.answer}
        onPrint={onPrint}
        onList={() => remember.getState().go({ stepId: 'list' })}
        torque={torqueOf(job, step)}
        onNextPhoto={() => setPhotoId(joint.photos[joint.number % joint.photos.length]?.id ?? null)}
        onRound={rounds.toRound}
        onAdvance={rounds.advance}
        onAllShown={setAllShown}
      />
      <Asked ask={ask} onClose={() => setAsk(null)} />
    </>
  );
}

function Asked({ ask, onClose }: { readonly ask: Ask | null; readonly onClose: () => void }) {
  if (ask === null) return null;
  return ask.kind === 'text' ? (
    <AskDialog {...ask} onClose={onClose} />
  ) : (
    <TellDialog {...ask} onClose={onClose} />
  );
}
