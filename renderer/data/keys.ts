import { useEffect } from 'react';
import { create } from 'zustand';
import { common } from '../texts/common.ts';
import { keys as say } from '../texts/keys.ts';
import type { NavKey } from '../frame/LinePane.tsx';
import { type OpenJob, redo, undo } from './job.ts';
import { remember, type ScreenName } from './remember.ts';

/** One registered action: menu, key and button share it. */
export interface UserAction {
  readonly id: ScreenName;
  readonly text: string;
  /** The key as the keyboard names it. */
  readonly key: string;
}

/** Keys that only the Removal screen has; no screen may take them. */
export const REMOVAL_KEYS = { slackened: 'F7', aside: 'F10' } as const;

export const SCREENS: readonly UserAction[] = [
  { id: 'jobs', text: common.jobs, key: 'F1' },
  { id: 'removal', text: common.removal, key: 'F2' },
  { id: 'off', text: common.off, key: 'F3' },
  { id: 'putback', text: common.putback, key: 'F4' },
  { id: 'begin', text: common.begin, key: 'F6' },
  { id: 'handbook', text: common.handbook, key: 'F8' },
  { id: 'photos', text: common.photos, key: 'F9' },
  { id: 'stopwork', text: common.stopwork, key: 'F12' },
];

const go = (screen: ScreenName) => remember.getState().go({ screen, bookFrom: null });

/** Whether the keyboard map is shown. Of this window only, and not remembered. */
export const keyMap = create<{ readonly open: boolean }>()(() => ({ open: false }));
export const showKeys = (open: boolean) => keyMap.setState({ open });

/** Screens that need no job. */
const WITHOUT_JOB: ReadonlySet<ScreenName> = new Set(['jobs', 'handbook']);

/** Screens that are reached from another one and stand under its name. */
const PART_OF: Partial<Record<ScreenName, ScreenName>> = {
  bench: 'removal',
  reach: 'putback',
  days: 'putback',
};

/** The ways out of a screen, for the left edge; without a job those that need none. */
export function navKeys(current: ScreenName, hasJob = true): NavKey[] {
  const screens: NavKey[] = SCREENS.filter((action) => hasJob || WITHOUT_JOB.has(action.id)).map(
    (action) => ({
      id: action.id,
      label: action.text,
      hint: action.key,
      current: action.id === (PART_OF[current] ?? current),
      onGo: () => go(action.id),
    }),
  );
  return [...screens, { id: 'keys', label: say.open, hint: say.hint, onGo: () => showKeys(true) }];
}

/** Keys that work on every screen; undo and redo only with a job. In a text field Ctrl+Z first takes back the typing. */
export function useKeys(job: OpenJob | null): void {
  const jobId = job?.id ?? null;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const screen = SCREENS.find((action) => action.key === event.key);
      const mayGo = screen !== undefined && (jobId !== null || WITHOUT_JOB.has(screen.id));
      if (mayGo && !event.ctrlKey && !event.altKey && !event.metaKey) {
        event.preventDefault();
        go(screen.id);
        return;
      }
      if (event.key === say.hint && !keyIsTaken(event)) {
        event.preventDefault();
        showKeys(true);
        return;
      }
      if (jobId === null) return;
      if (!(event.ctrlKey || event.metaKey) || event.altKey || event.key.toLowerCase() !== 'z') {
        if (event.ctrlKey && event.key.toLowerCase() === 'y' && !typing(event.target)) {
          event.preventDefault();
          redo(jobId);
        }
        return;
      }
      if (typing(event.target)) return;
      event.preventDefault();
      if (event.shiftKey) redo(jobId);
      else undo(jobId);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [jobId]);
}

/** True while a question stands over the screen. */
export const isAsked = (): boolean => document.querySelector('[role=dialog], [role=alertdialog]') !== null;

/** True while a key belongs to a field, a question or a button, and not to the screen. */
export function keyIsTaken(event: KeyboardEvent): boolean {
  const { target } = event;
  const pressed = event.key === 'Enter' && target instanceof HTMLElement && target.closest(PRESSED) !== null;
  return (
    takesLetters(target) ||
    isAsked() ||
    pressed ||
    event.ctrlKey ||
    event.altKey ||
    event.metaKey ||
    event.repeat
  );
}

/** What Enter presses by itself. */
const PRESSED = 'button, a, summary, select, input';

/** Whether Space would press what has the focus. */
export function pressesSomething(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.closest(PRESSED) !== null;
}

/** Enter does what the large key says, wherever on the screen the focus is not on something else. */
export function useEnter(onEnter: (() => void) | null): void {
  useEffect(() => {
    if (onEnter === null) return;
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Enter' || keyIsTaken(event)) return;
      event.preventDefault();
      onEnter();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [onEnter]);
}

/** Letters that lead on from a screen, wherever nothing is typed. */
export function usePlainKeys(keys: Readonly<Record<string, () => void>>): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const act = keys[event.key.toLowerCase()];
      if (!act || keyIsTaken(event)) return;
      event.preventDefault();
      act();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  });
}

/** Whether letters go into what has the focus: a radio or a tick box has a value too, but takes none. */
export function takesLetters(target: EventTarget | null): target is HTMLInputElement | HTMLTextAreaElement {
  return target instanceof HTMLInputElement
    ? !['checkbox', 'radio', 'button', 'submit', 'file'].includes(target.type)
    : target instanceof HTMLTextAreaElement;
}

/** A field with something typed in it keeps Ctrl+Z for itself; an empty one has nothing to take back. */
function typing(target: EventTarget | null): boolean {
  return takesLetters(target) && target.value !== '';
}
