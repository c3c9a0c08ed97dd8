import { marks as say } from '../../texts/marks.ts';
import { Key } from '../../ui/Key.tsx';

/** The mark at hand: what it stands for, and what else it could. */
export interface MarkAtHand {
  readonly id: string;
  /** "hole 3 of cover: out" */
  readonly name: string;
  readonly thingId: string | null;
  readonly own: readonly { readonly id: string; readonly name: string }[];
  readonly others: readonly { readonly id: string; readonly name: string }[];
}

interface MarkPanelProps {
  readonly mark: MarkAtHand;
  readonly onBind: (thingId: string | null) => void;
  readonly onRemove: () => void;
  readonly onLeave: () => void;
}

/** Binds a mark to a hole, part, connection, match mark or temporary; or takes it away. */
export function MarkPanel({ mark, onBind, onRemove, onLeave }: MarkPanelProps) {
  return (
    <section className="mark-panel" aria-label={mark.name}>
      <label>
        <span className="cap">{say.standsFor}</span>
        <select value={mark.thingId ?? ''} onChange={(event) => onBind(event.target.value || null)}>
          <option value="">{say.nothing}</option>
          {mark.own.length > 0 && (
            <optgroup label={say.ofThis}>
              {mark.own.map((one) => (
                <option key={one.id} value={one.id}>
                  {one.name}
                </option>
              ))}
            </optgroup>
          )}
          {mark.others.length > 0 && (
            <optgroup label={say.ofOthers}>
              {mark.others.map((one) => (
                <option key={one.id} value={one.id}>
                  {one.name}
                </option>
              ))}
            </optgroup>
          )}
        </select>
      </label>
      <div className="keys">
        <Key onPress={onRemove} shortcut="Delete">
          {say.remove}
        </Key>
        <Key onPress={onLeave}>{say.leave}</Key>
      </div>
    </section>
  );
}
