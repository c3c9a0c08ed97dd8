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
      go: (place) => set(place),
    }),
    {
      name: 'everybolt-place',
      storage: createJSONStorage(() => localStorage),
      partialize: ({ go: _go, ...place }) => place,
    },
  ),
);
