import { useEffect, useRef, useState } from 'react';
import { client } from './client.ts';

const PAUSE_MS = 120;

/** The longest key that the host keeps text under; a longer one is cut. */
const KEY_LENGTH = 300;

/** Half-typed text on its way to the host, by key: the newest goes out when the hand rests. */
const due = new Map<string, number>();

/** Keeps half-typed text at once in this tab, and shortly after beside the record; empty text forgets it. */
export function keepTyped(key: string, text: string): void {
  sessionStorage.setItem(key, text);
  window.clearTimeout(due.get(key));
  due.set(
    key,
    window.setTimeout(() => {
      due.delete(key);
      client.workshop.keepDraft({ key: key.slice(0, KEY_LENGTH), text }).catch(() => {});
    }, PAUSE_MS),
  );
}

/** Gives back what was typed under a key and never finished, in this tab or before a crash. */
export async function typedBefore(key: string): Promise<string> {
  const kept = sessionStorage.getItem(key);
  if (kept !== null) {
    // A reload may have come before the host heard of the last letters.
    keepTyped(key, kept);
    return kept;
  }
  const reply = await client.workshop.draft({ key: key.slice(0, KEY_LENGTH) });
  return reply.ok ? reply.value.text : '';
}

/** Words looked for: back after a reload, but not the next morning, where they would hide what was not looked for. */
export function useTabText(key: string): [string, (text: string) => void] {
  const [text, setText] = useState(() => sessionStorage.getItem(key) ?? '');
  const change = (next: string) => {
    setText(next);
    sessionStorage.setItem(key, next);
  };
  return [text, change];
}

/**
 * A half-typed text that survives a reload and a kill: kept at once in this tab, and shortly after in the host's notes
 * beside the record.
 */
export function useDraft(key: string): [string, (text: string) => void] {
  const [text, setText] = useState(() => sessionStorage.getItem(key) ?? '');
  const touched = useRef(false);
  useEffect(() => {
    touched.current = false;
    setText(sessionStorage.getItem(key) ?? '');
    let current = true;
    typedBefore(key).then(
      (before) => {
        if (current && !touched.current && before !== '') setText(before);
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
    keepTyped(key, next);
  };
  return [text, change];
}
