export interface TogglesProps {
  readonly name: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  /** What is down; "" or a value that is not among the options is none. */
  readonly value: string;
  /** The one touched, or "" where the one that was down is let go. */
  readonly onChange: (value: string) => void;
}

/** One of a few or none: a touch on the one that is down lets it go. */
export function Toggles({ name, options, value, onChange }: TogglesProps) {
  return (
    <div className="choice toggles" role="group" aria-label={name}>
      {options.map((option) => (
        <button
          key={option.value}
          type="button"
          aria-pressed={option.value === value}
          onClick={() => onChange(option.value === value ? '' : option.value)}
        >
          {option.label}
        </button>
      ))}
    </div>
  );
}
