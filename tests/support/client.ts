import { createRouterClient } from '@orpc/server';
import { v7 } from 'uuid';
import type { Row } from '../../core/model/tables.ts';
import type { Workshop } from '../../core/store/workshop.ts';
import { makeRouter } from '../../core/usecases/router.ts';

/** The operations of the contract over a workshop, in this process, with all of their checks. */
export function clientOf(workshop: Workshop, actor: string | null = null) {
  return createRouterClient(makeRouter(), { context: { workshop, actor } });
}
export type TestClient = ReturnType<typeof clientOf>;

type Reply<T> =
  | { ok: true; seq: number; value: T }
  | { ok: false; fault: { code: string; sentence: string } };

/** The value of a reply that must have gone well. */
export function good<T>(reply: Reply<T>): T {
  if (!reply.ok) throw new Error(reply.fault.sentence);
  return reply.value;
}

/** The sentence of a reply that must have been refused. */
export function refused(reply: Reply<unknown>): string {
  if (reply.ok) throw new Error(`Expected a refusal, got ${JSON.stringify(reply.value)}`);
  return reply.fault.sentence;
}

export const command = () => ({ command: v7() });

/** A job with its entry lines logged as on the screen; gives its id. */
export async function logJob(workshop: Workshop, title: string, lines: readonly string[]): Promise<string> {
  const client = clientOf(workshop);
  const jobId = v7();
  good(await client.jobs.add({ ...command(), id: jobId, title }));
  let removalId: string | null = null;
  for (const line of lines) {
    const more = line.startsWith('+');
    const logged: { removalId: string } = good(
      await client.log.add({
        ...command(),
        jobId,
        text: more ? line.slice(1).trim() : line,
        removalId: more ? removalId : null,
      }),
    );
    removalId = logged.removalId;
  }
  return jobId;
}

/** The job's rows; the job must be there. */
export function stateOf(workshop: Workshop, jobId: string) {
  const state = workshop.job(jobId);
  if (!state) throw new Error('Expected the job to be there.');
  return state;
}

/** A row by its name, title or label. */
export function named<T extends { name?: string; title?: string }>(rows: readonly T[], name: string): T {
  const row = rows.find((one) => (one.name ?? one.title ?? '').toLowerCase() === name.toLowerCase());
  if (!row)
    throw new Error(`Expected “${name}” among ${rows.map((one) => one.name ?? one.title).join(', ')}.`);
  return row;
}

/** Holes of a set in order. */
export function holes(workshop: Workshop, jobId: string, setId: string): Row<'position'>[] {
  return stateOf(workshop, jobId)
    .position.filter((hole) => hole.setId === setId)
    .sort((a, b) => a.n - b.n);
}
