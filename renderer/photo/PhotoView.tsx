import { useEffect, useRef, useState, type ReactNode, type RefObject } from 'react';
import { marks as say } from '../texts/marks.ts';
import { useSize } from '../ui/use-size.ts';
import { toFraction, type View } from '../../core/drawing/geometry.ts';
import { Marks, type Drag } from './Marks.tsx';
import { usePointer } from './pointer.ts';
import type { Move, PhotoData, PhotoMark } from './types.ts';
import { mostZoom, useView } from './view.ts';
import { useZoomKeys } from './zoom-keys.ts';

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
  readonly onRemove?: (id: string) => void;
  /** Said while placing: what the next mark stands for. */
  readonly placingSay?: string;
  /** Plus, minus, 0 and the arrows of the keyboard zoom and pan, wherever the focus is. */
  readonly zoomKeys?: boolean;
  /** Plates on the photo: words only, on ink. */
  readonly children?: ReactNode;
}

/** A photo with its marks: fitted or cropped, zoomed and panned, every mark within reach of the keyboard. */
export function PhotoView(props: PhotoViewProps) {
  const { photo, marks = [], fit = 'crop', placing = false } = props;
  const [box, size] = useSize<HTMLDivElement>();
  const [drag, setDrag] = useState<Drag | null>(null);
  const { view, scale, zoom, setView } = useView(photo, size, placing ? 'whole' : fit, marks);
  const middle = toFraction({ x: view.box.width / 2, y: view.box.height / 2 }, view);
  useZoomKeys({ on: props.zoomKeys === true, view, zoom, setView });
  const onMiddle = useSetByKey(box, props.atId ?? null, () => props.onPlace?.(middle.x, middle.y));
  const pointer = usePointer({
    photo,
    view,
    scale,
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
            <Picture photo={photo} view={view} />
            <Marks
              marks={marks}
              moves={props.moves ?? []}
              atId={props.atId ?? null}
              view={view}
              placing={placing}
              drag={drag}
              onPick={props.onPick}
              onMove={props.onMove}
              onRemove={props.onRemove}
            />
          </>
        )}
      </div>
      <div className="photo-keys">
        {props.children}
        {placing && <Placing text={props.placingSay ?? say.placing} onMiddle={onMiddle} />}
        <ZoomKeys zoom={zoom} onCloser={() => setView(zoom * 1.6, middle)} onWhole={() => setView(1, null)} />
      </div>
    </div>
  );
}

/** Sets a mark without a pointer; set by a key it takes the focus as soon as it is there, to be moved where it belongs. */
function useSetByKey(box: RefObject<HTMLElement | null>, atId: string | null, onSet: () => void) {
  const wanted = useRef(false);
  useEffect(() => {
    if (!wanted.current) return;
    wanted.current = false;
    box.current?.querySelector<HTMLElement>('.mark-key[aria-current]')?.focus();
  }, [box, atId]);
  return (byKey: boolean) => {
    wanted.current = byKey;
    onSet();
  };
}

/** Longest edge of the rendition that is shown first, px: drawn larger than that it goes soft. */
const LARGE_EDGE = 2048;

/** The picture; drawn larger than it is, every pixel of the original comes over it as soon as it is there. */
function Picture({ photo, view }: { readonly photo: PhotoData; readonly view: View }) {
  const style = { left: view.left, top: view.top, width: view.width, height: view.height };
  return (
    <>
      <img src={photo.src} alt={photo.alt} draggable={false} style={style} />
      {photo.full !== undefined && Math.max(view.width, view.height) > LARGE_EDGE && (
        <img src={photo.full} alt="" draggable={false} decoding="async" style={style} />
      )}
    </>
  );
}

interface ZoomKeysProps {
  readonly zoom: number;
  readonly onCloser: () => void;
  readonly onWhole: () => void;
}

function ZoomKeys({ zoom, onCloser, onWhole }: ZoomKeysProps) {
  return (
    <>
      {zoom < mostZoom && (
        <button type="button" className="plate end" onClick={onCloser}>
          {say.closer}
        </button>
      )}
      {zoom > 1 && (
        <button type="button" className="plate" onClick={onWhole}>
          {say.whole}
        </button>
      )}
    </>
  );
}

/** A touch sets the next mark; without a pointer it is set in the middle and moved from there. */
function Placing({
  text,
  onMiddle,
}: {
  readonly text: string;
  /** `byKey`: no pointer pressed it. */
  readonly onMiddle: (byKey: boolean) => void;
}) {
  return (
    <>
      <p className="plate">{text}</p>
      <button type="button" className="plate" onClick={(event) => onMiddle(event.detail === 0)}>
        {say.middle}
      </button>
    </>
  );
}
