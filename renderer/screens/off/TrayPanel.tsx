import { useRef } from 'react';
import { tray as say } from '../../texts/tray.ts';
import { Field } from '../../ui/Field.tsx';
import { Key } from '../../ui/Key.tsx';
import { MeasureForm, type MeasureProps } from './MeasureForm.tsx';

/** One line of what lies on the table. */
export interface TrayRowData {
  readonly row: number;
  /** "4 × M8, 25 ± 1 mm, head 13"; as typed where it could not be read. */
  readonly says: string;
  /** Why it was not read, or its note. */
  readonly about: string;
  readonly bad: boolean;
  /** Where its pieces belong, and what of it is left over. */
  readonly goes: readonly TrayLine[];
}

/** So many, and where they belong or why not. */
export interface TrayLine {
  readonly id: string;
  readonly count: number;
  readonly name: string;
  readonly about: string;
  readonly to: 'hole' | 'nowhere';
  /** What of the holes was never written down, so that the fit says little; "" = no doubt. */
  readonly doubt: string;
}

export interface TrayAnswerData {
  readonly pieces: number;
  /** Pieces that belong somewhere, and those that do so only by what nobody wrote down. */
  readonly sorted: number;
  readonly doubtful: number;
  readonly short: readonly TrayLine[];
  readonly alike: readonly string[];
}

export interface TrayPanelProps {
  readonly form: MeasureProps;
  readonly rows: readonly TrayRowData[];
  /** What a table said on its way in: no heading, a column twice. */
  readonly told: readonly string[];
  /** Null while nothing is listed or it is still being matched. */
  readonly answer: TrayAnswerData | null;
  readonly bags: readonly { readonly id: string; readonly name: string; readonly spilled: boolean }[];
  readonly into: string;
  /** Whether the doubtful ones are booked too. */
  readonly doubtful: boolean;
  readonly onFile: (text: string) => void;
  readonly onMend: (row: number) => void;
  readonly onDrop: (row: number) => void;
  readonly onClear: () => void;
  readonly onSpilled: (stowId: string, spilled: boolean) => void;
  readonly onInto: (text: string) => void;
  readonly onDoubtful: (doubtful: boolean) => void;
  readonly onBook: () => void;
}

/** What was spilled, measured and put back in order: each to the holes it belongs to. */
export function TrayPanel(props: TrayPanelProps) {
  const { rows, answer, told } = props;
  const pieces = answer?.pieces ?? 0;
  return (
    <>
      <div className="bag-head">
        <p className="big">
          <b className="num">{pieces}</b>
          <span className="unit">
            <b>{say.pieces(pieces)}</b>
          </span>
        </p>
        <h2>
          <span>{say.title}</span>
        </h2>
      </div>
      {rows.length === 0 && <p className="off-say">{say.teach}</p>}
      <MeasureForm {...props.form} />
      <ReadTable onFile={props.onFile} />
      {told.length > 0 && (
        <ul className="tray-told">
          {told.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      {rows.length > 0 && <Listed {...props} />}
      {answer !== null && <Answer answer={answer} />}
      {rows.length > 0 && <Booking {...props} />}
    </>
  );
}

function ReadTable({ onFile }: Pick<TrayPanelProps, 'onFile'>) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <div className="keys">
      <Key onPress={() => input.current?.click()}>{say.file}</Key>
      <input
        ref={input}
        type="file"
        accept=".csv,.tsv,.txt,text/csv,text/plain"
        className="heard-only"
        tabIndex={-1}
        aria-label={say.fileLabel}
        onChange={(event) => {
          const [file] = event.target.files ?? [];
          if (file) void file.text().then(onFile);
          // The same file again, mended, is read again.
          event.target.value = '';
        }}
      />
    </div>
  );
}

function Listed({ rows, onMend, onDrop, onClear }: TrayPanelProps) {
  return (
    <section className="tray-part">
      <h3>{say.listed}</h3>
      <ul className="tray-rows">
        {rows.map((one) => (
          <li key={one.row}>
            <p>
              <span>{one.says}</span>
              {one.about !== '' && <span className={one.bad ? 'cap grave-words' : 'cap'}>{one.about}</span>}
              {one.goes.map((line) => (
                <Goes key={line.id} line={line} />
              ))}
            </p>
            <button
              type="button"
              className="link"
              onClick={() => onMend(one.row)}
              aria-label={say.mendRow(one.says)}
            >
              {say.mend}
            </button>
            <button
              type="button"
              className="link"
              onClick={() => onDrop(one.row)}
              aria-label={say.dropRow(one.says)}
            >
              {say.drop}
            </button>
          </li>
        ))}
      </ul>
      <button type="button" className="link" onClick={onClear}>
        {say.clear}
      </button>
    </section>
  );
}

/** "→ 4 Pump cover, M8 × 25 mm · bag 1": where pieces of a row belong; without an arrow what belongs nowhere. */
function Goes({ line }: { readonly line: TrayLine }) {
  return (
    <>
      <span>
        {line.to === 'nowhere' ? '' : '→ '}
        <b className="num">{line.count}</b>{' '}
        <span className={line.to === 'nowhere' ? '' : 'said'}>{line.name}</span>
      </span>
      <span className="cap">{line.about}</span>
      {line.doubt !== '' && <span className="cap grave-words">{line.doubt}</span>}
    </>
  );
}

function Lines({ title, lines }: { readonly title: string; readonly lines: readonly TrayLine[] }) {
  if (lines.length === 0) return null;
  return (
    <section className="tray-part">
      <h3>{title}</h3>
      <ul className="wants">
        {lines.map((line) => (
          <li key={line.id}>
            <b className="num">{line.count}</b>
            <p>
              <span className="said">{line.name}</span>
              <span className="cap">{line.about}</span>
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Answer({ answer }: { readonly answer: TrayAnswerData }) {
  return (
    <div aria-live="polite">
      <Lines title={say.short} lines={answer.short} />
      {answer.alike.length > 0 && (
        <section className="tray-part">
          <h3>{say.alike}</h3>
          <ul className="look-at">
            {answer.alike.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}

function Booking(props: TrayPanelProps) {
  const inDoubt = props.answer?.doubtful ?? 0;
  const sorted = (props.answer?.sorted ?? 0) + (props.doubtful ? inDoubt : 0);
  return (
    <>
      <section className="tray-part">
        <h3>{say.from}</h3>
        <p className="off-say">{props.bags.length === 0 ? say.fromNone : say.fromSay}</p>
        <ul className="list tray-bags">
          {props.bags.map((bag) => (
            <li key={bag.id}>
              <label>
                <input
                  type="checkbox"
                  checked={bag.spilled}
                  onChange={(event) => props.onSpilled(bag.id, event.target.checked)}
                />
                <span>{bag.name}</span>
              </label>
            </li>
          ))}
        </ul>
        {inDoubt > 0 && (
          <ul className="list tray-bags">
            <li>
              <label>
                <input
                  type="checkbox"
                  checked={props.doubtful}
                  onChange={(event) => props.onDoubtful(event.target.checked)}
                />
                <span>{say.bookDoubtful(inDoubt)}</span>
              </label>
            </li>
          </ul>
        )}
        <Field label={say.into} example={say.intoExample} value={props.into} onChange={props.onInto} />
      </section>
      <div className="foot keys">
        <Key look="go" large onPress={props.onBook} off={sorted === 0}>
          {say.book(sorted)}
        </Key>
      </div>
    </>
  );
}
