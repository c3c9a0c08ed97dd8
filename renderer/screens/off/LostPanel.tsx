import { lost as say } from '../../texts/tray.ts';
import { off } from '../../texts/off.ts';
import { Field } from '../../ui/Field.tsx';
import { Key } from '../../ui/Key.tsx';

export interface SearchData {
  readonly id: string;
  readonly name: string;
  /** Below 0: so many too many. */
  readonly missing: number;
  readonly lastSeen: string;
  readonly lookAt: readonly string[];
}

export interface LostPanelProps {
  readonly searches: readonly SearchData[];
  /** Rags, caps, supports that are in by the log. */
  readonly inside: readonly { readonly id: string; readonly name: string }[];
  readonly what: string;
  readonly count: string;
  readonly onWhat: (text: string) => void;
  readonly onCount: (text: string) => void;
  readonly onLook: () => void;
  readonly onMissing: (thingId: string) => void;
  readonly onFound: (id: string) => void;
  readonly onGiveUp: (id: string) => void;
}

/** What is looked for: where each was seen last, what stood open since, what to look at. */
export function LostPanel(props: LostPanelProps) {
  const { searches, inside } = props;
  return (
    <>
      <div className="bag-head">
        <p className="big">
          <b className="num">{searches.length}</b>
          <span className="unit">
            <b>{say.open(searches.length)}</b>
          </span>
        </p>
        <h2>
          <span>{say.title}</span>
        </h2>
      </div>
      <p className="off-say">{say.teach}</p>
      <form
        className="lost-form"
        onSubmit={(event) => {
          event.preventDefault();
          props.onLook();
        }}
      >
        <Field label={say.what} example={say.whatExample} value={props.what} onChange={props.onWhat} />
        <Field label={say.count} example="1" value={props.count} onChange={props.onCount} numeric />
        <Key look="go" submits onPress={() => undefined} off={props.what.trim() === ''} hint="Enter">
          {say.look}
        </Key>
      </form>
      {inside.length > 0 && (
        <section className="tray-part">
          <h3>{say.inside}</h3>
          <ul className="tray-rows">
            {inside.map((one) => (
              <li key={one.id}>
                <p>
                  <span className="said">{one.name}</span>
                </p>
                <button
                  type="button"
                  className="link"
                  onClick={() => props.onMissing(one.id)}
                  aria-label={say.missingOne(one.name)}
                >
                  {say.missing}
                </button>
              </li>
            ))}
          </ul>
        </section>
      )}
      {searches.map((one) => (
        <Search key={one.id} search={one} {...props} />
      ))}
    </>
  );
}

function Search({ search, onFound, onGiveUp }: { readonly search: SearchData } & LostPanelProps) {
  const { missing } = search;
  return (
    <section className="bag-alike lost-search" aria-label={search.name}>
      <h3>
        <span className="said">{search.name}</span>
        <span className="cap">{missing < 0 ? say.tooMany(-missing) : say.sought(missing)}</span>
      </h3>
      <p>{search.lastSeen}</p>
      {search.lookAt.length > 0 && (
        <>
          <h4>{off.lookAt}</h4>
          <ol className="look-at">
            {search.lookAt.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ol>
        </>
      )}
      <div className="bag-keys">
        <Key onPress={() => onFound(search.id)} label={say.foundOne(search.name)}>
          {say.found}
        </Key>
        <Key onPress={() => onGiveUp(search.id)} label={say.giveUpOne(search.name)}>
          {say.giveUp}
        </Key>
      </div>
    </section>
  );
}
