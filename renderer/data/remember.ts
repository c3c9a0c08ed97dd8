import { create } from 'zustand';
import { createJSONStorage, persist } from 'zustand/middleware';

export type ScreenName =
  | 'jobs'
  | 'begin'
  | 'removal'
  | 'bench'
  | 'off'
  | 'putback'
  | 'reach'
  | 'days'
  | 'stopwork'
  | 'photos'
  | 'handbook';
export type Theme = 'system' | 'light' | 'dark';

/** A hit of the search: before, found, after; and the thing it stands on. */
export interface Found {
  readonly text: readonly [string, string, string];
  readonly thingId: string | null;
}

/** What this window remembers by itself: where the user is. Never record, so it may be lost without loss. */
interface Place {
  readonly jobId: string | null;
  readonly screen: ScreenName;
  /** The removal at hand; null = the next one, not begun. */
  readonly removalId: string | null;
  /** The step at hand on the way back; null = the first that can go ahead. */
  readonly stepId: string | null;
  readonly stowId: string | null;
  readonly personId: string | null;
  /** The screen that the handbook was opened from with a fastener at hand. */
  readonly bookFrom: ScreenName | null;
  readonly theme: Theme;
  /** What a search led here for, until the next step from here: the words cut round it, and the thing. */
  readonly found: Found | null;
  go(place: Partial<Omit<Place, 'go'>>): void;
}

export const remember = create<Place>()(
  persist(
    (set) => ({
      jobId: null,
      screen: 'jobs',
      removalId: null,
      stepId: null,
      stowId: null,
      personId: null,
      bookFrom: null,
      theme: 'system',
      found: null,
      go: (place) => set({ found: null, ...place }),
    }),
    {
      name: 'everybolt-place',
      storage: createJSONStorage(() => localStorage),
      partialize: ({ go: _go, found: _found, ...place }) => place,
    },
  ),
);
