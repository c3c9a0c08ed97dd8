import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { v7 } from 'uuid';
import { onTestFinished } from 'vitest';
import { blank } from '../../core/model/blank.ts';
import type { Row } from '../../core/model/tables.ts';
import type { Result } from '../../core/model/result.ts';
import { type OpenOptions, openWorkshop, type Workshop } from '../../core/store/workshop.ts';
import type { Writer } from '../../core/store/writer.ts';

/** A folder of its own for one test, gone afterwards. */
export function tempFolder(): string {
  const dir = mkdtempSync(join(tmpdir(), 'everybolt-test-'));
  onTestFinished(() => rmSync(dir, { recursive: true, force: true }));
  return dir;
}

/** A real workshop on disk; the clock moves one second at each look, so that times are told apart. */
export function openTest(dir: string, options: Partial<OpenOptions> = {}): Workshop {
  let at = Date.UTC(2026, 8, 1);
  const now = () => {
    at += 1000;
    return at;
  };
  const opened = openWorkshop(dir, { write: true, unsafeFast: true, now, ...options });
  if (!opened.ok) throw new Error(opened.fault.sentence);
  onTestFinished(() => {
    if (opened.value.db.open) opened.value.close();
  });
  return opened.value;
}

export const newWorkshop = (): Workshop => openTest(tempFolder());

/** Commits a decision in a job's chain as somebody. */
export function commit<T>(
  workshop: Workshop,
  jobId: string,
  decide: (writer: Writer) => Result<T>,
  more: { actor?: string; what?: string; id?: string; batch?: string } = {},
) {
  return workshop.commit<T>(
    {
      id: more.id ?? v7(),
      what: more.what ?? 'test',
      chain: jobId,
      actor: more.actor ?? 'unnamed',
      at: workshop.now(),
      batch: more.batch ?? null,
    },
    decide,
  );
}

/** A job in the workshop; gives its id. */
export function addJob(workshop: Workshop, title = 'Bench grinder'): string {
  const id = v7();
  const done = commit(workshop, id, (writer) => {
    writer.put('job', blank('job', id, '', { title, createdAt: 1 }));
    return { ok: true, value: null };
  });
  if (!done.ok) throw new Error(done.fault.sentence);
  return id;
}

/** A removal in a job, logged by somebody; gives its row. */
export function addRemoval(
  workshop: Workshop,
  jobId: string,
  title: string,
  actor = 'unnamed',
): Row<'removal'> {
  const n = workshop.job(jobId)?.removal.length ?? 0;
  const row = blank('removal', v7(), jobId, { title, ord: `a${String(n).padStart(4, '0')}1` });
  const put = (writer: Writer): Result<null> => {
    writer.put('removal', row);
    return { ok: true, value: null };
  };
  const done = commit(workshop, jobId, put, { actor });
  if (!done.ok) throw new Error(done.fault.sentence);
  return row;
}
