import { useState } from 'react';
import { begin as say } from '../../texts/begin.ts';
import { Choice } from '../../ui/Choice.tsx';
import { AddLine, ItemList } from './ItemList.tsx';

export type FoundKind = 'reading' | 'damage' | 'missing' | 'wrong';

export interface FoundData {
  readonly id: string;
  readonly kind: FoundKind;
  readonly text: string;
}

interface AsFoundProps {
  readonly jobId: string;
  readonly found: readonly FoundData[];
  readonly onFound: (kind: FoundKind, text: string) => void;
  readonly onDrop: (id: string) => void;
}

/** The state before anyone touched it. "As found missing" is not "lost". */
export function AsFound({ jobId, found, onFound, onDrop }: AsFoundProps) {
  const [kind, setKind] = useState<FoundKind>('damage');
  return (
    <section>
      <h2 className="rows-title">{say.asFound}</h2>
      <ItemList
        items={found.map((one) => ({ id: one.id, text: one.text, about: say.kinds[one.kind] }))}
        empty={say.asFoundEmpty}
        onDrop={onDrop}
      />
      <div className="begin-kind">
        <Choice
          name={say.kind}
          value={kind}
          onChange={setKind}
          options={(['reading', 'damage', 'missing', 'wrong'] as const).map((value) => ({
            value,
            label: say.kinds[value],
          }))}
        />
      </div>
      <AddLine
        draft={`${jobId}/found`}
        label={say.note}
        example={say.noteExample}
        add={say.noteKey}
        onAdd={(text) => onFound(kind, text)}
      />
    </section>
  );
}
