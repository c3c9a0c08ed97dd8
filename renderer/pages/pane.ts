import type { LinePaneProps } from '../frame/LinePane.tsx';
import type { OpenJob } from '../data/job.ts';
import { journal } from '../data/journal.ts';
import { navKeys } from '../data/keys.ts';
import { remember, type ScreenName } from '../data/remember.ts';
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

/** The status line: a refusal, what is not saved yet. */
export function useStatus(): StatusProps {
  const { refusal, pending, connected } = journal();
  return {
    refusal: refusal ?? (connected ? null : windowText.noAnswer),
    unsaved: pending.length,
    onClose: () => journal.getState().refuse(null),
  };
}

/** Picks a removal on the line: on the way out it becomes the one at hand, on the way back its step does. */
export function pickRemoval(id: string): void {
  remember.getState().go({ removalId: id });
}
