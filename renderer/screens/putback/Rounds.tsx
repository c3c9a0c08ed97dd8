import { putback as say } from '../../texts/putback.ts';
import type { Round } from './types.ts';

interface RoundsProps {
  readonly rounds: readonly Round[];
  /** A round was touched: it is the one at hand. */
  readonly onRound: (id: string) => void;
}

const CLASS: Record<Round['state'], string> = {
  done: 'done',
  now: 'now',
  'to come': 'coming',
  'not noted': 'coming',
};

/** Rounds are figures on a rule: ink done, accent now, thin to come and where nobody noted it. */
export function Rounds({ rounds, onRound }: RoundsProps) {
  if (rounds.length === 0) return null;
  return (
    <ol className="rounds" aria-label={say.rounds}>
      {rounds.map((round) => (
        <li
          key={round.id}
          className={`round ${CLASS[round.state]}`}
          aria-current={round.state === 'now' ? 'step' : undefined}
        >
          <button
            type="button"
            disabled={round.state === 'done' || round.state === 'not noted'}
            onClick={() => onRound(round.id)}
          >
            <span className="cap">{round.share}</span>
            <span className="num">
              {round.value}
              {round.unit !== '' && <span className="round-unit">{round.unit}</span>}
            </span>
            <span className="cap">{round.about}</span>
            <span className="heard-only">{say.roundStates[round.state]}</span>
          </button>
        </li>
      ))}
    </ol>
  );
}
