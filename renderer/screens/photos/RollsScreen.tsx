import { Frame } from '../../frame/Frame.tsx';
import type { LinePaneProps } from '../../frame/LinePane.tsx';
import { gallery as say } from '../../texts/gallery.ts';
import { Choice } from '../../ui/Choice.tsx';
import { Key } from '../../ui/Key.tsx';
import { BigNumber } from '../../ui/Numbers.tsx';
import type { StatusProps } from '../../ui/Status.tsx';
import type { RollData } from './types.ts';

export type Pause = '2' | '5' | '15' | '60';

export interface RollsScreenProps {
  readonly pane: LinePaneProps;
  readonly status?: StatusProps;
  readonly rolls: readonly RollData[];
  readonly photos: number;
  readonly pause: Pause;
  readonly onPause: (pause: Pause) => void;
  /** A group and the one after it become one. */
  readonly onJoin: (rollId: string) => void;
  /** This photo begins another group. */
  readonly onSplit: (photoId: string) => void;
  readonly onMake: () => void;
  readonly onBack: () => void;
}

/** Draft removals from a roll of pictures: shown, joined and split before any is made. */
export function RollsScreen(props: RollsScreenProps) {
  const { rolls } = props;
  return (
    <Frame pane={props.pane} {...(props.status && { status: props.status })} screen="gallery">
      <div className="gallery-main rolls">
        <h1 className="heard-only">{say.make}</h1>
        <ol>
          {rolls.map((roll, i) => (
            <Roll key={roll.id} roll={roll} number={i + 1} last={i === rolls.length - 1} {...props} />
          ))}
        </ol>
      </div>
      <section className="hand gallery-hand">
        <BigNumber value={String(rolls.length)} at>
          <span>{say.rolls.title(rolls.length).replace(/^\d+ /, '')}</span>{' '}
          <span>{say.rolls.from(props.photos)}</span>
        </BigNumber>
        <div>
          <p className="cap">{say.rolls.pause}</p>
          <Choice
            name={say.rolls.pause}
            value={props.pause}
            onChange={props.onPause}
            options={(['2', '5', '15', '60'] as const).map((value) => ({
              value,
              label: say.rolls.pauses[value],
            }))}
          />
        </div>
        <p>{say.rolls.how}</p>
        <div className="foot keys">
          <Key look="go" large onPress={props.onMake} hint="Enter" first>
            {say.rolls.go(rolls.length)}
          </Key>
          <Key onPress={props.onBack} hint="Esc" shortcut="Escape">
            {say.rolls.back}
          </Key>
        </div>
      </section>
    </Frame>
  );
}

type RollProps = RollsScreenProps & {
  readonly roll: RollData;
  readonly number: number;
  readonly last: boolean;
};

function Roll({ roll, number, last, onJoin, onSplit }: RollProps) {
  return (
    <li className="roll">
      <div className="gallery-head">
        <h2>
          {say.rolls.group(number)} <span className="num">{say.rolls.span(roll.from, roll.to)}</span>
        </h2>
        <span className="cap">{say.photos(roll.tiles.length)}</span>
      </div>
      <ul className="roll-photos">
        {roll.tiles.map((tile, i) => (
          <li key={tile.id}>
            {i === 0 ? (
              <span className="thumb">
                <img src={tile.src} alt={tile.name} loading="lazy" />
                <span className="plate">{tile.taken}</span>
              </span>
            ) : (
              <button
                type="button"
                className="thumb"
                onClick={() => onSplit(tile.id)}
                aria-label={say.rolls.splitHeard(tile.name)}
                title={say.rolls.split}
              >
                <img src={tile.src} alt="" loading="lazy" />
                <span className="plate">{tile.taken}</span>
              </button>
            )}
          </li>
        ))}
      </ul>
      {!last && <Key onPress={() => onJoin(roll.id)}>{say.rolls.join}</Key>}
    </li>
  );
}
