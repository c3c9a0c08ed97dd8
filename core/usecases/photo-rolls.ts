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

/** What waits to be filed, by the removal it is offered to; what was taken more than once; what is very dark. */
export function photoTray(
  context: Context,
  jobId: string,
): Result<{
  offers: { removalId: string | null; photoIds: string[] }[];
  groups: string[][];
  dark: string[];
}> {
  const state = jobState(context, jobId);
  if (!state.ok) return state;
  const offers = photoOffers(state.value, context.workshop.now());
  return ok({
    offers: offers.map(({ removalId, photoIds }) => ({ removalId, photoIds: [...photoIds] })),
    groups: photoGroups(state.value),
    dark: darkOf(context, state.value),
  });
}

function darkOf({ workshop }: Context, state: JobState): string[] {
  const dark = workshop.local?.photoTasks.dark();
  return dark ? state.photo.filter((photo) => dark.has(photo.originalId)).map((photo) => photo.id) : [];
}

/** Photos as the draft removals that would be made of them, in the order of time: nothing is written. */
export function photoRolls(
  context: Context,
  input: { jobId: string; photoIds: readonly string[]; pauseMs?: number | undefined },
): Result<{ rolls: { photoIds: string[]; from: number; to: number }[] }> {
  const state = jobState(context, input.jobId);
  if (!state.ok) return state;
  const wanted = new Set(input.photoIds);
  const photos = state.value.photo.filter((photo) => wanted.has(photo.id));
  const rolls = rollsOf(momentsOf(state.value, photos), input.pauseMs ?? PAUSE_MS);
  return ok({
    rolls: rolls.map((roll) => ({
      photoIds: roll.map((photo) => photo.id),
      from: (roll[0] as Loose).at,
      to: (roll.at(-1) as Loose).at,
    })),
  });
}

type DraftInput = JobInput & {
  readonly photoIds?: readonly string[] | undefined;
  readonly pauseMs?: number | undefined;
  /** Groups as somebody laid them, instead of photos that are cut at their pauses. */
  readonly rolls?: readonly (readonly string[])[] | undefined;
};

/**
 * Makes draft removals from a roll of pictures: one for each group, or for each run of photos without a longer pause
 * than `pauseMs`; off from its first to its last photo, without a title, in the log where its time belongs. One
 * command, so one undo.
 */
export function removalsFromPhotos(
  context: Context,
  input: DraftInput,
): Reply<{ ids: string[]; said: string }> {
  return inJob(context, 'photo.draft', input, (decision) => {
    const asked = input.rolls?.flat() ?? input.photoIds ?? [];
    if (asked.length === 0) return refuse('input', 'Expected photos to make removals from, got none.');
    if (input.rolls && new Set(asked).size < asked.length)
      return refuse('input', 'Expected each photo in one group, got one that stands in two.');
    const photos: Row<'photo'>[] = [];
    for (const id of new Set(asked)) {
      const photo = rowIn(decision, 'photo', id, 'photo');
      if (!photo.ok) return photo;
      photos.push(photo.value);
    }
    const log = logOrder(decision.state.removal);
    const byId = new Map(photos.map((photo) => [photo.id, photo]));
    const ids = rollsAsked(decision, input, photos).map((roll) => {
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

/** The groups as they were laid, or cut at the pauses; each in the order of time. */
function rollsAsked(decision: Decision, input: DraftInput, photos: readonly Row<'photo'>[]): Loose[][] {
  const moments = momentsOf(decision.state, photos);
  if (!input.rolls) return rollsOf(moments, input.pauseMs ?? PAUSE_MS);
  const byId = new Map(moments.map((moment) => [moment.id, moment]));
  return input.rolls.map((roll) => roll.map((id) => byId.get(id) as Loose).sort((a, b) => a.at - b.at));
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
