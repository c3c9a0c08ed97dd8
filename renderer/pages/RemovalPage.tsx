import { v7 } from 'uuid';
import { client } from '../data/client.ts';
import { send } from '../data/commands.ts';
import { useEdit } from '../data/edit.ts';
import { type OpenJob, undo } from '../data/job.ts';
import { journal } from '../data/journal.ts';
import { openHandbook } from '../data/handbook.ts';
import { remember } from '../data/remember.ts';
import { addPhotos } from '../data/upload.ts';
import type { Did } from '../../core/drawing/line/types.ts';
import { threadOpening } from '../model/handbook/fill.ts';
import { nextPlanned } from '../model/pattern.ts';
import { removalData } from '../model/removal.ts';
import { RemovalScreen } from '../screens/removal/RemovalScreen.tsx';
import { removal as say } from '../texts/removal.ts';
import { paneOf, pickRemoval, useStatus } from './pane.ts';
import { useDrop } from './use-drop.ts';
import { usePlanned } from './use-planned.ts';
import { useRemoval } from './use-removal.ts';
import { numberMark, partMark } from './use-marks.ts';
import { useRemovalPhotos } from './use-removal-photos.ts';

/** Fields of the removal at hand are written when the hand leaves them, not at every letter. */
function change(job: OpenJob, id: string, values: Record<string, unknown>): void {
  void send(job.id, (command) =>
    client.record.change({ command, jobId: job.id, table: 'removal', id, values }),
  );
}

/** A title or note written before anything was logged is the first that is known of the next removal. */
function writeFields(job: OpenJob, id: string | null, values: { title?: string; noteBack?: string }): void {
  if (id !== null) {
    change(job, id, values);
    return;
  }
  if ((values.title ?? values.noteBack ?? '') === '') return;
  const newId = v7();
  void send(job.id, (command) =>
    client.record.make({ command, jobId: job.id, table: 'removal', id: newId, values }),
  ).then((made) => {
    if (made) remember.getState().go({ removalId: newId });
  });
}

/** Logs the line: into the removal at hand, or as the next one, which is shown before the record has it. */
async function log(job: OpenJob, text: string, removalId: string | null, did: Did): Promise<boolean> {
  const newId = v7();
  const done = await send(
    job.id,
    (command) =>
      client.log.add({
        command,
        jobId: job.id,
        text,
        removalId,
        ...(removalId === null ? { newRemovalId: newId, ...(did === 'off' ? {} : { did }) } : {}),
      }),
    { removal: removalId === null ? { id: newId, text } : null },
  );
  // A line that took nothing off went to the removal under way.
  if (done && done.removalId !== newId) journal.getState().forget(newId);
  return done !== null;
}

/** What can be done to the photo at hand and its marks. */
function photoDeeds(job: OpenJob, photos: ReturnType<typeof useRemovalPhotos>) {
  const { marks } = photos;
  return {
    onPickMark: marks.pick,
    onPlaceMark: marks.place,
    onMoveMark: (id: string, x: number, y: number) => marks.change(id, { x, y }),
    onRemoveMark: marks.remove,
    onBindMark: (thingId: string | null) => marks.at && marks.change(marks.at.id, { thingId }),
    onLeaveMark: () => {
      marks.setJoiningId(null);
      marks.pick(null);
    },
    onNumberMark: (n: number) => marks.at && numberMark(job, marks.at.id, n),
    onJoinMark: () => marks.setJoiningId(marks.joining === null ? (marks.at?.id ?? null) : null),
    onPartMark: () => marks.at && partMark(job, marks.at.id),
    onShowPhoto: photos.showPhoto,
    onPlacing: marks.setPlacing,
    onNextPhoto: photos.nextPhoto,
    onPutBackPhoto: photos.putBack,
    onTakeAll: photos.takeAll,
    onTakeOne: photos.takeOne,
  };
}

/** Title and note as they are being written. */
function useFields(job: OpenJob, id: string | null, kept: { title: string; noteBack: string }) {
  const at = id ?? 'next';
  const [title, setTitle] = useEdit(`${at}/title`, kept.title, (typed) =>
    writeFields(job, id, { title: typed }),
  );
  const [noteBack, setNoteBack] = useEdit(`${at}/note`, kept.noteBack, (typed) =>
    writeFields(job, id, { noteBack: typed }),
  );
  return { title, setTitle, noteBack, setNoteBack };
}

/** Taking apart. */
export function RemovalPage({ job }: { readonly job: OpenJob }) {
  const { current, last, entry, setText, nextDid, setNextDid } = useRemoval(job);
  const status = useStatus(job);
  const photos = useRemovalPhotos(job, current?.id ?? null);
  const add = (files: readonly File[]) => addPhotos(job.id, files);
  const dropping = useDrop(add);
  const data = removalData(job.view, current?.id ?? null, job.ahead.length);
  const { title, setTitle, noteBack, setNoteBack } = useFields(job, current?.id ?? null, data);
  const opening = threadOpening(job.view, current?.id ?? null);

  const { planned, onExpected, onBegin } = usePlanned(job, current);
  const onNext = () => {
    const typed = entry.text.trim();
    if (typed === '') {
      if (onBegin !== null) onBegin();
      else if (current === null) journal.getState().refuse(say.nothingTyped);
      else remember.getState().go({ removalId: nextPlanned(job.view) });
      return;
    }
    setText('');
    setNextDid('off');
    void log(job, typed, current?.id ?? null, nextDid).then((saved) => {
      // A refused line comes back to where it was typed.
      if (!saved) setText(typed);
    });
  };

  return (
    <RemovalScreen
      pane={paneOf(job, 'removal', 'apart', current?.id ?? null, pickRemoval)}
      status={status}
      removal={{ ...data, title, noteBack, planned, did: current === null ? nextDid : data.did }}
      photo={photos.photo}
      markAtHand={photos.markAtHand}
      dropping={dropping}
      placing={photos.marks.placing}
      entry={entry}
      unfiled={photos.unfiled}
      canUndo={job.view.history.undo !== null}
      canRepeat={last !== null && last.typed !== ''}
      onEntry={setText}
      onNext={onNext}
      onExpected={onExpected}
      onRepeat={() => {
        if (last && last.typed !== '') setText(last.typed.split('\n')[0] ?? '');
      }}
      onUndo={() => undo(job.id)}
      onWhichThread={opening && (() => openHandbook(opening))}
      onDid={(did) => (current === null ? setNextDid(did) : change(job, current.id, { did }))}
      onTitle={setTitle}
      onNoteBack={setNoteBack}
      {...photoDeeds(job, photos)}
      onAddPhotos={add}
    />
  );
}
