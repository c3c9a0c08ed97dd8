import { useId } from 'react';

export interface ChoiceProps<V extends string> {
  readonly name: string;
  readonly value: V | null;
  readonly options: readonly { readonly value: V; readonly label: string; readonly hint?: string }[];
  readonly onChange: (value: V) => void;
  readonly off?: boolean;
}

/** One of a few, all in sight: a row of keys of which one is down. Plain radio buttons underneath. */
export function Choice<V extends string>({ name, value, options, onChange, off = false }: ChoiceProps<V>) {
  const group = useId();
  return (
    <fieldset className="choice" aria-label={name} disabled={off}>
      {options.map((option) => (
        <label key={option.value}>
          <input
            type="radio"
            name={group}
            checked={option.value === value}
            onChange={() => onChange(option.value)}
            aria-keyshortcuts={option.hint || undefined}
          />
          <span>{option.label}</span>
          {option.hint ? <kbd aria-hidden="true">{option.hint}</kbd> : null}
        </label>
      ))}
    </fieldset>
  );
}
