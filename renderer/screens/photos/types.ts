export type PhotoFilter = 'all' | 'unfiled' | 'found' | 'refitted' | 'poor' | 'alike' | 'unbound' | 'removal';

/** One photo in the grid. */
export interface GalleryTile {
  readonly id: string;
  readonly src: string;
  /** "10:44", or the file's name where the time is not known. */
  readonly taken: string;
  readonly name: string;
  /** Why it is filed where it is, in words. */
  readonly why: string;
  readonly blurred: boolean;
  readonly dark: boolean;
  /** Marks on it that stand for nothing yet. */
  readonly unbound: number;
  /** The best of those that are alike. */
  readonly best: boolean;
}

/** Photos under one head. */
export interface GallerySection {
  readonly id: string;
  readonly head: string;
  /** True where the head is what people wrote. */
  readonly said: boolean;
  /** Ids of photos that show nearly the same, best first; null where the section is a removal. */
  readonly alike: readonly string[] | null;
  readonly tiles: readonly GalleryTile[];
}

export interface ShotFact {
  readonly label: string;
  readonly value: string;
  /** True where people wrote it. */
  readonly said?: boolean;
}

/** A row of filters: what it shows, and how many. */
export interface FilterRow {
  readonly id: PhotoFilter;
  readonly label: string;
  readonly count: number;
}

/** A draft removal before it is made. */
export interface RollData {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly tiles: readonly GalleryTile[];
}
