import { refuse } from '../model/result.ts';
import type { Context, JobInput, Reply } from './frame.ts';
import { UNNAMED } from './frame.ts';

/** A job that came in as a file is the ground that its own Undo stands on, and not a deed of it. */
const BROUGHT_IN = 'jobs.import';

/** What the next undo takes back; null = nothing. */
function nextUndo(context: Context, jobId: string): string | null {
  const { undo } = context.workshop.history.stacks(jobId, context.actor ?? UNNAMED);
  const what = undo.at(-1)?.what ?? null;
  return what === BROUGHT_IN ? null : what;
}

function turn(context: Context, input: JobInput, back: 'undo' | 'redo'): Reply<{ what: string }> {
  const { workshop } = context;
  const result = workshop[back]({
    id: input.command,
    chain: input.jobId,
    actor: context.actor ?? UNNAMED,
    at: workshop.now(),
  });
  return result.ok ? { ok: true, seq: result.value.seq, value: result.value.value } : result;
}

/** Takes back the last command of this person in this job, by a new entry. */
export function historyUndo(context: Context, input: JobInput): Reply<{ what: string }> {
  // Sent again because its reply got lost, it is answered as it was.
  const sent = context.workshop.db.prepare('SELECT 1 FROM journal WHERE command = ?').get(input.command);
  if (nextUndo(context, input.jobId) === null && sent === undefined)
    return refuse('refused', 'There is nothing to undo.');
  return turn(context, input, 'undo');
}

/** Does again what was last taken back. */
export function historyRedo(context: Context, input: JobInput): Reply<{ what: string }> {
  return turn(context, input, 'redo');
}

/** What the next undo and redo would do; null = nothing. */
export function historyState(context: Context, jobId: string): { undo: string | null; redo: string | null } {
  const stacks = context.workshop.history.stacks(jobId, context.actor ?? UNNAMED);
  return { undo: nextUndo(context, jobId), redo: stacks.redo.at(-1)?.what ?? null };
}

/** The newest entries of a job's chain, newest first. */
export function historyList(context: Context, jobId: string, limit: number) {
  return context.workshop.db
    .prepare('SELECT seq, n, at, actor, what, hash FROM journal WHERE chain = ? ORDER BY n DESC LIMIT ?')
    .all(jobId, limit) as { seq: number; n: number; at: number; actor: string; what: string; hash: string }[];
}
