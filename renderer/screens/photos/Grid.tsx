import { useVirtualizer } from '@tanstack/react-virtual';
import {
  type DragEvent,
  type FocusEvent,
  type KeyboardEvent,
  type MouseEvent,
  useEffect,
  useMemo,
  useRef,
} from 'react';
import { gallery as say } from '../../texts/gallery.ts';
import { Key } from '../../ui/Key.tsx';
import { useSize } from '../../ui/use-size.ts';
import { GAP, type GridRow, gridRows, gridSizes, rowHeight, stepFrom } from './layout.ts';
import { Tile } from './Tile.tsx';
import type { GallerySection } from './types.ts';

export interface GridProps {
  readonly sections: readonly GallerySection[];
  readonly selected: ReadonlySet<string>;
  /** The photo that the keyboard is at. */
  readonly atId: string | null;
  readonly onTouch: (id: string, how: 'only' | 'add' | 'range') => void;
  /** The keyboard went there; `range` takes all up to there along. */
  readonly onAt: (id: string, range: boolean) => void;
  readonly onOpen: (id: string) => void;
  readonly onDrag: (id: string, event: DragEvent) => void;
  readonly onKeepBest: (ids: readonly string[]) => void;
}

/** Room beside the tiles, px: as in the style of the grid. */
const SIDES = 20;

/** Thousands of photos under their heads; only what is in sight is on the page. */
export function Grid(props: GridProps) {
  const { sections, atId } = props;
  const [box, size] = useSize<HTMLDivElement>();
  const sizes = gridSizes(Math.max(200, (size?.width ?? 800) - SIDES));
  const rows = useMemo(() => gridRows(sections, sizes.columns), [sections, sizes.columns]);
  const grid = useVirtualizer({
    count: rows.length,
    getScrollElement: () => box.current,
    estimateSize: (at) => rowHeight(rows[at] as GridRow, sizes),
    overscan: 3,
    getItemKey: (at) => rows[at]?.id ?? at,
  });
  useEffect(() => grid.measure(), [sizes.tile, rows]);
  const walked = useRef(false);
  // The focus that a walk sets by itself begins nothing new.
  const quiet = useRef(false);
  const row = rows.findIndex((one) => one.tiles.some(({ tile }) => tile.id === atId));
  useEffect(() => {
    if (!walked.current || row < 0) return;
    grid.scrollToIndex(row);
    // The row may only just have come onto the page.
    const frame = requestAnimationFrame(() => {
      walked.current = false;
      quiet.current = true;
      box.current?.querySelector<HTMLElement>(`[data-photo="${atId}"]`)?.focus({ preventScroll: true });
      quiet.current = false;
    });
    return () => cancelAnimationFrame(frame);
  }, [atId, row]);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    const to = stepFrom(rows, atId, event.key);
    if (to === null) return;
    event.preventDefault();
    walked.current = true;
    props.onAt(to, event.shiftKey);
  };
  const onFocus = ({ target }: FocusEvent<HTMLElement>) => {
    const id = target.dataset['photo'];
    if (!quiet.current && id !== undefined && id !== atId && target.matches(':focus-visible'))
      props.onAt(id, false);
  };
  const stop = row >= 0 ? atId : (rows[0]?.tiles[0]?.tile.id ?? null);
  return (
    <div className="gallery-grid" ref={box} onKeyDown={onKeyDown} onFocus={onFocus}>
      <div style={{ height: grid.getTotalSize(), position: 'relative' }}>
        {grid.getVirtualItems().map((item) => (
          <div key={item.key} className="gallery-row" style={{ top: item.start, height: item.size - GAP }}>
            <Row row={rows[item.index] as GridRow} tile={sizes.tile} stop={stop} {...props} />
          </div>
        ))}
      </div>
    </div>
  );
}

type RowProps = GridProps & {
  readonly row: GridRow;
  readonly tile: number;
  readonly stop: string | null;
};

function Row({ row, tile: width, stop, ...props }: RowProps) {
  return row.tiles.map(({ tile, head, span }) => (
    <div key={tile.id} className="gallery-cell">
      {head !== null && (
        <Head section={head} width={span * (width + GAP) - GAP} onKeepBest={props.onKeepBest} />
      )}
      <Tile
        tile={tile}
        width={width}
        selected={props.selected.has(tile.id)}
        isStop={tile.id === stop}
        onTouch={(event) => props.onTouch(tile.id, howOf(event))}
        onOpen={() => props.onOpen(tile.id)}
        onDrag={(event) => props.onDrag(tile.id, event)}
      />
    </div>
  ));
}

/** With a mouse as in every list of files; a finger or the space key adds and takes out. */
function howOf(event: MouseEvent): 'only' | 'add' | 'range' {
  if (event.shiftKey) return 'range';
  const { pointerType } = event.nativeEvent as globalThis.PointerEvent;
  return event.ctrlKey || event.metaKey || pointerType !== 'mouse' ? 'add' : 'only';
}

interface HeadProps {
  readonly section: GallerySection;
  /** Of its tiles in this row, px. */
  readonly width: number;
  readonly onKeepBest: (ids: readonly string[]) => void;
}

function Head({ section, width, onKeepBest }: HeadProps) {
  const { alike } = section;
  return (
    <div className="gallery-head" style={{ width }}>
      <h2 className={section.said ? 'said' : undefined}>{section.head}</h2>
      {alike === null ? (
        <span className="cap num">
          {section.tiles.length}
          <span className="heard-only"> {say.photos(section.tiles.length).replace(/^\d+ /, '')}</span>
        </span>
      ) : (
        <Key onPress={() => onKeepBest(alike)}>{say.keepBest(alike.length - 1)}</Key>
      )}
    </div>
  );
}
