import type { ReactNode } from 'react';
import { Status, type StatusProps } from '../ui/Status.tsx';
import { LinePane, type LinePaneProps } from './LinePane.tsx';

export interface FrameProps {
  readonly pane: LinePaneProps;
  readonly status?: StatusProps;
  /** Names the grid of the screen: see the style of the same name. */
  readonly screen: string;
  readonly children: ReactNode;
}

/** Every screen: the line at the left edge, the work beside it, one status line. */
export function Frame({ pane, status, screen, children }: FrameProps) {
  return (
    <div className="frame">
      <LinePane {...pane} />
      <main className={`screen ${screen}`}>{children}</main>
      {status !== undefined && <Status {...status} />}
    </div>
  );
}
