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
  /** What stands in it. */
  readonly number: number;
  /** Marks that go together with it; `photo` names the other photo where it is on one, null on this. */
  readonly mates: readonly {
    readonly id: string;
    readonly name: string;
    readonly photo: string | null;
    readonly photoId: string;
  }[];
  /** Its mate is being looked for: the next mark that is touched. */
  readonly joining: boolean;
}

interface MarkPanelProps {
  readonly mark: MarkAtHand;
  readonly onBind: (thingId: string | null) => void;
  readonly onRemove: () => void;
  readonly onLeave: () => void;
  readonly onNumber: (n: number) => void;
  readonly onJoin: () => void;
  readonly onPart: () => void;
  readonly onShowPhoto: (photoId: string) => void;
}

/** Binds a mark, gives it another number, joins it to what it goes together with, or takes it away. */
export function MarkPanel(props: MarkPanelProps) {
  const { mark, onBind, onRemove, onLeave } = props;
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
      <MarkNumber key={`${mark.id} ${mark.number}`} {...props} />
      <Mates {...props} />
      <div className="keys">
        <Key onPress={onRemove} shortcut="Delete">
          {say.remove}
        </Key>
        <Key onPress={onLeave}>{say.leave}</Key>
      </div>
    </section>
  );
}

/** Another number: taken when the hand leaves the field or presses Enter. */
function MarkNumber({ mark, onNumber }: MarkPanelProps) {
  const take = (typed: string) => {
    const n = Number(typed);
    if (Number.isInteger(n) && n > 0 && n !== mark.number) onNumber(n);
  };
  return (
    <label className="mark-number">
      <span className="cap">{say.number}</span>
      <input
        className="num"
        inputMode="numeric"
        defaultValue={mark.number}
        onBlur={(event) => take(event.currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take(event.currentTarget.value);
        }}
      />
    </label>
  );
}

function Mates({ mark, onJoin, onPart, onShowPhoto }: MarkPanelProps) {
  return (
    <div className="mates">
      {mark.mates.length > 0 && (
        <>
          <p className="cap">{say.together}</p>
          <ul>
            {mark.mates.map((mate) => (
              <li key={mate.id}>
                {mate.photo === null ? (
                  mate.name
                ) : (
                  <button type="button" className="link" onClick={() => onShowPhoto(mate.photoId)}>
                    {say.mateOn(mate.name, mate.photo)}
                  </button>
                )}
              </li>
            ))}
          </ul>
        </>
      )}
      <div className="keys">
        <Key onPress={onJoin}>{mark.joining ? say.joinNot : say.join}</Key>
        {mark.mates.length > 0 && <Key onPress={onPart}>{say.part}</Key>}
      </div>
    </div>
  );
}
