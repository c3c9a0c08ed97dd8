import { useSyncExternalStore } from 'react';

/** True while the window answers to a media query. */
export function useMedia(query: string): boolean {
  return useSyncExternalStore(
    (changed) => {
      const list = window.matchMedia(query);
      list.addEventListener('change', changed);
      return () => list.removeEventListener('change', changed);
    },
    () => window.matchMedia(query).matches,
  );
}

/** Room for the depth line with its labels beside photo and hand. */
export const wide = '(min-width: 1200px)';
/** One column, photo on top. */
export const narrow = '(max-width: 599.98px)';
