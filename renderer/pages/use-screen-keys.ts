import { useEffect } from 'react';
import { isAsked } from '../data/keys.ts';

/** Keys of one screen, also while a line is typed: "F9", "Alt+KeyP" by the place of the key, whatever it writes. */
export function useScreenKeys(keys: Readonly<Record<string, () => unknown>>): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || isAsked()) return;
      const act = keys[event.altKey ? `Alt+${event.code}` : event.key];
      if (!act) return;
      event.preventDefault();
      act();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  });
}
