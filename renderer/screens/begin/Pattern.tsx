import { useId, useState } from 'react';
import { pattern as say } from '../../texts/pattern.ts';
import { Key } from '../../ui/Key.tsx';

export interface PatternData {
  readonly title: string;
  readonly begun: number;
  readonly all: number;
  /** Removals that differ from the earlier job, and in what. */
  readonly differs: readonly {
    readonly id: string;
    readonly title: string;
    readonly lines: readonly string[];
  }[];
}

interface PatternProps {
  readonly pattern: PatternData | null;
  readonly earlier: readonly { readonly id: string; readonly title: string }[];
  readonly onPattern: (fromJobId: string) => void;
  readonly onPlanned: (removalId: string) => void;
}

/** An earlier job on a like machine: chosen here, then how far it was followed and what differs. */
export function Pattern({ pattern, earlier, onPattern, onPlanned }: PatternProps) {
  if (pattern === null && earlier.length === 0) return null;
  return (
    <section>
      <h2 className="rows-title">{say.title}</h2>
      {pattern === null ? (
        <Choose earlier={earlier} onPattern={onPattern} />
      ) : (
        <Followed pattern={pattern} onPlanned={onPlanned} />
      )}
    </section>
  );
}

function Choose({ earlier, onPattern }: Pick<PatternProps, 'earlier' | 'onPattern'>) {
  const [chosen, setChosen] = useState('');
  const id = useId();
  return (
    <>
      <p className="list-empty">{say.teach}</p>
      <form
        className="add-line"
        onSubmit={(event) => {
          event.preventDefault();
          if (chosen !== '') onPattern(chosen);
        }}
      >
        <div className="field">
          <label htmlFor={id}>{say.pick}</label>
          <select id={id} className="said" value={chosen} onChange={(event) => setChosen(event.target.value)}>
            <option value="">{say.choose}</option>
            {earlier.map((job) => (
              <option key={job.id} value={job.id}>
                {job.title}
              </option>
            ))}
          </select>
        </div>
        <Key submits onPress={() => undefined} off={chosen === ''}>
          {say.use}
        </Key>
      </form>
    </>
  );
}

function Followed({
  pattern,
  onPlanned,
}: { readonly pattern: PatternData } & Pick<PatternProps, 'onPlanned'>) {
  return (
    <>
      <p>
        {say.follows}
        <span className="said">{pattern.title}</span>, {say.begun(pattern.begun, pattern.all)}
      </p>
      {pattern.differs.length === 0 ? (
        <p className="list-empty">{say.same}</p>
      ) : (
        <ul className="differs" aria-label={say.differs}>
          {pattern.differs.map((one) => (
            <li key={one.id}>
              <button type="button" className="link said" onClick={() => onPlanned(one.id)}>
                {one.title}
              </button>
              {one.lines.map((line) => (
                <p key={line}>{line}</p>
              ))}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
