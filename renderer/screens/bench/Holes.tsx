import type { BenchField, BenchHole, Write } from '../../model/bench-fields.ts';
import { bench as say } from '../../texts/bench.ts';
import { Key } from '../../ui/Key.tsx';
import { BenchForm } from './BenchForm.tsx';

export interface HolesProps {
  readonly holes: readonly BenchHole[];
  readonly chosen: readonly string[];
  /** What can be said of the chosen ones. */
  readonly fields: readonly BenchField[];
  readonly onChoose: (ids: readonly string[]) => void;
  readonly onWrite: (write: Write) => void;
}

/** The holes of a set: touch those that are alike, then type their length; one alone can be said more of. */
export function Holes({ holes, chosen, fields, onChoose, onWrite }: HolesProps) {
  if (holes.length === 0) return null;
  const toggle = (id: string) =>
    onChoose(chosen.includes(id) ? chosen.filter((one) => one !== id) : [...chosen, id]);
  const all = chosen.length === holes.length;
  return (
    <section className="bench-holes" aria-label={say.holes}>
      <h3>{say.holes}</h3>
      <div className="bench-hole-keys">
        {holes.map((hole) => (
          <Key key={hole.id} upright pressed={chosen.includes(hole.id)} onPress={() => toggle(hole.id)}>
            <b className="num">
              <span className="heard-only">{say.hole} </span>
              {hole.n}
            </b>
            <small>{hole.about}</small>
          </Key>
        ))}
        <Key onPress={() => onChoose(all ? [] : holes.map((hole) => hole.id))}>
          {all ? say.noHoles : say.allHoles}
        </Key>
      </div>
      {fields.length > 0 && <BenchForm fields={fields} onWrite={onWrite} />}
    </section>
  );
}
