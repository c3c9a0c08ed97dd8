import { useEffect, useRef, useState } from 'react';
import { client } from './client.ts';

const PAUSE_MS = 120;

/**
 * A half-typed text that survives a reload and a kill: kept at once in this tab, and shortly after in the host's notes
 * beside the record.
 */
export function useDraft(key: string): [string, (text: string) => void] {
  const [text, setText] = useState(() => sessionStorage.getItem(key) ?? '');
  const timer = useRef<number | null>(null);
  const touched = useRef(text !== '');
  useEffect(() => {
    const kept = sessionStorage.getItem(key);
    touched.current = kept !== null;
    setText(kept ?? '');
    if (kept !== null) {
      // A reload may have come before the host heard of the last letters.
      client.workshop.keepDraft({ key, text: kept }).catch(() => {});
      return;
    }
    let current = true;
    client.workshop.draft({ key }).then(
      (reply) => {
        if (current && reply.ok && !touched.current && reply.value.text !== '') setText(reply.value.text);
      },
      () => {},
    );
    return () => {
      current = false;
    };
  }, [key]);
  const change = (next: string) => {
    touched.current = true;
    setText(next);
    sessionStorage.setItem(key, next);
    if (timer.current !== null) window.clearTimeout(timer.current);
    timer.current = window.setTimeout(() => {
      client.workshop.keepDraft({ key, text: next }).catch(() => {});
    }, PAUSE_MS);
  };
  return [text, change];
}
