import { useId, type KeyboardEvent, type Ref } from 'react';
import type { Chip, Offer, Sticky, Token } from '../../core/entry/index.ts';
import { entry as say } from '../texts/entry.ts';
import { Key } from './Key.tsx';

/** The line being typed, as it is understood so far. */
export interface EntryData {
  readonly text: string;
  /** What each line is taken for while plugs or hose ends come off one after the other. */
  readonly mode: Sticky | null;
  /** The line cut up; the stretches join up to the text. Empty while it has not been read. */
  readonly tokens: readonly Token[];
  readonly chips: readonly Chip[];
  /** Nouns for the word being typed, the likeliest first. */
  readonly offers: readonly Offer[];
  /** What was named last in this job, offered while the line is empty. */
  readonly last: readonly string[];
  /** The removal that a line which takes nothing off goes into, by its number; null = the line begins one. */
  readonly beside: number | null;
}

export interface EntryLineProps extends EntryData {
  readonly onChange: (text: string) => void;
  readonly onEnter: () => void;
  /** The last line again. */
  readonly onSame: () => void;
  readonly onMode: (mode: Sticky | null) => void;
  readonly label?: string;
  readonly ref?: Ref<HTMLTextAreaElement>;
}

const plain = (event: KeyboardEvent): boolean =>
  !event.shiftKey && !event.ctrlKey && !event.altKey && !event.metaKey;

/**
 * One line in trade notation, large. What is not understood is underlined where it stands and kept as it is; the
 * chips below say what was understood.
 */
export function EntryLine(props: EntryLineProps) {
  const { text, mode, tokens, offers, onChange, label = say.name, ref } = props;
  const [offer] = offers;
  const onKeyDown = (event: KeyboardEvent) => {
    if (!plain(event)) return;
    if (event.key === 'Enter') props.onEnter();
    // Tab goes on to the next control wherever there is no word to take.
    else if (event.key === 'Tab' && offer) onChange(offer.text);
    else if (event.key === 'ArrowUp' && text === '') props.onSame();
    else if (event.key === 'Escape' && mode !== null) props.onMode(null);
    else return;
    event.preventDefault();
  };
  const aboutId = useId();
  const missed = tokens.filter((token) => !token.understood);
  return (
    <div className="entry-strip">
      <div className="entry">
        {mode !== null && <span className="entry-mode">{say.modes[mode].before}</span>}
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
            placeholder={mode === null ? say.empty : ''}
            spellCheck={false}
            autoComplete="off"
            onChange={(event) => onChange(event.target.value.replaceAll('\n', ' '))}
            onKeyDown={onKeyDown}
            aria-describedby={aboutId}
          />
        </div>
      </div>
      <span className="heard-only" id={aboutId}>
        {missed.length > 0 && say.missed(missed.map((token) => token.text))}
        {offer && ` ${say.offeredSay(offer.word)}`}
        {mode !== null && ` ${say.modes[mode].before}. ${say.modeHow}`}
      </span>
      <div className="entry-foot">
        {text !== '' ? (
          <Chips chips={props.chips} />
        ) : mode !== null ? (
          <p className="teach">{say.modeHow}</p>
        ) : props.last.length > 0 ? null : (
          <Teach />
        )}
        <Beside {...props} />
      </div>
    </div>
  );
}

/** Beside the chips: words to take while typing, else what was named last and the two modes. */
function Beside({ text, mode, offers, last, onChange, onMode }: EntryLineProps) {
  if (text !== '')
    return offers.length === 0 ? null : (
      <div className="offers named" role="group" aria-label={say.offered}>
        {offers.map((one, i) => (
          <Key key={one.word} onPress={() => onChange(one.text)} {...(i === 0 && { hint: say.tab })}>
            {one.word}
          </Key>
        ))}
      </div>
    );
  return (
    <div className="offers">
      {mode === null && last.length > 0 && (
        <div className="offers named" role="group" aria-label={say.lastOnes}>
          {last.map((word) => (
            <Key key={word} onPress={() => onChange(`${word} `)}>
              {word}
            </Key>
          ))}
        </div>
      )}
      <div className="offers" role="group" aria-label={say.mode}>
        {(['plug', 'hose'] as const).map((one) => (
          <Key
            key={one}
            onPress={() => onMode(mode === one ? null : one)}
            pressed={mode === one}
            hint={say.modes[one].hint}
            shortcut={say.modes[one].shortcut}
          >
            {say.modes[one].name}
          </Key>
        ))}
      </div>
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
