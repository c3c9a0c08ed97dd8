import { useEffect } from 'react';
import type { JobView } from '../../core/contract/views.ts';
import { client, Refused } from './client.ts';
import type { TickAhead } from '../model/ticked-ahead.ts';
import { send } from './commands.ts';
import { journal, type Pending } from './journal.ts';
import { useView } from './queries.ts';
import { remember } from './remember.ts';

/** The job this window is at, with the time it is looked at. */
export interface OpenJob {
  readonly id: string;
  readonly view: JobView;
  /** Journal number that the view is as new as. */
  readonly seq: number;
  readonly now: number;
  /** Removals shown ahead of the record. */
  readonly ahead: readonly Pending[];
  /** Ticks shown ahead of the record. */
  readonly ticks: readonly TickAhead[];
}

/** The open job, once it has been read; lets go of what was shown ahead as soon as the record shows it itself. */
export function useJob(): OpenJob | null {
  const jobId = remember((place) => place.jobId);
  const pending = journal((now) => now.pending);
  const reading = useView(jobId);
  const view = reading.data?.value ?? null;
  useEffect(() => {
    if (!view) return;
    const known = new Set(view.state.removal.map((removal) => removal.id));
    for (const one of pending)
      if (one.removal && known.has(one.removal.id)) journal.getState().end(one.command);
  }, [view, pending]);
  const read = reading.data?.seq ?? 0;
  useEffect(() => {
    // As new as the reply, whatever it shows: what was sent may have been taken back meanwhile.
    for (const one of pending) if (one.seq !== null && one.seq <= read) journal.getState().end(one.command);
  }, [read, pending]);
  useEffect(() => {
    // A job that is gone (undone, restored away) leads back to the list of jobs; a program that only does not answer
    // just now does not.
    if (reading.error instanceof Refused && jobId !== null)
      remember.getState().go({ jobId: null, screen: 'jobs' });
  }, [reading.error, jobId]);
  if (jobId === null || !view || view.state.job.id !== jobId) return null;
  return {
    id: jobId,
    view,
    seq: read,
    now: Math.max(Date.now(), view.state.job.createdAt),
    ahead: pending.filter((one) => one.removal !== null && one.jobId === jobId),
    ticks: pending.flatMap((one) => (one.tick !== null && one.jobId === jobId ? [one.tick] : [])),
  };
}

/** Takes back the last command of this person in this job. */
export function undo(jobId: string): void {
  void send(jobId, (command) => client.history.undo({ command, jobId }));
}

/** Does again what was last taken back. */
export function redo(jobId: string): void {
  void send(jobId, (command) => client.history.redo({ command, jobId }));
}
