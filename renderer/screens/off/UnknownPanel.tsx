import { unknown as say } from '../../texts/tray.ts';
import { MeasureForm, type MeasureProps } from './MeasureForm.tsx';

export interface BoltHit {
  readonly id: string;
  readonly jobTitle: string;
  readonly name: string;
  readonly what: string;
  readonly open: number;
  readonly sought: number;
  readonly says: string;
  readonly removalId: string;
  readonly jobId: string;
}

export interface UnknownPanelProps {
  readonly form: MeasureProps;
  readonly answer: {
    readonly holes: number;
    readonly sentence: string;
    readonly hits: readonly BoltHit[];
  } | null;
  readonly onGo: (hit: BoltHit) => void;
}

/** A bolt from the floor against every open hole of every job, best first, else the nearest. */
export function UnknownPanel({ form, answer, onGo }: UnknownPanelProps) {
  return (
    <>
      <div className="bag-head">
        <p className="big">
          <b className="num">{answer === null ? '?' : answer.holes}</b>
          <span className="unit">{answer !== null && <b>{answer.holes === 1 ? say.hit : say.hits}</b>}</span>
        </p>
        <h2>
          <span>{say.title}</span>
        </h2>
      </div>
      {answer === null && <p className="off-say">{say.teach}</p>}
      <MeasureForm {...form} />
      <div aria-live="polite">
        {answer !== null && <p className="bag-say">{answer.sentence}</p>}
        {answer !== null && (
          <ol className="wants bolt-hits">
            {answer.hits.map((hit, i) => (
              <li key={hit.id}>
                <b className="num">{i + 1}</b>
                <p>
                  <span className="said">{hit.name}</span>
                  <span>{hit.what}</span>
                  <span className="cap">{hit.says}</span>
                  <span className="cap">
                    <span className="said">{hit.jobTitle}</span>, {say.open(hit.open, hit.sought)}
                  </span>
                </p>
                <button
                  type="button"
                  className="link"
                  onClick={() => onGo(hit)}
                  aria-label={say.goTo(hit.name)}
                >
                  {say.go}
                </button>
              </li>
            ))}
          </ol>
        )}
      </div>
    </>
  );
}
