import type { LineItem, Notch } from './types.ts';

/** Heights of the pieces of a line, px. */
export interface LineSizes {
  readonly row: number;
  readonly rowAt: number;
  readonly gate: number;
  /** Heading of a place; on the narrow line only the gap that parts two places. */
  readonly place: number;
  readonly farPitch: number;
  readonly farLeast: number;
}

export const fullSizes: LineSizes = {
  row: 44,
  rowAt: 52,
  gate: 56,

  place: 36,
  farPitch: 12,
  farLeast: 52,
};
export const slimSizes: LineSizes = {
  row: 44,
  rowAt: 52,
  gate: 44,

  place: 14,
  farPitch: 12,
  farLeast: 44,
};

/** One thing on the line: a near row, a gate, a heading, or a stretch of far removals under one label. */
export type Block =
  | { readonly kind: 'row'; readonly top: number; readonly height: number; readonly item: Notch }
  | { readonly kind: 'gate'; readonly top: number; readonly height: number; readonly item: LineItem }
  | { readonly kind: 'place'; readonly top: number; readonly height: number; readonly name: string }
  | {
      readonly kind: 'far';
      readonly top: number;
      readonly height: number;
      /** Removals, and where one label stands for all that is far, the gates between them. */
      readonly items: readonly LineItem[];
      readonly pitch: number;
    };

export interface Laid {
  readonly blocks: readonly Block[];
  /** Where the channel ends, px from its top. */
  readonly height: number;
}

/** Space above the first block, px. */
const headRoom = 10;
/** Channel below the last block, px. */
const footRoom = 14;
/** Notches of one far label may stand this close, px; beyond that the line scrolls. */
const closest = 2;
/** Share of the height that far notches may take before they close up. */
const farShare = 0.4;

/**
 * Lays the line out in `height` px: everything near when it fits, else a window of near rows round `lookId` and the
 * rest closed up in far stretches. The order and the number of notches never change. The result is taller than
 * `height` only when even the closest notches do not fit.
 */
export function layLine(
  items: readonly LineItem[],
  lookId: string | null,
  atId: string | null,
  height: number,
  sizes: LineSizes,
): Laid {
  const all = place(items, 0, items.length, atId, sizes, sizes.farPitch, false);
  if (all.height <= height || items.length <= 1) return all;
  const look = Math.max(
    0,
    items.findIndex((item) => item.id === lookId),
  );
  const pitch = Math.min(sizes.farPitch, Math.max(closest, (height * farShare) / items.length));
  const split = grow(items, look, atId, height, sizes, pitch, false);
  const merged = grow(items, look, atId, height, sizes, pitch, true);
  // One label per place where that leaves room for the neighbours, else one label for all that is far.
  return split.near >= Math.min(5, merged.near) ? split.laid : merged.laid;
}

/** Widens the window of near rows, one row at a time and by turns, while everything still fits. */
function grow(
  items: readonly LineItem[],
  look: number,
  atId: string | null,
  height: number,
  sizes: LineSizes,
  pitch: number,
  merge: boolean,
): { laid: Laid; near: number } {
  let from = look;
  let to = look + 1;
  let laid = place(items, from, to, atId, sizes, pitch, merge);
  let up = from > 0;
  let down = to < items.length;
  while (up || down) {
    if (up) {
      const next = place(items, from - 1, to, atId, sizes, pitch, merge);
      if (next.height <= height) {
        laid = next;
        from -= 1;
      }
      up = next.height <= height && from > 0;
    }
    if (down) {
      const next = place(items, from, to + 1, atId, sizes, pitch, merge);
      if (next.height <= height) {
        laid = next;
        to += 1;
      }
      down = next.height <= height && to < items.length;
    }
  }
  return { laid, near: to - from };
}

function place(
  items: readonly LineItem[],
  from: number,
  to: number,
  atId: string | null,
  sizes: LineSizes,
  pitch: number,
  merge: boolean,
): Laid {
  const blocks: Block[] = [];
  let top = headRoom;
  const add = (block: Block) => {
    blocks.push(block);
    top += block.height;
  };
  let lastPlace: string | null = null;
  for (const stretch of stretches(items, from, to, merge)) {
    if (stretch.kind === 'far') {
      const height = Math.max(sizes.farLeast, stretch.items.length * pitch + 16);
      add({ kind: 'far', top, height, items: stretch.items, pitch });
      lastPlace = placeOf(stretch.items.at(-1)) ?? null;
    } else if (stretch.item.kind === 'gate') {
      add({ kind: 'gate', top, height: sizes.gate, item: stretch.item });
    } else {
      const { item } = stretch;
      if (item.place !== '' && item.place !== lastPlace)
        add({ kind: 'place', top, height: sizes.place, name: item.place });
      lastPlace = item.place;
      add({ kind: 'row', top, height: item.id === atId ? sizes.rowAt : sizes.row, item });
    }
  }
  return { blocks, height: top + footRoom };
}

type Stretch = { kind: 'far'; items: LineItem[] } | { kind: 'near'; item: LineItem };

const placeOf = (item: LineItem | undefined): string | undefined =>
  item?.kind === 'removal' ? item.place : undefined;

/** `merge`: one stretch for all that is far on a side, gates too; else one for each place, and gates stand alone. */
function stretches(items: readonly LineItem[], from: number, to: number, merge: boolean): Stretch[] {
  const made: Stretch[] = [];
  items.forEach((item, i) => {
    if ((i >= from && i < to) || (item.kind === 'gate' && !merge)) {
      made.push({ kind: 'near', item });
      return;
    }
    const last = made.at(-1);
    const open = last?.kind === 'far' && (merge || placeOf(last.items.at(-1)) === placeOf(item));
    if (open) last.items.push(item);
    else made.push({ kind: 'far', items: [item] });
  });
  return made;
}

/** Middle of each item of a far stretch, px. */
function spread(block: Extract<Block, { kind: 'far' }>): { readonly item: LineItem; readonly y: number }[] {
  const first = block.top + (block.height - (block.items.length - 1) * block.pitch) / 2;
  return block.items.map((item, i) => ({ item, y: first + i * block.pitch }));
}

interface GatePlace {
  readonly item: LineItem;
  readonly y: number;
  readonly close: boolean;
}

/** Middle of every gate, and whether it stands close among others; px. */
export function gatePlaces(laid: Laid): readonly GatePlace[] {
  return laid.blocks.flatMap<GatePlace>((block) => {
    if (block.kind === 'gate') return [{ item: block.item, y: block.top + block.height / 2, close: false }];
    if (block.kind !== 'far') return [];
    return spread(block)
      .filter(({ item }) => item.kind === 'gate')
      .map(({ item, y }) => ({ item, y, close: true }));
  });
}

/** Middle of every notch in order, with the height it may take, px. */
export function notchPlaces(
  laid: Laid,
): { readonly item: Notch; readonly y: number; readonly height: number }[] {
  return laid.blocks.flatMap((block) => {
    if (block.kind === 'row') return [{ item: block.item, y: block.top + block.height / 2, height: 12 }];
    if (block.kind !== 'far') return [];
    const height = Math.min(6, block.pitch * 0.5);
    return spread(block).flatMap(({ item, y }) => (item.kind === 'removal' ? [{ item, y, height }] : []));
  });
}

/** Spans of the rules left of the line: near neighbours with the same place, a gate between them or not; px. */
export function placeRules(laid: Laid): { readonly from: number; readonly to: number }[] {
  const rules: { from: number; to: number }[] = [];
  let open: { from: number; to: number; place: string | null } | null = null;
  for (const block of laid.blocks) {
    if (block.kind === 'far') open = null;
    else if (block.kind === 'place') {
      open = { from: block.top + 14, to: block.top + block.height, place: null };
      rules.push(open);
    } else if (block.kind === 'row') {
      const { place } = block.item;
      if (open === null || (open.place !== null && open.place !== place)) {
        open = place === '' ? null : { from: block.top + 6, to: block.top, place };
        if (open !== null) rules.push(open);
      }
      if (open !== null) {
        open.place = place;
        open.to = block.top + block.height - 6;
      }
    }
  }
  return rules.map(({ from, to }) => ({ from, to }));
}
