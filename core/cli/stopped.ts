import type { StandingPoint } from '../model/result.ts';
import type { JobState } from '../model/tables.ts';
import { planJob } from '../reinstall/index.ts';

/** More points than these are told by their steps. */
const FEW = 4;
/** More steps than these are counted. */
const MOST = 8;

/** What holds a tick, in few lines: the steps where something is open, how much, and what comes first there. */
export function stoppedLines(
  state: JobState,
  now: number,
  points: readonly StandingPoint[],
): readonly string[] | null {
  if (points.length <= FEW) return null;
  const steps = planJob(state, now).steps;
  const order = new Map(steps.map((step, i) => [step.id, i]));
  const groups = new Map<string, StandingPoint[]>();
  for (const point of points) {
    const id = point.stepId ?? '';
    groups.set(id, [...(groups.get(id) ?? []), point]);
  }
  const sorted = [...groups].sort(([a], [b]) => (order.get(a) ?? -1) - (order.get(b) ?? -1));
  const line = ([id, own]: [string, StandingPoint[]]) => {
    const step = steps[order.get(id) ?? -1];
    const name = step ? `${step.number ?? ''} ${step.title}`.trim() : 'No step';
    const more = own.length > 1 ? ` And ${own.length - 1} more there.` : '';
    const said = own[0]?.sentence ?? '';
    // The sentence begins with the title where the step has one.
    const first = step && said.startsWith(`${step.title}: `) ? said.slice(step.title.length + 2) : said;
    return `  ${name}: ${first} ${own[0]?.clears ?? ''}${more}`;
  };
  const rest = sorted.length - MOST;
  return [
    `Stopped: ${points.length} open points in ${sorted.length} ${sorted.length === 1 ? 'step' : 'steps'} come first.`,
    ...sorted.slice(0, MOST).map(line),
    ...(rest > 0 ? [`  And ${rest} more ${rest === 1 ? 'step' : 'steps'}: see reinstall.`] : []),
    'If some may stay so: accept POINT --why REASON; reinstall names each in [ ], and --json all of these.',
  ];
}
