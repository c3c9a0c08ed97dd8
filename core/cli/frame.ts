import { resolve } from 'node:path';
import { createRouterClient, ORPCError } from '@orpc/server';
import { defaultWorkshop, here } from '../host/private-folder.ts';
import { nearNames } from '../model/near-names.ts';
import { type Fault, refuse, type Result } from '../model/result.ts';
import { takeLock } from '../store/lock.ts';
import { openWorkshop, type Workshop } from '../store/workshop.ts';
import type { Context } from '../usecases/frame.ts';
import { makeRouter } from '../usecases/router.ts';
import { inputFault } from './input-words.ts';

/** What a verb answers: 0 fine, 1 findings, refused or invalid, 2 wrong usage. `value` is the one JSON value. */
export interface Answer {
  readonly code: 0 | 1 | 2;
  readonly value: unknown;
  readonly lines: readonly string[];
}

export interface Options {
  readonly workshop: string;
  readonly flags: Readonly<Record<string, string | boolean | undefined>>;
  readonly words: readonly string[];
}

export interface Verb {
  readonly name: string;
  readonly usage: string;
  readonly says: string;
  /** Options that take a value; the others are switches. */
  readonly options: readonly string[];
  readonly switches?: readonly string[];
  /** Options that may be given more than once; their values come one a line. */
  readonly many?: readonly string[];
  readonly run: (options: Options) => Promise<Answer> | Answer;
}

export const fine = (value: unknown, lines: readonly string[]): Answer => ({ code: 0, value, lines });
export const found = (value: unknown, lines: readonly string[]): Answer => ({ code: 1, value, lines });
/** What was refused, and how each open point in the way may be passed. */
export const refusal = (fault: Pick<Fault, 'sentence' | 'points'> & { code: string }): Answer => ({
  code: 1,
  value: { ok: false, fault },
  lines: [
    fault.sentence,
    ...(fault.points ?? []).map((point) => `If it may stay so: accept ${point.key} --why REASON`),
  ],
});
export const wrongUsage = (sentence: string): Answer => ({
  code: 2,
  value: { ok: false, fault: { code: 'usage', sentence } },
  lines: [sentence],
});

/** The workshop folder named, else the one of this user. */
export function workshopDir(flag: string | boolean | undefined): string {
  return resolve(typeof flag === 'string' ? flag : defaultWorkshop(here()));
}

export type Client = ReturnType<typeof clientOf>;

/** The operations of the contract, in this process, with the same checks as over HTTP. */
function clientOf(context: Context) {
  return createRouterClient(makeRouter(), { context });
}

/** Opens for reading; works whoever holds the workshop. */
export async function reading(
  options: Options,
  run: (context: Context, client: Client) => Promise<Answer> | Answer,
): Promise<Answer> {
  const opened = openWorkshop(options.workshop, { write: false });
  return opened.ok ? using(opened.value, run) : refusal(opened.fault);
}

/** Opens for writing; refused while a host holds the workshop, with its address. */
export async function writing(
  options: Options,
  run: (context: Context, client: Client) => Promise<Answer> | Answer,
): Promise<Answer> {
  return locked(options.workshop, async () => {
    const opened = openWorkshop(options.workshop, { write: true });
    return opened.ok ? using(opened.value, run, actorOf(opened.value, options)) : refusal(opened.fault);
  });
}

/** Runs with the workshop's lock held. */
export async function locked(dir: string, run: () => Promise<Answer>): Promise<Answer> {
  const lock = takeLock(dir);
  if (!lock.ok) return refusal(lock.fault);
  try {
    return await run();
  } finally {
    lock.value.release();
  }
}

function actorOf(workshop: Workshop, options: Options): string | null {
  const name = options.flags['who'];
  if (typeof name !== 'string') return null;
  const row = workshop.db
    .prepare('SELECT id FROM person WHERE id = ? OR lower(name) = lower(?)')
    .pluck()
    .get(name, name) as string | undefined;
  if (row === undefined)
    throw new UsageProblem(
      `Expected somebody of this workshop for --who, got “${name}”. Add them with: people --add “${name}”.`,
    );
  return row;
}

/** Thrown for words on the command line that cannot be meant. */
export class UsageProblem extends Error {}

async function using(
  workshop: Workshop,
  run: (context: Context, client: Client) => Promise<Answer> | Answer,
  actor: string | null = null,
): Promise<Answer> {
  try {
    const context = { workshop, actor };
    return await run(context, clientOf(context));
  } catch (error) {
    if (error instanceof ORPCError && error.code === 'BAD_REQUEST')
      return refusal(
        inputFault((error.data as { issues?: Parameters<typeof inputFault>[0] } | undefined)?.issues ?? []),
      );
    throw error;
  } finally {
    workshop.close();
  }
}

/** The job named by id, or by title where only one fits. */
export function jobIdOf(context: Context, flag: string | boolean | undefined): Result<string> {
  const jobs = context.workshop.jobs();
  const list = jobs.map((job) => `${job.id} “${job.title}”`).join(', ') || 'none yet';
  if (typeof flag !== 'string') {
    const only = jobs[0];
    if (jobs.length === 1 && only) return { ok: true, value: only.id };
    return refuse('input', `Expected --job with the id or title of a job. There are: ${list}.`);
  }
  const exact = jobs.find((job) => job.id === flag);
  if (exact) return { ok: true, value: exact.id };
  const low = flag.toLowerCase();
  const titled = jobs.filter((job) => job.title.toLowerCase() === low);
  const near = titled.length > 0 ? titled : jobs.filter((job) => job.title.toLowerCase().includes(low));
  const one = near[0];
  if (near.length === 1 && one) return { ok: true, value: one.id };
  if (near.length > 1)
    return refuse('input', `Expected one job for “${flag}”, found ${near.length}. There are: ${list}.`);
  const [nearest] = nearNames(
    flag,
    jobs.map((job) => job.title),
  );
  const offer = nearest === undefined ? '' : ` Nearest: “${nearest}”.`;
  return refuse('not-found', `No job is called “${flag}”.${offer} There are: ${list}.`);
}

/** A reply of an operation as an answer of the command line. */
export function ofReply(
  reply: { ok: true; value: unknown } | { ok: false; fault: Parameters<typeof refusal>[0] },
): Answer {
  if (!reply.ok) return refusal(reply.fault);
  const said = (reply.value as { said?: string } | null)?.said;
  return fine(reply.value, said === undefined ? [JSON.stringify(reply.value, null, 2)] : [said]);
}
