import type { TagFacts } from './exif.ts';
import type { RenditionSize } from './disk.ts';
import type { PictureType } from './sniff.ts';

/** Takes the hash of a file, and copies it where `to` says. */
interface TakeAsk {
  readonly op: 'take';
  readonly from: string;
  readonly to: string | null;
  readonly maxBytes: number;
}

/** What is asked of a picture process, and what it answers. All of it is plain data. */
export type PictureAsk =
  /** Facts of a picture; writes its two renditions. */
  | { readonly op: 'read'; readonly path: string; readonly sha256: string; readonly renditions: string }
  /** Writes one rendition anew. Of size "full": only where a browser would not show the original upright by itself. */
  | {
      readonly op: 'render';
      readonly path: string;
      readonly sha256: string;
      readonly renditions: string;
      readonly size: RenditionSize;
    };

export type Ask = TakeAsk | PictureAsk;

/** Facts of a picture file, besides its hash. */
export interface PictureFacts extends Omit<TagFacts, 'orientation'> {
  readonly type: PictureType;
  /** As stored, in pixels. */
  readonly width: number;
  readonly height: number;
  /** What makes it upright, as EXIF numbers it: 1 to 8. */
  readonly turn: number;
  readonly sharpness: number | null;
  readonly phash: string | null;
  readonly dark: boolean;
  /** Things to be said with it: "Moving picture: the first of 12 frames is shown." */
  readonly notices: readonly string[];
}

export interface Taken {
  readonly sha256: string;
  readonly bytes: number;
}

/** A picture of size "full": the original itself serves, or a rendition was written. */
export interface Rendered {
  readonly original: boolean;
  readonly type: PictureType;
}

export interface Values {
  readonly take: Taken;
  readonly read: PictureFacts;
  readonly render: Rendered;
}

/** Why a file is refused. */
export type PictureFaultCode =
  | 'unreadable'
  | 'empty'
  | 'too-big'
  | 'not-a-picture'
  | 'unsupported'
  | 'cut-off'
  | 'damaged'
  | 'too-many-pixels'
  | 'too-slow'
  | 'too-much-memory'
  | 'crashed'
  | 'disk';

export interface PictureFault {
  readonly code: PictureFaultCode;
  readonly sentence: string;
}

export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly fault: PictureFault };

export interface Message {
  readonly id: number;
  readonly ask: PictureAsk;
}
export interface Answer {
  readonly id: number;
  readonly outcome: Outcome<Values[PictureAsk['op']]>;
}

/** Largest file taken, in bytes. */
export const MAX_FILE_BYTES = 200 * 1024 * 1024;
/** Most pixels taken; phones reach 200 million. */
export const MAX_PIXELS = 250_000_000;
/** Most pixels of a HEIC: it is unpacked whole into memory, four bytes a pixel. */
export const MAX_HEIC_PIXELS = 110_000_000;

/** An expected failure on the way; turned into an outcome where the work is started. */
export class PictureProblem extends Error {
  readonly code: PictureFaultCode;
  constructor(code: PictureFaultCode, sentence: string) {
    super(sentence);
    this.code = code;
  }
}

/** The problem of a full disk, where an error is that. */
export function diskFull(error: unknown): PictureProblem | null {
  const { code } = error as { code?: string };
  if (code !== 'ENOSPC' && code !== 'EDQUOT') return null;
  return new PictureProblem('disk', 'Expected room on the disk for the photo, got a full disk.');
}
