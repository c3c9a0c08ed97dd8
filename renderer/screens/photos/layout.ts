import type { GallerySection, GalleryTile } from './types.ts';

/** A tile in its row; the first one of a section carries its head, as wide as the tiles of that section there. */
export interface Placed {
  readonly tile: GalleryTile;
  readonly head: GallerySection | null;
  /** So many tiles of this row belong to the same section, from this one on. */
  readonly span: number;
}

/** A row of the grid: as many tiles as stand beside each other, whatever sections they belong to. */
export interface GridRow {
  readonly id: string;
  readonly tiles: readonly Placed[];
}

export interface GridSizes {
  readonly columns: number;
  /** Width of a tile, px. */
  readonly tile: number;
}

export const GAP = 8;
const HEAD = 60;
/** Tiles are never narrower, px; on a phone two stand side by side. */
const LEAST = 208;
const LEAST_NARROW = 144;

/** How many tiles stand in a row of this width in px, and how wide each is. */
export function gridSizes(width: number): GridSizes {
  const least = width < 480 ? LEAST_NARROW : LEAST;
  const columns = Math.max(1, Math.floor((width + GAP) / (least + GAP)));
  return { columns, tile: Math.floor((width - GAP * (columns - 1)) / columns) };
}

/** Height of a row with its heads and the gap under it, px: pictures are shown three by four. */
export const rowHeight = (row: GridRow, { tile }: GridSizes): number =>
  (row.tiles.some((one) => one.head !== null) ? HEAD : 0) + Math.round(tile * 0.75) + GAP;

/** Small sections stand side by side; what is alike begins a row of its own. */
export function gridRows(sections: readonly GallerySection[], columns: number): GridRow[] {
  const rows: Placed[][] = [];
  for (const section of sections) {
    if (section.alike !== null) rows.push([]);
    for (const [at, tile] of section.tiles.entries()) {
      const last = rows.at(-1);
      const left = section.tiles.length - at;
      if (last && last.length < columns)
        last.push({ tile, head: at === 0 ? section : null, span: Math.min(left, columns - last.length) });
      else rows.push([{ tile, head: at === 0 ? section : null, span: Math.min(left, columns) }]);
    }
  }
  return rows.flatMap((tiles) => (tiles.length > 0 ? [{ id: tiles[0]?.tile.id ?? '', tiles }] : []));
}

/** Ids in the order in which the grid shows them, each once. */
export const shownIds = (sections: readonly GallerySection[]): string[] => [
  ...new Set(sections.flatMap((section) => section.tiles.map((tile) => tile.id))),
];

/** Where an arrow key leads from a photo: along the rows, or to the row above or below in the same column. */
export function stepFrom(rows: readonly GridRow[], id: string | null, key: string): string | null {
  const lines = rows.map((row) => row.tiles.map((one) => one.tile));
  const all = lines.flat();
  const y = lines.findIndex((line) => line.some((tile) => tile.id === id));
  if (y < 0 || id === null) return all[0]?.id ?? null;
  const x = lines[y]?.findIndex((tile) => tile.id === id) ?? 0;
  const at = all.findIndex((tile) => tile.id === id);
  const inLine = (to: number): string | null => {
    const line = lines[Math.max(0, Math.min(lines.length - 1, to))];
    return line?.[Math.min(x, line.length - 1)]?.id ?? null;
  };
  switch (key) {
    case 'ArrowRight':
      return all[Math.min(all.length - 1, at + 1)]?.id ?? null;
    case 'ArrowLeft':
      return all[Math.max(0, at - 1)]?.id ?? null;
    case 'ArrowDown':
      return y === lines.length - 1 ? id : inLine(y + 1);
    case 'ArrowUp':
      return y === 0 ? id : inLine(y - 1);
    case 'PageDown':
      return inLine(y + 4);
    case 'PageUp':
      return inLine(y - 4);
    case 'Home':
      return all[0]?.id ?? null;
    case 'End':
      return all.at(-1)?.id ?? null;
    default:
      return null;
  }
}
