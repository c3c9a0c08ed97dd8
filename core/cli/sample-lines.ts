import { planJob } from '../reinstall/index.ts';
import { sampleState } from '../usecases/sample.ts';
import { planLines } from './plan-text.ts';

/** The way back of the sample job, half put back, with its open points: what the program is for, in plain text. */
export function sampleLines(): string[] {
  const state = sampleState('half-back');
  const last = Math.max(...state.deed.map((deed) => deed.at), ...state.counting.map((one) => one.at));
  return [
    `${state.job.title}: ${state.job.machine}`,
    'The way back, in order ([x] done, [ ] ready, [.] something else first, [w] waits, [!] stopped):',
    ...planLines(planJob(state, last)),
    '',
  ];
}
