import { entry as sayEntry } from '../../texts/entry.ts';
import { common } from '../../texts/common.ts';
import { handbook as sayBook } from '../../texts/handbook.ts';
import { pattern as sayPattern } from '../../texts/pattern.ts';
import { removal as say } from '../../texts/removal.ts';
import { Choice } from '../../ui/Choice.tsx';
import { Written } from '../../ui/Field.tsx';
import { FoundHere } from '../../ui/FoundHere.tsx';
import { HandBody } from '../../ui/HandBody.tsx';
import { Key } from '../../ui/Key.tsx';
import { NumberPad } from '../../ui/NumberPad.tsx';
import { BigNumber, Trio } from '../../ui/Numbers.tsx';
import { Points } from '../../ui/Point.tsx';
import { Undoing } from './Undoing.tsx';
import { Toggles } from '../../ui/Toggles.tsx';
import { MarkPanel } from './MarkPanel.tsx';
import { Planned } from './Planned.tsx';
import type { RemovalScreenProps, Side } from './RemovalScreen.tsx';

type HandProps = RemovalScreenProps & {
  readonly onType: (typed: string) => void;
  /** Enter ended the title or the note. */
  readonly onNamed: () => void;
};

/** The removal at hand: its number, title, what was done, counts, open points, note for the way back, number pad. */
export function RemovalHand(props: HandProps) {
  const { removal } = props;
  const { shown } = removal;
  return (
    <section className="hand removal-hand">
      <HandBody>
        <Head {...props} />
        {props.found !== null && <FoundHere text={props.found} takesFocus={false} />}
        {props.markAtHand !== null && (
          <MarkPanel
            mark={props.markAtHand}
            onBind={props.onBindMark}
            onRemove={() => props.onRemoveMark(props.markAtHand?.id ?? '')}
            onLeave={props.onLeaveMark}
            onNumber={props.onNumberMark}
            onJoin={props.onJoinMark}
            onPart={props.onPartMark}
            onShowPhoto={props.onShowPhoto}
          />
        )}
        {props.markAtHand === null && <Done {...props} />}
        {removal.planned !== null && <Planned planned={removal.planned} onFound={props.onExpected} />}
        {props.markAtHand === null && <Where {...props} />}
        {removal.counts.length > 0 && (
          <Trio
            counts={[
              ...removal.counts,
              ...(shown === null ? [] : [{ label: say.shown(shown.total), value: shown.marked, end: true }]),
            ]}
          />
        )}
        {props.markAtHand === null && <About {...props} />}
      </HandBody>
      <div className="foot">
        <Pad {...props} />
      </div>
    </section>
  );
}

/** What else is said of the removal; a mark at hand takes its place. */
function About(props: HandProps) {
  const { removal, photo } = props;
  return (
    <>
      {photo !== null && photo.undoing !== null && <Undoing undoing={photo.undoing} />}
      {props.onWhichThread !== null && (
        <button type="button" className="link" onClick={props.onWhichThread}>
          {sayBook.whichThread}
        </button>
      )}
      {removal.points.length > 0 && <Points points={removal.points} />}
      <div className="removal-note">
        <Written
          label={say.note}
          value={removal.noteBack}
          placeholder={say.noteEmpty}
          onChange={props.onNoteBack}
          onDone={props.onNoteBackDone}
          onEnter={props.onNamed}
        />
        {removal.noteBack !== '' && <p className="cap">{say.noteCaption}</p>}
      </div>
    </>
  );
}

function Head({ removal, photo, onTitle, onTitleDone, onNamed, onBench, canBench }: HandProps) {
  const head = removal.planned
    ? say.expected
    : removal.since === null
      ? say.planned
      : say.word(removal.since);
  const about = [head, ...removal.about];
  return (
    <div className={photo === null ? 'removal-head bare' : 'removal-head'}>
      <div className="removal-number">
        <BigNumber value={String(removal.number)} at>
          {about.filter(Boolean).map((line) => (
            <span key={line}>{line}</span>
          ))}
        </BigNumber>
        {canBench && (
          <button type="button" className="link" onClick={onBench} aria-keyshortcuts="Alt+B">
            {say.bench} <kbd aria-hidden="true">{say.benchHint}</kbd>
          </button>
        )}
      </div>
      <h1>
        <Written
          className="title"
          label={say.title}
          value={removal.title}
          placeholder={say.titleEmpty}
          onChange={onTitle}
          onDone={onTitleDone}
          onEnter={onNamed}
        />
      </h1>
    </div>
  );
}

/** A planned removal is off with one key, as long as nothing is typed; a line goes into a removal taken up again. */
function removalWord({ removal, entry, stays }: HandProps): string {
  if (stays && entry.text.trim() !== '') return sayEntry.addTo(removal.number);
  if (entry.beside !== null) return sayEntry.addTo(entry.beside);
  return removal.planned !== null && entry.text.trim() === '' ? sayPattern.begin : sayEntry.next;
}

/** What was done, with the keys that write a line down as that. */
function Done({ removal, onDid }: HandProps) {
  return (
    <Choice
      name={say.did}
      value={removal.did}
      onChange={onDid}
      options={(['off', 'slackened', 'opened', 'aside'] as const).map((value) => ({
        value,
        label: say.dids[value],
        hint: say.didHints[value],
      }))}
    />
  );
}

/** Where on the machine: one touch for the place, one for the side. */
function Where({ removal, onPlace, onSide }: HandProps) {
  return (
    <div className="where">
      <Toggles
        name={say.place}
        value={removal.place}
        onChange={onPlace}
        options={removal.places.map((place) => ({ value: place, label: place }))}
      />
      <Toggles
        name={say.side}
        value={removal.side ?? ''}
        onChange={(side) => onSide(side === '' ? null : (side as Side))}
        options={removal.sides}
      />
    </div>
  );
}

function Pad(props: HandProps) {
  return (
    <NumberPad onType={props.onType}>
      <Key
        key="undo"
        onPress={props.onUndo}
        off={!props.canUndo}
        hint={common.undoHint}
        shortcut="Control+Z"
        upright
      >
        {common.undo}
      </Key>
      <Key
        key="same"
        onPress={props.onRepeat}
        off={!props.canRepeat}
        hint={sayEntry.sameHint}
        shortcut="ArrowUp"
        upright
      >
        {sayEntry.same}
      </Key>
      <Key key="next" look="go" className="next" upright onPress={props.onNext} hint={sayEntry.enter}>
        {removalWord(props)}
      </Key>
    </NumberPad>
  );
}
