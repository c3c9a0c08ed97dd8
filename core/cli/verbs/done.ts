import { doneOf, passedOf, sayDone, thingsDone } from '../../model/done.ts';
import type { Row } from '../../model/tables.ts';
import { planJob } from '../../reinstall/index.ts';
import { momentOf } from '../day.ts';
import { fine, type Verb } from '../frame.ts';
import { ofJob } from './plan.ts';

const lead = (at: number, by: string, zone: string | null): string =>
  `${momentOf(at, zone)}${by === '' ? '' : `, ${by}`}`;

/** Who did what on the way back. It reads only. */
export const DONE_VERB: Verb = {
  name: 'done',
  usage: 'done [--job ID]',
  says: 'what was done on the way back, step by step: by whom, when, what was read, how much went in, and who passed which open point and why',
  options: ['job', 'at'],
  run: (options) =>
    ofJob(options, (state, now) => {
      const plan = planJob(state, now);
      // A hole that is tightened later belongs to two steps; each deed is told once, in the one it was done for.
      const [first, last] = [new Map<string, string>(), new Map<string, string>()];
      for (const step of plan.steps)
        for (const id of thingsDone(step)) {
          if (!first.has(id)) first.set(id, step.id);
          last.set(id, step.id);
        }
      const home = (deed: Row<'deed'>) =>
        (deed.what === 'tightened' || deed.what === 'paint-checked' ? last : first).get(deed.thingId);
      const steps = plan.steps
        .map((step) => ({
          number: step.number,
          title: step.title,
          state: step.state,
          done: doneOf(state, thingsDone(step), (deed) => home(deed) === step.id),
        }))
        .filter((step) => step.done.length > 0);
      const sentences = new Map(plan.findings.map((one) => [one.key, one.sentence]));
      const passed = passedOf(state).map((one) => ({
        ...one,
        sentence: sentences.get(one.finding) ?? one.finding,
      }));
      const { phase, zone } = state.job;
      const lines = [
        ...steps.flatMap((step) => [
          `${step.number ?? '·'} ${step.title} (${step.state})`,
          ...step.done.map((one) => `  ${lead(one.at, one.by, zone)}: ${sayDone(one)}`),
        ]),
        ...(passed.length > 0 ? ['Passed by name'] : []),
        ...passed.map((one) => `  ${lead(one.at, one.by, zone)}: ${one.why} (${one.sentence})`),
        phase === 'closed' ? 'The job is closed.' : 'The job is open.',
      ];
      return fine({ phase, steps, passed }, lines);
    }),
};
