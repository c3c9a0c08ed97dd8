import { useState } from 'react';
import { useDraft } from '../../data/draft.ts';
import type { BenchGroup } from '../../model/bench.ts';
import { bench as say } from '../../texts/bench.ts';
import { Dialog } from '../../ui/Dialog.tsx';
import { Field } from '../../ui/Field.tsx';
import { Key } from '../../ui/Key.tsx';

interface SplitDialogProps {
  readonly draft: string;
  readonly groups: readonly BenchGroup[];
  readonly onSplit: (thingIds: readonly string[], title: string) => void;
  readonly onClose: () => void;
}

/** Takes some things of a removal into one of their own, right after it. */
export function SplitDialog({ draft, groups, onSplit, onClose }: SplitDialogProps) {
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [title, setTitle] = useDraft(`split/${draft}`);
  // A fluid is the job's, not the removal's: it stays.
  const rows = groups.filter((group) => group.table !== 'fluid').flatMap((group) => group.rows);
  const ready = chosen.length > 0 && chosen.length < rows.length && title.trim() !== '';
  const split = () => {
    if (!ready) return;
    onSplit(chosen, title.trim());
    setTitle('');
    onClose();
  };
  return (
    <Dialog open title={say.splitTitle} onClose={onClose}>
      <form
        className="send-form"
        onSubmit={(event) => {
          event.preventDefault();
          split();
        }}
      >
        <fieldset className="bench-split">
          <legend>{say.splitAsk}</legend>
          {rows.map((row) => (
            <label key={row.id} className="bench-yes">
              <input
                type="checkbox"
                checked={chosen.includes(row.id)}
                onChange={(event) =>
                  setChosen(event.target.checked ? [...chosen, row.id] : chosen.filter((id) => id !== row.id))
                }
              />
              <span className="said">{row.name}</span>
            </label>
          ))}
        </fieldset>
        <Field label={say.splitName} example={say.splitExample} value={title} onChange={setTitle} />
        <div className="keys">
          <Key look="go" large submits off={!ready} onPress={split} hint="Enter">
            {say.splitGo}
          </Key>
        </div>
      </form>
    </Dialog>
  );
}
