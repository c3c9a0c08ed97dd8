import type { JobState } from '../../model/tables.ts';
import { removalWords } from '../../model/thing-words.ts';
import type { Plan } from '../../reinstall/index.ts';
import type { Walk } from '../../store/local.ts';
import type { Context } from '../../usecases/frame.ts';
import { logOrder } from '../../usecases/log/order.ts';
import { walkedPlan } from '../../usecases/walk.ts';
import {
  bagCounts,
  type CountLine,
  countLines,
  describeSpec,
  lookAlikes,
  openSearches,
  poolLines,
  toGet,
} from '../../tally/index.ts';
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
} from '../frame.ts';
import { planLines } from '../plan-text.ts';

/** Reads a job and says something of it. */
export function ofJob(
  options: Options,
  run: (state: JobState, now: number, context: Context) => Answer,
): Promise<Answer> {
  return reading(options, (context) => {
    const job = jobIdOf(context, options.flags['job']);
    if (!job.ok) return refusal(job.fault);
    return run(context.workshop.job(job.value) as JobState, nowOf(options, context.workshop.now()), context);
  });
}

function nowOf(options: Options, now: number): number {
  const typed = options.flags['at'];
  const ms = typeof typed === 'string' ? Date.parse(typed) : now;
  return Number.isNaN(ms) ? now : ms;
}

/** "list" or "tools"; undefined: as chosen for the job; null: neither. */
export function orderOf(flag: string | boolean | undefined): Walk | undefined | null {
  if (flag === undefined || flag === 'list' || flag === 'tools') return flag;
  return null;
}

export const ORDER_WRONG = 'Expected --order list or --order tools.';

/** A plan as one JSON value: sets become lists. */
function planValue(plan: Plan): unknown {
  return { ...plan, ahead: [...plan.ahead] };
}

function stops(plan: Plan): boolean {
  return plan.findings.some((finding) => finding.severity !== 'note' && finding.accepted === null);
}

/** Verbs that answer from the planner and the count. They read only. */
export const PLAN_VERBS: readonly Verb[] = [
  {
    name: 'reinstall',
    usage: 'reinstall [--job ID] [--at TIME] [--order list|tools]',
    says: 'the reinstall list: steps with state, actions, fasteners, what to renew; open points; depth; --order: as the list has it, or with the fewest changes of tool, else as chosen for the job',
    options: ['job', 'at', 'order'],
    run: (options) => {
      const order = orderOf(options.flags['order']);
      if (order === null) return wrongUsage(ORDER_WRONG);
      return ofJob(options, (state, now, context) => {
        const plan = walkedPlan(context, state, now, order);
        return stops(plan) ? found(planValue(plan), planLines(plan)) : fine(planValue(plan), planLines(plan));
      });
    },
  },
  {
    name: 'tally',
    usage: 'tally [--job ID]',
    says: 'counts by set and pooled; bags; look-alikes; searches; list to get',
    options: ['job'],
    run: (options) => ofJob(options, tally),
  },
];

/** The counts under the removal that the pieces came off with: equal sets are told apart by it. */
function setLines(state: JobState, sets: readonly CountLine[]): string[] {
  const order = logOrder(state.removal).map((removal) => removal.id);
  let home: string | null | undefined;
  return sets.flatMap((line) => {
    const spec = state.spec.find((one) => one.id === line.specId);
    const what = spec ? describeSpec(spec) : 'pieces';
    const set = state.fset.find((one) => one.id === line.setId)?.name ?? '';
    const name = set === '' || set === what ? what : `${set}, ${what}`;
    const counts = `  ${name}: ${line.out} out, ${line.inBag} in hand, ${line.backIn} back in, ${line.toFill ?? '?'} to fill, ${line.short ?? '?'} short`;
    if (line.removalId === home) return [counts];
    home = line.removalId;
    const number = order.indexOf(home ?? '') + 1;
    return [number === 0 ? 'With no removal' : `${number} ${removalWords(state, home)}`, counts];
  });
}

function tally(state: JobState): Answer {
  const sets = countLines(state);
  const value = {
    sets,
    pooled: poolLines(state),
    bags: bagCounts(state),
    lookAlikes: lookAlikes(state),
    searches: openSearches(state),
    toGet: toGet(state),
  };
  const lines = [
    ...setLines(state, sets),
    ...value.lookAlikes.map((pair) => pair.sentence),
    ...value.searches.flatMap((search) => [
      `Looked for: ${search.missing}, ${search.name}. ${search.lastSeen.sentence}`,
      ...search.lookAt,
    ]),
    ...value.toGet.map(
      (line) => `To get: ${line.needed ?? '?'} × ${line.what} (${line.cause}, ${line.state})`,
    ),
  ];
  const short = sets.some((line) => (line.short ?? 0) > 0) || value.searches.length > 0;
  return short ? found(value, lines) : fine(value, lines.length > 0 ? lines : ['Nothing has come off yet.']);
}
