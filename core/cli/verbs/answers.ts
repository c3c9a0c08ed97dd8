import { v7 } from 'uuid';
import { plannedAgain } from '../../model/off-again.ts';
import type { Result } from '../../model/result.ts';
import type { JobState } from '../../model/tables.ts';
import {
  dayAheadOf,
  outlookOf,
  planJob,
  reachOf,
  SERVED_FIRST,
  timeLeftOf,
  toolPlan,
} from '../../reinstall/index.ts';
import {
  type Answer,
  fine,
  found,
  jobIdOf,
  ofReply,
  type Options,
  reading,
  refusal,
  type Verb,
  writing,
  wrongUsage,
} from '../frame.ts';
import { targetOf } from '../target.ts';
import { dayEnd, dayOf } from '../day.ts';
import { plannedLines, reachLines, toolLines, touchedLines } from './answer-lines.ts';
import { dayLines, freeLines, stepWords, waitLines } from './ahead-lines.ts';
import { ofJob, orderOf } from './plan.ts';

const text = (options: Options, name: string): string | undefined => {
  const value = options.flags[name];
  return typeof value === 'string' ? value : undefined;
};

/** The values of an option that may be given more than once, and the words after the verb. */
const listOf = (options: Options, name: string): string[] =>
  [...(text(options, name) ?? '').split('\n'), ...options.words].filter((word) => word !== '');

/** The job as it would stand with these sets served first; or the sentence that says which is none. */
function promising(state: JobState, typed: readonly string[]): JobState | Answer {
  const want = [...state.want];
  for (const word of typed) {
    const target = targetOf(state, word);
    if (!target.ok) return refusal(target.fault);
    const set =
      state.fset.find((one) => one.id === target.value) ??
      state.fset.find((one) => one.removalId === target.value);
    if (!set) return wrongUsage(`Expected a set or a removal with one for --promise, got “${word}”.`);
    const base = { id: v7(), jobId: state.job.id, specId: null, what: word, promisedAt: null };
    want.push({ ...base, thingId: set.id, qty: 100_000, state: 'here', cause: SERVED_FIRST });
  }
  return { ...state, want };
}

function ahead(options: Options): Promise<Answer> {
  return ofJob(options, (job, now) => {
    const state = promising(
      job,
      (text(options, 'promise') ?? '').split('\n').filter((word) => word !== ''),
    );
    if (!('removal' in state)) return state;
    const typed = text(options, 'on');
    const until = typed === undefined ? null : dayEnd(typed, now);
    if (typed !== undefined && until === null)
      return wrongUsage(`Expected --on with a day such as 2026-11-26 or thursday, got “${typed}”.`);
    const plan = planJob(state, now);
    const outlook = outlookOf(state, now);
    const title = new Map(plan.steps.map((step) => [step.id, stepWords(step)]));
    // A step is told once: where it can be done first.
    const told = new Set<string>();
    const say = (ids: readonly string[]) =>
      ids.filter((id) => !told.has(id) && told.add(id)).map((id) => `  ${title.get(id) ?? id}`);
    const dates = outlook.dates.filter((line) => until === null || line.at <= until);
    const today = plan.steps.filter((step) => plan.ahead.has(step.id));
    if (until !== null) {
      const day = dayAheadOf(state, now, until);
      return fine({ today, ...outlook, dates, ...day }, dayLines(typed ?? '', day, outlook, plan));
    }
    const last = Math.max(now, ...outlook.dates.map((line) => line.at));
    const lines = [
      today.length > 0 ? 'Now' : 'Nothing can go ahead now.',
      ...say(today.map((step) => step.id)),
      ...dates.flatMap((line) => [`${dayOf(line.at)}: ${line.what.join(' ')}`, ...say(line.stepIds)]),
      ...outlook.late.map((line) => `Late since ${dayOf(line.due)}, not counted on: ${line.sentence}`),
      ...waitLines('Waits, and for no day', dayAheadOf(state, now, last), plan),
      ...(outlook.oneMore.length > 0 ? ['What would free most'] : []),
      ...freeLines(outlook.oneMore),
      ...outlook.offers.map((offer) => `Could be promised: ${offer.sentence}`),
    ];
    return fine({ today, ...outlook, dates }, lines);
  });
}

/** The things that the words mean, or the sentence about the first that means none. */
function targetsOf(state: JobState, typed: readonly string[]): Result<string[]> {
  const ids: string[] = [];
  for (const word of typed) {
    const target = targetOf(state, word);
    if (!target.ok) return target;
    ids.push(target.value);
  }
  return { ok: true, value: ids };
}

function reach(options: Options): Promise<Answer> | Answer {
  const typed = listOf(options, 'part');
  if (options.flags['plan'] === true) return reachPlan(options, typed);
  return ofJob(options, (state, now) => {
    if (typed.length === 0) {
      const planned = plannedAgain(state);
      return planned.length === 0
        ? wrongUsage('Expected --part with the name of a part, once for each; nothing is planned so far.')
        : fine(planned, plannedLines(planned));
    }
    const ids = targetsOf(state, typed);
    if (!ids.ok) return refusal(ids.fault);
    const value = reachOf(state, ids.value, now);
    return fine(value, reachLines(state, value));
  });
}

/** What must come off becomes planned removals; `begin` takes one after the other off. */
function reachPlan(options: Options, typed: readonly string[]): Promise<Answer> | Answer {
  if (typed.length === 0) return wrongUsage('Expected --part with the name of a part, once for each.');
  return writing(options, async (context, client) => {
    const job = jobIdOf(context, options.flags['job']);
    if (!job.ok) return refusal(job.fault);
    const ids = targetsOf(context.workshop.job(job.value) as JobState, typed);
    if (!ids.ok) return refusal(ids.fault);
    const reply = await client.plan.comeOff({ command: v7(), jobId: job.value, targetIds: ids.value });
    if (!reply.ok) return refusal(reply.fault);
    const planned = plannedAgain(context.workshop.job(job.value) as JobState);
    return fine(reply.value, [reply.value.said, ...plannedLines(planned)]);
  });
}

function touched(options: Options): Promise<Answer> | Answer {
  const part = text(options, 'part') ?? options.words.join(' ');
  if (part === '') return wrongUsage('Expected --part with the name of a joint or part.');
  return reading(options, async (context, client) => {
    const machine = text(options, 'machine');
    const job = machine === undefined ? jobIdOf(context, options.flags['job']) : null;
    if (job && !job.ok) return refusal(job.fault);
    const where = job?.ok ? { jobId: job.value } : { machine: machine ?? '' };
    const reply = await client.jobs.touched({ text: part, ...where });
    if (!reply.ok) return refusal(reply.fault);
    const { value } = reply;
    return value.known ? fine(value, touchedLines(value)) : found(value, [value.sentence]);
  });
}

function tools(options: Options): Promise<Answer> | Answer {
  const by = orderOf(options.flags['walk']);
  if (by === null) return wrongUsage('Expected --walk list or --walk tools.');
  if (by !== undefined)
    return writing(options, async (context, client) => {
      const job = jobIdOf(context, options.flags['job']);
      return job.ok ? ofReply(await client.plan.walk({ jobId: job.value, by })) : refusal(job.fault);
    });
  return ofJob(options, (state, now) => {
    const value = toolPlan(state, now);
    const steps = new Map(planJob(state, now).steps.map((step) => [step.id, step]));
    const saves = value.listed - value.changes;
    const how = value.exact ? 'the fewest there can be' : 'by a rule of thumb, there may be fewer';
    const order = value.ring
      ? ['Steps wait for each other in a ring: no other order is offered.']
      : [
          `${value.changes} changes of tool, ${how}; ${value.listed} down the list${saves > 0 ? `, so ${saves} saved` : ''}.`,
          ...value.order.map((id) => {
            const step = steps.get(id);
            return `  ${step ? stepWords(step) : id}`;
          }),
        ];
    return fine(value, [...toolLines(value.tools), ...order]);
  });
}

function promise(options: Options): Promise<Answer> | Answer {
  const typed = options.words.join(' ');
  if (typed === '') return wrongUsage('Expected a set that is served first: promise 4/1 --qty 2.');
  return writing(options, async (context, client) => {
    const job = jobIdOf(context, options.flags['job']);
    if (!job.ok) return refusal(job.fault);
    const state = context.workshop.job(job.value) as JobState;
    const target = targetOf(state, typed);
    if (!target.ok) return refusal(target.fault);
    const set = state.fset.find((one) => one.id === target.value || one.removalId === target.value);
    if (!set) return wrongUsage(`Expected a set or a removal with one, got “${typed}”.`);
    const qty = Number(text(options, 'qty') ?? '100000');
    return ofReply(await client.piece.promise({ command: v7(), jobId: job.value, setId: set.id, qty }));
  });
}

/** Verbs for the questions of the fourth week. */
export const ANSWER_VERBS: readonly Verb[] = [
  {
    name: 'ahead',
    usage: 'ahead [--job ID] [--at TIME] [--on DAY] [--promise SET]…',
    says: 'what can be done now with what is in hand, by which day more, what one more item would free; --promise tries serving a set first',
    options: ['job', 'at', 'on'],
    many: ['promise'],
    run: ahead,
  },
  {
    name: 'promise',
    usage: 'promise SET [--qty N] [--job ID]',
    says: 'alike pieces of other sets go to this set first; kept until it is undone',
    options: ['job', 'qty'],
    run: promise,
  },
  {
    name: 'reach',
    usage: 'reach [--job ID] --part NAME… [--plan]',
    says: 'what must come off to reach one or more parts, in order, with what it costs; --plan makes planned removals of it, for begin; without a part, what is planned',
    options: ['job', 'at'],
    switches: ['plan'],
    many: ['part'],
    run: reach,
  },
  {
    name: 'touched',
    usage: 'touched --part NAME [--machine NAME | --job ID]',
    says: 'whether a joint was touched at all, over all jobs of a machine',
    options: ['job', 'machine', 'part'],
    run: touched,
  },
  {
    name: 'tools',
    usage: 'tools [--job ID] [--walk list|tools]',
    says: 'tools for what is still to be put back, and the order with the fewest changes; --walk chooses the order in which this job is put back',
    options: ['job', 'at', 'walk'],
    run: tools,
  },
  {
    name: 'time-left',
    usage: 'time-left [--job ID]',
    says: 'the time left as a range, at the pace so far; or that it is not known yet',
    options: ['job', 'at'],
    run: (options) =>
      ofJob(options, (state, now) => {
        const value = timeLeftOf(state, now);
        return fine(value, [value.sentence]);
      }),
  },
];
