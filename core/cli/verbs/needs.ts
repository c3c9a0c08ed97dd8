import { v7 } from 'uuid';
import type { JobState } from '../../model/tables.ts';
import {
  type AssumedNeed,
  assumedNeeds,
  loosened,
  type NeedSuggestion,
  planJob,
  suggestionsOf,
} from '../../reinstall/index.ts';
import { logOrder } from '../../usecases/log/order.ts';
import {
  type Answer,
  fine,
  jobIdOf,
  ofReply,
  type Options,
  refusal,
  type Verb,
  wrongUsage,
  writing,
} from '../frame.ts';
import { targetOf } from '../target.ts';
import { text } from './in-job.ts';
import { ofJob } from './plan.ts';

const WHY_NONE =
  'No need looks as if it were none. One is doubted only where both removals have a place or side written down, these differ, and the two share nothing: write “left”, “front” or the like behind what came off, and ask again.';

function needs(options: Options): Promise<Answer> {
  return ofJob(options, (state, now) => {
    const steps = planJob(state, now).steps;
    const suggested = suggestionsOf(state, now);
    const assumed = assumedNeeds(state);
    const order = logOrder(state.removal).map((one) => one.id);
    const number = (id: string) => order.indexOf(id) + 1;
    const name = (id: string) => {
      const title = steps.find((one) => one.removalId === id && one.kind === 'S')?.title;
      return `${number(id)} ${title ?? state.removal.find((one) => one.id === id)?.title ?? ''}`.trim();
    };
    const line = (one: NeedSuggestion) =>
      `Does ${name(one.removalId)} really have to go in before ${name(one.needsId)}? ${one.reason}${one.instead.length > 0 ? ` It would still go in before ${one.instead.map(name).join(', ')}.` : ''}`;
    const only = (one: AssumedNeed) =>
      `  ${name(one.removalId)} before ${name(one.needsId)} (${one.kept}): need ${number(one.removalId)} ${number(one.needsId)} --answer loosened`;
    return fine({ suggested, assumed }, [
      ...(suggested.length > 0 ? suggested.map(line) : [WHY_NONE]),
      ...(assumed.length > 0 ? ['By the order of the log only; each may be answered “confirmed” too:'] : []),
      ...assumed.map(only),
    ]);
  });
}

function need(options: Options): Promise<Answer> | Answer {
  const [first, second] = options.words;
  const answer = text(options, 'answer');
  if (first === undefined || second === undefined || (answer !== 'confirmed' && answer !== 'loosened'))
    return wrongUsage(
      'Expected two removals and --answer confirmed or loosened: need 8 7 --answer loosened.',
    );
  return writing(options, async (context, client) => {
    const job = jobIdOf(context, options.flags['job']);
    if (!job.ok) return refusal(job.fault);
    const state = context.workshop.job(job.value) as JobState;
    const one = targetOf(state, first);
    const two = targetOf(state, second);
    if (!one.ok) return refusal(one.fault);
    if (!two.ok) return refusal(two.fault);
    // Only one of two can wait for the other, so that nobody has to remember which is named first.
    const turned =
      loosened(state, one.value, two.value) === null && loosened(state, two.value, one.value) !== null;
    const [removalId, needsId] = turned ? [two.value, one.value] : [one.value, two.value];
    const base = { command: v7(), jobId: job.value, why: text(options, 'why') ?? '' };
    return ofReply(await client.need.settle({ ...base, answer, removalId, needsId }));
  });
}

/** Verbs for whether one removal really has to go in before another. */
export const NEED_VERBS: readonly Verb[] = [
  {
    name: 'needs',
    usage: 'needs [--job ID]',
    says: 'needs that only the order of the log says: those that may well be none, with the reason, then all others',
    options: ['job', 'at'],
    run: needs,
  },
  {
    name: 'need',
    usage: 'need LATER EARLIER --answer confirmed|loosened [--why TEXT] [--job ID]',
    says: 'whether one removal really has to go in before another',
    options: ['job', 'answer', 'why'],
    run: need,
  },
];
