import { useEffect } from 'react';
import { common } from '../texts/common.ts';
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

/**
 * Something to be looked at first, and one key that says it was. Enter only closes it: whoever presses Enter from hole to
 * hole must not say yes to what was not read.
 */
export function TellDialog({ title, lines, say, go, onYes, onClose }: TellProps) {
  const yes = () => {
    onYes();
    onClose();
  };
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key.toLowerCase() !== 'y' || event.ctrlKey || event.altKey || event.metaKey || event.repeat)
        return;
      event.preventDefault();
      yes();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  });
  return (
    <Dialog open title={title} onClose={onClose}>
      {lines.map((line) => (
        <p key={line} className="said from-before">
          {line}
        </p>
      ))}
      <p>{say}</p>
      <div className="keys">
        <Key look="go" large hint="Y" onPress={yes}>
          {go}
        </Key>
        <Key large first onPress={onClose}>
          {common.notNow}
        </Key>
      </div>
    </Dialog>
  );
}
