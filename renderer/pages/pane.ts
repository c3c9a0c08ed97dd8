import type { LinePaneProps } from '../frame/LinePane.tsx';
import { type OpenJob, undo } from '../data/job.ts';
import { journal } from '../data/journal.ts';
import { navKeys } from '../data/keys.ts';
import { remember, type ScreenName } from '../data/remember.ts';
import { cancelPhotos, progressOf, uploads } from '../data/upload.ts';
import type { LineData } from '../line/types.ts';
import { countsOf, lineOf } from '../model/line.ts';
import { windowText } from '../texts/window.ts';
import type { StatusProps } from '../ui/Status.tsx';

/** The left edge of a job's screen. */
export function paneOf(
  job: OpenJob,
  screen: ScreenName,
  direction: LineData['direction'],
  atId: string | null,
  onPick: (id: string) => void,
): LinePaneProps {
  return {
    job: job.view.state.job.title,
    counts: countsOf(job.view, direction, job.ahead.length),
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

/** Picks a removal on the line: on the way out it becomes the one at hand, on the way back its step does. */
export function pickRemoval(id: string): void {
  remember.getState().go({ removalId: id });
}
