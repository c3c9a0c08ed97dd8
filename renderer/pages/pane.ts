import type { LinePaneProps } from '../frame/LinePane.tsx';
import { type OpenJob, undo } from '../data/job.ts';
import { journal } from '../data/journal.ts';
import { navKeys } from '../data/keys.ts';
import { remember, type ScreenName } from '../data/remember.ts';
import { cancelPhotos, progressOf, uploads } from '../data/upload.ts';
import type { LineData } from '../../core/drawing/line/types.ts';
import { countsOf, lineOf } from '../model/line.ts';
import { windowText } from '../texts/window.ts';
import type { StatusProps } from '../ui/Status.tsx';

/** On the way back a removal or gate on the line leads to its step. */
function pickStep(job: OpenJob, id: string): void {
  const { steps, gates } = job.view.plan;
  const gate = gates.find((one) => one.id === id);
  const step = steps.find((one) => one.removalId === id && (one.kind === 'S' || one.kind === 'I'));
  const stepId = gate ? (gate.stepId ?? 'list') : step?.id;
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

/** The status line: a refusal, photos on their way in, what is not saved yet. `job`: whose photos may be taken back. */
export function useStatus(job: OpenJob | null = null): StatusProps {
  const { refusal, pending, connected } = journal();
  const { now, ended } = uploads();
  // Only while it is the last thing done: Undo would take back something else.
  const last = ended?.added === 0 || job?.view.history.undo === 'photo.add';
  const came = ended !== null && ended.jobId === job?.id && last ? ended : null;
  return {
    progress: now && { say: progressOf(now, Date.now()), onCancel: cancelPhotos },
    undo:
      came === null
        ? null
        : {
            say: came.say,
            onUndo: () => {
              uploads.getState().forget();
              if (job !== null && came.added > 0) undo(job.id);
            },
          },
    refusal: refusal ?? (connected ? null : windowText.noAnswer),
    unsaved: pending.length,
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
