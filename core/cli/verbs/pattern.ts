import { v7 } from 'uuid';
import type { PatternView } from '../../contract/pattern.ts';
import { plannedAgain } from '../../model/off-again.ts';
import type { JobState } from '../../model/tables.ts';
import {
  type Answer,
  fine,
  found,
  jobIdOf,
  type Options,
  reading,
  refusal,
  type Verb,
  wrongUsage,
  writing,
} from '../frame.ts';
import { targetOf } from '../target.ts';

const SIGN = { planned: '[ ]', begun: '[x]', 'given up': '[-]' } as const;

function viewLines(view: PatternView): string[] {
  return [
    `Follows “${view.fromTitle}”.`,
    ...view.removals.flatMap((one) => [
      `${SIGN[one.state]} ${one.title}`,
      ...(one.state === 'planned'
        ? one.expected.map(
            (set) => `      ${set.count} × ${set.what}${set.torque === '' ? '' : `, ${set.torque}`}`,
          )
        : one.differences.map((line) => `      ${line}`)),
    ]),
    ...view.beyond.map((one) => `[x] ${one.title}: not in the earlier job.`),
  ];
}

async function runPattern(options: Options): Promise<Answer> {
  const from = options.flags['from'];
  if (typeof from !== 'string')
    return reading(options, async (context, client) => {
      const job = jobIdOf(context, options.flags['job']);
      if (!job.ok) return refusal(job.fault);
      const reply = await client.jobs.view({ jobId: job.value });
      if (!reply.ok) return refusal(reply.fault);
      const { pattern } = reply.value;
      if (!pattern)
        return fine(null, ['This job follows no earlier one. Give it one with: pattern --from JOB']);
      const differs = pattern.removals.some((one) => one.differences.length > 0);
      return (differs ? found : fine)(pattern, viewLines(pattern));
    });
  return writing(options, async (context, client) => {
    const [job, earlier] = [jobIdOf(context, options.flags['job']), jobIdOf(context, from)];
    if (!job.ok) return refusal(job.fault);
    if (!earlier.ok) return refusal(earlier.fault);
    const reply = await client.pattern.use({ command: v7(), jobId: job.value, fromJobId: earlier.value });
    return reply.ok ? fine(reply.value, [reply.value.said]) : refusal(reply.fault);
  });
}

/** "4/1=7": seven found of the first set of removal 4. */
function foundOf(state: JobState, typed: string): { setId: string; count: number } | string {
  const [name, number = ''] = typed.split('=');
  if (!/^\d{1,5}$/.test(number.trim())) return `Expected SET=COUNT such as 4/1=7, got “${typed}”.`;
  const target = targetOf(state, name ?? '');
  return target.ok ? { setId: target.value, count: Number(number) } : target.fault.sentence;
}

async function runBegin(options: Options): Promise<Answer> {
  const [typed, ...counts] = options.words;
  if (typed === undefined) return wrongUsage('Expected a planned removal: begin 4, or begin 4 4/1=7.');
  return writing(options, async (context, client) => {
    const job = jobIdOf(context, options.flags['job']);
    if (!job.ok) return refusal(job.fault);
    const state = context.workshop.job(job.value) as JobState;
    const target = targetOf(state, typed);
    if (!target.ok) return refusal(target.fault);
    // A removal and its part often share a name; the removal is meant here.
    const removalId =
      state.part.find((part) => part.id === target.value)?.removalId ??
      state.fset.find((set) => set.id === target.value)?.removalId ??
      target.value;
    // What is back and planned to come off again is taken off by the name of the thing itself.
    const again = plannedAgain(state).find(
      ({ removal, thingId }) => [removal.id, thingId].includes(target.value) || thingId === removalId,
    );
    const given: { setId: string; count: number }[] = [];
    for (const one of counts) {
      const read = foundOf(state, one);
      if (typeof read === 'string') return wrongUsage(read);
      given.push(read);
    }
    const reply = await client.pattern.begin({
      command: v7(),
      jobId: job.value,
      removalId: again?.removal.id ?? removalId,
      found: given,
    });
    if (!reply.ok) return refusal(reply.fault);
    return (reply.value.differences.length > 0 ? found : fine)(reply.value, [reply.value.said]);
  });
}

/** Verbs for a machine like one that was done before. */
export const PATTERN_VERBS: readonly Verb[] = [
  {
    name: 'pattern',
    usage: 'pattern [--job ID] [--from JOB]',
    says: 'an earlier job as pattern: its removals as a plan; without --from, what is expected and what differs',
    options: ['job', 'from'],
    run: runPattern,
  },
  {
    name: 'begin',
    usage: 'begin [--job ID] TARGET [SET=COUNT…]',
    says: 'a planned removal is off: as expected, or with what was found (4/1=7)',
    options: ['job'],
    run: runBegin,
  },
];
