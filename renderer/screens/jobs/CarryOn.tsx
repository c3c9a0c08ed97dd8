import type { PhotoData } from '../../photo/types.ts';
import { jobs as say } from '../../texts/jobs.ts';
import { HandBody } from '../../ui/HandBody.tsx';
import { Key } from '../../ui/Key.tsx';
import { BigNumber } from '../../ui/Numbers.tsx';
import { Say, type Rich } from '../../ui/rich.tsx';

/** One thing to know before going on. */
export interface Fact {
  readonly term: string;
  readonly say: Rich;
}

export interface CarryOnData {
  readonly id: string;
  readonly title: string;
  readonly machine: string;
  readonly photo: PhotoData | null;
  /** How long nobody was at it: "5" "weeks away". */
  readonly away: { readonly value: string; readonly unit: string };
  /** Last removal, what is loose, away, open to air, not counted since: only what applies. */
  readonly facts: readonly Fact[];
  /** "Carry on after 13" */
  readonly go: string;
}

interface CarryOnProps {
  readonly carry: CarryOnData;
  /** Takes the focus as the screen opens. */
  readonly first: boolean;
  readonly onGo: () => void;
}

/** Goes to the exact spot, after saying what has changed while nobody looked. */
export function CarryOn({ carry, first, onGo }: CarryOnProps) {
  return (
    <section className="hand on-sheet jobs-carry">
      <HandBody>
        <h2 className="said">{carry.title}</h2>
        <BigNumber value={carry.away.value} unit={carry.away.unit} />
        <dl className="facts">
          {carry.facts.map((fact) => (
            <div key={fact.term}>
              <dt>{fact.term}</dt>
              <dd>
                <Say text={fact.say} />
              </dd>
            </div>
          ))}
        </dl>
      </HandBody>
      <div className="foot">
        <Key look="go" large onPress={onGo} hint={say.enter} first={first}>
          {carry.go}
        </Key>
      </div>
    </section>
  );
}
