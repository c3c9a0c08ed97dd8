import { keepTyped } from './draft.ts';
import { remember } from './remember.ts';
import { type HandbookState, readState } from '../model/handbook/index.ts';

/** Under this name the handbook's fields are kept between two looks. */
export const BOOK = 'handbook';

/** Opens the handbook at a topic with a fastener at hand filled in; what stood under other topics stays. */
export function openHandbook(at: Pick<HandbookState, 'topic' | 'typed' | 'from'>): void {
  const before = readState(sessionStorage.getItem(BOOK) ?? '');
  keepTyped(BOOK, JSON.stringify({ ...at, typed: { ...before.typed, ...at.typed } }));
  const { screen, go } = remember.getState();
  go({ screen: 'handbook', bookFrom: screen });
}
