import { v7 } from 'uuid';
import { ok, type Result, refuse } from '../model/result.ts';
import type { JobState, Row, TableName } from '../model/tables.ts';
import { WORKSHOP_CHAIN } from '../store/journal.ts';
import { moveProblems } from '../tally/index.ts';
import type { Workshop } from '../store/workshop.ts';
import type { Writer } from '../store/writer.ts';

/** Who asks, and of which workshop. A null actor is "someone": nobody has said who is working. */
export interface Context {
  readonly workshop: Workshop;
  readonly actor: string | null;
}

export type Reply<T> =
  | { ok: true; seq: number; value: T }
  | { ok: false; fault: Extract<Result<never>, { ok: false }>['fault'] };

export const UNNAMED = 'unnamed';

/** What a decision works with: the job as it stands, and the one writer of this command. */
export interface Decision {
  readonly state: JobState;
  readonly writer: Writer;
  readonly jobId: string;
  /** UTC milliseconds of the deed. */
  readonly at: number;
  readonly personId: string | null;
  readonly newId: () => string;
  /** When anything in this job changed from then on; UTC ms, ascending. */
  readonly changes: (since: number) => number[];
}

/** When a job changed, from a time on; UTC ms, ascending. */
export function changesOf(workshop: Workshop, jobId: string, since: number): number[] {
  return workshop.db
    .prepare('SELECT at FROM journal WHERE chain = ? AND at >= ? ORDER BY at')
    .pluck()
    .all(jobId, since) as number[];
}

export interface JobInput {
  readonly command: string;
  readonly jobId: string;
  readonly at?: number | undefined;
  /** Commands of one import share it: one press of undo takes them all back. */
  readonly batch?: string | undefined;
}

/** Loads the job, lets `decide` make row changes, commits them as one command. */
export function inJob<T>(
  context: Context,
  what: string,
  input: JobInput,
  decide: (decision: Decision) => Result<T>,
): Reply<T> {
  const { workshop } = context;
  const now = workshop.now();
  const actor = context.actor ?? UNNAMED;
  const result = workshop.commit<T>(
    { id: input.command, what, chain: input.jobId, actor, at: now, batch: input.batch ?? null },
    (writer) => {
      const state = workshop.job(input.jobId);
      if (!state) return refuse('not-found', `Expected a job that is there, got ${input.jobId}.`);
      if (state.job.phase === 'signed')
        return refuse('refused', 'This job is signed off. Start a new job that names it as the earlier one.');
      const decision: Decision = {
        state,
        writer,
        jobId: input.jobId,
        at: input.at ?? now,
        personId: context.actor,
        newId: v7,
        changes: (since) => changesOf(workshop, input.jobId, since),
      };
      const decided = decide(decision);
      return decided.ok ? (booksProblem(decision) ?? decided) : decided;
    },
  );
  return replyOf(workshop, result);
}

/** Whatever a decision did, no account may hold fewer than no pieces afterwards: then it is refused as a whole. */
function booksProblem({ state, writer }: Decision): Result<never> | null {
  const all = () => true;
  const move = writer.list('move', all, state.move);
  if (move.length === state.move.length && move.every((row, i) => row === state.move[i])) return null;
  const problem = moveProblems({ ...state, move, position: writer.list('position', all, state.position) })[0];
  if (!problem) return null;
  return refuse(
    'refused',
    `That would take pieces that were moved on since. ${problem.sentence} Undo what was done with them first.`,
  );
}

/** A command on the workshop's own rows: people, tools, bags, a new job. */
export function inWorkshop<T>(
  context: Context,
  what: string,
  input: { readonly command: string; readonly chain?: string },
  decide: (writer: Writer, at: number, newId: () => string) => Result<T>,
): Reply<T> {
  const { workshop } = context;
  const at = workshop.now();
  const result = workshop.commit<T>(
    {
      id: input.command,
      what,
      chain: input.chain ?? WORKSHOP_CHAIN,
      actor: context.actor ?? UNNAMED,
      at,
    },
    (writer) => decide(writer, at, v7),
  );
  return replyOf(workshop, result);
}

function replyOf<T>(workshop: Workshop, result: Result<{ seq: number; value: T }>): Reply<T> {
  if (!result.ok) return { ok: false, fault: result.fault };
  return { ok: true, seq: result.value.seq || workshop.lastSeq(), value: result.value.value };
}

/** A reading answer at the journal number it stands at. */
export function answer<T>(context: Context, value: T): Reply<T> {
  return { ok: true, seq: context.workshop.lastSeq(), value };
}

/** The row, or a refusal that says what was expected. */
export function rowIn<T extends TableName>(
  decision: Pick<Decision, 'writer' | 'jobId'>,
  table: T,
  id: string,
  word: string,
): Result<Row<T>> {
  const row = decision.writer.get(table, id);
  if (!row || (row as { jobId?: string }).jobId !== decision.jobId)
    return refuse('not-found', `Expected a ${word} of this job, got ${id}.`);
  return ok(row);
}
