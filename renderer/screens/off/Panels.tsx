import { off as say } from '../../texts/off.ts';
import { Choice } from '../../ui/Choice.tsx';
import { Field } from '../../ui/Field.tsx';
import { Key } from '../../ui/Key.tsx';

export type WantState = 'needed' | 'ordered' | 'here' | 'dropped';

export interface WantData {
  readonly id: string;
  readonly what: string;
  readonly quantity: number;
  /** Why it is wanted, and for which removal. */
  readonly about: string;
  readonly state: WantState;
}

interface WantPanelProps {
  readonly wants: readonly WantData[];
  readonly onState: (id: string, state: WantState) => void;
  readonly onPrint: () => void;
}

/** What must be bought, made or fetched. */
export function WantPanel({ wants, onState, onPrint }: WantPanelProps) {
  const open = wants.filter((want) => want.state === 'needed' || want.state === 'ordered').length;
  return (
    <>
      <div className="bag-head">
        <p className="big">
          <b className="num">{open}</b>
          <span className="unit">
            <b>{say.wantsOpen}</b>
          </span>
        </p>
        <h2>
          <span>{say.wants}</span>
        </h2>
      </div>
      {wants.length === 0 ? (
        <p className="list-empty">{say.wantsEmpty}</p>
      ) : (
        <ul className="wants">
          {wants.map((want) => (
            <li key={want.id}>
              <b className="num">{want.quantity}</b>
              <p>
                <span className="said">{want.what}</span>
                <span className="cap">{want.about}</span>
              </p>
              <Choice
                name={say.wantState(want.what)}
                value={want.state}
                onChange={(state) => onState(want.id, state)}
                options={(['needed', 'ordered', 'here', 'dropped'] as const).map((value) => ({
                  value,
                  label: say.states[value],
                }))}
              />
            </li>
          ))}
        </ul>
      )}
      <div className="foot keys">
        <Key onPress={onPrint} off={wants.length === 0}>
          {say.printList}
        </Key>
      </div>
    </>
  );
}

/** A group of answers under one heading: assigned, short, left over, cannot be told apart. */
export interface AnswerGroup {
  readonly title: string;
  readonly rows: readonly { readonly id: string; readonly say: string; readonly about: string }[];
}

function Answers({ groups }: { readonly groups: readonly AnswerGroup[] }) {
  return groups.map((group) => (
    <section key={group.title}>
      <h3 className="rows-title">{group.title}</h3>
      <ul className="answers">
        {group.rows.map((row) => (
          <li key={row.id}>
            <span className="said">{row.say}</span>
            <span className="cap">{row.about}</span>
          </li>
        ))}
      </ul>
    </section>
  ));
}

interface TrayPanelProps {
  readonly lines: string;
  /** Why the lines cannot be sorted, or null. */
  readonly refused: string | null;
  readonly answers: readonly AnswerGroup[] | null;
  readonly onLines: (lines: string) => void;
  readonly onSort: () => void;
}

/** Loose fasteners back to open holes. */
export function TrayPanel({ lines, refused, answers, onLines, onSort }: TrayPanelProps) {
  return (
    <>
      <h2 className="panel-title">{say.trayTitle}</h2>
      <p className="list-empty">{say.trayHow}</p>
      <Field
        label={say.trayLines}
        example={say.trayExample}
        value={lines}
        lines
        onChange={onLines}
        refused={refused ?? undefined}
      />
      <div className="keys">
        <Key look="go" onPress={onSort} off={lines.trim() === ''}>
          {say.traySort}
        </Key>
      </div>
      {answers !== null && <Answers groups={answers} />}
    </>
  );
}

interface UnknownPanelProps {
  readonly line: string;
  readonly answers: readonly AnswerGroup[] | null;
  readonly onLine: (line: string) => void;
}

/** One bolt from the floor against every open hole. */
export function UnknownPanel({ line, answers, onLine }: UnknownPanelProps) {
  const none = answers !== null && answers.every((group) => group.rows.length === 0);
  return (
    <>
      <h2 className="panel-title">{say.unknownTitle}</h2>
      <p className="list-empty">{say.unknownHow}</p>
      <Field label={say.unknownLine} example={say.unknownExample} value={line} onChange={onLine} first />
      {none ? <p className="bag-say">{say.unknownNone}</p> : answers !== null && <Answers groups={answers} />}
    </>
  );
}
