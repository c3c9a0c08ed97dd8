import { useEffect, useRef } from 'react';
import { common } from '../../texts/common.ts';
import { done as sayDone } from '../../texts/done.ts';
import { marks as sayMarks } from '../../texts/marks.ts';
import { putback as say } from '../../texts/putback.ts';
import { sheet as saySheet } from '../../texts/sheet.ts';
import { Choice } from '../../ui/Choice.tsx';
import { FoundHere } from '../../ui/FoundHere.tsx';
import { Field } from '../../ui/Field.tsx';
import { HandBody } from '../../ui/HandBody.tsx';
import { Key } from '../../ui/Key.tsx';
import { BigNumber } from '../../ui/Numbers.tsx';
import { Points } from '../../ui/Point.tsx';
import { Say } from '../../ui/rich.tsx';
import type { PutBackScreenProps } from './PutBackScreen.tsx';
import type { ActionData, HoleData } from './types.ts';

/** The step at hand in words: figure, note for the way back, what goes in, the order, the next gate, the keys. */
export function StepHand(props: PutBackScreenProps) {
  const { step, hole } = props;
  return (
    <section className="hand putback-hand">
      <HandBody>
        <header className="step-head">
          <h1 className="said title">{step.title}</h1>
          <button type="button" className="step-place" onClick={props.onList}>
            {say.step(step.number, step.total)}, {say.states[step.state]}
            {step.byTools ? `, ${say.byTools}` : ''}
          </button>
        </header>
        {props.found !== null && <FoundHere text={props.found} takesFocus />}
        <Figure {...props} />
        {step.stateWhy.length > 0 && (
          <ul className="step-why">
            {step.stateWhy.map((why) => (
              <li key={why}>{why}</li>
            ))}
          </ul>
        )}
        {props.asks}
        {hole !== null && <Hole {...props} hole={hole} />}
        <Words step={step} />
        <GoTogether {...props} />
        {step.actions.length > 0 && <Actions actions={step.actions} onAction={props.onAction} />}
        <Done {...step} />
        {step.gate !== null && (
          <div>
            <h2>{step.gate.title}</h2>
            <Points points={step.gate.points} onAnswer={props.onAnswer} />
          </div>
        )}
        <button type="button" className="link step-book" onClick={props.onPrint}>
          {saySheet.print}
        </button>
      </HandBody>
      <div className="foot step-keys">
        <Key onPress={props.onUndo} off={!props.canUndo} hint={common.undoHint} shortcut="Control+Z">
          {say.undo}
        </Key>
        <Key onPress={props.onCameOff}>{say.again}</Key>
        <Key look="go" large onPress={props.onGo} hint={step.go.hint} off={step.go.off}>
          {step.go.label}
        </Key>
      </div>
    </section>
  );
}

/** Where it comes from, the note for the way back, what is fitted. */
function Words({ step }: Pick<PutBackScreenProps, 'step'>) {
  return (
    <>
      {step.about !== '' && (
        <p>
          <Say text={step.about} />
        </p>
      )}
      {step.noteBack !== null && <NoteBack {...step.noteBack} />}
      {step.fitted !== '' && (
        <div>
          <h2>{say.fitted}</h2>
          <p>
            <Say text={step.fitted} />
          </p>
        </div>
      )}
    </>
  );
}

/** Once it is done: when, by whom, what was read, and what was passed and why. */
function Done({ did, passed }: Pick<PutBackScreenProps['step'], 'did' | 'passed'>) {
  const lists = [
    [sayDone.title, did],
    [sayDone.passedTitle, passed],
  ] as const;
  return lists.map(
    ([title, lines]) =>
      lines.length > 0 && (
        <section key={title} aria-label={title}>
          <h2>{title}</h2>
          <ul className="step-did">
            {lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </section>
      ),
  );
}

/** The one number of the step, and the way to where it comes from. */
function Figure({ step, torque }: PutBackScreenProps) {
  return (
    <>
      {step.figure !== null && (
        <BigNumber value={step.figure.value} unit={step.figure.unit} size={152}>
          {step.figure.other}
        </BigNumber>
      )}
      {torque !== null && (
        <button type="button" className="link step-book" onClick={torque.onAsk}>
          {torque.question}
        </button>
      )}
    </>
  );
}

function Actions(props: {
  readonly actions: readonly ActionData[];
  readonly onAction: (id: string, done: boolean) => void;
}) {
  return (
    <div>
      <h2>{say.sequence}</h2>
      <ol className="list">
        {props.actions.map((action) => (
          <li key={action.id} className={action.lit ? 'lit' : undefined}>
            <Action action={action} onAction={props.onAction} />
            {action.more !== '' && (
              <button type="button" className="link" onClick={() => props.onAction(action.id, true)}>
                {action.more}
              </button>
            )}
          </li>
        ))}
      </ol>
    </div>
  );
}

interface ActionProps {
  readonly action: ActionData;
  readonly onAction: (id: string, done: boolean) => void;
}

/** A box where a tick is kept; what is kept is taken back by Undo, or came off again. */
function Action({ action, onAction }: ActionProps) {
  const words = (
    <>
      <span>{action.text}</span>
      {action.caution !== '' && <strong className="caution">{action.caution}</strong>}
    </>
  );
  if (!action.ticks)
    return (
      <p className="unticked">
        <span aria-hidden="true" />
        {words}
      </p>
    );
  return (
    <label>
      <input
        type="checkbox"
        checked={action.done}
        disabled={action.done}
        onChange={(event) => onAction(action.id, event.target.checked)}
      />
      {words}
    </label>
  );
}

/** One hole by itself: only for exceptions and for a reading. */
function Hole(props: PutBackScreenProps & { readonly hole: HoleData }) {
  const { hole } = props;
  const form = useRef<HTMLFormElement>(null);
  // On a phone it opens below what is seen; a touch on a mark must not seem to do nothing.
  useEffect(() => {
    form.current?.scrollIntoView({ block: 'center' });
  }, [hole.id]);
  return (
    <form
      ref={form}
      className="hole"
      onSubmit={(event) => {
        event.preventDefault();
        props.onKeepReading();
      }}
    >
      <h2>{say.hole(hole.name)}</h2>
      <Choice name={say.hole(hole.name)} value={hole.state} onChange={props.onHole} options={hole.options} />
      {hole.reached !== '' && <p>{hole.reached}</p>}
      <div className="hole-reading">
        {hole.reading !== null && (
          <>
            <Field
              numeric
              label={say.read}
              example={say.readExample}
              value={hole.reading}
              onChange={props.onReading}
              refused={hole.refused ?? undefined}
            />
            <Key submits onPress={() => undefined} off={hole.reading.trim() === ''}>
              {say.keep}
            </Key>
          </>
        )}
        <Key onPress={props.onCloseHole}>{say.closeHole}</Key>
      </div>
    </form>
  );
}

/** Marks that were joined when things came apart: this pin into that slot. */
function GoTogether({ mates }: PutBackScreenProps) {
  if (mates.lines.length === 0) return null;
  return (
    <div>
      <h2>{sayMarks.goTogether}</h2>
      <ul>
        {mates.lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </div>
  );
}

function NoteBack({ text, when }: NonNullable<PutBackScreenProps['step']['noteBack']>) {
  return (
    <div>
      <p className="said from-before">{text}</p>
      <p className="cap">{say.noteFrom(when)}</p>
    </div>
  );
}
