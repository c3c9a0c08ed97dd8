import type { LinePaneProps } from '../frame/LinePane.tsx';
import { type OpenJob, redo, undo } from '../data/job.ts';
import { journal } from '../data/journal.ts';
import { navKeys } from '../data/keys.ts';
import { remember, type ScreenName } from '../data/remember.ts';
import { cancelPhotos, progressOf, type Uploads, uploads } from '../data/upload.ts';
import type { LineData } from '../../core/drawing/line/types.ts';
import { isPassed, seenGate } from '../model/gates.ts';
import { countsOf, lineOf } from '../model/line.ts';
import { windowText } from '../texts/window.ts';
import type { StatusProps, StatusTurn } from '../ui/Status.tsx';
import { common } from '../texts/common.ts';

/** On the way back a removal or gate on the line leads to its step. */
function pickStep(job: OpenJob, id: string): void {
  const { steps, gates } = job.view.plan;
  const gate = gates.find((one) => one.id === id);
  const step = steps.find((one) => one.removalId === id && (one.kind === 'S' || one.kind === 'I'));
  // A check that nothing holds is looked at where there is something to see: who passed what and why, what was counted.
  const free = gate !== undefined && gate.holding.length === 0;
  const seen = free && (gate.kind === 'closing' || gate.passedBy.length > 0 || isPassed(job.view, gate));
  const stepId = seen ? seenGate(gate.id) : gate ? (gate.stepId ?? 'list') : step?.id;
  // A removal without a step (given up, only planned) is read where it was logged.
  const place = remember.getState();
  if (stepId === undefined) place.go({ screen: 'removal', removalId: id });
  else place.go({ screen: 'putback', stepId });
}

function timeLeftOf({ view }: OpenJob): string {
  return view.timeLeft.known ? windowText.timeLeft(view.timeLeft.short) : '';
}

/** The left edge of a job's screen. Without `onPick` the line leads to the steps of the way back. */
export function paneOf(
  job: OpenJob,
  screen: ScreenName,
  direction: LineData['direction'],
  atId: string | null,
  onPick: (id: string) => void = (id) => pickStep(job, id),
): LinePaneProps {
  return {
    job: job.view.state.job.title,
    counts: countsOf(job.view, direction, job.ahead.length),
    timeLeft: direction === 'back' ? timeLeftOf(job) : '',
    line: lineOf(job.view, { direction, atId, now: job.now }, job.ahead),
    nav: navKeys(screen),
    onPick,
  };
}

/** Photos that came last, while nothing was done after them: Undo would take back something else. */
function photosTurn(job: OpenJob | null, ended: Uploads['ended']): StatusTurn | null {
  const last = ended?.added === 0 || job?.view.history.undo === 'photo.add';
  if (ended === null || ended.jobId !== job?.id || !last) return null;
  return {
    say: ended.say,
    label: common.undo,
    onTurn: () => {
      uploads.getState().forget();
      if (ended.added > 0) undo(ended.jobId);
    },
  };
}

/** What was done last on this screen, to be taken back or done again; `hasUndo`: the screen has its own Undo. */
function lastTurn(job: OpenJob | null, hasUndo: boolean): StatusTurn | null {
  if (job === null) return null;
  const { history } = job.view;
  if (history.redo !== null)
    return { say: common.takenBack, label: common.again, onTurn: () => redo(job.id) };
  if (hasUndo || history.undo === null) return null;
  return { say: common.written, label: common.undo, onTurn: () => undo(job.id) };
}

/**
 * The status line: a refusal, photos on their way in, what is not saved yet, the last thing done. `job`: whose deeds may
 * be taken back or done again, once something was done here; `hasUndo`: the screen has an Undo of its own.
 */
export function useStatus(job: OpenJob | null = null, hasUndo = false): StatusProps {
  const { refusal, pending, connected, doneOn } = journal();
  const here = remember((place) => place.screen);
  const { now, ended } = uploads();
  return {
    progress: now && { say: progressOf(now, Date.now()), onCancel: cancelPhotos },
    turn: photosTurn(job, ended) ?? (doneOn === here ? lastTurn(job, hasUndo) : null),
    refusal: refusal ?? (connected ? null : windowText.noAnswer),
    unsaved: pending.filter((one) => one.seq === null || one.removal !== null).length,
    onClose: () => journal.getState().refuse(null),
  };
}

/** The left edge of a screen that serves both ways: the line as the work stands. */
export function sidePane(job: OpenJob, screen: ScreenName): LinePaneProps {
  return job.view.plan.depth.back > 0
    ? paneOf(job, screen, 'back', null)
    : paneOf(job, screen, 'apart', null, (removalId) =>
        remember.getState().go({ screen: 'removal', removalId }),
      );
}

/** Picks a removal on the line while things come off: it becomes the one at hand. */
export function pickRemoval(id: string): void {
  remember.getState().go({ removalId: id });
}
