import { v7 } from 'uuid';
import { blank } from '../../core/model/blank.ts';
import { ok } from '../../core/model/result.ts';
import type { JobState, Row } from '../../core/model/tables.ts';
import type { Workshop } from '../../core/store/workshop.ts';
import { command, type TestClient } from '../support/client.ts';
import { BLANK_ROWS } from '../support/rows.ts';
import { commit } from '../support/workshop.ts';

/** Steps of a random history that concern photos and marks. */
export const PHOTO_KINDS = [
  'photo',
  'mark',
  'join',
  'part',
  'number',
  'file',
  'role',
  'draft',
  'photos away',
] as const;

interface PhotoStep {
  readonly kind: string;
  readonly a: number;
  readonly b: number;
}

const pick = <T>(rows: readonly T[], n: number): T | undefined => rows[n % Math.max(1, rows.length)];

/** Photos without files, as an import leaves their rows, and marks on them. */
export function sendPhoto(
  client: TestClient,
  jobId: string,
  state: JobState,
  { kind, a, b }: PhotoStep,
): Promise<{ ok: boolean }> | null {
  const base = { ...command(), jobId };
  const photoIds = state.photo.filter((_, i) => (a + i) % 3 > 0).map((photo) => photo.id);
  const marker = pick(state.marker, a);
  if (kind === 'photo') {
    const original = pick(state.original, a);
    return original
      ? client.record.make({ ...base, table: 'photo', values: { originalId: original.id } })
      : null;
  }
  if (kind === 'mark') {
    const photo = pick(state.photo, a);
    const thingId = b % 3 ? (pick(state.position, b)?.id ?? null) : null;
    return photo
      ? client.record.make({
          ...base,
          table: 'marker',
          values: { photoId: photo.id, x: 0.5, y: 0.5, thingId },
        })
      : null;
  }
  if (kind === 'join' || kind === 'part') {
    const markerIds = state.marker.filter((_, i) => (b + i) % 3 === 0).map((one) => one.id);
    if (markerIds.length === 0) return null;
    return kind === 'join'
      ? client.marker.join({ ...base, markerIds })
      : client.marker.part({ ...base, markerIds });
  }
  if (kind === 'number')
    return marker ? client.marker.number({ ...base, markerId: marker.id, n: 1 + (b % 6) }) : null;
  if (photoIds.length === 0) return null;
  if (kind === 'file')
    return client.photo.file({ ...base, photoIds, removalId: pick(state.removal, b)?.id ?? null });
  if (kind === 'role') return client.photo.role({ ...base, photoIds, role: 'as found' });
  if (kind === 'draft') return client.photo.draft({ ...base, rolls: photoIds.map((id) => [id]) });
  return client.photo.remove({ ...base, photoIds });
}

/** A few photos to begin with: rows as an import leaves them. */
export function addPhotoRows(workshop: Workshop, jobId: string): void {
  const done = commit(workshop, jobId, (writer) => {
    for (const digit of ['1', '2', '3', '4']) {
      const original = { ...(BLANK_ROWS.original as Row<'original'>), id: digit.repeat(64), gone: true };
      writer.put('original', original);
      writer.put('photo', blank('photo', v7(), jobId, { originalId: original.id }));
    }
    return ok(null);
  });
  if (!done.ok) throw new Error(done.fault.sentence);
}
