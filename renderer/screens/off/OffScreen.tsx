import { type ComponentProps, useEffect, useRef } from 'react';
import { Frame } from '../../frame/Frame.tsx';
import type { LinePaneProps } from '../../frame/LinePane.tsx';
import { off as say } from '../../texts/off.ts';
import { lost, tray, unknown } from '../../texts/tray.ts';
import { Key } from '../../ui/Key.tsx';
import { Say, type Rich } from '../../ui/rich.tsx';
import { Rows, type RowData } from '../../ui/Rows.tsx';
import type { StatusProps } from '../../ui/Status.tsx';
import { BagPanel } from './BagPanel.tsx';
import { LostPanel } from './LostPanel.tsx';
import { AwayPanel, PartPanel, WantPanel } from './Panels.tsx';
import { TrayPanel } from './TrayPanel.tsx';
import { UnknownPanel } from './UnknownPanel.tsx';

/** What stands on the sheet at the right. */
export type OffPanel =
  | ({ readonly kind: 'bag' } & ComponentProps<typeof BagPanel>)
  | ({ readonly kind: 'away' } & ComponentProps<typeof AwayPanel>)
  | ({ readonly kind: 'part' } & ComponentProps<typeof PartPanel>)
  | ({ readonly kind: 'tray' } & ComponentProps<typeof TrayPanel>)
  | ({ readonly kind: 'unknown' } & ComponentProps<typeof UnknownPanel>)
  | ({ readonly kind: 'lost' } & ComponentProps<typeof LostPanel>)
  | ({ readonly kind: 'to get' } & ComponentProps<typeof WantPanel>);

/** Panels that are opened by a key and not by a bag. */
export type OffTool = 'to get' | 'tray' | 'unknown' | 'lost';

export interface OffGroup {
  /** "Tin A, bench end", "Not in the workshop, or still on" */
  readonly title: string;
  readonly rows: readonly RowData[];
}

export interface OffScreenProps {
  readonly pane: LinePaneProps;
  readonly status?: StatusProps;
  /** All pieces in one sentence: where they are, which are unaccounted. */
  readonly summary: Rich;
  readonly groups: readonly OffGroup[];
  readonly atId: string | null;
  readonly panel: OffPanel | null;
  /** Things to get that are still open. */
  readonly toGet: number;
  readonly onPick: (id: string) => void;
  /** Searches that are open. */
  readonly lookedFor: number;
  readonly onTool: (tool: OffTool) => void;
}

/** Everything that is off, by bag and shelf, with its count and what happens to it. */
export function OffScreen(props: OffScreenProps) {
  const { groups, panel, atId } = props;
  const sheet = useRef<HTMLElement>(null);
  // On a small screen the sheet stands above the list that it was opened from.
  useEffect(() => {
    if (atId === null || sheet.current === null) return;
    sheet.current.scrollTop = 0;
    sheet.current.scrollIntoView({ block: 'nearest' });
  }, [atId]);
  return (
    <Frame pane={props.pane} {...(props.status && { status: props.status })} screen="off">
      <div className="off-list">
        <h1>{say.title}</h1>
        <p className="off-summary">
          <Say text={groups.length === 0 ? say.nothing : props.summary} />
        </p>
        {groups.map((group) => (
          <Rows
            key={group.title}
            title={group.title}
            rows={group.rows}
            atId={props.atId}
            onPick={props.onPick}
          />
        ))}
        <div className="keys off-tools" role="group" aria-label={say.tools}>
          <Key onPress={() => props.onTool('to get')}>{say.toGet(props.toGet)}</Key>
          <Key onPress={() => props.onTool('tray')}>{tray.title}</Key>
          <Key onPress={() => props.onTool('unknown')}>{unknown.title}</Key>
          <Key onPress={() => props.onTool('lost')}>{lost.key(props.lookedFor)}</Key>
        </div>
      </div>
      <section className="hand on-sheet off-panel" ref={sheet}>
        {panel === null ? (
          <p className="off-teach">{groups.length === 0 ? say.pickLater : say.pickBag}</p>
        ) : (
          <Panel panel={panel} />
        )}
      </section>
    </Frame>
  );
}

function Panel({ panel }: { readonly panel: OffPanel }) {
  switch (panel.kind) {
    case 'bag':
      return <BagPanel key={panel.bag.id} {...panel} />;
    case 'away':
      return <AwayPanel {...panel} />;
    case 'part':
      return <PartPanel {...panel} />;
    case 'tray':
      return <TrayPanel {...panel} />;
    case 'unknown':
      return <UnknownPanel {...panel} />;
    case 'lost':
      return <LostPanel {...panel} />;
    case 'to get':
      return <WantPanel {...panel} />;
  }
}
