import { Dialog } from './Dialog.tsx';
import { Key } from './Key.tsx';

export interface TellProps {
  readonly title: string;
  /** What it is about, one line each. */
  readonly lines: readonly string[];
  readonly say: string;
  readonly go: string;
  readonly onYes: () => void;
  readonly onClose: () => void;
}

/** Something to be looked at first, and one key that says it was. */
export function TellDialog({ title, lines, say, go, onYes, onClose }: TellProps) {
  return (
    <Dialog open title={title} onClose={onClose}>
      {lines.map((line) => (
        <p key={line} className="said from-before">
          {line}
        </p>
      ))}
      <p>{say}</p>
      <div className="keys">
        <Key
          look="go"
          large
          first
          onPress={() => {
            onYes();
            onClose();
          }}
        >
          {go}
        </Key>
      </div>
    </Dialog>
  );
}
