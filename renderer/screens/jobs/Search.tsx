import { jobs as say } from '../../texts/jobs.ts';
import { Key } from '../../ui/Key.tsx';

/** One place where the words were found. */
export interface HitData {
  readonly id: string;
  readonly job: string;
  /** The removal, part or bag it belongs to. */
  readonly where: string;
  /** The words round it, cut in three: before, found, after. */
  readonly text: readonly [string, string, string];
}

/** Offered where nothing was found. */
export interface NearData {
  readonly names: readonly string[];
  readonly lookedIn: string;
}

interface SearchProps {
  readonly text: string;
  readonly onSearch: (text: string) => void;
  /** Enter: the first hit, else the nearest name. */
  readonly onEnter: () => void;
}

export function Search({ text, onSearch, onEnter }: SearchProps) {
  return (
    <search className="find">
      <input
        type="search"
        value={text}
        aria-label={say.search}
        placeholder={say.search}
        aria-keyshortcuts={say.searchHint}
        onChange={(event) => onSearch(event.target.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') onEnter();
        }}
      />
      {text === '' && <kbd aria-hidden="true">{say.searchHint}</kbd>}
    </search>
  );
}

interface HitsProps {
  readonly words: string;
  readonly hits: readonly HitData[];
  /** Null while something is found, or while it is not known yet. */
  readonly near: NearData | null;
  readonly onHit: (id: string) => void;
  readonly onSearch: (text: string) => void;
}

export function Hits({ words, hits, near, onHit, onSearch }: HitsProps) {
  return (
    <section className="hits">
      <div role="status">
        <h2>{hits.length === 0 ? say.notFound(words) : say.found(hits.length)}</h2>
        {near !== null && <p>{say.lookedIn(near.lookedIn)}</p>}
      </div>
      {near !== null && near.names.length > 0 && <Near names={near.names} onSearch={onSearch} />}
      <ul>
        {hits.map((hit) => (
          <li key={hit.id}>
            <button type="button" className="hit" onClick={() => onHit(hit.id)}>
              <span className="said">
                {hit.text[0]}
                <mark>{hit.text[1]}</mark>
                {hit.text[2]}
              </span>
              <span>
                {hit.where} <span className="cap">{say.inJob(hit.job)}</span>
              </span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Names that come nearest: a touch searches for one, Enter for the first. */
function Near({
  names,
  onSearch,
}: {
  readonly names: readonly string[];
  readonly onSearch: (text: string) => void;
}) {
  return (
    <div className="near">
      <h3>{say.near}</h3>
      <div className="keys" role="group" aria-label={say.near}>
        {names.map((name, i) => (
          <Key key={name} onPress={() => onSearch(name)} {...(i === 0 && { hint: say.enter })}>
            <span className="said">{name}</span>
          </Key>
        ))}
      </div>
    </div>
  );
}
