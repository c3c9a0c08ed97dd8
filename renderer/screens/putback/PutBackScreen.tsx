import { Frame } from '../../frame/Frame.tsx';
import type { LinePaneProps } from '../../frame/LinePane.tsx';
import { Mark } from '../../photo/Mark.tsx';
import { PhotoView } from '../../photo/PhotoView.tsx';
import { marks as sayMarks } from '../../texts/marks.ts';
import { putback as say } from '../../texts/putback.ts';
import type { StatusProps } from '../../ui/Status.tsx';
import { Rounds } from './Rounds.tsx';
import { StepHand } from './StepHand.tsx';
import type { HoleData, StepData } from './types.ts';

export interface PutBackScreenProps {
  readonly pane: LinePaneProps;
  readonly status?: StatusProps;
  readonly step: StepData;
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
}

/** The step at hand: photo with holes and order, rounds, torque, notes for the way back, one key for all holes. */
export function PutBackScreen(props: PutBackScreenProps) {
  const { step } = props;
  return (
    <Frame pane={props.pane} {...(props.status && { status: props.status })} screen="putback">
      <div className="putback-photo">
        {step.photo === null ? (
          <NoPhoto {...props} />
        ) : (
          <PhotoView
            key={step.photo.id}
            photo={step.photo}
            marks={step.marks}
            moves={step.moves}
            atId={props.atMarkId}
            onPick={props.onPickMark}
            onMove={props.onMoveMark}
          />
        )}
      </div>
      <StepHand {...props} />
      {(step.rounds.length > 0 || step.order !== null) && (
        <div className="putback-rounds">
          <Rounds rounds={step.rounds} />
          {step.order !== null && <Order {...props} />}
        </div>
      )}
    </Frame>
  );
}

function Order({ step, atMarkId, onPickMark }: PutBackScreenProps) {
  const byId = new Map(step.marks.map((mark) => [mark.id, mark]));
  return (
    <div className="order">
      <p className="cap">{step.order?.say}</p>
      <ol aria-label={say.order}>
        {(step.order?.markIds ?? []).map((id) => {
          const mark = byId.get(id);
          if (mark === undefined) return null;
          const heard = sayMarks.heard(mark.name, sayMarks.state(mark.kind, mark.state));
          return (
            <li key={id}>
              <button type="button" onClick={() => onPickMark(id)} aria-label={heard}>
                <Mark kind={mark.kind} state={mark.state} text={mark.text} at={id === atMarkId} size={46} />
              </button>
            </li>
          );
        })}
      </ol>
      <p className="cap order-key">
        <span>{say.discs.full}</span> <span>{say.discs.half}</span>
      </p>
    </div>
  );
}

/** Without a photo the holes themselves are the picture. */
function NoPhoto({ step, atMarkId, onPickMark }: PutBackScreenProps) {
  return (
    <div className="no-photo holes">
      {step.marks.length > 0 && (
        <ul className="holes-row">
          {step.marks.map((mark) => (
            <li key={mark.id}>
              <button
                type="button"
                onClick={() => onPickMark(mark.id)}
                aria-label={sayMarks.heard(mark.name, sayMarks.state(mark.kind, mark.state))}
              >
                <Mark
                  kind={mark.kind}
                  state={mark.state}
                  text={mark.text}
                  at={mark.id === atMarkId}
                  size={96}
                />
              </button>
            </li>
          ))}
        </ul>
      )}
      <p className="how">{step.marks.length > 0 ? say.noPhoto : say.noHoles}</p>
    </div>
  );
}
