import { useState } from 'react';
import { v7 } from 'uuid';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import type { OpenJob } from '../data/job.ts';
import { usePhotoTray } from '../data/queries.ts';
import { remember } from '../data/remember.ts';
import { logOf } from '../model/line.ts';
import { stillIn, undoingOf } from '../model/undoing.ts';
import { photosOf, unfiledOf } from '../model/photos.ts';
import type { RemovalPhoto } from '../screens/removal/RemovalScreen.tsx';
import { marks as say } from '../texts/marks.ts';
import { joiningSay, markAtHandOf, useMarks } from './use-marks.ts';

/** Files photos into the removal at hand; into the next one by making it first. */
async function take(job: OpenJob, removalId: string | null, photoIds: readonly string[]): Promise<void> {
  if (photoIds.length === 0) return;
  let into = removalId;
  if (into === null) {
    into = v7();
    const id = into;
    const { go } = remember.getState();
    // At hand at once: what is typed next belongs to it, even before the record has it.
    go({ removalId: id });
    const made = await send(
      job.id,
      (command) => client.record.make({ command, jobId: job.id, table: 'removal', id, values: {} }),
      { removal: { id, text: '' } },
    );
    if (!made) {
      go({ removalId: null });
      return;
    }
  }
  const filed = into;
  await send(job.id, (command) =>
    client.photo.file({ command, jobId: job.id, photoIds: [...photoIds], removalId: filed }),
  );
}

/** Photos of the removal at hand with their marks, and those that are not filed yet. */
export function useRemovalPhotos(job: OpenJob, removalId: string | null) {
  const [shownId, setShownId] = useState<string | null>(null);
  const own = removalId === null ? [] : photosOf(job.view, removalId);
  const picked = own.findIndex((photo) => photo.id === shownId);
  // The newest, until another one is asked for.
  const index = picked >= 0 ? picked : own.length - 1;
  const photo = own[index] ?? null;
  const marks = useMarks(job, removalId, photo?.id ?? null);
  const log = logOf(job.view);
  const at = log.findIndex((removal) => removal.id === removalId);
  const unfiled = unfiledOf(job.view, at >= 0 ? at : log.length, usePhotoTray(job.id).data?.value.dark ?? []);

  const inside = stillIn(job.view.state);
  const thingOf = new Map(marks.markers.map((marker) => [marker.id, marker.thingId]));
  const undoing = undoingOf(marks.marks, photo, (id) => inside.has(thingOf.get(id) ?? ''));
  const data: RemovalPhoto | null = photo && {
    photo,
    marks: marks.marks,
    moves: undoing?.moves ?? [],
    undoing,
    number: index + 1,
    total: own.length,
    placingSay: marks.next === null ? say.placing : say.placingFor(marks.next.name),
    joiningSay: joiningSay(marks),
  };
  const markAtHand = markAtHandOf(job, marks, removalId);
  return {
    photo: data,
    markAtHand,
    unfiled,
    marks,
    nextPhoto: () => setShownId(own[(index + 1) % own.length]?.id ?? null),
    showPhoto: setShownId,
    takeAll: () => void take(job, removalId, unfiled.ids),
    takeOne: (id: string) => {
      setShownId(id);
      void take(job, removalId, [id]);
    },
    /** Back to the ones not filed. */
    putBack: () => {
      if (photo)
        void send(job.id, (command) =>
          client.photo.file({ command, jobId: job.id, photoIds: [photo.id], removalId: null }),
        );
    },
  };
}
