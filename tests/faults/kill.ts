import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { v7 } from 'uuid';
import { checkDatabase } from '../../core/store/check.ts';
import { call, makeFolder, type RunningHost, startHost } from '../api/running-host.ts';

export interface KillReport {
  readonly kills: number;
  readonly acknowledged: number;
  /** Acknowledged changes that are not there afterwards, and damage that the check names. */
  readonly faults: readonly string[];
}

const pause = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

interface Reply {
  json: { ok: boolean; value?: { removalId: string } };
}

/** Sends entry lines as fast as the host takes them until it is gone; keeps what was acknowledged. */
async function send(host: RunningHost, jobId: string, kept: string[]): Promise<void> {
  for (let n = 0; ; n += 1) {
    try {
      const answer = await call(host, 'log/add', {
        command: v7(),
        jobId,
        text: `cover ${n}, 5 13`,
        removalId: null,
      });
      const reply = JSON.parse(answer.body) as Reply;
      if (reply.json.ok && reply.json.value) kept.push(reply.json.value.removalId);
    } catch {
      return;
    }
  }
}

/**
 * Kills the host with SIGKILL at random moments while two senders write, starts it again on the same workshop, and
 * at the end reads the file itself: every acknowledged change is there, and the check names no damage.
 */
export async function killAgainAndAgain(times: number): Promise<KillReport> {
  const folder = makeFolder();
  const kept: string[] = [];
  const faults: string[] = [];
  const jobId = randomUUID();
  let host = await startHost({ folder: folder.path });
  await call(host, 'jobs/add', { command: v7(), id: jobId, title: 'Killed again and again' });
  for (let kill = 0; kill < times; kill += 1) {
    const senders = [send(host, jobId, kept), send(host, jobId, kept)];
    // Not by the clock alone: on a slow machine nothing would have been written yet.
    const wanted = kept.length + 1 + (kill % 4);
    for (let waited = 0; kept.length < wanted && waited < 5_000; waited += 5) await pause(5);
    await pause((kill * 7) % 30);
    await host.kill('SIGKILL');
    await Promise.all(senders);
    host = await startHost({ folder: folder.path });
  }
  await host.kill('SIGKILL');
  const db = new Database(join(host.workshop, 'workshop.db'), { readonly: true });
  const there = new Set(db.prepare('SELECT id FROM removal').pluck().all() as string[]);
  for (const id of kept) if (!there.has(id)) faults.push(`Removal ${id} was acknowledged and is gone.`);
  faults.push(...(await checkDatabase(db, 'none')));
  db.close();
  folder.remove();
  return { kills: times, acknowledged: kept.length, faults };
}
