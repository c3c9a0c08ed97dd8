import { Frame } from '../../frame/Frame.tsx';
import type { LinePaneProps } from '../../frame/LinePane.tsx';
import { begin as say } from '../../texts/begin.ts';
import { Field } from '../../ui/Field.tsx';
import { Key } from '../../ui/Key.tsx';
import { BigNumber } from '../../ui/Numbers.tsx';
import { Points, type PointData } from '../../ui/Point.tsx';
import type { StatusProps } from '../../ui/Status.tsx';
import { AddLine, ItemList, type ListedItem } from './ItemList.tsx';
import { Pattern, type PatternData } from './Pattern.tsx';
import { AsFound, type FoundData, type FoundKind } from './AsFound.tsx';

/** The words about the job, each of which may stay empty. */
export interface BeginFields {
  readonly job: string;
  readonly machine: string;
  readonly owner: string;
  readonly complaint: string;
  readonly sides: string;
}

export interface BeginScreenProps {
  readonly pane: LinePaneProps;
  readonly status?: StatusProps;
  readonly jobId: string;
  readonly fields: BeginFields;
  readonly found: readonly FoundData[];
  readonly ready: readonly ListedItem[];
  readonly safe: readonly ListedItem[];
  /** Cautions and what must be answered first. */
  readonly points: readonly PointData[];
  readonly onField: (field: keyof BeginFields, value: string) => void;
  /** The words are complete: keep them. */
  readonly onFieldDone: (field: keyof BeginFields) => void;
  readonly onFound: (kind: FoundKind, text: string) => void;
  readonly onDropFound: (id: string) => void;
  readonly onReady: (text: string) => void;
  readonly onTick: (id: string, done: boolean) => void;
  readonly onDropReady: (id: string) => void;
  readonly onSafe: (text: string) => void;
  readonly onDropSafe: (id: string) => void;
  readonly pattern: PatternData | null;
  readonly earlier: readonly { readonly id: string; readonly title: string }[];
  readonly onPattern: (fromJobId: string) => void;
  readonly onPlanned: (removalId: string) => void;
  readonly onGo: () => void;
}

/** How the machine is before anyone touches it, what must be ready, what was made safe. */
export function BeginScreen(props: BeginScreenProps) {
  const { found } = props;
  return (
    <Frame pane={props.pane} {...(props.status && { status: props.status })} screen="begin">
      <div className="begin-page">
        <h1>{say.title}</h1>
        <p className="begin-intro">{say.intro}</p>
        <div className="begin-columns">
          <Machine {...props} />
          <div className="begin-stack">
            <AsFound jobId={props.jobId} found={found} onFound={props.onFound} onDrop={props.onDropFound} />
            <Pattern {...props} />
          </div>
          <section>
            <h2 className="rows-title">{say.ready}</h2>
            <ItemList
              items={props.ready}
              empty={say.readyEmpty}
              onTick={props.onTick}
              onDrop={props.onDropReady}
            />
            <AddLine
              draft={`${props.jobId}/ready`}
              label={say.readyItem}
              example={say.readyExample}
              add={say.readyKey}
              onAdd={props.onReady}
            />
          </section>
          <section>
            <h2 className="rows-title">{say.safe}</h2>
            <ItemList items={props.safe} empty={say.safeEmpty} onDrop={props.onDropSafe} />
            <AddLine
              draft={`${props.jobId}/safe`}
              label={say.safeItem}
              example={say.safeExample}
              add={say.safeKey}
              onAdd={props.onSafe}
            />
          </section>
        </div>
      </div>
      <BeginHand {...props} />
    </Frame>
  );
}

function BeginHand({ found, points, onGo }: BeginScreenProps) {
  return (
    <section className="hand on-sheet begin-hand">
      <BigNumber
        value={String(found.length)}
        unit={found.length === 1 ? say.notedOne : say.noted}
        size={136}
      />
      {points.length > 0 && (
        <div>
          <h2>{say.cautions}</h2>
          <Points points={points} />
        </div>
      )}
      <div className="foot">
        <Key look="go" large onPress={onGo} hint={say.goHint}>
          {say.go}
        </Key>
      </div>
    </section>
  );
}

function Machine({ fields, onField, onFieldDone }: BeginScreenProps) {
  const field = (name: keyof BeginFields, label: string, example: string, room?: 'lines' | 'wraps') => (
    <Field
      label={label}
      example={example}
      value={fields[name]}
      lines={room === 'lines'}
      wraps={room === 'wraps'}
      onChange={(value) => onField(name, value)}
      onDone={() => onFieldDone(name)}
    />
  );
  return (
    <section className="begin-machine">
      <h2 className="rows-title">{say.machineGroup}</h2>
      {field('job', say.job, say.jobExample, 'wraps')}
      {field('machine', say.machine, say.machineExample, 'wraps')}
      {field('complaint', say.complaint, say.complaintExample, 'lines')}
      {field('sides', say.sides, say.sidesExample)}
      {field('owner', say.owner, say.ownerExample)}
    </section>
  );
}
