import { useEffect, useRef } from 'react';
import { Frame } from '../../frame/Frame.tsx';
import type { LinePaneProps } from '../../frame/LinePane.tsx';
import type { BenchField, Write } from '../../model/bench-fields.ts';
import type { BenchGroup } from '../../model/bench.ts';
import { bench as say } from '../../texts/bench.ts';
import { common } from '../../texts/common.ts';
import { removal as sayRemoval } from '../../texts/removal.ts';
import { Key } from '../../ui/Key.tsx';
import { BigNumber } from '../../ui/Numbers.tsx';
import { Rows } from '../../ui/Rows.tsx';
import type { StatusProps } from '../../ui/Status.tsx';
import { Actions, type ActionsProps } from './Actions.tsx';
import { BenchForm } from './BenchForm.tsx';
import { Holes, type HolesProps } from './Holes.tsx';

/** The thing whose fields stand on the sheet. */
export interface AtBench {
  readonly id: string;
  readonly name: string;
  readonly fields: readonly BenchField[];
  /** The holes of a set, which stand after so many of its fields. */
  readonly holes: (Omit<HolesProps, 'onWrite'> & { readonly after: number }) | null;
  /** The order of actions and the times, for the removal itself. */
  readonly whole: {
    readonly actions: ActionsProps;
    readonly times: { readonly head: string; readonly pauses: readonly string[] };
  } | null;
}

export interface BenchScreenProps {
  readonly pane: LinePaneProps;
  readonly status?: StatusProps;
  readonly number: number;
  readonly total: number;
  readonly title: string;
  readonly groups: readonly BenchGroup[];
  readonly at: AtBench;
  readonly removalId: string;
  readonly canUndo: boolean;
  readonly onPick: (id: string) => void;
  readonly onWrite: (write: Write) => void;
  readonly onRemove: () => void;
  readonly onMove: (by: -1 | 1) => void;
  readonly onSplit: () => void;
  readonly onMerge: () => void;
  readonly onOtherSide: () => void;
  readonly onVoid: () => void;
  readonly onUndo: () => void;
  readonly onBack: () => void;
}

/** A removal at the bench: everything that was noted at the machine in a hurry, changed at leisure. */
export function BenchScreen(props: BenchScreenProps) {
  const { groups, at, removalId } = props;
  const name = useRef<HTMLHeadingElement>(null);
  const before = useRef(at.id);
  // What was touched in the list is at hand on the sheet: the keyboard and the eye go there.
  useEffect(() => {
    if (before.current !== at.id) name.current?.focus();
    before.current = at.id;
  }, [at.id]);
  return (
    <Frame pane={props.pane} {...(props.status && { status: props.status })} screen="bench">
      <div className="off-list">
        <div className="bench-head">
          <BigNumber value={String(props.number)} at />
          <h1>
            {say.title}
            <span className="cap">{say.order(props.number, props.total)}</span>
          </h1>
        </div>
        <Order {...props} />
        <Rows
          title={say.removal}
          rows={[{ id: removalId, mark: '', name: props.title || sayRemoval.untitled, count: '', about: '' }]}
          atId={at.id}
          onPick={props.onPick}
        />
        {groups.length === 0 && <p className="off-summary">{say.none}</p>}
        {groups.map((group) => (
          <Rows key={group.title} title={group.title} rows={group.rows} atId={at.id} onPick={props.onPick} />
        ))}
        <Tools {...props} />
      </div>
      <section className="hand on-sheet off-panel" aria-labelledby="bench-at">
        <h2 className="said bench-at" id="bench-at" ref={name} tabIndex={-1}>
          {at.name}
        </h2>
        <BenchForm fields={at.fields.slice(0, at.holes?.after)} onWrite={props.onWrite} />
        {at.holes && <Holes {...at.holes} onWrite={props.onWrite} />}
        {at.holes && <BenchForm fields={at.fields.slice(at.holes.after)} onWrite={props.onWrite} />}
        {at.whole && <Whole whole={at.whole} />}
        {at.id !== removalId && (
          <button type="button" className="link" onClick={props.onRemove}>
            {say.remove}
          </button>
        )}
      </section>
    </Frame>
  );
}

/** Where it stands in the log; a notch can be drawn along the line as well. */
function Order({ number, total, canUndo, onMove, onUndo, onBack }: BenchScreenProps) {
  return (
    <div className="keys bench-order">
      <Key onPress={onBack} hint={say.backHint} shortcut="Alt+B">
        {say.back}
      </Key>
      <Key onPress={() => onMove(-1)} off={number === 1} hint={say.upHint} shortcut="Alt+ArrowUp">
        {say.up}
      </Key>
      <Key onPress={() => onMove(1)} off={number === total} hint={say.downHint} shortcut="Alt+ArrowDown">
        {say.down}
      </Key>
      <Key onPress={onUndo} off={!canUndo} hint={common.undoHint} shortcut="Control+Z">
        {common.undo}
      </Key>
    </div>
  );
}

function Tools({ groups, total, onSplit, onMerge, onOtherSide, onVoid }: BenchScreenProps) {
  const things = groups.reduce((sum, group) => sum + group.rows.length, 0);
  return (
    <div className="keys off-tools" role="group" aria-label={say.removal}>
      <Key onPress={onSplit} off={things < 2}>
        {say.split}
      </Key>
      <Key onPress={onMerge} off={total < 2}>
        {say.merge}
      </Key>
      <Key onPress={onOtherSide} hint={sayRemoval.otherSideHint} shortcut="Alt+R">
        {sayRemoval.otherSide}
      </Key>
      <Key onPress={onVoid}>{say.void}</Key>
    </div>
  );
}

/** What belongs to the removal as a whole: the order of what was done, and its times. */
function Whole({ whole }: { readonly whole: NonNullable<AtBench['whole']> }) {
  return (
    <>
      <Actions {...whole.actions} />
      <section className="bench-times">
        <h3>{say.times}</h3>
        <p>{whole.times.head}</p>
        {whole.times.pauses.length > 0 && (
          <ul>
            {whole.times.pauses.map((pause) => (
              <li key={pause}>{pause}</li>
            ))}
          </ul>
        )}
        <p className="cap">{sayRemoval.pauseRule}</p>
      </section>
    </>
  );
}
