import { describe, expect, it } from 'vitest';
import { v7 } from 'uuid';
import { blank } from '../../core/model/blank.ts';
import { ok } from '../../core/model/result.ts';
import type { Row } from '../../core/model/tables.ts';
import type { Workshop } from '../../core/store/workshop.ts';
import { clientOf, command, good, logJob, refused, stateOf } from '../support/client.ts';
import { BLANK_ROWS } from '../support/rows.ts';
import { commit, newWorkshop } from '../support/workshop.ts';

/** Marks that go together, their numbers, and photos taken away: each one command, each one undo. */

interface Bench {
  readonly workshop: Workshop;
  readonly jobId: string;
  readonly client: ReturnType<typeof clientOf>;
  readonly photos: string[];
  /** Puts marks on the photos, in turn, and gives their ids. */
  readonly mark: (...things: readonly (string | null)[]) => Promise<string[]>;
  readonly markers: () => readonly Row<'marker'>[];
}

async function bench(): Promise<Bench> {
  const workshop = newWorkshop();
  const jobId = await logJob(workshop, 'Hand pump', ['cover, 4 M6x16', 'plug']);
  const photos = [v7(), v7()];
  const done = commit(workshop, jobId, (writer) => {
    for (const [i, id] of photos.entries()) {
      const originalId = String(i + 1).repeat(64);
      writer.put('original', { ...(BLANK_ROWS.original as Row<'original'>), id: originalId });
      writer.put('photo', blank('photo', id, jobId, { originalId }));
    }
    return ok(null);
  });
  expect(done.ok).toBe(true);
  const client = clientOf(workshop);
  const mark = async (...things: readonly (string | null)[]) => {
    const ids: string[] = [];
    for (const [i, thingId] of things.entries()) {
      const values = { photoId: photos[i % 2], x: 0.1 * i, y: 0.5, thingId };
      ids.push(good(await client.record.make({ ...command(), jobId, table: 'marker', values })).id);
    }
    return ids;
  };
  return { workshop, jobId, client, photos, mark, markers: () => stateOf(workshop, jobId).marker };
}

const groupsOf = ({ markers }: Bench, ids: readonly string[]) =>
  ids.map((id) => markers().find((marker) => marker.id === id)?.togetherId ?? null);

describe('marks that go together', () => {
  it('are joined across photos, take a third in, and one undo sets them apart again', async () => {
    const at = await bench();
    const { client, jobId } = at;
    const ids = await at.mark(null, null, null);
    const [pin = '', slot = '', stub = ''] = ids;
    good(await client.marker.join({ ...command(), jobId, markerIds: [pin, slot], name: 'pin into slot' }));
    const [first] = groupsOf(at, ids);
    expect(groupsOf(at, ids)).toEqual([first, first, null]);
    expect(first).not.toBeNull();
    const said = good(await client.marker.join({ ...command(), jobId, markerIds: [stub, pin] })).said;
    expect(said).toBe('3 marks go together.');
    expect(groupsOf(at, ids)).toEqual([first, first, first]);
    expect(stateOf(at.workshop, jobId).together).toMatchObject([{ id: first, name: 'pin into slot' }]);
    good(await client.history.undo({ ...command(), jobId }));
    expect(groupsOf(at, ids)).toEqual([first, first, null]);
  });

  it('two groups joined are one, and no empty one stays behind', async () => {
    const at = await bench();
    const { client, jobId } = at;
    const ids = await at.mark(null, null, null, null);
    const [a = '', b = '', c = '', d = ''] = ids;
    good(await client.marker.join({ ...command(), jobId, markerIds: [a, b] }));
    good(await client.marker.join({ ...command(), jobId, markerIds: [c, d] }));
    expect(stateOf(at.workshop, jobId).together).toHaveLength(2);
    good(await client.marker.join({ ...command(), jobId, markerIds: [b, c] }));
    expect(new Set(groupsOf(at, ids)).size).toBe(1);
    expect(stateOf(at.workshop, jobId).together).toHaveLength(1);
  });

  it('one is not enough; the last one left alone is set free, by parting, deleting or with its photo', async () => {
    const at = await bench();
    const { client, jobId } = at;
    const ids = await at.mark(null, null);
    const [a = '', b = ''] = ids;
    expect(refused(await client.marker.join({ ...command(), jobId, markerIds: [a, a] }))).toContain(
      'two marks',
    );
    const join = async () => good(await client.marker.join({ ...command(), jobId, markerIds: [a, b] }));
    const free = () => {
      expect(groupsOf(at, [b])).toEqual([null]);
      expect(stateOf(at.workshop, jobId).together).toEqual([]);
    };
    await join();
    good(await client.marker.part({ ...command(), jobId, markerIds: [a] }));
    free();
    await join();
    good(await client.record.remove({ ...command(), jobId, table: 'marker', id: a }));
    free();
    good(await client.history.undo({ ...command(), jobId }));
    good(await client.photo.remove({ ...command(), jobId, photoIds: [at.photos[0] ?? ''] }));
    free();
  });
});

describe('numbers of marks', () => {
  it('of holes change places on their photo: what each stands for, in one command', async () => {
    const at = await bench();
    const { client, jobId } = at;
    const holes = stateOf(at.workshop, jobId).position;
    const [one, two] = holes;
    const [a = '', , c = ''] = await at.mark(one?.id ?? '', one?.id ?? '', two?.id ?? '');
    expect(good(await client.marker.number({ ...command(), jobId, markerId: a, n: 2 })).said).toBe(
      'Holes 1 and 2 changed numbers.',
    );
    const things = () => [a, c].map((id) => at.markers().find((marker) => marker.id === id)?.thingId);
    expect(things()).toEqual([two?.id, one?.id]);
    good(await client.history.undo({ ...command(), jobId }));
    expect(things()).toEqual([one?.id, two?.id]);
    expect(refused(await client.marker.number({ ...command(), jobId, markerId: a, n: 9 }))).toBe(
      'Expected a hole of this set, 1 to 4, got 9.',
    );
  });

  it('of others are their own, and change places on the photo too', async () => {
    const at = await bench();
    const { client, jobId } = at;
    const [a = '', , c = ''] = await at.mark(null, null, null);
    good(await client.marker.number({ ...command(), jobId, markerId: a, n: 2 }));
    const numbers = () => [a, c].map((id) => at.markers().find((marker) => marker.id === id)?.n);
    expect(numbers()).toEqual([2, 1]);
    good(await client.marker.number({ ...command(), jobId, markerId: a, n: 7 }));
    expect(numbers()).toEqual([7, 1]);
  });
});

describe('photos taken away', () => {
  it('go many at once with their marks, and one undo brings all back', async () => {
    const at = await bench();
    const { client, jobId } = at;
    const [a = '', b = ''] = await at.mark(null, null);
    good(
      await client.record.change({
        ...command(),
        jobId,
        table: 'marker',
        id: b,
        values: { carriedFromId: a, confidence: 0.8 },
      }),
    );
    const said = good(
      await client.photo.remove({ ...command(), jobId, photoIds: [at.photos[0] ?? ''] }),
    ).said;
    expect(said).toBe('1 photo taken away from the job, with 1 mark. Undo brings them back.');
    expect(at.markers()).toMatchObject([{ id: b, carriedFromId: null }]);
    good(await client.history.undo({ ...command(), jobId }));
    expect(at.markers()).toHaveLength(2);
    good(await client.photo.remove({ ...command(), jobId, photoIds: at.photos }));
    expect(stateOf(at.workshop, jobId)).toMatchObject({ photo: [], marker: [] });
    expect(refused(await client.photo.remove({ ...command(), jobId, photoIds: at.photos }))).toContain(
      'Expected a photo of this job',
    );
  });

  it('are shown as found or as refitted, many at once', async () => {
    const at = await bench();
    good(
      await at.client.photo.role({ ...command(), jobId: at.jobId, photoIds: at.photos, role: 'as found' }),
    );
    expect(stateOf(at.workshop, at.jobId).photo.map((photo) => photo.role)).toEqual(['as found', 'as found']);
  });
});
