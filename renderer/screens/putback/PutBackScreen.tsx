import type { CSSProperties, ReactNode } from 'react';
import { Frame } from '../../frame/Frame.tsx';
import type { LinePaneProps } from '../../frame/LinePane.tsx';
import { Mark } from '../../photo/Mark.tsx';
import { PhotoView } from '../../photo/PhotoView.tsx';
import { useEmptyBelow } from '../../photo/view.ts';
import { marks as sayMarks } from '../../texts/marks.ts';
import { putback as say } from '../../texts/putback.ts';
import type { StatusProps } from '../../ui/Status.tsx';
import { Key } from '../../ui/Key.tsx';
import { useSize } from '../../ui/use-size.ts';
import { Rounds } from './Rounds.tsx';
import { StepHand } from './StepHand.tsx';
import type { HoleData, StepData } from './types.ts';
import type { PhotoMark } from '../../photo/types.ts';

export interface PutBackScreenProps {
  readonly pane: LinePaneProps;
  readonly status?: StatusProps;
  readonly step: StepData;
  /** What a search led here for; null for none. */
  readonly found: readonly [string, string, string] | null;
  /** Whether the order it waits for is really needed; null where nothing is to be asked. */
  readonly asks: ReactNode;
  /** What goes together with the things of this step: marks on the photo, and each pair in words. */
  readonly mates: { readonly marks: readonly PhotoMark[]; readonly lines: readonly string[] };
  /** The hole that is next or was touched. */
  readonly atMarkId: string | null;
  /** Open while a single hole is answered for; null otherwise. */
  readonly hole: HoleData | null;
  readonly canUndo: boolean;
  readonly onGo: () => void;
  readonly onUndo: () => void;
  readonly onCameOff: () => void;
  readonly onPickMark: (id: string) => void;
  readonly onMoveMark: (id: string, x: number, y: number) => void;
  readonly onHole: (state: string) => void;
  readonly onReading: (typed: string) => void;
  readonly onKeepReading: () => void;
  readonly onCloseHole: () => void;
  readonly onAction: (id: string, done: boolean) => void;
  readonly onList: () => void;
  /** The sheet to print was asked for. */
  readonly onPrint: () => void;
  /** A point is answered on the spot. */
  readonly onAnswer: (pointId: string, answerId: string) => void;
  readonly onNextPhoto: () => void;
  /** Opens the handbook with the fastener at hand; null where it has nothing to say of it. */
  readonly torque: { readonly question: string; readonly onAsk: () => void } | null;
  /** A round was touched: at hand, all holes are through it; to come, all are through what lies before it. */
  readonly onRound: (id: string) => void;
  /** Takes the lit hole through its round; null where none is lit. */
  readonly onAdvance: (() => void) | null;
  readonly onAllShown: (answer: 'yes' | 'no') => void;
}

/** The step at hand: photo with holes and order, rounds, torque, notes for the way back, one key for all holes. */
export function PutBackScreen(props: PutBackScreenProps) {
  const { step } = props;
  const [place, size] = useSize<HTMLDivElement>();
  const marks = [...step.marks, ...props.mates.marks];
  const empty = useEmptyBelow(step.photo, size, marks);
  const below = step.rounds.length > 0 || step.order !== null || isBeside(step);
  const style: CSSProperties & { '--empty': string } = { '--empty': `${empty}px` };
  return (
    <Frame pane={props.pane} {...(props.status && { status: props.status })} screen="putback">
      <div className={empty > 0 ? 'putback-photo low' : 'putback-photo'} ref={place} style={style}>
        {step.photo === null ? (
          <NoPhoto {...props} />
        ) : (
          <PhotoView
            key={step.photo.id}
            photo={step.photo}
            marks={marks}
            moves={step.moves}
            atId={props.atMarkId}
            onPick={props.onPickMark}
            onMove={props.onMoveMark}
          >
            {step.photoPlace !== null && (
              <button type="button" className="plate" onClick={props.onNextPhoto}>
                {say.otherPhoto(step.photoPlace.number, step.photoPlace.total)}
              </button>
            )}
          </PhotoView>
        )}
      </div>
      <StepHand {...props} />
      {below && (
        <div className="putback-rounds" style={style}>
          <Rounds rounds={step.rounds} onRound={props.onRound} />
          {step.order !== null && <Order {...props} />}
          {isBeside(step) && (
            <div className="order">
              <p className="cap">{step.shown}</p>
              <Discs name={step.shown} marks={step.beside} {...props} />
            </div>
          )}
        </div>
      )}
    </Frame>
  );
}

/** What is on no photo stands beside it; without any photo the holes are the picture. */
const isBeside = (step: StepData): boolean => step.photo !== null && step.beside.length > 0;

/** Asked before an order by the marks is shown: an order over some of the holes is none. */
function ShownQuestion({ step, onAllShown }: PutBackScreenProps) {
  return (
    <div className="order order-ask">
      <p>
        <strong>{say.allShownAsk}</strong> {step.hint}
      </p>
      <div className="keys">
        <Key onPress={() => onAllShown('yes')}>{say.allShownYes}</Key>
        <Key onPress={() => onAllShown('no')}>{say.allShownNo}</Key>
      </div>
    </div>
  );
}

function Order(props: PutBackScreenProps) {
  const { step } = props;
  if (step.order?.question === true) return <ShownQuestion {...props} />;
  const byId = new Map([...step.marks, ...step.beside].map((mark) => [mark.id, mark]));
  const marks = (step.order?.markIds ?? []).flatMap((id) => byId.get(id) ?? []);
  return (
    <div className="order">
      <p className="cap">{step.order?.say}</p>
      <Discs name={say.order} marks={marks} {...props} />
      {step.advance === '' || props.onAdvance === null ? (
        <p className="cap order-key">
          <span>{say.discs.full}</span> <span>{say.discs.half}</span>
        </p>
      ) : (
        <Key className="order-next" onPress={props.onAdvance} hint={say.space} shortcut="Space">
          {step.advance}
        </Key>
      )}
    </div>
  );
}

interface DiscsProps {
  readonly name: string;
  readonly marks: readonly PhotoMark[];
  readonly atMarkId: string | null;
  readonly onPickMark: (id: string) => void;
}

/** Holes as discs in a row; a touch opens one. */
function Discs({ name, marks, atMarkId, onPickMark }: DiscsProps) {
  return (
    <ol aria-label={name}>
      {marks.map((mark) => (
        <li key={mark.id}>
          <Disc mark={mark} size={46} at={mark.id === atMarkId} onPick={onPickMark} />
        </li>
      ))}
    </ol>
  );
}

interface DiscProps {
  readonly mark: PhotoMark;
  readonly size: number;
  readonly at: boolean;
  readonly onPick: (id: string) => void;
}

function Disc({ mark, size, at, onPick }: DiscProps) {
  return (
    <button
      type="button"
      onClick={() => onPick(mark.id)}
      aria-label={sayMarks.heard(mark.name, sayMarks.state(mark.kind, mark.state))}
    >
      <Mark kind={mark.kind} state={mark.state} text={mark.text} at={at} size={size} />
    </button>
  );
}

/** Holes that no photo shows, by their set; without names where there is only one. */
function setsOf(step: StepData) {
  if (step.sets.length === 0) return [{ id: step.id, name: '', marks: step.beside }];
  return step.sets.map((set) => ({ ...set, marks: step.beside.filter((mark) => mark.group === set.id) }));
}

/** Without a photo the holes themselves are the picture. */
function NoPhoto({ step, atMarkId, onPickMark }: PutBackScreenProps) {
  return (
    <div className="no-photo holes">
      {setsOf(step).map(({ id, name, marks }) => (
        <div key={id}>
          {name !== '' && <p>{name}</p>}
          <ul className="holes-row" aria-label={name || undefined}>
            {marks.map((mark) => (
              <li key={mark.id}>
                <Disc mark={mark} size={96} at={mark.id === atMarkId} onPick={onPickMark} />
              </li>
            ))}
          </ul>
        </div>
      ))}
      <p className="how">{step.beside.length > 0 ? say.noPhoto : say.noHoles}</p>
    </div>
  );
}
