import type { ReactNode } from 'react';
import { DepthLine } from '../line/DepthLine.tsx';
import type { LineData } from '../../core/drawing/line/types.ts';
import { common } from '../texts/common.ts';
import { Trio, type Count } from '../ui/Numbers.tsx';
import { narrow, useMedia, wide } from '../ui/use-media.ts';

/** A way to another screen, with its key. */
export interface NavKey {
  readonly id: string;
  readonly label: string;
  readonly hint?: string;
  readonly current?: boolean;
  readonly onGo: () => void;
}

export interface LinePaneProps {
  /** The job's title: wraps to two lines, then shortens. */
  readonly job: string;
  /** Off, back, left: in this order. */
  readonly counts: readonly Count[];
  /** "About 3 to 5 hours left"; "" while it is not known. */
  readonly timeLeft?: string;
  readonly line: LineData;
  readonly nav: readonly NavKey[];
  readonly onPick: (id: string) => void;
  /** Photos drawn onto a removal were let go there. */
  readonly onDropPhotos?: ((id: string) => void) | undefined;
  /** Set where the removal at hand may be drawn to another place in the log. */
  readonly onMove?: (id: string, afterId: string | null) => void;
  /** Stands in place of the job's title. */
  readonly head?: ReactNode;
  /** Stands in place of the ways to other screens. */
  readonly foot?: ReactNode;
}

/** The left edge of every screen: whose job, how deep, the line, the ways out. */
export function LinePane(props: LinePaneProps) {
  const isWide = useMedia(wide);
  const isNarrow = useMedia(narrow);
  const line = (
    <DepthLine
      line={props.line}
      variant={isWide || isNarrow ? 'full' : 'slim'}
      onPick={props.onPick}
      onDropPhotos={props.onDropPhotos}
      onMove={props.onMove}
    />
  );
  const foot = props.foot ?? <Nav keys={props.nav} />;
  if (isNarrow)
    return (
      <details className="pane-fold">
        <summary>
          <span className="said">{props.job}</span>
          <span className="num">{shortOf(props.counts)}</span>
          <span className="pane-word">{common.line}</span>
        </summary>
        <Trio counts={props.counts} />
        {props.timeLeft !== undefined && props.timeLeft !== '' && <p className="cap">{props.timeLeft}</p>}
        {line}
        {foot}
      </details>
    );
  const counts = isWide ? props.counts : props.counts.filter((count) => count.largest).slice(0, 1);
  return (
    <aside className="pane" aria-label={common.lineAndScreens}>
      <div className="pane-head">
        {isWide && (props.head ?? <JobTitle job={props.job} />)}
        <Trio counts={counts.length > 0 ? counts : props.counts.slice(0, 1)} />
        {isWide && props.timeLeft !== undefined && props.timeLeft !== '' && (
          <p className="cap">{props.timeLeft}</p>
        )}
      </div>
      {line}
      {foot}
    </aside>
  );
}

function JobTitle({ job }: { readonly job: string }) {
  return (
    <p className="pane-job said" title={job}>
      {job}
    </p>
  );
}

function shortOf(counts: readonly Count[]): string {
  const count = counts.find((one) => one.largest) ?? counts[0];
  return count === undefined ? '' : `${count.value} ${count.label}`;
}

/** The other screens: words, with their keys. */
function Nav({ keys }: { readonly keys: readonly NavKey[] }) {
  return (
    <nav className="nav" aria-label={common.screens}>
      {keys.map((key) => (
        <button
          key={key.id}
          type="button"
          onClick={key.onGo}
          aria-current={key.current ? 'page' : undefined}
          aria-keyshortcuts={key.hint}
        >
          {key.hint !== undefined && <kbd aria-hidden="true">{key.hint}</kbd>}
          <span>{key.label}</span>
        </button>
      ))}
    </nav>
  );
}
