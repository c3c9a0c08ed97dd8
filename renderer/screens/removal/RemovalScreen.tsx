import { useEffect, useRef } from 'react';
import { Frame } from '../../frame/Frame.tsx';
import type { LinePaneProps } from '../../frame/LinePane.tsx';
import type { Did } from '../../../core/drawing/line/types.ts';
import { PhotoView } from '../../photo/PhotoView.tsx';
import type { Move, PhotoData, PhotoMark } from '../../photo/types.ts';
import { photos as sayPhotos } from '../../texts/photos.ts';
import { removal as say } from '../../texts/removal.ts';
import { type EntryData, EntryLine } from '../../ui/EntryLine.tsx';
import type { Count } from '../../ui/Numbers.tsx';
import { typeOnPad } from '../../ui/pad.ts';
import { useTyping } from '../../ui/use-typing.ts';
import type { PointData } from '../../ui/Point.tsx';
import type { StatusProps } from '../../ui/Status.tsx';
import type { MarkAtHand } from './MarkPanel.tsx';
import type { PlannedData } from './Planned.tsx';
import { RemovalHand } from './RemovalHand.tsx';
import type { UndoingData } from './Undoing.tsx';
import { Unfiled, type UnfiledData } from './Unfiled.tsx';

/** What the screen shows of the removal at hand. */
export interface RemovalData {
  readonly number: number;
  readonly title: string;
  /** "since 10:42", "10:42 to 11:20"; null before it has begun. */
  readonly since: string | null;
  readonly place: string;
  readonly side: Side | null;
  /** Places to choose from. */
  readonly places: readonly string[];
  /** Names of the sides in this job. */
  readonly sides: readonly { readonly value: Side; readonly label: string }[];
  /** "paused 25 min", "by Ana": what is known by itself. */
  readonly about: readonly string[];
  readonly did: Did;
  /** Out, still in, blocked: as many as apply. */
  readonly counts: readonly Count[];
  /** Marks on photos against holes logged; null while nothing is marked. */
  readonly shown: { readonly marked: number; readonly total: number } | null;
  readonly points: readonly PointData[];
  readonly noteBack: string;
  /** What is expected of a removal that is only planned; null once it has begun. */
  readonly planned: PlannedData | null;
}

export type Side = 'left' | 'right' | 'both';

export interface RemovalPhoto {
  readonly photo: PhotoData;
  readonly marks: readonly PhotoMark[];
  /** Wedges from hole to hole in order of undoing; none once it is coming off. */
  readonly moves: readonly Move[];
  /** The same in words; null where nothing is to be said. */
  readonly undoing: UndoingData | null;
  /** Which of the removal's photos this is, from 1. */
  readonly number: number;
  readonly total: number;
  /** Said while placing: what the next mark stands for. */
  readonly placingSay: string;
  /** Said while the mate of a mark is looked for. */
  readonly joiningSay: string | null;
}

export interface RemovalScreenProps {
  readonly pane: LinePaneProps;
  readonly status?: StatusProps;
  readonly removal: RemovalData;
  /** What a search led here for; null for none. */
  readonly found: readonly [string, string, string] | null;
  readonly photo: RemovalPhoto | null;
  /** The mark at hand. */
  readonly markAtHand: MarkAtHand | null;
  /** Files hang over the window. */
  readonly dropping: boolean;
  readonly placing: boolean;
  readonly entry: EntryData;
  /** What is typed is added to this removal, which stays at hand. */
  readonly stays: boolean;
  readonly unfiled: UnfiledData;
  readonly canUndo: boolean;
  readonly canRepeat: boolean;
  readonly onEntry: (text: string) => void;
  /** Enter, or the large key: log what is typed and go to the next removal. */
  readonly onNext: () => void;
  /** So many were found of a set that is expected. */
  readonly onExpected: (setId: string, count: number) => void;
  readonly onRepeat: () => void;
  readonly onUndo: () => void;
  /** Opens the handbook with the set at hand; null where nothing of it is a thread. */
  readonly onWhichThread: (() => void) | null;
  readonly onMode: (mode: EntryData['mode']) => void;
  readonly onPlace: (place: string) => void;
  readonly onSide: (side: Side | null) => void;
  readonly onBench: () => void;
  readonly canBench: boolean;
  readonly onDid: (did: Did) => void;
  readonly onTitle: (title: string) => void;
  /** The hand left the title. */
  readonly onTitleDone: () => void;
  readonly onNoteBack: (note: string) => void;
  readonly onNoteBackDone: () => void;
  readonly onPickMark: (id: string) => void;
  readonly onPlaceMark: (x: number, y: number) => void;
  readonly onMoveMark: (id: string, x: number, y: number) => void;
  readonly onRemoveMark: (id: string) => void;
  readonly onBindMark: (thingId: string | null) => void;
  readonly onLeaveMark: () => void;
  readonly onNumberMark: (n: number) => void;
  readonly onJoinMark: () => void;
  readonly onPartMark: () => void;
  readonly onShowPhoto: (photoId: string) => void;
  readonly onPlacing: (placing: boolean) => void;
  readonly onNextPhoto: () => void;
  readonly onPutBackPhoto: () => void;
  readonly onAddPhotos: (files: readonly File[]) => void;
  readonly onTakeAll: () => void;
  readonly onTakeOne: (id: string) => void;
}

/** Taking apart: depth line, photo with its marks, this removal, one entry line and a number pad. */
export function RemovalScreen(props: RemovalScreenProps) {
  const { removal, photo, entry } = props;
  const line = useRef<HTMLTextAreaElement>(null);
  // The hand comes from the machine: whatever removal is at hand, typing goes to its line.
  useEffect(() => line.current?.focus(), [removal.number]);
  useTyping(line);
  const onType = (typed: string) => {
    props.onEntry(typeOnPad(entry.text, typed));
    line.current?.focus();
  };
  return (
    <Frame pane={props.pane} {...(props.status && { status: props.status })} screen="removal">
      <div className="removal-photo">
        {photo === null ? (
          <NoPhoto removal={removal} stays={props.stays} />
        ) : (
          <PhotoView
            key={photo.photo.id}
            photo={photo.photo}
            marks={photo.marks}
            moves={photo.moves}
            atId={props.markAtHand?.id ?? null}
            placing={props.placing}
            placingSay={photo.placingSay}
            onPick={props.onPickMark}
            onPlace={props.onPlaceMark}
            onMove={props.onMoveMark}
            onRemove={props.onRemoveMark}
          >
            <PhotoPlates {...props} photo={photo} />
          </PhotoView>
        )}
        {props.dropping && <p className="drop-word">{sayPhotos.drop}</p>}
      </div>
      <RemovalHand {...props} onType={onType} onNamed={() => line.current?.focus()} />
      <div className="removal-entry">
        <EntryLine
          ref={line}
          {...entry}
          onChange={props.onEntry}
          onEnter={props.onNext}
          onSame={props.onRepeat}
          onMode={(mode) => {
            props.onMode(mode);
            line.current?.focus();
          }}
        />
      </div>
      <Unfiled {...props} number={removal.number} />
    </Frame>
  );
}

function PhotoPlates(props: RemovalScreenProps & { readonly photo: RemovalPhoto }) {
  const { photo, placing, onPlacing, onNextPhoto, onPutBackPhoto } = props;
  return (
    <>
      {photo.joiningSay !== null && <p className="plate">{photo.joiningSay}</p>}
      <button type="button" className="plate" onClick={() => onPlacing(!placing)} aria-pressed={placing}>
        {placing ? say.markDone : say.mark}
      </button>
      {photo.total > 1 && !placing && (
        <button type="button" className="plate" onClick={onNextPhoto}>
          {say.photoOf(photo.number, photo.total)}. {say.nextPhoto}
        </button>
      )}
      {!placing && (
        <button type="button" className="plate" onClick={onPutBackPhoto}>
          {say.putBackPhoto}
        </button>
      )}
    </>
  );
}

/** Without a photo the number is the picture, and the sentence says what to do next. */
function NoPhoto({ removal, stays }: Pick<RemovalScreenProps, 'removal' | 'stays'>) {
  return (
    <div className="no-photo">
      <b className="num" aria-hidden="true">
        {removal.number}
      </b>
      <p className="how">
        {stays ? say.addsTo(removal.number) : removal.number === 1 ? say.firstNoPhoto : say.noPhoto}
      </p>
    </div>
  );
}
