import { Frame } from '../../frame/Frame.tsx';
import type { LinePaneProps } from '../../frame/LinePane.tsx';
import { ahead as say } from '../../texts/ahead.ts';
import { Field } from '../../ui/Field.tsx';
import { Key } from '../../ui/Key.tsx';
import { BigNumber } from '../../ui/Numbers.tsx';
import type { StatusProps } from '../../ui/Status.tsx';

/** Something on the machine that may be wanted. */
export interface TargetRow {
  readonly id: string;
  readonly mark: string;
  readonly name: string;
  /** The removal that it came off with, where that has another name. */
  readonly about: string;
}

export interface ChosenData {
  readonly id: string;
  readonly name: string;
}

/** A removal in the way. */
export interface WayRow extends TargetRow {
  readonly count: number;
}

export interface PlannedRow {
  readonly id: string;
  readonly name: string;
  readonly about: string;
  readonly holes: number;
}

export interface ReachScreenProps {
  readonly pane: LinePaneProps;
  readonly status: StatusProps;
  readonly typed: string;
  readonly targets: readonly TargetRow[];
  /** More that fit and are found by typing. */
  readonly more: number;
  readonly chosen: readonly ChosenData[];
  /** What must come off for what is chosen or named; null while nothing is. */
  readonly way: readonly WayRow[] | null;
  readonly cost: readonly string[];
  /** Words that nothing is called, things that were never logged, whether it was touched at all. */
  readonly said: readonly string[];
  readonly planned: readonly PlannedRow[];
  /** Whether some of what is in the way has to come off a second time. */
  readonly canPlan: boolean;
  readonly onType: (typed: string) => void;
  readonly onChoose: (id: string) => void;
  /** The first that fits what is typed. */
  readonly onTake: () => void;
  readonly onPlan: () => void;
  readonly onOff: () => void;
  readonly onBack: () => void;
}

/** What must come off to reach several things: chosen at the left, the least set and the plan at the right. */
export function ReachScreen(props: ReachScreenProps) {
  return (
    <Frame pane={props.pane} status={props.status} screen="ahead way-in">
      <div className="off-list">
        <h1>{say.reach}</h1>
        <p className="off-summary">{say.reachTeach}</p>
        <form
          onSubmit={(event) => {
            event.preventDefault();
            if (props.typed.trim() === '') props.onPlan();
            else props.onTake();
          }}
        >
          <Field
            label={say.reachAsk}
            example={say.reachExample}
            value={props.typed}
            onChange={props.onType}
            first
          />
        </form>
        {props.chosen.length > 0 && (
          <div className="keys chosen" role="group" aria-label={say.chosen}>
            {props.chosen.map((one) => (
              <Key key={one.id} onPress={() => props.onChoose(one.id)} label={say.letGo(one.name)}>
                <span className="said">{one.name}</span>
                <span aria-hidden="true">×</span>
              </Key>
            ))}
          </div>
        )}
        <OnNow {...props} />
        <div className="keys off-tools two">
          <Key onPress={props.onBack} hint="Esc">
            {say.backToList}
          </Key>
        </div>
      </div>
      <section className="hand on-sheet" aria-live="polite">
        {props.way !== null ? <Way {...props} way={props.way} /> : <Plan {...props} />}
      </section>
    </Frame>
  );
}

/** What can be chosen. */
function OnNow(props: ReachScreenProps) {
  const chosen = new Set(props.chosen.map((one) => one.id));
  return (
    <section>
      <h2 className="rows-title">{say.onNow}</h2>
      {props.targets.length === 0 && (
        <p className="off-summary">{props.typed === '' ? say.noneOn : say.noneFits}</p>
      )}
      <ul>
        {props.targets.map((row) => (
          <li key={row.id}>
            <label className="row pick">
              <input type="checkbox" checked={chosen.has(row.id)} onChange={() => props.onChoose(row.id)} />
              <span className="said">{row.name}</span>
              <b className="num count">{row.mark}</b>
              <span className="about">{row.about}</span>
            </label>
          </li>
        ))}
      </ul>
      {props.more > 0 && <p className="off-summary">{say.moreOn(props.more)}</p>}
    </section>
  );
}

/** The least set, with what it costs. */
function Way(props: ReachScreenProps & { readonly way: readonly WayRow[] }) {
  const { way } = props;
  return (
    <>
      <BigNumber value={String(way.length)} unit={say.comesOff(way.length)} size={152} />
      {props.said.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {way.length > 0 && (
        <ol className="way">
          {way.map((row) => (
            <li key={row.id}>
              <b className="num">{row.mark}</b>
              <span className="said">{row.name}</span>
              <span className="cap">{row.about}</span>
            </li>
          ))}
        </ol>
      )}
      {props.cost.length > 0 && (
        <div>
          <h2>{say.costs}</h2>
          <ul className="costs">
            {props.cost.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </div>
      )}
      {props.canPlan && (
        <div className="foot one-key">
          <Key look="go" large onPress={props.onPlan} hint="Enter">
            {say.planThese}
          </Key>
        </div>
      )}
    </>
  );
}

/** What is planned, one after the other; the first is at hand. */
function Plan(props: ReachScreenProps) {
  const { planned } = props;
  const [first] = planned;
  if (first === undefined) return <p className="off-teach">{say.reachPick}</p>;
  return (
    <>
      <BigNumber value={String(planned.length)} unit={say.leftToComeOff} size={152} />
      <h2>{say.thePlan}</h2>
      <ol className="way">
        {planned.map((row, i) => (
          <li key={row.id} aria-current={i === 0 ? 'step' : undefined}>
            <b className="num">{i + 1}</b>
            <span className="said">{row.name}</span>
            <span className="cap">
              {[row.holes > 0 ? say.holes(row.holes) : '', row.about]
                .filter((word) => word !== '')
                .join(', ')}
            </span>
          </li>
        ))}
      </ol>
      <div className="foot one-key">
        <Key look="go" large onPress={props.onOff} hint="Enter">
          {say.isOff(first.name)}
        </Key>
      </div>
    </>
  );
}
