import type { DragEvent, MouseEvent } from 'react';
import { gallery as say } from '../../texts/gallery.ts';
import { PhotoWord } from './PhotoWord.tsx';
import type { GalleryTile } from './types.ts';

interface TileProps {
  readonly tile: GalleryTile;
  readonly width: number;
  readonly selected: boolean;
  readonly isStop: boolean;
  readonly onTouch: (event: MouseEvent) => void;
  readonly onOpen: () => void;
  readonly onDrag: (event: DragEvent) => void;
}

/** One photo: a touch selects it, two open it, drawn away it takes the selection along. */
export function Tile({ tile, width, selected, isStop, onTouch, onOpen, onDrag }: TileProps) {
  const words = [
    tile.best ? say.best : '',
    tile.blurred ? say.blurred : '',
    tile.dark ? say.dark : '',
    tile.unbound > 0 ? say.unbound(tile.unbound) : '',
  ].filter(Boolean);
  return (
    <div className="tile" style={{ width, height: Math.round(width * 0.75) }} draggable onDragStart={onDrag}>
      <button
        type="button"
        data-photo={tile.id}
        tabIndex={isStop ? 0 : -1}
        aria-pressed={selected}
        aria-label={say.heard(tile.name, [tile.taken, ...words])}
        title={tile.why}
        onClick={onTouch}
        onDoubleClick={onOpen}
      >
        <img src={tile.src} alt="" loading="lazy" decoding="async" draggable={false} />
        <span className="plate tile-time">{tile.taken}</span>
        {words.length > 0 && (
          <span className="tile-words">
            {tile.best && <span className="plate">{say.best}</span>}
            {tile.blurred && <PhotoWord what="blurred" />}
            {tile.dark && <PhotoWord what="dark" />}
            {tile.unbound > 0 && <span className="plate">{say.unbound(tile.unbound)}</span>}
          </span>
        )}
        {selected && (
          <svg className="tile-tick" viewBox="0 0 44 44" aria-hidden="true">
            <path d="M0 0H44V44H0Z" fill="var(--mk-ink)" />
            <path d="M11 23l8 8L34 14" fill="none" stroke="var(--mk-paper)" strokeWidth="5" />
          </svg>
        )}
      </button>
    </div>
  );
}
