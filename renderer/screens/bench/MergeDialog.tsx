import { useState } from 'react';
import { bench as say } from '../../texts/bench.ts';
import { Dialog } from '../../ui/Dialog.tsx';
import { Key } from '../../ui/Key.tsx';

interface MergeDialogProps {
  readonly choices: readonly { readonly id: string; readonly name: string }[];
  readonly onMerge: (fromId: string) => void;
  readonly onClose: () => void;
}

/** Everything of another removal goes into this one; the other becomes void. */
export function MergeDialog({ choices, onMerge, onClose }: MergeDialogProps) {
  const [fromId, setFromId] = useState(choices[0]?.id ?? '');
  const merge = () => {
    onMerge(fromId);
    onClose();
  };
  return (
    <Dialog open title={say.mergeTitle} onClose={onClose}>
      <form
        className="send-form"
        onSubmit={(event) => {
          event.preventDefault();
          merge();
        }}
      >
        <label className="field">
          <span className="label">{say.mergeAsk}</span>
          <select value={fromId} onChange={(event) => setFromId(event.target.value)} autoFocus>
            {choices.map((choice) => (
              <option key={choice.id} value={choice.id}>
                {choice.name}
              </option>
            ))}
          </select>
        </label>
        <div className="keys">
          <Key look="go" large submits onPress={merge} hint="Enter">
            {say.mergeGo}
          </Key>
        </div>
      </form>
    </Dialog>
  );
}
