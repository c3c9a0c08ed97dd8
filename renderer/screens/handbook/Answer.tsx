import { handbook as say } from '../../texts/handbook.ts';
import { Field } from '../../ui/Field.tsx';
import { Key } from '../../ui/Key.tsx';
import { BigNumber } from '../../ui/Numbers.tsx';
import { Points } from '../../ui/Point.tsx';
import type { WantProps } from './HandbookScreen.tsx';
import { OrderDrawing } from './OrderDrawing.tsx';
import type { AnswerData, AnswerGroup, BasisData } from './types.ts';

interface AnswerProps {
  readonly answer: AnswerData | null;
  readonly teach: string;
  readonly want: WantProps | null;
}

/** The one answer, what speaks against it, what else it can be; always with formula, inputs, source, limits, cautions. */
export function Answer({ answer, teach, want }: AnswerProps) {
  return (
    // It scrolls by itself, so the keyboard must reach it.
    <section className="hand on-sheet book-answer" aria-label={say.answer} tabIndex={0}>
      {answer === null ? <p className="off-teach">{teach}</p> : <Given answer={answer} want={want} />}
    </section>
  );
}

function Given({ answer, want }: { readonly answer: AnswerData; readonly want: WantProps | null }) {
  return (
    <>
      <header className="book-head" aria-live="polite">
        {answer.whose !== '' && <h2 className="book-whose">{answer.whose}</h2>}
        {answer.figure !== null && (
          <BigNumber
            value={answer.figure.value}
            {...(answer.figure.unit !== '' && { unit: answer.figure.unit })}
            size={sizeOf(answer.figure.value)}
          >
            {answer.figure.other}
          </BigNumber>
        )}
        {answer.beside !== '' && <p className="book-beside">{answer.beside}</p>}
      </header>
      {answer.points.length > 0 && <Points points={answer.points} />}
      {answer.says.length > 0 && (
        <div className="book-says">
          {answer.says.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      )}
      {answer.drawing.length > 0 && <OrderDrawing holes={answer.drawing} />}
      {answer.want !== '' && want !== null && <Want what={answer.want} {...want} />}
      {answer.groups.map((group) => (
        <Group key={group.title} group={group} />
      ))}
      {answer.basis !== null && <Basis basis={answer.basis} />}
    </>
  );
}

/** As large as the sheet bears: a designation is longer than a torque. */
function sizeOf(value: string): number {
  if (value.length <= 4) return 136;
  if (value.length <= 7) return 96;
  return value.length <= 11 ? 64 : 44;
}

function Group({ group }: { readonly group: AnswerGroup }) {
  return (
    <div>
      <h2>{group.title}</h2>
      <ul className="book-rows">
        {group.rows.map((row) => (
          <li key={row.id}>
            <b className="num">{row.mark}</b>
            <b>{row.name}</b>
            {row.about !== '' && <span>{row.about}</span>}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Puts what was found on the list to get of the job at hand. */
function Want({ what, count, refused, done, onCount, onWant }: WantProps & { readonly what: string }) {
  return (
    <form
      className="book-want"
      onSubmit={(event) => {
        event.preventDefault();
        onWant();
      }}
    >
      <Field
        label={say.wantCount}
        value={count}
        onChange={onCount}
        example="1"
        numeric
        refused={refused === '' ? undefined : refused}
      />
      <Key submits onPress={() => undefined}>
        {say.want}
      </Key>
      <p aria-live="polite">{done === '' ? what : done}</p>
    </form>
  );
}

function Basis({ basis }: { readonly basis: BasisData }) {
  const rows: readonly (readonly [string, readonly string[]])[] = [
    [say.formula, [basis.formula]],
    [say.inputs, basis.inputs],
    [say.source, [basis.source]],
    [say.limits, basis.limits],
    [say.cautions, basis.cautions],
  ];
  return (
    <dl className="book-basis">
      {rows.map(([name, lines]) =>
        lines.length === 0 ? null : (
          <div key={name} className={name === say.cautions ? 'book-cautions' : undefined}>
            <dt>{name}</dt>
            {lines.map((line) => (
              <dd key={line}>{line}</dd>
            ))}
          </div>
        ),
      )}
    </dl>
  );
}
