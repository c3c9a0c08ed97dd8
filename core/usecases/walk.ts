import { ok, type Result } from '../model/result.ts';
import type { JobState } from '../model/tables.ts';
import { type Plan, planJob, toolPlan, walked } from '../reinstall/index.ts';
import type { Walk } from '../store/local.ts';
import type { Context } from './frame.ts';
import { jobState } from './views.ts';

/** The reinstall list in the order in which this job is put back, or in the one asked for. `now` in UTC ms. */
export function walkedPlan(
  context: Context,
  state: JobState,
  now: number,
  by: Walk = context.workshop.walk(state.job.id),
): Plan {
  const plan = planJob(state, now);
  return by === 'tools' ? walked(plan, toolPlan(state, now).order) : plan;
}

/** Chooses the order in which a job is put back. No change of the record: it says nothing of the machine. */
export function planWalk(context: Context, jobId: string, by: Walk): Result<{ said: string }> {
  const state = jobState(context, jobId);
  if (!state.ok) return state;
  context.workshop.local?.keepWalk(jobId, by);
  if (by === 'list') return ok({ said: 'Put back goes by the list again.' });
  const { changes, listed, exact } = toolPlan(state.value, context.workshop.now());
  const sure = exact ? 'there is no order with fewer' : 'by a rule of thumb, there may be fewer';
  return ok({
    said: `Put back goes by tools: ${changes} ${changes === 1 ? 'change' : 'changes'} instead of ${listed}, ${sure}.`,
  });
}
