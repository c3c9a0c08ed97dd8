import { off as say } from '../../texts/off.ts';
import { Choice } from '../../ui/Choice.tsx';
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
  readonly onSave: () => void;
}

/** What must be bought, made or fetched. */
export function WantPanel({ wants, onState, onSave }: WantPanelProps) {
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
        <Key onPress={onSave} off={wants.length === 0}>
          {say.saveList}
        </Key>
      </div>
    </>
  );
}

/** A group of answers under one heading: assigned, short, left over, cannot be told apart. */
