import { bench as say } from '../../texts/bench.ts';
import { AddLine } from '../begin/ItemList.tsx';

export interface ActionsProps {
  /** Names the list: what is half typed comes back under it. */
  readonly draft: string;
  readonly actions: readonly { readonly id: string; readonly what: string }[];
  readonly onAdd: (what: string) => void;
  readonly onMove: (id: string, by: -1 | 1) => void;
  readonly onDrop: (id: string) => void;
}

/** What was done in which order: the way back is the reverse. */
export function Actions({ draft, actions, onAdd, onMove, onDrop }: ActionsProps) {
  return (
    <section className="bench-actions">
      <h3>{say.actions}</h3>
      <ol className="list">
        {actions.map((action, i) => (
          <li key={action.id}>
            <span className="said">{action.what}</span>
            <button
              type="button"
              className="link"
              disabled={i === 0}
              onClick={() => onMove(action.id, -1)}
              aria-label={say.earlier(action.what)}
            >
              {say.up}
            </button>
            <button
              type="button"
              className="link"
              disabled={i === actions.length - 1}
              onClick={() => onMove(action.id, 1)}
              aria-label={say.laterAction(action.what)}
            >
              {say.down}
            </button>
            <button
              type="button"
              className="link"
              onClick={() => onDrop(action.id)}
              aria-label={say.drop(action.what)}
            >
              {say.strike}
            </button>
          </li>
        ))}
      </ol>
      <AddLine
        draft={draft}
        label={say.action}
        example={say.actionExample}
        add={say.addAction}
        onAdd={onAdd}
      />
    </section>
  );
}
