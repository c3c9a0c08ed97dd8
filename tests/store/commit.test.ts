import { v7 } from 'uuid';
import { describe, expect, it } from 'vitest';
import { blank } from '../../core/model/blank.ts';
import { ok, refuse } from '../../core/model/result.ts';
import { checkDatabase } from '../../core/store/check.ts';
import { addJob, addRemoval, commit, newWorkshop } from '../support/workshop.ts';

const faultsOf = (workshop: ReturnType<typeof newWorkshop>) => checkDatabase(workshop.db, 'none');

describe('commit', () => {
  it('writes rows and one journal entry in one transaction, however many rows there are', () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    const before = workshop.lastSeq();
    const done = commit(workshop, jobId, (writer) => {
      for (let i = 0; i < 50; i += 1)
        writer.put('removal', blank('removal', v7(), jobId, { ord: `a${i}`, title: `Cover ${i}` }));
      return ok('fifty');
    });
    expect(done).toMatchObject({ ok: true, value: { seq: before + 1, value: 'fifty' } });
    expect(workshop.job(jobId)?.removal).toHaveLength(50);
    expect(workshop.job(jobId)?.thing).toHaveLength(50);
  });

  it('leaves nothing behind when the decision refuses', async () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    const before = workshop.lastSeq();
    const done = commit(workshop, jobId, (writer) => {
      writer.put('removal', blank('removal', v7(), jobId, { ord: 'a0', title: 'Cover' }));
      return refuse('refused', 'Not now.');
    });
    expect(done).toEqual({ ok: false, fault: { code: 'refused', sentence: 'Not now.' } });
    expect(workshop.lastSeq()).toBe(before);
    expect(workshop.job(jobId)?.removal).toEqual([]);
    expect(await faultsOf(workshop)).toEqual([]);
  });

  it('leaves nothing behind when the decision throws, and lets the bug through', () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    expect(() =>
      commit(workshop, jobId, (writer) => {
        writer.put('removal', blank('removal', v7(), jobId, { ord: 'a0', title: 'Cover' }));
        throw new Error('a bug');
      }),
    ).toThrow('a bug');
    expect(workshop.job(jobId)?.removal).toEqual([]);
  });

  it('does the same command once, however often it is sent', () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    const id = v7();
    const send = () =>
      commit(
        workshop,
        jobId,
        (writer) => {
          writer.put('removal', blank('removal', v7(), jobId, { ord: 'a0', title: 'Cover' }));
          return ok({ said: 'kept' });
        },
        { id },
      );
    const first = send();
    const again = send();
    expect(first).toMatchObject({ ok: true, value: { repeated: false, value: { said: 'kept' } } });
    expect(again).toMatchObject({ ok: true, value: { repeated: true, value: { said: 'kept' } } });
    expect(workshop.job(jobId)?.removal).toHaveLength(1);
  });

  it('writes no entry for a command that changes nothing', () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    const removal = addRemoval(workshop, jobId, 'Cover');
    const before = workshop.lastSeq();
    const done = commit(workshop, jobId, (writer) => {
      writer.put('removal', removal);
      return ok(null);
    });
    expect(done).toMatchObject({ ok: true, value: { seq: 0 } });
    expect(workshop.lastSeq()).toBe(before);
  });

  it('refuses a row that names a thing of another job, in words', () => {
    const workshop = newWorkshop();
    const mine = addJob(workshop);
    const other = addJob(workshop, 'Lathe');
    const removal = addRemoval(workshop, other, 'Chuck');
    const done = commit(workshop, mine, (writer) => {
      writer.put('part', blank('part', v7(), mine, { name: 'Jaw', removalId: removal.id }));
      return ok(null);
    });
    expect(done).toMatchObject({
      ok: false,
      fault: { code: 'refused', sentence: expect.stringContaining('of the same job') },
    });
  });

  it('refuses to take away what is still named, and says what names it', () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    const removal = addRemoval(workshop, jobId, 'Cover');
    commit(workshop, jobId, (writer) => {
      writer.put('part', blank('part', v7(), jobId, { name: 'Cover', removalId: removal.id }));
      return ok(null);
    });
    const done = commit(workshop, jobId, (writer) => {
      writer.remove('removal', removal.id);
      return ok(null);
    });
    expect(done).toMatchObject({
      ok: false,
      fault: { sentence: 'This removal cannot go: a part still names it. Take that away first.' },
    });
    expect(workshop.job(jobId)?.removal).toHaveLength(1);
  });

  it('refuses a row that is not what its schema says, in words', () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    const done = commit(workshop, jobId, (writer) => {
      writer.put('ownStep', blank('ownStep', v7(), jobId, { ord: 'a0', title: '' }));
      return ok(null);
    });
    expect(done).toMatchObject({
      ok: false,
      fault: { code: 'input', sentence: expect.stringContaining('title') },
    });
  });

  it('lets two bags swap their labels in one command', () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    const a = blank('stow', v7(), '', { label: '4' });
    const b = blank('stow', v7(), '', { label: '5' });
    commit(workshop, jobId, (writer) => {
      writer.put('stow', a);
      writer.put('stow', b);
      return ok(null);
    });
    const swapped = commit(workshop, jobId, (writer) => {
      writer.put('stow', { ...a, label: '5' });
      writer.put('stow', { ...b, label: '4' });
      return ok(null);
    });
    expect(swapped.ok).toBe(true);
    expect(workshop.job(jobId)?.stow.map((stow) => stow.label)).toEqual(['5', '4']);
  });

  it('refuses a label that is in use, and takes it once the other bag is empty', () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    const first = blank('stow', v7(), '', { label: '4' });
    const put = (row: typeof first) =>
      commit(workshop, jobId, (writer) => {
        writer.put('stow', row);
        return ok(null);
      });
    put(first);
    const second = blank('stow', v7(), '', { label: '4' });
    expect(put(second)).toMatchObject({
      ok: false,
      fault: { sentence: expect.stringContaining('not in use') },
    });
    put({ ...first, emptied: true });
    expect(put(second).ok).toBe(true);
  });

  it('says each change to listeners, once, and refusals not at all', () => {
    const workshop = newWorkshop();
    const heard: number[] = [];
    const stop = workshop.changes.subscribe((change) => heard.push(change.seq));
    const jobId = addJob(workshop);
    commit(workshop, jobId, () => refuse('refused', 'no'));
    addRemoval(workshop, jobId, 'Cover');
    stop();
    addRemoval(workshop, jobId, 'Belt');
    expect(heard).toEqual([2, 3]);
  });
});
