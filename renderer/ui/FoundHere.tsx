import { useEffect, useRef } from 'react';
import { jobs as say } from '../texts/jobs.ts';

export interface FoundHereProps {
  /** Before what was found, that itself, and after it. */
  readonly text: readonly [string, string, string];
  /** False where the focus belongs to the line that is typed into. */
  readonly takesFocus: boolean;
}

/** The words that a search led here for. */
export function FoundHere({ text, takesFocus }: FoundHereProps) {
  const ref = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (takesFocus) ref.current?.focus();
  }, [takesFocus]);
  return (
    <p ref={ref} className="found-here" role="note" tabIndex={-1}>
      <span className="cap">{say.foundHere}</span>{' '}
      <span className="said">
        {text[0]}
        <mark>{text[1]}</mark>
        {text[2]}
      </span>
    </p>
  );
}
