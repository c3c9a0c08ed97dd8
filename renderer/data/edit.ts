import { useEffect, useRef, useState } from 'react';
import { keepTyped, typedBefore } from './draft.ts';

const PAUSE_MS = 600;

/** A name, a length, a count is whole only when the hand leaves it: half of it would be another one. */
export const WHEN_LEFT = 2_000_000_000;

const draftKey = (key: string): string => `edit/${key}`;

/**
 * A field of the record while it is being typed: shown as typed at once, written when the hand rests, and never lost
 * when the thing at hand changes first, the window is loaded again or the program dies. `key` names the thing and
 * field. The third is called when the hand leaves it.
 */
export function useEdit(
  key: string,
  kept: string,
  write: (text: string) => void,
  pauseMs: number = PAUSE_MS,
): [string, (text: string) => void, () => void] {
  const [typed, setTyped] = useState<{ key: string; text: string } | null>(null);
  const waiting = useRef<{ timer: number; write: () => void } | null>(null);
  const sent = useRef(false);
  const flush = () => {
    const due = waiting.current;
    waiting.current = null;
    if (!due) return;
    window.clearTimeout(due.timer);
    sent.current = true;
    due.write();
  };
  const wait = (text: string) => {
    window.clearTimeout(waiting.current?.timer);
    const timer = window.setTimeout(flush, pauseMs);
    waiting.current = { timer, write: () => write(text) };
  };
  const change = (text: string) => {
    setTyped({ key, text });
    keepTyped(draftKey(key), text);
    wait(text);
  };
  useEffect(() => {
    let current = true;
    sent.current = false;
    typedBefore(draftKey(key)).then(
      (before) => {
        if (!current || waiting.current !== null || before === '' || before === kept) return;
        setTyped({ key, text: before });
        wait(before);
      },
      () => {},
    );
    return () => {
      current = false;
      flush();
      // What was written is the record's now, wherever it was put.
      if (sent.current) keepTyped(draftKey(key), '');
    };
  }, [key]);
  useEffect(() => {
    // The record has caught up: what was typed is what is kept.
    if (typed?.key !== key || typed.text !== kept || waiting.current !== null) return;
    setTyped(null);
    keepTyped(draftKey(key), '');
  }, [key, kept, typed]);
  return [typed?.key === key ? typed.text : kept, change, flush];
}
