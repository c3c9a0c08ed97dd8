import { pattern as say } from '../../texts/pattern.ts';
import { Key } from '../../ui/Key.tsx';

export interface PlannedData {
  /** It was off and back before: nothing is counted anew. */
  readonly again: boolean;
  readonly sets: readonly {
    readonly id: string;
    readonly name: string;
    readonly torque: string;
    readonly expected: number;
    /** As counted; as expected until somebody counts. */
    readonly found: number;
  }[];
  readonly parts: readonly string[];
}

interface PlannedProps {
  readonly planned: PlannedData;
  readonly onFound: (setId: string, count: number) => void;
}

/** What an earlier job lets expect here, to be counted as it comes off. */
export function Planned({ planned, onFound }: PlannedProps) {
  return (
    <section className="planned">
      <h2>{planned.again ? say.again : say.expected}</h2>
      {planned.parts.length > 0 && <p className="said">{planned.parts.join(', ')}</p>}
      <ul>
        {planned.sets.map((set) => (
          <li key={set.id}>
            <b className="num">{set.found}</b>
            <p>
              <span className="said">{set.name}</span>
              <span className="cap">{[say.of(set.expected), set.torque].filter(Boolean).join(', ')}</span>
            </p>
            <Key
              onPress={() => onFound(set.id, set.found - 1)}
              off={set.found === 0}
              label={say.fewer(set.name)}
            >
              −
            </Key>
            <Key onPress={() => onFound(set.id, set.found + 1)} label={say.more(set.name)}>
              +
            </Key>
          </li>
        ))}
      </ul>
      <p className="cap">{planned.again ? say.teachAgain : say.teachBegin}</p>
    </section>
  );
}
