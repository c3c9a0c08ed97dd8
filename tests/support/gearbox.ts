import { planJob } from '../../core/reinstall/index.ts';
import { clientOf, command, logJob, stateOf } from './client.ts';
import { newWorkshop } from './workshop.ts';

/** A small gearbox on a bench: a guard over a cover over a gear, with everything that can go wrong. */
export async function gearbox(lines: readonly string[]) {
  const workshop = newWorkshop();
  const jobId = await logJob(workshop, 'Gearbox', lines);
  const client = clientOf(workshop);
  const base = () => ({ ...command(), jobId });
  return {
    workshop,
    jobId,
    client,
    base,
    state: () => stateOf(workshop, jobId),
    plan: () => planJob(stateOf(workshop, jobId), workshop.now()),
  };
}

/** Codes of the open points of one severity that nobody passed. */
export const codes = (plan: ReturnType<typeof planJob>, severity = 'stop') =>
  plan.findings.filter((one) => one.severity === severity && one.accepted === null).map((one) => one.code);
