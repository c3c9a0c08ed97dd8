import type { PhotoFacts } from './facts.ts';

/** What the picture process is asked: the id of an original, where it lies, what to make of it. */
export interface Asked {
  /** SHA-256 in hex; renditions are named by it. */
  readonly id: string;
  readonly path: string;
  /** Facts with the 320 and 2048 px renditions, or the one of full size. */
  readonly want: 'views' | 'full';
}

export type Answered =
  | { readonly kind: 'ready' }
  | { readonly kind: 'done'; readonly id: string; readonly facts: PhotoFacts | null }
  | { readonly kind: 'refused'; readonly id: string; readonly sentence: string }
  /** A bug in this program, not a fault of the file. */
  | { readonly kind: 'fault'; readonly id: string; readonly message: string };

/** The process ends with this code when a picture took more memory than it may. */
export const TOO_MUCH_MEMORY = 77;

/** Largest file taken, in bytes. */
export const MAX_PHOTO_BYTES = 200 * 1000 * 1000;
/** Largest picture taken, in pixels: above what any phone makes, below what fills the memory. */
export const MAX_PIXELS = 220_000_000;
/** HEIC is decoded whole in memory, four bytes a pixel and more. */
export const MAX_HEIC_PIXELS = 64_000_000;
