import { off as say } from '../../texts/off.ts';
import { Key } from '../../ui/Key.tsx';
import { Say, type Rich } from '../../ui/rich.tsx';
import { LookAlikes, type AlikeData } from './LookAlikes.tsx';

export interface BagData {
  readonly id: string;
  /** "Bag 6" */
  readonly label: string;
  /** "Cover bolts M10 × 35" */
  readonly name: string;
  readonly expected: number;
  /** True where nobody said how many there are: the first count says it. */
  readonly unknown: boolean;
  /** As counted so far; null before counting. */
  readonly counted: number | null;
  /** What the count means and what to do. */
  readonly say: Rich;
  /** Where a missing piece may be, nearest first; empty while none is looked for. */
  readonly lookAt: readonly string[];
  /** True while a piece is looked for. */
  readonly searching: boolean;
  /** Look-alikes that share this bag or removal: what tells them apart, drawn to scale. */
  readonly alike: {
    readonly title: string;
    readonly say: string;
    readonly bolts: readonly AlikeData[];
  } | null;
}

interface BagPanelProps {
  readonly bag: BagData;
  readonly onCount: (count: number) => void;
  readonly onIs: () => void;
  readonly onAgain: () => void;
  readonly onFound: () => void;
  readonly onGiveUp: () => void;
}

/** Counting a bag: how many there should be, how many there are, what a difference means. */
export function BagPanel({ bag, onCount, onIs, onAgain, onFound, onGiveUp }: BagPanelProps) {
  const { expected } = bag;
  const counted = bag.counted ?? expected;
  const asked = bag.unknown && bag.counted === null;
  return (
    <>
      <div className="bag-head">
        <p className="big">
          <b className="num">{asked ? say.countUnknown : counted}</b>
          <span className="unit">
            <b>{bag.unknown ? say.ofUnknown : say.of(expected)}</b>
            {bag.counted === null && <span className="cap">{say.notCounted}</span>}
          </span>
        </p>
        <h2>
          <span>{bag.label}</span>
          <span className="said">{bag.name}</span>
        </h2>
      </div>
      {!asked && <Heads counted={counted} expected={bag.unknown ? counted : expected} />}
      <p className="bag-say">
        <Say text={bag.say} />
      </p>
      <div className="bag-keys">
        <Key onPress={() => onCount(Math.max(0, counted - 1))} off={counted === 0}>
          {say.fewer}
        </Key>
        <Key onPress={() => onCount(counted + 1)}>{say.more}</Key>
        <Key look="go" onPress={onIs} hint={say.countHint} first off={asked}>
          {asked ? say.countFirst : say.itIs(counted)}
        </Key>
        {bag.counted !== null && <Key onPress={onAgain}>{say.again}</Key>}
        {bag.searching && <Key onPress={onFound}>{say.found}</Key>}
        {bag.searching && <Key onPress={onGiveUp}>{say.giveUp}</Key>}
      </div>
      {bag.lookAt.length > 0 && (
        <section className="bag-alike">
          <h3>{say.lookAt}</h3>
          <LookAt lines={bag.lookAt} />
        </section>
      )}
      {bag.alike !== null && (
        <section className="bag-alike">
          <h3>{bag.alike.title}</h3>
          <p>{bag.alike.say}</p>
          <LookAlikes bolts={bag.alike.bolts} />
        </section>
      )}
    </>
  );
}

/** How many places stand open at once: the nearest ones. */
const FIRST_PLACES = 6;

/** Where to look, nearest first. The far ones stand folded, so that the bags below stay within reach. */
function LookAt({ lines }: { readonly lines: readonly string[] }) {
  const list = (some: readonly string[]) => (
    <ol className="look-at">
      {some.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ol>
  );
  // One or two more are sooner read than unfolded.
  if (lines.length <= FIRST_PLACES + 2) return list(lines);
  return (
    <>
      {list(lines.slice(0, FIRST_PLACES))}
      <details className="more-places">
        <summary>{say.lookAtMore(lines.length - FIRST_PLACES)}</summary>
        {list(lines.slice(FIRST_PLACES))}
      </details>
    </>
  );
}

/** One head for each piece: full is here, dashed is not. Beyond forty the number has to do. */
function Heads({ counted, expected }: { readonly counted: number; readonly expected: number }) {
  const total = Math.max(counted, expected);
  if (total === 0 || total > 40) return null;
  return (
    <div className={total > 16 ? 'heads small' : 'heads'} role="img" aria-label={say.here(counted, expected)}>
      {Array.from({ length: total }, (_, i) => (
        <svg key={i} viewBox="0 0 58 50" aria-hidden="true">
          <polygon
            points="56,25 42.5,48.4 15.5,48.4 2,25 15.5,1.6 42.5,1.6"
            fill={i < counted ? 'var(--ink)' : 'none'}
            stroke={i < counted ? 'none' : 'var(--ink)'}
            strokeWidth="2.25"
            strokeDasharray="6 5"
          />
          {i < counted && (
            <circle cx="29" cy="25" r="16.7" fill="none" stroke="var(--sheet)" strokeWidth="1.5" />
          )}
        </svg>
      ))}
    </div>
  );
}
