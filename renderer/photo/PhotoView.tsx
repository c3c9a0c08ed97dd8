import { useId, useMemo, useState, type KeyboardEvent, type ReactNode } from 'react';
import { marks as say } from '../texts/marks.ts';
import { narrow, useMedia } from '../ui/use-media.ts';
import { useSize } from '../ui/use-size.ts';
import { framePhoto, layPhoto, toFraction, toScreen, type Point, type View } from './geometry.ts';
import { placeDiscs, wedge, type Placed } from './leaders.ts';
import { Mark } from './Mark.tsx';
import { usePointer } from './pointer.ts';
import type { Move, PhotoData, PhotoMark } from './types.ts';

export interface PhotoViewProps {
  readonly photo: PhotoData;
  readonly marks?: readonly PhotoMark[];
  readonly moves?: readonly Move[];
  /** "crop" fills the box, "whole" shows all of the photo. */
  readonly fit?: 'whole' | 'crop';
  readonly atId?: string | null;
  /** True while a touch on the photo sets the next mark. */
  readonly placing?: boolean;
  readonly onPick?: (id: string) => void;
  /** A place on the photo as fractions 0 to 1 of the upright picture. */
  readonly onPlace?: (x: number, y: number) => void;
  readonly onMove?: (id: string, x: number, y: number) => void;
  /** Plates on the photo: words only, on ink. */
  readonly children?: ReactNode;
}

const mostZoom = 8;
/** Height of the keys along the foot of the photo: no disc goes under them. */
const footKeys = 44;

/** A photo with its marks: fitted or cropped, zoomed and panned, every mark within reach of the keyboard. */
export function PhotoView(props: PhotoViewProps) {
  const { photo, marks = [], fit = 'crop', placing = false } = props;
  const [box, size] = useSize<HTMLDivElement>();
  const [zoom, setZoom] = useState(1);
  const [centre, setCentre] = useState<Point | null>(null);
  const [drag, setDrag] = useState<{ id: string; at: Point } | null>(null);
  const extent = size ?? { width: 0, height: 0 };
  const isNarrow = useMedia(narrow);
  const foot = isNarrow ? 0 : footKeys;
  // Framed anew for another photo or window, not whenever a mark is set: the ground must not move under the finger.
  const base = useMemo(
    () => framePhoto(photo, extent, placing ? 'whole' : fit, marks, isNarrow ? 62 : 88 + foot / 2),
    [photo.id, extent.width, extent.height, fit, placing, marks.length > 0],
  );
  const view = layPhoto(photo, extent, {
    scale: base.scale * zoom,
    centre: centre ?? {
      x: base.centre.x,
      y: base.centre.y + foot / 2 / Math.max(1, photo.height * base.scale),
    },
  });
  const setView = (nextZoom: number, nextCentre: Point | null) => {
    setZoom(Math.min(mostZoom, Math.max(1, nextZoom)));
    setCentre(nextCentre);
  };
  const middle = toFraction({ x: extent.width / 2, y: extent.height / 2 }, view);
  const pointer = usePointer({
    photo,
    view,
    scale: base.scale,
    zoom,
    setView,
    marks,
    box,
    onDrag: setDrag,
    placing,
    onPick: props.onPick,
    onPlace: props.onPlace,
    onMove: props.onMove,
  });
  return (
    <div className="photo-view">
      <div
        ref={box}
        className={placing ? 'photo placing' : zoom > 1 ? 'photo near' : 'photo'}
        onPointerDown={pointer.down}
        onPointerMove={pointer.move}
        onPointerUp={pointer.up}
        onPointerCancel={pointer.cancel}
      >
        {size !== null && (
          <>
            <img
              src={photo.src}
              alt={photo.alt}
              draggable={false}
              style={{ left: view.left, top: view.top, width: view.width, height: view.height }}
            />
            <Marks {...props} marks={marks} view={view} drag={drag} isNarrow={isNarrow} />
          </>
        )}
        <div className="plates">
          {placing && <p className="plate">{say.placing}</p>}
          {placing && (
            <button type="button" className="plate" onClick={() => props.onPlace?.(middle.x, middle.y)}>
              {say.middle}
            </button>
          )}
        </div>
      </div>
      <div className="photo-keys">
        {props.children}
        {zoom < mostZoom && (
          <button type="button" className="plate end" onClick={() => setView(zoom * 1.6, middle)}>
            {say.closer}
          </button>
        )}
        {zoom > 1 && (
          <button type="button" className="plate" onClick={() => setView(1, null)}>
            {say.whole}
          </button>
        )}
      </div>
    </div>
  );
}

interface MarksProps extends PhotoViewProps {
  readonly marks: readonly PhotoMark[];
  readonly view: View;
  readonly drag: { readonly id: string; readonly at: Point } | null;
  readonly isNarrow: boolean;
}

function Marks({ marks, moves = [], atId = null, view, drag, isNarrow, onPick, onMove }: MarksProps) {
  const discSize = isNarrow ? 46 : 54;
  const help = useId();
  const at = (mark: PhotoMark): Point => toScreen(drag?.id === mark.id ? drag.at : mark, view);
  const shown = marks.filter((mark) => inside(at(mark), view));
  const placed = useMemo(
    () =>
      placeDiscs(
        shown.map((mark) => ({
          id: mark.id,
          at: at(mark),
          group: mark.group,
          radius: mark.radius === undefined ? null : mark.radius * view.width,
        })),
        { width: view.box.width, height: view.box.height - (isNarrow ? 0 : footKeys) },
        discSize / 2,
      ),
    // Everything that `shown` and `at` are made of.
    [marks, drag, view.left, view.top, view.width, view.height, view.box.width, view.box.height],
  );
  const first = shown.find((mark) => mark.id === atId) ?? shown[0];
  return (
    <>
      <Strokes marks={marks} moves={moves} placed={placed} at={at} width={view.width} />
      <div role="group" aria-label={say.group(marks.length)} aria-describedby={help} onKeyDown={walkMarks}>
        {shown.map((mark, i) => {
          const disc = placed[i]?.disc ?? at(mark);
          return (
            <button
              key={mark.id}
              type="button"
              className="mark-key"
              data-mark={mark.id}
              tabIndex={mark === first ? 0 : -1}
              style={{
                left: disc.x - discSize / 2,
                top: disc.y - discSize / 2,
                width: discSize,
                height: discSize,
              }}
              aria-label={say.heard(mark.name, say.state(mark.kind, mark.state))}
              aria-current={mark.id === atId ? 'step' : undefined}
              onClick={(event) => {
                // A touch is answered by the pointer; only the keyboard comes here.
                if (event.detail === 0) onPick?.(mark.id);
              }}
              onKeyDown={(event) => nudge(event, mark, view, onMove)}
            >
              <Mark
                kind={mark.kind}
                state={mark.state}
                text={mark.text}
                at={mark.id === atId}
                size={discSize}
              />
            </button>
          );
        })}
      </div>
      <span id={help} className="heard-only">
        {say.help}
      </span>
    </>
  );
}

function inside(point: Point, view: View): boolean {
  return point.x >= 0 && point.y >= 0 && point.x <= view.box.width && point.y <= view.box.height;
}

/** Shift and an arrow moves a mark by two pixels of what is shown. */
function nudge(event: KeyboardEvent, mark: PhotoMark, view: View, onMove: PhotoViewProps['onMove']) {
  if (!event.shiftKey || onMove === undefined) return;
  const by = { ArrowLeft: [-2, 0], ArrowRight: [2, 0], ArrowUp: [0, -2], ArrowDown: [0, 2] }[event.key];
  if (by === undefined) return;
  event.preventDefault();
  event.stopPropagation();
  const from = toScreen(mark, view);
  const to = toFraction({ x: from.x + (by[0] ?? 0), y: from.y + (by[1] ?? 0) }, view);
  onMove(mark.id, to.x, to.y);
}

function walkMarks(event: KeyboardEvent<HTMLElement>) {
  const keys = [...event.currentTarget.querySelectorAll<HTMLElement>('.mark-key')];
  const here = keys.findIndex((key) => key === document.activeElement);
  const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
  if (step === undefined || here < 0) return;
  event.preventDefault();
  keys[(here + step + keys.length) % keys.length]?.focus();
}

interface StrokesProps {
  readonly marks: readonly PhotoMark[];
  readonly moves: readonly Move[];
  readonly placed: readonly Placed[];
  readonly at: (mark: PhotoMark) => Point;
  readonly width: number;
}

/** Leaders, wedges and the rules between what belongs together. */
function Strokes({ marks, moves, placed, at, width }: StrokesProps) {
  const byId = new Map(marks.map((mark) => [mark.id, mark]));
  const washer = Math.min(48, width * 0.06);
  return (
    <svg className="strokes" aria-hidden="true">
      {togetherPairs(marks).map(([a, b]) => (
        <Together key={a.id + b.id} from={at(a)} to={at(b)} />
      ))}
      {moves.map((move) => {
        const from = byId.get(move.fromId);
        const to = byId.get(move.toId);
        if (from === undefined || to === undefined) return null;
        const shape = wedge(at(from), at(to), washer, move.now ? 17 : 8.5);
        return (
          <polygon
            key={`${move.fromId} ${move.toId}`}
            className={move.now ? 'wedge now' : 'wedge'}
            points={shape.map((p) => `${p.x},${p.y}`).join(' ')}
          />
        );
      })}
      {placed.map(({ id, disc, dot }) => (
        <g key={id}>
          <path d={`M${dot.x} ${dot.y}L${disc.x} ${disc.y}`} stroke="var(--mk-ink)" strokeWidth="5.5" />
          <path d={`M${dot.x} ${dot.y}L${disc.x} ${disc.y}`} stroke="var(--mk-paper)" strokeWidth="2.5" />
          <circle
            cx={dot.x}
            cy={dot.y}
            r="4.5"
            fill="var(--mk-paper)"
            stroke="var(--mk-ink)"
            strokeWidth="2"
          />
        </g>
      ))}
    </svg>
  );
}

function togetherPairs(marks: readonly PhotoMark[]): [PhotoMark, PhotoMark][] {
  const pairs: [PhotoMark, PhotoMark][] = [];
  const last = new Map<string, PhotoMark>();
  for (const mark of marks) {
    if (mark.together == null) continue;
    const before = last.get(mark.together);
    if (before !== undefined) pairs.push([before, mark]);
    last.set(mark.together, mark);
  }
  return pairs;
}

/** A double rule: two things that belong together. */
function Together({ from, to }: { readonly from: Point; readonly to: Point }) {
  const d = `M${from.x} ${from.y}L${to.x} ${to.y}`;
  return (
    <>
      <path d={d} stroke="var(--mk-ink)" strokeWidth="9" />
      <path d={d} stroke="var(--mk-paper)" strokeWidth="6.5" />
      <path d={d} stroke="var(--mk-ink)" strokeWidth="2" />
    </>
  );
}
