export type { MarkKind, MarkState, Move, PhotoMark } from '../../core/drawing/marks.ts';

/** An upright rendition. */
export interface PhotoData {
  readonly id: string;
  readonly src: string;
  /** With every pixel of the original, for a close look. */
  readonly full?: string;
  /** Size of the upright picture, px. */
  readonly width: number;
  readonly height: number;
  /** What the picture shows, in words. */
  readonly alt: string;
}
