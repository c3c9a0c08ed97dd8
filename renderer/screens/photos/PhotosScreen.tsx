import { Frame } from '../../frame/Frame.tsx';
import type { LinePaneProps } from '../../frame/LinePane.tsx';
import { gallery as say } from '../../texts/gallery.ts';
import { photos as sayPhotos } from '../../texts/photos.ts';
import type { StatusProps } from '../../ui/Status.tsx';
import { Grid, type GridProps } from './Grid.tsx';
import { Hand } from './Hand.tsx';
import type { FilterRow, PhotoFilter } from './types.ts';

export type Role = 'as found' | 'as refitted' | 'other';

export interface PhotosScreenProps extends GridProps {
  readonly pane: LinePaneProps;
  readonly status?: StatusProps;
  readonly filters: readonly FilterRow[];
  readonly filter: PhotoFilter;
  /** Photos in the grid, and those of the job that are not filed. */
  readonly shown: number;
  readonly unfiled: number;
  /** Number of a removal as typed so far. */
  readonly typed: string;
  /** What all selected photos show; null where they differ. */
  readonly role: Role | null;
  /** What was said of the last photos that came in, until it is read. */
  readonly said: readonly string[];
  readonly dropping: boolean;
  readonly onFilter: (filter: PhotoFilter) => void;
  readonly onType: (typed: string) => void;
  readonly onFile: () => void;
  readonly onUnfile: () => void;
  readonly onRole: (role: Role) => void;
  readonly onMake: () => void;
  readonly onMakeAll: () => void;
  readonly onLook: () => void;
  readonly onAway: () => void;
  readonly onSelectAll: () => void;
  readonly onSelectNone: () => void;
  readonly onSaidAway: () => void;
  readonly onAddPhotos: (files: readonly File[]) => void;
}

/** All photos of a job: what is shown, what is selected, and what becomes of it. */
export function PhotosScreen(props: PhotosScreenProps) {
  const empty = props.filters.every((row) => row.count === 0);
  return (
    <Frame pane={props.pane} {...(props.status && { status: props.status })} screen="gallery">
      <div className="gallery-main">
        <h1 className="heard-only">{say.title}</h1>
        {props.shown === 0 ? (
          <p className="gallery-none">{empty ? say.none : say.noneHere}</p>
        ) : (
          <Grid {...props} />
        )}
        {props.dropping && <p className="drop-word">{sayPhotos.drop}</p>}
      </div>
      <Hand {...props} />
    </Frame>
  );
}
