import { useEffect, useRef, type PointerEvent, type RefObject } from 'react';
import {
  centreAfterPan,
  centreAfterZoom,
  onPhoto,
  toFraction,
  toScreen,
  type Extent,
  type Point,
  type View,
} from '../../core/drawing/geometry.ts';
import type { PhotoMark } from './types.ts';

interface PointerProps {
  readonly photo: Extent;
  readonly view: View;
  /** Scale at zoom 1. */
  readonly scale: number;
  readonly zoom: number;
  readonly setView: (zoom: number, centre: Point) => void;
  readonly marks: readonly PhotoMark[];
  readonly box: RefObject<HTMLElement | null>;
  readonly placing: boolean;
  readonly onDrag: (drag: { readonly id: string; readonly at: Point } | null) => void;
  readonly onPick: ((id: string) => void) | undefined;
  readonly onPlace: ((x: number, y: number) => void) | undefined;
  readonly onMove: ((id: string, x: number, y: number) => void) | undefined;
}

/** A finger that moves less than this touched; more, it draws. Px. */
const slack = 6;
/** How near a touch beside a joint still means its mark, px. */
const nearJoint = 30;
/** While marks are set only a touch on the point of one means it: the next bolt is often close by. Px. */
const onPoint = 12;

interface Touch {
  readonly start: Point;
  readonly markId: string | null;
  /** Where the mark stood, so that it does not jump under the finger. */
  readonly markFrom: Point | null;
  readonly view: View;
  moved: boolean;
}

/** Touch, draw, move a mark, pinch and wheel on a photo. */
export function usePointer(props: PointerProps) {
  const touch = useRef<Touch | null>(null);
  const fingers = useRef(new Map<number, Point>());
  const now = useRef(props);
  useEffect(() => {
    now.current = props;
  });
  useWheel(props.box, now);
  const at = (event: PointerEvent<HTMLElement>): Point => {
    const rect = event.currentTarget.getBoundingClientRect();
    return { x: event.clientX - rect.left, y: event.clientY - rect.top };
  };
  const down = (event: PointerEvent<HTMLElement>) => {
    const target = event.target as Element;
    if (event.button !== 0 || target.closest('.plate') !== null) return;
    fingers.current.set(event.pointerId, at(event));
    const id = props.placing
      ? nearest(props.marks, at(event), props.view, onPoint)
      : (target.closest<HTMLElement>('.mark-key')?.dataset['mark'] ?? null);
    const mark = props.marks.find((one) => one.id === id);
    const from = mark === undefined ? null : toScreen(mark, props.view);
    touch.current = { start: at(event), markId: id, markFrom: from, view: props.view, moved: false };
    event.currentTarget.setPointerCapture(event.pointerId);
  };
  const move = (event: PointerEvent<HTMLElement>) => {
    if (!fingers.current.has(event.pointerId)) return;
    const point = at(event);
    if (fingers.current.size === 2) {
      pinch(fingers.current, event.pointerId, point, props);
      touch.current = null;
      return;
    }
    fingers.current.set(event.pointerId, point);
    drawAlong(touch.current, point, props);
  };
  const up = (event: PointerEvent<HTMLElement>) => {
    fingers.current.delete(event.pointerId);
    const done = touch.current;
    touch.current = null;
    props.onDrag(null);
    if (done !== null) finish(done, at(event), props);
  };
  const cancel = (event: PointerEvent<HTMLElement>) => {
    fingers.current.delete(event.pointerId);
    touch.current = null;
    props.onDrag(null);
  };
  return { down, move, up, cancel };
}

function drawAlong(touch: Touch | null, point: Point, props: PointerProps) {
  if (touch === null) return;
  const by = { x: point.x - touch.start.x, y: point.y - touch.start.y };
  if (!touch.moved && Math.hypot(by.x, by.y) < slack) return;
  touch.moved = true;
  if (touch.markId !== null && touch.markFrom !== null && props.onMove !== undefined)
    props.onDrag({ id: touch.markId, at: movedTo(touch.markFrom, by, props.view) });
  else if (props.zoom > 1) props.setView(props.zoom, centreAfterPan(touch.view, by));
}

function movedTo(from: Point, by: Point, view: View): Point {
  return toFraction({ x: from.x + by.x, y: from.y + by.y }, view);
}

function finish(touch: Touch, point: Point, props: PointerProps) {
  if (touch.moved) {
    if (touch.markId === null || touch.markFrom === null) return;
    const by = { x: point.x - touch.start.x, y: point.y - touch.start.y };
    const to = movedTo(touch.markFrom, by, props.view);
    props.onMove?.(touch.markId, to.x, to.y);
    return;
  }
  if (touch.markId !== null) props.onPick?.(touch.markId);
  else if (props.placing) {
    const to = toFraction(point, props.view);
    if (onPhoto(point, props.view)) props.onPlace?.(to.x, to.y);
  } else {
    const near = nearest(props.marks, point, props.view, nearJoint);
    if (near !== null) props.onPick?.(near);
  }
}

/** A touch on the bolt itself means its mark. */
function nearest(marks: readonly PhotoMark[], point: Point, view: View, reach: number): string | null {
  let best: { id: string; far: number } | null = null;
  for (const mark of marks) {
    const on = toScreen(mark, view);
    const far = Math.hypot(on.x - point.x, on.y - point.y);
    if (far <= reach && (best === null || far < best.far)) best = { id: mark.id, far };
  }
  return best?.id ?? null;
}

function pinch(fingers: Map<number, Point>, id: number, point: Point, props: PointerProps) {
  const other = [...fingers].find(([key]) => key !== id)?.[1];
  const before = fingers.get(id);
  fingers.set(id, point);
  if (other === undefined || before === undefined) return;
  const was = Math.hypot(before.x - other.x, before.y - other.y);
  const is = Math.hypot(point.x - other.x, point.y - other.y);
  if (was < 1) return;
  const zoom = props.zoom * (is / was);
  const held = { x: (point.x + other.x) / 2, y: (point.y + other.y) / 2 };
  props.setView(zoom, centreAfterZoom(props.photo, props.view, props.scale * Math.max(1, zoom), held));
}

/** The page must not scroll under a wheel on the photo, so the listener cannot be a passive one. */
function useWheel(box: RefObject<HTMLElement | null>, now: RefObject<PointerProps>) {
  useEffect(() => {
    const element = box.current;
    if (element === null) return undefined;
    const onWheel = (event: WheelEvent) => {
      const { photo, view, scale, zoom, setView } = now.current;
      if (!event.ctrlKey && zoom === 1 && event.deltaY > 0) return;
      event.preventDefault();
      const rect = element.getBoundingClientRect();
      const next = Math.min(8, Math.max(1, zoom * Math.exp(-event.deltaY / 400)));
      const held = { x: event.clientX - rect.left, y: event.clientY - rect.top };
      setView(next, centreAfterZoom(photo, view, scale * next, held));
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => element.removeEventListener('wheel', onWheel);
  }, [box, now]);
}
