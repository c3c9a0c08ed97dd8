import { Frame } from '../../frame/Frame.tsx';
import type { LinePaneProps } from '../../frame/LinePane.tsx';
import { stopwork as say } from '../../texts/stopwork.ts';
import { Field } from '../../ui/Field.tsx';
import { Key } from '../../ui/Key.tsx';
import { BigNumber } from '../../ui/Numbers.tsx';
import { Rows, type RowData } from '../../ui/Rows.tsx';
import type { StatusProps } from '../../ui/Status.tsx';

export type StopGroup = 'loose' | 'open' | 'inside' | 'energy' | 'uncounted';

export interface StopWorkScreenProps {
  readonly pane: LinePaneProps;
  readonly status?: StatusProps;
  /** The machine, as the tag names it. */
  readonly machine: string;
  /** How the machine stands: nothing off yet, apart, all back but not closed, or closed. */
  readonly stands: 'begun' | 'apart' | 'back' | 'closed';
  /** Loose or open things: the number of the screen. */
  readonly count: number;
  readonly groups: readonly { readonly group: StopGroup; readonly rows: readonly RowData[] }[];
  readonly note: string;
  readonly name: string;
  /** "25 November, 16:40" */
  readonly when: string;
  readonly onPick: (id: string) => void;
  readonly onNote: (note: string) => void;
  readonly onName: (name: string) => void;
  readonly onPrint: () => void;
  readonly onStop: () => void;
  readonly onBack: () => void;
}

/** What is loose, what stands open, a tag for the machine and a note for whoever comes next. */
export function StopWorkScreen(props: StopWorkScreenProps) {
  const { groups, count } = props;
  return (
    <Frame pane={props.pane} {...(props.status && { status: props.status })} screen="stopwork">
      <div className="off-list">
        <h1>{say.title}</h1>
        <p className="off-summary">{summaryOf(props)}</p>
        <div className="print-only">
          <p className="said">{props.machine}</p>
          {props.note !== '' && <p className="said handover-note">{props.note}</p>}
          <p>{say.by(props.name, props.when)}</p>
        </div>
        {groups.map((one) => (
          <Rows key={one.group} title={say.groups[one.group]} rows={one.rows} onPick={props.onPick} />
        ))}
      </div>
      <section className="hand on-sheet">
        <BigNumber value={String(count)} unit={count === 1 ? say.looseOne : say.looseMany} size={136} />
        {props.stands === 'closed' ? <Together {...props} /> : <Leaving {...props} />}
      </section>
    </Frame>
  );
}

function summaryOf({ stands, groups }: StopWorkScreenProps): string {
  if (stands === 'closed') return groups.length === 0 ? say.closed : say.closedBut;
  return groups.length === 0 ? say.clean : say.intro;
}

/** A closed job has no tag: the machine is together. */
function Together({ machine, onBack }: StopWorkScreenProps) {
  return (
    <>
      <p className="said tag-machine">{machine}</p>
      <p>{say.together}</p>
      <div className="foot one-key">
        <Key onPress={onBack}>{say.backToIt}</Key>
      </div>
    </>
  );
}

/** The tag, the note and the name of whoever leaves. */
function Leaving(props: StopWorkScreenProps) {
  return (
    <>
      <Tag {...props} by={say.by(props.name, props.when)} />
      <Field label={say.note} example={say.noteExample} value={props.note} lines onChange={props.onNote} />
      <Field label={say.name} value={props.name} onChange={props.onName} />
      <div className="foot step-keys">
        <Key onPress={props.onBack}>{say.back}</Key>
        <Key onPress={props.onPrint}>{say.print}</Key>
        <Key look="go" large onPress={props.onStop} hint={say.hint}>
          {say.stop}
        </Key>
      </div>
    </>
  );
}

const TAGS: Record<StopWorkScreenProps['stands'], string> = {
  begun: say.tagBegun,
  apart: say.tagSay,
  back: say.tagBack,
  closed: say.together,
};

/** The tag as it will hang on the machine. */
function Tag({
  machine,
  stands,
  note,
  by,
}: Pick<StopWorkScreenProps, 'machine' | 'stands' | 'note'> & { readonly by: string }) {
  return (
    <figure className="tag">
      <p className="tag-word">{say.tag}</p>
      <p>{TAGS[stands]}</p>
      <p className="said tag-machine">{machine}</p>
      {note !== '' && <p className="said tag-note">{note}</p>}
      <p className="tag-by">{by}</p>
    </figure>
  );
}
