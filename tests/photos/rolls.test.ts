import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { v7 } from 'uuid';
import { describe, expect, it } from 'vitest';
import { blank } from '../../core/model/blank.ts';
import { ok } from '../../core/model/result.ts';
import type { Row } from '../../core/model/tables.ts';
import { fileByTime, type FilingRemoval, offersOf, rollsOf } from '../../core/photos/filing.ts';
import type { Workshop } from '../../core/store/workshop.ts';
import { historyUndo } from '../../core/usecases/history.ts';
import { logOrder } from '../../core/usecases/log/order.ts';
import { clientOf, command, good, refused } from '../support/client.ts';
import { addJob, commit, newWorkshop } from '../support/workshop.ts';

/** Photos before the log: what is offered to which removal, and removals made from a roll of pictures. */

const MINUTE = 60_000;
const START = Date.UTC(2026, 4, 3, 8);

const removals = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 300 }), fc.option(fc.integer({ min: 0, max: 40 }))), {
    maxLength: 8,
  })
  .map((list): FilingRemoval[] =>
    list.map(([from, length], i) => ({
      id: `removal ${i}`,
      number: i + 1,
      title: '',
      startedAt: START + from * MINUTE,
      endedAt: length === null ? null : START + (from + length) * MINUTE,
    })),
  );
const moments = fc
  .array(fc.integer({ min: -30, max: 400 }), { maxLength: 12 })
  .map((list) =>
    list.map((minute, i) => ({ id: `photo ${String(i).padStart(2, '0')}`, at: START + minute * MINUTE })),
  );
const NOW = START + 500 * MINUTE;
const at = { zone: 'UTC', now: NOW };
const takenAt = (utc: number) => ({ takenUtc: utc, takenLocal: new Date(utc).toISOString().slice(0, 19) });

describe('a moment', () => {
  it('is filed into a removal that was under way then, the latest of several, or into none; a reason is always said', () => {
    fc.assert(
      fc.property(removals, fc.integer({ min: -30, max: 400 }), (log, minute) => {
        const utc = START + minute * MINUTE;
        const filed = fileByTime(takenAt(utc), log, at);
        expect(filed.filedWhy.length).toBeGreaterThan(10);
        expect(filed.filedBy).toBe(filed.removalId === null ? 'none' : 'time');
        const said = log.filter(
          (one) => one.endedAt !== null && (one.startedAt ?? 0) <= utc && utc <= one.endedAt,
        );
        const hit = log.find((one) => one.id === filed.removalId);
        // A removal with both its times recorded around the moment is never passed over for an older one.
        for (const one of said) expect(hit?.startedAt ?? 0).toBeGreaterThanOrEqual(one.startedAt ?? 0);
        if (hit) {
          expect(hit.startedAt).toBeLessThanOrEqual(utc);
          if (hit.endedAt !== null) expect(hit.endedAt).toBeGreaterThanOrEqual(utc);
        }
      }),
    );
  });

  it('is filed the same whatever the order in which the removals are given', () => {
    fc.assert(
      fc.property(removals, fc.integer({ min: -30, max: 400 }), (log, minute) => {
        const starts = new Set(log.map((one) => one.startedAt));
        fc.pre(starts.size === log.length);
        const taken = takenAt(START + minute * MINUTE);
        expect(fileByTime(taken, [...log].reverse(), at)).toEqual(fileByTime(taken, log, at));
      }),
    );
  });
});

describe('offers', () => {
  it('give each photo outside of all removals to the next that began after it, once, in the order of time', () => {
    fc.assert(
      fc.property(removals, moments, (log, photos) => {
        const offers = offersOf(log, photos, NOW);
        const offered = offers.flatMap((offer) => offer.photoIds);
        expect(new Set(offered).size).toBe(offered.length);
        for (const photo of photos) {
          const offer = offers.find((one) => one.photoIds.includes(photo.id));
          const inside = fileByTime(takenAt(photo.at), log, at).removalId !== null;
          expect(offer === undefined, photo.id).toBe(inside);
          if (!offer) continue;
          const later = log.map((one) => one.startedAt ?? 0).filter((from) => from > photo.at);
          const to = log.find((one) => one.id === offer.removalId);
          expect(to?.startedAt ?? null).toBe(later.length === 0 ? null : Math.min(...later));
        }
        for (const { photoIds } of offers) {
          const times = photoIds.map((id) => photos.find((photo) => photo.id === id)?.at ?? 0);
          expect(times).toEqual([...times].sort((a, b) => a - b));
        }
      }),
    );
  });
});

describe('rolls', () => {
  it('are cut exactly at the pauses that are longer, and hold every photo once', () => {
    fc.assert(
      fc.property(moments, fc.integer({ min: 1, max: 60 }), (photos, pause) => {
        const rolls = rollsOf(photos, pause * MINUTE);
        expect(
          rolls
            .flat()
            .map((one) => one.id)
            .sort(),
        ).toEqual(photos.map((one) => one.id).sort());
        for (const roll of rolls)
          for (const [i, one] of roll.entries())
            if (i > 0) expect(one.at - (roll[i - 1]?.at ?? 0)).toBeLessThanOrEqual(pause * MINUTE);
        for (const [i, roll] of rolls.entries())
          if (i > 0)
            expect((roll[0]?.at ?? 0) - (rolls[i - 1]?.at(-1)?.at ?? 0)).toBeGreaterThan(pause * MINUTE);
      }),
    );
  });
});

/** Photo rows as an import leaves them, without files: what is tried here looks at rows only. */
function addRows(
  workshop: Workshop,
  jobId: string,
  photos: readonly {
    taken: number | null;
    local?: string;
    phash?: string;
    sharpness?: number;
    added?: number;
  }[],
): string[] {
  const ids: string[] = [];
  const done = commit(workshop, jobId, (writer) => {
    for (const [i, one] of photos.entries()) {
      const originalId = createHash('sha256').update(`${jobId}${i}`).digest('hex');
      writer.put('original', {
        id: originalId,
        bytes: 1,
        type: 'image/jpeg',
        width: 40,
        height: 30,
        turn: 1,
        takenLocal: one.local ?? (one.taken === null ? null : new Date(one.taken).toISOString().slice(0, 19)),
        takenZone: one.taken === null ? null : '+00:00',
        takenUtc: one.taken,
        camera: '',
        sharpness: one.sharpness ?? null,
        phash: one.phash ?? null,
        hasLocation: false,
        gone: false,
        goneWhy: '',
      } satisfies Row<'original'>);
      const photo = blank('photo', v7(), jobId, { originalId, addedAt: one.added ?? START });
      writer.put('photo', photo);
      ids.push(photo.id);
    }
    return ok(null);
  });
  if (!done.ok) throw new Error(done.fault.sentence);
  return ids;
}

function addTimed(
  workshop: Workshop,
  jobId: string,
  title: string,
  ord: string,
  from: number,
  to: number,
): string {
  const removal = blank('removal', v7(), jobId, { title, ord, phase: 'off', startedAt: from, endedAt: to });
  const done = commit(workshop, jobId, (writer) => {
    writer.put('removal', removal);
    return ok(null);
  });
  if (!done.ok) throw new Error(done.fault.sentence);
  return removal.id;
}

const stateOf = (workshop: Workshop, jobId: string) => {
  const state = workshop.job(jobId);
  if (!state) throw new Error('Expected the job.');
  return state;
};

describe('photos of a job', () => {
  it('since the last removal are offered to the next, those before one to that one; put out by hand to none', async () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    const cover = addTimed(workshop, jobId, 'Cover', 'a1', START, START + 10 * MINUTE);
    const wheel = addTimed(workshop, jobId, 'Wheel', 'a2', START + 30 * MINUTE, START + 40 * MINUTE);
    const ids = addRows(workshop, jobId, [
      { taken: START - 5 * MINUTE },
      { taken: START + 20 * MINUTE },
      { taken: START + 50 * MINUTE },
      { taken: null, added: START + 55 * MINUTE },
    ]);
    const client = clientOf(workshop);
    const offers = async () => good(await client.photo.tray({ jobId })).offers;
    expect(await offers()).toEqual([
      { removalId: cover, photoIds: [ids[0]] },
      { removalId: wheel, photoIds: [ids[1]] },
      { removalId: null, photoIds: [ids[2], ids[3]] },
    ]);
    good(await client.photo.file({ ...command(), jobId, photoIds: ids.slice(0, 3), removalId: null }));
    expect(await offers()).toEqual([{ removalId: null, photoIds: [ids[3]] }]);
    expect(refused(await client.photo.tray({ jobId: v7() }))).toContain('Expected a job');
  });

  it('become draft removals at their pauses, in the log where their time belongs, and one undo takes them away', async () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    addTimed(workshop, jobId, 'Cover', 'a1', START, START + 10 * MINUTE);
    addTimed(workshop, jobId, 'Wheel', 'a2', START + 60 * MINUTE, START + 70 * MINUTE);
    const ids = addRows(workshop, jobId, [
      { taken: START + 20 * MINUTE },
      { taken: START + 23 * MINUTE },
      { taken: START + 40 * MINUTE },
      { taken: START + 90 * MINUTE },
    ]);
    const client = clientOf(workshop);
    const input = { ...command(), jobId, photoIds: [...ids].reverse() };
    expect(good(await client.photo.draft(input)).said).toBe('3 removals are made from 4 photos.');
    const state = stateOf(workshop, jobId);
    const log = logOrder(state.removal);
    expect(log.map(({ title, startedAt }) => [title, ((startedAt ?? 0) - START) / MINUTE])).toEqual([
      ['Cover', 0],
      ['', 20],
      ['', 40],
      ['Wheel', 60],
      ['', 90],
    ]);
    expect(log[1]).toMatchObject({ phase: 'off', endedAt: START + 23 * MINUTE });
    const filed = ids.map((id) => state.photo.find((photo) => photo.id === id)?.removalId);
    expect(filed).toEqual([log[1]?.id, log[1]?.id, log[2]?.id, log[4]?.id]);
    expect(historyUndo({ workshop, actor: null }, { command: v7(), jobId }).ok).toBe(true);
    const undone = stateOf(workshop, jobId);
    expect(undone.removal).toHaveLength(2);
    expect(undone.photo.map((photo) => photo.removalId)).toEqual([null, null, null, null]);
  });

  it('are shown as groups before anything is made, and made as somebody laid them; one undo takes all back', async () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    const ids = addRows(workshop, jobId, [
      { taken: START },
      { taken: START + 2 * MINUTE },
      { taken: START + 20 * MINUTE },
    ]);
    const [a = '', b = '', c = ''] = ids;
    const client = clientOf(workshop);
    const { rolls } = good(await client.photo.rolls({ jobId, photoIds: [c, a, b] }));
    expect(rolls).toEqual([
      { photoIds: [a, b], from: START, to: START + 2 * MINUTE },
      { photoIds: [c], from: START + 20 * MINUTE, to: START + 20 * MINUTE },
    ]);
    expect(good(await client.photo.rolls({ jobId, photoIds: ids, pauseMs: 30 * MINUTE })).rolls).toHaveLength(
      1,
    );
    expect(stateOf(workshop, jobId).removal).toEqual([]);
    const twice = { ...command(), jobId, rolls: [[a, b], [b]] };
    expect(refused(await client.photo.draft(twice))).toContain('each photo in one group');
    expect(refused(await client.photo.draft({ ...command(), jobId }))).toContain('got none');
    good(await client.photo.draft({ ...command(), jobId, rolls: [[b, c], [a]] }));
    const log = logOrder(stateOf(workshop, jobId).removal);
    expect(log.map((one) => [one.startedAt, one.endedAt])).toEqual([
      [START, START],
      [START + 2 * MINUTE, START + 20 * MINUTE],
    ]);
    expect(stateOf(workshop, jobId).photo.map((photo) => photo.removalId)).toEqual([
      log[0]?.id,
      log[1]?.id,
      log[1]?.id,
    ]);
    good(await client.history.undo({ ...command(), jobId }));
    expect(stateOf(workshop, jobId).removal).toEqual([]);
  });

  it('of another job make no removal', async () => {
    const workshop = newWorkshop();
    const [jobId, other] = [addJob(workshop), addJob(workshop, 'Hand pump')];
    const [stranger] = addRows(workshop, other, [{ taken: START }]);
    const client = clientOf(workshop);
    const input = { ...command(), jobId, photoIds: [stranger ?? ''] };
    expect(refused(await client.photo.draft(input))).toContain('Expected a photo of this job');
    expect(stateOf(workshop, jobId).removal).toEqual([]);
  });

  it('that show nearly the same are grouped by photo, the sharpest first', async () => {
    const workshop = newWorkshop();
    const jobId = addJob(workshop);
    const ids = addRows(workshop, jobId, [
      { taken: START, phash: '00000000000000ff', sharpness: 10 },
      { taken: START, phash: 'ffffffff00000000', sharpness: 10 },
      { taken: START, phash: '00000000000000fe', sharpness: 90 },
    ]);
    expect(good(await clientOf(workshop).photo.tray({ jobId })).groups).toEqual([[ids[2], ids[0]]]);
  });
});
