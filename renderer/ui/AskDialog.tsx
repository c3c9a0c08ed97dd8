import { useDraft } from '../data/draft.ts';
import { Dialog } from './Dialog.tsx';
import { Field } from './Field.tsx';
import { Key } from './Key.tsx';

export interface AskProps {
  /** Names the question: what is half typed comes back when it is asked again. */
  readonly draft: string;
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
export function AskDialog({ draft, title, label, example, go, needed = true, onAnswer, onClose }: AskProps) {
  const [text, setText] = useDraft(`ask/${draft}`);
  const ready = !needed || text.trim() !== '';
  const answer = () => {
    if (!ready) return;
    onAnswer(text.trim());
    setText('');
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
