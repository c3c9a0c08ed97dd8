import { useState } from 'react';
import { useDraft } from '../../data/draft.ts';
import { Frame } from '../../frame/Frame.tsx';
import type { LinePaneProps } from '../../frame/LinePane.tsx';
import { done as sayDone } from '../../texts/done.ts';
import { putback as say } from '../../texts/putback.ts';
import { Field } from '../../ui/Field.tsx';
import { Key } from '../../ui/Key.tsx';
import { BigNumber } from '../../ui/Numbers.tsx';
import { LookedAt } from './LookedAt.tsx';
import { Point, type PointData } from '../../ui/Point.tsx';
import type { StatusProps } from '../../ui/Status.tsx';

/** An open point that holds a gate, with what clears it. */
export interface GatePoint {
  readonly point: PointData;
  /** "Count bag 4", "Go to step 9" */
  readonly clear: { readonly label: string } | null;
  /** By whom and why it was accepted; null while it holds. */
  readonly accepted: string | null;
}

export interface GateScreenProps {
  readonly pane: LinePaneProps;
  readonly status?: StatusProps;
  readonly title: string;
  readonly points: readonly GatePoint[];
  /** Whoever answered last on this window. */
  readonly name: string;
  readonly onList: () => void;
  readonly onClear: (pointId: string) => void;
  readonly onAccept: (pointId: string, name: string, why: string) => void;
  readonly onPass: () => void;
  /** It is only looked at: passed, or nothing holds it any more. */
  readonly seen?: 'passed' | 'free';
  /** Why nothing holds it, where it is free: "12 steps come before it". */
  readonly free?: string;
  /** What it looked at, where it looks at the whole job. */
  readonly lookedAt?: readonly string[];
}

/** A gate lists its items one by one; each needs its own answer. */
export function GateScreen(props: GateScreenProps) {
  const held = props.points.filter((one) => one.accepted === null && one.point.grave === 'stop').length;
  return (
    <Frame pane={props.pane} {...(props.status && { status: props.status })} screen="ahead">
      <div className="off-list">
        <h1>{props.title}</h1>
        {props.seen === 'passed' && <p className="off-summary">{say.gateSeen}</p>}
        {props.seen === 'free' && <p className="off-summary">{props.free ?? say.gateClear}</p>}
        {props.points.length === 0 && props.seen !== 'free' && (
          <p className="off-summary">{props.seen === undefined ? say.gateClear : say.gateSeenClean}</p>
        )}
        {props.lookedAt !== undefined && <LookedAt lines={props.lookedAt} />}
        <ol className="gate-points">
          {props.points.map((one) => (
            <Item key={one.point.id} item={one} {...props} />
          ))}
        </ol>
      </div>
      <section className="hand on-sheet">
        <BigNumber value={String(held)} unit={say.gateHolds(held)} size={152} />
        <div className="foot one-key">
          <Key onPress={props.onList}>{say.all}</Key>
          <Key look="go" large onPress={props.onPass} off={held > 0} hint="Enter">
            {props.seen === undefined ? say.pass : sayDone.next}
          </Key>
        </div>
      </section>
    </Frame>
  );
}

interface ItemProps {
  readonly item: GatePoint;
  readonly name: string;
  readonly onClear: (pointId: string) => void;
  readonly onAccept: (pointId: string, name: string, why: string) => void;
}

function Item({ item, name: known, onClear, onAccept }: ItemProps) {
  const { id } = item.point;
  const [asked, setOpen] = useState(false);
  const [typed, setName] = useDraft(`pass/${id}/name`);
  const name = typed === '' ? known : typed;
  const [why, setWhy] = useDraft(`pass/${id}/why`);
  // A reason half written comes back with its field.
  const open = asked || why !== '';
  const ready = name.trim() !== '' && why.trim() !== '';
  return (
    <Point point={item.point}>
      {item.accepted !== null ? (
        <p className="gate-accepted said">{item.accepted}</p>
      ) : (
        <div className="keys">
          {item.clear !== null && <Key onPress={() => onClear(id)}>{item.clear.label}</Key>}
          {!open && <Key onPress={() => setOpen(true)}>{say.accept}</Key>}
        </div>
      )}
      {open && item.accepted === null && (
        <form
          className="gate-answer"
          onSubmit={(event) => {
            event.preventDefault();
            if (!ready) return;
            onAccept(id, name.trim(), why.trim());
            setWhy('');
            setName('');
          }}
        >
          <Field label={say.why} example={say.whyExample} value={why} onChange={setWhy} first={asked} />
          <Field label={say.name} value={name} onChange={setName} />
          <Key submits onPress={() => undefined} off={!ready}>
            {say.accept}
          </Key>
        </form>
      )}
    </Point>
  );
}
