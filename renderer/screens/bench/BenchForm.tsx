import { useState } from 'react';
import { useEdit, WHEN_LEFT } from '../../data/edit.ts';
import type { BenchField, Write } from '../../model/bench-fields.ts';
import { bench as say } from '../../texts/bench.ts';
import { Choice } from '../../ui/Choice.tsx';
import { Field } from '../../ui/Field.tsx';
import { Key } from '../../ui/Key.tsx';

interface BenchFormProps {
  readonly fields: readonly BenchField[];
  readonly onWrite: (write: Write) => void;
}

/** Every field of a thing; each is kept by itself when the hand leaves it, or by Enter. */
export function BenchForm({ fields, onWrite }: BenchFormProps) {
  return (
    <div className="bench-form">
      {fields.map((field) => (
        <OneField key={field.id} field={field} onWrite={onWrite} />
      ))}
    </div>
  );
}

interface OneProps<F extends BenchField = BenchField> {
  readonly field: F;
  readonly onWrite: (write: Write) => void;
}

function OneField({ field, onWrite }: OneProps) {
  const take = (value: string) => {
    const read = field.write(value);
    if (read.ok) onWrite(read.value);
  };
  switch (field.kind) {
    case 'line':
    case 'text':
      return <Typed field={field} onWrite={onWrite} />;
    case 'pick':
      return <Pick field={field} onWrite={onWrite} />;
    case 'choice':
      return (
        <div className="field">
          <span className="label">{field.label}</span>
          <Choice name={field.label} value={field.value} options={field.options} onChange={take} />
        </div>
      );
    case 'yes':
      return (
        <label className="bench-yes">
          <input
            type="checkbox"
            checked={field.value}
            onChange={(event) => take(event.target.checked ? 'yes' : 'no')}
          />
          <span>{field.label}</span>
        </label>
      );
    case 'touch':
      return (
        <div className="field bench-touch" role="group" aria-label={field.label}>
          <span className="label">{field.label}</span>
          <div className="keys">
            {field.options.map((option) => (
              <Key key={option.value} onPress={() => take(option.value)}>
                {option.label}
              </Key>
            ))}
          </div>
        </div>
      );
  }
}

/** What is typed is kept when the hand leaves it; what cannot be read stays as typed, with the reason. */
function Typed({ field, onWrite }: OneProps<Extract<BenchField, { kind: 'line' | 'text' }>>) {
  const [refused, setRefused] = useState<string | null>(null);
  const write = (typed: string) => {
    const read = field.write(typed);
    setRefused(read.ok ? null : read.fault.sentence);
    if (read.ok) onWrite(read.value);
  };
  const [text, setText, leave] = useEdit(`bench/${field.id}`, field.value, write, WHEN_LEFT);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        leave();
      }}
    >
      <Field
        label={field.label}
        value={text}
        lines={field.kind === 'text'}
        {...(field.example !== undefined && { example: field.example })}
        refused={refused ?? undefined}
        onChange={(typed) => {
          setRefused(null);
          setText(typed);
        }}
        onDone={leave}
      />
    </form>
  );
}

function Pick({ field, onWrite }: OneProps<Extract<BenchField, { kind: 'pick' | 'choice' }>>) {
  const known = field.options.some((option) => option.value === field.value);
  const options = known
    ? field.options
    : [{ value: field.value, label: say.word(field.value) }, ...field.options];
  return (
    <label className="field">
      <span className="label">{field.label}</span>
      <select
        value={field.value}
        onChange={(event) => {
          const read = field.write(event.target.value);
          if (read.ok) onWrite(read.value);
        }}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </label>
  );
}
