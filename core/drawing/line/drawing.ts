import { notchPlaces, type Laid } from './layout.ts';
import { notchLength, notchShape, pathOf, type Channel, type Point } from './shapes.ts';
import type { LineData, Notch } from './types.ts';

/** Path data of a line, ready to draw. */
export interface Drawing {
  /** Notches that stand too close for an outline: one stroke each. */
  readonly ticks: { readonly path: string; readonly width: number } | null;
  /** The channel with its notches, closed: what is filled. */
  readonly body: string;
  /** The same as it is stroked: open at the bottom while things still come off. */
  readonly outline: string;
  /** Notches that are back above the level: filled one by one. */
  readonly filled: readonly string[];
  /** Notches still off below the level: left hollow. */
  readonly hollow: readonly string[];
  /** The notch at hand, and its middle; null when nothing on the line is at hand. */
  readonly at: { readonly shape: string; readonly y: number } | null;
  /** Top of the ink, px. Equal to `end` while nothing is back. */
  readonly level: number;
  readonly end: number;
}

/** Draws the line: one polygon for all, so that the silhouette is one thing. */
export function drawLine(line: LineData, laid: Laid, channel: Channel): Drawing {
  const places = notchPlaces(laid);
  const end = laid.height;
  const shapes = places.map(({ item, y, height }) => ({
    item,
    y,
    height,
    shape: notchShape(item.did, y, height, notchLength(item.pieces, channel), channel),
  }));
  const close = shapes.filter((notch) => notch.height < tickBelow);
  const right: Point[] = [
    { x: channel.right, y: 0 },
    ...shapes.filter((notch) => notch.height >= tickBelow).flatMap((notch) => notch.shape),
    { x: channel.right, y: end },
  ];
  const bottom = { x: channel.left, y: end };
  const body = pathOf([{ x: channel.left, y: 0 }, ...right, bottom], true);
  const open = line.direction === 'apart';
  const outline = open
    ? pathOf([{ x: channel.left, y: 0 }, bottom], false) + pathOf(right, false)
    : pathOf([...right, bottom, { x: channel.left, y: 0 }], false);
  const at = shapes.find((notch) => notch.item.id === line.atId);
  const level = levelOf(line, places, at?.y, end);
  return {
    ticks: ticksOf(close, channel),
    body,
    outline,
    filled: shapes
      .filter((n) => n.item.back && n.y < level && n !== at && n.height >= tickBelow)
      .map((n) => pathOf(n.shape, true)),
    hollow: shapes
      .filter((n) => !n.item.back && n.y > level && n !== at && n.height >= tickBelow)
      .map((n) => pathOf(n.shape, true)),
    at: at === undefined ? null : { shape: pathOf(at.shape, true), y: at.y },
    level,
    end,
  };
}

/** Below this height two outlines would run into one black block, px. */
const tickBelow = 3;

function ticksOf(
  close: readonly { readonly item: Notch; readonly y: number; readonly height: number }[],
  channel: Channel,
): Drawing['ticks'] {
  const first = close[0];
  if (first === undefined) return null;
  const path = close.map(
    ({ item, y }) => `M${channel.right} ${Math.round(y * 10) / 10}h${notchLength(item.pieces, channel)}`,
  );
  return { path: path.join(''), width: Math.min(2, first.height) };
}

/** The ink stands at the step at hand; without one, just above the deepest run that is back. */
function levelOf(
  line: LineData,
  places: readonly { readonly item: Notch; readonly y: number }[],
  at: number | undefined,
  end: number,
): number {
  if (line.direction === 'apart') return end;
  if (at !== undefined) return at;
  const deepestOff = places.findLast((notch) => !notch.item.back);
  if (deepestOff === undefined) return places.length === 0 ? end : 0;
  const next = places[places.indexOf(deepestOff) + 1];
  return next === undefined ? end : (deepestOff.y + next.y) / 2;
}
