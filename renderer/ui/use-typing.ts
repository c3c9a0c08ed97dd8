import { type RefObject, useEffect } from 'react';

/** Where letters have a place of their own: fields, questions, lists to choose from. */
const OWN = 'textarea, select, [role=dialog], [role=alertdialog], input:not([type=radio], [type=checkbox])';

/** Whether a key writes a letter or digit; "?" shows the keys everywhere, Space presses what has the focus. */
function writes(event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.altKey || event.metaKey || event.isComposing) return false;
  return event.key.length === 1 && event.key !== ' ' && event.key !== '?';
}

/**
 * Letters and digits go into `line` wherever the focus is that has no use for them: after a touch on a notch, a mark or
 * a key of the screen nothing that is typed may be lost. The focus moves before the letter is written.
 */
export function useTyping(line: RefObject<HTMLTextAreaElement | null>): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const { target } = event;
      if (!writes(event) || (target instanceof Element && target.closest(OWN) !== null)) return;
      if (document.querySelector('[role=dialog], [role=alertdialog]') !== null) return;
      line.current?.focus();
    };
    window.addEventListener('keydown', onKey, { capture: true });
    return () => window.removeEventListener('keydown', onKey, { capture: true });
  }, [line]);
}
