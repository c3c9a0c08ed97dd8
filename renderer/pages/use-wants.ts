import { useEffect, useRef } from 'react';
import { v7 } from 'uuid';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { endOfDay } from '../model/days.ts';
import { piecesHere } from '../model/off.ts';
import type { WantState } from '../screens/off/Panels.tsx';

/** Notes that this window made and has not read back yet, by the line they stand for. */
type Noted = Map<string, string>;

/**
 * Changes the state of a line of the list to get. Whoever goes on from "ordered" to "here" before the record has been
 * read again means the note that is still on its way, not another one.
 */
export function useWants(job: OpenJob): {
  readonly onState: (key: string, state: WantState) => void;
  readonly onDay: (key: string, iso: string) => void;
} {
  const noted = useRef<Noted>(new Map());
  const { want } = job.view.state;
  useEffect(() => {
    for (const [key, id] of noted.current) if (want.some((row) => row.id === id)) noted.current.delete(key);
  }, [want]);
  return {
    onState: (key, state) => void setWant(job, noted.current, key, state),
    onDay: (key, iso) => setDay(job, noted.current, key, iso),
  };
}

/** The day on which what is ordered is promised; an emptied field takes it back. */
function setDay(job: OpenJob, noted: Noted, key: string, iso: string): void {
  const line = job.view.toGet.find((one) => one.key === key);
  const own = noted.get(key);
  const promisedAt = endOfDay(iso);
  for (const id of [...(line?.wantIds ?? []), ...(own === undefined ? [] : [own])])
    void send(job.id, (command) =>
      client.record.change({ command, jobId: job.id, table: 'want', id, values: { promisedAt } }),
    );
}

/** "here" books the pieces in. */
async function setWant(job: OpenJob, noted: Noted, key: string, state: WantState): Promise<void> {
  const line = job.view.toGet.find((one) => one.key === key);
  if (!line) return;
  const own = noted.get(key);
  const wantIds = own === undefined ? [...line.wantIds] : [...line.wantIds, own];
  const thingId = line.thingIds[0] ?? null;
  const qty = Math.max(1, line.needed ?? line.noted);
  const pieces = state === 'here' ? piecesHere(line) : null;
  if (pieces !== null && thingId !== null) {
    const specId = line.specId;
    await send(job.id, (command) =>
      client.piece.receive({
        command,
        jobId: job.id,
        thingId,
        qty: pieces,
        stowId: null,
        specId,
        wantIds,
      }),
    );
    return;
  }
  // Two notes of the same thing stand as one line, and answer as one.
  for (const id of wantIds)
    await send(job.id, (command) =>
      client.record.change({ command, jobId: job.id, table: 'want', id, values: { state } }),
    );
  if (wantIds.length > 0) return;
  const id = v7();
  noted.set(key, id);
  const made = await send(job.id, (command) =>
    client.record.make({
      command,
      jobId: job.id,
      table: 'want',
      id,
      values: { thingId, specId: line.specId, what: line.what, qty, state, cause: line.cause },
    }),
  );
  if (made === null) noted.delete(key);
}
