import { jobs as say } from '../../texts/jobs.ts';

/** One place where the words were found. */
export interface HitData {
  readonly id: string;
  readonly job: string;
  /** The removal, part or bag it belongs to. */
  readonly where: string;
  /** The words round it, cut in three: before, found, after. */
  readonly text: readonly [string, string, string];
}

export function Search({
  text,
  onSearch,
}: {
  readonly text: string;
  readonly onSearch: (text: string) => void;
}) {
  return (
    <search className="find">
      <input
        type="search"
        value={text}
        aria-label={say.search}
        placeholder={say.search}
        aria-keyshortcuts={say.searchHint}
        onChange={(event) => onSearch(event.target.value)}
      />
      {text === '' && <kbd aria-hidden="true">{say.searchHint}</kbd>}
    </search>
  );
}

interface HitsProps {
  readonly words: string;
  readonly hits: readonly HitData[];
  readonly onHit: (id: string) => void;
}

export function Hits({ words, hits, onHit }: HitsProps) {
  return (
    <section className="hits">
      <div role="status">
        <h2>{hits.length === 0 ? say.notFound(words) : say.found(hits.length)}</h2>
      </div>
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
