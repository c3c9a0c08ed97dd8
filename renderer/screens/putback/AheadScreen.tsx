import type { ReactNode } from 'react';
import { Frame } from '../../frame/Frame.tsx';
import type { LinePaneProps } from '../../frame/LinePane.tsx';
import { ahead as sayAhead } from '../../texts/ahead.ts';
import { common } from '../../texts/common.ts';
import { putback as say } from '../../texts/putback.ts';
import { sheet as saySheet } from '../../texts/sheet.ts';
import { HandBody } from '../../ui/HandBody.tsx';
import { Key } from '../../ui/Key.tsx';
import { BigNumber } from '../../ui/Numbers.tsx';
import { LookedAt } from './LookedAt.tsx';
import { Points, type PointData } from '../../ui/Point.tsx';
import { Rows, type RowData } from '../../ui/Rows.tsx';
import type { StatusProps } from '../../ui/Status.tsx';

export type AheadGroup = 'ready' | 'waiting' | 'behind' | 'held' | 'later' | 'done' | 'passed';

export interface AheadScreenProps {
  readonly pane: LinePaneProps;
  readonly status?: StatusProps;
  /** Steps that can be done now with what is in hand. */
  readonly ahead: number;
  readonly groups: readonly { readonly group: AheadGroup; readonly rows: readonly RowData[] }[];
  readonly points: readonly PointData[];
  /** "About 3 to 5 hours …", or why nobody can say yet; "" while nothing is back. */
  readonly timeLeft: string;
  /** Needs that may be none, tools and their order. */
  readonly more: ReactNode;
  /** "Front cover": the step that the large key goes to; null when none is ready. */
  readonly next: { readonly label: string } | null;
  /** Whether the job may be closed now, or is; null while steps are open. */
  readonly close: 'open' | 'closed' | null;
  /** What the check before closing looks at; nothing while steps are open. */
  readonly lookedAt: readonly string[];
  readonly onPick: (id: string) => void;
  /** A point is answered on the spot. */
  readonly onAnswer: (pointId: string, answerId: string) => void;
  readonly onNext: () => void;
  readonly onOwnStep: () => void;
  readonly onNotInLog: () => void;
  /** Planned to come off again, and not off yet. */
  readonly planned: number;
  readonly onReach: () => void;
  readonly onDays: () => void;
  readonly onPrint: () => void;
  readonly onClose: () => void;
  readonly onReopen: () => void;
}

/** The whole way back: what is ready, what waits and for what, what must come first, what is stopped. */
export function AheadScreen(props: AheadScreenProps) {
  const { groups, points } = props;
  const doneRows = groups.find((one) => one.group === 'done')?.rows.length ?? 0;
  const only = groups.length > 0 && groups.every((one) => one.group === 'done' || one.group === 'passed');
  return (
    <Frame pane={props.pane} {...(props.status && { status: props.status })} screen="ahead">
      <div className="off-list">
        <h1>{props.close === 'closed' ? say.closedTitle : say.listTitle}</h1>
        {groups.length === 0 && <p className="off-summary">{say.listNone}</p>}
        {only && <p className="off-summary">{props.close === 'closed' ? say.closedSay : say.listDone}</p>}
        {groups.map((one) => (
          <Rows key={one.group} title={say.groups[one.group]} rows={one.rows} onPick={props.onPick} />
        ))}
        {groups.length > 0 && props.more}
        <div className="keys off-tools two">
          {groups.length > 0 && (
            <Key onPress={props.onDays} hint="D">
              {common.days}
            </Key>
          )}
          {groups.length > 0 && (
            <Key onPress={props.onReach} hint="R">
              {props.planned > 0 ? sayAhead.plannedKey(props.planned) : common.reach}
            </Key>
          )}
          <Key onPress={props.onOwnStep}>{say.addStep}</Key>
          <Key onPress={props.onNotInLog}>{say.notInLog}</Key>
          {groups.length > 0 && <Key onPress={props.onPrint}>{saySheet.print}</Key>}
        </div>
      </div>
      <section className="hand on-sheet">
        <HandBody>
          {only ? (
            <BigNumber value={String(doneRows)} unit={say.doneCount(doneRows)} size={152} />
          ) : (
            <BigNumber value={String(props.ahead)} unit={say.listCount(props.ahead)} size={152} />
          )}
          {props.timeLeft !== '' && <p className="time-left">{props.timeLeft}</p>}
          {points.length > 0 && <Points points={points} onAnswer={props.onAnswer} />}
          <LookedAt lines={props.lookedAt} />
        </HandBody>
        <Foot {...props} />
      </section>
    </Frame>
  );
}

/** The one key: the next step, or the end of the job. */
function Foot({ next, close, onNext, onClose, onReopen }: AheadScreenProps) {
  if (next === null && close === null) return null;
  return (
    <div className="foot one-key">
      {next !== null ? (
        <Key look="go" large onPress={onNext} hint="Enter">
          {next.label}
        </Key>
      ) : close === 'closed' ? (
        <Key onPress={onReopen}>{say.openJob}</Key>
      ) : (
        <Key look="go" large onPress={onClose} hint="Enter">
          {say.closeJob}
        </Key>
      )}
    </div>
  );
}
