import { v7 } from 'uuid';
import type { StandingPoint } from '../../core/model/result.ts';
import type { Reply } from './client.ts';
import { journal, type Pending } from './journal.ts';
import { remember } from './remember.ts';

const RETRIES = [400, 1_000, 2_500, 5_000];
const wait = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

/** Commands of a job go out one after the other, so that the record has them in the order of the hand. */
const last = new Map<string, Promise<unknown>>();

function inOrder<T>(jobId: string, call: () => Promise<T>): Promise<T> {
  const before = last.get(jobId) ?? Promise.resolve();
  const now = before.then(call, call);
  last.set(jobId, now);
  return now;
}

interface SendMore {
  /** A removal shown ahead of the record. */
  readonly removal?: Pending['removal'];
  /** Things shown as ticked ahead of the record. */
  readonly tick?: Pending['tick'];
  /** Takes a refusal that can be answered with a yes; without it, it is only said. */
  readonly onLoosen?: ((sentence: string) => void) | undefined;
  /** Takes a refusal that names open points, so that each can be answered; without it they are only said. */
  readonly onStopped?: ((points: readonly StandingPoint[]) => void) | undefined;
}

/**
 * Sends one command and says what became of it. The same id goes out with every try, so that a reply that got lost
 * does not do it twice. Shown as not saved until the record has it; a refusal is said in words.
 */
export async function send<T>(
  jobId: string,
  call: (command: string) => Promise<Reply<T>>,
  { removal = null, tick = null, onStopped, onLoosen }: SendMore = {},
): Promise<T | null> {
  const command = v7();
  const { screen } = remember.getState();
  const { begin, end, heard, kept, refuse, tookOne } = journal.getState();
  begin({ command, jobId, removal, tick, seq: null });
  try {
    const reply = await inOrder(jobId, () => persist(() => call(command)));
    if (!reply.ok) {
      end(command);
      const points = reply.fault.points ?? [];
      if (onStopped && points.length > 0) onStopped(points);
      else if (onLoosen && reply.fault.code === 'loosen') onLoosen(reply.fault.sentence);
      else refuse(reply.fault.sentence);
      return null;
    }
    heard(reply.seq);
    tookOne(screen);
    // What is shown ahead stays until the reading that holds it has come; the screen lets it go then.
    if (tick !== null || removal !== null) kept(command, reply.seq);
    else end(command);
    return reply.value;
  } catch (error) {
    end(command);
    refuse(`Not saved: the program does not answer. ${error instanceof Error ? error.message : ''}`.trim());
    return null;
  }
}

async function persist<T>(call: () => Promise<Reply<T>>): Promise<Reply<T>> {
  for (const pause of RETRIES) {
    try {
      return await call();
    } catch (error) {
      // The host answered, and not with a value: trying again would only say the same.
      if (typeof (error as { status?: unknown }).status === 'number') throw error;
      await wait(pause);
    }
  }
  return call();
}
