import { useState } from 'react';
import { Dialog } from './Dialog.tsx';
import { Field } from './Field.tsx';
import { Key } from './Key.tsx';

export interface AskProps {
  readonly title: string;
  readonly label: string;
  readonly example: string;
  readonly go: string;
  /** False where an empty answer is an answer. */
  readonly needed?: boolean;
  readonly onAnswer: (text: string) => void;
  readonly onClose: () => void;
}

/** One question with one line for its answer. */
export function AskDialog({ title, label, example, go, needed = true, onAnswer, onClose }: AskProps) {
  const [text, setText] = useState('');
  const ready = !needed || text.trim() !== '';
  const answer = () => {
    if (!ready) return;
    onAnswer(text.trim());
    onClose();
  };
  return (
    <Dialog open title={title} onClose={onClose}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          answer();
        }}
      >
        <Field label={label} example={example} value={text} onChange={setText} first />
        <div className="keys">
          <Key look="go" large off={!ready} onPress={answer} hint="Enter">
            {go}
          </Key>
        </div>
      </form>
    </Dialog>
  );
}
