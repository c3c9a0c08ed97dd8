import type { Page } from '@playwright/test';

/**
 * Seconds of the keystroke-level model, as the promise of this program names them: a key or press K, a point P, a hand
 * moved between keys and screen H, a mental step M. The model, these values and the rules for placing M: S. K. Card,
 * T. P. Moran, A. Newell, "The Keystroke-Level Model for User Performance Time with Interactive Systems", CACM 23 (7),
 * 1980, and "The Psychology of Human-Computer Interaction", 1983, chapter 8; quoted from memory.
 */
const SECONDS = { K: 0.28, P: 1.1, H: 0.4, M: 1.35 } as const;

/** One input event that reached the page. */
export interface InputEvent {
  readonly kind: 'key' | 'press';
  /** Key name, or the words of what was pressed. */
  readonly name: string;
  /** Text of an argument: a letter or figure of the line, a key of the number pad. */
  readonly argument: boolean;
  /** Held with another key: it belongs to that one. */
  readonly modifier: boolean;
}

declare global {
  interface Window {
    everyInput: InputEvent[];
  }
}

/** Listens in the page, ahead of the program, to what a hand really does; only what the browser trusts is counted. */
export async function listenToInput(page: Page): Promise<void> {
  await page.addInitScript(() => {
    window.everyInput = [];
    const isText = (target: EventTarget | null) =>
      target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;
    window.addEventListener(
      'keydown',
      (event) => {
        if (!event.isTrusted || event.repeat) return;
        const held = event.ctrlKey || event.altKey || event.metaKey;
        window.everyInput.push({
          kind: 'key',
          name: event.key,
          argument: event.key.length === 1 && !held && isText(event.target),
          modifier: ['Control', 'Alt', 'Shift', 'Meta'].includes(event.key),
        });
      },
      true,
    );
    window.addEventListener(
      'pointerdown',
      (event) => {
        if (!event.isTrusted) return;
        const pressed = event.target instanceof Element ? event.target.closest('button, label, input') : null;
        window.everyInput.push({
          kind: 'press',
          name: pressed?.textContent ?? '',
          argument: pressed?.classList.contains('digit') ?? false,
          modifier: false,
        });
      },
      true,
    );
  });
}

/** What a hand did since the last look, oldest first. */
export async function inputsOf(page: Page): Promise<InputEvent[]> {
  return page.evaluate(() => {
    const all = window.everyInput;
    window.everyInput = [];
    return all;
  });
}

/** Keys that end the argument by themselves: a word taken, the last line taken whole. */
const ENDS_ARGUMENT: ReadonlySet<string> = new Set(['Tab', 'ArrowUp']);

export interface Counted {
  readonly keys: number;
  readonly presses: number;
  readonly handMoves: number;
  readonly mental: number;
  readonly seconds: number;
}

/**
 * Counts the operators of a row of events. M by the rules of 1980: 0, before every key that is no part of an argument
 * and before every point that selects a command; 1, not where it is fully anticipated (a press after its point, and an
 * action that always follows the one before); 2, once for keys that are one unit (held together); 3, not for an end
 * right after the end of its argument; 4, kept where a key ends an argument that varies. The hand begins at the keys,
 * or at the screen where the first event is a press there.
 */
export function countInputs(events: readonly InputEvent[], anticipated: boolean): Counted {
  const sum = { keys: 0, presses: 0, handMoves: 0, mental: 0 };
  let at = events[0]?.kind ?? 'key';
  let ended = anticipated;
  let held = false;
  for (const event of events) {
    if (event.kind !== at) sum.handMoves += 1;
    at = event.kind;
    sum[event.kind === 'key' ? 'keys' : 'presses'] += 1;
    if (!event.argument && !held && !ended) sum.mental += 1;
    held = event.modifier;
    ended = ENDS_ARGUMENT.has(event.name);
  }
  const { K, P, H, M } = SECONDS;
  const seconds = sum.keys * K + sum.presses * (P + K) + sum.handMoves * H + sum.mental * M;
  return { ...sum, seconds: Math.round(seconds * 100) / 100 };
}
