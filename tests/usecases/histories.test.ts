import fc from 'fast-check';
import { v7 } from 'uuid';
import { describe, expect, it } from 'vitest';
import type { JobState } from '../../core/model/tables.ts';
import { planJob } from '../../core/reinstall/index.ts';
import { checkDatabase } from '../../core/store/check.ts';
import type { Workshop } from '../../core/store/workshop.ts';
import { balances, bookDifference, countLines, moveProblems } from '../../core/tally/index.ts';
import { jobExport, jobImport } from '../../core/usecases/job-file.ts';
import { clientOf, command, logJob, stateOf } from '../support/client.ts';
import { READY_JOBS } from '../support/jobs.ts';
import { newWorkshop } from '../support/workshop.ts';

import { addPhotoRows } from './history-photos.ts';
import { KINDS, type Step } from './history-kinds.ts';
import { pick, SENDERS } from './history-steps.ts';

/**
 * Long random histories of the operations that a screen or a script can send, refusals included, with undo in between.
 * Numbers pick from what is there, so that most of them mean something.
 */
const step: fc.Arbitrary<Step> = fc.record({
  kind: fc.constantFrom(...KINDS, 'log', 'log', 'tightened', 'done', 'come off', 'undo'),
  a: fc.nat(10_000),
  b: fc.nat(10_000),
}) as fc.Arbitrary<Step>;

/** The whole job as text, for comparing states; the workshop's bags too. */
const snap = (workshop: Workshop, jobId: string) => JSON.stringify(workshop.job(jobId));

function booksHold(state: JobState): void {
  expect(moveProblems(state)).toEqual([]);
  for (const line of countLines(state)) expect(bookDifference(line)).toBe(0);
  const all = [...balances(state, 'all').values()][0];
  if (!all) return;
  const { supply, ...rest } = all;
  expect(Object.values(rest).reduce((sum, qty) => sum + qty, supply)).toBe(0);
}

describe('random histories of operations', () => {
  it('keep the books closed, break no constraint, and undo to where they began', {
    timeout: 300_000,
  }, async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...READY_JOBS),
        fc.array(step, { minLength: 10, maxLength: 45 }),
        async (job, steps) => {
          const workshop = newWorkshop();
          await logJob(workshop, 'Earlier', pick(READY_JOBS, job.lines.length)?.lines ?? []);
          const jobId = await logJob(workshop, job.name, job.lines);
          addPhotoRows(workshop, jobId);
          const client = clientOf(workshop);
          const past: string[] = [];
          const future: string[] = [];
          for (const one of steps) {
            const state = stateOf(workshop, jobId);
            const before = snap(workshop, jobId);
            const seq = workshop.lastSeq();
            if (one.kind === 'undo' && past.length === 0) continue;
            const reply = await SENDERS[one.kind](client, jobId, state, one);
            if (reply === null) continue;
            const after = snap(workshop, jobId);
            if (!reply.ok || workshop.lastSeq() === seq) {
              expect(after).toBe(before);
              continue;
            }
            if (one.kind === 'undo') {
              expect(after).toBe(past.pop());
              future.push(before);
            } else if (one.kind === 'redo') {
              expect(after).toBe(future.pop());
              past.push(before);
            } else {
              past.push(before);
              future.length = 0;
            }
            booksHold(stateOf(workshop, jobId));
          }
          expect(await checkDatabase(workshop.db, 'none')).toEqual([]);
          planJob(stateOf(workshop, jobId), workshop.now());
          roundTrip(workshop, jobId);
          for (let wanted = past.pop(); wanted !== undefined; wanted = past.pop()) {
            const undone = await client.history.undo({ command: v7(), jobId });
            expect(undone.ok).toBe(true);
            expect(snap(workshop, jobId)).toBe(wanted);
          }
          workshop.close();
        },
      ),
      { numRuns: 40, seed: 11, endOnFailure: true },
    );
  });
});

/** Export → import → export gives the same text, in a workshop that knows the earlier job too. */
function roundTrip(workshop: Workshop, jobId: string): void {
  const textOf = (from: Workshop, id: string): string => {
    const file = jobExport({ workshop: from, actor: null }, id, { withoutContact: false });
    if (!file.ok) throw new Error(file.fault.sentence);
    return file.value.text;
  };
  const other = newWorkshop();
  const take = (id: string): string => {
    const text = textOf(workshop, id);
    const reply = jobImport({ workshop: other, actor: null }, { ...command(), text });
    if (!reply.ok) throw new Error(reply.fault.sentence);
    return text;
  };
  const { patternJobId } = stateOf(workshop, jobId).job;
  if (patternJobId !== null) take(patternJobId);
  const first = take(jobId);
  expect(textOf(other, jobId)).toBe(first);
  other.close();
}
