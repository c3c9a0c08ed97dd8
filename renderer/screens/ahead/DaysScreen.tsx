import type { ReactNode } from 'react';
import { Frame } from '../../frame/Frame.tsx';
import type { LinePaneProps } from '../../frame/LinePane.tsx';
import { ahead as say } from '../../texts/ahead.ts';
import { Field } from '../../ui/Field.tsx';
import { Key } from '../../ui/Key.tsx';
import { BigNumber } from '../../ui/Numbers.tsx';
import { Rows, type RowData } from '../../ui/Rows.tsx';
import type { StatusProps } from '../../ui/Status.tsx';

/** A day on which something arrives, comes back or has cured. */
export interface DayRow {
  readonly iso: string;
  readonly name: string;
  /** What comes on it. */
  readonly about: string;
  /** "3 steps more"; "" for none. */
  readonly more: string;
}

export interface DaysScreenProps {
  readonly pane: LinePaneProps;
  readonly status: StatusProps;
  /** "Thursday, 26 November", "Today". */
  readonly title: string;
  /** The day chosen, "2026-11-26". */
  readonly iso: string;
  readonly days: readonly DayRow[];
  /** Steps that can go ahead by then; null until it is known. */
  readonly count: number | null;
  readonly groups: readonly { readonly title: string; readonly rows: readonly RowData[] }[];
  /** Pieces that could go to another set first. */
  readonly promises: ReactNode;
  readonly onDay: (iso: string) => void;
  readonly onPick: (stepId: string) => void;
  readonly onBack: () => void;
}

/** "On Thursday, when the head is back": what can go ahead by a day, what cannot and why, what one more item would free. */
export function DaysScreen(props: DaysScreenProps) {
  return (
    <Frame pane={props.pane} status={props.status} screen="ahead days">
      <div className="off-list">
        <h1>{say.byDay(props.title)}</h1>
        {props.count !== null && props.groups.length === 0 && (
          <p className="off-summary">{say.nothingLeft}</p>
        )}
        {props.groups.map((group) => (
          <Rows key={group.title} title={group.title} rows={group.rows} onPick={props.onPick} />
        ))}
        {props.promises}
        <div className="keys off-tools two">
          <Key onPress={props.onBack} hint="Esc">
            {say.backToList}
          </Key>
        </div>
      </div>
      <section className="hand on-sheet">
        <div aria-live="polite">
          <BigNumber
            value={props.count === null ? '…' : String(props.count)}
            unit={say.byThen(props.count ?? 0)}
            size={152}
          />
        </div>
        <Days {...props} />
      </section>
    </Frame>
  );
}

/** The days that matter, and any other. */
function Days({ days, iso, onDay }: DaysScreenProps) {
  return (
    <section className="day-rows">
      <h2 className="rows-title">{say.byDate}</h2>
      <ul>
        {days.map((one) => (
          <li key={one.iso}>
            <button
              type="button"
              className="day-row"
              aria-current={one.iso === iso ? 'date' : undefined}
              onClick={() => onDay(one.iso)}
            >
              <b>{one.name}</b>
              <span className="more">{one.more}</span>
              {one.about !== '' && <span className="cap">{one.about}</span>}
            </button>
          </li>
        ))}
      </ul>
      <Field type="date" label={say.otherDay} value={iso} onChange={onDay} figures />
      <p className="cap">{days.length > 1 ? say.dayKeys : say.noDays}</p>
    </section>
  );
}
