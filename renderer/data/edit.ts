import { useEffect, useRef, useState } from 'react';

const PAUSE_MS = 600;

/**
 * A field of the record while it is being typed: shown as typed at once, written when the hand rests, and never lost
 * when the thing at hand changes first. `key` names the thing and field. The third is called when the hand leaves it.
 */
export function useEdit(
  key: string,
  kept: string,
  write: (text: string) => void,
  pauseMs: number = PAUSE_MS,
): [string, (text: string) => void, () => void] {
  const [typed, setTyped] = useState<{ key: string; text: string } | null>(null);
  const waiting = useRef<{ key: string; timer: number; flush: () => void } | null>(null);
  const flush = () => {
    const due = waiting.current;
    waiting.current = null;
    if (!due) return;
    window.clearTimeout(due.timer);
    due.flush();
  };
  useEffect(() => flush, [key]);
  useEffect(() => {
    // The record has caught up: what was typed is what is kept.
    if (typed?.key === key && typed.text === kept && waiting.current === null) setTyped(null);
  }, [key, kept, typed]);
  const change = (text: string) => {
    setTyped({ key, text });
    if (waiting.current) window.clearTimeout(waiting.current.timer);
    waiting.current = { key, flush: () => write(text), timer: window.setTimeout(flush, pauseMs) };
  };
  return [typed?.key === key ? typed.text : kept, change, flush];
}
