import type { Arrival } from '../../model/arrivals.ts';
import { off as say } from '../../texts/off.ts';
import { Choice } from '../../ui/Choice.tsx';
import { Field } from '../../ui/Field.tsx';
import { Key } from '../../ui/Key.tsx';
import { Say, type Rich } from '../../ui/rich.tsx';

export type WantState = 'needed' | 'ordered' | 'here' | 'dropped';

export interface WantData {
  readonly id: string;
  readonly what: string;
  /** Null = nobody said how many. */
  readonly quantity: number | null;
  /** Why it is wanted, and for which removal. */
  readonly about: string;
  readonly state: WantState;
  /** Day on which it is promised, "2026-11-26"; "" where nobody said. */
  readonly by: string;
}

interface WantPanelProps {
  readonly wants: readonly WantData[];
  readonly arrivals: readonly Arrival[];
  readonly onState: (id: string, state: WantState) => void;
  readonly onDay: (id: string, iso: string) => void;
  readonly onSave: () => void;
}

/** What must be bought, made or fetched. */
export function WantPanel({ wants, arrivals, onState, onDay, onSave }: WantPanelProps) {
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
              <b className="num">{want.quantity ?? say.countUnknown}</b>
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
              {want.state === 'ordered' && (
                <Field
                  type="date"
                  label={say.wantBy(want.what)}
                  value={want.by}
                  onChange={(iso) => onDay(want.id, iso)}
                  figures
                />
              )}
            </li>
          ))}
        </ul>
      )}
      <Arrivals arrivals={arrivals} />
      <div className="foot keys">
        <Key onPress={onSave} off={wants.length === 0}>
          {say.saveList}
        </Key>
      </div>
    </>
  );
}

/** What is here and was never noted: no line of its own is left to say so. */
function Arrivals({ arrivals }: Pick<WantPanelProps, 'arrivals'>) {
  if (arrivals.length === 0) return null;
  return (
    <section aria-label={say.cameIn}>
      <h2>{say.cameIn}</h2>
      <ul className="wants came-in">
        {arrivals.map((one) => (
          <li key={one.id}>
            <b className="num">{one.quantity}</b>
            <p>
              <span className="said">{one.what}</span>
              <span className="cap">{one.about}</span>
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}

export interface AwayData {
  readonly name: string;
  readonly count: number;
  /** "with Weber, since 3 October, due 20 November, 5 days late" */
  readonly about: Rich;
  readonly note: string;
}

interface AwayPanelProps {
  readonly away: AwayData;
  readonly onBack: () => void;
  readonly onRemoval: () => void;
}

/** Something that is not in the workshop: with whom, since when, due when. */
export function AwayPanel({ away, onBack, onRemoval }: AwayPanelProps) {
  return (
    <>
      <div className="bag-head">
        <p className="big">
          <b className="num">{away.count}</b>
          <span className="unit">
            <b>{say.isAway}</b>
          </span>
        </p>
        <h2>
          <span className="said">{away.name}</span>
        </h2>
      </div>
      <p className="bag-say">
        <Say text={away.about} />
      </p>
      {away.note !== '' && <p className="said from-before">{away.note}</p>}
      <div className="bag-keys">
        <Key look="go" onPress={onBack}>
          {say.sendBack}
        </Key>
        <Key onPress={onRemoval}>{say.itsRemoval}</Key>
      </div>
    </>
  );
}

interface PartPanelProps {
  readonly part: { readonly name: string; readonly count: number; readonly about: string };
  readonly onSend: () => void;
  readonly onRemoval: () => void;
}

/** A part that lies in no bag: what happens to it. */
export function PartPanel({ part, onSend, onRemoval }: PartPanelProps) {
  return (
    <>
      <div className="bag-head">
        <p className="big">
          <b className="num">{part.count}</b>
          <span className="unit">
            <b>{say.isOff}</b>
          </span>
        </p>
        <h2>
          <span className="said">{part.name}</span>
        </h2>
      </div>
      <p className="bag-say">{part.about}</p>
      <div className="bag-keys">
        <Key onPress={onSend}>{say.send}</Key>
        <Key onPress={onRemoval}>{say.itsRemoval}</Key>
      </div>
    </>
  );
}
