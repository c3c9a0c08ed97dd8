import { useId, useMemo, type KeyboardEvent } from 'react';
import { useNudge } from './nudge.ts';
import { marks as say } from '../texts/marks.ts';
import { toScreen, type Point, type View } from '../../core/drawing/geometry.ts';
import { placeDiscs } from '../../core/drawing/leaders.ts';
import { Mark } from './Mark.tsx';
import { Strokes } from './Strokes.tsx';
import type { Move, PhotoMark } from './types.ts';
import { useFoot } from './view.ts';

/** A mark on its way with a finger, as fractions. */
export interface Drag {
  readonly id: string;
  readonly at: Point;
}

interface MarksProps {
  readonly marks: readonly PhotoMark[];
  readonly moves: readonly Move[];
  readonly atId: string | null;
  readonly view: View;
  /** Marks are being set: the discs make way, and each leader ends on its point. */
  readonly placing: boolean;
  readonly drag: Drag | null;
  readonly onPick: ((id: string) => void) | undefined;
  readonly onMove: ((id: string, x: number, y: number) => void) | undefined;
  readonly onRemove: ((id: string) => void) | undefined;
}

/** How large a disc is, px: a phone's photo is small, so it gives way a little, never below what a finger needs. */
function useDiscSize(placing: boolean): number {
  const foot = useFoot();
  // While marks are set, discs are only read, and touched past.
  return placing ? 40 : foot === 0 ? 46 : 54;
}

/** Where each mark is in the box, and where its disc stands; a mark on its way is where the hand has it. */
function useDiscs(
  marks: readonly PhotoMark[],
  moving: Drag | null,
  view: View,
  size: number,
  placing: boolean,
) {
  const foot = useFoot();
  const at = (mark: PhotoMark): Point => toScreen(moving?.id === mark.id ? moving.at : mark, view);
  const placed = useMemo(
    () =>
      placeDiscs(
        marks.map((mark) => ({
          id: mark.id,
          at: at(mark),
          group: mark.group,
          radius: mark.radius === undefined ? null : mark.radius * view.width,
        })),
        { width: view.box.width, height: view.box.height - foot },
        size / 2,
        view.width * 0.05,
        // Half a joint has its middle among the marks that are set, and the discs would stand on the next bolts.
        placing ? toScreen({ x: 0.5, y: 0.5 }, view) : null,
      ),
    // Everything that `at` is made of.
    [
      marks,
      moving,
      view.left,
      view.top,
      view.width,
      view.height,
      view.box.width,
      view.box.height,
      foot,
      size,
      placing,
    ],
  );
  return { at, placed };
}

/** All that is drawn on a photo. One tab stop; the arrow keys go from mark to mark. */
export function Marks(props: MarksProps) {
  const { marks, moves, atId, view, placing, drag, onPick, onMove, onRemove } = props;
  const size = useDiscSize(placing);
  const help = useId();
  const nudge = useNudge(view, onMove);
  const { at, placed } = useDiscs(marks, nudge.drag ?? drag, view, size, placing);
  const discs = new Map(placed.map((one) => [one.id, one.disc]));
  const first =
    marks.find((mark) => mark.id === atId && discs.has(mark.id)) ?? marks.find((mark) => discs.has(mark.id));
  return (
    <>
      <Strokes marks={marks} moves={moves} placed={placed} placing={placing} at={at} width={view.width} />
      <div role="group" aria-label={say.group(marks.length)} aria-describedby={help} onKeyDown={walkMarks}>
        {marks.map((mark) => {
          const disc = discs.get(mark.id);
          return (
            disc !== undefined && (
              <MarkKey
                key={mark.id}
                mark={mark}
                disc={disc}
                size={size}
                isAt={mark.id === atId}
                isStop={mark === first}
                onPick={onPick}
                onLetGo={nudge.letGo}
                onKeyDown={(event) => {
                  nudge.keyDown(event, mark);
                  if (event.key === 'Delete' || event.key === 'Backspace') onRemove?.(mark.id);
                }}
              />
            )
          );
        })}
      </div>
      <span id={help} className="heard-only">
        {say.help}
      </span>
    </>
  );
}

interface MarkKeyProps {
  readonly mark: PhotoMark;
  readonly disc: Point;
  readonly size: number;
  readonly isAt: boolean;
  readonly isStop: boolean;
  readonly onPick: ((id: string) => void) | undefined;
  readonly onKeyDown: (event: KeyboardEvent) => void;
  readonly onLetGo: () => void;
}

function MarkKey({ mark, disc, size, isAt, isStop, onPick, onKeyDown, onLetGo }: MarkKeyProps) {
  return (
    <button
      type="button"
      className="mark-key"
      data-mark={mark.id}
      tabIndex={isStop ? 0 : -1}
      style={{ left: disc.x - size / 2, top: disc.y - size / 2, width: size, height: size }}
      aria-label={say.heard(mark.name, say.state(mark.kind, mark.state))}
      aria-current={isAt ? 'step' : undefined}
      onClick={(event) => {
        // A touch is answered by the pointer; only the keyboard and reading aids come here.
        if (event.detail === 0) onPick?.(mark.id);
      }}
      onKeyDown={onKeyDown}
      onKeyUp={(event) => event.key === 'Shift' && onLetGo()}
      onBlur={onLetGo}
    >
      <Mark kind={mark.kind} state={mark.state} text={mark.text} at={isAt} size={size} />
    </button>
  );
}

function walkMarks(event: KeyboardEvent<HTMLElement>) {
  const keys = [...event.currentTarget.querySelectorAll<HTMLElement>('.mark-key')];
  const here = keys.findIndex((key) => key === document.activeElement);
  const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
  if (step === undefined || here < 0) return;
  event.preventDefault();
  keys[(here + step + keys.length) % keys.length]?.focus();
}
