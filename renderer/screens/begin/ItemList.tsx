import { useDraft } from '../../data/draft.ts';
import { begin as say } from '../../texts/begin.ts';
import { Field } from '../../ui/Field.tsx';
import { Key } from '../../ui/Key.tsx';

export interface ListedItem {
  readonly id: string;
  readonly text: string;
  /** Short remark beside it: who, when, which kind. */
  readonly about: string;
  /** In hand, done; left out where there is nothing to tick. */
  readonly done?: boolean;
}

interface ItemListProps {
  readonly items: readonly ListedItem[];
  /** What to put here, while nothing is. */
  readonly empty: string;
  readonly onTick?: (id: string, done: boolean) => void;
  readonly onDrop: (id: string) => void;
}

/** A short list of what people wrote, with a box to tick where there is something to tick. */
export function ItemList({ items, empty, onTick, onDrop }: ItemListProps) {
  if (items.length === 0) return <p className="list-empty">{empty}</p>;
  return (
    <ul className="list">
      {items.map((item) => (
        <li key={item.id}>
          <label className={onTick === undefined ? 'plain' : undefined}>
            {onTick !== undefined && (
              <input
                type="checkbox"
                checked={item.done ?? false}
                onChange={(event) => onTick(item.id, event.target.checked)}
              />
            )}
            <span className="said">{item.text}</span>
            {item.about !== '' && <span className="cap">{item.about}</span>}
          </label>
          <button
            type="button"
            className="link"
            onClick={() => onDrop(item.id)}
            aria-label={say.remove(item.text)}
          >
            {say.take}
          </button>
        </li>
      ))}
    </ul>
  );
}

interface AddLineProps {
  /** What is half typed comes back under this name. */
  readonly draft: string;
  readonly label: string;
  readonly example: string;
  readonly add: string;
  readonly onAdd: (text: string) => void;
}

/** A field with its key; Enter does the same. */
export function AddLine({ draft, label, example, add, onAdd }: AddLineProps) {
  const [text, setText] = useDraft(`add/${draft}`);
  return (
    <form
      className="add-line"
      onSubmit={(event) => {
        event.preventDefault();
        if (text.trim() === '') return;
        onAdd(text.trim());
        setText('');
      }}
    >
      <Field label={label} example={example} value={text} onChange={setText} />
      <Key submits onPress={() => undefined} off={text.trim() === ''}>
        {add}
      </Key>
    </form>
  );
}
