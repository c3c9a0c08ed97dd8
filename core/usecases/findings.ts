import { ok, refuse } from '../model/result.ts';
import type { Row } from '../model/tables.ts';
import { planJob } from '../reinstall/index.ts';
import { type Context, inJob, type JobInput, type Reply } from './frame.ts';
import { acceptFinding, findingOf } from './gates.ts';

type Said = Reply<{ said: string }>;

/** Passes an open point by name and reason; it opens again when its facts change. */
export function findingAccept(
  context: Context,
  input: JobInput & { finding: string; why: string; coveredBy?: string | undefined },
): Said {
  return inJob(context, 'finding.accept', input, (decision) => {
    const finding = findingOf(decision, input.finding, input.coveredBy ?? null);
    if (!finding) return refuse('not-found', `Expected an open point of this job, got ${input.finding}.`);
    acceptFinding(decision, finding, input.why);
    return ok({ said: 'Passed, with your reason. It opens again when the facts change.' });
  });
}

/** "Must be renewed" turned down with a reason that is kept, or asked for again. */
export function renewOverride(
  context: Context,
  input: JobInput & { thingId: string; renew: Row<'part'>['renew']; why: string },
): Said {
  return inJob(context, 'renew.override', input, ({ writer, jobId }) => {
    const part = writer.get('part', input.thingId);
    const set = writer.get('fset', input.thingId);
    const change = { renew: input.renew, renewWhy: input.why };
    if (part?.jobId === jobId) writer.put('part', { ...part, ...change });
    else if (set?.jobId === jobId) writer.put('fset', { ...set, ...change });
    else return refuse('not-found', `Expected a part or a fastener set of this job, got ${input.thingId}.`);
    return ok({ said: 'Kept, with your reason.' });
  });
}

/** Closes a job, when nothing stops it; or opens it again. */
export function jobClose(
  context: Context,
  input: JobInput & { phase: 'open' | 'closed'; recheckDue: number | null },
): Said {
  return inJob(context, 'jobs.close', input, ({ writer, state, at }) => {
    if (input.phase === 'closed') {
      const plan = planJob(state, at);
      const stops = plan.findings.filter((one) => one.severity === 'stop' && one.accepted === null);
      if (stops.length > 0)
        return refuse(
          'refused',
          `Stopped.\n${stops.map((one) => `${one.sentence} ${one.clears}`).join('\n')}`,
        );
      const left = plan.steps.filter((step) => step.kind !== 'K' && step.state !== 'done');
      if (left.length > 0)
        return refuse(
          'refused',
          `Expected every step to be done; ${left.length} ${left.length === 1 ? 'is' : 'are'} not, first ${left[0]?.title ?? ''}.`,
        );
    }
    writer.put('job', { ...state.job, phase: input.phase, recheckDue: input.recheckDue });
    return ok({ said: input.phase === 'closed' ? 'Closed.' : 'Open again.' });
  });
}

/** Work stops: what the next person must see first. */
export function haltAdd(
  context: Context,
  input: JobInput & { note: string },
): Reply<{ id: string; said: string }> {
  return inJob(context, 'halt.add', input, (decision) => {
    const id = decision.newId();
    decision.writer.put('halt', {
      id,
      jobId: decision.jobId,
      at: decision.at,
      personId: decision.personId,
      note: input.note,
      seenAt: null,
      seenBy: null,
    });
    for (const removal of decision.state.removal)
      if (removal.phase === 'under way' && removal.pauses.every((pause) => pause.to !== null))
        decision.writer.put('removal', {
          ...removal,
          pauses: [...removal.pauses, { from: decision.at, to: null }],
        });
    return ok({ id, said: 'Work is stopped. Print the tag and hang it on the machine.' });
  });
}

/** The next person has read it; the clock of the removal under way goes on. */
export function haltSeen(context: Context, input: JobInput & { haltId: string }): Said {
  return inJob(context, 'halt.seen', input, (decision) => {
    const halt = decision.writer.get('halt', input.haltId);
    if (!halt || halt.jobId !== decision.jobId)
      return refuse('not-found', `Expected a stop of work of this job, got ${input.haltId}.`);
    decision.writer.put('halt', { ...halt, seenAt: decision.at, seenBy: decision.personId });
    for (const removal of decision.state.removal)
      if (removal.pauses.some((pause) => pause.to === null))
        decision.writer.put('removal', {
          ...removal,
          pauses: removal.pauses.map((pause) => ({ ...pause, to: pause.to ?? decision.at })),
        });
    return ok({ said: 'Read.' });
  });
}
