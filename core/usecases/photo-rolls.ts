import { generateKeyBetween } from 'fractional-indexing';
import { blank } from '../model/blank.ts';
import { ok, refuse, type Result } from '../model/result.ts';
import type { JobState, Row } from '../model/tables.ts';
import { type Loose, momentOf, type Offer, offersOf, rollsOf } from '../photos/filing.ts';
import { nearDuplicates } from '../photos/near.ts';
import { type Context, type Decision, inJob, type JobInput, type Reply, rowIn } from './frame.ts';
import { logOrder } from './log/order.ts';
import { jobState } from './views.ts';

/** A longer pause than this between two photos begins another removal, in milliseconds: five minutes. */
const PAUSE_MS = 5 * 60_000;

/** Photos with the moment each counts by: when it was taken, where that is known, else when it was added. */
function momentsOf(state: JobState, photos: readonly Row<'photo'>[]): Loose[] {
  const originals = new Map(state.original.map((original) => [original.id, original]));
  return photos.map(({ id, originalId, addedAt }) => {
    const original = originals.get(originalId);
    const moment = original ? momentOf(original, state.job.zone) : null;
    return { id, at: moment?.utc ?? addedAt };
  });
}

/**
 * Unfiled photos, each offered to the removal it was taken before; `removalId` null: to the next one, not yet logged.
 * What was taken out of a removal by hand is not offered again. `now`: UTC milliseconds.
 */
function photoOffers(state: JobState, now: number): Offer[] {
  const removals = logOrder(state.removal).map((removal, i) => ({ ...removal, number: i + 1 }));
  const loose = state.photo.filter((photo) => photo.removalId === null && photo.filedBy === 'none');
  return offersOf(removals, momentsOf(state, loose), now);
}

/** Photos of a job that show nearly the same, best first; each group by the ids of its photos. */
function photoGroups(state: JobState): string[][] {
  const originals = new Map(state.original.map((original) => [original.id, original]));
  return nearDuplicates(
    state.photo.flatMap(({ id, originalId }) => {
      const original = originals.get(originalId);
      if (!original) return [];
      const { phash, sharpness, width, height } = original;
      return [{ id, phash, sharpness, pixels: width * height }];
    }),
  );
}

/** What waits to be filed, by the removal it is offered to, and what was taken more than once. */
export function photoTray(
  context: Context,
  jobId: string,
): Result<{ offers: { removalId: string | null; photoIds: string[] }[]; groups: string[][] }> {
  const state = jobState(context, jobId);
  if (!state.ok) return state;
  const offers = photoOffers(state.value, context.workshop.now());
  return ok({
    offers: offers.map(({ removalId, photoIds }) => ({ removalId, photoIds: [...photoIds] })),
    groups: photoGroups(state.value),
  });
}

/**
 * Makes draft removals from a roll of pictures: one for each run of photos without a longer pause than `pauseMs`, off
 * from its first to its last photo, without a title, in the log where its time belongs. One command, so one undo.
 */
export function removalsFromPhotos(
  context: Context,
  input: JobInput & { photoIds: readonly string[]; pauseMs?: number | undefined },
): Reply<{ ids: string[]; said: string }> {
  return inJob(context, 'photo.draft', input, (decision) => {
    if (input.photoIds.length === 0)
      return refuse('input', 'Expected photos to make removals from, got none.');
    const photos: Row<'photo'>[] = [];
    for (const id of new Set(input.photoIds)) {
      const photo = rowIn(decision, 'photo', id, 'photo');
      if (!photo.ok) return photo;
      photos.push(photo.value);
    }
    const log = logOrder(decision.state.removal);
    const byId = new Map(photos.map((photo) => [photo.id, photo]));
    const ids = rollsOf(momentsOf(decision.state, photos), input.pauseMs ?? PAUSE_MS).map((roll) => {
      const removal = draft(decision, log, roll);
      for (const { id } of roll)
        decision.writer.put('photo', {
          ...(byId.get(id) as Row<'photo'>),
          removalId: removal.id,
          filedBy: 'hand',
          filedWhy: 'The removal was made from this photo.',
        });
      return removal.id;
    });
    const said = ids.length === 1 ? 'One removal is made' : `${ids.length} removals are made`;
    return ok({ ids, said: `${said} from ${photos.length === 1 ? '1 photo' : `${photos.length} photos`}.` });
  });
}

/** One draft, put into the log before the first removal that began later; `log` is kept up to date. */
function draft(decision: Decision, log: Row<'removal'>[], roll: readonly Loose[]): Row<'removal'> {
  const [startedAt, endedAt] = [(roll[0] as Loose).at, (roll.at(-1) as Loose).at];
  const later = log.findIndex((one) => (one.startedAt ?? Number.NEGATIVE_INFINITY) > startedAt);
  const at = later < 0 ? log.length : later;
  // Void removals keep their keys: at the end of the log a new one goes after those too.
  const keys = decision.state.removal.map((one) => one.ord).concat(log.map((one) => one.ord));
  const before = later < 0 ? (keys.sort().at(-1) ?? null) : (log[at - 1]?.ord ?? null);
  const removal = blank('removal', decision.newId(), decision.jobId, {
    ord: generateKeyBetween(before, log[at]?.ord ?? null),
    phase: 'off',
    startedAt,
    endedAt,
    zone: decision.state.job.zone,
    personId: decision.personId,
  });
  log.splice(at, 0, removal);
  decision.writer.put('removal', removal);
  return removal;
}
