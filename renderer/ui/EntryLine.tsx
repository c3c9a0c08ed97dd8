import { useId, type KeyboardEvent, type Ref } from 'react';
import type { Chip, Token } from '../../core/entry/meaning.ts';
import { entry as say } from '../texts/entry.ts';

export interface EntryLineProps {
  readonly text: string;
  /** The line cut up; the stretches join up to the text. Empty while it has not been read. */
  readonly tokens: readonly Token[];
  readonly chips: readonly Chip[];
  readonly onChange: (text: string) => void;
  readonly onEnter: () => void;
  readonly label?: string;
  readonly ref?: Ref<HTMLTextAreaElement>;
}

/**
 * One line in trade notation, large. What is not understood is underlined where it stands and kept as it is; the
 * chips below say what was understood.
 */
export function EntryLine({ text, tokens, chips, onChange, onEnter, label = say.name, ref }: EntryLineProps) {
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Enter' || event.shiftKey) return;
    event.preventDefault();
    onEnter();
  };
  const missedId = useId();
  const missed = tokens.filter((token) => !token.understood);
  return (
    <div className="entry-strip">
      <div className="entry">
        <div className="stack">
          <div className="mirror" aria-hidden="true">
            {tokens.map((token) =>
              token.understood ? token.text : <mark key={token.start}>{token.text}</mark>,
            )}
            {'\u200b'}
          </div>
          <textarea
            ref={ref}
            rows={1}
            value={text}
            aria-label={label}
            placeholder={say.empty}
            spellCheck={false}
            autoComplete="off"
            onChange={(event) => onChange(event.target.value.replaceAll('\n', ' '))}
            onKeyDown={onKeyDown}
            aria-describedby={missedId}
          />
        </div>
      </div>
      <span className="heard-only" id={missedId}>
        {missed.length > 0 && say.missed(missed.map((token) => token.text))}
      </span>
      {text === '' ? <Teach /> : <Chips chips={chips} />}
    </div>
  );
}

function Teach() {
  return (
    <p className="teach">
      {say.teach}{' '}
      {say.examples.map((example) => (
        <code key={example}>“{example}”</code>
      ))}
    </p>
  );
}

/** What was understood, one chip a meaning. Doubtful ones end in a question mark. */
function Chips({ chips }: { readonly chips: readonly Chip[] }) {
  return (
    <ul className="chips" aria-label={say.understood}>
      {chips.map((chip, i) => (
        // Two chips may read the same, and they follow the typed order.
        <li key={`${i}-${chip.label}`} className={chip.doubtful ? 'doubt' : undefined}>
          <b>{chip.label.replace(/\?$/, '')}</b>
          <span>{chip.caption}</span>
        </li>
      ))}
    </ul>
  );
}
