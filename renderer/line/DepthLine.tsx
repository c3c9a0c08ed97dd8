import { useId, useLayoutEffect, useMemo, useRef, useState, type KeyboardEvent } from 'react';
import { line as say } from '../texts/line.ts';
import { useSize } from '../ui/use-size.ts';
import { drawLine } from '../../core/drawing/line/drawing.ts';
import { fullSizes, layLine, slimSizes, type Block, type Laid } from '../../core/drawing/line/layout.ts';
import { useDrag } from './drag.ts';
import { LineDrawing } from './LineDrawing.tsx';
import { fullChannel, slimChannel } from '../../core/drawing/line/shapes.ts';
import { usePhotoDrop } from './photo-drop.ts';
import type { LineData, LineItem, Notch } from '../../core/drawing/line/types.ts';

export interface DepthLineProps {
  readonly line: LineData;
  /** "slim" stands in 96 px and shows numbers only. */
  readonly variant: 'full' | 'slim';
  readonly onPick: (id: string) => void;
  /** Photos drawn onto a removal were let go there; left out where nothing can be drawn here. */
  readonly onDropPhotos?: ((id: string) => void) | undefined;
  /** The removal at hand was drawn along the line to after another; null = to the top. */
  readonly onMove?: ((id: string, afterId: string | null) => void) | undefined;
}

/**
 * The removal log and the reinstall list as one line: map, progress and navigation. One tab stop; the arrow keys walk
 * along it and bring far removals near.
 */
export function DepthLine({ line, variant, onPick, onDropPhotos, onMove }: DepthLineProps) {
  const [box, size] = useSize<HTMLDivElement>();
  const slim = variant === 'slim';
  const sizes = slim ? slimSizes : fullSizes;
  const channel = slim ? slimChannel : fullChannel;
  const start = line.atId ?? line.items.at(-1)?.id ?? null;
  const [walked, setWalked] = useState<{ id: string; from: string | null } | null>(null);
  // Walking along the line ends as soon as something else comes to hand.
  const look = walked !== null && walked.from === start ? walked.id : start;
  const height = Math.max(200, (size?.height ?? 600) - (line.direction === 'apart' ? 52 : 8));
  const laid = useMemo(
    () => layLine(line.items, look, line.atId, height, sizes),
    [line, look, height, sizes],
  );
  const drawing = useMemo(() => drawLine(line, laid, channel), [line, laid, channel]);
  const drag = useDrag(laid, onMove ?? null);
  const walk = (id: string) => setWalked({ id, from: start });
  const list = useWalk(line.items, look, walk);
  const drop = usePhotoDrop(onDropPhotos, walk);
  return (
    <div className={`dl ${variant}`} ref={box}>
      <LineDrawing
        line={line}
        drawing={drawing}
        laid={laid}
        channel={channel}
        width={slim ? 96 : 280}
        clip={useId()}
      />
      <ol className="dl-list" aria-label={say.name} ref={list.ref} onKeyDown={list.onKeyDown} {...drop.on}>
        {laid.blocks.map((block) => (
          <BlockItem
            key={keyOf(block)}
            block={block}
            look={look}
            line={line}
            slim={slim}
            over={drop.over}
            onPick={onPick}
            onShow={walk}
            drag={drag}
          />
        ))}
        {drag.gap && <li className="dl-gap" aria-hidden="true" style={{ top: drag.gap.top }} />}
      </ol>
      {line.items.length === 0 && !slim && <p className="dl-none cap">{say.none}</p>}
      <LineEnd laid={laid} />
    </div>
  );
}

/** Gives the scrolled height to the box, since all that stands in it is placed by hand. */
function LineEnd({ laid }: { laid: Laid }) {
  return <div aria-hidden="true" style={{ height: laid.height + 8, width: 1 }} />;
}

function keyOf(block: Block): string {
  if (block.kind === 'far') return `far-${block.items[0]?.id ?? ''}`;
  if (block.kind === 'place') return `place-${block.top}`;
  return block.item.id;
}

/** Arrow keys, Home and End; the focus goes where the walk goes. */
function useWalk(items: readonly LineItem[], look: string | null, walk: (id: string) => void) {
  const ref = useRef<HTMLOListElement | null>(null);
  const moved = useRef(false);
  useLayoutEffect(() => {
    if (!moved.current) return;
    moved.current = false;
    ref.current?.querySelector<HTMLElement>('[tabindex="0"]')?.focus();
  }, [look]);
  const onKeyDown = (event: KeyboardEvent) => {
    const here = items.findIndex((item) => item.id === look);
    const to = { ArrowUp: here - 1, ArrowDown: here + 1, Home: 0, End: items.length - 1 }[event.key];
    const next = to === undefined ? undefined : items[to];
    if (next === undefined || here < 0) return;
    event.preventDefault();
    moved.current = true;
    walk(next.id);
  };
  return { ref, onKeyDown };
}

interface BlockProps {
  readonly block: Block;
  readonly look: string | null;
  readonly line: LineData;
  readonly slim: boolean;
  /** The removal that photos hang over. */
  readonly over: string | null;
  readonly onPick: (id: string) => void;
  readonly onShow: (id: string) => void;
  readonly drag: ReturnType<typeof useDrag>;
}

function BlockItem({ block, look, line, slim, over, onPick, onShow, drag }: BlockProps) {
  const style = { top: block.top, height: block.height };
  if (block.kind === 'place')
    return (
      <li className="dl-place" style={style} title={block.name}>
        {slim ? <span className="heard-only">{block.name}</span> : <span>{block.name}</span>}
      </li>
    );
  if (block.kind === 'far') return <FarItem block={block} slim={slim} style={style} onShow={onShow} />;
  const { item } = block;
  const at = item.id === line.atId;
  const common = {
    onClick: () => onPick(item.id),
    tabIndex: item.id === look ? 0 : -1,
    'aria-current': at ? ('step' as const) : undefined,
  };
  if (item.kind === 'gate')
    return (
      <li className={`dl-gate ${item.passed ? 'passed' : 'shut'}`} style={style}>
        <button type="button" {...common} title={item.title}>
          <b className={slim ? 'heard-only' : undefined}>{item.title}</b>
          <small className={slim ? 'heard-only' : undefined}>{item.note}</small>
          <span className="heard-only">{say.gateState(item.passed)}</span>
        </button>
      </li>
    );
  return (
    <li className={over === item.id ? 'dl-row over' : at ? 'dl-row at' : 'dl-row'} style={style}>
      <button
        type="button"
        {...common}
        {...(at && drag.handlers(item.id))}
        onClick={() => {
          if (!at || !drag.wasDrawn()) onPick(item.id);
        }}
        data-removal={item.id}
        title={say.whole(item.number, item.title, item.note)}
      >
        <RowWords item={item} slim={slim} />
      </button>
    </li>
  );
}

/** What is seen of a removal, and between it what only has to be heard. */
function RowWords({ item, slim }: { readonly item: Notch; readonly slim: boolean }) {
  return (
    <>
      <span className="heard-only">{say.removalWord} </span>
      <b>{item.number}</b>
      <span className={slim ? 'heard-only' : 'dl-what'}>
        <span className={item.note === '' ? 'dl-title' : 'dl-title one'}>{item.title || say.untitled}</span>
        {item.note !== '' && <small>{item.note}</small>}
      </span>
      <i className={slim ? 'heard-only' : undefined}>{item.pieces || ''}</i>
      <span className="heard-only"> {say.heard(item.did, item.back, item.pieces)}</span>
    </>
  );
}

interface FarProps {
  readonly block: Extract<Block, { kind: 'far' }>;
  readonly slim: boolean;
  readonly style: { top: number; height: number };
  readonly onShow: (id: string) => void;
}

function FarItem({ block, slim, style, onShow }: FarProps) {
  const middle = block.items[Math.floor(block.items.length / 2)];
  const removals = block.items.filter((item): item is Notch => item.kind === 'removal');
  const gates = block.items.length - removals.length;
  const [first, last] = [removals[0], removals.at(-1)];
  if (middle === undefined) return null;
  const places = [...new Set(removals.map((item) => item.place).filter((name) => name !== ''))];
  const about = [say.places(places), gates > 0 && first ? say.gates(gates) : ''];
  return (
    <li className="dl-far" style={style}>
      <button type="button" tabIndex={-1} data-far={middle.id} onClick={() => onShow(middle.id)}>
        {first && <span className="heard-only">{say.removalsWord} </span>}
        <b className={slim ? 'heard-only' : undefined}>
          {first && last ? say.range(first.number, last.number) : say.gates(gates)}
        </b>
        <span className={slim ? 'heard-only' : undefined}>
          {about.filter((word) => word !== '').join(', ')}
        </span>
        <span className="heard-only"> {say.showThem}</span>
      </button>
    </li>
  );
}
