import { useState } from 'react';
import { Frame } from '../../frame/Frame.tsx';
import type { LinePaneProps } from '../../frame/LinePane.tsx';
import { handbook as say } from '../../texts/handbook.ts';
import { Choice } from '../../ui/Choice.tsx';
import { Field } from '../../ui/Field.tsx';
import { Key } from '../../ui/Key.tsx';
import type { StatusProps } from '../../ui/Status.tsx';
import { Answer } from './Answer.tsx';
import type { AnswerData, FieldData, Topic } from './types.ts';

/** A ring on its way to the list to get. */
export interface WantProps {
  readonly count: string;
  readonly refused: string;
  /** "On the list to get: …"; "" until it is. */
  readonly done: string;
  readonly onCount: (count: string) => void;
  readonly onWant: () => void;
}

export interface HandbookScreenProps {
  readonly pane: LinePaneProps;
  readonly status: StatusProps;
  readonly topic: Topic;
  readonly topics: readonly Topic[];
  readonly fields: readonly FieldData[];
  readonly answer: AnswerData | null;
  /** What the fields were filled in from; "" for nothing. */
  readonly from: string;
  /** "Back to Put back"; "" where it was opened by itself. */
  readonly back: string;
  /** null where there is no job to put it on the list of. */
  readonly want: WantProps | null;
  readonly onTopic: (topic: Topic) => void;
  readonly onField: (id: string, value: string) => void;
  readonly onClear: () => void;
  readonly onBack: () => void;
}

/** The handbook: what is asked at the left, the one answer with its basis at the right. */
export function HandbookScreen(props: HandbookScreenProps) {
  const { topic, fields, answer } = props;
  return (
    <Frame pane={props.pane} status={props.status} screen="handbook">
      <div className="book-ask">
        <h1>{say.title}</h1>
        <Choice
          name={say.topic}
          value={topic}
          options={props.topics.map((value) => ({ value, label: say.topics[value] }))}
          onChange={props.onTopic}
        />
        <p className="book-teach">{say.teach[topic]}</p>
        {props.from !== '' && <p className="book-from said">{say.from(props.from)}</p>}
        <form
          className="book-fields"
          aria-label={say.topics[topic]}
          onSubmit={(event) => event.preventDefault()}
        >
          {fields
            .filter((field) => !field.more)
            .map((field) => (
              <Asked key={field.id} field={field} onField={props.onField} />
            ))}
        </form>
        <More key={topic} {...props} />
        <div className="keys book-keys">
          <Key onPress={props.onClear}>{say.clear}</Key>
          {props.back !== '' && <Key onPress={props.onBack}>{props.back}</Key>}
        </div>
      </div>
      <Answer answer={answer} teach={say.reference} want={props.want} />
    </Frame>
  );
}

/** What is seldom needed; open where something of it is filled in. */
function More({ fields, onField }: HandbookScreenProps) {
  const more = fields.filter((field) => field.more);
  const filled = more.some((field) => field.value !== '');
  const [open, setOpen] = useState(filled);
  if (more.length === 0) return null;
  return (
    <details
      className="book-more"
      open={open || filled}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>{say.more}</summary>
      <div className="book-fields">
        {more.map((field) => (
          <Asked key={field.id} field={field} onField={onField} />
        ))}
      </div>
    </details>
  );
}

function Asked({
  field,
  onField,
}: {
  readonly field: FieldData;
  readonly onField: HandbookScreenProps['onField'];
}) {
  const change = (value: string) => onField(field.id, value);
  if (field.options.length > 0)
    return (
      <div className="field">
        <span className="label" aria-hidden="true">
          {field.label}
        </span>
        <Choice name={field.label} value={field.value} options={field.options} onChange={change} />
      </div>
    );
  return (
    <Field
      label={field.label}
      example={field.example}
      value={field.value}
      onChange={change}
      figures
      refused={field.refused === '' ? undefined : field.refused}
    />
  );
}
