import type { JobState } from '../../model/tables.ts';
import type { Context } from '../../usecases/frame.ts';
import { type Answer, type Client, jobIdOf, type Options, refusal, writing } from '../frame.ts';

type InJob = (job: {
  id: string;
  state: () => JobState;
  client: Client;
  context: Context;
}) => Promise<Answer> | Answer;

/** Opens for writing and finds the job named. */
export function inJob(options: Options, run: InJob): Promise<Answer> {
  return writing(options, (context, client) => {
    const job = jobIdOf(context, options.flags['job']);
    if (!job.ok) return refusal(job.fault);
    const id = job.value;
    return run({ id, client, context, state: () => context.workshop.job(id) as JobState });
  });
}

/** The words of an option; undefined where it was not given. */
export const text = (options: Options, name: string): string | undefined => {
  const value = options.flags[name];
  return typeof value === 'string' ? value : undefined;
};

/** Milliseconds for --at: a time as ISO 8601, or nothing for now. */
export function timeOf(options: Options): { at?: number } | null {
  const typed = text(options, 'at');
  if (typed === undefined) return {};
  const ms = Date.parse(typed);
  return Number.isNaN(ms) ? null : { at: ms };
}

/** What is said to a --at that is no time. */
export const BAD_TIME = 'Expected --at as a time such as 2026-11-25T14:02Z.';
