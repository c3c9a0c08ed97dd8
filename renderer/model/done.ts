import type { JobView } from '../../core/contract/views.ts';
import { doneOf, passedOf, sayDone, thingsDone } from '../../core/model/done.ts';
import { done as say } from '../texts/done.ts';
import { clock, day } from './time.ts';

type Step = JobView['plan']['steps'][number];

const when = (at: number, now: number): string => `${day(at, now)}, ${clock(at)}`;

/** Everything that was done in a step: when, by whom, what, with what was read. */
export function doneLines(view: JobView, step: Step, now: number): string[] {
  return doneOf(view.state, thingsDone(step)).map((one) => say.line(when(one.at, now), one.by, sayDone(one)));
}

interface Passed {
  /** The step that it lay on; null where none has it any more. */
  readonly stepId: string | null;
  readonly sentence: string;
  /** "9 October, 14:05, Edda Mross: the pump is kept as it is" */
  readonly about: string;
}

/** Open points that were passed by name, with who, when and why; of one step, or of the whole job. */
export function passedLines(view: JobView, stepId: string | null, now: number): Passed[] {
  const { findings, gates } = view.plan;
  const at = new Map(findings.map((one) => [one.key, one]));
  return passedOf(view.state).flatMap((one) => {
    const finding = at.get(one.finding);
    const gate = gates.find((known) => known.passedBy.some((by) => by.finding === one.finding));
    const own = finding?.stepId ?? null;
    if (stepId !== null && own !== stepId && gate?.stepId !== stepId) return [];
    return {
      stepId: own ?? gate?.stepId ?? null,
      sentence: finding?.sentence ?? '',
      about: say.line(when(one.at, now), one.by, one.why),
    };
  });
}

/** "back 9 October, Ana": who ended a step that is done, and on which day. */
export function backWords(view: JobView, step: Step, now: number): string {
  const last = doneOf(view.state, thingsDone(step)).at(-1);
  return last === undefined ? '' : say.back(day(last.at, now), last.by);
}
