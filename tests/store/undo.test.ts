import { v7 } from 'uuid';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blank } from '../../core/model/blank.ts';
import { ok } from '../../core/model/result.ts';
import type { Row } from '../../core/model/tables.ts';
import { checkDatabase } from '../../core/store/check.ts';
import type { Workshop } from '../../core/store/workshop.ts';
import { addJob, addRemoval, commit, newWorkshop } from '../support/workshop.ts';

const undo = (workshop: Workshop, chain: string, actor = 'unnamed') =>
  workshop.undo({ id: v7(), chain, actor, at: workshop.now() });
const redo = (workshop: Workshop, chain: string, actor = 'unnamed') =>
  workshop.redo({ id: v7(), chain, actor, at: workshop.now() });
const titles = (workshop: Workshop, jobId: string) => workshop.job(jobId)?.removal.map((one) => one.title);

function rename(workshop: Workshop, removal: Row<'removal'>, title: string, actor = 'unnamed') {
  return commit(
    workshop,
    removal.jobId,
    (writer) => {
      writer.put('removal', { ...(writer.get('removal', removal.id) ?? removal), title });
      return ok(null);
    },
    { actor },
  );
}

describe('undo', () => {
  it('takes back the last command, then the one before; redo does them again', () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    addRemoval(workshop, jobId, 'Guard');
    addRemoval(workshop, jobId, 'Belt');
    expect(undo(workshop, jobId).ok).toBe(true);
    expect(titles(workshop, jobId)).toEqual(['Guard']);
    undo(workshop, jobId);
    expect(titles(workshop, jobId)).toEqual([]);
    redo(workshop, jobId);
    redo(workshop, jobId);
    expect(titles(workshop, jobId)).toEqual(['Guard', 'Belt']);
    expect(redo(workshop, jobId)).toMatchObject({
      ok: false,
      fault: { sentence: 'There is nothing to redo.' },
    });
  });

  it('is a new entry: nothing of the record gets shorter', () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    addRemoval(workshop, jobId, 'Guard');
    const before = workshop.lastSeq();
    undo(workshop, jobId);
    expect(workshop.lastSeq()).toBe(before + 1);
  });

  it('a new command after an undo ends what could be done again', () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    addRemoval(workshop, jobId, 'Guard');
    undo(workshop, jobId);
    addRemoval(workshop, jobId, 'Belt');
    expect(redo(workshop, jobId).ok).toBe(false);
    undo(workshop, jobId);
    expect(titles(workshop, jobId)).toEqual([]);
  });

  it('each person has a stack of their own', () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    addRemoval(workshop, jobId, 'by Ana', 'ana');
    addRemoval(workshop, jobId, 'by Ben', 'ben');
    undo(workshop, jobId, 'ana');
    expect(titles(workshop, jobId)).toEqual(['by Ben']);
  });

  it('is refused while somebody else has changed the same thing since, and says who and what', () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    const ana = v7();
    workshop.commit(
      { id: v7(), what: 'person.put', chain: 'workshop', actor: 'unnamed', at: 1 },
      (writer) => {
        writer.put('person', blank('person', ana, '', { name: 'Ana' }));
        return ok(null);
      },
    );
    const removal = addRemoval(workshop, jobId, 'Guard');
    rename(workshop, removal, 'Wheel guard', ana);
    const refused = undo(workshop, jobId);
    expect(refused).toMatchObject({ ok: false, fault: { code: 'conflict' } });
    expect(refused.ok ? '' : refused.fault.sentence).toMatch(
      /^Since then Ana changed “Guard” \(\d\d:\d\d UTC\)\. Undo that first\.$/,
    );
    expect(titles(workshop, jobId)).toEqual(['Wheel guard']);
    undo(workshop, jobId, ana);
    expect(undo(workshop, jobId).ok).toBe(true);
  });

  it('takes one import back as one, though it was written in many entries', () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    addRemoval(workshop, jobId, 'Guard');
    for (const title of ['a', 'b', 'c'])
      commit(
        workshop,
        jobId,
        (writer) => {
          writer.put('removal', blank('removal', v7(), jobId, { ord: `b${title}`, title }));
          return ok(null);
        },
        { batch: 'import 1' },
      );
    undo(workshop, jobId);
    expect(titles(workshop, jobId)).toEqual(['Guard']);
    redo(workshop, jobId);
    expect(titles(workshop, jobId)).toEqual(['Guard', 'a', 'b', 'c']);
  });

  it('never goes past a sign-off', () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    const person = v7();
    addRemoval(workshop, jobId, 'Guard');
    commit(
      workshop,
      jobId,
      (writer) => {
        writer.put('person', blank('person', person, '', { name: 'Ana' }));
        writer.put('signoff', {
          id: v7(),
          jobId,
          head: 'ab'.repeat(32),
          personId: person,
          said: 'done',
          at: 1,
        });
        return ok(null);
      },
      { actor: person, what: 'signoff.add' },
    );
    expect(undo(workshop, jobId)).toMatchObject({
      ok: false,
      fault: { sentence: expect.stringContaining('signed off') },
    });
  });

  it('the same press sent twice takes back one command', () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    addRemoval(workshop, jobId, 'Guard');
    addRemoval(workshop, jobId, 'Belt');
    const id = v7();
    const press = () => workshop.undo({ id, chain: jobId, actor: 'unnamed', at: 1 });
    press();
    press();
    expect(titles(workshop, jobId)).toEqual(['Guard']);
  });

  it('restores everything exactly, whatever was done in between', { timeout: 120_000 }, async () => {
    const step = fc.oneof(
      fc.record({ do: fc.constant('add' as const), title: fc.string({ maxLength: 12 }) }),
      fc.record({ do: fc.constant('rename' as const), at: fc.nat(20), title: fc.string({ maxLength: 12 }) }),
      fc.record({ do: fc.constant('remove' as const), at: fc.nat(20) }),
      fc.record({ do: fc.constant('undo' as const) }),
      fc.record({ do: fc.constant('redo' as const) }),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(step, { maxLength: 40 }), async (steps) => {
        const workshop = newWorkshop();
        const jobId = addJob(workshop);
        /** What the rows must be after each undo: a model that simply keeps whole copies. */
        const past: string[] = [];
        const future: string[] = [];
        const snap = () => JSON.stringify(workshop.job(jobId)?.removal);
        for (const one of steps) {
          const before = snap();
          const rows = workshop.job(jobId)?.removal ?? [];
          if (one.do === 'undo') {
            const done = undo(workshop, jobId);
            const wanted = past.pop();
            // The entry that made the job can be undone as well; the test stops above it.
            if (wanted === undefined) {
              if (done.ok) redo(workshop, jobId);
              continue;
            }
            expect(snap()).toBe(wanted);
            future.push(before);
            continue;
          }
          if (one.do === 'redo') {
            const wanted = future.pop();
            if (wanted === undefined) continue;
            expect(redo(workshop, jobId).ok).toBe(true);
            expect(snap()).toBe(wanted);
            past.push(before);
            continue;
          }
          const target = 'at' in one ? rows[one.at % Math.max(1, rows.length)] : undefined;
          const done = commit(workshop, jobId, (writer) => {
            if (one.do === 'add')
              writer.put('removal', blank('removal', v7(), jobId, { ord: 'a0', title: one.title }));
            else if (target && one.do === 'rename') writer.put('removal', { ...target, title: one.title });
            else if (target) writer.remove('removal', target.id);
            return ok(null);
          });
          if (done.ok && done.value.seq > 0) {
            past.push(before);
            future.length = 0;
          }
        }
        expect(await checkDatabase(workshop.db, 'none')).toEqual([]);
        workshop.close();
      }),
      { numRuns: 40 },
    );
  });
});
