import { useEffect, useRef, useState } from 'react';
import { useEdit, WHEN_LEFT } from '../data/edit.ts';
import { type OpenJob, undo } from '../data/job.ts';
import { journal } from '../data/journal.ts';
import { openHandbook } from '../data/handbook.ts';
import { REMOVAL_KEYS } from '../data/keys.ts';
import { remember } from '../data/remember.ts';
import { addPhotos } from '../data/upload.ts';
import type { Did } from '../../core/drawing/line/types.ts';
import { threadOpening } from '../model/handbook/fill.ts';
import { nextPlanned } from '../model/pattern.ts';
import { removalData } from '../model/removal.ts';
import { RemovalScreen } from '../screens/removal/RemovalScreen.tsx';
import { removal as say } from '../texts/removal.ts';
import { OtherSide } from './OtherSide.tsx';
import { paneOf, pickRemoval, useStatus } from './pane.ts';
import { changeDid, changeRemoval, logLine, writeFields } from './removal-deeds.ts';
import { useDrop } from './use-drop.ts';
import { usePlanned } from './use-planned.ts';
import { type Next, useRemoval } from './use-removal.ts';
import { numberMark, partMark } from './use-marks.ts';
import { useRemovalPhotos } from './use-removal-photos.ts';
import { useReorder } from './use-reorder.tsx';
import { useScreenKeys } from './use-screen-keys.ts';

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
    onJoinMark: () => {
      marks.setPlacing(false);
      marks.setJoiningId(marks.joining === null ? (marks.at?.id ?? null) : null);
    },
    onPartMark: () => marks.at && partMark(job, marks.at.id),
    onShowPhoto: photos.showPhoto,
    onPlacing: marks.setPlacing,
    onNextPhoto: photos.nextPhoto,
    onPutBackPhoto: photos.putBack,
    onTakeAll: photos.takeAll,
    onTakeOne: photos.takeOne,
  };
}

/** What is written down with a key of its own: slackened, moved aside. */
function withDid(text: string, did: 'slackened' | 'aside'): string {
  return `${did} ${text}`;
}

/** What the line does: log, repeat, and the keys that say at once what was done. */
function useLine(job: OpenJob) {
  const hand = useRemoval(job);
  const { current, targetId, last, whole, entry, setText, next, setNext, clearNext } = hand;
  const { planned, onExpected, onBegin } = usePlanned(job, current);
  // The first line of a removal that began with its photos or its name is the whole of it, as for any other.
  const stays = targetId !== null && (current?.typed ?? '') !== '';
  const typed = useRef(entry.text);
  useEffect(() => {
    typed.current = entry.text;
  });
  const log = (text: string, said: Next) => {
    const sent = entry.text;
    setText('');
    clearNext();
    if (targetId !== null && !stays) remember.getState().go({ removalId: null });
    void logLine(job, text, targetId, said).then((saved) => {
      // A refused line comes back to where it was typed, before what was typed meanwhile.
      if (!saved) setText([sent, typed.current].filter((one) => one !== '').join(', '));
    });
  };
  const onNext = () => {
    if (whole !== '') log(whole, next);
    else if (onBegin !== null) onBegin();
    else if (targetId === null) journal.getState().refuse(say.nothingTyped);
    else remember.getState().go({ removalId: nextPlanned(job.view) });
  };
  const onDid = (did: Did) => {
    // Shown at once also while the removal is on its way to the record.
    if (current === null) setNext({ did });
    if (targetId !== null) changeDid(job, targetId, did);
  };
  /** With a line typed the key writes it down as that; without one it says it of the removal at hand. */
  const onDidKey = (did: 'slackened' | 'aside') => {
    if (whole === '') onDid(did);
    else if (targetId === null) log(whole, { ...next, did });
    else log(withDid(whole, did), next);
  };
  const repeated = last?.typed.split('\n')[0] ?? '';
  const onRepeat = () => {
    if (repeated !== '') setText(repeated);
  };
  return {
    ...hand,
    stays,
    planned,
    onExpected,
    onNext,
    onDid,
    onDidKey,
    onRepeat,
    canRepeat: repeated !== '',
  };
}

/** The removal at hand as the screen shows it, with its title and note while they are typed. */
function useShown(job: OpenJob, line: ReturnType<typeof useLine>) {
  const { current, next } = line;
  const others = job.ahead.filter((one) => one.removal?.id !== line.targetId).length;
  const data = removalData(job.view, current?.id ?? null, others, job.now);
  const at = current?.id ?? `${job.id}/next`;
  const write = (values: { title?: string; noteBack?: string }) =>
    void writeFields(job, line.targetId, values, next);
  // A removal begins with its whole name, not with the half of it at which the hand rested.
  const pause = current === null ? WHEN_LEFT : undefined;
  const [title, setTitle, titleDone] = useEdit(
    `${at}/title`,
    data.title,
    (typed) => write({ title: typed }),
    pause,
  );
  const [noteBack, setNoteBack, noteDone] = useEdit(
    `${at}/note`,
    data.noteBack,
    (typed) => write({ noteBack: typed }),
    pause,
  );
  const said = current === null ? next : {};
  return {
    removal: { ...data, planned: line.planned, title, noteBack, ...said },
    onTitle: setTitle,
    onTitleDone: titleDone,
    onNoteBack: setNoteBack,
    onNoteBackDone: noteDone,
  };
}

/** What is done to the removal at hand, or said of the next one. */
function handDeeds(job: OpenJob, line: ReturnType<typeof useLine>, benchId: string | null) {
  const { current, targetId, setNext } = line;
  const set = (values: Partial<Pick<Next, 'place' | 'side'>>) => {
    if (current === null) setNext(values);
    if (targetId !== null) changeRemoval(job, targetId, values);
  };
  return {
    onEntry: line.setText,
    onNext: line.onNext,
    onRepeat: line.onRepeat,
    onMode: line.setMode,
    onDid: line.onDid,
    onPlace: (place: string) => set({ place }),
    onSide: (side: Next['side']) => set({ side }),
    onExpected: line.onExpected,
    onUndo: () => undo(job.id),
    onBench: () => {
      if (benchId !== null) remember.getState().go({ screen: 'bench', removalId: benchId });
    },
  };
}

/** Taking apart. */
export function RemovalPage({ job }: { readonly job: OpenJob }) {
  const line = useLine(job);
  const { current, entry, mode, setMode } = line;
  const status = useStatus(job, true);
  const found = remember((place) => place.found);
  const photos = useRemovalPhotos(job, current?.id ?? null);
  const reorder = useReorder(job);
  const [otherSide, setOtherSide] = useState(false);
  const add = (files: readonly File[]) => addPhotos(job.id, files);
  const dropping = useDrop(add);
  const shown = useShown(job, line);
  const opening = threadOpening(job.view, current?.id ?? null);
  const benchId = current?.id ?? line.last?.id ?? null;
  const hand = handDeeds(job, line, benchId);
  const deeds = photoDeeds(job, photos);
  const toMode = (to: typeof mode) => setMode(mode === to ? null : to);
  useScreenKeys({
    [REMOVAL_KEYS.slackened]: () => line.onDidKey('slackened'),
    [REMOVAL_KEYS.aside]: () => line.onDidKey('aside'),
    'Alt+KeyP': () => toMode('plug'),
    'Alt+KeyH': () => toMode('hose'),
    'Alt+KeyT': deeds.onTakeAll,
    'Alt+KeyR': () => setOtherSide(benchId !== null),
    'Alt+KeyB': hand.onBench,
    'Alt+ArrowUp': () => current && reorder.step(current.id, -1),
    'Alt+ArrowDown': () => current && reorder.step(current.id, 1),
  });

  return (
    <>
      <RemovalScreen
        pane={{ ...paneOf(job, 'removal', 'apart', current?.id ?? null, pickRemoval), onMove: reorder.move }}
        status={status}
        found={found?.text ?? null}
        photo={photos.photo}
        markAtHand={photos.markAtHand}
        dropping={dropping}
        placing={photos.marks.placing}
        entry={entry}
        stays={line.stays}
        unfiled={photos.unfiled}
        canUndo={job.view.history.undo !== null}
        canRepeat={line.canRepeat}
        canBench={benchId !== null}
        onWhichThread={opening && (() => openHandbook(opening))}
        {...shown}
        {...hand}
        {...deeds}
        onAddPhotos={add}
      />
      {reorder.dialog}
      {otherSide && benchId !== null && (
        <OtherSide job={job} removalId={benchId} onClose={() => setOtherSide(false)} />
      )}
    </>
  );
}
